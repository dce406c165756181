// Little candles on the board of evenings: what was poured stands solid on an ink line, what is
// planned is filled with the wax it will be of, and what there is no wax for is only outlined.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "ui/drawing/balance.h"
#include "ui/look/tokens.h"

namespace combwright {

struct CandleView {
    enum class Shape { Domed, Taper, Pillar };
    enum class State { Done, Planned, NoWax };
    Shape shape = Shape::Domed;
    State state = State::Planned;
    /// Light, mid or dark; none: nobody knows, or shades together.
    std::optional<BandFill> wax = {};
};

/// Width and height of one, px.
QSizeF candleSize(CandleView::Shape shape, const Look& look);
/// Within that box, standing on its foot.
void paintCandle(QPainter& painter, const QRectF& box, const CandleView& candle, const Look& look);
/// So many beside each other from the left of the box, standing on its foot; closer where there is
/// no room, and beyond what can be told apart one candle and "× 24".
void paintCandles(QPainter& painter, const QRectF& box, const std::vector<CandleView>& candles,
                  const Look& look);

/// "poured", "planned", "no wax for it"; what the drawing tells.
QString spoken(CandleView::State state);

}  // namespace combwright
