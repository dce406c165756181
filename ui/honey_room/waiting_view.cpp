#include "ui/honey_room/waiting_view.h"

#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

constexpr double mostPxPerMm = 0.32;
constexpr double leastPxPerMm = 0.2;
constexpr double frontMm = 412.8;

FigureText readingFigure(const std::optional<Known<Mass>>& mass) {
    const auto grams = mass ? mass->middle() : std::nullopt;
    if (!grams) return {};
    return {massFigure(*grams, mass->how), massUnit(), letter(mass->how)};
}

QString waterFigure(WaterContent water) { return QLocale().toString(water.percent(), 'f', 1); }

/// "  peg 8" of a wet box: still on it, or off it today.
QString pegOf(const RoomBox& box) {
    const auto& peg = box.peg ? box.peg : box.pegWas;
    return peg ? WaitingView::tr("  peg %1").arg(*peg) : QString();
}

bool hasMass(const std::optional<Known<Mass>>& mass) { return mass && mass->value; }

QString chalkOf(const RoomBox& box) {
    if (box.plannedFor) return WaitingView::tr("still on %1").arg(fromUtf8(box.hive));
    if (box.went.spun > 0 && box.frames)
        return WaitingView::tr("%1 spun, %2 left").arg(box.went.spun).arg(*box.left());
    if (box.look && box.look->cappedFrames && box.look->cappedFrames->value && box.frames)
        return WaitingView::tr("%1 of %2 capped")
            .arg(box.look->cappedFrames->value->value(), 0, 'g', 3)
            .arg(*box.frames);
    return box.frames ? WaitingView::tr("%1 frames").arg(*box.frames) : QString();
}

std::optional<double> shareIn(const RoomBox& box) {
    const auto judged = box.entry && box.entry->filled ? box.entry->filled->middle()
                        : box.look && box.look->filled ? box.look->filled->middle()
                                                       : std::nullopt;
    if (!judged) return std::nullopt;
    const double left = box.frames && *box.frames > 0
                            ? static_cast<double>(*box.left()) / static_cast<double>(*box.frames)
                            : 1.0;
    return *judged / 10000.0 * left;
}

}  // namespace

BoxView roomBoxFront(const RoomBox& box) {
    BoxView view;
    view.mark = fromUtf8(box.mark);
    view.heightMm = box.heightMm;
    view.words = {chalkOf(box)};
    view.filled = shareIn(box);
    view.faded = box.plannedFor.has_value();
    if (box.peg) view.peg = QString::number(*box.peg);
    return view;
}

QString spoken(const RoomBox& box) {
    QStringList parts{fromUtf8(box.mark)};
    parts << (box.hive.empty() ? WaitingView::tr("hive not known")
                               : WaitingView::tr("of %1").arg(fromUtf8(box.hive)));
    parts << (hasMass(box.gross) ? WaitingView::tr("full %1").arg(spoken(readingFigure(box.gross)))
                                 : WaitingView::tr("not weighed full"));
    if (hasMass(box.wet)) parts << WaitingView::tr("wet %1").arg(spoken(readingFigure(box.wet)));
    parts << chalkOf(box);
    if (box.plannedFor)
        parts << WaitingView::tr("planned for %1").arg(shortDayText(*box.plannedFor));
    if (box.peg) parts << WaitingView::tr("on peg %1").arg(*box.peg);
    if (box.pegWas) parts << WaitingView::tr("was on peg %1").arg(*box.pegWas);
    if (box.look && box.look->water)
        parts << WaitingView::tr("water %1 %").arg(waterFigure(*box.look->water));
    if (box.off && !hasMass(box.wet))
        parts << WaitingView::tr("off since %1").arg(shortDayText(*box.off));
    if (box.extractBy && !hasMass(box.wet))
        parts << WaitingView::tr("extract by %1").arg(shortDayText(*box.extractBy));
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", ")) + QLatin1Char('.');
}

WaitingView::WaitingView(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("waiting"));
    setAccessibleName(tr("Boxes waiting"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

void WaitingView::show(const RoomBoxes& boxes) {
    const RoomBox* before = current();
    const std::string mark = before ? before->mark : std::string();
    m_boxes = boxes.waiting;
    m_waiting = m_boxes.size();
    m_boxes.insert(m_boxes.end(), boxes.wet.begin(), boxes.wet.end());
    // The cursor stays with its box, which may have gone over to the wet ones.
    const auto same = std::find_if(m_boxes.begin(), m_boxes.end(),
                                   [&](const RoomBox& box) { return box.mark == mark; });
    if (!mark.empty() && same != m_boxes.end()) m_row = static_cast<int>(same - m_boxes.begin());
    m_row = std::clamp(m_row, 0, std::max(0, static_cast<int>(m_boxes.size()) - 1));
    if (same == m_boxes.end()) {
        // Begun anew: at the first box of the run nobody weighed full.
        const auto lacking = std::find_if(m_boxes.begin(), m_boxes.end(), [](const RoomBox& box) {
            return !hasMass(box.gross) && !box.plannedFor;
        });
        m_row = lacking == m_boxes.end() ? 0 : static_cast<int>(lacking - m_boxes.begin());
    }
    updateGeometry();
    speak();
    update();
    Q_EMIT chosen(false);
}

const RoomBox* WaitingView::current() const {
    return m_row < static_cast<int>(m_boxes.size()) ? &m_boxes[static_cast<std::size_t>(m_row)]
                                                    : nullptr;
}

void WaitingView::choose(int row) {
    m_row = std::clamp(row, 0, std::max(0, static_cast<int>(m_boxes.size()) - 1));
    speak();
    update();
    Q_EMIT chosen(true);
    Q_EMIT moved();
}

QRect WaitingView::currentRect() const {
    const Laid laid = layOut(height());
    const auto at = static_cast<std::size_t>(m_row);
    return at < laid.rows.size() ? laid.rows[at].toAlignedRect() : QRect();
}

void WaitingView::chooseNextLacking(bool wet) {
    const int count = static_cast<int>(m_boxes.size());
    for (int step = 1; step < count; ++step) {
        const int row = (m_row + step) % count;
        const RoomBox& box = m_boxes[static_cast<std::size_t>(row)];
        if (!hasMass(wet ? box.wet : box.gross) && (!wet || hasMass(box.gross))) return choose(row);
    }
}

std::optional<QRect> WaitingView::rectOfPeg(int peg) const {
    const Laid laid = layOut(height());
    for (std::size_t i = 0; i < m_boxes.size(); ++i)
        if (m_boxes[i].peg == peg) return laid.rows[i].toAlignedRect();
    return std::nullopt;
}

WaitingView::Words WaitingView::wordsOf(const RoomBox& box) const {
    Words words;
    FigureStyle style;
    style.size = TextSize::Head;
    if (hasMass(box.gross))
        words.mass = figureRuns(readingFigure(box.gross), style);
    else
        words.mass = {{QStringLiteral("?"), true, Tone::Warn}, {tr(" full"), false, Tone::Warn}};
    words.hive = {{box.hive.empty() ? tr("hive ?") : fromUtf8(box.hive), false, Tone::Muted}};
    if (box.look && box.look->water)
        words.mass.push_back({tr("  %1 %").arg(waterFigure(*box.look->water)), false, Tone::Muted});
    if (box.plannedFor)
        words.hive.push_back(
            {tr("  for %1").arg(dayAndMonth(*box.plannedFor)), false, Tone::Muted});
    if (!box.off) return words;
    words.hive.push_back({tr("  since %1").arg(dayAndMonth(*box.off)), false, Tone::Muted});
    if (!box.extractBy) return words;
    const bool late = box.late(m_session.clock().today());
    words.by = {{(late ? tr("late: by %1") : tr("by %1")).arg(dayAndMonth(*box.extractBy)), true,
                 late ? Tone::Bad : Tone::Ink}};
    return words;
}

double WaitingView::wordsWide() const {
    const Look& look = m_session.look();
    double wide = 0;
    for (std::size_t i = 0; i < m_waiting; ++i) {
        const Words words = wordsOf(m_boxes[i]);
        wide = std::max({wide, lineWidth(words.mass, TextSize::Head, look),
                         lineWidth(words.hive, TextSize::Note, look),
                         lineWidth(words.by, TextSize::Note, look)});
    }
    return wide;
}

double WaitingView::leastScale() const {
    const Look& look = m_session.look();
    const QFont chalk = look.font(TextSize::Letter, false, true);
    double wide = 0;
    for (std::size_t i = 0; i < m_waiting; ++i)
        wide = std::max(wide, textWidth(chalkOf(m_boxes[i]), chalk) + look.px(26));
    return std::clamp(wide / (look.px(1) * frontMm), leastPxPerMm, mostPxPerMm);
}

double WaitingView::pegRoom() const {
    const bool pegs = std::any_of(m_boxes.begin(), m_boxes.end(),
                                  [](const RoomBox& each) { return each.peg.has_value(); });
    return m_session.look().px(pegs ? 36 : 14);
}

double WaitingView::rowHeight(double scale, const RoomBox& box) const {
    const Look& look = m_session.look();
    const double words = lineStep(look.font(TextSize::Head)) + lineStep(look.font(TextSize::Body)) +
                         (box.extractBy ? lineStep(look.font(TextSize::Note)) : 0.0);
    return std::max(look.px(scale * box.heightMm), words) + look.px(6);
}

WaitingView::Laid WaitingView::layOut(double room) const {
    const Look& look = m_session.look();
    const double wetRow = std::max<double>(look.target(), lineStep(look.font(TextSize::Body)));
    const double wetHead = m_waiting < m_boxes.size() ? look.px(30) : 0;
    const double wet = wetHead + wetRow * static_cast<double>(m_boxes.size() - m_waiting);
    Laid laid;
    const auto heightAt = [&](double scale) {
        double height = look.px(4);
        for (std::size_t i = 0; i < m_waiting; ++i) height += rowHeight(scale, m_boxes[i]);
        return height;
    };
    // The boxes give way before their words are cut.
    const double wide = (width() - look.px(9) - pegRoom() - wordsWide()) / (look.px(1) * frontMm);
    const double least = leastScale();
    laid.scale = std::clamp(wide, least, mostPxPerMm);
    while (laid.scale > least && heightAt(laid.scale) + wet > room) laid.scale -= 0.01;
    double y = look.px(4);
    for (std::size_t i = 0; i < m_boxes.size(); ++i) {
        if (i == m_waiting) {
            laid.headAt = y + look.px(21);
            y += wetHead;
        }
        const double high = i < m_waiting ? rowHeight(laid.scale, m_boxes[i]) : wetRow;
        laid.rows.emplace_back(0, y, width(), high);
        y += high;
    }
    laid.height = y + look.px(4);
    return laid;
}

QSize WaitingView::sizeHint() const {
    return {m_session.look().space(256),
            std::max(static_cast<int>(layOut(1e9).height), m_session.look().space(60))};
}

QSize WaitingView::minimumSizeHint() const {
    const Look& look = m_session.look();
    const double words = look.px(9 + frontMm * leastScale()) + pegRoom() + wordsWide();
    return {std::max(look.space(200), static_cast<int>(std::ceil(words))),
            std::max(static_cast<int>(layOut(0).height), m_session.look().space(60))};
}

void WaitingView::paintRow(QPainter& painter, const QRectF& row, const RoomBox& box,
                           double scale) const {
    const Look& look = m_session.look();
    const QRectF front(row.left() + look.px(5), row.top() + look.px(3), look.px(frontMm * scale),
                       look.px(box.heightMm * scale));
    if (box.entry && !box.box) {
        // Nobody knows the box: white and dashed, as its honey is in the balance.
        painter.setPen(dashedPen(look.tone(Tone::Ink), look.px(1.2)));
        painter.setBrush(look.tone(Tone::Surface));
        painter.drawRect(front);
        paintTextIn(painter, QRectF(front.left(), front.top(), front.width(), front.height() * 0.5),
                    fitted(fromUtf8(box.mark), look.font(TextSize::Note, true), front.width()),
                    look.font(TextSize::Note, true), look.tone(Tone::Ink));
        paintTextIn(painter, front.adjusted(0, front.height() * 0.5, 0, 0), chalkOf(box),
                    look.font(TextSize::Letter, false, true), look.tone(Tone::Muted));
    } else {
        paintBoxFront(painter, front, roomBoxFront(box), look);
    }
    const double x = front.right() + pegRoom();
    const Words words = wordsOf(box);
    double y = row.top() + look.px(1) + lineStep(look.font(TextSize::Head)) * 0.8;
    paintLine(painter, {x, y}, words.mass, TextSize::Head, look);
    y += lineStep(look.font(TextSize::Body));
    paintLine(painter, {x, y}, words.hive, TextSize::Note, look);
    y += lineStep(look.font(TextSize::Note));
    paintLine(painter, {x, y}, words.by, TextSize::Note, look);
}

void WaitingView::paintWet(QPainter& painter, const QRectF& row, const RoomBox& box) const {
    const Look& look = m_session.look();
    const double base = row.center().y() + capHeight(look.font(TextSize::Body)) / 2;
    const double room = row.width() - look.px(9);
    const auto words = [&](TextSize size, bool units) {
        FigureStyle style;
        style.size = size;
        TextLine line{
            {fromUtf8(box.mark), true},
            {pegOf(box), false, Tone::Muted},
            {QStringLiteral("  ") + (box.hive.empty() ? QStringLiteral("?") : fromUtf8(box.hive)),
             false, Tone::Muted},
            {QStringLiteral("   ")}};
        const auto add = [&](const std::optional<Known<Mass>>& mass) {
            FigureText figure = readingFigure(mass);
            if (!units) figure.unit.clear();
            if (hasMass(mass))
                line = joined(line, figureRuns(figure, style));
            else
                line.push_back({QStringLiteral("?"), true, Tone::Warn});
        };
        add(box.gross);
        line.push_back({tr(" − "), false, Tone::Muted});
        add(box.wet);
        return line;
    };
    // Where it does not fit it goes without units, then smaller: a figure is never cut.
    TextSize size = TextSize::Body;
    TextLine line = words(size, true);
    if (lineWidth(line, size, look) > room) line = words(size, false);
    if (lineWidth(line, size, look) > room) line = words(size = TextSize::Note, false);
    paintLine(painter, {row.left() + look.px(5), base}, line, size, look);
}

void WaitingView::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (m_boxes.empty()) {
        painter.setPen(look.tone(Tone::Muted));
        painter.setFont(look.font(TextSize::Body));
        painter.drawText(rect(), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                         tr("No box waits. Keep a pull plan, or type a box and what it weighs."));
        return;
    }
    const Laid laid = layOut(height());
    if (laid.headAt >= 0)
        paintLine(painter, {look.px(5), laid.headAt}, {{tr("Wet, to go back"), true}},
                  TextSize::Body, look);
    for (std::size_t i = 0; i < laid.rows.size(); ++i) {
        if (static_cast<int>(i) == m_row) {
            painter.setPen(QPen(look.tone(hasFocus() ? Tone::Accent : Tone::Line),
                                look.px(hasFocus() ? 2 : 1)));
            painter.setBrush(look.tone(Tone::Selection));
            painter.drawRoundedRect(laid.rows[i].adjusted(1, 0.5, -1.5, -0.5), look.corner(),
                                    look.corner());
        }
        if (i < m_waiting)
            paintRow(painter, laid.rows[i], m_boxes[i], laid.scale);
        else
            paintWet(painter, laid.rows[i], m_boxes[i]);
    }
}

void WaitingView::speak() {
    const RoomBox* box = current();
    setAccessibleDescription(
        box ? tr("%1 of %2: %3").arg(m_row + 1).arg(m_boxes.size()).arg(spoken(*box)) : QString());
}

void WaitingView::keyPressEvent(QKeyEvent* event) {
    // With Ctrl a key is the room's.
    if (event->modifiers() & Qt::ControlModifier) return QWidget::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Up:
            return choose(m_row - 1);
        case Qt::Key_Down:
            return choose(m_row + 1);
        case Qt::Key_Home:
            return choose(0);
        case Qt::Key_End:
            return choose(static_cast<int>(m_boxes.size()) - 1);
        case Qt::Key_W:
            return Q_EMIT weighAsked(true);
        case Qt::Key_F:
            return Q_EMIT weighAsked(false);
        case Qt::Key_T:
            return Q_EMIT tableAsked();
        case Qt::Key_Delete:
        case Qt::Key_Backspace:
            return Q_EMIT takeOutAsked();
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return Q_EMIT typed(QString());
        default:
            break;
    }
    const QString text = event->text();
    if (!text.isEmpty() && (text[0].isDigit() || text[0] == QLatin1Char('~')))
        return Q_EMIT typed(text);
    QWidget::keyPressEvent(event);
}

void WaitingView::mousePressEvent(QMouseEvent* event) {
    const Laid laid = layOut(height());
    for (std::size_t i = 0; i < laid.rows.size(); ++i)
        if (laid.rows[i].contains(event->position())) choose(static_cast<int>(i));
}

void WaitingView::mouseDoubleClickEvent(QMouseEvent*) { Q_EMIT typed(QString()); }

}  // namespace combwright
