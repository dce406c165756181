#include <algorithm>

#include "core/actions/amend/amend_rules.h"
#include "core/actions/honey_room/asides.h"
#include "core/actions/honey_room/clearers.h"
#include "core/actions/honey_room/load_line.h"
#include "core/actions/honey_room/pegs.h"
#include "core/actions/honey_room/room_days.h"
#include "core/actions/honey_room/run_rules.h"
#include "core/actions/pull/plan.h"
#include "core/places/run_balance.h"

namespace combwright {
namespace {

/// Puts the change into the file. A closed run keeps its figures and is revised from now on; but
/// one that shared out must still do so, or it would have no figures at all.
template <class Record>
Result<void> changeInRun(Write& file, Id<Extraction> id, const Record& after,
                         const std::string& field) {
    const auto run = file.find(id);
    const bool watched = run && run->closed && runBalance(file, id);
    file.change(after);
    if (!watched) return {};
    const auto balance = runBalance(file, id);
    if (!balance) return Refusal{balance.error().code, field, balance.error().values};
    if (balance->shares.empty()) return Refusal{Code::Missing, field, {}};
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
    return changeInRun(file, after.id, after, "cappings_g");
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
    return changeInRun(file, after.extraction, after, "net_g");
}

Result<void> settlePeg(Write& file, const Peg&, Peg& after) {
    auto ok = demandPeg(file, after);
    if (ok) return ok;
    Refusal refusal = ok.error();
    if (refusal.field == "peg") refusal.field = "number";
    return refusal;
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
        amends<ExtractionBox>({{"extraction", ""}, {"box", ""}, {"hive", "name-lost-box"}},
                              &settleRunBox),
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
