#include "ui/season_book/mark_chart_view.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>

#include "ui/print/chart_views.h"

namespace combwright {

MarkChartView::MarkChartView(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("mark_chart"));
    setFocusPolicy(Qt::StrongFocus);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

void MarkChartView::show(const ChartBlock& chart) {
    const bool same = m_chart.title == chart.title && m_chart.year == chart.year;
    m_chart = chart;
    m_view = marksView(chart);
    const bool there = m_at.series < m_chart.series.size() &&
                       m_at.point < m_chart.series[m_at.series].points.size();
    if (!same || !there) {
        m_at = {};
        // The first that has a point.
        while (anyMark() && m_chart.series[m_at.series].points.empty()) ++m_at.series;
    }
    setAccessibleName(tr("%1 %2; T shows it as a table").arg(m_chart.title).arg(m_chart.year));
    tell();
}

std::optional<ChartMark> MarkChartView::current() const {
    return hasFocus() && anyMark() ? std::optional(m_at) : std::nullopt;
}

void MarkChartView::tell() {
    m_view.current.reset();
    m_view.said.clear();
    if (hasFocus() && anyMark()) {
        m_view.current = MarksView::At{m_at.series, m_at.point};
        m_view.said = m_chart.series[m_at.series].points[m_at.point].says;
    }
    setAccessibleDescription(m_view.said.isEmpty() ? spoken(m_chart) : m_view.said);
    update();
}

void MarkChartView::go(ChartMark mark) {
    if (!anyMark()) return;
    m_at = mark;
    tell();
}

void MarkChartView::along(int steps) {
    const auto points = static_cast<int>(m_chart.series[m_at.series].points.size());
    const int to = std::clamp(static_cast<int>(m_at.point) + steps, 0, points - 1);
    go({m_at.series, static_cast<std::size_t>(to)});
}

/// To the next series that has points, there to the mark nearest in the year.
void MarkChartView::across(int steps) {
    auto to = static_cast<int>(m_at.series);
    const auto count = static_cast<int>(m_chart.series.size());
    do {
        to += steps;
        if (to < 0 || to >= count) return;
    } while (m_chart.series[static_cast<std::size_t>(to)].points.empty());
    const auto series = static_cast<std::size_t>(to);
    const Day from = laidOver(m_chart.series[m_at.series].points[m_at.point].on, m_chart.year);
    std::size_t nearest = 0;
    std::optional<days> least;
    const auto& points = m_chart.series[series].points;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const days away = laidOver(points[i].on, m_chart.year) - from;
        const days size = away < days{0} ? -away : away;
        if (least && size >= *least) continue;
        least = size;
        nearest = i;
    }
    go({series, nearest});
}

QSize MarkChartView::sizeHint() const {
    const Look& look = m_session.look();
    return {look.space(300), look.space(168)};
}

QSize MarkChartView::minimumSizeHint() const {
    const Look& look = m_session.look();
    return {look.space(240), look.space(148)};
}

QRectF MarkChartView::drawingBox() const {
    const double edge = m_session.look().px(4);
    return QRectF(rect()).adjusted(edge, edge, -edge, -edge);
}

void MarkChartView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = m_session.look();
    painter.setRenderHint(QPainter::Antialiasing);
    paintMarks(painter, drawingBox(), m_view, look);
    if (!hasFocus()) return;
    painter.setPen(QPen(look.tone(Tone::Accent), 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), look.corner(), look.corner());
}

void MarkChartView::keyPressEvent(QKeyEvent* event) {
    if (!anyMark()) return QWidget::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Left:
            return along(-1);
        case Qt::Key_Right:
            return along(1);
        case Qt::Key_Up:
            return across(-1);
        case Qt::Key_Down:
            return across(1);
        case Qt::Key_Home:
            return go({m_at.series, 0});
        case Qt::Key_End:
            return go({m_at.series, m_chart.series[m_at.series].points.size() - 1});
        case Qt::Key_Return:
        case Qt::Key_Enter:
            Q_EMIT opened(m_at);
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void MarkChartView::mousePressEvent(QMouseEvent* event) {
    setFocus(Qt::MouseFocusReason);
    if (const auto at = markNear(drawingBox(), m_view, event->position(), m_session.look()))
        go({at->series, at->point});
}

void MarkChartView::mouseDoubleClickEvent(QMouseEvent* event) {
    if (const auto at = markNear(drawingBox(), m_view, event->position(), m_session.look()))
        Q_EMIT opened({at->series, at->point});
}

void MarkChartView::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    tell();
}

void MarkChartView::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    tell();
}

bool MarkChartView::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    auto* asked = static_cast<QHelpEvent*>(event);
    const auto at = markNear(drawingBox(), m_view, asked->pos(), m_session.look());
    if (at)
        QToolTip::showText(asked->globalPos(), m_chart.series[at->series].points[at->point].says,
                           this);
    else
        QToolTip::hideText();
    return true;
}

}  // namespace combwright
