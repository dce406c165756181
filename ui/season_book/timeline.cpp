#include "ui/season_book/timeline.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>
#include <QPainter>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "core/places/pages/season_book/harvest_summary_page.h"
#include "core/words/words.h"
#include "ui/print/chart_views.h"

namespace combwright {
namespace {

/// As the choice box lists them.
constexpr std::array<HarvestDrawn, 8> allHarvestDrawn{{{HarvestBy::Run, false},
                                                       {HarvestBy::Run, true},
                                                       {HarvestBy::Lot, false},
                                                       {HarvestBy::Lot, true},
                                                       {HarvestBy::Yard, false},
                                                       {HarvestBy::Yard, true},
                                                       {HarvestBy::Hive, false},
                                                       {HarvestBy::Hive, true}}};
/// A chart holds six lines.
constexpr std::size_t mostBesides = 5;

}  // namespace

TimelineChart::TimelineChart(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("timeline_chart"));
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(
        tr("Harvest timeline; T shows it as a table, Y lays one more year beside it"));
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

int TimelineChart::steps() const {
    if (m_line >= static_cast<int>(m_view.lines.size())) return 0;
    return static_cast<int>(m_view.lines[static_cast<std::size_t>(m_line)].steps.size());
}

void TimelineChart::show(StepsView view, bool sameYear) {
    m_view = std::move(view);
    if (!sameYear) m_at = 0;
    if (!sameYear || m_line >= static_cast<int>(m_view.lines.size())) m_line = 0;
    go(m_at);
}

void TimelineChart::go(int step) {
    m_at = std::clamp(step, 0, std::max(0, steps() - 1));
    m_view.current.reset();
    m_view.currentLine = 0;
    m_view.said.clear();
    if (hasFocus() && steps() > 0) {
        m_view.current = static_cast<std::size_t>(m_at);
        m_view.currentLine = static_cast<std::size_t>(m_line);
        const StepsView::Line& line = m_view.lines[m_view.currentLine];
        m_view.said = tr("%1: %2").arg(line.year).arg(line.steps[*m_view.current].label);
    }
    setAccessibleDescription(m_view.said.isEmpty() ? spoken(m_view) : m_view.said);
    update();
}

/// To another year's run nearest in the year; a year without a day is passed over.
void TimelineChart::goToLine(int line) {
    const int way = line < m_line ? -1 : 1;
    const auto lines = static_cast<int>(m_view.lines.size());
    while (line >= 0 && line < lines && m_view.lines[static_cast<std::size_t>(line)].steps.empty())
        line += way;
    if (line < 0 || line >= lines) return;
    const auto dayOf = [&](int of, int step) {
        const auto& steps = m_view.lines[static_cast<std::size_t>(of)].steps;
        return laidOver(steps[static_cast<std::size_t>(step)].on, m_view.lines.front().year);
    };
    int nearest = 0;
    if (steps() > 0) {
        const auto away = [&](int step) {
            return std::abs((dayOf(line, step) - dayOf(m_line, m_at)).count());
        };
        const auto there = m_view.lines[static_cast<std::size_t>(line)].steps.size();
        for (int i = 1; i < static_cast<int>(there); ++i)
            if (away(i) < away(nearest)) nearest = i;
    }
    m_line = line;
    go(nearest);
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
        case Qt::Key_Up:
            return goToLine(m_line - 1);
        case Qt::Key_Down:
            return goToLine(m_line + 1);
        case Qt::Key_Home:
            return go(0);
        case Qt::Key_End:
            return go(steps() - 1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (steps() > 0) Q_EMIT opened(m_line, m_at);
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void TimelineChart::mousePressEvent(QMouseEvent* event) {
    int nearest = 0;
    double least = 1e9;
    m_line = 0;
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
    m_title = new QLabel(tr("Harvest timeline"), this);
    m_choice = new QComboBox(this);
    m_choice->setObjectName(QStringLiteral("timeline_by"));
    m_choice->setAccessibleName(tr("How the harvest is drawn"));
    m_choice->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_choice->addItems({tr("by run, added up"), tr("by run, each"), tr("by lot, added up"),
                        tr("by lot, each"), tr("by yard, added up"), tr("by yard, each"),
                        tr("by hive, added up"), tr("by hive, each")});
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
    m_pane = new ChartPane(session, m_stack);
    m_stack->addWidget(m_chart);
    m_stack->addWidget(m_table);
    m_stack->addWidget(m_pane);
    m_head = new QHBoxLayout;
    m_head->addWidget(m_title);
    m_head->addWidget(m_choice);
    m_head->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(m_head);
    column->addWidget(m_stack, 1);
    connect(m_choice, &QComboBox::activated, this,
            [this](int index) { choose(allHarvestDrawn[static_cast<std::size_t>(index)]); });
    connect(m_chart, &TimelineChart::opened, this, [this](int line, int step) {
        if (const auto run = runAt(line, step)) Q_EMIT runOpened(*run);
    });
    connect(m_pane, &ChartPane::opened, this, [this](ChartMark mark) {
        if (const std::int64_t run = m_pane->pointAt(mark).run; run != 0)
            Q_EMIT runOpened(Id<Extraction>{run});
    });
    connect(&session, &Session::lookChanged, this, &Timeline::sizes);
    // A table takes letters for a search of its own.
    auto* more = new QShortcut(QKeySequence(Qt::Key_Y), this);
    more->setContext(Qt::WidgetWithChildrenShortcut);
    more->setWhatsThis(tr("one more year beside it"));
    connect(more, &QShortcut::activated, this, &Timeline::oneMoreYear);
    sizes();
}

void Timeline::sizes() {
    const Look& look = m_session.look();
    m_title->setFont(look.font(TextSize::Body, true));
    layout()->setSpacing(look.space(4));
    m_head->setSpacing(look.space(8));
}

void Timeline::show(const SeasonYield& season, const std::vector<SeasonYield>& beside) {
    m_season = season;
    m_given = beside;
    findYears();
    fill();
}

/// The years given, then the nearest of the others that brought honey.
void Timeline::findYears() {
    m_besides = m_given;
    if (m_more == 0) return;
    const Read& file = m_session.read();
    std::vector<int> others = seasonYears(file, m_session.clock().today());
    std::erase_if(others, [&](int year) {
        return year == m_season.year ||
               std::any_of(m_given.begin(), m_given.end(),
                           [year](const SeasonYield& given) { return given.year == year; });
    });
    std::stable_sort(others.begin(), others.end(), [&](int a, int b) {
        return std::abs(a - m_season.year) < std::abs(b - m_season.year);
    });
    std::size_t found = 0;
    for (const int year : others) {
        if (found == m_more || m_besides.size() >= mostBesides) break;
        SeasonYield season = seasonYield(file, year);
        if (season.total == Mass()) continue;
        m_besides.push_back(std::move(season));
        ++found;
    }
    m_more = found;
}

void Timeline::oneMoreYear() {
    m_session.reading([this] {
        const std::size_t before = m_more;
        ++m_more;
        findYears();
        if (m_more == before) {
            m_more = 0;
            findYears();
        }
        fill();
    });
}

void Timeline::choose(const HarvestDrawn& drawn) {
    if (drawn == m_drawn) return;
    const bool table = tableShown();
    const bool inside = m_chart->hasFocus() || m_table->hasFocus() || m_pane->hasFocusInside();
    m_drawn = drawn;
    for (std::size_t i = 0; i < allHarvestDrawn.size(); ++i)
        if (allHarvestDrawn[i] == drawn) m_choice->setCurrentIndex(static_cast<int>(i));
    fill();
    if (table != tableShown()) toggleTable();
    if (inside) focusBack();
}

void Timeline::fill() {
    m_chart->show(stepsView(timelineBlock(m_season, m_besides)), m_year == m_season.year);
    m_year = m_season.year;
    m_rowRuns.clear();
    const auto addRows = [this](const SeasonYield& year) {
        for (const RunBalance& run : year.runs) m_rowRuns.emplace_back(run.run.id);
        if (year.noted) m_rowRuns.emplace_back();
    };
    addRows(m_season);
    for (const SeasonYield& year : m_besides) addRows(year);
    fillTable(timelineTable(m_season, m_besides));
    if (!ownSteps()) {
        std::vector<HarvestLine> lines{harvestLine(m_season, m_drawn.by)};
        for (const SeasonYield& year : m_besides) lines.push_back(harvestLine(year, m_drawn.by));
        m_pane->show(harvestChart(lines, m_drawn));
        m_stack->setCurrentWidget(m_pane);
    } else if (m_stack->currentWidget() == m_pane) {
        m_stack->setCurrentWidget(m_chart);
    }
}

bool Timeline::tableShown() const {
    return m_stack->currentWidget() == m_pane ? m_pane->tableShown()
                                              : m_stack->currentWidget() == m_table;
}

void Timeline::toggleTable() {
    if (m_stack->currentWidget() == m_pane) return m_pane->toggleTable();
    const bool inside = hasFocusInside();
    m_stack->setCurrentWidget(tableShown() ? static_cast<QWidget*>(m_chart) : m_table);
    if (inside) m_stack->currentWidget()->setFocus();
}

bool Timeline::hasFocusInside() const {
    return m_chart->hasFocus() || m_table->hasFocus() || m_choice->hasFocus() ||
           m_pane->hasFocusInside();
}

void Timeline::focusBack() {
    if (m_stack->currentWidget() == m_pane)
        m_pane->currentWidget()->setFocus();
    else
        m_stack->currentWidget()->setFocus();
}

std::optional<Id<Extraction>> Timeline::runAt(int line, int step) const {
    const auto& lines = m_chart->view().lines;
    if (line < 0 || line >= static_cast<int>(lines.size())) return std::nullopt;
    const int year = lines[static_cast<std::size_t>(line)].year;
    const auto at = static_cast<std::size_t>(step);
    const auto runOf = [&](const SeasonYield& season) -> std::optional<Id<Extraction>> {
        return season.year == year && at < season.runs.size()
                   ? std::optional(season.runs[at].run.id)
                   : std::nullopt;
    };
    if (const auto run = runOf(m_season)) return run;
    for (const SeasonYield& season : m_besides)
        if (const auto run = runOf(season)) return run;
    return std::nullopt;
}

std::optional<Id<Extraction>> Timeline::currentRun() const {
    if (m_chart->hasFocus() && m_chart->view().current)
        return runAt(static_cast<int>(m_chart->view().currentLine),
                     static_cast<int>(*m_chart->view().current));
    if (const auto mark = m_pane->currentMark()) {
        const std::int64_t run = m_pane->pointAt(*mark).run;
        return run == 0 ? std::nullopt : std::optional(Id<Extraction>{run});
    }
    const int row = m_table->hasFocus() ? m_table->currentRow() : -1;
    if (row < 0 || row >= static_cast<int>(m_rowRuns.size())) return std::nullopt;
    return m_rowRuns[static_cast<std::size_t>(row)];
}

void Timeline::open(int row) {
    if (row < 0 || row >= static_cast<int>(m_rowRuns.size())) return;
    if (const auto run = m_rowRuns[static_cast<std::size_t>(row)]) Q_EMIT runOpened(*run);
}

Page Timeline::page(Day printed) const {
    const Read& file = m_session.read();
    if (ownSteps()) return timelinePage(file, m_season, m_besides, printed);
    return chartPage(file, m_pane->chartBlock(), printed);
}

HarvestTable Timeline::rows() const {
    return ownSteps() ? timelineTable(m_season, m_besides) : chartTable(m_pane->chartBlock());
}

bool Timeline::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        if (static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy)) {
            copyRows(*m_table);
            return true;
        }
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
