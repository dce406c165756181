#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/why.h"
#include "core/places/explain_honey_room.h"
#include "core/places/pages/harvest_pages.h"
#include "core/places/pages/honey_room_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/pull_list_page.h"
#include "core/storage/queries/names.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

/// The yards named with --yard, else all.
Result<std::vector<Id<Yard>>> chosenYards(const Context& context, const Read& file) {
    std::vector<Id<Yard>> yards;
    if (const auto name = context.arguments.value("yard")) {
        const auto found = findNamed(
            file, Yard::table, NameQuery{.name = name->toStdString(), .on = context.clock.today()});
        if (!found) return found.error();
        yards.push_back(Id<Yard>{*found});
        return yards;
    }
    for (const Yard& yard : openYards(file)) yards.push_back(yard.id);
    return yards;
}

QJsonValue gramsOrNull(const std::optional<Reckoned>& reckoned) {
    return reckoned ? QJsonValue(reckoned->grams) : QJsonValue();
}

QJsonObject boxObject(const PullBoxRow& box) {
    QJsonObject object{{QStringLiteral("box"), fromUtf8(box.box.mark)},
                       {QStringLiteral("verdict"), fromUtf8(word(box.verdict))},
                       {QStringLiteral("honey_g"), gramsOrNull(box.honey)},
                       {QStringLiteral("frames"), static_cast<qint64>(box.frames)}};
    if (box.honey) {
        object.insert(QStringLiteral("honey_how"), fromUtf8(word(box.honey->how)));
        object.insert(QStringLiteral("spread_g"), box.honey->spreadG);
    }
    if (box.why) object.insert(QStringLiteral("why"), fromUtf8(key(*box.why)));
    if (box.forced) object.insert(QStringLiteral("forced"), true);
    return object;
}

QJsonObject sheetObject(const PullSheet& sheet) {
    QJsonArray yards;
    for (const PullYardRow& yard : sheet.yards) {
        QJsonArray hives;
        for (const PullHiveRow& hive : yard.hives) {
            QJsonArray boxes;
            for (const PullBoxRow& box : hive.boxes) boxes.append(boxObject(box));
            hives.append(
                QJsonObject{{QStringLiteral("hive"), fromUtf8(hive.hive.mark.text())},
                            {QStringLiteral("nest_stores_g"), gramsOrNull(hive.nest)},
                            {QStringLiteral("winter_need_g"), hive.needG},
                            {QStringLiteral("remaining_g"),
                             hive.remainingG ? QJsonValue(*hive.remainingG) : QJsonValue()},
                            {QStringLiteral("short_g"),
                             hive.remainingG ? QJsonValue(hive.shortG) : QJsonValue()},
                            {QStringLiteral("look_first"), hive.lookFirst},
                            {QStringLiteral("boxes"), boxes}});
        }
        yards.append(QJsonObject{{QStringLiteral("yard"), fromUtf8(yard.yard.name.text())},
                                 {QStringLiteral("boxes_taken"), yard.taken},
                                 {QStringLiteral("honey_g"), yard.honeyG},
                                 {QStringLiteral("hives"), hives}});
    }
    QJsonObject object{{QStringLiteral("as_of"), fromUtf8(isoText(sheet.on))},
                       {QStringLiteral("boxes_taken"), sheet.taken},
                       {QStringLiteral("frames_taken"), static_cast<qint64>(sheet.framesTaken)},
                       {QStringLiteral("honey_g"), sheet.honey.grams},
                       {QStringLiteral("spread_g"), sheet.honey.spreadG},
                       {QStringLiteral("proven"), sheet.proven},
                       {QStringLiteral("bound_g"), sheet.boundG},
                       {QStringLiteral("jars"), static_cast<qint64>(sheet.jars)},
                       {QStringLiteral("yards"), yards}};
    if (sheet.day) {
        object.insert(QStringLiteral("loads"), static_cast<qint64>(sheet.day->loads));
        object.insert(QStringLiteral("loads_if_mixed"),
                      static_cast<qint64>(sheet.day->loadsIfMixed));
        object.insert(QStringLiteral("buckets"), static_cast<qint64>(sheet.day->buckets));
        object.insert(QStringLiteral("buckets_with_spare"),
                      static_cast<qint64>(sheet.day->bucketsWithSpare));
        object.insert(QStringLiteral("last_load_ends_min"), sheet.day->lastLoadEndsMin);
        object.insert(QStringLiteral("day_min"), sheet.day->dayMin);
    }
    return object;
}

int runPull(Context& context) {
    const Season season = Season::open(context.arguments.positional.front().toStdString(),
                                       context.clock, Database::Mode::ReadOnly);
    const Day today = context.clock.today();
    const auto yards = chosenYards(context, season.read());
    if (!yards) return refuse(context, yards.error());
    const PullSheet sheet =
        reckonPull(pullInput(season.read(), *yards, today, startingLimits(season.read(), today)));
    if (context.json())
        printJson(context, sheetObject(sheet));
    else
        context.streams.out << pageText(pullListPage(season.read(), sheet, today));
    return Done;
}

QJsonValue massOrNull(const std::optional<Mass>& mass) {
    return mass ? QJsonValue(static_cast<qint64>(mass->grams())) : QJsonValue();
}

QJsonValue numberOrNull(const std::optional<double>& number) {
    return number ? QJsonValue(*number) : QJsonValue();
}

QJsonObject balanceObject(const RunBalance& balance) {
    QJsonArray shares;
    QJsonValue unknown;
    for (const RunShare& share : balance.shares) {
        QJsonObject object{
            {QStringLiteral("hive"), share.hive ? QJsonValue(fromUtf8(share.mark)) : QJsonValue()},
            {QStringLiteral("honey_g"), static_cast<qint64>(share.mass.grams())},
            {QStringLiteral("how"), fromUtf8(word(share.how))}};
        if (share.atClosing)
            object.insert(QStringLiteral("at_closing_g"),
                          static_cast<qint64>(share.atClosing->grams()));
        shares.append(object);
    }
    QJsonArray byDifference;
    for (const RunBoxLine& box : balance.boxes)
        if (box.byDifference) byDifference.append(fromUtf8(box.mark));
    return {{QStringLiteral("run"), fromUtf8(balance.run.name.text())},
            {QStringLiteral("on"), fromUtf8(isoText(balance.run.on))},
            {QStringLiteral("yard"),
             balance.yard.empty() ? QJsonValue() : QJsonValue(fromUtf8(balance.yard))},
            {QStringLiteral("closed"), balance.run.closed.has_value()},
            {QStringLiteral("shares"), shares},
            {QStringLiteral("by_difference"), byDifference},
            {QStringLiteral("buckets_g"), static_cast<qint64>(balance.buckets.grams())},
            {QStringLiteral("cappings_g"), massOrNull(balance.cappings)},
            {QStringLiteral("out_of_boxes_g"), numberOrNull(balance.outOfBoxesG)},
            {QStringLiteral("unaccounted_g"), numberOrNull(balance.unaccountedG)},
            {QStringLiteral("got_per_frame_g"), numberOrNull(balance.gotPerFrameG)},
            {QStringLiteral("frames"), static_cast<qint64>(balance.frames)},
            {QStringLiteral("by_eye"), balance.byEye},
            {QStringLiteral("revised"), balance.revised}};
}

QJsonObject seasonObject(const SeasonYield& season) {
    QJsonArray yards;
    for (const YardYield& yard : season.yards) {
        QJsonArray hives;
        for (const HiveYield& hive : yard.hives)
            hives.append(
                QJsonObject{{QStringLiteral("hive"), fromUtf8(hive.mark)},
                            {QStringLiteral("honey_g"), massOrNull(hive.mass)},
                            {QStringLiteral("how"),
                             hive.mass ? QJsonValue(fromUtf8(word(hive.how))) : QJsonValue()},
                            {QStringLiteral("before_g"), massOrNull(hive.before)},
                            {QStringLiteral("revised"), hive.revised}});
        yards.append(
            QJsonObject{{QStringLiteral("yard"), fromUtf8(yard.yard.name.text())},
                        {QStringLiteral("honey_g"), static_cast<qint64>(yard.total.grams())},
                        {QStringLiteral("unknown_g"), massOrNull(yard.unknown)},
                        {QStringLiteral("before_g"), massOrNull(yard.before)},
                        {QStringLiteral("producing"), yard.producing},
                        {QStringLiteral("standing_1_may"), yard.standing},
                        {QStringLiteral("hives"), hives}});
    }
    QJsonArray runs;
    bool revised = false;
    for (const RunBalance& run : season.runs) {
        runs.append(balanceObject(run));
        revised = revised || run.revised;
    }
    return {{QStringLiteral("season"), season.year},
            {QStringLiteral("honey_g"), static_cast<qint64>(season.total.grams())},
            {QStringLiteral("how"), fromUtf8(word(season.how))},
            {QStringLiteral("unknown_g"), massOrNull(season.unknown)},
            {QStringLiteral("before_g"), massOrNull(season.before)},
            {QStringLiteral("revised"), revised},
            {QStringLiteral("yards"), yards},
            {QStringLiteral("runs"), runs}};
}

int runYields(Context& context) {
    const Season season = Season::open(context.arguments.positional.front().toStdString(),
                                       context.clock, Database::Mode::ReadOnly);
    const Day today = context.clock.today();
    if (const auto name = context.arguments.value("run")) {
        const auto found = findNamed(season.read(), Extraction::table,
                                     NameQuery{.name = name->toStdString(), .on = today});
        if (!found) return refuse(context, found.error());
        const auto balance = runBalance(season.read(), Id<Extraction>{*found});
        if (!balance) return refuse(context, balance.error());
        std::vector<Explained> why;
        if (context.arguments.has("why")) {
            why = explainRun(season.read(), *balance);
            for (Explained& each : explainBuckets(season.read(), balance->run.id, today))
                why.push_back(std::move(each));
        }
        if (context.json()) {
            QJsonObject object = balanceObject(*balance);
            if (!why.empty()) object.insert(QStringLiteral("why"), whyArray(why));
            printJson(context, object);
            return Done;
        }
        context.streams.out << pageText(runBalancePage(season.read(), *balance, today));
        printWhy(context, why);
        return Done;
    }
    int year = yearOf(today);
    if (const auto text = context.arguments.value("season")) {
        bool isNumber = false;
        year = text->toInt(&isNumber);
        if (!isNumber || year < 1900 || year > 2200)
            return misused(context, QStringLiteral("--season needs a year"));
    }
    const SeasonYield yields = seasonYield(season.read(), year);
    if (context.json())
        printJson(context, seasonObject(yields));
    else
        context.streams.out << pageText(harvestSummaryPage(season.read(), yields, today));
    return Done;
}

int runLoads(Context& context) {
    const Season season = Season::open(context.arguments.positional.front().toStdString(),
                                       context.clock, Database::Mode::ReadOnly);
    const Day today = context.clock.today();
    std::vector<Id<Extraction>> runs;
    if (const auto name = context.arguments.value("run")) {
        const auto found = findNamed(season.read(), Extraction::table,
                                     NameQuery{.name = name->toStdString(), .on = today});
        if (!found) return refuse(context, found.error());
        runs.push_back(Id<Extraction>{*found});
    } else {
        for (const Extraction& run : openRuns(season.read())) runs.push_back(run.id);
    }
    const auto sheet =
        loadSheet(season.read(), runs, today,
                  {context.arguments.has("mix-lots"), context.arguments.has("mix-kinds")});
    if (!sheet) return refuse(context, sheet.error());
    std::vector<Explained> why;
    if (context.arguments.has("why"))
        for (const SheetLoad& load : sheet->loads)
            for (Explained& each : explainLoad(season.read(), *sheet, load, today))
                if (why.empty() || each.what != why.back().what) why.push_back(std::move(each));
    if (!context.json()) {
        context.streams.out << pageText(loadsPage(season.read(), *sheet, today));
        printWhy(context, why);
        return Done;
    }
    QJsonArray loads;
    for (const SheetLoad& load : sheet->loads) {
        QJsonArray places;
        for (const auto& place : load.places)
            places.append(place ? QJsonValue(fromUtf8(place->box)) : QJsonValue());
        loads.append(QJsonObject{{QStringLiteral("load"), static_cast<qint64>(load.number)},
                                 {QStringLiteral("lot"), fromUtf8(load.lot)},
                                 {QStringLiteral("frames"), static_cast<qint64>(load.frames)},
                                 {QStringLiteral("slots"), places},
                                 {QStringLiteral("start_offset_g"), load.offset.startG},
                                 {QStringLiteral("end_offset_g"), load.offset.endG},
                                 {QStringLiteral("doubt_g"), load.doubtG},
                                 {QStringLiteral("end_doubt_g"), load.endDoubtG}});
    }
    QJsonObject object{{QStringLiteral("loads"), loads},
                       {QStringLiteral("loads_if_mixed"), static_cast<qint64>(sheet->loadsIfMixed)},
                       {QStringLiteral("loads_done"), static_cast<qint64>(sheet->loadsDone)},
                       {QStringLiteral("frames_left"), static_cast<qint64>(sheet->framesLeft)},
                       {QStringLiteral("allowed_offset_g"), sheet->allowedG},
                       {QStringLiteral("ran_smooth_g"), numberOrNull(sheet->ranSmoothG)}};
    if (!why.empty()) object.insert(QStringLiteral("why"), whyArray(why));
    printJson(context, object);
    return Done;
}

}  // namespace

std::vector<Command> placeCommands() {
    return {
        {"pull",
         "FILE",
         "which boxes to bring in, which to leave, and why",
         1,
         1,
         {{"yard", "NAME", "only this yard"}},
         &runPull},
        {"loads",
         "FILE",
         "what goes into the extractor, load by load",
         1,
         1,
         {{"run", "NAME", "only this run; else those not closed"},
          {"mix-lots", nullptr, "lots may share a load"},
          {"mix-kinds", nullptr, "sizes of frame that fit the same slots may share a load"},
          {"why", nullptr, "how each figure came about"}},
         &runLoads},
        {"yields",
         "FILE",
         "which hive gave what",
         1,
         1,
         {{"run", "NAME", "the balance of one run"},
          {"season", "YEAR", "another year than today's"},
          {"why", nullptr, "how each figure came about"}},
         &runYields},
    };
}

}  // namespace combwright::cli
