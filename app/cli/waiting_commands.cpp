#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/honey_room/waiting_page.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/clearers_page.h"
#include "core/places/pull/clearers.h"
#include "core/storage/queries/names.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

const char* boardStateKey(ClearerIn::State state) {
    switch (state) {
        case ClearerIn::State::Clearing:
            return "clearing";
        case ClearerIn::State::Due:
            return "due";
        case ClearerIn::State::Overdue:
            return "overdue";
    }
    return "clearing";
}

QJsonObject clearersObject(const Clearers& boards, Day on) {
    QJsonArray in;
    for (const ClearerIn& each : boards.in)
        in.append(QJsonObject{{QStringLiteral("hive"), fromUtf8(each.hive)},
                              {QStringLiteral("yard"), fromUtf8(each.yard)},
                              {QStringLiteral("since"), fromUtf8(isoText(each.board.on))},
                              {QStringLiteral("days"), static_cast<qint64>(each.daysIn)},
                              {QStringLiteral("out_by"), fromUtf8(isoText(each.outBy))},
                              {QStringLiteral("state"), QLatin1String(boardStateKey(each.state))},
                              {QStringLiteral("boxes_to_take"), each.boxes}});
    QJsonArray need;
    for (const ClearerNeed& each : boards.need)
        need.append(QJsonObject{{QStringLiteral("hive"), fromUtf8(each.mark)},
                                {QStringLiteral("yard"), fromUtf8(each.yard)},
                                {QStringLiteral("boxes_to_take"), each.boxes}});
    QJsonArray rounds;
    for (const ClearerRound& each : boards.rounds) {
        QJsonArray hives;
        for (const std::string& hive : each.hives) hives.append(fromUtf8(hive));
        rounds.append(QJsonObject{{QStringLiteral("in"), fromUtf8(isoText(each.in))},
                                  {QStringLiteral("out"), fromUtf8(isoText(each.out))},
                                  {QStringLiteral("hives"), hives}});
    }
    return {{QStringLiteral("as_of"), fromUtf8(isoText(on))},
            {QStringLiteral("plan_for_day"),
             boards.plan ? QJsonValue(fromUtf8(isoText(boards.plan->forDay))) : QJsonValue()},
            {QStringLiteral("boards"), orNull(boards.owned)},
            {QStringLiteral("free"), orNull(boards.free())},
            {QStringLiteral("out_within_days"), static_cast<qint64>(boards.outByDays)},
            {QStringLiteral("in"), in},
            {QStringLiteral("need"), need},
            {QStringLiteral("rounds"), rounds}};
}

int runClearers(Context& context) {
    const Season season = seasonToRead(context);
    const Day today = context.clock.today();
    const Clearers boards = clearers(season.read(), today);
    const auto why = context.arguments.has("why") ? explainClearers(season.read(), boards, today)
                                                  : std::vector<Explained>();
    if (context.json()) {
        QJsonObject object = clearersObject(boards, today);
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(clearersPage(season.read(), boards, today));
    printWhy(context, why);
    return Done;
}

const char* limitKey(ExtractLimit::Why why) {
    switch (why) {
        case ExtractLimit::Why::NoLimit:
            return "no_limit";
        case ExtractLimit::Why::Beetle:
            return "beetle";
        case ExtractLimit::Why::Damp:
            return "damp_room";
        case ExtractLimit::Why::Setting:
            return "setting_crop";
        case ExtractLimit::Why::Usual:
            return "usual";
    }
    return "usual";
}

QJsonObject waitingObject(const Read& file, const RoomBox& box, Day today) {
    return {{QStringLiteral("box"), fromUtf8(box.mark)},
            {QStringLiteral("peg"), orNull(box.peg)},
            {QStringLiteral("hive"), orNull(box.hive)},
            {QStringLiteral("yard"),
             box.yard ? QJsonValue(fromUtf8(nameOf(file, Yard::table, box.yard->number)))
                      : QJsonValue()},
            {QStringLiteral("in_run"), box.entry.has_value()},
            {QStringLiteral("frames_left"), orNull(box.left())},
            {QStringLiteral("waits_since"), orNull(box.off)},
            {QStringLiteral("extract_by"), orNull(box.extractBy)},
            {QStringLiteral("limit"), QLatin1String(limitKey(box.limit.why))},
            {QStringLiteral("limit_days"), orNull(box.limit.days)},
            {QStringLiteral("overdue"), box.late(today)},
            {QStringLiteral("planned_for"), orNull(box.plannedFor)}};
}

int runWaiting(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto run = runNamed(context, file);
    if (!run) return refuse(context, run.error());
    const RoomBoxes room = *run ? roomBoxes(file, *run, today) : allWaiting(file, today);
    const auto why =
        context.arguments.has("why") ? explainWaiting(room, today) : std::vector<Explained>();
    if (context.json()) {
        QJsonArray boxes;
        for (const RoomBox& box : room.waiting) boxes.append(waitingObject(file, box, today));
        QJsonObject object{
            {QStringLiteral("as_of"), fromUtf8(isoText(today))},
            {QStringLiteral("told_by_days_up_to"), orNull(toldByLaterDays(file, today))},
            {QStringLiteral("waiting"), boxes},
            {QStringLiteral("overdue"), room.late},
            {QStringLiteral("extract_by"), orNull(room.extractBy)},
            {QStringLiteral("frames_left"), static_cast<qint64>(room.framesLeft)}};
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(waitingPage(file, room, today));
    printWhy(context, why);
    return Done;
}

}  // namespace

std::vector<Command> waitingCommands() {
    return {
        {"clearers",
         "FILE",
         "which clearer boards are in and until when, which hives need one",
         1,
         1,
         {{"why", nullptr, "how each figure came about"}},
         &runClearers},
        {"waiting",
         "FILE",
         "boxes waiting for the extractor: since when and until when",
         1,
         1,
         {{"run", "NAME", "only this run; else all that are not closed, and boxes in none"},
          {"why", nullptr, "how each figure came about"}},
         &runWaiting},
    };
}

}  // namespace combwright::cli
