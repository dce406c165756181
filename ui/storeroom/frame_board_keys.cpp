// Walking over the board and choosing rows of it, by keyboard and by mouse.
#include <QAccessible>
#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QScrollBar>
#include <QStyleHints>
#include <algorithm>
#include <set>

#include "core/places/pages/storeroom/board_words.h"
#include "core/words/words.h"
#include "ui/storeroom/frame_board_view.h"

namespace combwright {

const BoardRow* FrameBoardView::currentRow() const {
    return hasCurrent() ? &rowOf(m_current) : nullptr;
}

const BoardFrame* FrameBoardView::currentFrame() const {
    const BoardRow* row = currentRow();
    if (!row || m_frame < 0 || m_frame >= static_cast<int>(row->frames.size())) return nullptr;
    return &row->frames[static_cast<std::size_t>(m_frame)];
}

bool FrameBoardView::goToBox(Id<combwright::Box> box, int frame) {
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        if (rowOf(i).box != box) continue;
        moveTo(i, frame, false);
        return true;
    }
    return false;
}

QRect FrameBoardView::currentRect() const {
    return hasCurrent() ? lineRect(m_current).toAlignedRect() : QRect();
}

QRect FrameBoardView::rectOf(Id<combwright::Box> box, int frame) const {
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        const BoardRow& row = rowOf(i);
        if (row.box != box) continue;
        if (frame < 0) return lineRect(i).toAlignedRect();
        if (static_cast<std::size_t>(frame) >= row.frames.size()) return {};
        return frameRect(i, static_cast<std::size_t>(frame)).toAlignedRect();
    }
    return {};
}

std::vector<const BoardRow*> FrameBoardView::selectedRows() const {
    std::vector<const BoardRow*> rows;
    for (std::size_t i = 0; m_selectedCount > 0 && i < m_lines.size(); ++i)
        if (isSelected(i)) rows.push_back(&rowOf(i));
    return rows;
}

std::vector<const BoardRow*> FrameBoardView::chosenRows() const {
    auto rows = selectedRows();
    if (const BoardRow* row = currentRow(); rows.empty() && row) rows.push_back(row);
    return rows;
}

std::vector<Id<combwright::Box>> FrameBoardView::chosenBoxes() const {
    std::vector<Id<combwright::Box>> boxes;
    std::set<std::int64_t> seen;
    for (const BoardRow* row : chosenRows())
        if (row->box && seen.insert(row->box->number).second) boxes.push_back(*row->box);
    return boxes;
}

std::vector<Id<Frame>> FrameBoardView::chosenFrames() const {
    std::vector<Id<Frame>> frames;
    for (const BoardRow* row : chosenRows())
        for (const BoardFrame& frame : row->frames)
            if (frame.found) frames.push_back(frame.id);
    return frames;
}

bool FrameBoardView::isSelected(std::size_t line) const {
    return m_selectedCount > 0 && m_selected[ordinalOf(line)];
}

void FrameBoardView::select(std::size_t line, bool selected) {
    const std::size_t row = ordinalOf(line);
    if (m_selected[row] == selected) return;
    m_selected[row] = selected;
    m_selectedCount += selected ? 1 : -1;
}

void FrameBoardView::selectRange(std::size_t from, std::size_t to) {
    if (from > to) std::swap(from, to);
    for (std::size_t i = 0; i < m_lines.size(); ++i) select(i, i >= from && i <= to);
    viewport()->update();
    Q_EMIT selectionChanged();
}

void FrameBoardView::clearSelection() {
    if (m_selectedCount == 0) return;
    for (std::size_t i = 0; i < m_lines.size(); ++i) select(i, false);
    viewport()->update();
    Q_EMIT selectionChanged();
}

void FrameBoardView::selectAll() {
    if (m_lines.empty()) return;
    selectRange(0, m_lines.size() - 1);
}

void FrameBoardView::moveTo(std::size_t line, int frame, bool extend) {
    if (m_lines.empty()) return;
    const std::size_t before = m_current;
    const int frameBefore = m_frame;
    m_current = std::min(line, m_lines.size() - 1);
    m_frame =
        std::clamp(frame, 0, std::max(0, static_cast<int>(rowOf(m_current).frames.size()) - 1));
    if (extend)
        selectRange(m_anchor, m_current);
    else
        m_anchor = m_current;
    showCurrent();
    viewport()->update();
    if (m_current == before && m_frame == frameBefore) return;
    speak();
    if (m_current != before) Q_EMIT currentChanged();
    Q_EMIT frameChanged();
}

void FrameBoardView::moveRows(std::ptrdiff_t step, bool extend) {
    if (m_lines.empty()) return;
    const auto last = static_cast<std::ptrdiff_t>(m_lines.size()) - 1;
    const auto to =
        std::clamp(static_cast<std::ptrdiff_t>(m_current) + step, std::ptrdiff_t(0), last);
    moveTo(static_cast<std::size_t>(to), m_frame, extend);
}

/// The row level with this one in the next column, or the last there is above.
std::optional<std::size_t> FrameBoardView::lineBeside(int step) const {
    const auto column = static_cast<std::ptrdiff_t>(m_lines.columnOf(m_current)) + step;
    if (column < 0 || column >= static_cast<std::ptrdiff_t>(m_lines.columns())) return {};
    const auto at = static_cast<std::size_t>(column);
    if (m_lines.begin(at) == m_lines.end(at)) return std::nullopt;
    const RowPlace here = m_lines[m_current];
    return m_lines.lineAt(at, here.top + here.height / 2);
}

/// Along the frames of a row, and over its end to the row beside it.
void FrameBoardView::moveFrames(int step, bool extend) {
    const BoardRow* row = currentRow();
    if (!row) return;
    const int to = m_frame + step;
    if (to >= 0 && to < static_cast<int>(row->frames.size())) return moveTo(m_current, to, extend);
    if (const auto beside = lineBeside(step); beside && !extend) {
        const auto frames = static_cast<int>(rowOf(*beside).frames.size());
        moveTo(*beside, step > 0 ? 0 : frames - 1, false);
    }
}

void FrameBoardView::page(int step, bool extend) {
    if (!hasCurrent()) return;
    const double room = viewport()->height();
    const auto rows =
        static_cast<std::ptrdiff_t>(std::max(1.0, room / m_lines[m_current].height - 1));
    moveRows(step * rows, extend);
}

void FrameBoardView::showCurrent() {
    if (!hasCurrent()) return;
    const RowPlace line = m_lines[m_current];
    auto top = static_cast<int>(line.top), bottom = static_cast<int>(line.top + line.height) + 2;
    // The first row of a shelf shows under which name it stands.
    if (line.row == 0) top -= m_look.space(28);
    const int room = viewport()->height(), now = verticalScrollBar()->value();
    if (top < now)
        verticalScrollBar()->setValue(std::max(0, top - 2));
    else if (bottom > now + room)
        verticalScrollBar()->setValue(bottom - room);
}

void FrameBoardView::speak() {
    const BoardRow* row = currentRow();
    QString text;
    if (row) {
        text = spoken(m_board, *row);
        if (const BoardFrame* frame = currentFrame()) text += QLatin1Char(' ') + spoken(*frame);
        if (isSelected(m_current)) text += QLatin1Char(' ') + tr("Selected.");
    }
    setAccessibleDescription(text);
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

bool FrameBoardView::goToMark(const QString& begins, std::size_t from) {
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        const std::size_t line = (from + i) % m_lines.size();
        if (!fromUtf8(rowOf(line).name).startsWith(begins, Qt::CaseInsensitive)) continue;
        m_typed = begins;
        m_typedAt.start();
        moveTo(line, m_frame, false);
        return true;
    }
    return false;
}

bool FrameBoardView::isTypingMark() const {
    const int patience = QGuiApplication::styleHints()->keyboardInputInterval() * 2;
    return m_typedAt.isValid() && m_typedAt.elapsed() < patience;
}

bool FrameBoardView::typeMark(const QString& text) {
    const bool goesOn = isTypingMark();
    if (goesOn && goToMark(m_typed + text, m_current)) return true;
    m_typedAt.invalidate();
    // A digit no mark goes on with is no new mark: it may be a count, or a verdict.
    if (goesOn && text.front().isDigit()) return false;
    return goToMark(text, m_current + 1);
}

void FrameBoardView::keyPressEvent(QKeyEvent* event) {
    const bool shift = event->modifiers() & Qt::ShiftModifier;
    const auto last = static_cast<std::ptrdiff_t>(m_lines.size());
    if (event->matches(QKeySequence::SelectAll)) return selectAll();
    if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier))
        return event->ignore();
    const QString text = event->text();
    if (!text.isEmpty() && text.front().isPrint() && text.front() != QLatin1Char(' '))
        return typeMark(text) ? event->accept() : event->ignore();
    // With any other key the mark is done with.
    if (!text.isEmpty() || event->key() < Qt::Key_Shift || event->key() > Qt::Key_ScrollLock)
        m_typedAt.invalidate();
    switch (event->key()) {
        case Qt::Key_Up:
            return moveRows(-1, shift);
        case Qt::Key_Down:
            return moveRows(1, shift);
        case Qt::Key_Left:
            return moveFrames(-1, shift);
        case Qt::Key_Right:
            return moveFrames(1, shift);
        case Qt::Key_Home:
            return moveRows(-last, shift);
        case Qt::Key_End:
            return moveRows(last, shift);
        case Qt::Key_PageUp:
            return page(-1, shift);
        case Qt::Key_PageDown:
            return page(1, shift);
        case Qt::Key_Space:
            if (!hasCurrent()) return;
            select(m_current, !isSelected(m_current));
            viewport()->update();
            speak();
            Q_EMIT selectionChanged();
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (hasCurrent()) Q_EMIT activated();
            return;
        case Qt::Key_Escape:
            if (m_selectedCount == 0) return event->ignore();
            return clearSelection();
        default:
            event->ignore();
    }
}

void FrameBoardView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return event->ignore();
    const auto line = lineAt(event->position());
    if (!line) return;
    int frame = m_frame;
    bool onFrame = false;
    const auto& frames = rowOf(*line).frames;
    for (std::size_t i = 0; i < frames.size(); ++i)
        if (frameRect(*line, i).adjusted(-2, -4, 2, 4).contains(event->position())) {
            frame = static_cast<int>(i);
            onFrame = true;
        }
    m_typedAt.invalidate();
    const bool extend = event->modifiers() & Qt::ShiftModifier;
    if (event->modifiers() & Qt::ControlModifier) {
        moveTo(*line, frame, false);
        select(*line, !isSelected(*line));
        viewport()->update();
        speak();
        Q_EMIT selectionChanged();
        Q_EMIT pressed(false);
        return;
    }
    if (!extend) clearSelection();
    moveTo(*line, frame, extend);
    Q_EMIT pressed(onFrame && !extend);
}

void FrameBoardView::mouseDoubleClickEvent(QMouseEvent* event) {
    if (lineAt(event->position())) Q_EMIT activated();
}

void FrameBoardView::resizeEvent(QResizeEvent*) {
    layOut();
    viewport()->update();
    showCurrent();
}

void FrameBoardView::scrollContentsBy(int, int dy) { viewport()->scroll(0, dy); }

void FrameBoardView::focusInEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
}

void FrameBoardView::focusOutEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

}  // namespace combwright
