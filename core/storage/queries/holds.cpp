#include "core/storage/queries/holds.h"

#include <algorithm>

#include "core/model/yard/yard.h"

namespace combwright {
namespace {

bool stands(const Hold& hold, Day on) {
    return hold.since <= on && (!hold.lifted || *hold.lifted > on);
}

/// Boxes of a colony: those on its hive while it lived or since it ended and nobody else moved in.
std::vector<Id<Box>> boxesOfColony(const Read& file, const Colony& colony, Day on) {
    std::vector<Id<Box>> boxes;
    const Day day = colony.ended && *colony.ended < on ? *colony.ended : on;
    for (const Box& box : file.where<Box>({is("hive", colony.hive)}))
        if (box.place == BoxPlace::OnHive && box.since <= day) boxes.push_back(box.id);
    // Taken off since: they stood on the hive on the day it ended.
    for (const BoxMove& move : file.where<BoxMove>({is("from_hive", colony.hive)}))
        if (move.fromPlace == BoxPlace::OnHive && move.on >= day && move.on <= on)
            boxes.push_back(move.box);
    std::sort(boxes.begin(), boxes.end(), [](Id<Box> a, Id<Box> b) { return a.number < b.number; });
    boxes.erase(std::unique(boxes.begin(), boxes.end()), boxes.end());
    return boxes;
}

}  // namespace

std::vector<Hold> HeldThings::of(const Frame& frame) const {
    std::vector<Hold> all;
    if (const auto own = frames.find(frame.id.number); own != frames.end()) all = own->second;
    if (frame.box)
        if (const auto whole = boxes.find(frame.box->number); whole != boxes.end())
            all.insert(all.end(), whole->second.begin(), whole->second.end());
    return all;
}

HeldThings heldThings(const Read& file, Day on) {
    HeldThings held;
    for (const Hold& hold : file.all<Hold>()) {
        if (!stands(hold, on)) continue;
        if (hold.frame) held.frames[hold.frame->number].push_back(hold);
        if (hold.box) held.boxes[hold.box->number].push_back(hold);
        if (!hold.colony) continue;
        held.colonies[hold.colony->number].push_back(hold);
        if (const auto colony = file.find(*hold.colony))
            for (const Id<Box> box : boxesOfColony(file, *colony, on))
                held.boxes[box.number].push_back(hold);
    }
    return held;
}

}  // namespace combwright
