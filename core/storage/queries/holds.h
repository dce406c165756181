// What is held back, asked at once for all boxes and frames. A hold sticks to the thing: one on a
// colony holds every box that stood on its hive while it held or when it ended, wherever the box
// went since; one on a box holds every frame in it, and every frame taken out of it meanwhile.
#pragma once

#include <map>
#include <vector>

#include "core/model/season_info.h"
#include "core/storage/rows.h"

namespace combwright {

/// Nothing leaves and nothing is shared: disease is suspected, or something went from or to where
/// it is.
inline bool quarantines(const Hold& hold) {
    return hold.why == HoldWhy::SuspectedDisease || hold.why == HoldWhy::Contact;
}
/// Its comb and honey go to no other hive and its frames are no stock: a dead-out nobody explained,
/// and what is quarantined.
inline bool keepsApart(const Hold& hold) {
    return hold.why == HoldWhy::DeadOutUnexplained || quarantines(hold);
}
inline bool standsOn(const Hold& hold, Day on) {
    return hold.since <= on && (!hold.lifted || *hold.lifted > on);
}

struct HeldThings {
    std::map<std::int64_t, std::vector<Hold>> boxes;   ///< by box, with the holds of its colony
    std::map<std::int64_t, std::vector<Hold>> frames;  ///< by frame: its own, and those it brought
                                                       ///< out of a box that was held
    std::map<std::int64_t, std::vector<Hold>> colonies;

    bool holds(Id<Box> box) const { return boxes.contains(box.number); }
    /// Itself or by its box.
    bool holds(const Frame& frame) const {
        return frames.contains(frame.id.number) || (frame.box && holds(*frame.box));
    }
    /// Why, the first hold first; nothing where it is not held.
    std::vector<Hold> of(Id<Box> box) const;
    /// Its own holds, those it brought, those of its box; each once.
    std::vector<Hold> of(const Frame& frame) const;
    /// The first hold that quarantines the box, or that keeps it apart.
    std::optional<Hold> quarantine(Id<Box> box) const;
    std::optional<Hold> apart(Id<Box> box) const;
};

/// Holds that stand on a day. A few queries for each colony held, none for each box.
HeldThings heldThings(const Read& file, Day on);

/// Whether any hold that stands on a day keeps something apart: asked before the dearer question.
bool anythingApart(const Read& file, Day on);

/// The colony living in a hive, else the one that ended there last; nothing where none ever lived.
std::optional<Colony> lastColonyIn(const Read& file, Id<Hive> hive, Day on);

}  // namespace combwright
