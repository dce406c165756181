#include "core/places/gate_minder.h"

#include <algorithm>
#include <set>

#include "core/model/storeroom/equipment.h"
#include "core/places/bucket_sheet.h"
#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

/// Whether the run's drum was run empty behind its last load up to that one of the file.
bool ranEmpty(const Read& file, Id<Extraction> run, std::int64_t loadsSpun) {
    for (const GateOpening& each : file.where<GateOpening>({is("extraction", run)}))
        if (each.runEmpty.value_or(false) && each.afterLoad.value() >= loadsSpun) return true;
    return false;
}

/// From here on a bucket under the gate is watched, as a share of what it is filled with.
constexpr double nearlyFullFrom = 0.2;

How howHoneyIsKnown(const ExtractionBox& box) {
    if (box.gross && box.gross->value && box.wet && box.wet->value)
        return weaker(box.gross->how, box.wet->how);
    if (!(box.gross && box.gross->value) && box.filled && box.filled->value) return box.filled->how;
    return How::Assumed;
}

/// The loads of a run behind the last opening of its gate.
std::vector<SpinLoad> sinceOpen(const Read& file, Id<Extraction> run) {
    std::int64_t opened = 0;
    for (const GateOpening& each : file.where<GateOpening>({is("extraction", run)}))
        opened = std::max(opened, each.afterLoad.value());
    auto loads = file.where<SpinLoad>({is("extraction", run)});
    std::erase_if(loads, [&](const SpinLoad& each) { return each.number.value() <= opened; });
    return loads;
}

double honeyIn(const SheetLoad& load) {
    double honey = 0;
    for (const auto& place : load.places)
        if (place) honey += place->startG - place->endG;
    return honey;
}

void mindBucket(const BucketSheet& buckets, GateMinder& minder) {
    for (std::size_t n = 0; n < buckets.lines.size(); ++n) {
        if (!buckets.lines[n].underGate) continue;
        minder.bucket = buckets.lines[n].mark;
        if (buckets.lines[n].level)
            minder.takesG = std::max(0.0, buckets.fullG * (1 - *buckets.lines[n].level));
        if (n + 1 < buckets.lines.size()) minder.nextBucket = buckets.lines[n + 1].mark;
    }
    minder.bucketNearlyFull = minder.takesG && (*minder.takesG < minder.inDrumG ||
                                                *minder.takesG < nearlyFullFrom * buckets.fullG);
}

void mindStrainer(const Read& file, const Extraction& run, Day on, GateMinder& minder) {
    double spun = 0;
    for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", run.id)}))
        spun += honeyOfLoad(file, load).grams;
    double inBuckets = 0;
    for (const Bucket& each : file.where<Bucket>({is("extraction", run.id)}))
        if (each.net) inBuckets += each.net->middle().value_or(0);
    minder.toStrainG = std::max(0.0, spun - minder.inDrumG - inBuckets);
    minder.strainer = strainerOf(file, run, on);
    if (!minder.strainer || minder.strainer->kgPerH <= 0) return;
    minder.strainMin = *minder.toStrainG / 1000.0 / minder.strainer->kgPerH * 60.0;
    const double load =
        constantOr(file, "spin_min_per_load", {}, on, 15) + constantOr(file, "swap_min", {}, on, 3);
    minder.strainerBehind = minder.strainMin > load;
}

void mindLots(const Read& file, const Extraction& run, const LoadSheet& loads, Day on,
              GateMinder& minder) {
    std::optional<SpinLoad> last;
    for (SpinLoad& each : file.where<SpinLoad>({is("on_day", on)})) last = std::move(each);
    if (last && last->extraction != run.id &&
        !ranEmpty(file, last->extraction, last->number.value()))
        if (const auto other = file.find(last->extraction)) minder.emptyOf = other->name.text();
    const bool ours = last && last->extraction == run.id;
    if (!ours || !loads.loads.empty() || ranEmpty(file, run.id, last->number.value())) return;
    for (const Extraction& other : openRuns(file))
        if (other.id != run.id && other.on <= on &&
            file.first<ExtractionBox>({is("extraction", other.id)})) {
            minder.emptyFor = other.name.text();
            return;
        }
}

}  // namespace

double bucketHoldsG(const Read& file, Day on) {
    double most = 0;
    for (const Equipment& each : file.where<Equipment>({is("item", EquipmentItem::Bucket)}))
        if (each.capacity && each.since <= on)
            most = std::max(most, static_cast<double>(each.capacity->grams()));
    if (most > 0) return most;
    return constantOr(file, "bucket_g", {}, on, 13600) *
           (1 + constantOr(file, "bucket_room_share", {}, on, 0.05));
}

std::optional<Id<Extraction>> lotInDrumBefore(const Read& file, const SpinLoad& load) {
    std::optional<SpinLoad> last;
    std::set<std::pair<std::int64_t, std::int64_t>> met;
    std::optional<Id<Extraction>> found;
    for (SpinLoad& each : file.where<SpinLoad>({is("on_day", load.on)})) {
        if (each.id > load.id) break;
        const bool otherDrum =
            last && last->machine && each.machine && *last->machine != *each.machine;
        found.reset();
        if (last && last->extraction != each.extraction && !otherDrum &&
            !ranEmpty(file, last->extraction, last->number.value())) {
            const auto pair = std::minmax(last->extraction.number, each.extraction.number);
            if (met.insert(pair).second) found = last->extraction;
        }
        last = std::move(each);
    }
    return found;
}

std::optional<StrainerFlow> strainerOf(const Read& file, const Extraction& run, Day on,
                                       Working* working) {
    const auto rate = constantInForce(file, "strain_kg_per_h", {}, on);
    if (!rate) return std::nullopt;
    const StrainerRate seen{.kgPerH = rate->value,
                            .waterPercent = constantOr(file, "strain_at_water_percent", {}, on, 17),
                            .temperatureC = constantOr(file, "strain_at_c", {}, on, 30),
                            .thisHoney = rate->own.has_value()};
    const double warmth = run.room ? run.room->celsius() : seen.temperatureC;
    HoneyRange water{seen.waterPercent - 0.5, seen.waterPercent + 0.5};
    bool any = false;
    for (const Bucket& each : file.where<Bucket>({is("extraction", run.id)})) {
        if (!each.water) continue;
        const double percent = each.water->percent();
        water = any ? HoneyRange{std::min(water.low, percent), std::max(water.high, percent)}
                    : HoneyRange{percent, percent};
        any = true;
    }
    // A thermometer in the room is no thermometer in the honey.
    const auto flow = strainerFlow(seen, water, {warmth - 1, warmth + 1}, working);
    return flow ? std::optional(*flow) : std::nullopt;
}

LoadHoney honeyOfLoad(const Read& file, const SpinLoad& load) {
    LoadHoney honey;
    const auto run = file.find(load.extraction);
    if (load.ran == Ran::Stopped || !run) return honey;
    How how = How::Weighed;
    for (const LoadBox& each : file.where<LoadBox>({is("load", load.id)})) {
        const auto box = file.find(each.box);
        const auto frame = box ? reckonFrame(file, *box, *run) : std::nullopt;
        if (!frame) {
            how = How::Unknown;
            continue;
        }
        honey.grams += (frame->startG - frame->endG) * static_cast<double>(each.frames.value());
        how = weaker(how, howHoneyIsKnown(*box));
    }
    honey.how = honey.grams > 0 ? how : How::Unknown;
    return honey;
}

GateMinder gateMinder(const Read& file, Id<Extraction> id, const LoadSheet& loads, Day on,
                      bool turning) {
    GateMinder minder;
    minder.drumG = loads.machine.drumKg * 1000.0;
    minder.drumSaid = loads.machine.drumSaid;
    const auto run = file.find(id);
    if (!run) return minder;
    for (const SpinLoad& load : sinceOpen(file, id)) {
        ++minder.loadsSince;
        const LoadHoney honey = honeyOfLoad(file, load);
        if (honey.grams <= 0) continue;
        minder.how = minder.inDrumG > 0 ? weaker(minder.how, honey.how) : honey.how;
        minder.inDrumG += honey.grams;
    }
    mindStrainer(file, *run, on, minder);
    minder.turning = turning && !loads.loads.empty();
    double drum = minder.inDrumG;
    if (minder.turning)
        minder.how = minder.inDrumG > 0 ? weaker(minder.how, How::Assumed) : How::Assumed;
    for (std::size_t n = 0; n < loads.loads.size() && !minder.openBefore; ++n) {
        drum += honeyIn(loads.loads[n]);
        if (minder.turning && n == 0) minder.inDrumG = drum;
        if (drum <= minder.drumG) continue;
        // A load that overfills an empty drum by itself: the gate is open while it spins.
        minder.openBefore = loads.loads[n].number;
        minder.now = minder.turning && n == 0;
        minder.beforeNext = n == (minder.turning ? 1U : 0U);
    }
    mindBucket(bucketSheet(file, id, on), minder);
    mindLots(file, *run, loads, on, minder);
    return minder;
}

}  // namespace combwright
