#include "core/trade/extractor/spin_loads.h"

#include <algorithm>
#include <utility>

#include "core/trade/extractor/spin_group.h"
#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

/// The frames of one group, as indices of the whole list.
using GroupMembers = std::vector<std::size_t>;

/// The place of a name in the order names are first met.
template <class Name>
std::size_t placeOf(std::vector<Name>& met, const Name& name) {
    const auto found = std::find(met.begin(), met.end(), name);
    if (found != met.end()) return static_cast<std::size_t>(found - met.begin());
    met.push_back(name);
    return met.size() - 1;
}

std::optional<Refusal> refuseRules(const std::vector<SpinFrame>& frames, const SpinRules& rules) {
    for (const SpinFrame& each : frames) {
        const std::string field = "slots." + each.kind;
        const auto found = rules.slotsOfKind.find(each.kind);
        if (found == rules.slotsOfKind.end()) return Refusal{Code::Missing, field, {}};
        if (found->second < fewestSlots || found->second > mostSlots)
            return outOfRange(field, static_cast<double>(found->second),
                              static_cast<double>(fewestSlots), static_cast<double>(mostSlots));
    }
    if (rules.openBoxes && *rules.openBoxes < 1)
        return outOfRange("open_boxes", static_cast<double>(*rules.openBoxes), 1.0,
                          static_cast<double>(frames.size()));
    return std::nullopt;
}

std::optional<Refusal> refuseSpinFrames(const std::vector<SpinFrame>& frames) {
    std::vector<LoadedFrame> bare;
    bare.reserve(frames.size());
    for (const SpinFrame& each : frames) bare.push_back(each.frame);
    return refuseFrames(bare);
}

/// Frames that may share a load, the groups in the order they are spun: lot by lot, kind by kind.
std::vector<GroupMembers> groupsOf(const std::vector<SpinFrame>& frames, const SpinRules& rules) {
    std::vector<std::optional<std::string>> lots;
    std::vector<std::string> kinds;
    std::map<std::pair<std::size_t, std::size_t>, GroupMembers> byKey;
    for (std::size_t i = 0; i < frames.size(); ++i) {
        const std::size_t lot = rules.mixLots ? 0 : placeOf(lots, frames[i].lot);
        const std::string sameSlots = std::to_string(rules.slotsOfKind.at(frames[i].kind));
        const std::size_t kind = placeOf(kinds, rules.mixKinds ? sameSlots : frames[i].kind);
        byKey[{lot, kind}].push_back(i);
    }
    std::vector<GroupMembers> groups;
    groups.reserve(byKey.size());
    for (auto& [key, members] : byKey) groups.push_back(std::move(members));
    return groups;
}

/// The boxes of a group: which of them other groups have begun before or go on with.
BoxFlow flowOf(const std::vector<GroupMembers>& groups, std::size_t at,
               const std::vector<std::size_t>& boxOfFrame, std::size_t boxCount) {
    std::vector<BoxFlow::Box> all(boxCount);
    for (std::size_t g = 0; g < groups.size(); ++g)
        for (const std::size_t frame : groups[g]) {
            BoxFlow::Box& box = all[boxOfFrame[frame]];
            box.begunBefore = box.begunBefore || g < at;
            box.goesOn = box.goesOn || g > at;
        }
    std::vector<std::size_t> met;
    std::vector<std::size_t> boxOf;
    for (const std::size_t frame : groups[at]) boxOf.push_back(placeOf(met, boxOfFrame[frame]));
    std::size_t standing = 0;
    for (std::size_t b = 0; b < boxCount; ++b)
        if (all[b].begunBefore && all[b].goesOn &&
            std::find(met.begin(), met.end(), b) == met.end())
            ++standing;
    std::vector<BoxFlow::Box> boxes;
    boxes.reserve(met.size());
    for (const std::size_t b : met) boxes.push_back(all[b]);
    return {std::move(boxes), std::move(boxOf), standing};
}

/// Where each frame of a load hangs.
PlannedLoad hungUp(const std::vector<SpinFrame>& frames, GroupMembers members,
                   std::size_t slotCount, const RingWork& work) {
    std::sort(members.begin(), members.end());
    std::vector<LoadedFrame> bare;
    bare.reserve(frames.size());
    PlannedLoad load;
    for (const std::size_t i : members) {
        bare.push_back(frames[i].frame);
        placeOf(load.kinds, frames[i].kind);
        if (frames[i].lot) placeOf(load.lots, *frames[i].lot);
    }
    const auto balance = balanceLoad(static_cast<std::int64_t>(slotCount), bare, work);
    load.places = balance->places;
    for (auto& frame : load.places)
        if (frame) frame = members[*frame];
    load.offset = balance->offset;
    return load;
}

/// Many loads share the work that a single one may take.
RingWork workForEach(std::size_t loads) {
    constexpr std::size_t inFull = 30;
    RingWork work = thoroughRingWork();
    if (loads <= inFull) return work;
    const auto part = static_cast<std::int64_t>(loads);
    work.sampleTrials = work.sampleTrials * static_cast<std::int64_t>(inFull) / part;
    work.proofTrials = work.proofTrials * static_cast<std::int64_t>(inFull) / part;
    return work;
}

}  // namespace

Result<std::vector<PlannedLoad>> planSpinLoads(const std::vector<SpinFrame>& frames,
                                               const SpinRules& rules) {
    if (const auto refused = refuseSpinFrames(frames)) return *refused;
    if (const auto refused = refuseRules(frames, rules)) return *refused;
    std::vector<std::string> boxes;
    std::vector<std::size_t> boxOfFrame;
    boxOfFrame.reserve(frames.size());
    for (const SpinFrame& each : frames) boxOfFrame.push_back(placeOf(boxes, each.box));

    const std::vector<GroupMembers> groups = groupsOf(frames, rules);
    const RingWork work = workForEach(static_cast<std::size_t>(countSpinLoads(frames, rules)));
    std::vector<PlannedLoad> loads;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        SpinGroup group{0,  {}, flowOf(groups, g, boxOfFrame, boxes.size()), {}, rules.sameScoreG,
                        1.0};
        group.slotCount =
            static_cast<std::size_t>(rules.slotsOfKind.at(frames[groups[g].front()].kind));
        if (rules.openBoxes) group.openBoxes = static_cast<std::size_t>(*rules.openBoxes);
        group.workShare =
            static_cast<double>(groups[g].size()) / static_cast<double>(frames.size());
        for (const std::size_t frame : groups[g]) group.frames.push_back(frames[frame].frame);

        const GroupPlan plan = planGroup(group);
        if (plan.loads.empty())
            return outOfRange("open_boxes", static_cast<double>(*rules.openBoxes),
                              static_cast<double>(plan.leastOpen),
                              static_cast<double>(boxes.size()));
        for (const SpinPlaces& places : plan.loads) {
            GroupMembers members;
            for (const auto& frame : places)
                if (frame) members.push_back(groups[g][*frame]);
            loads.push_back(hungUp(frames, std::move(members), group.slotCount, work));
        }
    }
    return loads;
}

Result<std::optional<std::int64_t>> slotsOfLoad(const std::vector<SpinFrame>& frames,
                                                const SpinRules& rules) {
    if (const auto refused = refuseRules(frames, rules)) return *refused;
    if (frames.empty()) return std::optional<std::int64_t>();
    const SpinFrame& first = frames.front();
    const std::int64_t slotCount = rules.slotsOfKind.at(first.kind);
    for (std::size_t i = 0; i < frames.size(); ++i) {
        const std::string field = "frames[" + std::to_string(i) + "].";
        const bool fits = rules.slotsOfKind.at(frames[i].kind) == slotCount && rules.mixKinds;
        if (frames[i].kind != first.kind && !fits)
            return Refusal{Code::Contradiction, field + "kind", {{"other", first.kind}}};
        if (frames[i].lot != first.lot && !rules.mixLots)
            return Refusal{Code::Contradiction, field + "lot", {{"other", first.lot.value_or("")}}};
    }
    if (frames.size() > static_cast<std::size_t>(slotCount))
        return Refusal{Code::TooMany, "frames", {{"most", std::to_string(slotCount)}}};
    return std::optional(slotCount);
}

std::int64_t countSpinLoads(const std::vector<SpinFrame>& frames, const SpinRules& rules) {
    std::int64_t loads = 0;
    for (const GroupMembers& group : groupsOf(frames, rules)) {
        const std::int64_t slotCount = rules.slotsOfKind.at(frames[group.front()].kind);
        loads += (static_cast<std::int64_t>(group.size()) + slotCount - 1) / slotCount;
    }
    return loads;
}

}  // namespace combwright
