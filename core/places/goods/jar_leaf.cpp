#include "core/places/goods/jar_leaf.h"

#include <algorithm>
#include <array>
#include <set>

#include "core/places/trace/trace_back.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/vessel_holds.h"

namespace combwright {
namespace {

constexpr std::array<std::pair<std::string_view, bool LeafTold::*>, 8> leafWords{
    {{"place", &LeafTold::place},
     {"weeks", &LeafTold::weeks},
     {"hives", &LeafTold::hives},
     {"work", &LeafTold::work},
     {"water", &LeafTold::water},
     {"colour", &LeafTold::colour},
     {"taste", &LeafTold::taste},
     {"medicines", &LeafTold::medicines}}};

Result<LeafTold> leafSet(const std::string& words, LeafTold told, bool to, const char* field) {
    std::string word;
    const auto take = [&]() -> Result<void> {
        if (word.empty()) return {};
        for (const auto& [key, member] : leafWords)
            if (key == word) {
                told.*member = to;
                word.clear();
                return {};
            }
        std::string all;
        for (const auto& [key, member] : leafWords)
            all += (all.empty() ? "" : ", ") + std::string(key);
        return Refusal{Code::NotAChoice, field, {{"value", word}, {"choices", all}}};
    };
    for (const char letter : words) {
        if (letter != ',' && letter != ' ') {
            word += letter;
            continue;
        }
        if (auto ok = take(); !ok) return ok.error();
    }
    if (auto ok = take(); !ok) return ok.error();
    return told;
}

void onlyOnce(std::vector<std::string>& all, const std::string& one) {
    if (!one.empty() && std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
}

void takeTraits(const HoneyTraits& traits, JarLeaf& leaf) {
    onlyOnce(leaf.strainers, traits.strainer);
    onlyOnce(leaf.colours, traits.colour);
    onlyOnce(leaf.tastes, traits.taste);
}

void takeWork(const Read& file, const Vessel& vessel, JarLeaf& leaf) {
    const auto steps = vessel.bucket ? file.where<HoneyStep>({is("bucket", *vessel.bucket)})
                                     : file.where<HoneyStep>({is("lot", *vessel.lot)});
    for (const HoneyStep& step : steps) {
        if (step.on > leaf.bottling.on || step.work == HoneyWork::Skimmed) continue;
        leaf.warmed = true;
        leaf.creamed = leaf.creamed || step.work == HoneyWork::Creamed;
        leaf.dried = leaf.dried || step.work == HoneyWork::Dried;
        if (step.temperature)
            leaf.warmest = std::max(leaf.warmest.value_or(*step.temperature), *step.temperature);
    }
}

/// The newest reading up to the day of filling that can be trusted: anything else is not told.
void takeLeafWater(const Read& file, const Vessel& vessel, JarLeaf& leaf) {
    const auto readings = vessel.bucket ? file.where<WaterReading>({is("bucket", *vessel.bucket)})
                                        : file.where<WaterReading>({is("lot", *vessel.lot)});
    std::optional<WaterReading> newest;
    for (const WaterReading& each : readings)
        if (each.on <= leaf.bottling.on && (!newest || each.on >= newest->on)) newest = each;
    if (!newest) return;
    if (newest->corrected)
        leaf.water = newest->corrected;
    else if (newest->compensates == true)
        leaf.water = newest->water;
}

void takeLeafRun(const Read& file, const TraceRun& run, JarLeaf& leaf,
                 std::set<std::int64_t>& hives) {
    onlyOnce(leaf.yards, run.yard);
    if (const auto yard = file.find(run.run.yard)) onlyOnce(leaf.places, yard->place);
    leaf.extractedFrom = std::min(leaf.extractedFrom.value_or(run.run.on), run.run.on);
    leaf.extractedTo = std::max(leaf.extractedTo.value_or(run.run.on), run.run.on);
    for (const auto& [box, frames] : framesSpun(file, run.run.id)) leaf.frames += frames;
    for (const TraceBox& each : run.boxes) {
        ++leaf.boxes;
        if (each.on) leaf.boxesOn = std::min(leaf.boxesOn.value_or(*each.on), *each.on);
        if (!each.entry.hive) {
            ++leaf.boxesUnknown;
            continue;
        }
        hives.insert(each.entry.hive->number);
        auto stack = std::find_if(leaf.stacks.begin(), leaf.stacks.end(),
                                  [&](const LeafStack& known) { return known.hive == each.hive; });
        if (stack == leaf.stacks.end())
            stack = leaf.stacks.insert(leaf.stacks.end(), {each.hive, {}});
        const auto box = file.find(each.entry.box);
        const auto kind = box ? file.find(box->kind) : std::nullopt;
        if (kind && kind->outerHeight) stack->boxHeightsMm.push_back(kind->outerHeight->mm());
    }
    for (const TraceMedicine& each : run.medicines)
        onlyOnce(leaf.medicines, each.line.medicine.name.text());
}

}  // namespace

Result<LeafTold> leafWithout(const std::string& words, LeafTold told) {
    return leafSet(words, told, false, "without");
}

Result<LeafTold> leafWith(const std::string& words, LeafTold told) {
    return leafSet(words, told, true, "with");
}

std::optional<JarLeaf> jarLeaf(const Read& file, Id<Bottling> id) {
    const OneState still(file);
    const auto bottling = file.find(id);
    if (!bottling) return std::nullopt;
    JarLeaf leaf;
    leaf.bottling = *bottling;
    const Vessel filledFrom = vesselOf(*bottling);
    for (const Vessel& vessel : vesselsBehind(file, filledFrom)) {
        takeWork(file, vessel, leaf);
        if (const auto bucket = file.find(vessel.bucket)) takeTraits(bucket->traits, leaf);
        if (const auto lot = file.find(vessel.lot)) takeTraits(lot->traits, leaf);
    }
    takeLeafWater(file, filledFrom, leaf);
    const TraceBack back = traceBack(file, *bottling, lastOfAllDays);
    leaf.blends = static_cast<std::int64_t>(back.blends.size());
    for (const TraceSource& source : back.sources) {
        if (source.vessel.bucket) ++leaf.buckets;
        const auto lot = file.find(source.vessel.lot);
        if (lot && lot->origin == LotOrigin::BoughtIn) leaf.boughtFrom.push_back(lot->supplier);
    }
    std::set<std::int64_t> hives;
    for (const TraceRun& run : back.runs) takeLeafRun(file, run, leaf, hives);
    leaf.hives = static_cast<std::int64_t>(hives.size());
    std::erase_if(leaf.stacks, [](const LeafStack& stack) { return stack.boxHeightsMm.empty(); });
    return leaf;
}

}  // namespace combwright
