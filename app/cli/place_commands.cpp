#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/room_json.h"
#include "app/cli/why.h"
#include "core/places/explain_honey_room.h"
#include "core/places/explain_pull.h"
#include "core/places/explain_season.h"
#include "core/places/pages/harvest_summary_page.h"
#include "core/places/pages/honey_room_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/pull_list_page.h"
#include "core/places/pages/pull_words.h"
#include "core/places/pages/room_day_words.h"
#include "core/places/room_boxes.h"
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

QJsonArray marksArray(const std::vector<std::string>& marks) {
    QJsonArray array;
    for (const std::string& mark : marks) array.append(fromUtf8(mark));
    return array;
}

QJsonObject boxObject(const PullBoxRow& box) {
    QJsonObject object{{QStringLiteral("box"), fromUtf8(box.box.mark)},
                       {QStringLiteral("verdict"), fromUtf8(word(box.verdict))},
                       {QStringLiteral("honey_g"), gramsOrNull(box.honey)},
                       {QStringLiteral("gross_g"), gramsOrNull(box.gross)},
                       {QStringLiteral("frames"), static_cast<qint64>(box.frames)}};
    if (box.honey) {
        object.insert(QStringLiteral("honey_how"), fromUtf8(word(box.honey->how)));
        object.insert(QStringLiteral("spread_g"), box.honey->spreadG);
    }
    if (box.gross) object.insert(QStringLiteral("gross_how"), fromUtf8(word(box.gross->how)));
    // As lines for `play` count it: the lowest box of the hive is 1.
    if (box.box.level)
        object.insert(QStringLiteral("place"), static_cast<qint64>(box.box.level->value() + 1));
    object.insert(QStringLiteral("from_top"), static_cast<qint64>(box.fromTop));
    object.insert(QStringLiteral("peg"),
                  box.peg ? QJsonValue(static_cast<qint64>(*box.peg)) : QJsonValue());
    if (box.why) object.insert(QStringLiteral("why"), fromUtf8(key(*box.why)));
    if (box.hold) object.insert(QStringLiteral("held"), fromUtf8(word(box.hold->why)));
    if (box.refused()) object.insert(QStringLiteral("refuse"), true);
    if (box.forced) object.insert(QStringLiteral("forced"), true);
    if (!box.reason.empty()) object.insert(QStringLiteral("reason"), fromUtf8(box.reason));
    return object;
}

QJsonObject hiveObject(const PullHiveRow& hive) {
    QJsonArray boxes;
    for (const PullBoxRow& box : hive.boxes) boxes.append(boxObject(box));
    QJsonArray brought;
    for (const BroughtBox& box : hive.brought)
        brought.append(
            QJsonObject{{QStringLiteral("peg"), static_cast<qint64>(box.peg.number.value())},
                        {QStringLiteral("box"), box.box && !box.box->mark.empty()
                                                    ? QJsonValue(fromUtf8(box.box->mark))
                                                    : QJsonValue()},
                        {QStringLiteral("on"), fromUtf8(isoText(box.peg.on))}});
    return {{QStringLiteral("hive"), fromUtf8(hive.hive.mark.text())},
            {QStringLiteral("nest_stores_g"), gramsOrNull(hive.nest)},
            {QStringLiteral("winter_need_g"), hive.needG},
            {QStringLiteral("remaining_g"),
             hive.remainingG ? QJsonValue(*hive.remainingG) : QJsonValue()},
            {QStringLiteral("short_g"), hive.remainingG ? QJsonValue(hive.shortG) : QJsonValue()},
            {QStringLiteral("look_first"), hive.lookFirst},
            {QStringLiteral("boxes"), boxes},
            {QStringLiteral("brought"), brought}};
}

QJsonObject sheetObject(const PullSheet& sheet) {
    QJsonArray yards;
    for (const PullYardRow& yard : sheet.yards) {
        QJsonArray hives;
        for (const PullHiveRow& hive : yard.hives) hives.append(hiveObject(hive));
        yards.append(QJsonObject{{QStringLiteral("yard"), fromUtf8(yard.yard.name.text())},
                                 {QStringLiteral("boxes_taken"), yard.taken},
                                 {QStringLiteral("honey_g"), yard.honeyG},
                                 {QStringLiteral("loads"), static_cast<qint64>(yard.loads)},
                                 {QStringLiteral("buckets"), static_cast<qint64>(yard.buckets)},
                                 {QStringLiteral("jars"), static_cast<qint64>(yard.jars)},
                                 {QStringLiteral("hives"), hives}});
    }
    QJsonArray rounds;
    for (const ClearerRound& each : sheet.rounds)
        rounds.append(QJsonObject{{QStringLiteral("in"), fromUtf8(isoText(each.in))},
                                  {QStringLiteral("out"), fromUtf8(isoText(each.out))},
                                  {QStringLiteral("hives"), marksArray(each.hives)}});
    QJsonObject object{
        {QStringLiteral("as_of"), fromUtf8(isoText(sheet.on))},
        {QStringLiteral("for_day"), fromUtf8(isoText(sheet.asked.forDay))},
        {QStringLiteral("boxes_taken"), sheet.taken},
        {QStringLiteral("frames_taken"), static_cast<qint64>(sheet.framesTaken)},
        {QStringLiteral("honey_g"), sheet.honey.grams},
        {QStringLiteral("spread_g"), sheet.honey.spreadG},
        {QStringLiteral("gross_g"), sheet.gross.grams},
        {QStringLiteral("gross_unknown"), sheet.grossUnknown},
        {QStringLiteral("over_lift"), sheet.overLift},
        {QStringLiteral("proven"), sheet.proven},
        {QStringLiteral("bound_g"), sheet.boundG},
        {QStringLiteral("jars"), static_cast<qint64>(sheet.jars)},
        {QStringLiteral("boards_in"),
         sheet.boardsIn ? QJsonValue(fromUtf8(isoText(*sheet.boardsIn))) : QJsonValue()},
        {QStringLiteral("boards_for"), marksArray(sheet.boardsFor)},
        {QStringLiteral("brush"), marksArray(sheet.brush)},
        {QStringLiteral("boards"),
         sheet.boardsOwned ? QJsonValue(static_cast<qint64>(*sheet.boardsOwned)) : QJsonValue()},
        {QStringLiteral("board_rounds"), rounds},
        {QStringLiteral("brought"), sheet.brought},
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
    const Read& file = season.read();
    const Day today = context.clock.today();
    // As the place opens: the plan kept for a day still to come, else all yards.
    PullAsked asked = startingQuestion(file, today);
    if (context.arguments.value("yard")) {
        const auto yards = chosenYards(context, file);
        if (!yards) return refuse(context, yards.error());
        asked.yards = *yards;
    }
    const auto kept = keptPull(file, today);
    const PullInput input = pullInput(file, today, asked);
    const PullSheet sheet = reckonPull(input);
    const auto why =
        context.arguments.has("why") ? explainPull(file, input, sheet) : std::vector<Explained>();
    if (context.json()) {
        QJsonObject object = sheetObject(sheet);
        if (kept)
            object.insert(QStringLiteral("kept"),
                          QJsonObject{{QStringLiteral("on"), fromUtf8(isoText(kept->plan.on))},
                                      {QStringLiteral("honey_g"), kept->honeyG},
                                      {QStringLiteral("boxes_taken"), kept->taken},
                                      {QStringLiteral("unchanged"), asKept(sheet, *kept)}});
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(pullListPage(file, sheet));
    if (kept) context.streams.out << keptText(sheet, *kept) << '\n';
    printWhy(context, why);
    return Done;
}

QJsonValue massOrNull(const std::optional<Mass>& mass) {
    return mass ? QJsonValue(static_cast<qint64>(mass->grams())) : QJsonValue();
}

QJsonValue numberOrNull(const std::optional<double>& number) {
    return number ? QJsonValue(*number) : QJsonValue();
}

QJsonArray revisionArray(const std::vector<RunRevision>& revisions) {
    QJsonArray list;
    for (const RunRevision& each : revisions)
        list.append(
            QJsonObject{{QStringLiteral("action"), fromUtf8(each.action)},
                        {QStringLiteral("on"),
                         each.on ? QJsonValue(fromUtf8(isoText(*each.on))) : QJsonValue()},
                        {QStringLiteral("why"),
                         each.why.empty() ? QJsonValue() : QJsonValue(fromUtf8(each.why))}});
    return list;
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
            {QStringLiteral("revised"), balance.revised},
            {QStringLiteral("revisions"), revisionArray(balance.revisions)}};
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
                            {QStringLiteral("revised"), hive.revised},
                            {QStringLiteral("from_paper"), hive.noted},
                            {QStringLiteral("before_from_paper"), hive.beforeNoted}});
        yards.append(
            QJsonObject{{QStringLiteral("yard"), fromUtf8(yard.yard.name.text())},
                        {QStringLiteral("honey_g"), static_cast<qint64>(yard.total.grams())},
                        {QStringLiteral("unknown_g"), massOrNull(yard.unknown)},
                        {QStringLiteral("before_g"), massOrNull(yard.before)},
                        {QStringLiteral("producing"), yard.producing},
                        {QStringLiteral("standing_1_may"), yard.standing},
                        {QStringLiteral("from_paper"), yard.noted},
                        {QStringLiteral("hives"), hives}});
    }
    QJsonArray unclosed;
    for (const std::string& run : season.unclosed) unclosed.append(fromUtf8(run));
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
            {QStringLiteral("producing"), season.producing},
            {QStringLiteral("standing_1_may"), season.standing},
            {QStringLiteral("from_paper_g"), massOrNull(season.noted)},
            {QStringLiteral("before_season"), season.beforeYear},
            {QStringLiteral("before_from_paper_g"), massOrNull(season.beforeNoted)},
            {QStringLiteral("yards"), yards},
            {QStringLiteral("runs"), runs},
            {QStringLiteral("not_shared_out"), unclosed}};
}

/// Where a new value comes from, in the unit of the constant.
QJsonObject learnedObject(const GotLine& line) {
    const Learned& learned = *line.learned;
    const char* by = learned.by == LearnedBy::WithPublished ? "weighted with published"
                     : learned.by == LearnedBy::OwnAlone    ? "own runs alone"
                                                            : "frames as they came";
    return {{QStringLiteral("by"), QLatin1String(by)},
            {QStringLiteral("rule"), gotRule(line)},
            {QStringLiteral("value"), learned.value},
            {QStringLiteral("doubt"), numberOrNull(learned.doubt)},
            {QStringLiteral("published"), numberOrNull(learned.published)},
            {QStringLiteral("published_doubt"), numberOrNull(learned.publishedDoubt)},
            {QStringLiteral("published_source"), fromUtf8(learned.publishedSource)},
            {QStringLiteral("seen"), static_cast<double>(learned.seen.size())},
            {QStringLiteral("seen_mean"), learned.seenMean},
            {QStringLiteral("doubt_of_one"), numberOrNull(learned.doubtOfOne)}};
}

QJsonArray reckonedArray(const ReckonedAndGot& reckoned) {
    QJsonArray lines;
    for (const GotLine& line : reckoned.lines) {
        QJsonObject object{
            {QStringLiteral("constant"), fromUtf8(line.constant)},
            {QStringLiteral("rate"), line.rate},
            {QStringLiteral("own"), line.own},
            {QStringLiteral("reckoned"), line.reckoned},
            {QStringLiteral("filled_share"), numberOrNull(line.filledShare)},
            {QStringLiteral("got"), line.got},
            {QStringLiteral("runs"), line.runs},
            {QStringLiteral("lowest"), line.spread ? QJsonValue(line.spread->low) : QJsonValue()},
            {QStringLiteral("highest"), line.spread ? QJsonValue(line.spread->high) : QJsonValue()},
            {QStringLiteral("offered"), line.learned ? QJsonValue(line.offered) : QJsonValue()},
            {QStringLiteral("offered_from"), fromUtf8(isoText(reckoned.from))},
            {QStringLiteral("taken"), line.taken.has_value()}};
        object.insert(QStringLiteral("what"), gotName(line));
        object.insert(QStringLiteral("rate_source"), fromUtf8(line.rateSource));
        object.insert(QStringLiteral("counted"), static_cast<double>(line.counted));
        object.insert(QStringLiteral("yard"),
                      line.yard ? QJsonValue(fromUtf8(line.yardName)) : QJsonValue());
        object.insert(QStringLiteral("box_spread"), numberOrNull(line.boxSpread));
        object.insert(QStringLiteral("learned"),
                      line.learned ? QJsonValue(learnedObject(line)) : QJsonValue());
        lines.append(object);
    }
    return lines;
}

/// A year behind an option, or `otherwise`; nothing where it is no year.
std::optional<int> yearOption(const Context& context, const char* option, int otherwise) {
    const auto text = context.arguments.value(option);
    if (!text) return otherwise;
    bool isNumber = false;
    const int year = text->toInt(&isNumber);
    return isNumber && year >= 1900 && year <= 2200 ? std::optional(year) : std::nullopt;
}

int runYields(Context& context) {
    const Season season = Season::open(context.arguments.positional.front().toStdString(),
                                       context.clock, Database::Mode::ReadOnly);
    const Day today = context.clock.today();
    if (const auto name = context.arguments.value("run")) {
        for (const char* other : {"season", "beside"})
            if (context.arguments.has(other))
                return misused(context,
                               QStringLiteral("--run is the balance of one run, --%1 is about a "
                                              "whole year; take one of them")
                                   .arg(QLatin1String(other)));
        const auto found = findNamed(season.read(), Extraction::table,
                                     NameQuery{.name = name->toStdString(), .on = today});
        if (!found) return refuse(context, found.error());
        const auto balance = runBalance(season.read(), Id<Extraction>{*found});
        if (!balance) return refuse(context, balance.error());
        const ReckonedAndGot taught = reckonedAndGotOfRun(season.read(), *balance, today);
        std::vector<Explained> why;
        if (context.arguments.has("why")) {
            why = explainRun(season.read(), *balance);
            for (const GotLine& line : taught.lines)
                for (Explained& each : explainGot(line, taught)) why.push_back(std::move(each));
            for (Explained& each : explainBuckets(season.read(), balance->run.id, today))
                why.push_back(std::move(each));
        }
        if (context.json()) {
            QJsonObject object = balanceObject(*balance);
            object.insert(QStringLiteral("reckoned_and_got"), reckonedArray(taught));
            if (!why.empty()) object.insert(QStringLiteral("why"), whyArray(why));
            printJson(context, object);
            return Done;
        }
        context.streams.out << pageText(runBalancePage(season.read(), *balance, today));
        if (!taught.lines.empty())
            context.streams.out << '\n' << pageText(reckonedPage(season.read(), taught, today));
        printWhy(context, why);
        return Done;
    }
    // In winter the year on the calendar has no honey yet: then it is the last harvest one asks
    // about.
    const int harvest = newestHarvest(season.read(), today);
    const auto year = yearOption(context, "season", harvest);
    if (!year) return misused(context, QStringLiteral("--season needs a year"));
    const bool fellBack = !context.arguments.has("season") && harvest != yearOf(today);
    const auto beside = yearOption(context, "beside", *year - 1);
    if (!beside) return misused(context, QStringLiteral("--beside needs a year"));
    const SeasonYield yields = seasonYield(season.read(), *year, *beside);
    const ReckonedAndGot reckoned = reckonedAndGot(season.read(), yields, today);
    const auto why = context.arguments.has("why") ? explainSeason(season.read(), yields, reckoned)
                                                  : std::vector<Explained>{};
    if (context.json()) {
        QJsonObject answer = seasonObject(yields);
        answer.insert(QStringLiteral("reckoned_and_got"), reckonedArray(reckoned));
        answer.insert(QStringLiteral("instead_of"),
                      fellBack ? QJsonValue(yearOf(today)) : QJsonValue());
        if (context.arguments.has("why")) answer.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, answer);
        return Done;
    }
    if (fellBack)
        context.streams.out << QCoreApplication::translate(
                                   "season", "No honey in %1 yet; this is %2, the last harvest.")
                                   .arg(yearOf(today))
                                   .arg(*year)
                            << "\n\n";
    context.streams.out << pageText(
        harvestSummaryPage(season.read(), yields, today, {seasonYield(season.read(), *beside)}));
    if (!reckoned.lines.empty())
        context.streams.out << '\n' << pageText(reckonedPage(season.read(), reckoned, today));
    printWhy(context, why);
    return Done;
}

/// "hhmml", blanks between them or not, and e for an empty drawn frame.
Result<std::vector<FeltFrame>> feltFrames(const std::string& letters) {
    std::vector<FeltFrame> frames;
    for (const char letter : letters) {
        if (letter == ' ' || letter == ',') continue;
        FeltFrame frame;
        if (letter == 'e' || letter == 'E')
            frame.emptied = true;
        else if (letter == 'h' || letter == 'H')
            frame.heft = FrameHeft::Heavy;
        else if (letter == 'l' || letter == 'L')
            frame.heft = FrameHeft::Light;
        else if (letter != 'm' && letter != 'M')
            return Refusal{Code::NotAChoice,
                           "felt",
                           {{"value", std::string(1, letter)}, {"choices", "h, m, l, e"}}};
        frames.push_back(frame);
    }
    return frames;
}

QString loadLine(const SheetLoad& load) {
    return QString::number(load.number) + QStringLiteral(": ") + loadSlotsText(load) +
           QStringLiteral("; ") + loadDoubtText(load);
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
    Working dayWorking;
    const auto day = roomDay(season.read(), today, {}, &dayWorking);
    if (!day) return refuse(context, day.error());
    std::optional<FeltLoad> felt;
    if (const auto letters = context.arguments.value("felt")) {
        const auto typed = feltFrames(letters->toStdString());
        if (!typed) return refuse(context, typed.error());
        auto load =
            feltLoad(season.read(), runs, *typed, today, {context.arguments.has("mix-lots"), true});
        if (!load) return refuse(context, load.error());
        felt = *std::move(load);
    }
    std::vector<std::pair<std::string, GateMinder>> gates;
    // Of one run the day is told where that run is in it.
    bool inDay = !context.arguments.has("run");
    for (const Id<Extraction> id : runs) {
        const auto run = season.read().find(id);
        if (!run) continue;
        inDay = inDay || !run->closed ||
                season.read().first<SpinLoad>({is("extraction", id), is("on_day", today)});
        if (!run->closed)
            gates.emplace_back(run->name.text(), gateMinder(season.read(), id, *sheet, today));
    }
    std::vector<Explained> why;
    if (context.arguments.has("why")) {
        for (const SheetLoad& load : sheet->loads)
            for (Explained& each : explainLoad(season.read(), *sheet, load, today))
                if (why.empty() || each.what != why.back().what) why.push_back(std::move(each));
        if (day->plan.loads > 0) why.push_back(explainRoomDay(*day, std::move(dayWorking)));
    }
    if (!context.json()) {
        context.streams.out << pageText(loadsPage(season.read(), *sheet, today));
        for (const SheetLoad& load : sheet->spun)
            context.streams.out << load.number << QStringLiteral(": ") << loadSlotsText(load)
                                << '\n';
        for (const SheetLoad& load : sheet->loads) context.streams.out << loadLine(load) << '\n';
        if (felt) context.streams.out << loadLine(felt->load) << '\n';
        for (const auto& [run, minder] : gates)
            for (const QString& line : gateLines(minder))
                context.streams.out << fromUtf8(run) << QStringLiteral(": ") << line << '\n';
        if (inDay)
            for (const QString& line : roomDayLines(*day)) context.streams.out << line << '\n';
        printWhy(context, why);
        return Done;
    }
    QJsonArray loads;
    for (const SheetLoad& load : sheet->loads) loads.append(loadObject(load));
    QJsonArray spun;
    for (const SheetLoad& load : sheet->spun) spun.append(loadObject(load));
    QJsonArray gatesOf;
    for (const auto& [run, minder] : gates) gatesOf.append(gateObject(run, minder));
    const auto later = toldByLaterDays(season.read(), today);
    QJsonObject object{{QStringLiteral("loads"), loads},
                       {QStringLiteral("told_by_days_up_to"),
                        later ? QJsonValue(fromUtf8(isoText(*later))) : QJsonValue()},
                       {QStringLiteral("loads_if_mixed"), static_cast<qint64>(sheet->loadsIfMixed)},
                       {QStringLiteral("loads_done"), static_cast<qint64>(sheet->loadsDone)},
                       {QStringLiteral("frames_left"), static_cast<qint64>(sheet->framesLeft)},
                       {QStringLiteral("allowed_offset_g"), sheet->allowedG},
                       {QStringLiteral("ran_smooth_g"), numberOrNull(sheet->ranSmoothG)},
                       {QStringLiteral("walked_g"), numberOrNull(sheet->walkedG)},
                       {QStringLiteral("spun"), spun},
                       {QStringLiteral("machine"), machineObject(*sheet)},
                       {QStringLiteral("gates"), gatesOf},
                       {QStringLiteral("day"), roomDayObject(*day)}};
    if (felt) {
        QJsonObject hung = loadObject(felt->load);
        hung.insert(QStringLiteral("proven"), felt->load.proven);
        hung.insert(QStringLiteral("boxes_weighed"), static_cast<qint64>(felt->boxes));
        hung.insert(QStringLiteral("heavy_g"), felt->endG + felt->classes.heavy.meanG);
        hung.insert(QStringLiteral("middling_g"), felt->endG + felt->classes.middling.meanG);
        hung.insert(QStringLiteral("light_g"), felt->endG + felt->classes.light.meanG);
        object.insert(QStringLiteral("felt"), hung);
    }
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
         {{"yard", "NAME", "only this yard"}, {"why", nullptr, "how each figure came about"}},
         &runPull},
        {"loads",
         "FILE",
         "what goes into the extractor, load by load",
         1,
         1,
         {{"run", "NAME", "only this run; else those not closed"},
          {"mix-lots", nullptr, "lots may share a load"},
          {"mix-kinds", nullptr, "sizes of frame that fit the same slots may share a load"},
          {"felt", "LETTERS", "the next load as its frames felt: h, m, l, e for an empty one"},
          {"why", nullptr, "how each figure came about"}},
         &runLoads},
        {"yields",
         "FILE",
         "which hive gave what",
         1,
         1,
         {{"run", "NAME", "the balance of one run"},
          {"season", "YEAR", "another year than the last with honey"},
          {"beside", "YEAR", "another year beside it than the one before"},
          {"why", nullptr, "how each figure came about"}},
         &runYields},
    };
}

}  // namespace combwright::cli
