#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/explain/explain_pull.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/pull_list_page.h"
#include "core/places/pages/pull/pull_words.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

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
            {QStringLiteral("remaining_g"), orNull(hive.remainingG)},
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
        {QStringLiteral("boards_in"), orNull(sheet.boardsIn)},
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
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    // As the place opens: the plan kept for a day still to come, else all yards.
    PullAsked asked = startingQuestion(file, today);
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    if (*yard) asked.yards = {**yard};
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

}  // namespace

std::vector<Command> pullCommands() {
    return {
        {"pull",
         "FILE",
         "which boxes to bring in, which to leave, and why",
         1,
         1,
         {{"yard", "NAME", "only this yard"}, {"why", nullptr, "how each figure came about"}},
         &runPull},
    };
}

}  // namespace combwright::cli
