#include "ui/storeroom/frame_board_view.h"

#include <QAccessible>
#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "core/places/pages/board_words.h"
#include "core/words/words.h"
#include "ui/drawing/frame_row.h"
#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

constexpr double leastRowPx = 20;
constexpr double headPx = 22;
constexpr double shelfGapPx = 14;
constexpr int boardColumnGap = 24;
constexpr int rowInset = 4;
constexpr double widestFramePx = 38;
constexpr double narrowestFramePx = 21;
constexpr double mostMarkPx = 120;
/// A shelf of more boxes than this goes over both columns.
constexpr std::size_t tallShelf = 40;
/// Rows with more frames than a box has get smaller frames.
constexpr std::size_t usualMostFrames = 12;

using RowKey = std::tuple<std::int64_t, std::string, std::int64_t, int, std::int64_t>;

/// A row again after the board was made anew.
RowKey keyOf(const BoardShelf& shelf, const BoardRow& row) {
    const std::int64_t first = row.frames.empty() ? 0 : row.frames.front().id.number;
    return {row.box ? row.box->number : 0, row.box ? std::string() : row.place.name,
            row.box ? 0 : first, shelf.verdict ? static_cast<int>(*shelf.verdict) : -1,
            shelf.year.value_or(-1)};
}

/// Room for as many as a box may have.
QString widestText(RowState state) {
    if (state.state == BoxState::Frozen) state = {BoxState::Frozen, {}, 10, 11, {}};
    return boardStateText(state);
}

}  // namespace

FrameBoardView::FrameBoardView(const Look& look, QWidget* parent)
    : QAbstractScrollArea(parent), m_look(look) {
    setObjectName(QStringLiteral("frame_board"));
    setAccessibleName(tr("Frame board"));
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    viewport()->setFocusProxy(this);
    // What scrolls is moved, and only what comes into sight is painted.
    viewport()->setAttribute(Qt::WA_OpaquePaintEvent);
    m_frames.setLook(look);
    setType();
}

void FrameBoardView::setType() {
    m_type.bold = m_look.font(TextSize::Body, true);
    m_type.note = m_look.font(TextSize::Note);
    m_type.empty = m_look.font(TextSize::Note, false, true);
    m_type.cap = capHeight(m_type.bold);
    m_type.step = lineStep(m_look.font(TextSize::Body));
}

void FrameBoardView::setLook(const Look& look) {
    m_look = look;
    m_frames.setLook(look);
    setType();
    measureWords();
    layOut();
    showCurrent();
    viewport()->update();
}

void FrameBoardView::setBoard(FrameBoard board) {
    std::optional<RowKey> before;
    std::set<RowKey> selected;
    const std::size_t at = m_current;
    if (hasCurrent())
        before = keyOf(m_board.shelves[m_lines[m_current].shelf], rowOf(m_lines[m_current]));
    for (const Line& line : m_lines)
        if (line.selected) selected.insert(keyOf(m_board.shelves[line.shelf], rowOf(line)));
    m_board = std::move(board);
    m_frames.setKinds(m_board.kinds);
    m_mostFrames = 9;
    for (const BoardShelf& shelf : m_board.shelves)
        for (const BoardRow& row : shelf.rows)
            m_mostFrames = std::max(m_mostFrames, std::min(row.frames.size(), usualMostFrames));
    m_selectedCount = 0;
    m_lines.clear();
    measureWords();
    layOut();
    m_current = m_lines.empty() ? 0 : std::min(at, m_lines.size() - 1);
    for (std::size_t i = 0; (before || !selected.empty()) && i < m_lines.size(); ++i) {
        const RowKey key = keyOf(m_board.shelves[m_lines[i].shelf], rowOf(m_lines[i]));
        if (before == key) m_current = i;
        if (selected.contains(key)) select(i, true);
    }
    m_anchor = m_current;
    const BoardRow* row = currentRow();
    m_frame =
        row ? std::clamp(m_frame, 0, std::max(0, static_cast<int>(row->frames.size()) - 1)) : 0;
    showCurrent();
    speak();
    viewport()->update();
    Q_EMIT currentChanged();
    if (static_cast<std::size_t>(m_selectedCount) != selected.size()) Q_EMIT selectionChanged();
}

void FrameBoardView::setOnBench(std::optional<Id<combwright::Box>> box) {
    m_onBench = box;
    measureWords();
    layOut();
    viewport()->update();
}

const BoardRow& FrameBoardView::rowOf(const Line& line) const {
    return m_board.shelves[line.shelf].rows[line.row];
}

QString FrameBoardView::stateText(const BoardRow& row) const {
    if (row.box && row.box == m_onBench) return tr("on bench");
    return row.box ? boardStateText(row) : QString();
}

/// Only the longest marks and one text of each state are measured: a board has ten thousand rows.
void FrameBoardView::measureWords() {
    const QFont &bold = m_type.bold, &note = m_type.note;
    std::size_t longest = 0;
    std::vector<const BoardRow*> marks;
    unsigned seen = 0;
    double state = m_onBench ? textWidth(tr("on bench"), note) : 0.0;
    for (const BoardShelf& shelf : m_board.shelves) {
        for (const BoardRow& row : shelf.rows) {
            if (row.name.size() > longest) marks.clear();
            longest = std::max(longest, row.name.size());
            if (row.name.size() == longest && marks.size() < 16) marks.push_back(&row);
            if (row.states.empty()) continue;
            // Held is said with where the box lies.
            const bool held = row.states.front().state == BoxState::Held;
            const unsigned bit =
                1U << (held && row.states.size() > 1 && row.states[1].state == BoxState::InFreezer
                           ? 31U
                           : static_cast<unsigned>(row.states.front().state));
            if ((seen & bit) != 0) continue;
            seen |= bit;
            const QString text = held ? boardStateText(row) : widestText(row.states.front());
            state = std::max(state, textWidth(text, note));
        }
    }
    double mark = 0;
    for (const BoardRow* row : marks) mark = std::max(mark, textWidth(boardRowName(*row), bold));
    m_markWidth = std::min(mark, m_look.px(mostMarkPx)) + m_look.px(8);
    m_stateWidth = state > 0 ? state + m_look.px(10) : 0.0;
}

double FrameBoardView::rowHeight(const BoardRow& row) const {
    const double frame = m_frames.height(row.frameKind, frameWidth(row));
    return std::ceil(
        std::max({m_look.px(leastRowPx), frame + m_look.px(9), m_type.step + m_look.px(2)}));
}

double FrameBoardView::frameWidth(const BoardRow& row) const {
    if (row.frames.size() <= m_mostFrames) return m_frameWidth;
    const double room = (m_frameWidth + frameGap(m_look)) * static_cast<double>(m_mostFrames);
    return std::max(4.0, room / static_cast<double>(row.frames.size()) - frameGap(m_look));
}

double FrameBoardView::columnLeft(std::size_t column) const {
    return static_cast<double>(column) * (m_columnWidth + m_look.space(boardColumnGap));
}

void FrameBoardView::layOut() {
    const double width = viewport()->width();
    const double most = static_cast<double>(m_mostFrames), gap = frameGap(m_look);
    const double beside =
        2 * m_look.space(rowInset) + m_markWidth + m_stateWidth + countedGap(m_look) + m_look.px(2);
    const double least = beside + most * (m_look.px(narrowestFramePx) + gap);
    m_columns = width >= 2 * least + m_look.space(boardColumnGap) ? 2 : 1;
    m_columnWidth =
        (width - (m_columns - 1) * m_look.space(boardColumnGap)) / static_cast<double>(m_columns);
    m_frameWidth = std::floor(
        std::clamp((m_columnWidth - beside) / most - gap, m_look.px(10), m_look.px(widestFramePx)));
    std::vector<std::vector<Line>> columns(static_cast<std::size_t>(m_columns));
    std::vector<double> heights(columns.size(), 0.0);
    // Selected rows and the cursor keep to their rows through another width.
    std::set<std::pair<std::uint32_t, std::uint32_t>> chosen;
    std::pair<std::uint32_t, std::uint32_t> current{0, 0}, anchor{0, 0};
    for (const Line& line : m_lines)
        if (line.selected) chosen.emplace(line.shelf, line.row);
    if (hasCurrent()) current = {m_lines[m_current].shelf, m_lines[m_current].row};
    if (m_anchor < m_lines.size()) anchor = {m_lines[m_anchor].shelf, m_lines[m_anchor].row};
    m_heads.clear();
    for (std::size_t shelf = 0; shelf < m_board.shelves.size(); ++shelf)
        placeShelf(shelf, columns, heights);
    m_lines.clear();
    m_columnEnds.clear();
    for (const auto& column : columns) {
        m_lines.insert(m_lines.end(), column.begin(), column.end());
        m_columnEnds.push_back(m_lines.size());
    }
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        Line& line = m_lines[i];
        const std::pair key{line.shelf, line.row};
        line.selected = !chosen.empty() && chosen.contains(key);
        if (key == current) m_current = i;
        if (key == anchor) m_anchor = i;
    }
    m_contentHeight = *std::max_element(heights.begin(), heights.end());
    const int room = viewport()->height();
    verticalScrollBar()->setPageStep(room);
    verticalScrollBar()->setSingleStep(static_cast<int>(m_look.px(leastRowPx)));
    verticalScrollBar()->setRange(0, std::max(0, static_cast<int>(m_contentHeight) - room));
}

void FrameBoardView::placeShelf(std::size_t shelf, std::vector<std::vector<Line>>& columns,
                                std::vector<double>& heights) {
    const auto& rows = m_board.shelves[shelf].rows;
    const double head = m_look.px(headPx) + m_look.px(4);
    const auto put = [&](std::size_t column, std::size_t first, std::size_t end) {
        double& y = heights[column];
        columns[column].reserve(columns[column].size() + end - first);
        // Boxes of a kind that stand together are all as high.
        const BoardRow* alike = nullptr;
        double high = 0;
        for (std::size_t row = first; row < end; ++row) {
            if (!alike || alike->frameKind != rows[row].frameKind ||
                alike->frames.size() != rows[row].frames.size()) {
                alike = &rows[row];
                high = rowHeight(*alike);
            }
            columns[column].push_back({static_cast<std::uint32_t>(shelf),
                                       static_cast<std::uint32_t>(row), static_cast<float>(y),
                                       static_cast<float>(high), false});
            y += high;
        }
        y += m_look.px(shelfGapPx);
    };
    if (rows.size() > tallShelf && columns.size() > 1) {
        const double top = *std::max_element(heights.begin(), heights.end());
        m_heads.push_back({shelf, top, 0, static_cast<double>(viewport()->width())});
        std::fill(heights.begin(), heights.end(), top + head);
        const std::size_t half = (rows.size() + 1) / 2;
        put(0, 0, half);
        put(1, half, rows.size());
        return;
    }
    const auto shortest = static_cast<std::size_t>(
        std::min_element(heights.begin(), heights.end()) - heights.begin());
    m_heads.push_back({shelf, heights[shortest], columnLeft(shortest), m_columnWidth});
    heights[shortest] += head;
    put(shortest, 0, rows.size());
}

std::size_t FrameBoardView::columnOf(std::size_t line) const {
    std::size_t column = 0;
    while (column + 1 < m_columnEnds.size() && line >= m_columnEnds[column]) ++column;
    return column;
}

QRectF FrameBoardView::lineRect(std::size_t line) const {
    const Line& at = m_lines[line];
    return {columnLeft(columnOf(line)), static_cast<double>(at.top) - verticalScrollBar()->value(),
            m_columnWidth, static_cast<double>(at.height)};
}

std::vector<double> FrameBoardView::frameLefts(const BoardRow& row, double left,
                                               double width) const {
    std::vector<double> lefts;
    lefts.reserve(row.frames.size());
    double x = left;
    for (std::size_t i = 0; i < row.frames.size(); ++i) {
        if (i > 0 && row.frames[i - 1].position && !row.frames[i].position) x += countedGap(m_look);
        lefts.push_back(std::round(x));
        x += width + frameGap(m_look);
    }
    return lefts;
}

QRectF FrameBoardView::frameRect(std::size_t line, std::size_t frame) const {
    const BoardRow& row = rowOf(m_lines[line]);
    const QRectF box = lineRect(line);
    const double width = frameWidth(row), high = m_frames.height(row.frameKind, width);
    const auto lefts =
        frameLefts(row, box.left() + m_look.space(rowInset) + m_markWidth + m_stateWidth, width);
    return {lefts[frame], std::round(box.bottom() - high - m_look.px(3)), width, high};
}

std::optional<std::size_t> FrameBoardView::lineAt(QPointF point) const {
    const double y = point.y() + verticalScrollBar()->value();
    std::size_t first = 0;
    for (std::size_t column = 0; column < m_columnEnds.size(); ++column) {
        const std::size_t end = m_columnEnds[column];
        const double left = columnLeft(column);
        if (point.x() >= left && point.x() < left + m_columnWidth) {
            const auto from = m_lines.begin() + static_cast<std::ptrdiff_t>(first);
            const auto to = m_lines.begin() + static_cast<std::ptrdiff_t>(end);
            auto next = std::upper_bound(from, to, y, [](double at, const Line& line) {
                return at < static_cast<double>(line.top);
            });
            if (next == from) return std::nullopt;
            --next;
            if (y >= static_cast<double>(next->top) + static_cast<double>(next->height))
                return std::nullopt;
            return static_cast<std::size_t>(next - m_lines.begin());
        }
        first = end;
    }
    return std::nullopt;
}

void FrameBoardView::paintEvent(QPaintEvent* event) {
    QPainter painter(viewport());
    painter.fillRect(event->rect(), m_look.tone(Tone::Ground));
    painter.setRenderHint(QPainter::Antialiasing);
    if (m_lines.empty()) return paintEmpty(painter);
    const QRect dirty = event->rect();
    const double scrolled = verticalScrollBar()->value();
    for (const Head& head : m_heads) {
        const QRectF box(head.left, head.top - scrolled, head.width, m_look.px(headPx));
        if (box.bottom() >= dirty.top() && box.top() <= dirty.bottom()) paintHead(painter, head);
    }
    const double top = dirty.top() + scrolled - m_look.px(3);
    const double bottom = dirty.bottom() + scrolled + m_look.px(3);
    std::size_t first = 0;
    for (const std::size_t end : m_columnEnds) {
        const auto from = m_lines.begin() + static_cast<std::ptrdiff_t>(first);
        const auto to = m_lines.begin() + static_cast<std::ptrdiff_t>(end);
        auto line = std::lower_bound(from, to, top, [](const Line& at, double y) {
            return static_cast<double>(at.top) + static_cast<double>(at.height) < y;
        });
        for (; line != to && static_cast<double>(line->top) <= bottom; ++line)
            paintLineRow(painter, static_cast<std::size_t>(line - m_lines.begin()));
        first = end;
    }
}

void FrameBoardView::paintEmpty(QPainter& painter) const {
    painter.setFont(m_look.font(TextSize::Body));
    painter.setPen(m_look.tone(Tone::Muted));
    const QString text =
        m_board.filter.narrows()
            ? tr("No frame is like that. Clear the filter to see all %1.").arg(m_board.all)
            : tr("No box stands in the storeroom yet. Boxes come here when they are added, taken "
                 "off a hive or spun empty.");
    painter.drawText(viewport()->rect().adjusted(m_look.space(rowInset), 0, 0, 0),
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text);
}

void FrameBoardView::paintHead(QPainter& painter, const Head& head) const {
    const BoardShelf& shelf = m_board.shelves[head.shelf];
    const double y = head.top - verticalScrollBar()->value();
    const double left = head.left + m_look.space(rowInset);
    const double right = head.left + head.width - m_look.space(rowInset);
    const double base = y + m_look.px(headPx) - m_look.px(7);
    const QFont bold = m_look.font(TextSize::Note, true), note = m_look.font(TextSize::Note);
    const QString title = fitted(shelfTitle(m_board, shelf), bold, right - left);
    paintText(painter, {left, base}, title, bold, m_look.tone(Tone::Ink));
    const double after = left + textWidth(title, bold) + m_look.px(8);
    paintText(painter, {after, base}, fitted(shelfNote(shelf), note, std::max(1.0, right - after)),
              note, m_look.tone(Tone::Muted));
    painter.setPen(QPen(m_look.tone(Tone::Line), m_look.px(1)));
    const double line = std::round(y + m_look.px(headPx) - m_look.px(1)) + 0.5;
    painter.drawLine(QPointF(left, line), QPointF(right, line));
}

void FrameBoardView::paintLineRow(QPainter& painter, std::size_t line) {
    const QRectF box = lineRect(line);
    const BoardRow& row = rowOf(m_lines[line]);
    const bool current = line == m_current;
    if (m_lines[line].selected) {
        painter.fillRect(box.adjusted(0, 0.5, 0, -0.5), m_look.tone(Tone::Selection));
        painter.fillRect(QRectF(box.left(), box.top() + 0.5, m_look.px(2.5), box.height() - 1),
                         m_look.tone(Tone::Accent));
    }
    if (current) {
        painter.setPen(QPen(m_look.tone(Tone::Accent), m_look.px(hasFocus() ? 2 : 1)));
        painter.setBrush(m_look.tone(Tone::Selection));
        painter.drawRoundedRect(box.adjusted(1, 0, -1, 0), m_look.corner(), m_look.corner());
        if (m_lines[line].selected)
            painter.fillRect(QRectF(box.left() + 1, box.top() + m_look.px(3), m_look.px(2.5),
                                    box.height() - m_look.px(6)),
                             m_look.tone(Tone::Accent));
    }
    const double x = box.left() + m_look.space(rowInset);
    const QFont &bold = m_type.bold, &note = m_type.note;
    const double base = box.center().y() + m_type.cap / 2;
    QString name = boardRowName(row);
    if (name.size() > 8) name = fitted(name, bold, m_markWidth - m_look.px(4));
    paintText(painter, {x, base}, name, row.box ? bold : note,
              m_look.tone(row.box ? Tone::Ink : Tone::Muted));
    // What must not be used says so in the warning red, beside its word.
    const bool held = !row.states.empty() && row.states.front().state == BoxState::Held;
    const bool stale = !row.states.empty() && (row.states.front().state == BoxState::Stale ||
                                               row.states.front().state == BoxState::ChangedSince);
    if (const QString state = stateText(row); !state.isEmpty())
        paintText(painter, {x + m_markWidth, base}, state, note,
                  m_look.tone(held    ? Tone::Bad
                              : stale ? Tone::Warn
                                      : Tone::Muted));
    paintFrames(painter, line, box);
}

void FrameBoardView::paintFrames(QPainter& painter, std::size_t line, const QRectF& box) {
    const BoardRow& row = rowOf(m_lines[line]);
    const double left = box.left() + m_look.space(rowInset) + m_markWidth + m_stateWidth;
    if (row.frames.empty()) {
        const QFont& note = m_type.empty;
        paintText(painter, {left, box.center().y() + capHeight(note) / 2},
                  row.found ? tr("no frames") : tr("frames not counted"), note,
                  m_look.tone(Tone::Muted));
        return;
    }
    const double width = frameWidth(row), high = m_frames.height(row.frameKind, width);
    const double top = std::round(box.bottom() - high - m_look.px(3));
    const auto lefts = frameLefts(row, left, width);
    std::size_t firstCounted = row.frames.size(), lastCounted = 0;
    for (std::size_t i = 0; i < row.frames.size(); ++i) {
        m_frames.paint(painter, {lefts[i], top}, row.frames[i], row.frameKind, width);
        if (row.frames[i].position || !row.frames[i].found) continue;
        firstCounted = std::min(firstCounted, i);
        lastCounted = i;
    }
    if (firstCounted < row.frames.size())
        paintCountedRule(painter, {lefts[firstCounted], top}, lefts[lastCounted] + width, m_look);
    if (line != m_current || !hasFocus()) return;
    const auto frame = static_cast<std::size_t>(m_frame);
    if (frame >= lefts.size()) return;
    painter.setPen(QPen(m_look.tone(Tone::Accent), m_look.px(2)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(lefts[frame] - 1.5, top - 1.5, width + 3, high + 3));
}

QSize FrameBoardView::sizeHint() const { return {m_look.space(880), m_look.space(360)}; }
QSize FrameBoardView::minimumSizeHint() const { return {m_look.space(320), m_look.space(120)}; }

}  // namespace combwright
