#include "ui/drawing/queen_wait.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <vector>

#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

constexpr double barHeight = 26.0;  // at the base font, px

/// Words of this file, where the translators' tools find them.
struct QueenWaitTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::QueenWait)
};

QString dayWords(QDate day) { return dayShown(day, "d MMM"); }

/// A day below the line, with what is done on it.
struct DayMark {
    QDate day;
    QString what;
    bool strong = true;
    bool today = false;
};

std::vector<DayMark> dayMarks(const QueenWaitView& wait) {
    std::vector<DayMark> marks{{wait.queenOut, QueenWaitTexts::tr("queen out"), false},
                               {wait.lookFrom, QueenWaitTexts::tr("look")},
                               {wait.testFrame, QueenWaitTexts::tr("give eggs")},
                               {wait.actBy, QueenWaitTexts::tr("act")}};
    if (wait.today.isValid() && wait.today >= wait.since && wait.today <= wait.actBy) {
        std::erase_if(marks, [&](const DayMark& mark) { return mark.day == wait.today; });
        marks.push_back({wait.today, QueenWaitTexts::tr("today"), true, true});
    }
    std::stable_sort(marks.begin(), marks.end(),
                     [](const DayMark& a, const DayMark& b) { return a.day < b.day; });
    return marks;
}

double markWidth(const DayMark& mark, const Look& look) {
    return std::max(textWidth(dayWords(mark.day), look.font(TextSize::Note, mark.strong)),
                    textWidth(mark.what, look.font(TextSize::Note)));
}

/// Middles of the marks: each at its day where there is room, pushed apart where there is none.
std::vector<double> middles(const std::vector<DayMark>& marks, const QRectF& box,
                            const QueenWaitView& wait, const Look& look) {
    std::vector<double> xs;
    const double gap = look.px(5.0);
    double edge = box.left();
    for (const DayMark& mark : marks) {
        const double half = markWidth(mark, look) / 2.0;
        const double x = std::max(queenWaitX(box, wait, mark.day), edge + half);
        xs.push_back(x);
        edge = x + half + gap;
    }
    edge = box.right();
    for (std::size_t i = marks.size(); i-- > 0;) {
        const double half = markWidth(marks[i], look) / 2.0;
        xs[i] = std::min(xs[i], edge - half);
        edge = xs[i] - half - gap;
    }
    return xs;
}

void paintSpan(QPainter& painter, const QRectF& span, const QString& words, bool bold,
               const Look& look) {
    const QFont font = look.font(TextSize::Note, bold);
    const double wide = textWidth(words, font);
    if (wide + look.px(4.0) > span.width()) return;
    const QRectF label(span.center().x() - wide / 2.0 - look.px(5.0), span.top() + look.px(4.0),
                       wide + look.px(10.0), span.height() - look.px(8.0));
    if (bold) painter.fillRect(label, look.tone(Tone::Surface));
    paintTextIn(painter, span, words, font, look.tone(Tone::Ink));
}

}  // namespace

double queenWaitHeight(const Look& look) {
    return look.px(barHeight + 10.0) + 2.0 * lineStep(look.font(TextSize::Note));
}

double queenWaitX(const QRectF& box, const QueenWaitView& wait, QDate day) {
    const auto all = static_cast<double>(std::max<qint64>(wait.since.daysTo(wait.actBy), 1));
    const double share = std::clamp(static_cast<double>(wait.since.daysTo(day)) / all, 0.0, 1.0);
    return box.left() + share * box.width();
}

void paintQueenWait(QPainter& painter, const QRectF& box, const QueenWaitView& wait,
                    const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF line = box.adjusted(look.px(1.0), 0, -look.px(1.0), 0);
    const double top = box.top() + look.px(4.0);
    const auto spanFrom = [&](QDate from, QDate to) {
        const double left = queenWaitX(line, wait, from);
        return QRectF(left, top, queenWaitX(line, wait, to) - left, look.px(barHeight));
    };
    const QRectF shut = spanFrom(wait.since, wait.lookFrom);
    QPainterPath closed;
    closed.addRect(shut);
    hatch(painter, closed, look.tone(Tone::Line), look.px(5.0), 45.0, look.px(0.8));
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.0)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(spanFrom(wait.since, wait.actBy));
    const double below = top + look.px(barHeight);
    for (const QDate& edge : {wait.lookFrom, wait.testFrame, wait.actBy}) {
        const double x = queenWaitX(line, wait, edge);
        painter.drawLine(QPointF(x, top - look.px(4.0)), QPointF(x, below));
    }
    const double out = queenWaitX(line, wait, wait.queenOut);
    painter.drawLine(QPointF(out, below), QPointF(out, below + look.px(4.0)));
    paintSpan(painter, shut, QueenWaitTexts::tr("leave shut"), true, look);
    paintSpan(painter, spanFrom(wait.lookFrom, wait.testFrame), QueenWaitTexts::tr("look"), false,
              look);
    paintSpan(painter, spanFrom(wait.testFrame, wait.actBy), QueenWaitTexts::tr("test"), false,
              look);

    const auto marks = dayMarks(wait);
    const auto xs = middles(marks, line, wait, look);
    const double step = lineStep(look.font(TextSize::Note));
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const QColor color = look.tone(marks[i].today ? Tone::Accent : Tone::Ink);
        const double base = below + look.px(3.0) + step;
        paintText(painter, {xs[i], base}, dayWords(marks[i].day),
                  look.font(TextSize::Note, marks[i].strong), color, Qt::AlignHCenter);
        paintText(painter, {xs[i], base + step}, marks[i].what, look.font(TextSize::Note),
                  marks[i].today ? color : look.tone(Tone::Muted), Qt::AlignHCenter);
        if (!marks[i].today) continue;
        const double x = queenWaitX(line, wait, marks[i].day);
        painter.setPen(plainPen(color, look.px(2.4)));
        painter.drawLine(QPointF(x, top - look.px(4.0)), QPointF(x, below + look.px(3.0)));
    }
}

QString spoken(const QueenWaitView& wait) {
    return QueenWaitTexts::tr(
               "Waiting for a young queen: leave shut to %1; queen out by %2; "
               "look from %3; give eggs from %4; act by %5.")
        .arg(dayWords(wait.lookFrom.addDays(-1)), dayWords(wait.queenOut), dayWords(wait.lookFrom),
             dayWords(wait.testFrame), dayWords(wait.actBy));
}

}  // namespace combwright
