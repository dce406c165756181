#include "ui/drawing/freezer_lane.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

constexpr double laneBox = 50.0;    // px
constexpr double laneLeast = 92.0;  // a round narrower than this could not hold its words
constexpr double laneFrame = 17.0;  // length of a top bar
constexpr double laneFrameGap = 1.5;

struct FreezerLaneTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::FreezerLane)
};

QString laneDay(QDate day) { return dayShown(day, "ddd d MMM"); }

double laneDayRoom(const Look& look) { return lineStep(look.font(TextSize::Note)) + look.px(3.0); }

double laneWordRoom(const Look& look) { return lineStep(look.font(TextSize::Note)); }

int roundCount(const RoundView& round) {
    int count = 0;
    for (const RoundFrames& each : round.frames) count += each.count;
    return count;
}

QString roundKinds(const RoundView& round) {
    QStringList kinds;
    for (const RoundFrames& each : round.frames)
        if (!kinds.contains(each.what)) kinds << each.what;
    return kinds.join(QStringLiteral(", "));
}

QString roundWords(const RoundView& round) {
    if (!round.words.isEmpty()) return round.words;
    switch (round.state) {
        case RoundState::Done:
            return FreezerLaneTexts::tr("dry: %1").arg(roundKinds(round));
        case RoundState::In:
            return FreezerLaneTexts::tr("in until %1").arg(laneDay(round.out));
        case RoundState::Planned:
            return FreezerLaneTexts::tr("waiting: %1").arg(roundKinds(round));
    }
    return {};
}

double laneDays(const RoundView& round) {
    return std::max<double>(1.0, static_cast<double>(round.in.daysTo(round.out)));
}

/// The frames of a round standing in rows, as many as there is room for; the figure says how many.
void paintRoundFrames(QPainter& painter, const QRectF& box, const RoundView& round,
                      const Look& look) {
    double x = box.left();
    double bottom = box.bottom();
    for (const RoundFrames& each : round.frames) {
        FrameView frame;
        frame.shape = each.shape;
        const double width = look.px(laneFrame);
        const QSizeF size = frameSize(frame, width, look);
        const double step = width + look.px(laneFrameGap);
        for (int i = 0; i < each.count; ++i) {
            if (x + width > box.right() + 0.5) {
                x = box.left();
                bottom -= size.height() + look.px(3.0);
            }
            if (bottom - size.height() < box.top() - 0.5) return;
            frame.seed = static_cast<std::uint64_t>(i) + 1;
            paintFrame(painter, {x, bottom - size.height(), width, size.height()}, frame, look);
            x += step;
        }
    }
}

void paintRound(QPainter& painter, const QRectF& place, const RoundView& round, const Look& look) {
    painter.setBrush(round.state == RoundState::In ? QBrush(look.tone(Tone::Selection))
                                                   : QBrush(look.tone(Tone::Surface)));
    const QColor edge = look.tone(Tone::Line);
    painter.setPen(round.state == RoundState::Planned ? dashedPen(edge, look.px(1.2))
                                                      : plainPen(edge, look.px(1.2)));
    painter.drawRect(place);
    const QFont figure = look.font(TextSize::Body, true);
    const QString count = QString::number(roundCount(round));
    const double figureWidth = textWidth(count, figure) + look.px(8.0);
    paintTextIn(painter, place.adjusted(0, 0, -look.px(6.0), 0), count, figure,
                look.tone(Tone::Ink), Qt::AlignRight);
    const PainterState state(painter);
    if (round.state == RoundState::Planned) painter.setOpacity(0.45);
    paintRoundFrames(
        painter,
        place.adjusted(look.px(6.0), look.px(4.0), -figureWidth - look.px(4.0), -look.px(6.0)),
        round, look);
}

}  // namespace

double freezerLaneHeight(const Look& look) {
    return laneDayRoom(look) + look.px(laneBox) + look.px(3.0) + laneWordRoom(look);
}

std::vector<QRectF> freezerLanePlaces(const QRectF& box, const FreezerLaneView& lane,
                                      const Look& look) {
    std::vector<QRectF> places;
    const double least = look.px(laneLeast);
    const auto most = static_cast<std::size_t>(std::max(1.0, std::floor(box.width() / least)));
    const std::size_t count = std::min(lane.rounds.size(), most);
    double days = 0.0;
    for (std::size_t i = 0; i < count; ++i) days += laneDays(lane.rounds[i]);
    // What is left over the least width goes by the days.
    const double over = box.width() - least * static_cast<double>(count);
    double x = box.left();
    const double top = box.top() + laneDayRoom(look);
    for (std::size_t i = 0; i < count; ++i) {
        const double share = days > 0 ? laneDays(lane.rounds[i]) / days : 0.0;
        const double width = std::min(least + over * share, look.px(240.0));
        places.emplace_back(x, top, width, look.px(laneBox));
        x += width;
    }
    return places;
}

void paintFreezerLane(QPainter& painter, const QRectF& box, const FreezerLaneView& lane,
                      const Look& look) {
    const PainterState whole(painter);
    const auto places = freezerLanePlaces(box, lane, look);
    const QFont note = look.font(TextSize::Note);
    const QFont noteBold = look.font(TextSize::Note, true);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const RoundView& round = lane.rounds[i];
        const QRectF& place = places[i];
        const double dayLine = place.top() - look.px(5.0);
        paintText(painter, {place.left(), dayLine},
                  fitted(laneDay(round.in), note, place.width() - look.px(8.0)), note,
                  look.tone(Tone::Muted));
        paintRound(painter, place, round, look);
        const bool in = round.state == RoundState::In;
        paintText(painter, {place.left(), place.bottom() + laneWordRoom(look)},
                  fitted(roundWords(round), in ? noteBold : note, place.width() - look.px(6.0)),
                  in ? noteBold : note, look.tone(in ? Tone::Ink : Tone::Muted));
        if (in && lane.today.isValid() && lane.today >= round.in && lane.today <= round.out) {
            const double gone =
                (static_cast<double>(round.in.daysTo(lane.today)) + lane.todayShare) /
                laneDays(round);
            const double x = place.left() + place.width() * std::clamp(gone, 0.0, 1.0);
            painter.setPen(plainPen(look.tone(Tone::Accent), look.px(2.0)));
            painter.drawLine(QPointF(x, place.top() - look.px(3.0)),
                             QPointF(x, place.bottom() + look.px(3.0)));
        }
    }
    if (places.size() < lane.rounds.size() && !places.empty()) {
        const QString more =
            FreezerLaneTexts::tr("and %1 more").arg(lane.rounds.size() - places.size());
        paintText(painter, {box.right(), places.back().top() - look.px(5.0)}, more, note,
                  look.tone(Tone::Muted), Qt::AlignRight);
    }
}

QString spoken(const FreezerLaneView& lane) {
    QStringList sentences;
    for (const RoundView& round : lane.rounds) {
        QStringList frames;
        for (const RoundFrames& each : round.frames)
            frames << QStringLiteral("%1 %2").arg(each.count).arg(each.what);
        const QString what = frames.join(QStringLiteral(", "));
        switch (round.state) {
            case RoundState::Done:
                sentences << FreezerLaneTexts::tr("%1 to %2: %3, dry.")
                                 .arg(laneDay(round.in), laneDay(round.out), what);
                break;
            case RoundState::In:
                sentences << FreezerLaneTexts::tr("In until %1: %2.").arg(laneDay(round.out), what);
                break;
            case RoundState::Planned:
                sentences
                    << FreezerLaneTexts::tr("Planned for %1: %2.").arg(laneDay(round.in), what);
                break;
        }
    }
    return sentences.isEmpty() ? FreezerLaneTexts::tr("Nothing in the freezer, nothing waits.")
                               : sentences.join(QLatin1Char(' '));
}

}  // namespace combwright
