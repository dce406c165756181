#include "ui/season_book/timeline.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/words/words.h"
#include "ui/print/steps_view.h"

namespace combwright {

TimelineChart::TimelineChart(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("timeline_chart"));
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Harvest timeline; T shows it as a table"));
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

int TimelineChart::steps() const {
    return m_view.lines.empty() ? 0 : static_cast<int>(m_view.lines.front().steps.size());
}

void TimelineChart::show(StepsView view, bool sameYear) {
    m_view = std::move(view);
    if (!sameYear) m_at = 0;
    go(m_at);
    setAccessibleDescription(spoken(m_view));
}

void TimelineChart::go(int step) {
    m_at = std::clamp(step, 0, std::max(0, steps() - 1));
    m_view.current.reset();
    if (hasFocus() && steps() > 0) {
        m_view.current = static_cast<std::size_t>(m_at);
        setAccessibleDescription(m_view.lines.front().steps[*m_view.current].label);
    }
    update();
}

QSize TimelineChart::sizeHint() const {
    const Look& look = m_session.look();
    return {look.space(300), look.space(196)};
}

QRectF TimelineChart::drawingBox() const {
    const double edge = m_session.look().px(4);
    return QRectF(rect()).adjusted(edge, edge, -edge, -edge);
}

void TimelineChart::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = m_session.look();
    painter.setRenderHint(QPainter::Antialiasing);
    paintSteps(painter, drawingBox(), m_view, look);
    if (!hasFocus()) return;
    painter.setPen(QPen(look.tone(Tone::Accent), 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), look.corner(), look.corner());
}

void TimelineChart::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
            return go(m_at - 1);
        case Qt::Key_Right:
            return go(m_at + 1);
        case Qt::Key_Home:
            return go(0);
        case Qt::Key_End:
            return go(steps() - 1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (steps() > 0) Q_EMIT opened(m_at);
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void TimelineChart::mousePressEvent(QMouseEvent* event) {
    int nearest = 0;
    double least = 1e9;
    for (int i = 0; i < steps(); ++i) {
        const QRectF rise =
            stepRise(drawingBox(), m_view, static_cast<std::size_t>(i), m_session.look());
        const double away = std::abs(rise.left() - event->position().x()) +
                            std::max({0.0, rise.top() - event->position().y(),
                                      event->position().y() - rise.bottom()});
        if (away >= least) continue;
        least = away;
        nearest = i;
    }
    setFocus(Qt::MouseFocusReason);
    go(nearest);
}

void TimelineChart::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    go(m_at);
}
void TimelineChart::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    go(m_at);
}

Timeline::Timeline(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    m_stack = new QStackedWidget(this);
    m_chart = new TimelineChart(session, m_stack);
    m_table = new QTableWidget(m_stack);
    m_table->setObjectName(QStringLiteral("timeline_table"));
    m_table->setAccessibleName(tr("Harvest timeline as a table; T shows the chart"));
    m_table->setTabKeyNavigation(false);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setShowGrid(false);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->installEventFilter(this);
    m_stack->addWidget(m_chart);
    m_stack->addWidget(m_table);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_stack, 1);
    connect(m_chart, &TimelineChart::opened, this, &Timeline::open);
}

void Timeline::show(const SeasonYield& season, const std::vector<SeasonYield>& beside) {
    m_runs.clear();
    for (const RunBalance& run : season.runs) m_runs.push_back(run.run.id);
    m_chart->show(stepsView(timelineBlock(season, beside)), m_year == season.year);
    m_year = season.year;
    fillTable(timelineTable(season, beside));
}

void Timeline::toggleTable() {
    const bool inside = hasFocusInside();
    m_stack->setCurrentWidget(tableShown() ? static_cast<QWidget*>(m_chart) : m_table);
    if (inside) m_stack->currentWidget()->setFocus();
}

std::optional<Id<Extraction>> Timeline::currentRun() const {
    int at = -1;
    if (m_chart->hasFocus() && m_chart->view().current)
        at = static_cast<int>(*m_chart->view().current);
    if (m_table->hasFocus()) at = m_table->currentRow();
    if (at < 0 || at >= static_cast<int>(m_runs.size())) return std::nullopt;
    return m_runs[static_cast<std::size_t>(at)];
}

void Timeline::open(int row) {
    if (row >= 0 && row < static_cast<int>(m_runs.size()))
        Q_EMIT runOpened(m_runs[static_cast<std::size_t>(row)]);
}

bool Timeline::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        const auto key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            open(m_table->currentRow());
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void Timeline::fillTable(const HarvestTable& table) {
    const int row = m_table->currentRow();
    m_table->clear();
    // The grams are for files; on the screen the shown unit is enough.
    std::vector<int> columns;
    for (int i = 0; i < table.head.size(); ++i)
        if (!table.head[i].endsWith(QLatin1String("(g)"))) columns.push_back(i);
    m_table->setColumnCount(static_cast<int>(columns.size()));
    m_table->setRowCount(static_cast<int>(table.rows.size()));
    for (int c = 0; c < m_table->columnCount(); ++c) {
        const int from = columns[static_cast<std::size_t>(c)];
        m_table->setHorizontalHeaderItem(c, new QTableWidgetItem(table.head[from]));
        for (int r = 0; r < m_table->rowCount(); ++r) {
            const bool mass = table.head[from].endsWith(QLatin1Char(')'));
            QString text = table.rows[static_cast<std::size_t>(r)][from];
            if (mass && !text.isEmpty()) text = QLocale().toString(text.toDouble(), 'f', 1);
            auto* item = new QTableWidgetItem(text);
            if (mass) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            m_table->setItem(r, c, item);
        }
    }
    const Look& look = m_session.look();
    m_table->verticalHeader()->setDefaultSectionSize(look.space(22));
    m_table->resizeColumnsToContents();
    // The ring around the current cell takes room the words need, and a head is set in the font of
    // its header, which may be wider than what is reckoned for it.
    const QFontMetrics head(m_table->horizontalHeader()->font());
    for (int c = 0; c < m_table->columnCount(); ++c)
        m_table->setColumnWidth(
            c, std::max(m_table->columnWidth(c) + look.space(8),
                        head.horizontalAdvance(m_table->horizontalHeaderItem(c)->text()) +
                            look.space(24)));
    if (m_table->rowCount() > 0)
        m_table->setCurrentCell(std::clamp(row, 0, m_table->rowCount() - 1), 0);
}

}  // namespace combwright
