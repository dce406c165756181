// Where the mass went: bands whose width is mass, in from the left and out to the right. What is
// unknown and what is missing keep bands of their own, dashed, with their grams, never spread over
// the others.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "ui/drawing/band.h"
#include "ui/drawing/figure.h"
#include "ui/look/tokens.h"

namespace combwright {

struct BandView {
    QString name;
    double grams = 0.0;
    FigureText figure = {};
    BandFill fill = BandFill::Honey;
    QString note = {};  ///< behind the figure, muted ("0.6 %")
};

/// The one change of scale a balance may have: bands out are drawn `times` as wide as bands in.
struct BalanceScale {
    double times = 1.0;
    double barInGrams = 5000.0;   ///< what the height bar on the left stands for
    QString barIn;                ///< its words, "5 kg"
    double barOutGrams = 1000.0;  ///< the same on the right
    QString barOut;
};

struct BalanceView {
    std::vector<BandView> in;
    std::vector<BandView> out;
    FigureText total = {};                    ///< over the wall between them; empty for none
    std::optional<BalanceScale> change = {};  ///< marked; absent: one scale throughout
    TextSize size = TextSize::Note;           ///< of the words beside the bands
};

/// Where the bands lie, px, for clicks and keys: those in first, then those out.
std::vector<QRectF> balanceBands(const QRectF& box, const BalanceView& balance, const Look& look);

void paintBalance(QPainter& painter, const QRectF& box, const BalanceView& balance,
                  const Look& look);

/// "In: H1 31.0 kg weighed; … Out: buckets 91.5 kg weighed; missing 0.6 kg by difference."
QString spoken(const BalanceView& balance);

}  // namespace combwright
