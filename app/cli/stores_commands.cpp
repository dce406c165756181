#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/stores/stores_page.h"
#include "core/places/pages/yard/kit_list_page.h"
#include "core/places/yard/growth.h"
#include "core/places/yard/kit_list.h"
#include "core/storage/queries/yards.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QString wordIn(std::string_view text) { return fromUtf8(text); }

QJsonObject giveObject(const ToGive& give) {
    return {{QStringLiteral("sugar_g"), give.sugarG},
            {QStringLiteral("fondant"), give.fondant},
            {QStringLiteral("water_ml"), give.fondant ? QJsonValue() : QJsonValue(give.waterMl)},
            {QStringLiteral("litres"), orNull(give.litres)},
            {QStringLiteral("packs"), orNull(give.packs)},
            {QStringLiteral("pack_g"), orNull(give.pack)}};
}

QJsonObject hiveStoresObject(const HiveStores& row) {
    QJsonObject object{
        {QStringLiteral("hive"), fromUtf8(row.hive.mark.text())},
        {QStringLiteral("from"), wordIn(key(row.from))},
        {QStringLiteral("known_on"), orNull(row.known)},
        {QStringLiteral("stores_g"), orNull(row.grams)},
        {QStringLiteral("how"), row.grams ? QJsonValue(wordIn(word(row.how))) : QJsonValue()},
        {QStringLiteral("now_g"), orNull(row.nowG)},
        {QStringLiteral("frames_of_stores"), orNull(row.framesOfStores)},
        {QStringLiteral("heft"), orNull(row.heft)},
        {QStringLiteral("heft_on"), orNull(row.heftOn)},
        {QStringLiteral("tare_wrong"), row.tareWrong},
        {QStringLiteral("one_side"), row.oneSide},
        {QStringLiteral("with_supers_g"), orNull(row.withSupersG)},
        {QStringLiteral("weighed_in_supers_g"),
         row.withSupersG && !row.supersHide ? QJsonValue(row.scaledSupersG) : QJsonValue()},
        {QStringLiteral("boxes_taken_since"), row.takenSince},
        {QStringLiteral("fed_since_sugar_g"), row.fedSince.sugarG},
        {QStringLiteral("fed_since_unknown"), row.fedSince.unknown},
        {QStringLiteral("use_from"), wordIn(key(row.use))},
        {QStringLiteral("use_g_per_day"), row.own ? QJsonValue(row.own->gPerDay) : QJsonValue()},
        {QStringLiteral("floor_g"), row.floorG},
        {QStringLiteral("first_flow"), fromUtf8(isoText(row.firstFlow))},
        {QStringLiteral("runs_out_on"), orNull(row.runsOut)},
        {QStringLiteral("runs_out_by_own"), orNull(row.byOwn)},
        {QStringLiteral("runs_out_by_months"), orNull(row.byTable)},
        {QStringLiteral("lasts"), orNull(row.lasts)},
        {QStringLiteral("winter_need_g"), row.needG},
        {QStringLiteral("supers"), row.supers},
        {QStringLiteral("supers_not_seen"), row.supersNotSeen},
        {QStringLiteral("supers_g"), row.supersG},
        {QStringLiteral("to_pull"), row.toPull},
        {QStringLiteral("to_pull_g"), row.pulledG},
        {QStringLiteral("for_winter_g"), orNull(row.forWinterG)},
        {QStringLiteral("lacks_to"), wordIn(key(row.gapTo))},
        {QStringLiteral("lacks_g"), orNull(row.gapG)},
        {QStringLiteral("give"), row.give ? QJsonValue(giveObject(*row.give)) : QJsonValue()},
        {QStringLiteral("flow"), row.flow ? QJsonValue(wordIn(key(*row.flow))) : QJsonValue()}};
    if (row.scale) {
        object.insert(QStringLiteral("gross_g"), orNull(row.scale->grossG));
        object.insert(QStringLiteral("tare_from"), wordIn(key(row.scale->tare.from)));
        object.insert(QStringLiteral("tare_g"),
                      row.scale->tare.known() ? QJsonValue(row.scale->tare.grams()) : QJsonValue());
    }
    return object;
}

QJsonObject growthObject(const HiveGrowth& hive) {
    QJsonObject object{{QStringLiteral("hive"), fromUtf8(hive.hive.mark.text())},
                       {QStringLiteral("opened"), orNull(hive.opened)},
                       {QStringLiteral("days_since"), orNull(hive.daysSince)},
                       {QStringLiteral("passed_by"), orNull(hive.passedBy)},
                       {QStringLiteral("shut_until"), orNull(hive.shutUntil)},
                       {QStringLiteral("look_from"), orNull(hive.lookFrom)},
                       {QStringLiteral("come_back"), orNull(hive.comeBack)},
                       {QStringLiteral("supers"), hive.supers},
                       {QStringLiteral("supers_not_seen"), hive.supersNotSeen},
                       {QStringLiteral("room_frames"), orNull(hive.roomFrames)},
                       {QStringLiteral("swarm_look_from"), orNull(hive.swarmFrom)},
                       {QStringLiteral("swarm_look_by"), orNull(hive.swarmBy)},
                       {QStringLiteral("add_box"), QJsonValue()}};
    if (hive.addBox)
        object.insert(
            QStringLiteral("add_box"),
            QJsonObject{{QStringLiteral("by"), wordIn(key(hive.addBox->by))},
                        {QStringLiteral("seen"), fromUtf8(isoText(hive.addBox->seen))},
                        {QStringLiteral("frames_filled"), hive.addBox->have},
                        {QStringLiteral("frames_enough"), static_cast<qint64>(hive.addBox->from)},
                        {QStringLiteral("frames"), static_cast<qint64>(hive.addBox->frames)}});
    return object;
}

QJsonArray shelfArray(const std::vector<FeedShelfRow>& shelf) {
    QJsonArray array;
    for (const FeedShelfRow& each : shelf)
        array.append(QJsonObject{{QStringLiteral("kind"), orNull(std::optional(each.kind))},
                                 {QStringLiteral("sugar_g"), each.leftG()},
                                 {QStringLiteral("counted_on"), orNull(each.counted)},
                                 {QStringLiteral("given_g"), each.givenG},
                                 {QStringLiteral("given_unknown"), each.givenUnknown},
                                 {QStringLiteral("pack_g"), orNull(each.pack)}});
    return array;
}

QJsonObject storesObject(const Read& file, const Stores& all) {
    QJsonArray yards;
    for (const auto& [yard, rows] : all.yards) {
        QJsonArray hives;
        for (const HiveStores& row : rows)
            if (row.lives) hives.append(hiveStoresObject(row));
        const Growth grown = growth(file, yard.id, all.on);
        QJsonArray growing;
        for (const HiveGrowth& hive : grown.hives)
            if (hive.lives) growing.append(growthObject(hive));
        yards.append(QJsonObject{{QStringLiteral("yard"), fromUtf8(yard.name.text())},
                                 {QStringLiteral("hives"), hives},
                                 {QStringLiteral("swarm_weeks"), grown.swarmWeeks},
                                 {QStringLiteral("never_opened"), grown.neverOpened},
                                 {QStringLiteral("passed_by"), grown.passedBy},
                                 {QStringLiteral("growth"), growing}});
    }
    QJsonArray past;
    for (const MonthChange& each : all.past)
        past.append(QJsonObject{{QStringLiteral("month"), static_cast<int>(each.month)},
                                {QStringLiteral("g_per_day"), each.gPerDay},
                                {QStringLiteral("pairs"), each.pairs},
                                {QStringLiteral("hives"), each.hives},
                                {QStringLiteral("years"), each.years},
                                {QStringLiteral("spread_g_per_day"), orNull(each.spreadG)}});
    return {{QStringLiteral("as_of"), fromUtf8(isoText(all.on))},
            {QStringLiteral("stores_per_sugar"), all.storesPerSugar},
            {QStringLiteral("sugar_to_water"), all.sugarToWater},
            {QStringLiteral("sugar_g"), all.sugarG},
            {QStringLiteral("not_known"), all.notKnown},
            {QStringLiteral("run_out"), all.runOut},
            {QStringLiteral("shelf"), shelfArray(all.shelf)},
            {QStringLiteral("past_months"), past},
            {QStringLiteral("yards"), yards}};
}

int runStores(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto print = context.arguments.value("print");
    if (print && *print != QLatin1String("feeding-sheet"))
        return refuse(context,
                      Refusal{Code::NoSuchCommand,
                              "print",
                              {{"name", print->toStdString()}, {"choices", "feeding-sheet"}}});
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    std::vector<Id<Yard>> yards;
    if (*yard)
        yards.push_back(**yard);
    else
        for (const Yard& each : openYards(file)) yards.push_back(each.id);
    const Stores all = stores(file, yards, today);
    const auto why =
        context.arguments.has("why") ? explainStores(file, all) : std::vector<Explained>();
    if (context.json()) {
        QJsonObject object = storesObject(file, all);
        if (context.arguments.has("why")) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(print ? feedingSheetPage(file, all) : storesPage(file, all));
    printWhy(context, why);
    return Done;
}

QJsonArray kitArray(const std::vector<KitLine>& lines) {
    QJsonArray array;
    for (const KitLine& each : lines) {
        QJsonArray hives;
        for (const std::string& hive : each.hives) hives.append(fromUtf8(hive));
        array.append(
            QJsonObject{{QStringLiteral("item"), fromUtf8(each.item)},
                        {QStringLiteral("count"),
                         each.counted ? QJsonValue(static_cast<qint64>(each.count)) : QJsonValue()},
                        {QStringLiteral("sugar_g"), orNull(each.mass)},
                        {QStringLiteral("hives"), hives}});
    }
    return array;
}

int runKit(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day on = context.clock.today();
    const auto yard = yardNamed(context, file);
    if (!yard) return refuse(context, yard.error());
    if (!*yard) return refuse(context, Refusal{Code::Missing, "yard", {}});
    const KitList kit = kitList(file, **yard, on);
    if (!context.json()) {
        context.streams.out << pageText(kitListPage(file, kit));
        return Done;
    }
    QJsonArray shut;
    for (const LeftShut& each : kit.shut)
        shut.append(QJsonObject{{QStringLiteral("hive"), fromUtf8(each.hive)},
                                {QStringLiteral("until"), fromUtf8(isoText(each.until))}});
    printJson(context, QJsonObject{{QStringLiteral("yard"), fromUtf8(kit.yard.name.text())},
                                   {QStringLiteral("day"), fromUtf8(isoText(kit.on))},
                                   {QStringLiteral("take"), kitArray(kit.lines)},
                                   {QStringLiteral("always"), kitArray(kit.always)},
                                   {QStringLiteral("leave_shut"), shut},
                                   {QStringLiteral("shelf"), shelfArray(kit.shelf)}});
    return Done;
}

}  // namespace

std::vector<Command> storesCommands() {
    return {
        {"stores",
         "FILE",
         "what each hive has to live on, how long it lasts, what it lacks, how it grows",
         1,
         1,
         {{"yard", "NAME", "only this yard"},
          {"print", "SHEET", "feeding-sheet: to take along, with room to write"},
          {"why", nullptr, "how each figure came about"}},
         &runStores},
        {"kit",
         "FILE",
         "what to take along to a yard",
         1,
         1,
         {{"yard", "NAME", "which yard"}},
         &runKit},
    };
}

}  // namespace combwright::cli
