#include "core/actions/yard/yards.h"

#include <algorithm>
#include <map>

#include "core/actions/boxes/box_list.h"
#include "core/actions/boxes/box_steps.h"
#include "core/actions/boxes/counted_marks.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/actions/yard/colony_steps.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

/// What is written down of a hive's moves stays in its order.
Result<void> demandAfterMoves(const Read& file, const Hive& hive, Day on) {
    for (const HiveMove& move : file.where<HiveMove>({is("hive", hive.id)}))
        if (on < move.on)
            return Refusal{Code::BeforeItBegan,
                           "on",
                           {{"name", hive.mark.text()}, {"since", isoText(move.on)}}};
    return {};
}

constexpr std::size_t mostHivesAtOnce = 100;

/// The build of the hive that comes so many after the first: marks of one row, D1 and D2 on the
/// first, are D3 and D4 on the second.
Result<BoxList> countedUp(BoxList build, std::int64_t hive) {
    if (hive == 0) return build;
    std::map<std::string, std::int64_t> rows;
    for (const ListedBox& box : build.boxes)
        if (const auto mark = countedMark(box.mark)) ++rows[mark->before];
    for (ListedBox& box : build.boxes) {
        if (box.mark.empty()) continue;
        const auto mark = countedMark(box.mark);
        if (!mark)
            return Refusal{Code::WrongType,
                           "boxes",
                           {{"wanted", "marks that end in a number"}, {"value", box.mark}}};
        box.mark = mark->further(hive * rows[mark->before]);
    }
    return build;
}

Result<Id<Hive>> setUpStand(Write& file, const AddHive& add, const BoxList& list) {
    const auto home = file.find(add.yard);
    if (!home) return Refusal{Code::NotFound, "yard", {}};
    if (home->closed) return Refusal{Code::Closed, "yard", {{"name", home->name.text()}}};
    auto neighbours = openHives(file, add.yard);
    for (const Hive& each : neighbours)
        if (each.mark == add.hive) return Refusal{Code::Taken, "mark", {{"name", add.hive.text()}}};
    if (add.mother)
        if (auto free = demandHiveFree(file, *add.mother, add.on, "mother"); !free)
            return free.error();

    const auto most = Count(static_cast<std::int64_t>(neighbours.size()) + 1);
    const Count order = std::clamp(add.standOrder.value_or(most), Count(1), most);
    for (Hive& each : neighbours) {
        if (each.standOrder < order) continue;
        each.standOrder += Count(1);
        file.change(each);
    }
    const Id<Hive> stand = file.add(Hive{{},
                                         add.yard,
                                         add.hive,
                                         order,
                                         add.tare,
                                         list.excluderAbove,
                                         add.note,
                                         add.on,
                                         std::nullopt});
    Count level;
    std::vector<Id<Box>> made;
    for (const ListedBox& listed : list.boxes) {
        // The excluder was set with the list as a whole.
        const BoxSpot spot{BoxPlace::OnHive, stand, level, {}, false};
        const auto placed = addBoxTo(file, listed, spot, add.on);
        if (!placed) return Refusal{placed.error().code, "boxes", placed.error().values};
        made.push_back(*placed);
        level += Count(1);
    }
    if (add.origin) {
        std::optional<Id<Colony>> motherColony;
        if (add.mother)
            if (const auto living = colonyIn(file, *add.mother)) motherColony = living->id;
        file.add(Colony{{},
                        stand,
                        add.on,
                        *add.origin,
                        motherColony,
                        std::nullopt,
                        std::nullopt,
                        {},
                        std::nullopt});
    }
    // Once bees and boxes are there: they are held together.
    for (std::size_t n = 0; n < made.size(); ++n)
        quarantineCounted(file, made[n], list.boxes[n].contents, add.on);
    return stand;
}

}  // namespace

const Fields& NameSeason::fields() {
    static const Fields all =
        describe(field<&NameSeason::on>("on"), field<&NameSeason::season>("season"),
                 field<&NameSeason::invented>("invented"));
    return all;
}

Result<Id<SeasonInfo>> NameSeason::perform(Write& file) const {
    auto present = file.all<SeasonInfo>();
    if (present.empty()) return file.add(SeasonInfo{{}, season, invented});
    present.front().name = season;
    if (invented) present.front().invented = invented;
    file.change(present.front());
    return present.front().id;
}

const Fields& AddYard::fields() {
    static const Fields all = describe(
        field<&AddYard::on>("on"), field<&AddYard::yard>("yard_name"),
        field<&AddYard::walkOrder>("walk_order"), field<&AddYard::place>("place"),
        field<&AddYard::registration>("registration"), field<&AddYard::extractBy>("extract_by"),
        field<&AddYard::winterNeed>("winter_need"), field<&AddYard::usualSuper>("usual_super"));
    return all;
}

Result<Id<Yard>> AddYard::perform(Write& file) const {
    Count last;
    for (const Yard& each : file.where<Yard>({isUnknown("closed")})) {
        if (each.name == yard) return Refusal{Code::Taken, "yard_name", {{"name", yard.text()}}};
        last = std::max(last, each.walkOrder);
    }
    return file.add(Yard{{},
                         yard,
                         walkOrder.value_or(last + Count(1)),
                         place,
                         registration,
                         extractBy,
                         winterNeed,
                         usualSuper,
                         on,
                         std::nullopt});
}

const Fields& AddHive::fields() {
    static const Fields all = describe(
        field<&AddHive::on>("on"), field<&AddHive::yard>("yard"), field<&AddHive::hive>("mark"),
        field<&AddHive::standOrder>("stand_order"), field<&AddHive::boxes>("boxes"),
        field<&AddHive::origin>("origin"), field<&AddHive::mother>("mother"),
        known<&AddHive::tare>("tare"), field<&AddHive::note>("note"));
    return all;
}

Result<Id<Hive>> AddHive::perform(Write& file) const {
    const auto list = parseBoxList(file, boxes);
    if (!list) return list.error();
    return setUpStand(file, *this, *list);
}

const Fields& AddHives::fields() {
    static const Fields all =
        describe(field<&AddHives::on>("on"), field<&AddHives::yard>("yard"),
                 field<&AddHives::marks>("marks"), field<&AddHives::boxes>("boxes"),
                 field<&AddHives::origin>("origin"), known<&AddHives::tare>("tare"),
                 field<&AddHives::note>("note"));
    return all;
}

Result<std::vector<Id<Hive>>> AddHives::perform(Write& file) const {
    const auto listed = marksListed(marks, "marks");
    if (!listed) return listed.error();
    if (listed->empty()) return Refusal{Code::Missing, "marks", {}};
    if (listed->size() > mostHivesAtOnce)
        return Refusal{Code::OutOfRange, "marks", {{"low", "1"}, {"high", "100"}}};
    const auto build = parseBoxList(file, boxes);
    if (!build) return build.error();
    std::vector<Id<Hive>> made;
    for (const std::string& mark : *listed) {
        const auto called = Name::of(mark);
        if (!called)
            return Refusal{Code::WrongType, "marks", {{"wanted", "marks"}, {"value", mark}}};
        AddHive add;
        add.on = on;
        add.yard = yard;
        add.hive = *called;
        add.origin = origin;
        add.tare = tare;
        add.note = note;
        auto own = countedUp(*build, static_cast<std::int64_t>(made.size()));
        if (!own) return own.error();
        auto stand = setUpStand(file, add, *own);
        if (!stand) {
            Refusal refusal = stand.error();
            if (refusal.field == "mark") refusal.field = "marks";
            return refusal;
        }
        made.push_back(*stand);
    }
    return made;
}

const Fields& CloseHive::fields() {
    static const Fields all =
        describe(field<&CloseHive::on>("on"), field<&CloseHive::hive>("hive"),
                 field<&CloseHive::ending>("ending"), field<&CloseHive::boxesTo>("boxes_to"),
                 field<&CloseHive::onto>("onto"), field<&CloseHive::stack>("stack"),
                 field<&CloseHive::reason>("reason"));
    return all;
}

Result<Id<Hive>> CloseHive::perform(Write& file) const {
    auto stand = file.find(hive);
    if (!stand) return Refusal{Code::NotFound, "hive", {}};
    if (stand->closed) return Refusal{Code::Closed, "hive", {{"name", stand->mark.text()}}};
    if (on < stand->since)
        return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(stand->since)}}};
    // Bees that go on living elsewhere carry it there; a loss or a colony destroyed goes nowhere.
    if (ending == Ending::United || ending == Ending::Sold)
        if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    const auto standing = boxesOn(file, hive);
    if (boxesTo) {
        auto cleared = clearAway(file, hive, *boxesTo, onto, stack, reason, on);
        if (!cleared) return cleared.error();
    } else if (!standing.empty())
        return Refusal{Code::NotClosed,
                       "hive",
                       {{"name", stand->mark.text()}, {"boxes", std::to_string(standing.size())}}};
    if (const auto living = colonyIn(file, hive)) {
        if (auto may = demandMayEnd(file, *living, on); !may) return may.error();
        endColony(file, *living, on, ending, {});
    }
    for (Hive& each : openHives(file, stand->yard)) {
        if (each.standOrder <= stand->standOrder) continue;
        each.standOrder -= Count(1);
        file.change(each);
    }
    stand->closed = on;
    file.change(*stand);
    return hive;
}

const Fields& MoveHive::fields() {
    static const Fields all =
        describe(field<&MoveHive::on>("on"), field<&MoveHive::hive>("hive"),
                 field<&MoveHive::yard>("yard"), field<&MoveHive::standOrder>("stand_order"));
    return all;
}

Result<Id<Hive>> MoveHive::perform(Write& file) const {
    auto stand = file.find(hive);
    if (!stand) return Refusal{Code::NotFound, "hive", {}};
    if (stand->closed) return Refusal{Code::Closed, "hive", {{"name", stand->mark.text()}}};
    if (on < stand->since)
        return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(stand->since)}}};
    const Id<Yard> to = yard.value_or(stand->yard);
    if (to != stand->yard)
        if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    for (Hive& each : openHives(file, stand->yard)) {
        if (each.standOrder <= stand->standOrder) continue;
        each.standOrder -= Count(1);
        file.change(each);
    }
    std::int64_t others = 0;
    for (const Hive& each : openHives(file, to)) {
        if (each.id == hive) continue;
        ++others;
        if (each.mark == stand->mark)
            return Refusal{Code::Taken, "hive", {{"name", each.mark.text()}}};
    }
    const Count order =
        std::clamp(standOrder.value_or(Count(others + 1)), Count(1), Count(others + 1));
    for (Hive& each : openHives(file, to)) {
        if (each.id == hive || each.standOrder < order) continue;
        each.standOrder += Count(1);
        file.change(each);
    }
    if (to != stand->yard) {
        if (auto after = demandAfterMoves(file, *stand, on); !after) return after.error();
        file.add(HiveMove{{}, hive, on, stand->yard, stand->mark, to, stand->mark});
    }
    stand->yard = to;
    stand->standOrder = order;
    file.change(*stand);
    return hive;
}

const Fields& RelabelHive::fields() {
    static const Fields all =
        describe(field<&RelabelHive::on>("on"), field<&RelabelHive::hive>("hive"),
                 field<&RelabelHive::mark>("mark"));
    return all;
}

Result<Id<Hive>> RelabelHive::perform(Write& file) const {
    auto stand = openStand(file, hive, on, "hive");
    if (!stand) return stand.error();
    if (stand->mark == mark) return Refusal{Code::NothingToDo, "mark", {{"name", mark.text()}}};
    for (const Hive& each : openHives(file, stand->yard))
        if (each.mark == mark) return Refusal{Code::Taken, "mark", {{"name", mark.text()}}};
    if (auto after = demandAfterMoves(file, *stand, on); !after) return after.error();
    file.add(HiveMove{{}, hive, on, stand->yard, stand->mark, stand->yard, mark});
    stand->mark = mark;
    file.change(*stand);
    return hive;
}

}  // namespace combwright
