#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/explain/explain_storeroom.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/wets_home_page.h"
#include "core/places/pages/storeroom/freezer_words.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

const char* foodKey(MothFood food) {
    switch (food) {
        case MothFood::None:
            return "none";
        case MothFood::Brood:
            return "brood";
        case MothFood::BroodKind:
            return "brood_by_kind";
        case MothFood::Pollen:
            return "pollen";
        case MothFood::Web:
            return "web";
    }
    return "none";
}

const char* doubtKey(ColdDoubt doubt) {
    switch (doubt) {
        case ColdDoubt::None:
            return "none";
        case ColdDoubt::NotLongEnough:
            return "not_long_enough";
        case ColdDoubt::TooWarm:
            return "too_warm";
        case ColdDoubt::TimeNotKnown:
            return "time_not_known";
    }
    return "none";
}

const char* adviceKey(ShelfAdvice advice) {
    switch (advice) {
        case ShelfAdvice::Freeze:
            return "freeze";
        case ShelfAdvice::DryFirst:
            return "dry_first";
        case ShelfAdvice::MeltSoon:
            return "melt_soon";
        case ShelfAdvice::KeepCold:
            return "keep_cold";
        case ShelfAdvice::LookInside:
            return "look_inside";
    }
    return "freeze";
}

const char* barKeyOf(WetsBar bar) {
    switch (bar) {
        case WetsBar::None:
            return "all_full";
        case WetsBar::Disease:
            return "disease";
        case WetsBar::BoxHeld:
            return "box_held";
        case WetsBar::HiveHeld:
            return "hive_held";
        case WetsBar::Medicine:
            return "medicine";
        case WetsBar::NoColony:
            return "no_colony";
        case WetsBar::Nucleus:
            return "nucleus";
        case WetsBar::OtherYard:
            return "other_yard";
        case WetsBar::Unknown:
            return "origin_unknown";
    }
    return "all_full";
}

const char* wayKey(LeftOverWay way) {
    switch (way) {
        case LeftOverWay::Give:
            return "give";
        case LeftOverWay::LookFirst:
            return "look_first";
        case LeftOverWay::Melt:
            return "melt";
        case LeftOverWay::Held:
            return "held";
    }
    return "look_first";
}

QJsonArray freezerLoadsArray(const std::vector<FreezerFrames>& loads) {
    QJsonArray array;
    for (const FreezerFrames& each : loads)
        array.append(QJsonObject{
            {QStringLiteral("box"), each.box ? QJsonValue(fromUtf8(each.name)) : QJsonValue()},
            {QStringLiteral("kind"), fromUtf8(each.kindName)},
            {QStringLiteral("frames"), static_cast<qint64>(each.frames)},
            {QStringLiteral("moth_food"), QLatin1String(foodKey(each.food))},
            {QStringLiteral("stale"), orNull(each.stale)},
            {QStringLiteral("stale_why"), orNull(each.staleWhy)}});
    return array;
}

QJsonObject freezerPlanObject(const FreezerPlan& plan) {
    QJsonArray rounds;
    for (const FreezerNext& each : plan.rounds)
        rounds.append(QJsonObject{{QStringLiteral("in"), fromUtf8(isoText(each.in))},
                                  {QStringLiteral("out"), fromUtf8(isoText(each.out))},
                                  {QStringLiteral("frames"), static_cast<qint64>(each.frames())},
                                  {QStringLiteral("loads"), freezerLoadsArray(each.loads)}});
    return {{QStringLiteral("rounds"), rounds}, {QStringLiteral("last_out"), orNull(plan.lastOut)}};
}

QJsonArray freezerRoundsArray(const std::vector<FreezerRoundRow>& rows) {
    QJsonArray array;
    for (const FreezerRoundRow& row : rows)
        array.append(
            QJsonObject{{QStringLiteral("round"), QStringLiteral("#%1").arg(row.round.id.number)},
                        {QStringLiteral("freezer"), orNull(row.freezer)},
                        {QStringLiteral("in"), fromUtf8(isoText(row.round.in))},
                        {QStringLiteral("out"), orNull(row.round.out)},
                        {QStringLiteral("due"), orNull(row.due)},
                        {QStringLiteral("frames"), static_cast<qint64>(row.frames)},
                        {QStringLiteral("temperature_c"), row.proof.temperatureC},
                        {QStringLiteral("temperature_assumed"), row.proof.assumed},
                        {QStringLiteral("hours_inside"), orNull(row.proof.stayedHours)},
                        {QStringLiteral("hours_needed"), orNull(row.proof.neededHours())},
                        {QStringLiteral("enough"), row.proof.enough()},
                        {QStringLiteral("doubt"), QLatin1String(doubtKey(row.proof.doubt))},
                        {QStringLiteral("loads"), freezerLoadsArray(row.loads)}});
    return array;
}

QJsonArray dangersArray(const std::vector<ShelfDanger>& dangers) {
    QJsonArray array;
    for (const ShelfDanger& each : dangers)
        array.append(
            QJsonObject{{QStringLiteral("box"),
                         each.box.box ? QJsonValue(fromUtf8(each.box.name)) : QJsonValue()},
                        {QStringLiteral("stack"), orNull(each.box.stack)},
                        {QStringLiteral("frames"), static_cast<qint64>(each.frames)},
                        {QStringLiteral("moth_food"), QLatin1String(foodKey(each.food))},
                        {QStringLiteral("no_longer_frozen_since"),
                         orNull(each.spoilt ? each.spoilt : each.undone)},
                        {QStringLiteral("advice"), QLatin1String(adviceKey(each.advice))},
                        {QStringLiteral("says"), shelfDangerText(each)}});
    return array;
}

QJsonObject laneObject(const FreezerLane& lane, const std::vector<ShelfDanger>& dangers) {
    QJsonArray rooms;
    for (const FreezerRoom& room : lane.rooms)
        rooms.append(QJsonObject{{QStringLiteral("kind"), fromUtf8(room.name)},
                                 {QStringLiteral("holds"), static_cast<qint64>(room.holds)},
                                 {QStringLiteral("counted"), room.counted}});
    QJsonArray noRoom;
    for (const std::string& kind : lane.noRoomKnown) noRoom.append(fromUtf8(kind));
    return {{QStringLiteral("as_of"), fromUtf8(isoText(lane.on))},
            {QStringLiteral("freezer"), lane.freezer ? orNull(lane.freezer->name) : QJsonValue()},
            {QStringLiteral("freezers"), static_cast<qint64>(lane.freezers.size())},
            {QStringLiteral("round_hours"), lane.hours},
            {QStringLiteral("rooms"), rooms},
            {QStringLiteral("holds_unknown"), noRoom},
            {QStringLiteral("waiting"), freezerLoadsArray(lane.waiting)},
            {QStringLiteral("waiting_frames"), static_cast<qint64>(lane.waitingFrames())},
            {QStringLiteral("dry_first"), freezerLoadsArray(lane.dryFirst)},
            {QStringLiteral("held"), freezerLoadsArray(lane.held)},
            {QStringLiteral("super_combs"), static_cast<qint64>(lane.superCombs)},
            {QStringLiteral("frozen_combs"), static_cast<qint64>(lane.frozenCombs)},
            {QStringLiteral("in"), freezerRoundsArray(lane.in)},
            {QStringLiteral("done"), freezerRoundsArray(lane.done)},
            {QStringLiteral("next"), freezerPlanObject(lane.next)},
            {QStringLiteral("shared"),
             lane.shared ? QJsonValue(freezerPlanObject(*lane.shared)) : QJsonValue()},
            {QStringLiteral("danger"), dangersArray(dangers)}};
}

int runFreezer(Context& context) {
    const Season season = seasonToRead(context);
    const Day today = context.clock.today();
    const FreezerLane lane = freezerLane(season.read(), today);
    const auto dangers = shelfDangers(season.read(), today);
    const bool asked = context.arguments.has("why");
    const auto why = asked ? explainFreezer(lane) : std::vector<Explained>{};
    if (context.json()) {
        QJsonObject object = laneObject(lane, dangers);
        if (asked) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(freezerSlipPage(season.read(), lane));
    for (const ShelfDanger& each : dangers)
        context.streams.out << fromUtf8(each.box.name) << ": " << shelfDangerText(each) << '\n';
    printWhy(context, why);
    return Done;
}

QJsonObject wetsObject(const WetsHome& home) {
    QJsonArray go;
    for (const WetBox& box : home.go)
        go.append(QJsonObject{{QStringLiteral("box"), fromUtf8(box.box.name)},
                              {QStringLiteral("came_off"), orNull(box.cameOff)},
                              {QStringLiteral("hive"), fromUtf8(box.hive)},
                              {QStringLiteral("yard"), fromUtf8(box.yard)},
                              {QStringLiteral("own_hive"), box.ownHive}});
    QJsonArray stay;
    for (const WetBox& box : home.stay)
        stay.append(QJsonObject{{QStringLiteral("box"), fromUtf8(box.box.name)},
                                {QStringLiteral("came_off"), orNull(box.cameOff)},
                                {QStringLiteral("why"), QLatin1String(barKeyOf(box.why))},
                                {QStringLiteral("says"), wetsStayText(box)}});
    QJsonArray out;
    for (const WetsOut& each : home.out)
        out.append(QJsonObject{{QStringLiteral("box"), fromUtf8(each.name)},
                               {QStringLiteral("hive"), fromUtf8(each.hive)},
                               {QStringLiteral("yard"), fromUtf8(each.yard)},
                               {QStringLiteral("since"), fromUtf8(isoText(each.since))},
                               {QStringLiteral("off_from"), fromUtf8(isoText(each.from))},
                               {QStringLiteral("off_to"), fromUtf8(isoText(each.to))},
                               {QStringLiteral("overdue"), home.on > each.to}});
    QJsonArray left;
    for (const LeftOver& each : home.leftOver)
        left.append(QJsonObject{{QStringLiteral("box"), fromUtf8(each.box.name)},
                                {QStringLiteral("frames"), static_cast<qint64>(each.frames)},
                                {QStringLiteral("granulated"), each.granulated},
                                {QStringLiteral("came_off"), orNull(each.cameOff)},
                                {QStringLiteral("clean_look"), orNull(each.cleanLook)},
                                {QStringLiteral("do"), QLatin1String(wayKey(each.way))},
                                {QStringLiteral("says"), leftOverText(each)}});
    return {{QStringLiteral("as_of"), fromUtf8(isoText(home.on))},
            {QStringLiteral("go"), go},
            {QStringLiteral("stay"), stay},
            {QStringLiteral("out"), out},
            {QStringLiteral("left_over"), left},
            {QStringLiteral("per_hive"), static_cast<qint64>(home.perHive)},
            {QStringLiteral("off_from"), fromUtf8(isoText(home.offFrom))},
            {QStringLiteral("off_to"), fromUtf8(isoText(home.offTo))}};
}

int runWets(Context& context) {
    const Season season = seasonToRead(context);
    const WetsHome home = wetsHome(season.read(), context.clock.today());
    if (context.json())
        printJson(context, wetsObject(home));
    else
        context.streams.out << pageText(wetsHomePage(season.read(), home));
    return Done;
}

}  // namespace

std::vector<Command> freezerCommands() {
    return {
        {"freezer",
         "FILE",
         "rounds of the freezer: done, in, next; and which comb is in danger",
         1,
         1,
         {{"why", nullptr, "how each figure came about"}},
         &runFreezer},
        {"wets",
         "FILE",
         "which wet box goes back to which hive, to be cleaned",
         1,
         1,
         {},
         &runWets},
    };
}

}  // namespace combwright::cli
