#include "core/places/honey/honey_store.h"

#include <algorithm>
#include <cmath>

#include "core/catalogue/honey_tables.h"
#include "core/model/honey/extraction.h"
#include "core/model/honey/telling.h"
#include "core/model/storeroom/equipment.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/vessel_books.h"
#include "core/trade/honey/colour_class.h"
#include "core/trade/honey/density.h"
#include "core/trade/honey/drying.h"
#include "core/trade/honey/granulation.h"
#include "core/trade/honey/settling.h"
#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

/// Bubbles so large are seen in a jar. Planning assumption: 24 to 48 h at 30 to 35 °C clear about
/// them from an ordinary tank.
constexpr double bubbleSeenUm = 150.0;
constexpr int emptiedShownDays = 365;
/// What a bucket is filled with where nobody says how much it holds; as the room's buckets go.
constexpr double bucketFilledG = 13600.0;

/// The run a vessel's honey came from, where it is a bucket's.
std::optional<Extraction> runOf(const Read& file, const VesselView& view) {
    return view.bucket ? file.find(view.bucket->extraction) : std::nullopt;
}

/// The room as it was written down last, up to a day.
std::optional<Extraction> roomNow(const Read& file, Day on) {
    std::optional<Extraction> newest;
    for (Extraction& each : file.where<Extraction>({isUpTo("on_day", on)}))
        if (each.damp && (!newest || newest->on <= each.on)) newest = std::move(each);
    return newest;
}

std::optional<AirOverHoney> airOf(const std::optional<Extraction>& room, double waterPercent) {
    if (!room || !room->damp) return std::nullopt;
    AirOverHoney air;
    air.dampPercent = room->damp->value() * 100.0;
    air.on = room->on;
    if (const auto verdict = inThatAir(waterPercent, air.dampPercent)) air.verdict = *verdict;
    if (const auto rests = equilibriumWater(air.dampPercent)) air.restsAtPercent = *rests;
    return air;
}

/// How deep the honey stood that came into a vessel, and what is known of that.
void takeDepth(const Read& file, const VesselView& view, Day on, Settling& settling) {
    settling.depthMm = constantOr(file, "settling_depth_mm", {}, on, 500);
    const auto honey = view.ledger.in ? view.ledger.in : view.holds;
    const auto density = honeyDensity(settling.waterPercent, honeyDensityC);
    if (!honey || *honey <= Mass{} || !density) return;
    std::optional<Length> wide = view.lot ? view.lot->tankWide : std::nullopt;
    if (const auto kind = view.bucket ? file.find(view.bucket->kind) : std::nullopt)
        wide = kind->wide;
    const auto grams = static_cast<double>(honey->grams());
    const double full =
        view.holds ? std::max(grams, static_cast<double>(view.holds->grams())) : grams;
    const auto wideMm = wide ? Result<double>(wide->mm()) : wideAsDeep(full, *density);
    const auto depth = wideMm ? depthInVessel(grams, *density, *wideMm) : wideMm;
    if (!depth) return;
    settling.depthMm = *depth;
    settling.depth = wide ? Settling::Depth::OfWidth : Settling::Depth::Likely;
    settling.honeyG = grams;
    settling.wideMm = *wideMm;
}

std::optional<Settling> settlingOf(const Read& file, const StoredHoney& honey, Day on) {
    if (!honey.view.water) return std::nullopt;
    Settling settling;
    settling.waterPercent = honey.view.water->percent;
    takeDepth(file, honey.view, on, settling);
    settling.bubbleUm = bubbleSeenUm;
    const auto run = runOf(file, honey.view);
    if (run && run->room)
        settling.temperatureC = run->room->celsius();
    else {
        settling.temperatureC = constantOr(file, "strain_at_c", {}, on, 30);
        settling.warmthAssumed = true;
    }
    const auto hours = settlingHours(settling.waterPercent, settling.temperatureC, settling.depthMm,
                                     settling.bubbleUm);
    if (!hours) return std::nullopt;
    settling.hours = *hours * constantOr(file, "settling_plan_factor", {}, on, settlingPlanFactor);
    const double whole = std::ceil(settling.hours / 24.0);
    if (!(whole < 10'000)) return std::nullopt;
    settling.until = honey.view.ledger.since + days(static_cast<int>(whole));
    if (const auto clears =
            clearedFromUm(settling.waterPercent, settling.temperatureC, settling.depthMm, 24))
        settling.oneDayClearsUm = *clears;
    return settling;
}

void addSetting(StoredHoney& honey, double water) {
    if (const auto low = liquidWaterWhenSet(water, setsUsuallyFromG)) honey.whenSetFrom = *low;
    if (const auto high = liquidWaterWhenSet(water, setsUsuallyToG)) honey.whenSetTo = *high;
    if (const auto glucose = glucoseUntil(water, setDangerPercent))
        honey.glucoseToDanger = *glucose;
    const auto after = honey.whenSetTo ? fermentRisk(std::min(*honey.whenSetTo, 100.0), {})
                                       : Result<FermentVerdict>(Refusal{Code::Missing, {}, {}});
    honey.setAtRisk = after && honey.ferment && after->keeping >= KeepingClass::Act &&
                      honey.ferment->keeping < KeepingClass::Act;
}

std::optional<double> levelOf(const Read& file, const VesselView& view, Day on) {
    if (view.empty()) return 0.0;
    if (!view.ledger.left) return std::nullopt;
    double full = view.holds ? static_cast<double>(view.holds->grams()) : 0;
    if (!view.holds && view.bucket) full = constantOr(file, "bucket_g", {}, on, bucketFilledG);
    if (!(full > 0)) return std::nullopt;
    return std::clamp(static_cast<double>(view.ledger.left->grams()) / full, 0.0, 1.0);
}

std::vector<HoneyLimit> profileLimits(const std::string& profile) {
    std::vector<HoneyLimit> limits;
    for (const PublishedHoneyLimit& each : honeyLimitsOf(profile))
        if (each.quantity == "water_percent")
            limits.push_back({each.quantity, each.honey, each.grade, each.atMost, each.atLeast});
    return limits;
}

}  // namespace

std::string limitsPicked(const Read& file, Day on) {
    std::string profile;
    Day since = Day::min();
    for (const LabelText& each : file.where<LabelText>({isUpTo("since", on)}))
        if (each.since >= since) {
            since = each.since;
            profile = each.limits;
        }
    return profile;
}

bool StoredHoney::ready(Day on) const { return !view.empty() && lacks(on).empty(); }

std::vector<HoneyLacks> StoredHoney::lacks(Day on) const {
    std::vector<HoneyLacks> missing;
    if (!view.held.empty()) missing.push_back(HoneyLacks::Held);
    if (!view.water) {
        missing.push_back(HoneyLacks::WaterNotRead);
        return missing;
    }
    if (view.water->has(WaterDoubt::ReadsTooDry)) missing.push_back(HoneyLacks::ReadsTooDry);
    if (view.water->has(WaterDoubt::WetterThanShown)) missing.push_back(HoneyLacks::PartTooDry);
    if (waterOffG != 0.0) missing.push_back(HoneyLacks::WaterMustGo);
    if (settling && settling->until > on) missing.push_back(HoneyLacks::NotSettled);
    return missing;
}

std::string colourName(const HoneyTraits& traits) {
    if (!traits.pfund) return {};
    const auto name = colourClass(traits.pfund->mm());
    return name ? std::string(*name) : std::string();
}

StoredHoney storedHoney(const Read& file, const Vessel& vessel, Day on, HeldHoney& held) {
    StoredHoney honey;
    honey.view = vesselView(file, vessel, on, held);
    honey.targetPercent = constantOr(file, "max_water_percent", {}, on, 18);
    honey.level = levelOf(file, honey.view, on);
    if (!honey.view.water) return honey;
    const double water = honey.view.water->wettestPercent();
    if (const auto ferment = fermentRisk(water, {})) honey.ferment = *ferment;
    if (const std::string profile = limitsPicked(file, on); !profile.empty()) {
        const std::vector<HoneyReading> read{{"water_percent", water}};
        honey.limits = heldAgainst(profileLimits(profile), "any", read);
    }
    addSetting(honey, water);
    honey.air = airOf(roomNow(file, on), water);
    honey.settling = settlingOf(file, honey, on);
    if (honey.view.ledger.left)
        if (const auto off = waterOff(static_cast<double>(honey.view.ledger.left->grams()), water,
                                      *honey.targetPercent))
            honey.waterOffG = *off;
    if (!honey.waterOffG && water <= *honey.targetPercent) honey.waterOffG = 0.0;
    return honey;
}

HoneyStore honeyStore(const Read& file, Day on) {
    const OneState still(file);
    HoneyStore store;
    store.on = on;
    store.profile = limitsPicked(file, on);
    store.targetPercent = constantOr(file, "max_water_percent", {}, on, 18);
    HeldHoney held(file, on);
    const auto vessels = allVessels(file);
    const VesselBooks books(file, vessels);
    for (const Vessel& vessel : vessels) {
        const VesselLedger ledger = books.ledger(vessel, on);
        if (ledger.since > on) continue;
        if (ledger.empty && *ledger.empty + days(emptiedShownDays) < on) continue;
        if (!ledger.empty && notWrittenOf(file, ledger, on)) {
            store.notWrittenOf.push_back(nameOf(file, vessel));
            continue;
        }
        StoredHoney honey = storedHoney(file, vessel, on, held);
        if (ledger.empty) {
            store.emptied.push_back(std::move(honey));
            continue;
        }
        if (ledger.left) {
            store.known += *ledger.left;
            store.knownHow = store.standing.size() == static_cast<std::size_t>(store.notKnown)
                                 ? ledger.leftHow
                                 : weaker(store.knownHow, ledger.leftHow);
        } else {
            ++store.notKnown;
        }
        store.standing.push_back(std::move(honey));
    }
    return store;
}

}  // namespace combwright
