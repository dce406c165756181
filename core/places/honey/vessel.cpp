#include "core/places/honey/vessel.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/model/storeroom/equipment.h"
#include "core/storage/queries/constants.h"
#include "core/trade/honey/colour_class.h"

namespace combwright {
namespace {

std::vector<HoneyStep> stepsOf(const Read& file, const Vessel& vessel, Day on) {
    auto steps = vessel.bucket
                     ? file.where<HoneyStep>({is("bucket", *vessel.bucket), isUpTo("on_day", on)})
                     : file.where<HoneyStep>({is("lot", *vessel.lot), isUpTo("on_day", on)});
    std::stable_sort(steps.begin(), steps.end(),
                     [](const HoneyStep& a, const HoneyStep& b) { return a.on < b.on; });
    return steps;
}

HoneyTraits traitsOf(const Read& file, const Vessel& vessel) {
    if (const auto bucket = file.find(vessel.bucket)) return bucket->traits;
    if (const auto lot = file.find(vessel.lot)) return lot->traits;
    return {};
}

/// What the steps of a vessel and of the worst of its parts did: a blend is no better than the
/// worst that is in it.
struct HeatBehind {
    std::vector<HeatStep> steps;
    int notKnown = 0;
};

/// A part may be in a blend by several ways: each is reckoned once.
using HeatMet = std::map<std::pair<Vessel, Day>, HeatBehind>;

HeatBehind heatBehind(const Read& file, const Vessel& vessel, Day on, HeatMet& met) {
    if (const auto known = met.find({vessel, on}); known != met.end()) return known->second;
    HeatBehind worst;
    double most = -1;
    if (vessel.lot)
        for (const LotPart& part : file.where<LotPart>({is("lot", *vessel.lot)})) {
            if (part.on > on) continue;
            const HeatBehind of = heatBehind(file, {part.bucket, part.from}, part.on, met);
            const auto damage = heatDamageInAll(of.steps);
            const double high = damage ? damage->hmfHigh : 0;
            worst.notKnown += of.notKnown;
            if (high > most) {
                most = high;
                worst.steps = of.steps;
            }
        }
    const auto own = heatSteps(stepsOf(file, vessel, on), &worst.notKnown);
    worst.steps.insert(worst.steps.end(), own.begin(), own.end());
    met[{vessel, on}] = worst;
    return worst;
}

HoneyHeat heatOf(const Read& file, const HeatBehind& behind, Day on) {
    HoneyHeat heat;
    heat.notKnown = behind.notKnown;
    for (const HeatStep& step : behind.steps) heat.hours += step.hours;
    if (behind.steps.empty()) return heat;
    const auto damage = heatDamageInAll(behind.steps);
    if (!damage) return heat;
    heat.damage = *damage;
    heat.heat = heatClass(*damage, heatLines(file, on));
    return heat;
}

HoneyHeat heatOf(const Read& file, const Vessel& vessel, Day on) {
    HeatMet met;
    return heatOf(file, heatBehind(file, vessel, on, met), on);
}

}  // namespace

HeatOutlook heatOutlook(const Read& file, const Vessel& vessel, Day on, const HoneyStep& planned) {
    HeatBehind alone;
    alone.steps = heatSteps({planned}, &alone.notKnown);
    HeatMet met;
    HeatBehind all = heatBehind(file, vessel, on, met);
    all.notKnown += alone.notKnown;
    all.steps.insert(all.steps.end(), alone.steps.begin(), alone.steps.end());
    return {heatOf(file, alone, on), heatOf(file, all, on)};
}

std::vector<HeatStep> heatSteps(const std::vector<HoneyStep>& steps, int* notKnown) {
    std::vector<HeatStep> known;
    for (const HoneyStep& step : steps) {
        // Froth is taken off as the honey stands.
        if (step.work == HoneyWork::Skimmed && !step.temperature) continue;
        const bool inTables = step.temperature && step.temperature->celsius() >= coldestHeatC &&
                              step.temperature->celsius() <= warmestHeatC;
        if (inTables && step.minutes)
            known.push_back(
                {step.temperature->celsius(), static_cast<double>(step.minutes->value()) / 60.0});
        else if (!(step.temperature && step.temperature->celsius() < coldestHeatC) && notKnown)
            ++*notKnown;
    }
    return known;
}

HeatLines heatLines(const Read& file, Day on) {
    HeatLines lines;
    lines.gentleHmf = constantOr(file, "heat_gentle_hmf", {}, on, lines.gentleHmf);
    lines.gentleInvertaseShare =
        constantOr(file, "heat_gentle_invertase_share", {}, on, lines.gentleInvertaseShare);
    lines.noticeableHmf = constantOr(file, "heat_noticeable_hmf", {}, on, lines.noticeableHmf);
    lines.noticeableInvertaseShare =
        constantOr(file, "heat_noticeable_invertase_share", {}, on, lines.noticeableInvertaseShare);
    return lines;
}

bool notWrittenOf(const Read& file, const VesselLedger& ledger, Day on) {
    Day last = ledger.since;
    for (const VesselEntry& entry : ledger.entries) last = std::max(last, entry.on);
    const auto readings = readingsOf(file, ledger.vessel, on);
    if (!readings.empty()) last = std::max(last, readings.back().on);
    return last + days(notWrittenOfDays) < on;
}

std::string colourClassOf(const HoneyTraits& traits) {
    const auto named = traits.pfund ? colourClass(traits.pfund->mm())
                                    : Result<std::string_view>(std::string_view());
    return named ? std::string(*named) : std::string();
}

VesselView vesselView(const Read& file, const Vessel& vessel, Day on, HeldHoney& held) {
    VesselView view;
    view.vessel = vessel;
    view.name = nameOf(file, vessel);
    view.bucket = file.find(vessel.bucket);
    view.lot = file.find(vessel.lot);
    view.ledger = vesselLedger(file, vessel, on);
    view.water = waterInUse(file, vessel, on);
    view.readings = readingsOf(file, vessel, on);
    view.steps = stepsOf(file, vessel, on);
    view.traits = traitsOf(file, vessel);
    if (view.bucket) {
        view.lidded = view.bucket->lidded;
        if (const auto kind = file.find(view.bucket->kind)) view.holds = kind->capacity;
    }
    if (view.lot) {
        view.lidded = view.lot->lidded;
        view.holds = view.lot->tankHolds;
        const auto parts = partsOf(file, view.lot->id);
        if (!parts.empty() && view.ledger.in) {
            Mass poured;
            for (const VesselPart& part : parts) poured += part.mass;
            view.lostPouring = poured - *view.ledger.in;
        }
    }
    for (const Vessel& behind : vesselsBehind(file, vessel)) {
        const std::string word = traitsOf(file, behind).taste;
        const bool said = std::any_of(view.tastes.begin(), view.tastes.end(),
                                      [&](const TasteWord& each) { return each.word == word; });
        if (!word.empty() && !said) view.tastes.push_back({word, nameOf(file, behind)});
        for (const HoneyStep& step : stepsOf(file, behind, on))
            view.creamed = view.creamed || step.work == HoneyWork::Creamed;
    }
    view.heat = heatOf(file, vessel, on);
    view.held = held.of(vessel);
    view.treated = treatedShare(file, vessel, on);
    return view;
}

VesselView vesselView(const Read& file, const Vessel& vessel, Day on) {
    HeldHoney held(file, on);
    return vesselView(file, vessel, on, held);
}

}  // namespace combwright
