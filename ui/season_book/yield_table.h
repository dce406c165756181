// Honey by hive with its bars: a ledger page, not a spreadsheet. Yards are ruled off, the scale
// stands over the bars, the sum closes with a double rule.
#pragma once

#include <QHeaderView>
#include <QStyledItemDelegate>
#include <QTableView>

#include "ui/drawing/figure.h"
#include "ui/season_book/yield_model.h"

namespace combwright {

class YieldTable : public QTableView {
    Q_OBJECT

  public:
    YieldTable(Session& session, YieldModel& model, QWidget* parent = nullptr);

    /// Colonies and queens have longer names than hives; `spoken` is what a reader calls the table.
    void setBy(YieldBy by, const QString& spoken);
    /// Widths, rows and figures anew, after the look or the figures changed.
    void measure();
    /// With every row on view, px.
    int wholeHeight() const;
    /// The row the person is at; nothing in an empty table.
    const YieldModel::Line* current() const;

  Q_SIGNALS:
    void opened();  ///< Enter, or a double click, on a row
    void moved();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    Session& m_session;
    YieldModel& m_model;
    bool m_wideNames = false;
};

}  // namespace combwright
