#include "ui/drawing/ribbon.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

constexpr double ribbonLane = 15.5;  // px
constexpr double ribbonTick = 3.0;   // width of one day's work, px
constexpr double ribbonMarkHeight = 9.5;

double todayRoom(const RibbonView& ribbon, const Look& look) {
    return ribbon.todayWords.isEmpty() ? 0.0 : lineStep(look.font(TextSize::Note, true));
}

double monthRoom(const Look& look) { return lineStep(look.font(TextSize::Note)) + look.px(4.0); }

double laneStep(const Look& look) {
    return std::max(look.px(ribbonLane), lineStep(look.font(TextSize::Note)));
}

double laneNames(const RibbonView& ribbon, const Look& look) {
    double widest = 0.0;
    for (const auto& lane : ribbon.lanes) {
        widest = std::max(widest, textWidth(lane.name, look.font(TextSize::Note)));
    }
    return widest > 0.0 ? widest + look.px(16.0) : 0.0;
}

void paintMonths(QPainter& painter, const QRectF& box, const RibbonView& ribbon, double top,
                 double bottom, const Look& look) {
    const QFont font = look.font(TextSize::Note);
    for (int month = 1; month <= 12; ++month) {
        const QDate first(ribbon.year, month, 1);
        const double x = ribbonX(box, ribbon, look, first);
        painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(1.0)));
        painter.drawLine(QPointF(x, top), QPointF(x, bottom));
        const double room = ribbonX(box, ribbon, look, first.addMonths(1)) - x - look.px(6.0);
        QString name = QLocale().standaloneMonthName(month);
        if (textWidth(name, font) > room) {
            name = QLocale().standaloneMonthName(month, QLocale::ShortFormat);
        }
        if (textWidth(name, font) > room) continue;
        double at = x + look.px(4.0);
        // Today's line must not run through a name: the name steps to its right where it fits.
        const double now = ribbonX(box, ribbon, look, ribbon.today);
        const bool crossed = ribbon.today.year() == ribbon.year && ribbon.today.month() == month &&
                             now < at + textWidth(name, font);
        if (crossed && now + look.px(5.0) - at + textWidth(name, font) < room) {
            at = now + look.px(5.0);
        }
        paintText(painter, {at, top + monthRoom(look) - look.px(6.0)}, name, font,
                  look.tone(Tone::Muted));
    }
    painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(1.0)));
    painter.drawLine(QPointF(box.right(), top), QPointF(box.right(), bottom));
}

void paintRibbonMark(QPainter& painter, const QRectF& box, const RibbonView& ribbon,
                     const RibbonMark& mark, double middle, const Look& look) {
    if (!mark.from.isValid()) return;
    const QDate last = mark.to.isValid() ? mark.to : mark.from;
    if (last.year() < ribbon.year || mark.from.year() > ribbon.year) return;
    const double left = ribbonX(box, ribbon, look, mark.from);
    const double right = ribbonX(box, ribbon, look, last.addDays(1));
    const double width = std::max(look.px(ribbonTick) + (mark.done ? 0.0 : 1.0), right - left);
    const double height = look.px(ribbonMarkHeight);
    const QRectF tick(left, middle - height / 2.0, width, height);
    if (mark.done) return painter.fillRect(tick, look.tone(Tone::Ink));
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.0)));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawRect(tick);
}

/// Words of this file, where the translators' tools find them.
struct RibbonTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::Ribbon)
};

}  // namespace

double ribbonHeight(const RibbonView& ribbon, const Look& look) {
    return todayRoom(ribbon, look) + monthRoom(look) + look.px(4.0) +
           static_cast<double>(ribbon.lanes.size()) * laneStep(look);
}

double ribbonX(const QRectF& box, const RibbonView& ribbon, const Look& look, QDate day) {
    const double left = box.left() + laneNames(ribbon, look);
    const QDate first(ribbon.year, 1, 1);
    const auto days = std::clamp<qint64>(first.daysTo(day), 0, first.daysInYear());
    return left + (box.right() - left) * static_cast<double>(days) / first.daysInYear();
}

void paintRibbon(QPainter& painter, const QRectF& box, const RibbonView& ribbon, const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const double top = box.top() + todayRoom(ribbon, look);
    const double lanes = top + monthRoom(look);
    const double bottom = lanes + static_cast<double>(ribbon.lanes.size()) * laneStep(look);
    const double left = ribbonX(box, ribbon, look, QDate(ribbon.year, 1, 1));
    paintMonths(painter, box, ribbon, top, bottom, look);
    const QFont font = look.font(TextSize::Note);
    double y = lanes;
    for (const auto& lane : ribbon.lanes) {
        const double middle = y + laneStep(look) / 2.0;
        if (y > lanes) {
            painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(0.8)));
            painter.drawLine(QPointF(left, y), QPointF(box.right(), y));
        }
        paintText(painter, {box.left(), middle + capHeight(font) / 2.0}, lane.name, font,
                  look.tone(Tone::Ink));
        for (const auto& mark : lane.marks) {
            paintRibbonMark(painter, box, ribbon, mark, middle, look);
        }
        y += laneStep(look);
    }
    painter.setPen(plainPen(look.tone(Tone::Line), look.px(1.2)));
    painter.drawLine(QPointF(left, lanes), QPointF(box.right(), lanes));
    painter.drawLine(QPointF(left, bottom), QPointF(box.right(), bottom));
    if (!ribbon.today.isValid() || ribbon.today.year() != ribbon.year) return;
    const double now = ribbonX(box, ribbon, look, ribbon.today);
    painter.setPen(plainPen(look.tone(Tone::Accent), look.px(1.8)));
    painter.drawLine(QPointF(now, top), QPointF(now, bottom));
    const QFont bold = look.font(TextSize::Note, true);
    const double half = textWidth(ribbon.todayWords, bold) / 2.0;
    const double x = std::clamp(now, box.left() + half, std::max(box.left(), box.right() - half));
    paintText(painter, {x, top - look.px(4.0)}, ribbon.todayWords, bold, look.tone(Tone::Accent),
              Qt::AlignHCenter);
}

QString spoken(const RibbonView& ribbon) {
    QStringList lanes;
    for (const auto& lane : ribbon.lanes) {
        const auto done = std::count_if(lane.marks.begin(), lane.marks.end(),
                                        [](const RibbonMark& mark) { return mark.done; });
        const auto planned = static_cast<std::ptrdiff_t>(lane.marks.size()) - done;
        QStringList counts;
        if (done > 0) counts << RibbonTexts::tr("%1 done").arg(done);
        if (planned > 0) counts << RibbonTexts::tr("%1 planned").arg(planned);
        if (counts.isEmpty()) counts << RibbonTexts::tr("nothing");
        QStringList named;
        for (const auto& mark : lane.marks) {
            if (!mark.what.isEmpty()) named << mark.what;
        }
        lanes << lane.name + QStringLiteral(": ") + (counts + named).join(QStringLiteral(", "));
    }
    QString words = QString::number(ribbon.year) + QStringLiteral(". ");
    words += lanes.join(QStringLiteral("; ")) + QLatin1Char('.');
    if (!ribbon.todayWords.isEmpty()) {
        words += QLatin1Char(' ') + RibbonTexts::tr("Today is %1.").arg(ribbon.todayWords);
    }
    return words;
}

}  // namespace combwright
