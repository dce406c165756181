#include "ui/storeroom/frame_board_view.h"

#include <QAccessible>
#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "core/places/pages/storeroom/board_words.h"
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
/// Rows with more frames than a box has get smaller frames.
constexpr std::size_t usualMostFrames = 12;
constexpr std::size_t leastMostFrames = 9;

using RowKey = std::tuple<std::int64_t, std::string, std::int64_t, int, std::int64_t>;

/// A row again after the board was made anew.
RowKey keyOf(const BoardShelf& shelf, const BoardRow& row) {
    const std::int64_t first = row.frames.empty() ? 0 : row.frames.front().id.number;
    return {row.box ? row.box->number : 0, row.box ? std::string() : row.place.name,
            row.box ? 0 : first, shelf.verdict ? static_cast<int>(*shelf.verdict) : -1,
            shelf.year.value_or(-1)};
}

/// Room for whatever may be said of a box, so that no frame moves when a box is looked through: the
/// longest of the states, of as many frames as a box may have, and what is said of held boxes.
double widestState(const QFont& font) {
    const QFontMetricsF metrics(font);
    double widest = 0;
    for (std::size_t state = 0; state < Choices<BoxState>::words.size(); ++state)
        widest = std::max(widest, metrics.horizontalAdvance(boardStateText(
                                      {static_cast<BoxState>(state), {}, 10, 11, {}})));
    BoardRow held;
    held.states = {{BoxState::Held, {}, 0, 0, {}}, {BoxState::InFreezer, {}, 0, 0, {}}};
    return std::max(widest, metrics.horizontalAdvance(boardStateText(held)));
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
    m_type.noteBold = m_look.font(TextSize::Note, true);
    m_type.empty = m_look.font(TextSize::Note, false, true);
    m_type.cap = capHeight(m_type.bold);
    m_type.noteAscent = QFontMetricsF(m_type.note).ascent();
    m_type.states.clear();
    m_type.step = lineStep(m_look.font(TextSize::Body));
    m_stateWidth =
        std::max(widestState(m_type.note), textWidth(tr("on bench"), m_type.note)) + m_look.px(10);
}

void FrameBoardView::setLook(const Look& look) {
    m_look = look;
    m_frames.setLook(look);
    setType();
    const auto current = hasCurrent() ? std::optional(m_lines[m_current]) : std::nullopt;
    readRows();
    layOut();
    if (current) m_current = m_anchor = m_lines.find(current->shelf, current->row).value_or(0);
    showCurrent();
    viewport()->update();
}

void FrameBoardView::setBoard(FrameBoard board) {
    std::optional<RowKey> before;
    std::set<RowKey> selected;
    const std::size_t at = m_current;
    const auto keyAt = [this](std::size_t line) {
        return keyOf(m_board.shelves[m_lines[line].shelf], rowOf(line));
    };
    if (hasCurrent()) before = keyAt(m_current);
    for (std::size_t i = 0; m_selectedCount > 0 && i < m_lines.size(); ++i)
        if (isSelected(i)) selected.insert(keyAt(i));
    m_board = std::move(board);
    m_frames.setKinds(m_board.kinds);
    m_selectedCount = 0;
    m_current = m_anchor = 0;
    readRows();
    m_selected.assign(m_rowsBefore.empty() ? 0 : m_rowsBefore.back(), false);
    layOut();
    m_current = m_lines.empty() ? 0 : std::min(at, m_lines.size() - 1);
    for (std::size_t i = 0; (before || !selected.empty()) && i < m_lines.size(); ++i) {
        const RowKey key = keyAt(i);
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
    if (m_onBench == box) return;
    m_onBench = box;
    viewport()->update();
}

void FrameBoardView::setAtFrame(bool at) {
    if (m_atFrame == at) return;
    m_atFrame = at;
    viewport()->update();
}

const BoardRow& FrameBoardView::rowOf(std::size_t line) const {
    const RowPlace at = m_lines[line];
    return m_board.shelves[at.shelf].rows[at.row];
}

std::size_t FrameBoardView::ordinalOf(std::size_t line) const {
    const RowPlace at = m_lines[line];
    return m_rowsBefore[at.shelf] + at.row;
}

QString FrameBoardView::stateText(const BoardRow& row) const {
    if (row.box && row.box == m_onBench) return tr("on bench");
    return row.box ? boardStateText(row) : QString();
}

/// The one walk over all rows when a board comes; what it finds is all that laying them out needs.
/// It follows no row's lists, and only the longest marks are measured.
void FrameBoardView::readRows() {
    m_laidWidth = -1;
    m_lines.clear();
    m_rowsBefore.clear();
    m_mostFrames = leastMostFrames;
    std::size_t longest = 0, rows = 0;
    std::vector<const BoardRow*> marks;
    for (std::uint32_t shelf = 0; shelf < m_board.shelves.size(); ++shelf) {
        m_rowsBefore.push_back(rows);
        std::uint32_t at = 0;
        for (const BoardRow& row : m_board.shelves[shelf].rows) {
            m_lines.add(shelf, at++, row);
            m_mostFrames = std::max(m_mostFrames, std::min(row.frames.size(), usualMostFrames));
            if (row.name.size() > longest) marks.clear();
            longest = std::max(longest, row.name.size());
            if (row.name.size() == longest && marks.size() < 16) marks.push_back(&row);
        }
        rows += at;
    }
    m_rowsBefore.push_back(rows);
    double mark = 0;
    for (const BoardRow* row : marks)
        mark = std::max(mark, textWidth(boardRowName(*row), m_type.bold));
    m_markWidth = std::min(mark, m_look.px(mostMarkPx)) + m_look.px(8);
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

/// A long board will have its scroll bar: its rows are laid out once, in what that leaves.
int FrameBoardView::widthToBe() const {
    const QScrollBar* bar = verticalScrollBar();
    const double rows = m_rowsBefore.empty() ? 0.0 : static_cast<double>(m_rowsBefore.back());
    const bool comes = !bar->isVisibleTo(this) &&
                       verticalScrollBarPolicy() == Qt::ScrollBarAsNeeded &&
                       rows / 2 * m_look.px(leastRowPx) > viewport()->height();
    return viewport()->width() - (comes ? bar->sizeHint().width() : 0);
}

/// Anew only where the width is another: how high the board is shown changes no row.
void FrameBoardView::layOut() {
    const int widthNow = widthToBe();
    if (widthNow == m_laidWidth) return setScrollRange();
    m_laidWidth = widthNow;
    const double width = widthNow;
    const double most = static_cast<double>(m_mostFrames), gap = frameGap(m_look);
    const double beside =
        2 * m_look.space(rowInset) + m_markWidth + m_stateWidth + countedGap(m_look) + m_look.px(2);
    const double least = beside + most * (m_look.px(narrowestFramePx) + gap);
    m_columns = width >= 2 * least + m_look.space(boardColumnGap) ? 2 : 1;
    m_columnWidth =
        (width - (m_columns - 1) * m_look.space(boardColumnGap)) / static_cast<double>(m_columns);
    m_frameWidth = std::floor(
        std::clamp((m_columnWidth - beside) / most - gap, m_look.px(10), m_look.px(widestFramePx)));
    // The cursor keeps to its row through another width.
    std::optional<RowPlace> current, anchor;
    if (hasCurrent()) current = m_lines[m_current];
    if (m_anchor < m_lines.size()) anchor = m_lines[m_anchor];
    m_lines.layOut(m_board,
                   {static_cast<std::size_t>(m_columns), m_look.px(headPx) + m_look.px(4),
                    m_look.px(shelfGapPx)},
                   [this](const BoardRow& row) { return rowHeight(row); });
    if (current) m_current = m_lines.find(current->shelf, current->row).value_or(0);
    if (anchor) m_anchor = m_lines.find(anchor->shelf, anchor->row).value_or(0);
    setScrollRange();
}

void FrameBoardView::setScrollRange() {
    const int room = viewport()->height();
    verticalScrollBar()->setPageStep(room);
    verticalScrollBar()->setSingleStep(static_cast<int>(m_look.px(leastRowPx)));
    verticalScrollBar()->setRange(0, std::max(0, static_cast<int>(m_lines.height()) - room));
}

QRectF FrameBoardView::lineRect(std::size_t line) const {
    const RowPlace at = m_lines[line];
    return {columnLeft(m_lines.columnOf(line)), at.top - verticalScrollBar()->value(),
            m_columnWidth, at.height};
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
    const BoardRow& row = rowOf(line);
    const QRectF box = lineRect(line);
    const double width = frameWidth(row), high = m_frames.height(row.frameKind, width);
    const auto lefts =
        frameLefts(row, box.left() + m_look.space(rowInset) + m_markWidth + m_stateWidth, width);
    return {lefts[frame], std::round(box.bottom() - high - m_look.px(3)), width, high};
}

std::optional<std::size_t> FrameBoardView::lineAt(QPointF point) const {
    const double y = point.y() + verticalScrollBar()->value();
    for (std::size_t column = 0; column < m_lines.columns(); ++column) {
        const double left = columnLeft(column);
        if (point.x() < left || point.x() >= left + m_columnWidth) continue;
        const std::size_t line = m_lines.lineAt(column, y);
        if (line == m_lines.end(column)) return std::nullopt;
        const RowPlace at = m_lines[line];
        return y >= at.top && y < at.top + at.height ? std::optional(line) : std::nullopt;
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
    for (const RowPlaces::Head& head : m_lines.heads()) {
        const double top = head.top - scrolled;
        if (top + m_look.px(headPx) >= dirty.top() && top <= dirty.bottom())
            paintHead(painter, head);
    }
    const double top = dirty.top() + scrolled - m_look.px(3);
    const double bottom = dirty.bottom() + scrolled + m_look.px(3);
    for (std::size_t column = 0; column < m_lines.columns(); ++column)
        for (std::size_t line = m_lines.lineAt(column, top); line < m_lines.end(column); ++line) {
            const RowPlace at = m_lines[line];
            if (at.top > bottom) break;
            if (at.top + at.height >= top) paintLineRow(painter, line);
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

void FrameBoardView::paintHead(QPainter& painter, const RowPlaces::Head& head) const {
    const BoardShelf& shelf = m_board.shelves[head.shelf];
    const double y = head.top - verticalScrollBar()->value();
    const double left = columnLeft(head.column) + m_look.space(rowInset);
    const double width = head.acrossAll ? m_laidWidth : m_columnWidth;
    const double right = columnLeft(head.column) + width - m_look.space(rowInset);
    const double base = y + m_look.px(headPx) - m_look.px(7);
    const QFont &bold = m_type.noteBold, &note = m_type.note;
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
    const BoardRow& row = rowOf(line);
    const bool current = line == m_current;
    if (isSelected(line)) {
        painter.fillRect(box.adjusted(0, 0.5, 0, -0.5), m_look.tone(Tone::Selection));
        painter.fillRect(QRectF(box.left(), box.top() + 0.5, m_look.px(2.5), box.height() - 1),
                         m_look.tone(Tone::Accent));
    }
    if (current) {
        painter.setPen(QPen(m_look.tone(Tone::Accent), m_look.px(hasFocus() ? 2 : 1)));
        painter.setBrush(m_look.tone(Tone::Selection));
        painter.drawRoundedRect(box.adjusted(1, 0, -1, 0), m_look.corner(), m_look.corner());
        if (isSelected(line))
            painter.fillRect(QRectF(box.left() + 1, box.top() + m_look.px(3), m_look.px(2.5),
                                    box.height() - m_look.px(6)),
                             m_look.tone(Tone::Accent));
    }
    const double x = box.left() + m_look.space(rowInset);
    const QFont& bold = m_type.bold;
    const double base = box.center().y() + m_type.cap / 2;
    QString name = boardRowName(row);
    if (name.size() > 8) name = fitted(name, bold, m_markWidth - m_look.px(4));
    paintText(painter, {x, base}, name, row.box ? bold : m_type.note,
              m_look.tone(row.box ? Tone::Ink : Tone::Muted));
    // What must not be used says so in the warning red, beside its word.
    const bool held = !row.states.empty() && row.states.front().state == BoxState::Held;
    const bool stale = !row.states.empty() && (row.states.front().state == BoxState::Stale ||
                                               row.states.front().state == BoxState::ChangedSince);
    if (const QString state = stateText(row); !state.isEmpty())
        paintState(painter, {x + m_markWidth, base}, state,
                   m_look.tone(held    ? Tone::Bad
                               : stale ? Tone::Warn
                                       : Tone::Muted));
    paintFrames(painter, line, box);
}

/// Shaped once and laid down on every row that says the same.
void FrameBoardView::paintState(QPainter& painter, QPointF at, const QString& state,
                                const QColor& color) {
    auto text = m_type.states.find(state);
    if (text == m_type.states.end()) {
        QStaticText fresh(state);
        fresh.setTextFormat(Qt::PlainText);
        fresh.prepare({}, m_type.note);
        text = m_type.states.insert(state, fresh);
    }
    painter.setFont(m_type.note);
    painter.setPen(color);
    painter.drawStaticText(at - QPointF(0, m_type.noteAscent), *text);
}

/// As `paintCountedRule` draws it, in whole px: there is one on every row.
void FrameBoardView::paintRule(QPainter& painter, double left, double right, double top) const {
    const int px = std::max(1, static_cast<int>(std::lround(m_look.px(1.0))));
    const int high = static_cast<int>(std::lround(m_look.px(3.0)));
    const int x = static_cast<int>(std::lround(left)), end = static_cast<int>(std::lround(right));
    const int y = static_cast<int>(std::lround(top)) - high;
    const QColor color = m_look.tone(Tone::Line);
    painter.fillRect(QRect(x, y, end - x, px), color);
    painter.fillRect(QRect(x, y + px, px, high - px), color);
    painter.fillRect(QRect(end - px, y + px, px, high - px), color);
}

void FrameBoardView::paintFrames(QPainter& painter, std::size_t line, const QRectF& box) {
    const BoardRow& row = rowOf(line);
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
        paintRule(painter, lefts[firstCounted], lefts[lastCounted] + width, top);
    if (line != m_current || !hasFocus()) return;
    const auto frame = static_cast<std::size_t>(m_frame);
    if (frame >= lefts.size()) return;
    // Where letters and digits go is ringed; where the arrows would go on from is only marked.
    painter.setPen(m_atFrame ? QPen(m_look.tone(Tone::Accent), m_look.px(2))
                             : QPen(m_look.tone(Tone::Line), m_look.px(1)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(lefts[frame] - 1.5, top - 1.5, width + 3, high + 3));
}

QSize FrameBoardView::sizeHint() const { return {m_look.space(880), m_look.space(360)}; }
QSize FrameBoardView::minimumSizeHint() const { return {m_look.space(320), m_look.space(120)}; }

}  // namespace combwright
