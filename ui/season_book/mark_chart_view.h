// A chart of a year by keyboard: Left and Right go along a series, Up and Down to the next one,
// Home and End to its ends; the mark one is at says its sentence, in sight and to a reader, and
// Enter opens its records. A chart of Qt's own is mute and cannot be walked.
#pragma once

#include <QWidget>

#include "core/places/pages/chart_words.h"
#include "ui/drawing/mark_chart.h"
#include "ui/shell/session.h"

namespace combwright {

class MarkChartView : public QWidget {
    Q_OBJECT

  public:
    explicit MarkChartView(Session& session, QWidget* parent = nullptr);

    /// The mark one is at stays, where the chart has it still.
    void show(const ChartBlock& chart);
    const ChartBlock& chart() const { return m_chart; }
    const MarksView& view() const { return m_view; }
    /// The mark the keyboard is at; none while it is elsewhere.
    std::optional<ChartMark> current() const;
    void go(ChartMark mark);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void opened(combwright::ChartMark mark);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    QRectF drawingBox() const;
    bool anyMark() const { return !isEmpty(m_chart); }
    void along(int steps);
    void across(int steps);
    void tell();

    Session& m_session;
    ChartBlock m_chart;
    MarksView m_view;
    ChartMark m_at;
};

}  // namespace combwright
