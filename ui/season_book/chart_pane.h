// A chart and its table twin in one place: the same points drawn or in rows, one key from each
// other, and whoever is at a mark finds its row chosen.
#pragma once

#include <QStackedWidget>
#include <QTableWidget>

#include "ui/season_book/mark_chart_view.h"

namespace combwright {

/// Puts the chosen rows of a table on the clipboard, a tab between cells, its heads first.
void copyRows(const QTableWidget& table);

class ChartPane : public QStackedWidget {
    Q_OBJECT

  public:
    explicit ChartPane(Session& session, QWidget* parent = nullptr);

    void show(const ChartBlock& chart);
    const ChartBlock& chartBlock() const { return m_chart->chart(); }
    MarkChartView& chart() { return *m_chart; }
    QTableWidget& table() { return *m_table; }
    bool tableShown() const { return currentWidget() == m_table; }
    /// The other of the two, at the same mark.
    void toggleTable();
    bool hasFocusInside() const { return m_chart->hasFocus() || m_table->hasFocus(); }
    /// The mark the person is at, where the focus is here.
    std::optional<ChartMark> currentMark() const;
    const ChartBlock::Point& pointAt(ChartMark mark) const {
        return chartBlock().series[mark.series].points[mark.point];
    }

  Q_SIGNALS:
    void opened(combwright::ChartMark mark);

  private:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void fill();
    void sizes();
    std::optional<ChartMark> markInTable() const;

    Session& m_session;
    MarkChartView* m_chart;
    QTableWidget* m_table;
};

}  // namespace combwright
