#include <QJsonArray>
#include <QJsonObject>
#include <cmath>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/explain/explain_storeroom.h"
#include "core/places/pages/goods/order_list_page.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/storeroom/stock_page.h"
#include "core/places/pages/storeroom/winter_todo_page.h"
#include "core/places/storeroom/stack_words.h"
#include "core/storage/queries/machines.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

template <class T>
QString choiceKey(T choice) {
    return fromUtf8(Choices<T>::words[static_cast<std::size_t>(choice)]);
}

QJsonValue count(std::int64_t number) { return static_cast<qint64>(number); }
QJsonValue count(const std::optional<std::int64_t>& number) {
    return number ? count(*number) : QJsonValue();
}
QJsonValue count(const std::optional<Count>& number) {
    return number ? count(number->value()) : QJsonValue();
}
constexpr std::pair<FrameUse, const char*> useKeys[] = {
    {FrameUse::Drawn, "drawn"},    {FrameUse::Foundation, "foundation"},
    {FrameUse::Bare, "bare"},      {FrameUse::Repairable, "repairable"},
    {FrameUse::Held, "held"},      {FrameUse::Lost, "lost"},
    {FrameUse::Unknown, "unknown"}};

void insertUses(QJsonObject& object, const UseCounts& uses) {
    for (const auto& [use, key] : useKeys) object.insert(QLatin1String(key), count(uses[use]));
}

QJsonObject framesObject(const FramesOfKind& kind) {
    QJsonObject object{{QStringLiteral("frame"), fromUtf8(kind.kind.code.text())},
                       {QStringLiteral("name"), fromUtf8(kind.kind.name.text())},
                       {QStringLiteral("in_nests"), count(kind.inNests)},
                       {QStringLiteral("lent"), count(kind.lent)},
                       {QStringLiteral("loose"), count(kind.loose)},
                       {QStringLiteral("kept"), count(kind.kept)},
                       {QStringLiteral("expected"), count(kind.expected())},
                       {QStringLiteral("missing"), count(kind.missing)},
                       {QStringLiteral("melted"), count(kind.melted)},
                       {QStringLiteral("burnt"), count(kind.burnt)},
                       {QStringLiteral("sold"), count(kind.sold)},
                       {QStringLiteral("gone"), count(kind.gone)},
                       {QStringLiteral("ever"), count(kind.ever())},
                       {QStringLiteral("boxes_counted"), count(kind.boxesCounted)},
                       {QStringLiteral("boxes_not_counted"), count(kind.boxesNotCounted)}};
    insertUses(object, kind.use);
    QJsonObject states;
    for (const auto& [letters, frames] : kind.state)
        if (!letters.empty()) states.insert(fromUtf8(letters), count(frames));
    object.insert(QStringLiteral("by_state"), states);
    return object;
}

QJsonObject boxesObject(const BoxStock& kind) {
    return {{QStringLiteral("box"), fromUtf8(kind.kind.code.text())},
            {QStringLiteral("name"), fromUtf8(kind.kind.name.text())},
            {QStringLiteral("in_all"), count(kind.about)},
            {QStringLiteral("usable"), count(kind.usable)},
            {QStringLiteral("usable_once_repaired"), count(kind.repairable)},
            {QStringLiteral("sound"), count(kind.sound)},
            {QStringLiteral("to_scrape"), count(kind.toScrape)},
            {QStringLiteral("needs_repair"), count(kind.needRepair)},
            {QStringLiteral("wants_paint"), count(kind.wantPaint)},
            {QStringLiteral("held"), count(kind.held)},
            {QStringLiteral("lent"), count(kind.lent)},
            {QStringLiteral("in_freezer"), count(kind.inFreezer)},
            {QStringLiteral("in_store"), count(kind.inStore)},
            {QStringLiteral("in_nests"), count(kind.inNests)},
            {QStringLiteral("supers_on"), count(kind.supersOn)},
            {QStringLiteral("on_empty_hives"), count(kind.onEmptyHives)},
            {QStringLiteral("not_counted"), count(kind.notCounted)}};
}

/// What a machine holds of each kind of frame.
QJsonArray holdings(const Read& file, const Equipment& machine) {
    QJsonArray all;
    if (!isMachine(machine.item)) return all;
    for (const Equipment& row : machineRows(file, machine.item, machine.name)) {
        if (!row.holds) continue;
        const auto frame = file.find(row.frameKind);
        all.append(QJsonObject{{QStringLiteral("frame"),
                                frame ? QJsonValue(fromUtf8(frame->code.text())) : QJsonValue()},
                               {QStringLiteral("holds"), count(row.holds)}});
    }
    return all;
}

QJsonObject kindObject(const Read& file, const Equipment& kind, const std::optional<Day>& counted) {
    const auto frame = file.find(kind.frameKind);
    return {
        {QStringLiteral("name"), orNull(kind.name)},
        {QStringLiteral("frame"), frame ? QJsonValue(fromUtf8(frame->code.text())) : QJsonValue()},
        {QStringLiteral("on_hand"), count(kind.onHand)},
        {QStringLiteral("in_repair"), count(kind.inRepair)},
        {QStringLiteral("lent"), count(kind.lent)},
        {QStringLiteral("counted"), orNull(counted)},
        {QStringLiteral("litres"), count(kind.litres)},
        {QStringLiteral("coldest_c"),
         kind.coldest ? QJsonValue(kind.coldest->celsius()) : QJsonValue()},
        {QStringLiteral("holds"), count(kind.holds)},
        {QStringLiteral("holdings"), holdings(file, kind)},
        {QStringLiteral("radius_mm"), kind.radius ? QJsonValue(kind.radius->mm()) : QJsonValue()},
        {QStringLiteral("rpm"), count(kind.rpm)},
        {QStringLiteral("capacity_g"), orNull(kind.capacity)},
        {QStringLiteral("note"), orNull(kind.note)}};
}

QJsonObject equipmentObject(const Read& file, const EquipmentStock& each) {
    QJsonArray kinds;
    for (std::size_t n = 0; n < each.kinds.size(); ++n)
        kinds.append(kindObject(file, each.kinds[n], each.lastCounts[n]));
    return {{QStringLiteral("item"), choiceKey(each.item)},
            {QStringLiteral("on_hand"), count(each.onHand)},
            {QStringLiteral("in_use"), count(each.inUse)},
            {QStringLiteral("on_empty_hives"), count(each.onEmptyHives)},
            {QStringLiteral("held"), count(each.held)},
            {QStringLiteral("in_repair"), count(each.inRepair)},
            {QStringLiteral("lent"), count(each.lent)},
            {QStringLiteral("counted"), orNull(each.counted)},
            {QStringLiteral("kinds"), kinds}};
}

const char* liftKey(Lift lift) {
    switch (lift) {
        case Lift::NotKnown:
            return "not_known";
        case Lift::Light:
            return "light";
        case Lift::Careful:
            return "careful";
        case Lift::TwoPeople:
            return "two_people";
    }
    return "not_known";
}

QJsonObject stackObject(const BoxStack& stack) {
    QJsonValue heaviest;
    if (const BoxInStack* box = stack.heaviest())
        heaviest = QJsonObject{{QStringLiteral("box"), fromUtf8(box->name)},
                               {QStringLiteral("mass_g"), *box->massG},
                               {QStringLiteral("lift"), QLatin1String(liftKey(box->lift))}};
    QJsonValue full;
    if (const BoxInStack* box = stack.heaviestFull())
        full = QJsonObject{{QStringLiteral("name"), fromUtf8(box->kind)},
                           {QStringLiteral("mass_g"), *box->fullG},
                           {QStringLiteral("lift"), QLatin1String(liftKey(box->fullLift))}};
    const auto boxes = static_cast<std::int64_t>(stack.boxes.size());
    const bool known = stack.load.notWeighed < boxes;
    const bool measured = stack.load.notMeasured < boxes;
    const QString caution = stackCaution(stack);
    return {
        {QStringLiteral("place"), choiceKey(stack.place)},
        {QStringLiteral("stack"), orNull(stack.stack)},
        {QStringLiteral("boxes"), count(boxes)},
        {QStringLiteral("height_mm"), measured ? QJsonValue(stack.load.heightMm) : QJsonValue()},
        {QStringLiteral("litres"), measured ? QJsonValue(stack.load.litres) : QJsonValue()},
        {QStringLiteral("boxes_not_measured"), count(stack.load.notMeasured)},
        {QStringLiteral("mass_g"), known ? QJsonValue(stack.load.massG) : QJsonValue()},
        {QStringLiteral("boxes_not_weighed"), count(stack.load.notWeighed)},
        {QStringLiteral("heaviest"), heaviest},
        {QStringLiteral("full_box"), full},
        {QStringLiteral("caution"), caution.isEmpty() ? QJsonValue() : QJsonValue(caution)}};
}

QJsonObject stockObject(const Read& file, const Stock& stock,
                        const std::vector<BoxStack>& boxStacked) {
    QJsonArray stacks;
    for (const BoxStack& each : boxStacked) stacks.append(stackObject(each));
    QJsonArray frames;
    for (const FramesOfKind& each : stock.frameKinds) frames.append(framesObject(each));
    QJsonArray boxes;
    for (const BoxStock& each : stock.boxKinds) boxes.append(boxesObject(each));
    QJsonArray equipment;
    for (const EquipmentStock& each : stock.equipment)
        equipment.append(equipmentObject(file, each));
    return {{QStringLiteral("as_of"), fromUtf8(isoText(stock.on))},
            {QStringLiteral("colonies"), count(stock.colonies)},
            {QStringLiteral("frames"), frames},
            {QStringLiteral("boxes"), boxes},
            {QStringLiteral("equipment"), equipment},
            {QStringLiteral("stacks"), stacks}};
}

QJsonArray todoBoxes(const std::vector<TodoBox>& boxes) {
    QJsonArray array;
    for (const TodoBox& each : boxes)
        array.append(QJsonObject{{QStringLiteral("box"), fromUtf8(each.name)},
                                 {QStringLiteral("kind"), fromUtf8(each.kind)},
                                 {QStringLiteral("stack"), orNull(each.stack)},
                                 {QStringLiteral("wood"), orNull(each.wood)},
                                 {QStringLiteral("held"), each.held}});
    return array;
}

QJsonArray todoFrames(const std::vector<TodoFrames>& frames) {
    QJsonArray array;
    for (const TodoFrames& each : frames) {
        QJsonArray parts;
        for (const TodoPart& part : each.parts)
            parts.append(QJsonObject{
                {QStringLiteral("box"), part.box ? QJsonValue(fromUtf8(part.name)) : QJsonValue()},
                {QStringLiteral("stack"), part.box ? QJsonValue() : orNull(part.name)},
                {QStringLiteral("frames"), count(part.frames)}});
        array.append(QJsonObject{{QStringLiteral("frame"), fromUtf8(each.kind.code.text())},
                                 {QStringLiteral("verdict"), choiceKey(each.verdict)},
                                 {QStringLiteral("comb_gone"), each.combGone},
                                 {QStringLiteral("frames"), count(each.frames)},
                                 {QStringLiteral("where"), parts}});
    }
    return array;
}

QJsonArray todoStacks(const std::vector<TodoStack>& stacks) {
    QJsonArray array;
    for (const TodoStack& stack : stacks) {
        QJsonArray boxes;
        for (const StackedContents& each : stack.boxes) {
            QJsonObject object{{QStringLiteral("box"), fromUtf8(each.box)},
                               {QStringLiteral("kind"), fromUtf8(each.kind)},
                               {QStringLiteral("held"), each.held},
                               {QStringLiteral("counted"), each.counted},
                               {QStringLiteral("combs"), count(each.combs)},
                               {QStringLiteral("combs_frozen"), count(each.frozen)}};
            if (each.counted) {
                QJsonObject frames;
                insertUses(frames, each.use);
                object.insert(QStringLiteral("frames"), frames);
            } else {
                object.insert(QStringLiteral("frames"), QJsonValue());
            }
            boxes.append(object);
        }
        QJsonObject loose;
        insertUses(loose, stack.loose);
        array.append(QJsonObject{{QStringLiteral("stack"), orNull(stack.stack)},
                                 {QStringLiteral("boxes"), boxes},
                                 {QStringLiteral("loose"), loose},
                                 {QStringLiteral("frozen"), orNull(stack.frozen)},
                                 {QStringLiteral("last_look"), orNull(stack.lastLook)},
                                 {QStringLiteral("never_looked"), count(stack.neverLooked)}});
    }
    return array;
}

QJsonObject todoObject(const WinterTodo& todo) {
    QJsonArray materials;
    for (const TodoMaterial& each : todo.materials)
        materials.append(QJsonObject{{QStringLiteral("frame"), fromUtf8(each.kind.code.text())},
                                     {QStringLiteral("refit"), count(each.refit)},
                                     {QStringLiteral("repair"), count(each.repair)},
                                     {QStringLiteral("bare"), count(each.bare)},
                                     {QStringLiteral("sheets"), count(each.sheets())},
                                     {QStringLiteral("or_starter_strips"), count(each.sheets())},
                                     {QStringLiteral("frames_to_wire"), count(each.sheets())},
                                     {QStringLiteral("wire_mm"), QJsonValue()},
                                     {QStringLiteral("sheets_there"), count(each.sheetsThere)}});
    QJsonArray held;
    for (const TodoHold& each : todo.held)
        held.append(QJsonObject{
            {QStringLiteral("what"), orNull(each.what)},
            {QStringLiteral("frames"), count(each.frames)},
            {QStringLiteral("why"), each.why ? QJsonValue(choiceKey(*each.why)) : QJsonValue()},
            {QStringLiteral("since"), orNull(each.since)},
            {QStringLiteral("note"), orNull(each.note)}});
    return {{QStringLiteral("as_of"), fromUtf8(isoText(todo.on))},
            {QStringLiteral("boxes_to_scrape"), todoBoxes(todo.scrape)},
            {QStringLiteral("boxes_to_repair"), todoBoxes(todo.repair)},
            {QStringLiteral("boxes_to_paint"), todoBoxes(todo.paint)},
            {QStringLiteral("frames"), todoFrames(todo.frames)},
            {QStringLiteral("materials"), materials},
            {QStringLiteral("not_frozen"), todoFrames(todo.notFrozen)},
            {QStringLiteral("held"), held},
            {QStringLiteral("stacks"), todoStacks(todo.stacks)}};
}

void insertShortage(QJsonObject& object, const Shortage& line) {
    object.insert(QStringLiteral("need"), count(line.need));
    object.insert(QStringLiteral("there"), count(line.there));
    object.insert(QStringLiteral("in_repair"), count(line.inRepair));
    object.insert(QStringLiteral("short"), count(line.now()));
    object.insert(QStringLiteral("short_at_most"), count(line.nowAtMost));
    object.insert(QStringLiteral("short_after_repairs"), count(line.afterRepairs()));
    object.insert(QStringLiteral("short_after_repairs_at_most"), count(line.afterRepairsAtMost));
}

QJsonObject boxNeedObject(const BoxNeed& each) {
    QJsonObject object{{QStringLiteral("box"), fromUtf8(each.kind.code.text())},
                       {QStringLiteral("name"), fromUtf8(each.kind.name.text())},
                       {QStringLiteral("for_supers"), each.supers},
                       {QStringLiteral("for_splits"), each.brood},
                       {QStringLiteral("to_scrape"), count(each.toScrape)},
                       {QStringLiteral("held"), count(each.held)}};
    insertShortage(object, each.boxes);
    return object;
}

QJsonObject frameNeedObject(const FrameNeed& each) {
    const bool sheetsKnown = each.sheetsThere && each.frames.known;
    QJsonObject object{
        {QStringLiteral("frame"), fromUtf8(each.kind.code.text())},
        {QStringLiteral("name"), fromUtf8(each.kind.name.text())},
        {QStringLiteral("usable"), count(each.frames.there + each.frames.inRepair)},
        {QStringLiteral("boxes_not_counted"), count(each.boxesNotCounted)},
        {QStringLiteral("buy"), count(each.frames.afterRepairs())},
        {QStringLiteral("pack"), count(each.pack)},
        {QStringLiteral("packs"), count(each.packs)},
        {QStringLiteral("foundation_sheets"), count(each.sheets)},
        {QStringLiteral("foundation_there"), count(each.sheetsThere)},
        {QStringLiteral("foundation_to_buy"),
         sheetsKnown || each.sheetsToBuy == 0 ? count(each.sheetsToBuy) : QJsonValue()},
        {QStringLiteral("foundation_to_buy_at_most"), count(each.sheetsToBuy)},
        {QStringLiteral("foundation_pack"), count(each.sheetPack)},
        {QStringLiteral("foundation_packs"), count(each.sheetPacks)}};
    insertUses(object, each.use);
    insertShortage(object, each.frames);
    return object;
}

QJsonObject itemNeedObject(const ItemNeed& each) {
    QJsonObject object{{QStringLiteral("item"), choiceKey(each.plan.item)},
                       {QStringLiteral("in_use"), count(each.inUse)},
                       {QStringLiteral("held"), count(each.held)},
                       {QStringLiteral("shed_counted"), each.pieces.known},
                       {QStringLiteral("pack"), count(each.plan.pack)},
                       {QStringLiteral("packs"), count(each.packs)}};
    insertShortage(object, each.pieces);
    return object;
}

QJsonObject cullObject(const CombCull& cull) {
    QJsonArray years;
    for (const CullYear& each : cull.years)
        years.append(QJsonObject{{QStringLiteral("drawn_year"), orNull(each.drawnYear)},
                                 {QStringLiteral("combs"), count(each.combs)},
                                 {QStringLiteral("take_out"), count(each.takeOut)}});
    return {{QStringLiteral("frame"), fromUtf8(cull.kind.code.text())},
            {QStringLiteral("combs"), count(cull.combs)},
            {QStringLiteral("target"), count(cull.target)},
            {QStringLiteral("year_unknown"), count(cull.yearUnknown)},
            {QStringLiteral("years"), years}};
}

QJsonObject sparedObject(const CombSpared& spared) {
    return {{QStringLiteral("combs"), count(spared.combs)},
            {QStringLiteral("combs_without_size"), count(spared.combsWithoutSize)},
            {QStringLiteral("wax_g"), std::round(spared.waxG)},
            {QStringLiteral("honey_g"), std::round(spared.honeyG.likely)},
            {QStringLiteral("honey_from_g"), std::round(spared.honeyG.low)},
            {QStringLiteral("honey_to_g"), std::round(spared.honeyG.high)}};
}

QJsonObject needsObject(const NextSeason& next) {
    QJsonArray gaps;
    for (const PlanGap gap : next.gaps) gaps.append(fromUtf8(key(gap)));
    QJsonArray boxes;
    for (const BoxNeed& each : next.boxes) boxes.append(boxNeedObject(each));
    QJsonArray frames;
    for (const FrameNeed& each : next.frames) frames.append(frameNeedObject(each));
    QJsonArray items;
    for (const ItemNeed& each : next.pieces) items.append(itemNeedObject(each));
    const bool splitsSaid = next.plan && next.plan->splits;
    return {{QStringLiteral("as_of"), fromUtf8(isoText(next.on))},
            {QStringLiteral("season"), next.year},
            {QStringLiteral("planned_on"),
             next.plan ? QJsonValue(fromUtf8(isoText(next.plan->on))) : QJsonValue()},
            {QStringLiteral("to_enter"), gaps},
            {QStringLiteral("colonies"), count(next.colonies)},
            {QStringLiteral("colonies_planned"), next.coloniesPlanned},
            {QStringLiteral("splits"), splitsSaid ? count(next.splits) : QJsonValue()},
            {QStringLiteral("boxes"), boxes},
            {QStringLiteral("frames"), frames},
            {QStringLiteral("items"), items},
            {QStringLiteral("cull"), next.cull ? QJsonValue(cullObject(*next.cull)) : QJsonValue()},
            {QStringLiteral("comb_spares"),
             next.spared ? QJsonValue(sparedObject(*next.spared)) : QJsonValue()}};
}

int runStock(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const bool sheet = context.arguments.has("sheet");
    if (context.arguments.has("todo")) {
        if (sheet) return misused(context, QStringLiteral("--todo or --sheet, not both"));
        const WinterTodo todo = winterTodo(file, today);
        if (context.json())
            printJson(context, todoObject(todo));
        else
            context.streams.out << pageText(winterTodoPage(file, todo));
        return Done;
    }
    const Stock stock = stockOn(file, today);
    const bool asked = context.arguments.has("why");
    const auto stacks = boxStacks(file, stock);
    auto why = asked ? explainStock(stock) : std::vector<Explained>{};
    if (asked)
        for (Explained& each : explainStacks(stacks)) why.push_back(std::move(each));
    if (context.json()) {
        QJsonObject object = stockObject(file, stock, stacks);
        if (asked) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(sheet ? stockTakePage(file, stock) : stockPage(file, stock));
    printWhy(context, why);
    return Done;
}

int runNeeds(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    int year = plannedYear(file, today);
    if (const auto text = context.arguments.value("season")) {
        bool isNumber = false;
        year = text->toInt(&isNumber);
        if (!isNumber || year < 1900 || year > 2200)
            return misused(context, QStringLiteral("--season needs a year"));
    }
    const NextSeason next = nextSeason(file, today, year);
    const bool asked = context.arguments.has("why");
    const auto why = asked ? explainNeeds(next) : std::vector<Explained>{};
    if (context.json()) {
        QJsonObject object = needsObject(next);
        if (asked) object.insert(QStringLiteral("why"), whyArray(why));
        printJson(context, object);
        return Done;
    }
    context.streams.out << pageText(orderListPage(file, next));
    printWhy(context, why);
    return Done;
}

}  // namespace

std::vector<Command> storeroomCommands() {
    return {
        {"stock",
         "FILE",
         "what there is: frames, boxes and the rest",
         1,
         1,
         {{"todo", nullptr, "the winter's work instead, and what stands in which stack"},
          {"sheet", nullptr, "the sheet for a stock-take instead"},
          {"why", nullptr, "how each figure came about"}},
         &runStock},
        {"needs",
         "FILE",
         "what next season needs, what is short and what to order",
         1,
         1,
         {{"season", "YEAR", "another year than the one planned for"},
          {"why", nullptr, "how each figure came about"}},
         &runNeeds},
    };
}

}  // namespace combwright::cli
