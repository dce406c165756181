#include "ui/season_book/chart_pane.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>
#include <algorithm>

namespace combwright {
namespace {

/// A number of the table as the person's language writes it; what is none stays.
QString localNumber(const QString& cell) {
    QString text = cell;
    return text.replace(QLatin1Char('.'), QLocale().decimalPoint());
}

}  // namespace

void copyRows(const QTableWidget& table) {
    QStringList lines;
    const auto add = [&](const auto& cellOf) {
        QStringList cells;
        for (int c = 0; c < table.columnCount(); ++c) cells << cellOf(c);
        lines << cells.join(QLatin1Char('\t'));
    };
    add([&](int c) { return table.horizontalHeaderItem(c)->text(); });
    for (int r = 0; r < table.rowCount(); ++r)
        if (table.selectionModel()->isRowSelected(r, QModelIndex()))
            add([&](int c) { return table.item(r, c)->text(); });
    QApplication::clipboard()->setText(lines.join(QLatin1Char('\n')));
}

ChartPane::ChartPane(Session& session, QWidget* parent)
    : QStackedWidget(parent), m_session(session) {
    m_chart = new MarkChartView(session, this);
    m_table = new QTableWidget(this);
    m_table->setObjectName(QStringLiteral("chart_table"));
    m_table->setTabKeyNavigation(false);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setShowGrid(false);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->installEventFilter(this);
    addWidget(m_chart);
    addWidget(m_table);
    connect(m_chart, &MarkChartView::opened, this, &ChartPane::opened);
    connect(&session, &Session::lookChanged, this, &ChartPane::sizes);
}

void ChartPane::show(const ChartBlock& chart) {
    m_chart->show(chart);
    m_table->setAccessibleName(
        tr("%1 %2 as a table; T shows the chart").arg(chart.title).arg(chart.year));
    fill();
}

void ChartPane::fill() {
    const ChartBlock& chart = chartBlock();
    const HarvestTable table = chartTable(chart);
    const int row = m_table->currentRow();
    m_table->clear();
    // What a file has once more in grams is enough once on a screen.
    std::vector<int> columns;
    for (std::size_t i = 0; i < chart.columns.size(); ++i)
        if (!chart.columns[i].fileOnly) columns.push_back(static_cast<int>(i));
    m_table->setColumnCount(static_cast<int>(columns.size()));
    m_table->setRowCount(static_cast<int>(table.rows.size()));
    for (int c = 0; c < m_table->columnCount(); ++c) {
        const int from = columns[static_cast<std::size_t>(c)];
        const ChartBlock::Column& column = chart.columns[static_cast<std::size_t>(from)];
        m_table->setHorizontalHeaderItem(c, new QTableWidgetItem(column.head));
        for (int r = 0; r < m_table->rowCount(); ++r) {
            const QString cell = table.rows[static_cast<std::size_t>(r)].value(from);
            auto* item = new QTableWidgetItem(column.number ? localNumber(cell) : cell);
            if (column.number) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            m_table->setItem(r, c, item);
        }
    }
    if (m_table->rowCount() > 0)
        m_table->setCurrentCell(std::clamp(row, 0, m_table->rowCount() - 1), 0);
    sizes();
}

void ChartPane::sizes() {
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
}

void ChartPane::toggleTable() {
    const bool inside = hasFocusInside();
    if (tableShown()) {
        if (const auto mark = markInTable()) m_chart->go(*mark);
        setCurrentWidget(m_chart);
    } else {
        if (const auto mark = m_chart->current())
            m_table->setCurrentCell(static_cast<int>(rowOfMark(chartBlock(), *mark)), 0);
        setCurrentWidget(m_table);
    }
    if (inside) currentWidget()->setFocus();
}

std::optional<ChartMark> ChartPane::markInTable() const {
    const int row = m_table->currentRow();
    return row < 0 ? std::nullopt : markOfRow(chartBlock(), static_cast<std::size_t>(row));
}

std::optional<ChartMark> ChartPane::currentMark() const {
    return m_table->hasFocus() ? markInTable() : m_chart->current();
}

bool ChartPane::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        if (static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy)) {
            copyRows(*m_table);
            return true;
        }
        const auto key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            if (const auto mark = markInTable()) Q_EMIT opened(*mark);
            return true;
        }
    }
    return QStackedWidget::eventFilter(watched, event);
}

}  // namespace combwright
