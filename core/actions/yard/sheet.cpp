#include "core/actions/yard/sheet.h"

#include <algorithm>
#include <map>

#include "core/actions/boxes/box_list.h"
#include "core/actions/boxes/box_steps.h"
#include "core/actions/boxes/late_moves.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/model/yard/weighing.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/all_line.h"
#include "core/words/shorthand.h"

namespace combwright {
namespace {

/// A hive that was looked into on that day and then moved to another yard keeps its line where it
/// was typed.
Id<Yard> yardOn(const Read& file, const Hive& hive, Day on) {
    // By the day, not by the hive: a day has a visit or two, a hive has years of lines.
    for (const Visit& visit : file.where<Visit>({is("on_day", on)}))
        if (inspectionOf(file, visit.id, hive.id)) return visit.yard;
    return asItWas(file, hive, on).yard;
}

Visit visitFor(Write& file, Id<Yard> yard, Day on) {
    if (auto present = visitOn(file, yard, on)) return *present;
    Visit visit;
    visit.yard = yard;
    visit.on = on;
    file.add(visit);
    return visit;
}

/// Takes back what an earlier writing of the line did, newest first.
Result<void> takeBackDeeds(Write& file, const Inspection& inspection, Day on) {
    for (const Finding& finding : file.where<Finding>({is("inspection", inspection.id)}))
        file.remove(finding.id);
    for (const Feeding& feeding : file.where<Feeding>({is("inspection", inspection.id)}))
        file.remove(feeding.id);
    for (const HiveWeighing& weighing : file.where<HiveWeighing>({is("inspection", inspection.id)}))
        file.remove(weighing.id);
    auto moves = file.where<BoxMove>({is("inspection", inspection.id)});
    std::reverse(moves.begin(), moves.end());
    std::map<std::int64_t, std::vector<BoxMove>> before;
    for (const BoxMove& move : moves)
        for (const auto& at : {move.fromHive, move.toHive})
            if (at) before.emplace(at->number, lateMovesAt(file, *at, on));
    for (const BoxMove& move : moves) {
        const auto box = file.find(move.box);
        if (!box) continue;
        // A box that left and came back stands there by a later move, which must keep its sense.
        const bool stillThere = file.where<BoxMove>({is("box", box->id)}).back().id == move.id;
        if (!stillThere)
            return Refusal{Code::MovedOn, "hive", {{"box", box->mark}, {"name", box->mark}}};
        if (!move.fromPlace) {
            // The line had brought the box into the world; without the line it was never there.
            if (auto forgotten = forgetBox(file, box->id); !forgotten) return forgotten.error();
            continue;
        }
        file.remove(move.id);
        const BoxSpot back{*move.fromPlace, move.fromHive, move.fromLevel, move.fromStack,
                           move.fromUnder};
        if (auto moved = putBoxBack(file, box->id, back, on); !moved) return moved.error();
        // Going back is no move of its own.
        file.remove(file.where<BoxMove>({is("box", box->id)}).back().id);
    }
    for (const auto& [at, was] : before)
        if (anyAfter(was, on)) followLate(file, Id<Hive>{at}, was, on);
    return {};
}

/// The kind "+1" puts on: the yard's usual super, else what already stands as a super in the yard.
std::optional<Id<BoxKind>> usualSuper(const Read& file, const Yard& yard) {
    if (yard.usualSuper) return yard.usualSuper;
    for (const Hive& hive : openHives(file, yard.id)) {
        const auto supers = supersOn(hive, boxesOn(file, hive.id));
        if (!supers.empty()) return supers.back().kind;
    }
    return std::nullopt;
}

/// What is held that day or now.
class HeldThenOrNow {
  public:
    HeldThenOrNow(const Read& file, Day on) : m_file(file), m_on(on) {}
    std::optional<Hold> of(const Box& box) {
        if (!m_read) {
            for (const Day day : {m_on, lastOfAllDays}) m_held.push_back(heldThings(m_file, day));
            m_read = true;
        }
        for (const HeldThings& held : m_held)
            if (const auto holds = held.of(box.id); !holds.empty()) return holds.front();
        return std::nullopt;
    }

  private:
    const Read& m_file;
    Day m_on;
    bool m_read = false;
    std::vector<HeldThings> m_held;
};

Result<void> putOn(Write& file, Id<BoxKind> kind, Count boxes, const Hive& hive, Day on,
                   Id<Inspection> inspection) {
    const BoxSpot top{BoxPlace::OnHive, hive.id, std::nullopt, {}, {}};
    const auto ready = boxesReady(file, kind);
    HeldThenOrNow holds(file, on);
    std::vector<Box> held;
    const auto isFree = [&](const Box& box) {
        // One that was moved since stood elsewhere on some day from then on.
        if (on < box.since || !demandNotMovedSince(file, box, on, "line")) return false;
        // Nobody named a box: one that holds held combs is left standing.
        if (!demandMayMove(file, box, top, on)) return false;
        // So is one that is held for another reason, while others are there.
        if (!holds.of(box)) return true;
        held.push_back(box);
        return false;
    };
    auto next = ready.begin();
    for (std::int64_t n = 0; n < boxes.value(); ++n) {
        next = std::find_if(next, ready.end(), isFree);
        if (next != ready.end()) {
            if (auto moved = moveBoxTo(file, (next++)->id, top, on, inspection); !moved)
                return moved;
            continue;
        }
        if (!held.empty()) {
            Refusal refusal = heldBack("line", nameOf(file, Box::table, held.front().id.number),
                                       *holds.of(held.front()));
            refusal.values.emplace_back("left", std::to_string(held.size()));
            return refusal;
        }
        // None is written down as being in the storeroom, yet it was put on: it is a box we had not
        // known of, without a mark.
        auto made = addBoxTo(file, ListedBox{kind, {}, {}}, top, on);
        if (!made) return made.error();
        for (BoxMove& move : file.where<BoxMove>({is("box", *made)})) {
            move.inspection = inspection;
            file.change(move);
        }
    }
    return {};
}

enum class From { Supers, Anywhere };

Result<void> takeOff(Write& file, std::optional<Id<BoxKind>> kind, Count boxes, const Hive& hive,
                     Day on, Id<Inspection> inspection, From from) {
    for (std::int64_t n = 0; n < boxes.value(); ++n) {
        // Read anew: the excluder follows a box of the nest that this line took off.
        Hive then = *file.find(hive.id);
        Standing stood = standingOn(file, then, on);
        then.excluderAbove = stood.excluderAbove;
        if (from == From::Supers) stood.boxes = supersOn(then, stood.boxes);
        std::erase_if(stood.boxes, [&](const Box& box) { return kind && box.kind != *kind; });
        if (stood.boxes.empty())
            return Refusal{Code::TooMany,
                           "line",
                           {{"name", hive.mark.text()},
                            {"off_of", hive.mark.text()},
                            {"most", std::to_string(n)}}};
        // One that was moved since went off on another day; written down is which, not why.
        const auto found = std::find_if(
            stood.boxes.rbegin(), stood.boxes.rend(),
            [&](const Box& box) { return demandNotMovedSince(file, box, on, "line").has_value(); });
        if (found == stood.boxes.rend())
            return demandNotMovedSince(file, stood.boxes.back(), on, "line").error();
        if (auto moved = moveBoxTo(file, found->id, BoxSpot{}, on, inspection); !moved)
            return moved;
    }
    return {};
}

/// What a line says of mites and other pests, each a finding of its own.
void noteFindings(Write& file, const SheetLine& line, const Hive& hive, const Visit& visit,
                  Id<Inspection> inspection) {
    Finding blank;
    blank.hive = hive.id;
    blank.inspection = inspection;
    blank.on = visit.on;
    if (line.mites || line.bees) {
        Finding sample = blank;
        sample.what = Pest::Varroa;
        sample.method = line.sampledBy.value_or(FindingMethod::Wash);
        sample.mites = line.mites;
        sample.bees = line.bees;
        file.add(sample);
    }
    if (line.boardMites) {
        Finding board = blank;
        board.what = Pest::Varroa;
        board.method = FindingMethod::Board;
        board.mites = line.boardMites;
        board.daysOnBoard = line.boardDays;
        file.add(board);
    }
    if (line.droneMites) {
        Finding drones = blank;
        drones.what = Pest::Varroa;
        drones.method = FindingMethod::DroneBrood;
        drones.mites = line.droneMites;
        drones.cells = line.droneCells;
        file.add(drones);
    }
    const auto met = [&](Pest pest, const std::optional<Level>& level) {
        if (!level) return;
        Finding finding = blank;
        finding.what = pest;
        finding.level = level;
        file.add(finding);
    };
    met(Pest::SmallHiveBeetle, line.beetles);
    met(Pest::WaxMoth, line.moths);
    met(Pest::Chalkbrood, line.chalk);
}

Result<void> doDeeds(Write& file, const SheetLine& line, const Hive& hive, const Visit& visit,
                     Id<Inspection> inspection) {
    noteFindings(file, line, hive, visit, inspection);
    if (line.fed) {
        Feeding feeding;
        feeding.hive = hive.id;
        feeding.inspection = inspection;
        feeding.on = visit.on;
        feeding.given = line.fed;
        feeding.kind = line.fedAs;
        file.add(feeding);
    }
    if (line.left || line.right || line.whole) {
        HiveWeighing weighing;
        weighing.hive = hive.id;
        weighing.on = visit.on;
        weighing.left = line.left;
        weighing.right = line.right;
        weighing.whole = line.whole;
        weighing.inspection = inspection;
        file.add(weighing);
    }

    const auto yard = file.find(visit.yard);
    const auto super = usualSuper(file, *yard);
    if ((line.supersOn || line.supersOff) && !super)
        return Refusal{Code::Missing, "usual_super", {{"name", yard->name.text()}}};
    std::optional<Id<BoxKind>> deep;
    if (line.deepsOn || line.deepsOff) {
        const auto kind = boxKindNamed(file, "deep");
        if (!kind) return Refusal{Code::NotFound, "kind", {{"name", "deep"}}};
        deep = kind->id;
    }
    if (line.supersOff)
        if (auto done =
                takeOff(file, super, *line.supersOff, hive, visit.on, inspection, From::Supers);
            !done)
            return done;
    if (line.deepsOff)
        if (auto done =
                takeOff(file, deep, *line.deepsOff, hive, visit.on, inspection, From::Anywhere);
            !done)
            return done;
    if (line.deepsOn)
        if (auto done = putOn(file, *deep, *line.deepsOn, hive, visit.on, inspection); !done)
            return done;
    if (line.supersOn)
        if (auto done = putOn(file, *super, *line.supersOn, hive, visit.on, inspection); !done)
            return done;
    return {};
}

enum class SameLine { IsKept, IsDoneAnew };

Result<Id<Inspection>> keepLine(Write& file, const Hive& hive, const Visit& visit,
                                const SheetLine& line, const std::string& typed,
                                SameLine same = SameLine::IsKept) {
    Inspection inspection;
    if (auto present = inspectionOf(file, visit.id, hive.id)) {
        // The same words again change nothing, and a journal row for nothing helps nobody.
        if (same == SameLine::IsKept && present->line == typed && present->seen == line.seen)
            return present->id;
        if (auto back = takeBackDeeds(file, *present, visit.on); !back) return back.error();
        inspection = *std::move(present);
    }
    inspection.visit = visit.id;
    inspection.hive = hive.id;
    inspection.seen = line.seen;
    inspection.line = typed;
    if (inspection.id)
        file.change(inspection);
    else
        file.add(inspection);
    if (auto done = doDeeds(file, line, hive, visit, inspection.id); !done) return done.error();
    return inspection.id;
}

Result<Hive> standingHive(const Read& file, Id<Hive> id, Day on) {
    auto hive = file.find(id);
    if (!hive) return Refusal{Code::NotFound, "hive", {}};
    if (on < hive->since)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
    if (hive->closed && on >= *hive->closed)
        return Refusal{Code::Closed, "hive", {{"name", hive->mark.text()}}};
    return *std::move(hive);
}

/// What is typed must not say two things of one; which of them was meant nobody can tell.
Result<void> demandOneMeaning(std::string_view typed, const char* field) {
    const auto two = contradictionIn(typed);
    if (!two) return {};
    return Refusal{Code::Contradiction, field, {{"one", two->one}, {"two", two->two}}};
}

}  // namespace

Result<void> demandSeen(const Seen& seen) {
    if (seen.temper && (seen.temper->value() < 1 || seen.temper->value() > 5))
        return Refusal{Code::OutOfRange, "temper", {{"low", "1"}, {"high", "5"}}};
    return {};
}

const Fields& WriteLine::fields() {
    static const Fields all = describe(field<&WriteLine::on>("on"), field<&WriteLine::hive>("hive"),
                                       field<&WriteLine::line>("line"));
    return all;
}

Result<Id<Inspection>> WriteLine::perform(Write& file) const {
    const auto stand = standingHive(file, hive, on);
    if (!stand) return stand.error();
    if (auto ok = demandOneMeaning(line, "line"); !ok) return ok.error();
    const Visit visit = visitFor(file, yardOn(file, *stand, on), on);
    // Nothing said is no look; but a hive that got what all got may have nothing of its own, and a
    // line that was there may be emptied.
    if (visit.all.empty() && !inspectionOf(file, visit.id, stand->id) &&
        line.find_first_not_of(" \t") == std::string::npos)
        return Refusal{Code::Missing, "line", {}};
    return keepLine(file, *stand, visit, readShorthand(visit.all, line), line);
}

const Fields& LookInto::fields() {
    static const Fields all = describe(field<&LookInto::on>("on"), field<&LookInto::hive>("hive"),
                                       part<&LookInto::seen>());
    return all;
}

Result<Id<Inspection>> LookInto::perform(Write& file) const {
    const auto stand = standingHive(file, hive, on);
    if (!stand) return stand.error();
    if (auto ok = demandSeen(seen.seen); !ok) return ok.error();
    const Visit visit = visitFor(file, yardOn(file, *stand, on), on);
    SheetLine said = seen;
    // A hive that was not opened takes nothing from the line for all: that is said by its mark.
    said.lookSaid = seen.seen.looked != Looked::Opened;
    return keepLine(file, *stand, visit, seen, writeShorthand(said));
}

const Fields& RecordVisit::fields() {
    static const Fields all =
        describe(field<&RecordVisit::on>("on"), field<&RecordVisit::yard>("yard"),
                 field<&RecordVisit::begun>("begun"), field<&RecordVisit::ended>("ended"),
                 field<&RecordVisit::all>("all"), field<&RecordVisit::note>("note"));
    return all;
}

Result<Id<Visit>> RecordVisit::perform(Write& file) const {
    const auto home = file.find(yard);
    if (!home) return Refusal{Code::NotFound, "yard", {}};
    if (begun && ended && *ended < *begun)
        return Refusal{Code::Contradiction, "ended", {{"other", "begun"}}};
    if (auto sayable = demandSaidOfAll(all); !sayable) return sayable.error();
    const auto yardLine = readYardLine(all);
    // What is said of some hives only is a note and may well differ from what all got.
    if (!yardLine)
        if (auto ok = demandOneMeaning(all, "all"); !ok) return ok.error();
    Visit visit = visitFor(file, yard, on);
    if (yardLine) {
        if (begun) visit.begun = begun;
        if (ended) visit.ended = ended;
        for (const std::string& each : {yardLine->note, note})
            if (!each.empty() && visit.note.find(each) == std::string::npos)
                visit.note += (visit.note.empty() ? "" : "; ") + each;
        file.change(visit);
        // Those that stood there that day; one closed or moved since among them.
        for (const Hive& each : hivesOn(file, yard, on)) {
            if (inspectionOf(file, visit.id, each.id)) continue;
            auto kept = keepLine(file, each, visit, yardLine->each, writeShorthand(yardLine->each));
            if (!kept) return kept.error();
        }
        return visit.id;
    }
    // Who notes the hours of a visit has not taken its line for all back.
    const bool leavesAll = all.empty() && (begun || ended || !note.empty());
    const std::string& forAll = leavesAll ? visit.all : all;
    const bool allChanged = visit.all != forAll;
    if (begun) visit.begun = begun;
    if (ended) visit.ended = ended;
    visit.all = forAll;
    if (!note.empty()) visit.note = note;
    file.change(visit);
    if (!allChanged) return visit.id;
    for (const Inspection& each : file.where<Inspection>({is("visit", visit.id)})) {
        const auto stand = file.find(each.hive);
        auto kept = keepLine(file, *stand, visit, readShorthand(visit.all, each.line), each.line,
                             SameLine::IsDoneAnew);
        if (!kept) return kept.error();
    }
    return visit.id;
}

const Fields& StrikeVisit::fields() {
    static const Fields all =
        describe(field<&StrikeVisit::on>("on"), field<&StrikeVisit::yard>("yard"));
    return all;
}

Result<Id<Yard>> StrikeVisit::perform(Write& file) const {
    const auto home = file.find(yard);
    if (!home) return Refusal{Code::NotFound, "yard", {}};
    const auto visit = visitOn(file, yard, on);
    if (!visit) return Refusal{Code::NothingToDo, "yard", {{"name", home->name.text()}}};
    auto lines = file.where<Inspection>({is("visit", visit->id)});
    std::reverse(lines.begin(), lines.end());
    for (const Inspection& each : lines) {
        if (auto back = takeBackDeeds(file, each, on); !back) return back.error();
        file.remove(each.id);
    }
    file.remove(visit->id);
    return yard;
}

const Fields& StrikeLine::fields() {
    static const Fields all =
        describe(field<&StrikeLine::on>("on"), field<&StrikeLine::hive>("hive"));
    return all;
}

Result<Id<Hive>> StrikeLine::perform(Write& file) const {
    const auto stand = file.find(hive);
    if (!stand) return Refusal{Code::NotFound, "hive", {}};
    const auto visit = visitOn(file, yardOn(file, *stand, on), on);
    const auto present = visit ? inspectionOf(file, visit->id, hive) : std::nullopt;
    if (!present) return Refusal{Code::NothingToDo, "hive", {{"name", stand->mark.text()}}};
    if (auto back = takeBackDeeds(file, *present, on); !back) return back.error();
    file.remove(present->id);
    return hive;
}

}  // namespace combwright
