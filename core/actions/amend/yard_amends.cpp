#include <algorithm>

#include "core/actions/amend/amend_rules.h"
#include "core/actions/amend/coming.h"
#include "core/actions/storeroom/dead_outs.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/actions/yard/colony_steps.h"
#include "core/actions/yard/sheet.h"
#include "core/actions/yard/tasks.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/shorthand.h"

namespace combwright {
namespace {

Result<void> settleYard(Write& file, const Yard& before, Yard& after) {
    if (after.name != before.name && !after.closed)
        for (const Yard& each : openYards(file))
            if (each.id != after.id && each.name == after.name)
                return Refusal{Code::Taken, "name", {{"name", after.name.text()}}};
    if (after.since > before.since)
        for (const Visit& visit : file.where<Visit>({is("yard", after.id)}))
            if (visit.on < after.since) return against("since", "visit " + isoText(visit.on));
    return {};
}

/// Boxes and colony that came with the hive came on the day it did.
Result<void> moveHiveComing(Write& file, const Hive& before, const Hive& after) {
    for (const BoxMove& move : file.where<BoxMove>({is("to_hive", after.id)})) {
        auto box = file.find(move.box);
        if (!move.fromPlace && move.on == before.since && box->since == before.since) {
            if (auto moved = moveComing(file, box->id, before.since, after.since, "since"); !moved)
                return moved;
            box->since = after.since;
            file.change(*box);
        } else if (move.on < after.since) {
            return against("since", "box_move " + isoText(move.on));
        }
    }
    for (const HiveMove& move : file.where<HiveMove>({is("hive", after.id)}))
        if (move.on < after.since) return against("since", "hive_move " + isoText(move.on));
    for (const ColonyStay& stay : colonyStaysIn(file, after.id)) {
        if (stay.to && *stay.to < after.since)
            return against("since", "colony " + isoText(*stay.to));
        // A colony that came from another stand came on a day of its own.
        const bool here = stay.from == stay.colony.since &&
                          colonyStaysOf(file, stay.colony).front().hive == after.id;
        if (stay.from >= after.since && (!here || stay.from != before.since)) continue;
        if (!here || stay.from != before.since)
            return against("since", "colony " + isoText(stay.from));
        Colony colony = stay.colony;
        colony.since = after.since;
        if (auto moved = moveQueenComing(file, colony.id, before.since, after.since, "since");
            !moved)
            return moved;
        file.change(colony);
    }
    return {};
}

/// The day a hive was closed is the day its colony ended there.
Result<void> moveHiveClosing(Write& file, const Hive& before, const Hive& after) {
    if (!before.closed) return Refusal{Code::OtherAction, "closed", {{"action", "close-hive"}}};
    if (!after.closed) return Refusal{Code::Fixed, "closed", {}};
    for (const DatedInspection& each : inspectionsOf(file, after.id))
        if (each.on >= *after.closed) return against("closed", "visit " + isoText(each.on));
    for (const char* way : {"to_hive", "from_hive"})
        for (const BoxMove& move : file.where<BoxMove>({is(way, after.id)}))
            if (move.on > *after.closed) return against("closed", "box_move " + isoText(move.on));
    for (const HiveMove& move : file.where<HiveMove>({is("hive", after.id)}))
        if (move.on > *after.closed) return against("closed", "hive_move " + isoText(move.on));
    for (const ColonyStay& stay : colonyStaysIn(file, after.id))
        if (stay.hive != stay.colony.hive && stay.to && *stay.to > *after.closed)
            return against("closed", "colony_move " + isoText(*stay.to));
    for (Colony& colony : file.where<Colony>({is("hive", after.id)})) {
        if (colony.ended != before.closed) continue;
        const Colony was = colony;
        colony.ended = after.closed;
        if (auto may = demandQueensWithin(file, colony, "closed"); !may) return may;
        file.change(colony);
        followEnding(file, was, colony);
        followEndingOfQueen(file, was, colony);
    }
    return {};
}

/// A mark that was misread was misread in its moves too, back to where it was painted on.
void amendMarkOfMoves(Write& file, const Hive& before, const Hive& after) {
    auto moves = file.where<HiveMove>({is("hive", after.id)});
    for (auto move = moves.rbegin(); move != moves.rend(); ++move) {
        if (move->toMark != before.mark) break;
        const bool painted = move->fromMark != move->toMark;
        move->toMark = after.mark;
        if (!painted) move->fromMark = after.mark;
        file.change(*move);
        if (painted) break;
    }
}

Result<void> settleHive(Write& file, const Hive& before, Hive& after) {
    if (after.mark != before.mark) amendMarkOfMoves(file, before, after);
    if (after.mark != before.mark && !after.closed)
        for (const Hive& each : openHives(file, after.yard))
            if (each.id != after.id && each.mark == after.mark)
                return Refusal{Code::Taken, "mark", {{"name", after.mark.text()}}};
    if (after.excluderAbove != before.excluderAbove && after.excluderAbove) {
        const Count most(static_cast<std::int64_t>(boxesOn(file, after.id).size()));
        if (*after.excluderAbove > most)
            return Refusal{
                Code::TooMany, "excluder_above", {{"most", std::to_string(most.value())}}};
    }
    if (after.closed && *after.closed < after.since)
        return after.since == before.since ? against("closed", "since")
                                           : against("since", "closed");
    if (after.since != before.since) {
        for (const DatedInspection& each : inspectionsOf(file, after.id))
            if (each.on < after.since) return against("since", "visit " + isoText(each.on));
        if (auto moved = moveHiveComing(file, before, after); !moved) return moved;
    }
    if (after.closed != before.closed) return moveHiveClosing(file, before, after);
    return {};
}

/// Whether one colony is a daughter, or a daughter's daughter, of the other.
bool descends(const Read& file, Id<Colony> from, Id<Colony> mother) {
    std::optional<Id<Colony>> each = from;
    while (each) {
        if (*each == mother) return true;
        const auto colony = file.find(*each);
        each = colony ? colony->mother : std::nullopt;
    }
    return false;
}

/// Bees under suspicion are not written off to somebody else by the back door.
Result<void> demandMayLeave(const Read& file, const Colony& before, const Colony& after) {
    const bool leaves = after.ending == Ending::United || after.ending == Ending::Sold;
    if (!leaves || !after.ended) return {};
    if (after.ending != before.ending) {
        for (const Hold& hold : file.where<Hold>({is("colony", after.id)}))
            if (quarantines(hold) && (!hold.lifted || standsOn(hold, *after.ended)))
                return heldBack("ending", nameOf(file, Hive::table, after.hive.number), hold);
        if (auto free = demandHiveFree(file, after.hive, *after.ended, "ending"); !free)
            return free;
    }
    if (after.unitedInto && after.unitedInto != before.unitedInto)
        if (const auto host = file.find(*after.unitedInto))
            return demandHiveFree(file, host->hive, *after.ended, "united_into");
    return {};
}

Result<void> settleColony(Write& file, const Colony& before, Colony& after) {
    if (after.mother != before.mother && after.mother && descends(file, *after.mother, after.id))
        return against("mother", "id");
    if (after.ended && *after.ended < after.since)
        return after.ended == before.ended ? against("since", "ended") : against("ended", "since");
    if (after.ending && !after.ended)
        return after.ending == before.ending ? against("ended", "ending")
                                             : against("ending", "ended");
    const char* field = after.ended == before.ended ? "since" : "ended";
    const auto hive = file.find(after.hive);
    if (hive && hive->closed && (!after.ended || *after.ended > *hive->closed))
        return Refusal{Code::Closed, field, {{"name", hive->mark.text()}}};
    for (const ColonyMove& move : file.where<ColonyMove>({is("colony", after.id)}))
        if (move.on < after.since || (after.ended && move.on > *after.ended))
            return against(field, "colony_move " + isoText(move.on));
    if (after.since != before.since)
        if (auto moved = moveQueenComing(file, after.id, before.since, after.since, field); !moved)
            return moved;
    if (auto within = demandQueensWithin(file, after, field); !within) return within;
    // One colony at a time lives in a hive.
    file.change(after);
    for (const ColonyStay& stay : colonyStaysOf(file, after)) {
        const auto stand = file.find(stay.hive);
        if (stand && stay.from < stand->since)
            return Refusal{Code::BeforeItBegan,
                           field,
                           {{"name", stand->mark.text()}, {"since", isoText(stand->since)}}};
        if (auto apart = demandColoniesApart(file, stay.hive, field); !apart) return apart;
    }
    file.change(before);
    if (auto may = demandMayLeave(file, before, after); !may) return may;
    followEnding(file, before, after);
    followEndingOfQueen(file, before, after);
    return {};
}

/// What hangs on a look goes with it to another day.
Result<void> moveInspection(Write& file, const Inspection& inspection, Day from, Day to) {
    const auto hive = file.find(inspection.hive);
    if (to < hive->since)
        return Refusal{Code::BeforeItBegan,
                       "on_day",
                       {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
    if (hive->closed && to >= *hive->closed)
        return Refusal{Code::Closed, "on_day", {{"name", hive->mark.text()}}};
    for (const DatedInspection& each : inspectionsOf(file, hive->id))
        if (each.on == to && each.inspection.id != inspection.id)
            return Refusal{Code::Taken, "on_day", {{"name", hive->mark.text()}}};
    for (Finding& finding : file.where<Finding>({is("inspection", inspection.id)})) {
        finding.on = to;
        file.change(finding);
    }
    for (Feeding& feeding : file.where<Feeding>({is("inspection", inspection.id)})) {
        feeding.on = to;
        file.change(feeding);
    }
    for (const BoxMove& move : file.where<BoxMove>({is("inspection", inspection.id)})) {
        // One that went off as its hive was closed did so on that day.
        if (move.on != from) continue;
        auto box = file.find(move.box);
        if (!move.fromPlace) {
            if (auto moved = moveComing(file, box->id, from, to, "on_day"); !moved) return moved;
            box->since = to;
            file.change(*box);
            continue;
        }
        // Its moves keep their order.
        for (const BoxMove& each : file.where<BoxMove>({is("box", box->id)})) {
            if (each.inspection == inspection.id) continue;
            if (each.id.number < move.id.number ? each.on > to : each.on < to)
                return against("on_day", "box_move " + isoText(each.on));
        }
        BoxMove moved = move;
        moved.on = to;
        file.change(moved);
    }
    return {};
}

Result<void> settleVisit(Write& file, const Visit& before, Visit& after) {
    if (after.begun && after.ended && *after.ended < *after.begun)
        return after.ended == before.ended ? against("begun", "ended") : against("ended", "begun");
    if (after.on == before.on) return {};
    if (visitOn(file, after.yard, after.on))
        return Refusal{Code::Taken, "on_day", {{"name", isoText(after.on)}}};
    for (const Inspection& each : file.where<Inspection>({is("visit", after.id)}))
        if (auto moved = moveInspection(file, each, before.on, after.on); !moved) return moved;
    return {};
}

/// What was done at the hive besides looking.
SheetLine deedsOf(SheetLine line) {
    line.seen = {};
    line.lookSaid = false;
    return line;
}

/// Leaves out of a look what the line for all says anyway.
Seen withoutWhatAllSays(Seen seen, const Seen& all) {
    const bool sameCells = seen.queenCells == all.queenCells && seen.cellState == all.cellState;
    const Seen blank;
    for (const FieldInfo& field : Seen::fields()) {
        const bool single = field.part == ReadingPart::Whole && field.name != "looked" &&
                            field.name != "note" && field.name != "cell_state";
        if (single && field.valueIn(&seen) == field.valueIn(&all))
            field.setIn(&seen, field.valueIn(&blank));
    }
    if (seen.brood == all.brood) seen.brood.reset();
    if (seen.stores == all.stores) seen.stores.reset();
    if (seen.seams == all.seams) seen.seams.reset();
    if (seen.cellsLeft == all.cellsLeft) seen.cellsLeft.reset();
    if (sameCells) seen.queenCells.reset();
    if (sameCells) seen.cellState.reset();
    if (!all.note.empty() && seen.note == all.note)
        seen.note.clear();
    else if (!all.note.empty() && seen.note.starts_with(all.note + " "))
        seen.note.erase(0, all.note.size() + 1);
    return seen;
}

/// Blanks as the sheet keeps them: one between two words.
std::string singleSpaced(const std::string& text) {
    std::string single;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\t';
        if (blank && (single.empty() || single.back() == ' ')) continue;
        single += blank ? ' ' : c;
    }
    if (single.ends_with(' ')) single.pop_back();
    return single;
}

/// The sheet's line is read again whenever the line for all changes; so the stored line must say
/// what the amended look says, as far as the shorthand has marks for it.
Result<void> settleInspection(Write& file, const Inspection& before, Inspection& after) {
    if (auto ok = demandSeen(after.seen); !ok) return ok;
    after.seen.note = singleSpaced(after.seen.note);
    const auto visit = file.find(after.visit);
    const SheetLine typed = readShorthand(visit->all, before.line);
    SheetLine own = deedsOf(readShorthand(before.line));
    const bool opened = after.seen.looked == Looked::Opened;
    const SheetLine all = opened ? readShorthand(visit->all) : SheetLine{};
    own.seen = withoutWhatAllSays(after.seen, all.seen);
    own.lookSaid = !opened;
    after.line = writeShorthand(own);
    const SheetLine again = readShorthand(visit->all, after.line);
    // Taking the lid off, or leaving it on, takes back what else was done: that is a new line.
    if (deedsOf(again) != deedsOf(typed) ||
        (!opened && before.seen.looked == Looked::Opened && deedsOf(typed) != SheetLine{}))
        return Refusal{Code::OtherAction, "looked", {{"action", "write-line"}}};
    Seen wanted = after.seen;
    // For these there is no mark; the record keeps them, the line is silent.
    if (wanted.heft == Heft::AllRight && !again.seen.heft) wanted.heft.reset();
    if (wanted.comeBack == false && !again.seen.comeBack) wanted.comeBack.reset();
    for (const FieldInfo& field : Seen::fields())
        if (field.valueIn(&again.seen) != field.valueIn(&wanted))
            return against(field.key(), visit->all.empty() ? "line" : "all_line");
    return {};
}

Result<void> settleTask(Write& file, const Task&, Task& after) { return demandTask(file, after); }

Result<void> settleQuiet(Write& file, const Quiet&, Quiet& after) {
    return demandQuiet(file, after);
}

}  // namespace

std::vector<AmendType> yardAmends() {
    return {
        amends<Yard>({{"closed", ""}}, &settleYard),
        amends<Hive>({{"yard", "move-hive"}, {"stand_order", "move-hive"}}, &settleHive),
        amends<Colony>({{"hive", ""}}, &settleColony),
        amends<Visit>({{"yard", ""}, {"all_line", "record-visit"}}, &settleVisit),
        amends<Inspection>({{"visit", ""}, {"hive", ""}, {"line", "write-line"}},
                           &settleInspection),
        amends<Task>({}, &settleTask),
        amends<Quiet>({{"rule", ""}}, &settleQuiet),
    };
}

}  // namespace combwright
