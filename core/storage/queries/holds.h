// What is held back, asked at once for all boxes and frames. A hold on a colony holds every box
// that stands on its hive or stood there when it ended; a hold on a box holds every frame in it.
#pragma once

#include <map>
#include <vector>

#include "core/model/season_info.h"
#include "core/storage/rows.h"

namespace combwright {

struct HeldThings {
    std::map<std::int64_t, std::vector<Hold>> boxes;   ///< by box, with the holds of its colony
    std::map<std::int64_t, std::vector<Hold>> frames;  ///< by frame, its own holds only
    std::map<std::int64_t, std::vector<Hold>> colonies;

    bool holds(Id<Box> box) const { return boxes.contains(box.number); }
    /// Itself or by its box.
    bool holds(const Frame& frame) const {
        return frames.contains(frame.id.number) || (frame.box && holds(*frame.box));
    }
    /// Why, the first hold first; nothing where it is not held.
    std::vector<Hold> of(const Frame& frame) const;
};

/// Holds that stand on a day. A constant number of queries however many boxes there are.
HeldThings heldThings(const Read& file, Day on);

}  // namespace combwright
