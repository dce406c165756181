#include <algorithm>

#include "core/actions/amend/amend_rules.h"
#include "core/actions/honey/vessel_rules.h"
#include "core/actions/honey_room/asides.h"
#include "core/actions/honey_room/clearers.h"
#include "core/actions/honey_room/load_line.h"
#include "core/actions/honey_room/pegs.h"
#include "core/actions/honey_room/room_days.h"
#include "core/actions/honey_room/run_rules.h"
#include "core/actions/pull/plan.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/places/honey_room/run_balance.h"
#include "core/storage/queries/pegs.h"

namespace combwright {
namespace {

/// Puts the change into the file. A closed run keeps its figures and is revised from now on; but
/// one that shared out must still do so, or it would have no figures at all.
template <class Record>
Result<void> changeInRun(Write& file, Id<Extraction> id, const Record& after,
                         const std::string& field) {
    const auto run = file.find(id);
    const auto shared = [&]() -> Result<void> {
        const auto balance = runBalance(file, id);
        if (!balance) return balance.error();
        return demandHoneyCounted(*balance);
    };
    const bool watched = run && run->closed && shared();
    file.change(after);
    if (!watched) return {};
    if (auto still = shared(); !still)
        return Refusal{still.error().code, field, still.error().values};
    return {};
}

Result<void> settlePlan(Write&, const PullPlan&, PullPlan& after) {
    if (after.forDay < after.on) return against("for_day", "on_day");
    return {};
}

Result<void> settleCrop(Write&, const CropNote&, CropNote& after) { return demandCrop(after); }

/// Everything else of a run happens on its day or later.
Result<void> settleRun(Write& file, const Extraction& before, Extraction& after) {
    if (after.name != before.name)
        for (const Extraction& each : file.all<Extraction>())
            if (each.id != after.id && each.name == after.name)
                return Refusal{Code::Taken, "name", {{"name", after.name.text()}}};
    if (!before.closed && after.closed)
        return Refusal{Code::OtherAction, "closed", {{"action", "close-run"}}};
    if (before.closed && !after.closed) return Refusal{Code::Fixed, "closed", {}};
    if (after.closed && *after.closed < after.on)
        return after.on == before.on ? against("closed", "on_day") : against("on_day", "closed");
    for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", after.id)}))
        if (load.on < after.on) return against("on_day", "spin_load " + isoText(load.on));
    if (after.begun && after.ended && *after.ended < *after.begun)
        return after.ended == before.ended ? against("begun", "ended") : against("ended", "begun");
    if (auto ok = demandCappings(after); !ok) return ok;
    if (auto ok = demandRoomAir(after); !ok) return ok;
    if (auto ok = changeInRun(file, after.id, after, "cappings_g"); !ok) return ok;
    for (const Bucket& each : file.where<Bucket>({is("extraction", after.id)}))
        if (auto ok = demandLedger(file, {each.id, std::nullopt}, "on_day"); !ok)
            return Refusal{ok.error().code, "on_day", ok.error().values};
    return {};
}

/// Whether a peg was on a box while a run was open.
bool clippedIn(const Peg& peg, const Extraction& run) {
    return (!peg.off || *peg.off >= run.on) && (!run.closed || peg.on <= *run.closed);
}

/// The peg by whose number a line of a run is called.
std::optional<Peg> pegOfEntry(const Read& file, const ExtractionBox& entry) {
    const auto run = file.find(entry.extraction);
    if (!run || entry.knownAs.empty()) return std::nullopt;
    for (const Peg& peg : file.all<Peg>())
        if (clippedIn(peg, *run) && (!peg.box || peg.box == entry.box) &&
            pegTag(file, peg, run->on) == entry.knownAs)
            return peg;
    return std::nullopt;
}

/// A hive said wrong is put right here; one nobody knew is named.
Result<void> settleFilledBy(const Read& file, const ExtractionBox& before,
                            const ExtractionBox& after) {
    if (after.hive == before.hive) return {};
    if (!before.hive) return Refusal{Code::OtherAction, "hive", {{"action", "name-lost-box"}}};
    const auto run = file.find(after.extraction);
    if (!after.hive || !run) return Refusal{Code::Fixed, "hive", {}};
    if (after.box)
        if (auto same = demandFilledBy(file, *after.box, after.hive, run->on); !same) return same;
    return demandHiveFree(file, *after.hive, run->on, "hive");
}

Result<void> settleRunBox(Write& file, const ExtractionBox& before, ExtractionBox& after) {
    if (!after.box && !after.hive && after.knownAs.empty())
        return Refusal{Code::Missing, "known_as", {}};
    // Without a box it is called by what it is known as; weighing it again finds it so.
    if (!after.box && !after.knownAs.empty() && after.knownAs != before.knownAs)
        for (const ExtractionBox& each :
             file.where<ExtractionBox>({is("extraction", after.extraction)}))
            if (each.id != after.id && !each.box && each.knownAs == after.knownAs)
                return Refusal{Code::Taken, "known_as", {{"name", after.knownAs}}};
    if (after.knownAs != before.knownAs)
        if (const auto peg = pegOfEntry(file, before))
            return Refusal{Code::OtherAction, "known_as", {{"action", "amend peg"}}};
    if (auto hive = settleFilledBy(file, before, after); !hive) return hive;
    if (auto ok = demandWeights(after); !ok) return ok;
    const bool grossMoved = after.gross != before.gross;
    return changeInRun(file, after.extraction, after, grossMoved ? "gross_g" : "wet_g");
}

Result<void> notBeforeRun(const Read& file, Id<Extraction> id, Day on) {
    const auto run = file.find(id);
    if (run && on < run->on)
        return Refusal{Code::BeforeItBegan, "on_day", {{"since", isoText(run->on)}}};
    return {};
}

Result<void> settleLoad(Write& file, const SpinLoad& before, SpinLoad& after) {
    if (after.machine && after.machine != before.machine)
        if (auto turns = demandExtractor(file, *after.machine, after.on); !turns) return turns;
    // Said to have run after all: what holds for a load spun holds for it.
    if (before.ran == Ran::Stopped && after.ran != Ran::Stopped) {
        std::vector<FramesInLoad> boxes;
        for (const LoadBox& each : file.where<LoadBox>({is("load", after.id)}))
            if (const auto box = file.find(each.box)) boxes.push_back({*box, each.frames.value()});
        if (auto free = demandMayBeSpun(file, boxes, after.on, "ran"); !free) return free;
    }
    return notBeforeRun(file, after.extraction, after.on);
}

/// What became of frames is said by the action; said wrong, it is amended here.
Result<void> settlePile(Write& file, const SetAside& before, SetAside& after) {
    if (after.became && !before.became)
        return Refusal{Code::OtherAction, "became", {{"action", "settle-aside"}}};
    if (!after.became && before.became) {
        const auto run = file.find(after.extraction);
        if (run && run->closed)
            return Refusal{Code::Closed, "became", {{"name", run->name.text()}}};
        after.becameOn.reset();
    }
    if (after.became.has_value() != after.becameOn.has_value())
        return Refusal{Code::Missing, after.became ? "became_on" : "became", {}};
    if (after.becameOn && *after.becameOn < after.on)
        return after.on == before.on ? against("became_on", "on_day")
                                     : against("on_day", "became_on");
    if (auto ok = demandAside(file, after); !ok) return ok;
    return notBeforeRun(file, after.extraction, after.on);
}

Result<void> settleGate(Write& file, const GateOpening&, GateOpening& after) {
    const auto spun = static_cast<std::int64_t>(
        file.where<SpinLoad>({is("extraction", after.extraction)}).size());
    if (after.afterLoad.value() > spun)
        return Refusal{Code::TooMany, "after_load", {{"most", std::to_string(spun)}}};
    return notBeforeRun(file, after.extraction, after.on);
}

Result<void> settleRoomDay(Write& file, const RoomDay&, RoomDay& after) {
    for (const RoomDay& each : file.where<RoomDay>({is("on_day", after.on)}))
        if (each.id != after.id)
            return Refusal{Code::Taken, "on_day", {{"name", isoText(after.on)}}};
    return demandRoomDay(after);
}

Result<void> settleBucket(Write& file, const Bucket& before, Bucket& after) {
    if (after.mark != before.mark)
        for (const Bucket& each : file.where<Bucket>({is("extraction", after.extraction)}))
            if (each.id != after.id && each.mark == after.mark)
                return Refusal{Code::Taken, "mark", {{"name", after.mark.text()}}};
    if (auto ok = demandBucket(after); !ok) return ok;
    if (auto ok = demandTraits(after.traits); !ok) return ok;
    if (auto ok = changeInRun(file, after.extraction, after, "net_g"); !ok) return ok;
    return demandLedger(file, {after.id, std::nullopt}, "net_g");
}

/// The lines of runs that are called by a peg go by its new number, and where another box had the
/// same one, by the day it was clipped.
Result<void> renameByPegs(Write& file,
                          const std::vector<std::pair<ExtractionBox, Id<Peg>>>& lines) {
    for (const auto& [called, id] : lines) {
        ExtractionBox entry = called;
        const auto peg = file.find(id);
        const auto run = file.find(entry.extraction);
        if (!peg || !run) continue;
        const std::string tag = pegTag(file, *peg, run->on);
        if (tag == entry.knownAs) continue;
        for (const ExtractionBox& each : file.where<ExtractionBox>({is("extraction", run->id)})) {
            const bool moves = std::any_of(lines.begin(), lines.end(), [&](const auto& line) {
                return line.first.id == each.id;
            });
            if (!moves && each.knownAs == tag)
                return Refusal{Code::Taken, "number", {{"name", tag}}};
        }
        entry.knownAs = tag;
        file.change(entry);
    }
    return {};
}

Result<void> settlePeg(Write& file, const Peg& before, Peg& after) {
    if (auto ok = demandPeg(file, after); !ok) {
        Refusal refusal = ok.error();
        if (refusal.field == "peg") refusal.field = "number";
        return refusal;
    }
    std::vector<std::pair<ExtractionBox, Id<Peg>>> lines;
    for (ExtractionBox& entry : file.all<ExtractionBox>())
        if (const auto peg = pegOfEntry(file, entry))
            if (peg->number == before.number || peg->number == after.number)
                lines.emplace_back(std::move(entry), peg->id);
    file.change(after);
    return renameByPegs(file, lines);
}

Result<void> settleBoard(Write& file, const ClearerBoard&, ClearerBoard& after) {
    return demandBoard(file, after);
}

}  // namespace

std::vector<AmendType> honeyAmends() {
    return {
        amends<PullPlan>({{"on_day", ""},
                          {"winter_need", "keep-plan"},
                          {"feed_up_to", "keep-plan"},
                          {"min_capped", "keep-plan"},
                          {"max_water", "keep-plan"},
                          {"frames", "keep-plan"},
                          {"carry", "keep-plan"},
                          {"boxes", "keep-plan"},
                          {"clearer_boards", "keep-plan"}},
                         &settlePlan),
        amends<CropNote>({}, &settleCrop),
        amends<Extraction>({}, &settleRun),
        amends<ExtractionBox>({{"extraction", ""}, {"box", ""}}, &settleRunBox),
        amends<SpinLoad>({{"extraction", ""}, {"number", ""}}, &settleLoad),
        amends<Bucket>({{"extraction", ""}}, &settleBucket),
        amends<SetAside>({{"extraction", ""}}, &settlePile),
        amends<GateOpening>({{"extraction", ""}}, &settleGate),
        amends<RoomDay>({}, &settleRoomDay),
        amends<Peg>({{"box", "clip-peg"}}, &settlePeg),
        amends<ClearerBoard>({{"hive", ""}}, &settleBoard),
    };
}

}  // namespace combwright
