// What the yard adds up to, as a ledger line under the stacks between double rules: hives opened,
// mean brood, supers, what is left in the storeroom. Figures stand beside their names and wrap
// where the window is narrow.
#pragma once

#include <QWidget>
#include <vector>

#include "core/places/yard_sheet.h"
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

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { fit(); }

  private:
    double widthOf(const LedgerFigure& figure) const;
    int perRow() const;
    double rowHeight() const;
    void fit();

    Session& m_session;
    std::vector<LedgerFigure> m_figures;
};

}  // namespace combwright
