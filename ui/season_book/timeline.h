// The harvest timeline: honey in buckets added up over the year, beside another year. A chart has
// no voice of its own, so the arrows go from run to run, and its table twin is one key away.
#pragma once

#include <QStackedWidget>
#include <QTableWidget>

#include "core/places/pages/harvest_blocks.h"
#include "ui/drawing/steps_chart.h"
#include "ui/shell/session.h"

namespace combwright {

/// The drawing with the keyboard's place in it.
class TimelineChart : public QWidget {
    Q_OBJECT

  public:
    explicit TimelineChart(Session& session, QWidget* parent = nullptr);
    void show(StepsView view, bool sameYear);
    const StepsView& view() const { return m_view; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  Q_SIGNALS:
    void opened(int run);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    int steps() const;
    void go(int step);
    QRectF drawingBox() const;

    Session& m_session;
    StepsView m_view;
    int m_at = 0;
};

class Timeline : public QWidget {
    Q_OBJECT

  public:
    explicit Timeline(Session& session, QWidget* parent = nullptr);
    void show(const SeasonYield& season, const std::vector<SeasonYield>& beside);
    /// Chart or table; the other way each time.
    void toggleTable();
    bool tableShown() const { return m_stack->currentWidget() == m_table; }
    QTableWidget& table() { return *m_table; }
    TimelineChart& chart() { return *m_chart; }
    bool hasFocusInside() const { return m_chart->hasFocus() || m_table->hasFocus(); }
    /// The run the person is at, where the focus is here.
    std::optional<Id<Extraction>> currentRun() const;

  Q_SIGNALS:
    void runOpened(combwright::Id<combwright::Extraction> run);

  private:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void fillTable(const HarvestTable& table);
    void open(int row);

    Session& m_session;
    std::vector<Id<Extraction>> m_runs;
    int m_year = 0;
    QStackedWidget* m_stack;
    TimelineChart* m_chart;
    QTableWidget* m_table;
};

}  // namespace combwright
