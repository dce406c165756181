#include "ui/storeroom/board_counts.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <cmath>

#include "core/places/pages/storeroom/board_words.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

constexpr double titlePx = 30;
constexpr double noteLinePx = 18;
constexpr double letterPx = 18;
constexpr double countLinePx = 24;
constexpr int countsWidth = 172;

/// The same filter with what a line asks for, and without what other lines may have asked.
BoardFilter withoutLines(BoardFilter filter) {
    filter.kind.reset();
    filter.state.reset();
    filter.held = filter.toMelt = false;
    return filter;
}

}  // namespace

BoardCounts::BoardCounts(const Look& look, QWidget* parent)
    : QAbstractScrollArea(parent), m_look(look) {
    setObjectName(QStringLiteral("board_counts"));
    setAccessibleName(tr("Counts of frames"));
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    viewport()->setFocusProxy(this);
}

void BoardCounts::setLook(const Look& look) {
    m_look = look;
    layOut();
    updateGeometry();
}

void BoardCounts::setBoard(const FrameBoard& board) {
    const QString before = currentText();
    m_board.filter = board.filter;
    m_board.counts = board.counts;
    m_board.held = board.held;
    m_board.melt = board.melt;
    m_board.kinds = board.kinds;
    m_board.all = board.all;
    makeLines();
    layOut();
    m_current = -1;
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        if (!m_lines[i].isButton) continue;
        if (m_current < 0 || spokenLine(m_lines[i]).section(QLatin1Char(':'), 0, 0) ==
                                 before.section(QLatin1Char(':'), 0, 0))
            m_current = static_cast<int>(i);
    }
    speak();
}

BoardCounts::Line& BoardCounts::add(Line::Type type, const QString& text) {
    Line line;
    line.type = type;
    line.text = text;
    m_lines.push_back(line);
    return m_lines.back();
}

void BoardCounts::button(Line& line, const BoardFilter& asks) {
    line.isButton = true;
    line.pressed = m_board.filter == asks && asks.narrows();
    line.asks = line.pressed ? withoutLines(asks) : asks;
}

void BoardCounts::makeLines() {
    m_lines.clear();
    for (const KindCounts& counts : m_board.counts) addKind(counts);
    addHeld();
    addMelt();
    if (m_board.counts.empty()) add(Line::Type::Note, tr("No frame is counted yet."));
}

void BoardCounts::addKind(const KindCounts& counts) {
    const BoardFilter rest = withoutLines(m_board.filter);
    const QString name = frameKindText(m_board, counts.kind);
    BoardFilter ofKind = rest;
    if (counts.kind) ofKind.kind = counts.kind;
    add(Line::Type::Title, name);
    for (const StateCount& state : counts.states) {
        Line& line = add(Line::Type::Bar, frameStateText(state.state));
        if (state.state.kind == FrameState::Kind::Letter)
            line.letter = QLatin1Char(state.state.letter);
        line.grave = state.state.letter == 'D' || state.state.letter == 'Q' ||
                     state.state.kind == FrameState::Kind::Held;
        line.count = QString::number(state.frames);
        if (state.also > 0) line.also = tr("+%1").arg(state.also);
        line.share = counts.together > 0
                         ? static_cast<double>(state.frames) / static_cast<double>(counts.together)
                         : 0.0;
        BoardFilter asks = ofKind;
        asks.state = state.state;
        button(line, asks);
    }
    Line& sum = add(Line::Type::Sum, tr("together"));
    sum.count = QString::number(counts.together);
    button(sum, ofKind);
    if (const QString missing = notFoundText(counts); !missing.isEmpty())
        add(Line::Type::Warn, missing);
}

void BoardCounts::addHeld() {
    if (m_board.held.empty()) return;
    add(Line::Type::Title, tr("On hold"));
    BoardFilter asks = withoutLines(m_board.filter);
    asks.held = true;
    for (const HeldCount& held : m_board.held) {
        Line& line =
            add(Line::Type::Plain, held.letter != 0 ? faultText(held.letter) : heldText(held));
        if (held.letter != 0) line.letter = QLatin1Char(held.letter);
        line.grave = true;
        line.count = QString::number(held.frames);
        button(line, asks);
        if (held.since)
            add(Line::Type::Note, tr("since %1, not usable").arg(dayAndMonth(*held.since)));
    }
}

void BoardCounts::addMelt() {
    if (m_board.melt.empty()) return;
    add(Line::Type::Title, tr("To melt"));
    for (const MeltCount& melt : m_board.melt) {
        Line& line = add(Line::Type::Plain, frameKindText(m_board, melt.kind));
        line.count = QString::number(melt.combs);
        BoardFilter asks = withoutLines(m_board.filter);
        asks.toMelt = true;
        if (melt.kind) asks.kind = melt.kind;
        button(line, asks);
    }
    add(Line::Type::Note, meltText(m_board.melt));
}

void BoardCounts::layOut() {
    double y = 0;
    const double least = std::max<double>(m_look.px(countLinePx), m_look.target());
    for (Line& line : m_lines) {
        line.top = y;
        switch (line.type) {
            case Line::Type::Title:
                line.height = std::max(m_look.px(titlePx),
                                       lineStep(m_look.font(TextSize::Body, true)) + m_look.px(8));
                break;
            case Line::Type::Note:
            case Line::Type::Warn:
                line.height = std::max(m_look.px(noteLinePx),
                                       lineStep(m_look.font(TextSize::Note)) + m_look.px(2));
                break;
            default:
                line.height = std::max(least, lineStep(m_look.font(TextSize::Body)) + m_look.px(6));
        }
        y += line.height;
        if (line.type == Line::Type::Sum) y += m_look.px(2);
    }
    m_height = y;
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(static_cast<int>(least));
    verticalScrollBar()->setRange(
        0, std::max(0, static_cast<int>(std::ceil(m_height)) - viewport()->height()));
    viewport()->update();
}

int BoardCounts::contentHeight() const { return static_cast<int>(std::ceil(m_height)); }

void BoardCounts::paintEvent(QPaintEvent*) {
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), m_look.tone(Tone::Ground));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(0, -verticalScrollBar()->value());
    for (std::size_t i = 0; i < m_lines.size(); ++i)
        paintLineAt(painter, m_lines[i], static_cast<int>(i) == m_current && hasFocus());
}

void BoardCounts::paintLineAt(QPainter& painter, const Line& line, bool current) const {
    const double inset = m_look.px(4), left = inset, right = viewport()->width() - inset;
    const QRectF box(0, line.top, viewport()->width(), line.height);
    if (line.pressed || current) {
        painter.setPen(current ? QPen(m_look.tone(Tone::Accent), m_look.px(2)) : QPen(Qt::NoPen));
        painter.setBrush(line.pressed ? QBrush(m_look.tone(Tone::Selection)) : QBrush(Qt::NoBrush));
        painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), m_look.corner(), m_look.corner());
    }
    const QFont bold = m_look.font(TextSize::Body, true), note = m_look.font(TextSize::Note);
    const double base = box.top() + (box.height() + capHeight(bold)) / 2 - m_look.px(1);
    if (line.type == Line::Type::Title) {
        const double at = box.bottom() - m_look.px(8);
        paintText(painter, {left, at}, fitted(line.text, bold, right - left), bold,
                  m_look.tone(Tone::Ink));
        painter.fillRect(QRectF(left, box.bottom() - m_look.px(3), right - left, m_look.px(1.3)),
                         m_look.tone(Tone::Ink));
        return;
    }
    if (line.type == Line::Type::Note || line.type == Line::Type::Warn) {
        const bool warn = line.type == Line::Type::Warn;
        const QFont font = m_look.font(TextSize::Note, warn);
        paintText(painter, {left, base}, fitted(line.text, font, right - left), font,
                  m_look.tone(warn ? Tone::Warn : Tone::Muted));
        return;
    }
    const Tone tone = line.grave ? Tone::Bad : Tone::Ink;
    if (line.type == Line::Type::Sum) {
        painter.fillRect(QRectF(left, box.top() + m_look.px(1), right - left, m_look.px(1)),
                         m_look.tone(Tone::Ink));
    }
    double end = right - textWidth(line.count, bold);
    paintText(painter, {right, base}, line.count, bold, m_look.tone(Tone::Ink), Qt::AlignRight);
    if (!line.also.isEmpty()) {
        paintText(painter, {end - m_look.px(4), base}, line.also, note, m_look.tone(Tone::Muted),
                  Qt::AlignRight);
        end -= textWidth(line.also, note) + m_look.px(4);
    }
    const double text = line.type == Line::Type::Sum ? left : left + m_look.px(letterPx);
    if (!line.letter.isEmpty())
        paintText(painter, {left, base}, line.letter, bold, m_look.tone(tone));
    paintText(painter, {text, base}, fitted(line.text, note, end - text - m_look.px(4)), note,
              m_look.tone(Tone::Ink));
    if (line.type == Line::Type::Bar) {
        const QRectF bar(text, box.bottom() - m_look.px(4), right - text, m_look.px(2.5));
        painter.fillRect(bar, m_look.tone(Tone::Hairline));
        const double width = line.share > 0 ? std::max(m_look.px(1), bar.width() * line.share) : 0;
        painter.fillRect(QRectF(bar.left(), bar.top(), width, bar.height()),
                         m_look.tone(Tone::Ink));
    }
    if (line.type == Line::Type::Sum) {
        // Two thin rules close a sum.
        const double from = right - std::max(textWidth(line.count, bold), m_look.px(36));
        for (const double up : {3.0, 0.5})
            painter.fillRect(QRectF(from, box.bottom() - m_look.px(up), right - from,
                                    std::max(1.0, m_look.px(0.9))),
                             m_look.tone(Tone::Ink));
    }
}

QString BoardCounts::spokenLine(const Line& line) const {
    if (line.type == Line::Type::Note || line.type == Line::Type::Warn) return line.text;
    QString kind;
    for (const Line& each : m_lines) {
        if (each.type == Line::Type::Title) kind = each.text;
        if (&each == &line) break;
    }
    QString text = kind + QStringLiteral(", ");
    if (!line.letter.isEmpty()) text += line.letter + QLatin1Char(' ');
    text += tr("%1: %2").arg(line.text, line.count);
    if (!line.also.isEmpty())
        text += QLatin1Char(' ') + tr("%1 beside a graver letter").arg(line.also);
    if (line.pressed) text += QStringLiteral(", ") + tr("only these are shown");
    return text;
}

QString BoardCounts::currentText() const {
    if (m_current < 0 || m_current >= static_cast<int>(m_lines.size())) return {};
    return spokenLine(m_lines[static_cast<std::size_t>(m_current)]);
}

bool BoardCounts::goToLine(const QString& begins) {
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        if (!m_lines[i].isButton || !spokenLine(m_lines[i]).startsWith(begins)) continue;
        m_current = static_cast<int>(i);
        speak();
        viewport()->update();
        return true;
    }
    return false;
}

void BoardCounts::moveBy(int step) {
    int at = m_current;
    const int count = static_cast<int>(m_lines.size());
    do at += step;
    while (at >= 0 && at < count && !m_lines[static_cast<std::size_t>(at)].isButton);
    if (at < 0 || at >= count) return;
    m_current = at;
    const Line& line = m_lines[static_cast<std::size_t>(at)];
    const int now = verticalScrollBar()->value();
    if (line.top - line.height < now)
        verticalScrollBar()->setValue(static_cast<int>(line.top - line.height));
    else if (line.top + line.height > now + viewport()->height())
        verticalScrollBar()->setValue(static_cast<int>(std::ceil(line.top + line.height)) -
                                      viewport()->height());
    speak();
    viewport()->update();
}

void BoardCounts::press() {
    if (m_current < 0) return;
    const BoardFilter asks = m_lines[static_cast<std::size_t>(m_current)].asks;
    Q_EMIT filterAsked(asks);
}

void BoardCounts::speak() {
    setAccessibleDescription(currentText());
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

int BoardCounts::lineAt(double y) const {
    for (std::size_t i = 0; i < m_lines.size(); ++i)
        if (m_lines[i].isButton && y >= m_lines[i].top && y < m_lines[i].top + m_lines[i].height)
            return static_cast<int>(i);
    return -1;
}

void BoardCounts::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Up:
            return moveBy(-1);
        case Qt::Key_Down:
            return moveBy(1);
        case Qt::Key_Home:
            m_current = -1;
            return moveBy(1);
        case Qt::Key_End:
            m_current = static_cast<int>(m_lines.size());
            return moveBy(-1);
        case Qt::Key_Space:
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return press();
        default:
            event->ignore();
    }
}

void BoardCounts::mousePressEvent(QMouseEvent* event) {
    const int line = lineAt(event->position().y() + verticalScrollBar()->value());
    if (line < 0) return;
    m_current = line;
    press();
}

void BoardCounts::resizeEvent(QResizeEvent*) { layOut(); }

void BoardCounts::focusInEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
}

void BoardCounts::focusOutEvent(QFocusEvent* event) {
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

QSize BoardCounts::sizeHint() const { return {m_look.space(countsWidth), m_look.space(400)}; }
QSize BoardCounts::minimumSizeHint() const {
    return {m_look.space(countsWidth), m_look.space(120)};
}

}  // namespace combwright
