#include "ui/today/due_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "core/places/pages/due/due_words.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

using LineWhat = DueLine::What;

double buttonWidth(const Look& look) {
    return std::max(look.px(84),
                    textWidth(DueView::tr("Honey room"), look.font(TextSize::Note)) + look.px(16));
}

/// Words for groups stand at the left, all lines begin right of them.
double groupRoom(const Look& look) {
    double widest = 0;
    for (const DueGroup group :
         {DueGroup::Late, DueGroup::Today, DueGroup::ThisWeek, DueGroup::Later})
        widest = std::max(widest, textWidth(groupText(group), look.font(TextSize::Body, true)));
    return widest + look.px(20);
}

void paintOpener(QPainter& painter, QPointF middle, bool open, const Look& look) {
    const double half = look.px(4);
    QPolygonF triangle;
    if (open)
        triangle << middle + QPointF(-half, -half / 2) << middle + QPointF(half, -half / 2)
                 << middle + QPointF(0, half);
    else
        triangle << middle + QPointF(-half / 2, -half) << middle + QPointF(half, 0)
                 << middle + QPointF(-half / 2, half);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.tone(Tone::Muted));
    painter.drawPolygon(triangle);
}

QString worksAt(const DueHive& row) {
    QStringList works;
    for (const DueItem& item : row.items) works << dueDoText(item);
    return works.join(QStringLiteral(", "));
}

QString whysAt(const DueHive& row) {
    QStringList whys;
    for (const DueItem& item : row.items) whys << dueWhyText(item);
    return whys.join(QLatin1Char(' '));
}

}  // namespace

QString dueAction(const DueList& list, const DueLine& line) {
    switch (line.what) {
        case LineWhat::Quieted:
            return {};
        case LineWhat::Quiet:
            return DueView::tr("Hear again");
        case LineWhat::Shut:
            return DueView::tr("Go there");
        case LineWhat::Trip:
        case LineWhat::Hive:
            break;
    }
    const DueTrip& trip = list.trips[line.trip];
    if (line.what == LineWhat::Trip && trip.isTrip()) return DueView::tr("Go there");
    const DueHive& row = trip.hives[line.what == LineWhat::Hive ? line.row : 0];
    const bool single = row.items.size() == 1 && (line.what == LineWhat::Hive || trip.items() == 1);
    const DueItem& item = row.items.front();
    if (single && item.rule == DueRule::Task) return DueView::tr("Tick off");
    if (single && item.rule == DueRule::Clearers && item.about == "out")
        return DueView::tr("It is out");
    if (trip.where == DueWhere::Yard) return DueView::tr("Go there");
    return whereText(trip.where);
}

DueView::DueView(Session& session, QWidget* parent)
    : LineList(session, QStringLiteral("due"), parent) {
    setAccessibleName(tr("Due"));
}

QString DueView::keyOf(const DueLine& line) const {
    return line.what == LineWhat::Quieted || line.what == LineWhat::Quiet
               ? QStringLiteral("quieted")
               : fromUtf8(m_list.trips[line.trip].id());
}

bool DueView::opens(const DueLine& line) const {
    if (line.what == LineWhat::Quieted) return true;
    if (line.what != LineWhat::Trip) return false;
    const DueTrip& trip = m_list.trips[line.trip];
    return trip.isTrip() && (trip.items() > 1 || !trip.shut.empty());
}

void DueView::show(const DueList& list) {
    const DueLine* before = current();
    const QString key = before ? keyOf(*before) : QString();
    int row = currentRow();
    m_list = list;
    if (!m_touched) {
        // The trip of the day stands open; what comes later is one line each.
        m_opened.clear();
        for (const DueTrip& trip : m_list.trips)
            if (trip.isTrip() && trip.group == DueGroup::Today) {
                m_opened.insert(fromUtf8(trip.id()));
                break;
            }
    }
    makeLines();
    const bool sameThere = row < static_cast<int>(m_lines.size()) &&
                           keyOf(m_lines[static_cast<std::size_t>(row)]) == key;
    if (!sameThere && !key.isEmpty()) {
        const auto same = std::find_if(m_lines.begin(), m_lines.end(),
                                       [&](const DueLine& line) { return keyOf(line) == key; });
        if (same != m_lines.end()) row = static_cast<int>(same - m_lines.begin());
    }
    linesChanged(row);
}

void DueView::makeLines() {
    m_lines.clear();
    for (std::size_t t = 0; t < m_list.trips.size(); ++t) {
        const DueLine line{LineWhat::Trip, t, 0};
        m_lines.push_back(line);
        if (!opens(line) || !m_opened.contains(keyOf(line))) continue;
        for (std::size_t i = 0; i < m_list.trips[t].hives.size(); ++i)
            m_lines.push_back({LineWhat::Hive, t, i});
        for (std::size_t i = 0; i < m_list.trips[t].shut.size(); ++i)
            m_lines.push_back({LineWhat::Shut, t, i});
    }
    if (m_list.quieted.empty()) return;
    m_lines.push_back({LineWhat::Quieted, 0, 0});
    if (!m_opened.contains(QStringLiteral("quieted"))) return;
    for (std::size_t i = 0; i < m_list.quieted.size(); ++i)
        m_lines.push_back({LineWhat::Quiet, 0, i});
}

const DueLine* DueView::current() const {
    const auto row = static_cast<std::size_t>(currentRow());
    return row < m_lines.size() ? &m_lines[row] : nullptr;
}

void DueView::open(bool opened) {
    const DueLine* line = current();
    if (!line) return;
    // From within a trip one comes back to its own line.
    if (!opens(*line)) {
        const bool inside = line->what == LineWhat::Hive || line->what == LineWhat::Shut ||
                            line->what == LineWhat::Quiet;
        if (opened || !inside) return;
        int row = currentRow();
        while (row > 0 && !opens(m_lines[static_cast<std::size_t>(row)])) --row;
        choose(row);
        Q_EMIT moved();
        return;
    }
    m_touched = true;
    const QString key = keyOf(*line);
    if (opened)
        m_opened.insert(key);
    else
        m_opened.erase(key);
    makeLines();
    updateGeometry();
    choose(currentRow());
    Q_EMIT moved();
}

DueView::Laid DueView::linePlan(const DueLine& line) const {
    Laid laid;
    laid.note.size = TextSize::Note;
    laid.note.tone = Tone::Muted;
    switch (line.what) {
        case LineWhat::Quieted:
            laid.title.text = m_list.quieted.size() == 1
                                  ? tr("1 quieted")
                                  : tr("%1 quieted").arg(m_list.quieted.size());
            laid.title.tone = Tone::Muted;
            return laid;
        case LineWhat::Quiet:
            laid.title.text = quietedText(m_list.quieted[line.row]);
            laid.title.size = TextSize::Note;
            laid.title.tone = Tone::Muted;
            return laid;
        case LineWhat::Hive:
        case LineWhat::Shut: {
            const DueTrip& trip = m_list.trips[line.trip];
            const bool shut = line.what == LineWhat::Shut;
            const DueHive& row = (shut ? trip.shut : trip.hives)[line.row];
            const QString mark = fromUtf8(row.mark);
            const QString work =
                shut ? leaveShutText(row.items.front().from - days(1)) : worksAt(row);
            laid.title.text = mark.isEmpty() ? work : mark + QStringLiteral("  ") + work;
            laid.title.bold = mark.size();
            laid.note.text = whysAt(row);
            return laid;
        }
        case LineWhat::Trip:
            break;
    }
    const DueTrip& trip = m_list.trips[line.trip];
    const QString work = tripWorkText(trip);
    if (trip.isTrip()) {
        laid.title.text = fromUtf8(trip.yardName) + QStringLiteral(": ") + work;
        laid.title.bold = fromUtf8(trip.yardName).size() + 1;
    } else {
        const QString place =
            trip.where == DueWhere::Yard ? fromUtf8(trip.yardName) : whereText(trip.where);
        const bool said = place.isEmpty() || (trip.where == DueWhere::Yard && work.contains(place));
        laid.title.text = said ? work : work + QStringLiteral("  ") + place;
        laid.title.bold = work.size();
        laid.title.tone = Tone::Muted;
    }
    laid.note.text = tripNoteText(trip);
    laid.when = tripWhenText(trip, m_list.on);
    return laid;
}

std::vector<DueView::Laid> DueView::layOut(double width, double* height) const {
    const Look& look = this->look();
    const double left = groupRoom(look);
    const double button = buttonWidth(look);
    const double pad = look.px(6);
    const double gap = look.px(8);
    const QFont whenFont = look.font(TextSize::Body, true);
    std::vector<Laid> all;
    double y = 0;
    for (const DueLine& line : m_lines) {
        Laid laid = linePlan(line);
        const bool inside = line.what != LineWhat::Trip && line.what != LineWhat::Quieted;
        const bool triangle = opens(line);
        const double x = left + gap + (inside ? look.px(32) : triangle ? look.px(16) : 0.0);
        const bool hasButton =
            !inside && line.what != LineWhat::Quieted && !dueAction(m_list, line).isEmpty();
        const double right = width - (hasButton ? button + gap * 2 : gap);
        const double when = laid.when.isEmpty() ? 0 : textWidth(laid.when, whenFont) + gap * 2;
        const double titleWidth = std::max(look.px(120), right - x - when);
        const double noteWidth = std::max(look.px(120), right - x - gap);
        const double high = wrappedHeight(laid.title, titleWidth, look);
        const double under = wrappedHeight(laid.note, noteWidth, look);
        laid.titleAt = QRectF(x, y + pad, titleWidth, high);
        laid.noteAt = QRectF(x, y + pad + high + look.px(1), noteWidth, under);
        laid.whenX = right - gap;
        double rowHeight = pad * 2 + high + (under > 0 ? under + look.px(1) : 0);
        if (hasButton) rowHeight = std::max(rowHeight, look.target() + pad * 2);
        laid.row = QRectF(left, y, width - left - 1, rowHeight);
        if (hasButton)
            laid.button = QRectF(width - button - gap, y + (rowHeight - look.target()) / 2, button,
                                 look.target());
        y += rowHeight;
        all.push_back(std::move(laid));
    }
    if (height) *height = y;
    return all;
}

int DueView::heightForWidth(int width) const {
    double height = 0;
    layOut(width, &height);
    return static_cast<int>(std::ceil(height)) + 2;
}

QSize DueView::sizeHint() const {
    const int width = look().space(480);
    return {width, heightForWidth(width)};
}

QRect DueView::currentRect() const {
    const auto all = layOut(width());
    const auto row = static_cast<std::size_t>(currentRow());
    return row < all.size() ? all[row].row.toAlignedRect() : QRect();
}

void DueView::paintLine(QPainter& painter, std::size_t index, const Laid& laid) const {
    const Look& look = this->look();
    const DueLine& line = m_lines[index];
    const bool isCurrent = static_cast<int>(index) == currentRow();
    if (isCurrent) {
        painter.setPen(hasFocus() ? QPen(look.tone(Tone::Accent), look.px(1.8))
                                  : QPen(look.tone(Tone::Line), look.px(1)));
        painter.setBrush(hasFocus() ? look.tone(Tone::Selection) : look.tone(Tone::Surface));
        painter.drawRoundedRect(laid.row.adjusted(1, 1, -1, -1), look.corner(), look.corner());
    }
    if (opens(line))
        paintOpener(painter,
                    {laid.titleAt.x() - look.px(9),
                     laid.titleAt.y() + lineStep(look.font(TextSize::Body)) / 2},
                    m_opened.contains(keyOf(line)), look);
    paintWrapped(painter, laid.titleAt.topLeft(), laid.title, laid.titleAt.width(), look);
    paintWrapped(painter, laid.noteAt.topLeft(), laid.note, laid.noteAt.width(), look);
    const bool late =
        line.what == LineWhat::Trip && m_list.trips[line.trip].group == DueGroup::Late;
    const QFont bold = look.font(TextSize::Body, true);
    if (!laid.when.isEmpty())
        paintText(painter, {laid.whenX, laid.titleAt.y() + QFontMetricsF(bold).ascent()}, laid.when,
                  bold, look.tone(late ? Tone::Warn : Tone::Ink), Qt::AlignRight);
    if (laid.button.isEmpty()) return;
    paintButton(painter, laid.button, dueAction(m_list, line));
}

void DueView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = this->look();
    const auto all = layOut(width());
    std::optional<DueGroup> group;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const DueLine& line = m_lines[i];
        const bool head = line.what == LineWhat::Trip || line.what == LineWhat::Quieted;
        const bool newGroup =
            line.what == LineWhat::Quieted ||
            (line.what == LineWhat::Trip && group != m_list.trips[line.trip].group);
        if (!head) {
            painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(0.8)));
            painter.drawLine(QPointF(all[i].titleAt.x(), all[i].row.y()),
                             QPointF(width(), all[i].row.y()));
        }
        if (head && i > 0) {
            painter.setPen(plainPen(look.tone(newGroup ? Tone::Line : Tone::Hairline), look.px(1)));
            const double x = newGroup ? 0 : all[i].row.x();
            painter.drawLine(QPointF(x, all[i].row.y()), QPointF(width(), all[i].row.y()));
        }
        if (line.what == LineWhat::Trip && newGroup) {
            group = m_list.trips[line.trip].group;
            const bool late = *group == DueGroup::Late;
            const QFont font = look.font(TextSize::Body, late);
            paintText(painter, {0, all[i].titleAt.y() + QFontMetricsF(font).ascent()},
                      groupText(*group), font, look.tone(late ? Tone::Warn : Tone::Muted));
        }
        paintLine(painter, i, all[i]);
    }
}

void DueView::speak() {
    const DueLine* line = current();
    if (!line) return setAccessibleDescription(tr("Nothing is due."));
    const Laid laid = linePlan(*line);
    QStringList said{laid.title.text, laid.when, laid.note.text};
    if (line->what == LineWhat::Trip) said.prepend(groupText(m_list.trips[line->trip].group));
    if (opens(*line))
        said << (m_opened.contains(keyOf(*line)) ? tr("open") : tr("closed, Right opens it"));
    said.removeAll(QString());
    setAccessibleDescription(said.join(QStringLiteral(". ")));
}

void DueView::doCurrent() {
    const DueLine* line = current();
    if (!line) return;
    if (line->what == LineWhat::Quieted)
        open(!m_opened.contains(QStringLiteral("quieted")));
    else
        Q_EMIT done(DueLine(*line));
}

void DueView::keyPressEvent(QKeyEvent* event) {
    const bool plain = !(event->modifiers() & ~Qt::KeypadModifier);
    if (plain && event->key() == Qt::Key_Right) return open(true);
    if (plain && event->key() == Qt::Key_Left) return open(false);
    LineList::keyPressEvent(event);
}

void DueView::mousePressEvent(QMouseEvent* event) {
    const auto all = layOut(width());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Laid& laid = all[i];
        if (event->position().y() < laid.row.top() || event->position().y() >= laid.row.bottom())
            continue;
        choose(static_cast<int>(i));
        const DueLine line = m_lines[i];
        if (laid.button.contains(event->position()))
            Q_EMIT done(line);
        else if (opens(line) && event->position().x() < laid.titleAt.x())
            open(!m_opened.contains(keyOf(line)));
        return;
    }
}

void DueView::mouseDoubleClickEvent(QMouseEvent*) {
    const DueLine* line = current();
    if (line && opens(*line)) open(!m_opened.contains(keyOf(*line)));
}

}  // namespace combwright
