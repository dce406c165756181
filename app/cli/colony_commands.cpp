#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/health/colonies_page.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/yard/story_page.h"
#include "core/places/pages/yard/yard_story_text.h"
#include "core/places/yard/colonies_on.h"
#include "core/places/yard/followed.h"
#include "core/places/yard/queens.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonValue iso(Day day) { return fromUtf8(isoText(day)); }
QJsonObject yardObject(const YardColonies& yard) {
    QJsonArray colonies;
    for (const ColonyThere& there : yard.colonies)
        colonies.append(QJsonObject{{QStringLiteral("hive"), fromUtf8(there.hive.mark.text())},
                                    {QStringLiteral("since"), iso(there.colony.since)},
                                    {QStringLiteral("origin"), fromUtf8(word(there.colony.origin))},
                                    {QStringLiteral("mother"), orNull(there.mother)}});
    QJsonObject origins;
    for (const auto& [origin, count] : yard.origins) origins.insert(fromUtf8(word(origin)), count);
    QJsonArray ended;
    for (const ColonyGone& gone : yard.ended)
        ended.append(QJsonObject{{QStringLiteral("hive"), fromUtf8(gone.hive.mark.text())},
                                 {QStringLiteral("since"), iso(gone.colony.since)},
                                 {QStringLiteral("ended"), iso(*gone.colony.ended)},
                                 {QStringLiteral("ending"), orNull(gone.colony.ending)},
                                 {QStringLiteral("united_into"), orNull(gone.into)},
                                 {QStringLiteral("cause"), orNull(gone.cause)}});
    return {{QStringLiteral("yard"), fromUtf8(yard.yard.name.text())},
            {QStringLiteral("registration"), orNull(yard.yard.registration)},
            {QStringLiteral("stands"), yard.hives},
            {QStringLiteral("count"), static_cast<qint64>(yard.colonies.size())},
            {QStringLiteral("origins"), origins},
            {QStringLiteral("colonies"), colonies},
            {QStringLiteral("ended"), ended}};
}

QJsonObject winterObject(const WinterLoss& winter) {
    QJsonArray yards;
    for (const auto& [name, loss] : winter.yards)
        yards.append(QJsonObject{{QStringLiteral("yard"), fromUtf8(name)},
                                 {QStringLiteral("at_risk"), static_cast<qint64>(loss.atRisk)},
                                 {QStringLiteral("dead"), static_cast<qint64>(loss.dead)}});
    return {{QStringLiteral("from"), iso(winter.from)},
            {QStringLiteral("to"), iso(winter.to)},
            {QStringLiteral("lasts"), winter.lasts},
            {QStringLiteral("at_risk"), winter.atRisk},
            {QStringLiteral("dead"), winter.dead},
            {QStringLiteral("sold_or_united"), winter.soldOrUnited},
            {QStringLiteral("loss_total_share"),
             winter.loss ? QJsonValue(winter.loss->totalShare) : QJsonValue()},
            {QStringLiteral("loss_total_low_share"),
             winter.loss ? QJsonValue(winter.loss->total.low) : QJsonValue()},
            {QStringLiteral("loss_total_high_share"),
             winter.loss ? QJsonValue(winter.loss->total.high) : QJsonValue()},
            {QStringLiteral("loss_mean_share"),
             winter.loss ? QJsonValue(winter.loss->meanShare) : QJsonValue()},
            {QStringLiteral("yards"), yards}};
}

int runColonies(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    std::optional<Day> since;
    if (const auto text = context.arguments.value("since")) {
        since = parseDay(text->toStdString());
        if (!since)
            return refuse(context,
                          Refusal{Code::NotADay, "since", {{"value", text->toStdString()}}});
    }
    Explained why;
    const ColoniesOn colonies = coloniesOn(file, today, *yard, since, &why.working);
    why.what = QCoreApplication::translate("cli", "Winter loss");
    why.answer = winterLossText(colonies.winter);
    const std::vector<Explained> explained =
        context.arguments.has("why") ? std::vector<Explained>{why} : std::vector<Explained>();
    if (!context.json()) {
        context.streams.out << pageText(coloniesPage(file, colonies));
        printWhy(context, explained);
        return Done;
    }
    QJsonArray yards;
    for (const YardColonies& each : colonies.yards) yards.append(yardObject(each));
    QJsonObject object{{QStringLiteral("as_of"), iso(today)},
                       {QStringLiteral("since"), iso(colonies.since)},
                       {QStringLiteral("colonies"), colonies.colonies},
                       {QStringLiteral("ended"), colonies.ended},
                       {QStringLiteral("yards"), yards},
                       {QStringLiteral("winter"), winterObject(colonies.winter)}};
    if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(explained));
    printJson(context, object);
    return Done;
}

QJsonValue queenObject(const std::optional<Queen>& queen, const std::string& colour) {
    if (!queen) return {};
    return QJsonObject{{QStringLiteral("queen"), QStringLiteral("#%1").arg(queen->id.number)},
                       {QStringLiteral("reared"), orNull(queen->reared)},
                       {QStringLiteral("origin"), fromUtf8(word(queen->from))},
                       {QStringLiteral("marked"), orNull(queen->marked)},
                       {QStringLiteral("colour"), orNull(colour)},
                       {QStringLiteral("number"), orNull(queen->number)},
                       {QStringLiteral("clipped"), orNull(queen->clipped)},
                       {QStringLiteral("note"), orNull(queen->note)}};
}

QJsonArray queenArray(const std::vector<Queen>& queens) {
    QJsonArray array;
    for (const Queen& queen : queens)
        array.append(
            QJsonObject{{QStringLiteral("queen"), QStringLiteral("#%1").arg(queen.id.number)},
                        {QStringLiteral("number"), orNull(queen.number)},
                        {QStringLiteral("reared"), orNull(queen.reared)}});
    return array;
}

QJsonValue youngQueenObject(const std::optional<WaitingQueen>& waiting, Day today) {
    if (!waiting) return {};
    const QueenDates& dates = waiting->dates;
    return QJsonObject{{QStringLiteral("since"), iso(waiting->since)},
                       {QStringLiteral("step"), fromUtf8(word(waiting->step))},
                       {QStringLiteral("not_seen_on"), orNull(waiting->notSeenOn)},
                       {QStringLiteral("by_look"), !waiting->record},
                       {QStringLiteral("emerges_from"), iso(dates.emergesFrom)},
                       {QStringLiteral("emerges_to"), iso(dates.emergesTo)},
                       {QStringLiteral("do_not_open_until"), iso(dates.doNotOpenUntil)},
                       {QStringLiteral("look_from"), iso(dates.lookFrom)},
                       {QStringLiteral("test_frame_from"), iso(dates.testFrameFrom)},
                       {QStringLiteral("act_by"), iso(dates.actBy)},
                       {QStringLiteral("looked_in_vain"), orNull(waiting->lookedInVain)},
                       {QStringLiteral("leave_shut"), today < dates.lookFrom}};
}

int runQueens(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    const Queens queens = queensOn(file, today, *yard);
    if (!context.json()) {
        context.streams.out << pageText(queensPage(file, queens));
        return Done;
    }
    QJsonArray colonies;
    for (const HeadedColony& each : queens.colonies)
        colonies.append(QJsonObject{
            {QStringLiteral("hive"), fromUtf8(each.hive.mark.text())},
            {QStringLiteral("yard"), fromUtf8(each.yard.name.text())},
            {QStringLiteral("queen"), queenObject(each.queen, each.colour)},
            {QStringLiteral("since"), each.stay ? QJsonValue(iso(each.stay->since)) : QJsonValue()},
            {QStringLiteral("last_seen"), orNull(each.seen)},
            {QStringLiteral("last_left"),
             each.lastLeft
                 ? QJsonValue(QJsonObject{{QStringLiteral("on"), orNull(each.lastLeft->until)},
                                          {QStringLiteral("how"), orNull(each.lastLeft->left)}})
                 : QJsonValue()},
            {QStringLiteral("mothers"), queenArray(each.mothers)},
            {QStringLiteral("daughters"), queenArray(each.daughters)},
            {QStringLiteral("waiting"), youngQueenObject(each.waiting, today)}});
    printJson(context, QJsonObject{{QStringLiteral("as_of"), iso(today)},
                                   {QStringLiteral("colonies"), colonies}});
    return Done;
}

int runStory(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    NameQuery query{.name = context.arguments.positional.at(1).toStdString(), .on = today};
    if (const auto yard = context.arguments.value("yard")) query.yard = yard->toStdString();
    const auto found = findNamed(file, Hive::table, query);
    if (!found) return refuse(context, found.error());
    const auto hive = file.find(Id<Hive>{*found});
    if (!context.json()) {
        context.streams.out << pageText(storyPage(file, *hive, today));
        return Done;
    }
    const Hive then = asItWas(file, *hive, today);
    const HiveHead head = hiveHead(file, hive->id, today);
    QJsonArray entries;
    for (const StoryEntry& entry : hiveStory(file, hive->id, today))
        entries.append(QJsonObject{{QStringLiteral("on"), iso(entry.on)},
                                   {QStringLiteral("about"), storyKind(entry)},
                                   {QStringLiteral("what"), storySentence(entry)}});
    QJsonValue colony;
    if (head.colony)
        colony = QJsonObject{{QStringLiteral("since"), iso(head.colony->since)},
                             {QStringLiteral("origin"), fromUtf8(word(head.colony->origin))},
                             {QStringLiteral("mother"), orNull(head.mother)}};
    printJson(context, QJsonObject{{QStringLiteral("as_of"), iso(today)},
                                   {QStringLiteral("hive"), fromUtf8(then.mark.text())},
                                   {QStringLiteral("yard"),
                                    fromUtf8(nameOf(file, Yard::table, then.yard.number))},
                                   {QStringLiteral("colony"), colony},
                                   {QStringLiteral("queen"), queenObject(head.queen, head.colour)},
                                   {QStringLiteral("queen_seen"), orNull(head.queenSeen)},
                                   {QStringLiteral("look_from"), orNull(head.lookFrom)},
                                   {QStringLiteral("story"), entries}});
    return Done;
}

/// A row by what it is called, or "#12".
Result<std::int64_t> thingNamed(const Read& file, std::string_view table, NameQuery query) {
    if (query.name.starts_with('#')) {
        bool isNumber = false;
        const qlonglong id = QString::fromStdString(query.name).mid(1).toLongLong(&isNumber);
        if (isNumber && id > 0 && file.holds(table, id)) return static_cast<std::int64_t>(id);
        return Refusal{Code::NotFound, std::string(table), {{"name", query.name}}};
    }
    // "queen ML3" is the queen of that hive.
    auto found = findNamed(file, table, query);
    if (found || table != Queen::table || found.error().code != Code::NotFound) return found;
    query.hive = query.name;
    query.name.clear();
    if (auto inHive = findNamed(file, table, query)) return inHive;
    return found;
}

int runFollow(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const QString thing = context.arguments.positional.at(1);
    NameQuery query{.name = context.arguments.positional.at(2).toStdString(), .on = today};
    if (const auto yard = context.arguments.value("yard")) query.yard = yard->toStdString();
    const bool box = thing == QLatin1String("box");
    const bool comb = thing == QLatin1String("comb");
    if (!box && !comb && thing != QLatin1String("queen"))
        return misused(context, QCoreApplication::translate(
                                    "cli", "follow needs box, comb or queen, and its name"));
    const auto table = box ? Box::table : comb ? Frame::table : Queen::table;
    const auto found = thingNamed(file, table, query);
    if (!found) return refuse(context, found.error());
    const Followed followed = box    ? followBox(file, Id<Box>{*found}, today)
                              : comb ? followComb(file, Id<Frame>{*found}, today)
                                     : followQueen(file, Id<Queen>{*found}, today);
    if (!context.json()) {
        context.streams.out << pageText(followedPage(file, followed, today));
        return Done;
    }
    QJsonArray way;
    for (const WayStep& step : followed.way)
        way.append(QJsonObject{{QStringLiteral("on"), iso(step.on)},
                               {QStringLiteral("hive"), orNull(step.hive)},
                               {QStringLiteral("yard"), orNull(step.yard)},
                               {QStringLiteral("box"), orNull(step.box)},
                               {QStringLiteral("place"), orNull(step.place)},
                               {QStringLiteral("left"), orNull(step.left)},
                               {QStringLiteral("what"), wayText(step, followed.thing)}});
    QJsonObject object{{QStringLiteral("as_of"), iso(today)},
                       {QStringLiteral("thing"), thing},
                       {QStringLiteral("id"), QStringLiteral("#%1").arg(*found)},
                       {QStringLiteral("name"), orNull(followed.name)},
                       {QStringLiteral("way"), way}};
    if (followed.queen) {
        object.insert(QStringLiteral("queen"), queenObject(followed.queen, followed.colour));
        object.insert(QStringLiteral("mothers"), queenArray(followed.mothers));
        object.insert(QStringLiteral("daughters"), queenArray(followed.daughters));
    }
    printJson(context, object);
    return Done;
}

}  // namespace

std::vector<Command> colonyCommands() {
    return {
        {"colonies",
         "FILE",
         "how many colonies stood where on the day, what ended, what the winter took",
         1,
         1,
         {{"yard", "NAME", "only this yard"},
          {"since", "YYYY-MM-DD", "what ended since then; else since New Year"},
          {"why", nullptr, "how the loss came about"}},
         &runColonies},
        {"queens",
         "FILE",
         "which queen heads which colony, and where a young one is waited for",
         1,
         1,
         {{"yard", "NAME", "only this yard"}},
         &runQueens},
        {"story",
         "FILE HIVE",
         "a hive's story up to the day, newest first",
         2,
         2,
         {{"yard", "NAME", "its yard, where the name is not enough"}},
         &runStory},
        {"follow",
         "FILE box|comb|queen NAME",
         "where a box, a marked comb or a queen was, day by day",
         3,
         3,
         {{"yard", "NAME", "the yard of the queen's hive, where its name is not enough"}},
         &runFollow},
    };
}

}  // namespace combwright::cli
