#include "ui/drawing/year_axis.h"

#include <QLocale>
#include <algorithm>

#include "ui/drawing/lettering.h"

namespace combwright {

double dayNumber(Day day) { return static_cast<double>(day.time_since_epoch().count()); }

Day laidOver(Day day, int year) {
    if (yearOf(day) == year) return day;
    if (const auto same = makeDay(year, monthOf(day), dayOfMonth(day))) return *same;
    return *makeDay(year, monthOf(day), 28);
}

void YearAxis::widen(Day day) {
    first = std::min(first, monthOf(day));
    last = std::max(last, monthOf(day));
}

double YearAxis::x(Day day) const {
    return plot.left() + plot.width() * (dayNumber(laidOver(day, year)) - dayNumber(begin())) /
                             (dayNumber(end()) - dayNumber(begin()));
}

QRectF yearPlot(const QRectF& box, const std::vector<AxisMark>& marks, const Look& look) {
    const QFont note = look.font(TextSize::Note);
    // As wide as the commonest: charts below each other lie month under month.
    double labels = textWidth(QStringLiteral("000"), note);
    for (const AxisMark& mark : marks) labels = std::max(labels, textWidth(mark.label, note));
    const double line = lineStep(note);
    return box.adjusted(labels + look.px(10), line * 2.3, -look.px(2), -line * 1.5);
}

void paintYearGrid(QPainter& painter, const YearAxis& axis, const std::vector<AxisMark>& marks,
                   const Look& look) {
    const QFont note = look.font(TextSize::Note);
    const double high = lineStep(note);
    const auto mark = [&](double y, const QString& words) {
        paintTextIn(painter, QRectF(0, y - high / 2, axis.plot.left() - look.px(6), high), words,
                    note, look.tone(Tone::Muted), Qt::AlignRight);
    };
    mark(axis.plot.bottom(), QStringLiteral("0"));
    for (const AxisMark& each : marks) {
        const double y = axis.y(each.at * axis.top);
        painter.setPen(QPen(look.tone(Tone::Hairline), 1.0));
        painter.drawLine(QPointF(axis.plot.left(), y), QPointF(axis.plot.right(), y));
        mark(y, each.label);
    }
}

void paintYearMonths(QPainter& painter, const YearAxis& axis, const Look& look) {
    const QFont note = look.font(TextSize::Note);
    const auto nameOf = [](unsigned month, QLocale::FormatType format) {
        return QLocale().standaloneMonthName(static_cast<int>(month), format);
    };
    // A whole year in a narrow place: then the months' letters.
    const double room = axis.plot.width() / (axis.last - axis.first + 1) - look.px(8);
    QLocale::FormatType format = QLocale::ShortFormat;
    for (unsigned month = axis.first; month <= axis.last; ++month)
        if (textWidth(nameOf(month, QLocale::ShortFormat), note) > room)
            format = QLocale::NarrowFormat;
    painter.setPen(QPen(look.tone(Tone::Line), 1.0));
    painter.drawLine(axis.plot.bottomLeft(), axis.plot.bottomRight());
    for (unsigned month = axis.first; month <= axis.last; ++month) {
        const double left = axis.x(*makeDay(axis.year, month, 1));
        painter.setPen(QPen(look.tone(Tone::Line), 1.0));
        painter.drawLine(QPointF(left, axis.plot.bottom()),
                         QPointF(left, axis.plot.bottom() + look.px(5)));
        paintText(painter,
                  {left + look.px(4), axis.plot.bottom() + look.px(3) + lineStep(note) * 0.8},
                  nameOf(month, format), note, look.tone(Tone::Muted));
    }
}

void paintChartHead(QPainter& painter, const QRectF& box, const QString& said, const QString& axis,
                    const Look& look) {
    const QFont note = look.font(TextSize::Note);
    const QFont strong = look.font(TextSize::Note, true);
    const double y = box.top() + lineStep(note) * 0.8;
    const double words = said.isEmpty() ? 0.0 : textWidth(said, strong) + look.px(16);
    if (words + textWidth(axis, note) <= box.width())
        paintText(painter, {box.right(), y}, axis, note, look.tone(Tone::Muted), Qt::AlignRight);
    if (!said.isEmpty())
        paintText(painter, {box.left(), y}, fitted(said, strong, box.width()), strong,
                  look.tone(Tone::Ink));
}

}  // namespace combwright
