#include "core/actions/honey/vessel_rules.h"

#include <algorithm>

#include "core/places/honey/blend_line.h"
#include "core/places/honey/water_in_use.h"
#include "core/storage/queries/vessel_holds.h"

namespace combwright {
namespace {

Refusal outsideOf(const std::string& field, std::int64_t low, std::int64_t high) {
    return Refusal{
        Code::OutOfRange, field, {{"low", std::to_string(low)}, {"high", std::to_string(high)}}};
}

Result<void> demandWater(const std::optional<WaterContent>& water, const std::string& field) {
    if (water && (water->percent() < 10 || water->percent() > 30)) return outsideOf(field, 10, 30);
    return {};
}

}  // namespace

Result<Vessel> vesselMeant(const Read& file, const std::optional<Id<Bucket>>& bucket,
                           const std::optional<Id<Lot>>& lot, Day on) {
    if (!bucket && !lot) return Refusal{Code::Missing, "bucket", {}};
    if (bucket && lot) return Refusal{Code::Contradiction, "bucket", {{"other", "lot"}}};
    if (bucket && !file.find(*bucket)) return Refusal{Code::NotFound, "bucket", {}};
    if (lot && !file.find(*lot)) return Refusal{Code::NotFound, "lot", {}};
    const Vessel vessel{bucket, lot};
    const Day since = vesselLedger(file, vessel, on).since;
    if (on < since)
        return Refusal{
            Code::BeforeItBegan, "on", {{"name", nameOf(file, vessel)}, {"since", isoText(since)}}};
    return vessel;
}

Result<void> demandLedger(const Read& file, const Vessel& vessel, const std::string& field,
                          std::optional<Mass> wanted) {
    const VesselLedger ledger = vesselLedger(file, vessel, lastOfAllDays);
    std::optional<Mass> before, inItThen;
    Mass lacks;
    for (const VesselEntry& entry : ledger.entries) {
        if (entry.on < ledger.since)
            return Refusal{Code::BeforeItBegan,
                           "on",
                           {{"name", nameOf(file, vessel)}, {"since", isoText(ledger.since)}}};
        const bool gained =
            entry.event == VesselEvent::Worked && before && entry.left && *entry.left > *before;
        const Mass lacking = gained       ? *entry.left - *before
                             : entry.left ? Mass{} - *entry.left
                                          : Mass{};
        if (lacking > Mass{} && !inItThen) inItThen = before.value_or(Mass{});
        lacks = std::max(lacks, lacking);
        before = entry.left;
    }
    if (!inItThen) return {};
    const Mass most = wanted ? std::max(Mass{}, *wanted - lacks) : *inItThen;
    return Refusal{Code::TooMany,
                   field,
                   {{"honey_in", nameOf(file, vessel)}, {"most_g", std::to_string(most.grams())}}};
}

Result<void> demandHoney(const std::optional<Known<Mass>>& mass, const std::string& field,
                         bool needed) {
    if (needed && !(mass && mass->value)) return Refusal{Code::Missing, field, {}};
    if (!mass || !mass->value) return {};
    if (*mass->value < Mass() || mass->to.value_or(*mass->value) > mostInVessel)
        return outsideOf(field, 0, mostInVessel.grams());
    return {};
}

Result<void> demandReading(const WaterReading& reading) {
    const int scales =
        reading.water.has_value() + reading.index.has_value() + reading.brix.has_value();
    if (scales == 0) return Refusal{Code::Missing, "water_percent", {}};
    if (scales > 1)
        return Refusal{Code::Contradiction,
                       reading.water ? "water_percent" : "refractive_index",
                       {{"other", reading.brix ? "brix" : "refractive_index"}}};
    if (auto ok = demandWater(reading.water, "water_percent"); !ok) return ok;
    if (auto ok = demandWater(reading.corrected, "corrected_percent"); !ok) return ok;
    if (reading.temperature &&
        (reading.temperature->celsius() < -20 || reading.temperature->celsius() > 60))
        return outsideOf("temperature_c", -20, 60);
    if (!reading.water)
        if (const auto read = waterAsRead(shownBy(reading)); !read) return read.error();
    if (reading.calibrated && *reading.calibrated > reading.on)
        return Refusal{Code::Contradiction, "calibrated", {{"other", "on"}}};
    return {};
}

Result<void> demandStep(const HoneyStep& step) {
    if (step.temperature && (step.temperature->celsius() < 0 || step.temperature->celsius() > 100))
        return outsideOf("temperature_c", 0, 100);
    constexpr std::int64_t yearOfMinutes = 366LL * 24 * 60;
    if (step.minutes && (*step.minutes < Minutes() || step.minutes->value() > yearOfMinutes))
        return outsideOf("minutes_min", 0, yearOfMinutes);
    return demandHoney(step.after, "after_g");
}

Result<void> demandTraits(const HoneyTraits& traits) {
    if (traits.pfund && (*traits.pfund < Length() || traits.pfund->mm() > 140))
        return outsideOf("pfund_mm", 0, 140);
    return {};
}

Result<void> demandLot(const Read& file, const Lot& lot) {
    if (auto ok = demandHoney(lot.net, "net_g", lot.origin != LotOrigin::Blended); !ok) return ok;
    if (auto ok = demandTraits(lot.traits); !ok) return ok;
    if (lot.tankHolds && (*lot.tankHolds <= Mass() || *lot.tankHolds > mostInVessel))
        return outsideOf("tank_holds_g", 1, mostInVessel.grams());
    if (lot.tankWide && (lot.tankWide->mm() < 50 || lot.tankWide->mm() > 2000))
        return outsideOf("tank_wide_mm", 50, 2000);
    Mass poured;
    How how = How::Weighed;
    const auto parts = partsOf(file, lot.id);
    for (const VesselPart& part : parts) {
        poured += part.mass;
        how = weaker(how, part.how);
    }
    const Mass in = lot.net && lot.net->value ? *lot.net->value : poured;
    if (lot.tankHolds)
        if (const Mass room = roomInTank(file, *lot.tankHolds, lot.on); in > room)
            return Refusal{
                Code::TooMany,
                "tank_holds_g",
                {{"in_g", std::to_string(in.grams())}, {"room_g", std::to_string(room.grams())}}};
    if (lot.net && lot.net->value && !parts.empty() && how <= How::Counted && in > poured)
        return Refusal{Code::TooMany, "net_g", {{"poured_g", std::to_string(poured.grams())}}};
    return {};
}

Result<void> demandLotName(const Read& file, const Lot& lot) {
    for (const Lot& each : file.where<Lot>({is("name", lot.name)}))
        if (each.id != lot.id) return Refusal{Code::Taken, "name", {{"name", lot.name.text()}}};
    return {};
}

Result<void> demandMayGo(const Read& file, const Vessel& vessel, Day on, const std::string& reason,
                         const std::string& field) {
    if (!reason.empty()) return {};
    const auto holds = holdsOn(file, vessel, on);
    if (holds.empty()) return {};
    const auto worst = std::find_if(holds.begin(), holds.end(), quarantines);
    const Hold& hold = worst == holds.end() ? holds.front() : *worst;
    return Refusal{Code::HeldBack,
                   field,
                   {{"honey", nameOf(file, vessel)},
                    {"why", std::string(word(hold.why))},
                    {"since", isoText(hold.since)}}};
}

}  // namespace combwright
