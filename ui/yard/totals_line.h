// What the yard adds up to, as a ledger line under the stacks between double rules: hives opened,
// mean brood, supers, what is left in the storeroom, colonies. Figures stand beside their names and
// wrap where the window is narrow.
#pragma once

#include <QWidget>
#include <vector>

#include "core/places/yard/yard_sheet.h"
#include "ui/drawing/figure.h"
#include "ui/shell/session.h"

namespace combwright {

struct LedgerFigure {
    QString name;
    FigureText figure;  ///< without a figure only the words stand there
    QString words;      ///< behind it: "of 12, 1 for rain"
};

/// The figures of a sheet. Nothing is shown as zero that nobody looked at.
std::vector<LedgerFigure> ledgerOf(const YardSheet& sheet);

class TotalsLine : public QWidget {
    Q_OBJECT

  public:
    explicit TotalsLine(Session& session, QWidget* parent = nullptr);
    void show(const YardSheet& sheet);
    const std::vector<LedgerFigure>& figures() const { return m_figures; }

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override { return {width(), heightForWidth(width())}; }
    QSize minimumSizeHint() const override { return {0, heightForWidth(width())}; }

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    double widthOf(const LedgerFigure& figure) const;
    int perRow(int width) const;
    double rowHeight() const;

    Session& m_session;
    std::vector<LedgerFigure> m_figures;
};

}  // namespace combwright
