#include "core/places/honey/blend_plan.h"

#include <algorithm>

#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

struct Poured {
    Vessel from;
    Mass mass;
    How how = How::Weighed;
};

bool isAmong(const std::vector<Vessel>& vessels, const Vessel& vessel) {
    return std::find(vessels.begin(), vessels.end(), vessel) != vessels.end();
}

bool readsTooDry(const WaterInUse& water) {
    return water.has(WaterDoubt::ReadsTooDry) || water.has(WaterDoubt::WetterThanShown);
}

void addBehind(TreatedShare& sum, const TreatedShare& each) {
    sum.boxes += each.boxes;
    sum.of += each.of;
    sum.unknown += each.unknown;
    sum.boughtIn = sum.boughtIn || each.boughtIn;
}

std::optional<double> mixedWater(const std::vector<HoneyPart>& parts) {
    const auto mixed = pouredTogether(parts);
    return mixed && *mixed ? std::optional((*mixed)->waterPercent) : std::nullopt;
}

BlendOutcome outcomeOf(const Read& file, Day on, const std::vector<Poured>& poured,
                       const std::optional<Mass>& room) {
    BlendOutcome outcome;
    HeldHoney holds(file, on);
    std::vector<HoneyPart> asRead;
    std::vector<HoneyPart> wettest;
    for (const Poured& each : poured) {
        const VesselView view = vesselView(file, each.from, on, holds);
        outcome.mass += each.mass;
        outcome.how = weaker(outcome.how, each.how);
        if (!view.held.empty()) outcome.held.push_back(view.name);
        const auto grams = static_cast<double>(each.mass.grams());
        if (!view.water) {
            outcome.noWater.push_back(view.name);
        } else {
            asRead.push_back({grams, view.water->percent});
            wettest.push_back({grams, view.water->wettestPercent()});
            if (readsTooDry(*view.water))
                outcome.tooDry.push_back(view.name);
            else if (view.water->has(WaterDoubt::WarmthNotSaid))
                outcome.doubtful.push_back(view.name);
        }
        for (const TasteWord& taste : view.tastes)
            if (std::none_of(outcome.tastes.begin(), outcome.tastes.end(),
                             [&](const TasteWord& said) { return said.word == taste.word; }))
                outcome.tastes.push_back(taste);
        const double worst = outcome.worstHeat.damage ? outcome.worstHeat.damage->hmfHigh : -1.0;
        const int notKnown = outcome.worstHeat.notKnown + view.heat.notKnown;
        if (view.heat.damage && view.heat.damage->hmfHigh > worst) outcome.worstHeat = view.heat;
        outcome.worstHeat.notKnown = notKnown;
        addBehind(outcome.treated, view.treated);
    }
    if (outcome.noWater.empty()) {
        outcome.waterPercent = mixedWater(asRead);
        const auto wetter = mixedWater(wettest);
        if (wetter && outcome.waterPercent && *wetter > *outcome.waterPercent)
            outcome.wettestPercent = wetter;
    }
    if (room) outcome.roomLeft = *room - outcome.mass;
    return outcome;
}

/// Why a vessel stays out, unless the keeper wants it in.
BlendLeftOut whyOut(const BlendLine& line, const BlendWanted& wanted, bool longAgo) {
    if (!line.there) return BlendLeftOut::NoMass;
    if (!line.water) return BlendLeftOut::NoWater;
    if (isAmong(wanted.mustGoIn, line.vessel)) return BlendLeftOut::Not;
    if (isAmong(wanted.stayOut, line.vessel)) return BlendLeftOut::NotAsked;
    if (longAgo) return BlendLeftOut::NotWrittenOf;
    return line.held.empty() ? BlendLeftOut::Not : BlendLeftOut::Held;
}

std::vector<BlendLine> linesStanding(const Read& file, Day on, const BlendWanted& wanted) {
    std::vector<BlendLine> lines;
    HeldHoney holds(file, on);
    for (const Vessel& vessel : allVessels(file)) {
        const VesselLedger ledger = vesselLedger(file, vessel, on);
        if (ledger.since > on || ledger.empty) continue;
        BlendLine line;
        line.vessel = vessel;
        line.name = nameOf(file, vessel);
        line.there = ledger.left;
        line.thereHow = ledger.leftHow;
        line.water = waterInUse(file, vessel, on);
        line.held = holds.of(vessel);
        line.leftOut = whyOut(line, wanted, notWrittenOf(file, ledger, on));
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace

std::string_view key(BlendLeftOut why) {
    switch (why) {
        case BlendLeftOut::Not:
            return "";
        case BlendLeftOut::NoWater:
            return "water not read";
        case BlendLeftOut::NoMass:
            return "not weighed";
        case BlendLeftOut::Held:
            return "held";
        case BlendLeftOut::NotAsked:
            return "left out";
        case BlendLeftOut::NotWrittenOf:
            return "nothing written for a year";
    }
    return {};
}

Result<BlendPlan> blendPlan(const Read& file, Day on, const BlendWanted& wanted, Working* working) {
    const OneState still(file);
    BlendPlan plan;
    plan.on = on;
    plan.targetPercent = wanted.targetPercent;
    if (wanted.tankHolds) plan.room = roomInTank(file, *wanted.tankHolds, on);
    plan.lines = linesStanding(file, on, wanted);
    for (const Vessel& each : wanted.mustGoIn)
        if (std::none_of(plan.lines.begin(), plan.lines.end(),
                         [&](const BlendLine& line) { return line.vessel == each; }))
            return Refusal{Code::NotFound, "with", {{"name", nameOf(file, each)}}};
    std::vector<BlendBucket> buckets;
    std::vector<std::size_t> of;
    for (std::size_t at = 0; at < plan.lines.size(); ++at) {
        const BlendLine& line = plan.lines[at];
        if (line.leftOut != BlendLeftOut::Not) continue;
        buckets.push_back({static_cast<double>(line.there->grams()), line.water->percent,
                           isAmong(wanted.mustGoIn, line.vessel) ? BlendUse::All : BlendUse::Free});
        of.push_back(at);
    }
    BlendWish wish{wanted.targetPercent, std::nullopt};
    if (plan.room) wish.mostG = static_cast<double>(plan.room->grams());
    const auto best = bestBlend(buckets, wish, working);
    if (!best) return best.error();
    std::vector<PartMeant> parts;
    std::vector<Poured> poured;
    for (std::size_t i = 0; i < of.size(); ++i) {
        BlendLine& line = plan.lines[of[i]];
        line.use = best->use[i];
        if (line.use <= Mass()) continue;
        parts.push_back(
            {line.vessel, line.use == *line.there ? std::nullopt : std::optional(line.use)});
        poured.push_back({line.vessel, line.use, line.thereHow});
    }
    plan.outcome = outcomeOf(file, on, poured, plan.room);
    plan.parts = blendLine(file, parts);
    return plan;
}

double waterLine(const Read& file, Day on) {
    return constantOr(file, "max_water_percent", {}, on, BlendWanted{}.targetPercent);
}

Result<BlendPlan> usualBlend(const Read& file, Day on) {
    BlendWanted wanted;
    wanted.targetPercent = waterLine(file, on);
    return blendPlan(file, on, wanted);
}

Result<BlendOutcome> blendByHand(const Read& file, Day on, const std::string& parts,
                                 std::optional<Mass> tankHolds) {
    const OneState still(file);
    const auto meant = readBlendLine(file, parts, on);
    if (!meant) return meant.error();
    std::vector<Poured> poured;
    for (const PartMeant& each : *meant) {
        const VesselLedger ledger = vesselLedger(file, each.from, on);
        if (!each.mass && !ledger.left)
            return Refusal{Code::Missing, "parts", {{"bucket", nameOf(file, each.from)}}};
        if (each.mass && ledger.left && *each.mass > *ledger.left)
            return Refusal{Code::TooMany,
                           "parts",
                           {{"honey_in", nameOf(file, each.from)},
                            {"most_g", std::to_string(ledger.left->grams())}}};
        poured.push_back({each.from, each.mass ? *each.mass : *ledger.left,
                          each.mass ? How::Weighed : ledger.leftHow});
    }
    std::optional<Mass> room;
    if (tankHolds) room = roomInTank(file, *tankHolds, on);
    return outcomeOf(file, on, poured, room);
}

}  // namespace combwright
