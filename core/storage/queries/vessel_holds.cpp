#include "core/storage/queries/vessel_holds.h"

#include <algorithm>
#include <set>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/trace.h"
#include "core/storage/queries/vessel_books.h"

namespace combwright {
namespace {

void holdOnce(std::vector<Hold>& holds, const Hold& hold) {
    if (std::none_of(holds.begin(), holds.end(),
                     [&](const Hold& each) { return each.id == hold.id; }))
        holds.push_back(hold);
}

/// Whether the colony lived in the hive at some time in the year up to a day: its bees may have
/// filled what was taken off then.
bool filledUpTo(const Read& file, Id<Colony> id, Id<Hive> hive, Day on) {
    const auto colony = file.find(id);
    if (!colony) return false;
    for (const ColonyStay& stay : colonyStaysOf(file, *colony))
        if (stay.hive == hive && stay.from <= on &&
            (!stay.to || *stay.to > on - days(suspectedAfterRunDays)))
            return true;
    return false;
}

}  // namespace

std::vector<Vessel> vesselsBehind(const Read& file, const Vessel& vessel) {
    std::vector<Vessel> behind{vessel};
    if (!vessel.lot) return behind;
    std::map<std::int64_t, std::vector<LotPart>> poured;
    for (LotPart& part : partsBehind(file, {*vessel.lot}, lastOfAllDays))
        poured[part.lot.number].push_back(part);
    std::set<Vessel> met{vessel};
    for (std::size_t at = 0; at < behind.size(); ++at) {
        if (!behind[at].lot) continue;
        for (const LotPart& part : poured[behind[at].lot->number])
            if (const Vessel from{part.bucket, part.from}; met.insert(from).second)
                behind.push_back(from);
    }
    return behind;
}

std::vector<ExtractionBox> boxesThatGave(const Read& file, Id<Extraction> run) {
    auto boxes = file.where<ExtractionBox>({is("extraction", run)});
    const auto went = framesOfBoxes(file, run);
    const bool loadsWritten = std::any_of(went.begin(), went.end(),
                                          [](const auto& each) { return each.second.spun > 0; });
    if (!loadsWritten) return boxes;
    std::erase_if(boxes, [&](const ExtractionBox& box) {
        const auto found = went.find(box.id.number);
        const bool spun = found != went.end() && found->second.spun > 0;
        return !spun && !(box.wet && box.wet->value);
    });
    return boxes;
}

HeldHoney::HeldHoney(const Read& file, Day on) : m_file(file), m_on(on) {
    for (Hold& hold : file.all<Hold>())
        if (standsOn(hold, on)) m_standing.push_back(std::move(hold));
}

std::vector<Hold> HeldHoney::own(const Vessel& vessel) const {
    std::vector<Hold> holds;
    for (const Hold& hold : m_standing)
        if (isOwn(hold, vessel)) holds.push_back(hold);
    return holds;
}

const std::vector<Hold>& HeldHoney::ofRun(Id<Extraction> id) {
    const auto known = m_ofRuns.find(id.number);
    if (known != m_ofRuns.end()) return known->second;
    auto& holds = m_ofRuns[id.number];
    const auto run = m_file.find(id);
    if (!run) return holds;
    if (!m_things) m_things = heldThings(m_file, m_on);
    for (const ExtractionBox& box : boxesThatGave(m_file, id)) {
        if (box.box)
            for (const Hold& hold : m_things->of(*box.box))
                if (hold.since <= run->on) holdOnce(holds, hold);
        for (const Hold& hold : m_standing) {
            if (!quarantines(hold) || hold.since > run->on + days(suspectedAfterRunDays)) continue;
            const bool onBox = hold.box && hold.box == box.box;
            const bool onHive =
                hold.colony && box.hive && filledUpTo(m_file, *hold.colony, *box.hive, run->on);
            if (onBox || onHive) holdOnce(holds, hold);
        }
    }
    return holds;
}

std::vector<Hold> HeldHoney::of(const Vessel& vessel) {
    if (m_standing.empty()) return {};
    std::vector<Hold> holds;
    for (const Vessel& each : vesselsBehind(m_file, vessel)) {
        for (const Hold& hold : own(each)) holdOnce(holds, hold);
        if (const auto bucket = m_file.find(each.bucket))
            for (const Hold& hold : ofRun(bucket->extraction)) holdOnce(holds, hold);
    }
    return holds;
}

std::vector<Hold> HeldHoney::of(Id<Bottling> id) {
    if (m_standing.empty()) return {};
    std::vector<Hold> holds;
    for (const Hold& hold : m_standing)
        if (hold.bottling == id) holdOnce(holds, hold);
    if (const auto bottling = m_file.find(id))
        for (const Hold& hold : of(vesselOf(*bottling))) holdOnce(holds, hold);
    return holds;
}

std::vector<Hold> holdsOn(const Read& file, const Vessel& vessel, Day on) {
    return HeldHoney(file, on).of(vessel);
}

std::vector<Hold> holdsOn(const Read& file, Id<Bottling> bottling, Day on) {
    return HeldHoney(file, on).of(bottling);
}

TreatedShare treatedShare(const Read& file, const Vessel& vessel, Day on) {
    TreatedShare share;
    const auto behind = vesselsBehind(file, vessel);
    const VesselHeads heads(file, behind);
    std::map<std::int64_t, const Extraction*> runs;
    for (const Vessel& each : behind) {
        if (const Extraction* run = heads.run(each)) runs.emplace(run->id.number, run);
        if (const Lot* lot = heads.lot(each))
            share.boughtIn = share.boughtIn || lot->origin == LotOrigin::BoughtIn;
    }
    for (const auto& [number, run] : runs) {
        std::vector<Id<Box>> boxes;
        for (const ExtractionBox& box : boxesThatGave(file, run->id)) {
            ++share.of;
            if (box.box)
                boxes.push_back(*box.box);
            else
                ++share.unknown;
        }
        std::set<std::int64_t> treated;
        for (const Hold& hold : file.whereAny<Hold>("box", boxes))
            if (hold.why == HoldWhy::TreatedWhileOn && hold.since <= run->on && standsOn(hold, on))
                treated.insert(hold.box->number);
        share.boxes += static_cast<int>(std::count_if(
            boxes.begin(), boxes.end(), [&](Id<Box> box) { return treated.contains(box.number); }));
    }
    return share;
}

TreatedShare treatedShare(const Read& file, Id<Bottling> id, Day on) {
    const auto bottling = file.find(id);
    return bottling ? treatedShare(file, vesselOf(*bottling), on) : TreatedShare{};
}

}  // namespace combwright
