#include "ui/common/words_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>
#include <cmath>
#include <optional>

#include "ui/drawing/figure.h"

namespace combwright {
namespace {

/// At the base font, px: below that cells follow each other in one.
constexpr int narrowBelow = 560;
/// Of a table without ticks the marks take at most so much of it; longer ones wrap.
constexpr double widestMarks = 0.3;

/// Line by line, as they were written.
std::vector<FlowingWords> linesOf(const FlowingWords& words) {
    std::vector<FlowingWords> lines(1);
    for (const FlowingRun& run : words) {
        const QStringList parts = run.text.split(QLatin1Char('\n'));
        for (int i = 0; i < parts.size(); ++i) {
            if (i > 0) lines.emplace_back();
            if (parts[i].isEmpty()) continue;
            FlowingRun part = run;
            part.text = parts[i];
            lines.back().push_back(part);
        }
    }
    return lines;
}

/// Figures keep a distance from the words that follow them.
QString headText(const WordsColumn& column) {
    return column.right ? column.head + QStringLiteral("\u00A0\u00A0") : column.head;
}

double naturalWidth(const FlowingWords& line, const Look& look) {
    double wide = 0;
    for (const FlowingRun& run : line)
        wide += QFontMetricsF(look.font(run.size, run.bold)).horizontalAdvance(run.text);
    return std::ceil(wide) + 1;
}

class WordsDelegate : public QStyledItemDelegate {
  public:
    explicit WordsDelegate(WordsTable& table) : QStyledItemDelegate(&table), m_table(table) {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        QStyleOptionViewItem ground = option;
        initStyleOption(&ground, index);
        ground.text.clear();
        if (ground.widget)
            ground.widget->style()->drawControl(QStyle::CE_ItemViewItem, &ground, painter,
                                                ground.widget);
        const Look& look = m_table.look();
        // As far in as the words of the head.
        QRectF room =
            option.rect.adjusted(look.space(4), look.space(4), -look.space(8), -look.space(4));
        const FlowingWords words = m_table.wordsOf(index.row(), index.column());
        if (!m_table.isRight(index.column())) return paintFlowing(*painter, room, words, look);
        for (const FlowingWords& line : linesOf(words)) {
            QRectF there = room;
            there.setLeft(std::max(room.left(), room.right() - naturalWidth(line, look)));
            paintFlowing(*painter, there, line, look);
            room.setTop(room.top() + flowingHeight(line, there.width(), look));
        }
    }

    int heightFor(const FlowingWords& words, int width) const {
        const Look& look = m_table.look();
        const int room = width - look.space(4) - look.space(8);
        return 2 * look.space(4) + 2 +
               static_cast<int>(std::ceil(flowingHeight(words, room, look)));
    }

  private:
    WordsTable& m_table;
};

}  // namespace

WordsTable::WordsTable(const Look& look, WordsHeads heads, std::vector<WordsColumn> columns,
                       WordsTicks ticks, QWidget* parent)
    : QTableWidget(parent),
      m_look(look),
      m_heads(std::move(heads)),
      m_columns(std::move(columns)),
      m_ticks(ticks) {
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
    setItemDelegate(new WordsDelegate(*this));
    // The mark has the tick beside it as every list has.
    if (this->ticks()) setItemDelegateForColumn(0, new QStyledItemDelegate(this));
    connect(this, &QTableWidget::itemChanged, this, [this](QTableWidgetItem* item) {
        if (m_filling || !this->ticks() || item->column() != 0) return;
        const auto at = static_cast<std::size_t>(item->row());
        tickKey(m_rows[at].key, item->checkState() == Qt::Checked);
    });
    connect(this, &QTableWidget::itemDoubleClicked, this, &WordsTable::rowActivated);
}

void WordsTable::setLook(const Look& look) {
    m_look = look;
    fill();
}

QString WordsTable::spokenRow(const WordsRow& row) const {
    QStringList said{m_ticked.contains(row.key) ? tr("%1, ticked").arg(row.mark) : row.mark};
    if (!row.note.isEmpty()) said << row.note;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        if (row.cells[c].text.isEmpty()) continue;
        said << QStringLiteral("%1: %2").arg(m_columns[c].head, row.cells[c].text);
        if (row.cells[c].how != 0) said.back() += QLatin1Char(' ') + howWord(row.cells[c].how);
        if (!row.cells[c].note.isEmpty()) said << row.cells[c].note;
    }
    return said.join(QStringLiteral(". "));
}

bool WordsTable::isRight(int column) const {
    const auto at = static_cast<std::size_t>(column - 1);
    return !m_narrow && column > 0 && at < m_columns.size() && m_columns[at].right;
}

FlowingWords WordsTable::wordsOf(int row, int column) const {
    if (row < 0 || row >= static_cast<int>(m_rows.size())) return {};
    const WordsRow& words = m_rows[static_cast<std::size_t>(row)];
    if (column == 0) {
        FlowingWords mark{{words.mark, TextSize::Body, Tone::Ink, true}};
        if (!words.note.isEmpty())
            mark.push_back({QLatin1Char('\n') + words.note, TextSize::Note, Tone::Muted});
        return mark;
    }
    if (m_narrow) return wordsInOne(words);
    const auto at = static_cast<std::size_t>(column - 1);
    if (at >= words.cells.size()) return {};
    const WordsCell& cell = words.cells[at];
    FlowingWords flowing;
    if (!cell.text.isEmpty())
        flowing.push_back({cell.text, TextSize::Body, cell.tone, cell.strong});
    addHow(flowing, cell.how);
    const QString note = cell.text.isEmpty() ? cell.note : QLatin1Char('\n') + cell.note;
    if (!cell.note.isEmpty()) flowing.push_back({note, TextSize::Note, Tone::Muted});
    return flowing;
}

// A line a cell would make a row half a page of large type; what is said of a row then runs on,
// each with the word of its column before it.
FlowingWords WordsTable::wordsInOne(const WordsRow& row) const {
    FlowingWords words;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        const WordsCell& cell = row.cells[c];
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

void WordsTable::showRows(std::vector<WordsRow> rows) {
    // Who it is about is asked before the rows go: the current one stays.
    const WordsRow* before = currentWords();
    const std::optional<std::int64_t> was = before ? std::optional(before->key) : std::nullopt;
    m_rows = std::move(rows);
    std::set<std::int64_t> there;
    for (const WordsRow& row : m_rows) there.insert(row.key);
    std::erase_if(m_ticked, [&](std::int64_t key) { return !there.contains(key); });
    fill();
    if (was) chooseKey(*was);
}

void WordsTable::fill() {
    const WordsRow* before = currentWords();
    const std::optional<std::int64_t> was = before ? std::optional(before->key) : std::nullopt;
    m_filling = true;
    m_narrow = width() < m_look.space(narrowBelow);
    clear();
    setColumnCount(m_narrow ? 2 : 1 + static_cast<int>(m_columns.size()));
    setRowCount(static_cast<int>(m_rows.size()));
    const auto headItem = [this](int column, const QString& text) {
        auto* head = new QTableWidgetItem(text);
        head->setTextAlignment(Qt::AlignBottom |
                               (isRight(column) ? Qt::AlignRight : Qt::AlignLeft));
        setHorizontalHeaderItem(column, head);
    };
    headItem(0, m_heads.mark);
    if (m_narrow) headItem(1, m_heads.narrow);
    for (int c = 0; !m_narrow && c < static_cast<int>(m_columns.size()); ++c)
        headItem(c + 1, headText(m_columns[static_cast<std::size_t>(c)]));
    for (int r = 0; r < rowCount(); ++r) {
        const WordsRow& row = m_rows[static_cast<std::size_t>(r)];
        auto* mark = new QTableWidgetItem(row.mark);
        mark->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable |
                       (ticks() ? Qt::ItemIsUserCheckable : Qt::NoItemFlags));
        if (ticks()) mark->setCheckState(m_ticked.contains(row.key) ? Qt::Checked : Qt::Unchecked);
        mark->setFont(m_look.font(TextSize::Body, true));
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
    if (was) chooseKey(*was);
    if (currentRow() < 0 && rowCount() > 0) setCurrentCell(0, 0);
    horizontalHeader()->setFont(m_look.font(TextSize::Note));
    setFont(m_look.font(TextSize::Body));
    fit();
}

int WordsTable::markWidth() const {
    const QFontMetrics metrics(m_look.font(TextSize::Body, true));
    // A head is painted in the type of the table.
    int mark = QFontMetrics(m_look.font(TextSize::Body)).horizontalAdvance(m_heads.mark);
    const QFontMetrics notes(m_look.font(TextSize::Note));
    for (const WordsRow& row : m_rows)
        mark = std::max(
            {mark, metrics.horizontalAdvance(row.mark), notes.horizontalAdvance(row.note)});
    if (ticks()) return mark + style()->pixelMetric(QStyle::PM_IndicatorWidth) + m_look.space(28);
    const int most = static_cast<int>(viewport()->width() * widestMarks);
    return std::min(mark + m_look.space(16), std::max(most, m_look.space(72)));
}

// A column nobody has anything in keeps the room of its head; the others take the rest.
void WordsTable::fitColumns(int room) {
    const QFontMetrics heads(m_look.font(TextSize::Body));
    std::vector<int> wide(m_columns.size(), 0);
    double shares = 0;
    int shared = room;
    for (std::size_t c = 0; c < m_columns.size(); ++c) {
        const bool empty = std::all_of(m_rows.begin(), m_rows.end(), [&](const WordsRow& row) {
            return c >= row.cells.size() ||
                   (row.cells[c].text.isEmpty() && row.cells[c].note.isEmpty());
        });
        if (empty)
            wide[c] = heads.horizontalAdvance(headText(m_columns[c])) + m_look.space(16);
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

void WordsTable::fit() {
    if (columnCount() == 0) return;
    const int mark = markWidth();
    setColumnWidth(0, mark);
    const int room = std::max(viewport()->width() - mark, 1);
    if (m_narrow)
        setColumnWidth(1, room);
    else
        fitColumns(room);
    const auto* words = static_cast<const WordsDelegate*>(itemDelegate());
    verticalHeader()->setMinimumSectionSize(m_look.target());
    for (int r = 0; r < rowCount(); ++r) {
        int high = m_look.target() + m_look.space(4);
        for (int c = ticks() ? 1 : 0; c < columnCount(); ++c)
            high = std::max(high, words->heightFor(wordsOf(r, c), columnWidth(c)));
        setRowHeight(r, high);
    }
    Q_EMIT fitted();
}

int WordsTable::fullHeight() const {
    return verticalHeader()->length() + horizontalHeader()->sizeHint().height() + 2 * frameWidth() +
           2;
}

void WordsTable::resizeEvent(QResizeEvent* event) {
    QTableWidget::resizeEvent(event);
    if (event->oldSize().width() == event->size().width()) return;
    if (m_narrow != (width() < m_look.space(narrowBelow)))
        fill();
    else
        fit();
}

void WordsTable::focusInEvent(QFocusEvent* event) {
    QTableWidget::focusInEvent(event);
    if (currentRow() < 0 && rowCount() > 0) setCurrentCell(0, 0);
}

void WordsTable::tickKey(std::int64_t key, bool on) {
    if (on)
        m_ticked.insert(key);
    else
        m_ticked.erase(key);
    m_filling = true;
    for (int r = 0; r < rowCount(); ++r) {
        const WordsRow& row = m_rows[static_cast<std::size_t>(r)];
        if (row.key != key || !item(r, 0)) continue;
        item(r, 0)->setCheckState(on ? Qt::Checked : Qt::Unchecked);
        item(r, 0)->setData(Qt::AccessibleTextRole, spokenRow(row));
    }
    m_filling = false;
}

const WordsRow* WordsTable::currentWords() const {
    const int at = currentRow();
    return at < 0 || at >= static_cast<int>(m_rows.size()) ? nullptr
                                                           : &m_rows[static_cast<std::size_t>(at)];
}

void WordsTable::chooseKey(std::int64_t key) {
    for (std::size_t r = 0; r < m_rows.size(); ++r)
        if (m_rows[r].key == key) setCurrentCell(static_cast<int>(r), 0);
}

void WordsTable::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Space:
            if (const WordsRow* row = currentWords(); row && ticks())
                return tickKey(row->key, !m_ticked.contains(row->key));
            return event->ignore();
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (event->modifiers() & Qt::ControlModifier) return event->ignore();
            Q_EMIT rowActivated();
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
