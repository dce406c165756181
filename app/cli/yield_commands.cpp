#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/explain/explain_honey_room.h"
#include "core/places/explain/explain_season.h"
#include "core/places/pages/honey_room/honey_room_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/harvest_summary_page.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonArray revisionArray(const std::vector<RunRevision>& revisions) {
    QJsonArray list;
    for (const RunRevision& each : revisions)
        list.append(QJsonObject{{QStringLiteral("action"), fromUtf8(each.action)},
                                {QStringLiteral("on"), orNull(each.on)},
                                {QStringLiteral("why"), orNull(each.why)}});
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
            {QStringLiteral("yard"), orNull(balance.yard)},
            {QStringLiteral("closed"), balance.run.closed.has_value()},
            {QStringLiteral("shares"), shares},
            {QStringLiteral("by_difference"), byDifference},
            {QStringLiteral("buckets_g"), static_cast<qint64>(balance.buckets.grams())},
            {QStringLiteral("cappings_g"), orNull(balance.cappings)},
            {QStringLiteral("out_of_boxes_g"), orNull(balance.outOfBoxesG)},
            {QStringLiteral("unaccounted_g"), orNull(balance.unaccountedG)},
            {QStringLiteral("got_per_frame_g"), orNull(balance.gotPerFrameG)},
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
                            {QStringLiteral("honey_g"), orNull(hive.mass)},
                            {QStringLiteral("how"),
                             hive.mass ? QJsonValue(fromUtf8(word(hive.how))) : QJsonValue()},
                            {QStringLiteral("before_g"), orNull(hive.before)},
                            {QStringLiteral("revised"), hive.revised},
                            {QStringLiteral("from_paper"), hive.noted},
                            {QStringLiteral("before_from_paper"), hive.beforeNoted}});
        yards.append(
            QJsonObject{{QStringLiteral("yard"), fromUtf8(yard.yard.name.text())},
                        {QStringLiteral("honey_g"), static_cast<qint64>(yard.total.grams())},
                        {QStringLiteral("unknown_g"), orNull(yard.unknown)},
                        {QStringLiteral("before_g"), orNull(yard.before)},
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
            {QStringLiteral("unknown_g"), orNull(season.unknown)},
            {QStringLiteral("before_g"), orNull(season.before)},
            {QStringLiteral("revised"), revised},
            {QStringLiteral("producing"), season.producing},
            {QStringLiteral("standing_1_may"), season.standing},
            {QStringLiteral("from_paper_g"), orNull(season.noted)},
            {QStringLiteral("before_season"), season.beforeYear},
            {QStringLiteral("before_from_paper_g"), orNull(season.beforeNoted)},
            {QStringLiteral("yards"), yards},
            {QStringLiteral("runs"), runs},
            {QStringLiteral("not_shared_out"), unclosed}};
}

QJsonObject yieldsByObject(const YieldsBy& yields) {
    QJsonArray lines;
    for (const YieldOf& line : yields.lines) {
        QJsonArray stands;
        for (const std::string& stand : line.stands) stands.append(fromUtf8(stand));
        lines.append(QJsonObject{{QStringLiteral("name"), yieldOfName(line)},
                                 {QStringLiteral("yard"), orNull(line.yardName)},
                                 {QStringLiteral("stands"), stands},
                                 {QStringLiteral("honey_g"), orNull(line.mass)},
                                 {QStringLiteral("how"),
                                  line.mass ? QJsonValue(fromUtf8(word(line.how))) : QJsonValue()},
                                 {QStringLiteral("from_paper"), line.noted},
                                 {QStringLiteral("revised"), line.revised},
                                 {QStringLiteral("before_g"), orNull(line.before)},
                                 {QStringLiteral("before_from_paper"), line.beforeNoted},
                                 {QStringLiteral("producing"),
                                  line.producingKnown ? QJsonValue(line.producing) : QJsonValue()},
                                 {QStringLiteral("standing_1_may"), line.standing}});
    }
    return {{QStringLiteral("by"), fromUtf8(key(yields.by))},
            {QStringLiteral("lines"), lines},
            {QStringLiteral("nobody_written_down_g"), orNull(yields.nobody)},
            {QStringLiteral("hive_not_known_g"), orNull(yields.noHive)},
            {QStringLiteral("producing"),
             yields.allKnown ? QJsonValue(yields.producing) : QJsonValue()},
            {QStringLiteral("standing_1_may"), yields.standing}};
}

QJsonArray goneArray(const std::vector<ColonyGone>& gone) {
    QJsonArray list;
    for (const ColonyGone& each : gone)
        list.append(QJsonObject{{QStringLiteral("hive"), fromUtf8(each.hive.mark.text())},
                                {QStringLiteral("yard"), orNull(each.yard)},
                                {QStringLiteral("on"), orNull(each.colony.ended)},
                                {QStringLiteral("ending"), orNull(each.colony.ending)},
                                {QStringLiteral("united_with"), orNull(each.into)},
                                {QStringLiteral("cause"), orNull(each.cause)}});
    return list;
}

QJsonObject coloniesObject(const ColoniesOfYear& colonies) {
    QJsonArray came;
    for (const ColonyThere& each : colonies.came)
        came.append(
            QJsonObject{{QStringLiteral("hive"), fromUtf8(each.hive.mark.text())},
                        {QStringLiteral("on"), fromUtf8(isoText(each.colony.since))},
                        {QStringLiteral("origin"), orNull(std::optional(each.colony.origin))},
                        {QStringLiteral("from"), orNull(each.mother)}});
    QJsonArray dead;
    for (const ColonyThere& each : colonies.foundDead) dead.append(fromUtf8(each.hive.mark.text()));
    return {
        {QStringLiteral("from"), fromUtf8(isoText(colonies.from))},
        {QStringLiteral("to"), fromUtf8(isoText(colonies.to))},
        {QStringLiteral("into_winter"), colonies.wintered},
        {QStringLiteral("standing"),
         colonies.begun ? QJsonValue(static_cast<qint64>(colonies.standing.size())) : QJsonValue()},
        {QStringLiteral("came"), came},
        {QStringLiteral("left"), goneArray(colonies.left)},
        {QStringLiteral("found_dead"), dead},
        {QStringLiteral("lost"), colonies.lost()},
        {QStringLiteral("there"),
         colonies.begun ? QJsonValue(static_cast<qint64>(colonies.there.size())) : QJsonValue()}};
}

/// The winter before the year, then the one after it, where they are known.
QJsonArray lossesArray(const ColoniesOfYear& colonies) {
    QJsonArray list;
    for (const auto& winter : {colonies.before, colonies.after}) {
        if (!winter) continue;
        const WinterLoss& loss = winter->loss;
        QJsonArray yards;
        for (const auto& [name, of] : loss.yards)
            yards.append(QJsonObject{{QStringLiteral("yard"), fromUtf8(name)},
                                     {QStringLiteral("dead"), static_cast<qint64>(of.dead)},
                                     {QStringLiteral("at_risk"), static_cast<qint64>(of.atRisk)}});
        const auto share = [&](double value) {
            return loss.loss ? QJsonValue(value) : QJsonValue();
        };
        list.append(QJsonObject{
            {QStringLiteral("from"), fromUtf8(isoText(loss.from))},
            {QStringLiteral("to"), fromUtf8(isoText(loss.to))},
            {QStringLiteral("lasts"), loss.lasts},
            {QStringLiteral("at_risk"), loss.atRisk},
            {QStringLiteral("dead"), loss.dead},
            {QStringLiteral("sold_or_united"), loss.soldOrUnited},
            {QStringLiteral("total_share"), share(loss.loss ? loss.loss->totalShare : 0)},
            {QStringLiteral("mean_share"), share(loss.loss ? loss.loss->meanShare : 0)},
            {QStringLiteral("yards"), yards},
            {QStringLiteral("died"), goneArray(winter->dead)}});
    }
    return list;
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
            {QStringLiteral("doubt"), orNull(learned.doubt)},
            {QStringLiteral("published"), orNull(learned.published)},
            {QStringLiteral("published_doubt"), orNull(learned.publishedDoubt)},
            {QStringLiteral("published_source"), fromUtf8(learned.publishedSource)},
            {QStringLiteral("seen"), static_cast<double>(learned.seen.size())},
            {QStringLiteral("seen_mean"), learned.seenMean},
            {QStringLiteral("doubt_of_one"), orNull(learned.doubtOfOne)}};
}

QJsonArray reckonedArray(const ReckonedAndGot& reckoned) {
    QJsonArray lines;
    for (const GotLine& line : reckoned.lines) {
        QJsonObject object{
            {QStringLiteral("constant"), fromUtf8(line.constant)},
            {QStringLiteral("rate"), line.rate},
            {QStringLiteral("own"), line.own},
            {QStringLiteral("reckoned"), line.reckoned},
            {QStringLiteral("filled_share"), orNull(line.filledShare)},
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
        object.insert(QStringLiteral("box_spread"), orNull(line.boxSpread));
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
    const Season season = seasonToRead(context);
    const Day today = context.clock.today();
    if (context.arguments.has("run")) {
        for (const char* other : {"season", "beside", "by"})
            if (context.arguments.has(other))
                return misused(context,
                               QStringLiteral("--run is the balance of one run, --%1 is about a "
                                              "whole year; take one of them")
                                   .arg(QLatin1String(other)));
        const auto run = runNamed(context, season.read());
        if (!run) return refuse(context, run.error());
        const auto balance = runBalance(season.read(), run->value());
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
    const SeasonYield before = seasonYield(season.read(), *beside);
    std::optional<YieldsBy> told;
    if (const auto name = context.arguments.value("by")) {
        const auto by = yieldByNamed(name->toStdString());
        if (!by) return misused(context, QStringLiteral("--by is hive, colony, queen or yard"));
        told = yieldsBy(season.read(), yields, before, *by);
    }
    const auto why = context.arguments.has("why") ? explainSeason(season.read(), yields, reckoned)
                                                  : std::vector<Explained>{};
    if (context.json()) {
        QJsonObject answer = seasonObject(yields);
        const ColoniesOfYear colonies = coloniesOfYear(season.read(), *year, today);
        answer.insert(QStringLiteral("sentence"), seasonSentence(yields, &colonies).text);
        answer.insert(QStringLiteral("producing_known"), yields.producingKnown);
        answer.insert(QStringLiteral("colonies"), coloniesObject(colonies));
        answer.insert(QStringLiteral("losses"), lossesArray(colonies));
        if (told) answer.insert(QStringLiteral("told_by"), yieldsByObject(*told));
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
    if (told) {
        context.streams.out << pageText(yieldsByPage(season.read(), *told, yields, today));
        printWhy(context, why);
        return Done;
    }
    context.streams.out << pageText(harvestSummaryPage(season.read(), yields, today, {before}));
    if (!reckoned.lines.empty())
        context.streams.out << '\n' << pageText(reckonedPage(season.read(), reckoned, today));
    printWhy(context, why);
    return Done;
}

}  // namespace

std::vector<Command> yieldCommands() {
    return {
        {"yields",
         "FILE",
         "which hive gave what",
         1,
         1,
         {{"run", "NAME", "the balance of one run"},
          {"season", "YEAR", "another year than the last with honey"},
          {"beside", "YEAR", "another year beside it than the one before"},
          {"by", "WHAT", "by hive, colony, queen or yard alone"},
          {"why", nullptr, "how each figure came about"}},
         &runYields},
    };
}

}  // namespace combwright::cli
