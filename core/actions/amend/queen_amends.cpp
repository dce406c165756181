#include <algorithm>

#include "core/actions/amend/amend_rules.h"
#include "core/actions/yard/colony_steps.h"
#include "core/actions/yard/queens.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"

namespace combwright {
namespace {

/// A hive's moves keep their order, and lie within its life.
Result<void> settleHiveMove(Write& file, const HiveMove& before, HiveMove& after) {
    if (after.on == before.on) return {};
    const auto hive = file.find(after.hive);
    if (after.on < hive->since)
        return Refusal{Code::BeforeItBegan,
                       "on_day",
                       {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
    if (hive->closed && after.on > *hive->closed)
        return Refusal{Code::Closed, "on_day", {{"name", hive->mark.text()}}};
    for (const HiveMove& each : file.where<HiveMove>({is("hive", after.hive)}))
        if ((each.id < after.id && each.on > after.on) ||
            (each.id > after.id && each.on < after.on))
            return against("on_day", "hive_move " + isoText(each.on));
    return {};
}

Result<void> settleColonyMove(Write& file, const ColonyMove& before, ColonyMove& after) {
    if (after.on == before.on) return {};
    const auto colony = file.find(after.colony);
    if (after.on < colony->since) return against("on_day", "colony " + isoText(colony->since));
    if (colony->ended && after.on > *colony->ended)
        return against("on_day", "colony " + isoText(*colony->ended));
    for (const ColonyMove& each : file.where<ColonyMove>({is("colony", after.colony)}))
        if ((each.id < after.id && each.on > after.on) ||
            (each.id > after.id && each.on < after.on))
            return against("on_day", "colony_move " + isoText(each.on));
    file.change(after);
    for (const Id<Hive> id : {after.fromHive, after.toHive}) {
        const auto hive = file.find(id);
        if (hive && after.on < hive->since)
            return Refusal{Code::BeforeItBegan,
                           "on_day",
                           {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
        if (hive && hive->closed && after.on > *hive->closed)
            return Refusal{Code::Closed, "on_day", {{"name", hive->mark.text()}}};
        if (auto apart = demandColoniesApart(file, id, "on_day"); !apart) return apart;
    }
    return {};
}

Result<void> settleQueen(Write& file, const Queen&, Queen& after) {
    if (after.mother) {
        if (*after.mother == after.id) return against("mother", "id");
        const auto mother = file.find(*after.mother);
        for (const Queen& each : mothersOf(file, *mother))
            if (each.id == after.id) return against("mother", "id");
        if (mother->reared && after.reared && *mother->reared > *after.reared)
            return against("mother", "reared");
    }
    for (const Queen& daughter : daughtersOf(file, after.id))
        if (daughter.reared && after.reared && *after.reared > *daughter.reared)
            return against("reared", "mother");
    const auto stays = staysOfQueen(file, after.id);
    if (!stays.empty())
        if (auto may = demandRearedBy(after.reared, stays.front().since); !may) return may;
    return {};
}

/// Two stays that would hold at once.
bool atOnce(const QueenStay& a, const QueenStay& b) {
    return !(a.until && *a.until <= b.since) && !(b.until && *b.until <= a.since);
}

Result<void> settleQueenStay(Write& file, const QueenStay& before, QueenStay& after) {
    const char* field = after.until == before.until ? "since" : "until";
    if (after.until && *after.until < after.since)
        return after.until == before.until ? against("since", "until") : against("until", "since");
    if (after.left && !after.until) return against("left_how", "until");
    const auto colony = file.find(after.colony);
    if (after.since < colony->since) return against("since", "colony " + isoText(colony->since));
    if (colony->ended && (!after.until || *after.until > *colony->ended))
        return against(field, "colony " + isoText(*colony->ended));
    for (const QueenStay& each : file.where<QueenStay>({is("colony", after.colony)}))
        if (each.id != after.id && atOnce(each, after))
            return against(field, "queen_stay " + isoText(each.since));
    for (const QueenStay& each : file.where<QueenStay>({is("queen", after.queen)}))
        if (each.id != after.id && atOnce(each, after))
            return against(field, "queen_stay " + isoText(each.since));
    return {};
}

Result<void> settleQueenWait(Write& file, const QueenWait& before, QueenWait& after) {
    if (after.notSeenOn && *after.notSeenOn > after.on)
        return after.notSeenOn == before.notSeenOn ? against("on_day", "not_seen_on")
                                                   : against("not_seen_on", "on_day");
    if (after.over && *after.over < after.on)
        return after.over == before.over ? against("on_day", "over_day")
                                         : against("over_day", "on_day");
    const auto colony = file.find(after.colony);
    if (!colony) return {};
    if (after.on < colony->since) return against("on_day", "colony " + isoText(colony->since));
    if (colony->ended && (!after.over || *after.over > *colony->ended))
        return against(after.over == before.over ? "on_day" : "over_day",
                       "colony " + isoText(*colony->ended));
    if (after.over || !before.over) return {};
    for (const QueenWait& each : file.where<QueenWait>({is("colony", colony->id)}))
        if (each.id != after.id && !each.over)
            return against("over_day", "queen_wait " + isoText(each.on));
    return {};
}

Result<void> settleQueenColour(Write& file, const QueenColour& before, QueenColour& after) {
    if (after.digit.value() > 9)
        return Refusal{Code::OutOfRange, "digit", {{"low", "0"}, {"high", "9"}}};
    for (const QueenColour& each : file.where<QueenColour>({is("digit", after.digit)}))
        if (each.id != after.id && each.since == after.since)
            return Refusal{Code::Taken,
                           after.digit == before.digit ? "since" : "digit",
                           {{"name", each.colour.text()}}};
    return {};
}

}  // namespace

Result<void> moveQueenComing(Write& file, Id<Colony> colony, Day before, Day after,
                             const std::string& field) {
    for (QueenStay& stay : file.where<QueenStay>({is("colony", colony)})) {
        if (stay.until && *stay.until < after)
            return against(field, "queen_stay " + isoText(*stay.until));
        if (stay.since == before)
            stay.since = after;
        else if (stay.since < after)
            return against(field, "queen_stay " + isoText(stay.since));
        else
            continue;
        if (stay.until && *stay.until == before) stay.until = after;
        file.change(stay);
    }
    for (QueenWait& wait : file.where<QueenWait>({is("colony", colony)})) {
        if (wait.on == before && wait.on < after)
            return against(field, "queen_wait " + isoText(wait.on));
        if (wait.on < after) return against(field, "queen_wait " + isoText(wait.on));
    }
    return {};
}

Result<void> demandQueensWithin(const Read& file, const Colony& colony, const std::string& field) {
    if (!colony.ended) return {};
    for (const QueenStay& stay : file.where<QueenStay>({is("colony", colony.id)})) {
        if (stay.since > *colony.ended) return against(field, "queen_stay " + isoText(stay.since));
        if (stay.until && *stay.until > *colony.ended && stay.left != QueenLeft::WithColony)
            return against(field, "queen_stay " + isoText(*stay.until));
    }
    for (const QueenWait& wait : file.where<QueenWait>({is("colony", colony.id)}))
        if (wait.on > *colony.ended) return against(field, "queen_wait " + isoText(wait.on));
    return {};
}

std::vector<AmendType> queenAmends() {
    return {
        amends<HiveMove>({{"hive", ""},
                          {"from_yard", ""},
                          {"from_mark", ""},
                          {"to_yard", "move-hive"},
                          {"to_mark", "relabel-hive"}},
                         &settleHiveMove),
        amends<ColonyMove>({{"colony", ""}, {"from_hive", ""}, {"to_hive", "move-colony"}},
                           &settleColonyMove),
        amends<Queen>({}, &settleQueen),
        amends<QueenStay>({{"queen", ""}, {"colony", ""}}, &settleQueenStay),
        amends<QueenWait>({{"hive", ""}, {"colony", ""}}, &settleQueenWait),
        amends<QueenColour>({}, &settleQueenColour),
    };
}

}  // namespace combwright
