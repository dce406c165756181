#include "core/actions/yard/colonies.h"

#include "core/actions/storeroom/quarantine.h"
#include "core/actions/yard/colony_steps.h"
#include "core/storage/queries/yards.h"

namespace combwright {

const Fields& EndColony::fields() {
    static const Fields all =
        describe(field<&EndColony::on>("on"), field<&EndColony::hive>("hive"),
                 field<&EndColony::ending>("ending"), field<&EndColony::into>("into"),
                 field<&EndColony::note>("note"));
    return all;
}

Result<Id<Colony>> EndColony::perform(Write& file) const {
    auto living = livingColony(file, hive, on, "hive");
    if (!living) return living.error();
    Colony colony = living->colony;
    if (auto may = demandMayEnd(file, colony, on); !may) return may.error();
    if (ending == Ending::United || ending == Ending::Sold)
        if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    if (into) {
        if (ending != Ending::United)
            return Refusal{Code::Contradiction, "into", {{"other", "ending"}}};
        if (*into == hive) return Refusal{Code::Contradiction, "into", {{"other", "hive"}}};
        const auto host = livingColony(file, *into, on, "into");
        if (!host) return host.error();
        if (auto free = demandHiveFree(file, *into, on, "into"); !free) return free.error();
        colony.unitedInto = host->colony.id;
    }
    endColony(file, colony, on, ending, note);
    return colony.id;
}

const Fields& StartColony::fields() {
    static const Fields all =
        describe(field<&StartColony::on>("on"), field<&StartColony::hive>("hive"),
                 field<&StartColony::origin>("origin"), field<&StartColony::mother>("mother"),
                 field<&StartColony::note>("note"), field<&StartColony::reason>("reason"));
    return all;
}

Result<Id<Colony>> StartColony::perform(Write& file) const {
    const auto stand = openStand(file, hive, on, "hive");
    if (!stand) return stand.error();
    if (auto empty = demandEmptyHive(file, *stand, on, "hive"); !empty) return empty.error();
    std::optional<Id<Colony>> motherColony;
    if (mother)
        if (auto free = demandHiveFree(file, *mother, on, "mother"); !free) return free.error();
    if (mother)
        if (const auto from = colonyIn(file, *mother)) motherColony = from->id;
    // Bees on held comb carry on what killed the last ones.
    if (auto livable = demandLivable(file, hive, on, reason, "hive"); !livable)
        return livable.error();
    noteLivedIn(file, hive, reason, on);
    Colony colony;
    colony.note = note;
    if (const auto held = demandLivable(file, hive, on, {}, "hive"); !held)
        addOverruled(colony.note, on, held.error().value("why"), reason);
    colony.hive = hive;
    colony.since = on;
    colony.origin = origin;
    colony.mother = motherColony;
    return file.add(colony);
}

const Fields& SetExcluder::fields() {
    static const Fields all =
        describe(field<&SetExcluder::on>("on"), field<&SetExcluder::hive>("hive"),
                 field<&SetExcluder::boxesUnder>("boxes_under"));
    return all;
}

Result<Id<Hive>> SetExcluder::perform(Write& file) const {
    auto stand = openStand(file, hive, on, "hive");
    if (!stand) return stand.error();
    if (stand->excluderAbove == boxesUnder)
        return Refusal{Code::NothingToDo, "boxes_under", {{"name", stand->mark.text()}}};
    const auto standing = static_cast<std::int64_t>(boxesOn(file, hive).size());
    if (boxesUnder && *boxesUnder > Count(standing))
        return Refusal{Code::TooMany, "boxes_under", {{"most", std::to_string(standing)}}};
    stand->excluderAbove = boxesUnder;
    file.change(*stand);
    return hive;
}

}  // namespace combwright
