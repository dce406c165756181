#include "ui/yard/hive_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/drawing/figure.h"

namespace combwright {
namespace {

/// At the base font, px: below that cells follow each other in one.
constexpr int narrowBelow = 560;

}  // namespace

void HiveCellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                             const QModelIndex& index) const {
    QStyleOptionViewItem ground = option;
    initStyleOption(&ground, index);
    ground.text.clear();
    if (ground.widget)
        ground.widget->style()->drawControl(QStyle::CE_ItemViewItem, &ground, painter,
                                            ground.widget);
    const Look& look = m_session.look();
    // As far in as the words of the head.
    const QRect room =
        option.rect.adjusted(look.space(4), look.space(4), -look.space(8), -look.space(4));
    paintFlowing(*painter, room, m_words(index.row(), index.column()), look);
}

int HiveCellDelegate::heightFor(const FlowingWords& words, int width) const {
    const Look& look = m_session.look();
    const int room = width - look.space(4) - look.space(8);
    return 2 * look.space(4) + 2 + static_cast<int>(std::ceil(flowingHeight(words, room, look)));
}

HiveTable::HiveTable(Session& session, std::vector<HiveColumn> columns, QWidget* parent)
    : QTableWidget(parent), m_session(session), m_columns(std::move(columns)) {
    setTabKeyNavigation(false);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setShowGrid(false);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    verticalHeader()->hide();
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionsClickable(false);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    auto* words = new HiveCellDelegate(session, this);
    words->setWords([this](int row, int column) { return wordsOf(row, column); });
    setItemDelegate(words);
    // The mark has the tick beside it as every list has.
    setItemDelegateForColumn(0, new QStyledItemDelegate(this));
    connect(this, &QTableWidget::itemChanged, this, [this](QTableWidgetItem* item) {
        if (m_filling || item->column() != 0) return;
        const auto at = static_cast<std::size_t>(item->row());
        tick(m_rows[at].hive, item->checkState() == Qt::Checked);
    });
    connect(this, &QTableWidget::itemDoubleClicked, this, &HiveTable::hiveActivated);
    connect(&session, &Session::lookChanged, this, [this] { fill(); });
}

QString HiveTable::spokenRow(const HiveTableRow& row) const {
    QStringList said{m_ticked.contains(row.hive.number) ? tr("%1, ticked").arg(row.mark)
                                                        : row.mark};
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        if (row.cells[c].text.isEmpty()) continue;
        said << QStringLiteral("%1: %2").arg(m_columns[c].head, row.cells[c].text);
        if (row.cells[c].how != 0) said.back() += QLatin1Char(' ') + howWord(row.cells[c].how);
        if (!row.cells[c].note.isEmpty()) said << row.cells[c].note;
    }
    return said.join(QStringLiteral(". "));
}

FlowingWords HiveTable::wordsOf(int row, int column) const {
    if (row < 0 || row >= static_cast<int>(m_rows.size())) return {};
    const HiveTableRow& hive = m_rows[static_cast<std::size_t>(row)];
    if (m_narrow) return wordsInOne(hive);
    const auto at = static_cast<std::size_t>(column - 1);
    if (column < 1 || at >= hive.cells.size()) return {};
    const HiveCell& cell = hive.cells[at];
    FlowingWords words;
    if (!cell.text.isEmpty()) words.push_back({cell.text, TextSize::Body, cell.tone, cell.strong});
    addHow(words, cell.how);
    const QString note = cell.text.isEmpty() ? cell.note : QLatin1Char('\n') + cell.note;
    if (!cell.note.isEmpty()) words.push_back({note, TextSize::Note, Tone::Muted});
    return words;
}

// A line a cell would make a row half a page of large type; what is said of a hive then runs on,
// each with the word of its column before it.
FlowingWords HiveTable::wordsInOne(const HiveTableRow& row) const {
    FlowingWords words;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        const HiveCell& cell = row.cells[c];
        const auto inOne = [](QString text) {
            return text.replace(QLatin1Char('\n'), QLatin1String("; "));
        };
        if (cell.text.isEmpty() && cell.note.isEmpty()) continue;
        if (!words.empty())
            words.push_back({QStringLiteral("\u00A0\u00B7 "), TextSize::Note, Tone::Muted});
        words.push_back(
            {m_columns[c].head + QStringLiteral(": "), TextSize::Note, Tone::Muted, true});
        if (!cell.text.isEmpty())
            words.push_back({inOne(cell.text), TextSize::Note, cell.tone, cell.strong});
        addHow(words, cell.how, TextSize::Note);
        if (cell.note.isEmpty()) continue;
        const QString note =
            cell.text.isEmpty() ? inOne(cell.note) : QStringLiteral(" (%1)").arg(inOne(cell.note));
        words.push_back({note, TextSize::Note, Tone::Muted});
    }
    return words;
}

void HiveTable::show(std::vector<HiveTableRow> rows) {
    m_rows = std::move(rows);
    std::set<std::int64_t> there;
    for (const HiveTableRow& row : m_rows) there.insert(row.hive.number);
    std::erase_if(m_ticked, [&](std::int64_t hive) { return !there.contains(hive); });
    fill();
}

void HiveTable::fill() {
    const auto* before = current();
    const std::optional<Id<Hive>> was = before ? std::optional(before->hive) : std::nullopt;
    const Look& look = m_session.look();
    m_filling = true;
    m_narrow = width() < look.space(narrowBelow);
    clear();
    setColumnCount(m_narrow ? 2 : 1 + static_cast<int>(m_columns.size()));
    setRowCount(static_cast<int>(m_rows.size()));
    const auto headItem = [this](int column, const QString& text) {
        auto* head = new QTableWidgetItem(text);
        head->setTextAlignment(Qt::AlignBottom | Qt::AlignLeft);
        setHorizontalHeaderItem(column, head);
    };
    headItem(0, tr("hive"));
    if (m_narrow) headItem(1, tr("how it stands"));
    for (int c = 0; !m_narrow && c < static_cast<int>(m_columns.size()); ++c)
        headItem(c + 1, m_columns[static_cast<std::size_t>(c)].head);
    for (int r = 0; r < rowCount(); ++r) {
        const HiveTableRow& row = m_rows[static_cast<std::size_t>(r)];
        auto* mark = new QTableWidgetItem(row.mark);
        mark->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        mark->setCheckState(m_ticked.contains(row.hive.number) ? Qt::Checked : Qt::Unchecked);
        mark->setFont(look.font(TextSize::Body, true));
        mark->setData(Qt::AccessibleTextRole, spokenRow(row));
        setItem(r, 0, mark);
        for (int c = 1; c < columnCount(); ++c) {
            QStringList said;
            for (const FlowingRun& run : wordsOf(r, c)) said << run.text;
            auto* item = new QTableWidgetItem(said.join(QString()));
            item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
            setItem(r, c, item);
        }
    }
    m_filling = false;
    if (was) choose(*was);
    if (currentRow() < 0 && rowCount() > 0) setCurrentCell(0, 0);
    sizes();
}

void HiveTable::sizes() {
    const Look& look = m_session.look();
    horizontalHeader()->setFont(look.font(TextSize::Note));
    setFont(look.font(TextSize::Body));
    fit();
}

void HiveTable::fit() {
    if (columnCount() == 0) return;
    const Look& look = m_session.look();
    const QFontMetrics metrics(look.font(TextSize::Body, true));
    int mark = QFontMetrics(horizontalHeader()->font()).horizontalAdvance(tr("hive"));
    for (const HiveTableRow& row : m_rows)
        mark = std::max(mark, metrics.horizontalAdvance(row.mark));
    mark += style()->pixelMetric(QStyle::PM_IndicatorWidth) + look.space(28);
    setColumnWidth(0, mark);
    const int room = std::max(viewport()->width() - mark, 1);
    if (m_narrow) {
        setColumnWidth(1, room);
    } else {
        // A column nobody has anything in keeps the room of its head; the others take the rest.
        const QFontMetrics heads(look.font(TextSize::Body));
        std::vector<int> wide(m_columns.size(), 0);
        double shares = 0;
        int shared = room;
        for (std::size_t c = 0; c < m_columns.size(); ++c) {
            const bool empty = std::all_of(m_rows.begin(), m_rows.end(), [&](const auto& row) {
                return c >= row.cells.size() ||
                       (row.cells[c].text.isEmpty() && row.cells[c].note.isEmpty());
            });
            if (empty)
                wide[c] = heads.horizontalAdvance(m_columns[c].head) + look.space(16);
            else
                shares += m_columns[c].share;
            shared -= wide[c];
        }
        int left = room;
        for (std::size_t c = 0; c < m_columns.size(); ++c) {
            if (wide[c] == 0)
                wide[c] = static_cast<int>(std::floor(shared * m_columns[c].share / shares));
            if (c + 1 == m_columns.size()) wide[c] = std::max(left, 1);
            setColumnWidth(static_cast<int>(c) + 1, wide[c]);
            left -= wide[c];
        }
    }
    const auto* words = static_cast<const HiveCellDelegate*>(itemDelegate());
    verticalHeader()->setMinimumSectionSize(look.target());
    for (int r = 0; r < rowCount(); ++r) {
        int high = look.target() + look.space(4);
        for (int c = 1; c < columnCount(); ++c)
            high = std::max(high, words->heightFor(wordsOf(r, c), columnWidth(c)));
        setRowHeight(r, high);
    }
    Q_EMIT fitted();
}

int HiveTable::fullHeight() const {
    return verticalHeader()->length() + horizontalHeader()->sizeHint().height() + 2 * frameWidth() +
           2;
}

void HiveTable::resizeEvent(QResizeEvent* event) {
    QTableWidget::resizeEvent(event);
    if (event->oldSize().width() == event->size().width()) return;
    if (m_narrow != (width() < m_session.look().space(narrowBelow)))
        fill();
    else
        fit();
}

void HiveTable::focusInEvent(QFocusEvent* event) {
    QTableWidget::focusInEvent(event);
    if (currentRow() < 0 && rowCount() > 0) setCurrentCell(0, 0);
}

std::vector<const HiveTableRow*> HiveTable::ticked() const {
    std::vector<const HiveTableRow*> rows;
    for (const HiveTableRow& row : m_rows)
        if (m_ticked.contains(row.hive.number)) rows.push_back(&row);
    return rows;
}

void HiveTable::tick(Id<Hive> hive, bool on) {
    if (on)
        m_ticked.insert(hive.number);
    else
        m_ticked.erase(hive.number);
    m_filling = true;
    for (int r = 0; r < rowCount(); ++r) {
        const HiveTableRow& row = m_rows[static_cast<std::size_t>(r)];
        if (row.hive != hive || !item(r, 0)) continue;
        item(r, 0)->setCheckState(on ? Qt::Checked : Qt::Unchecked);
        item(r, 0)->setData(Qt::AccessibleTextRole, spokenRow(row));
    }
    m_filling = false;
}

void HiveTable::tickAll() {
    const bool all = ticked().size() == m_rows.size();
    for (const HiveTableRow& row : m_rows) tick(row.hive, !all);
}

const HiveTableRow* HiveTable::current() const {
    const int at = currentRow();
    return at < 0 || at >= static_cast<int>(m_rows.size()) ? nullptr
                                                           : &m_rows[static_cast<std::size_t>(at)];
}

void HiveTable::choose(Id<Hive> hive) {
    for (std::size_t r = 0; r < m_rows.size(); ++r)
        if (m_rows[r].hive == hive) setCurrentCell(static_cast<int>(r), 0);
}

void HiveTable::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Space:
            if (const auto* row = current()) tick(row->hive, !m_ticked.contains(row->hive.number));
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (event->modifiers() & Qt::ControlModifier) return event->ignore();
            Q_EMIT hiveActivated();
            return;
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_PageUp:
        case Qt::Key_PageDown:
        case Qt::Key_Home:
        case Qt::Key_End:
            if (const int row = currentRow(); event->key() == Qt::Key_Home && row >= 0)
                return setCurrentCell(0, 0);
            else if (event->key() == Qt::Key_End && row >= 0)
                return setCurrentCell(rowCount() - 1, 0);
            return QTableWidget::keyPressEvent(event);
        default:
            // Letters are the page's: a table that searches for them would eat its keys.
            event->ignore();
    }
}

}  // namespace combwright
