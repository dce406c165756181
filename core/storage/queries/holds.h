// What is held back, asked at once for all boxes and frames. A hold sticks to the thing: one on a
// colony holds every box that stood on its hive while it held or when it ended, wherever the box
// went since; one on a box holds every frame in it, and every frame taken out of it meanwhile.
#pragma once

#include <map>
#include <string_view>
#include <vector>

#include "core/model/frames/frame.h"
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

/// Boxes cleared off a hive so many days before its colony ended still count as its boxes: what
/// killed it was in them too. Common practice, no source.
inline constexpr int clearedBeforeEndDays = 14;

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

/// The hold that quarantines a hive: one on the colony that lives there, or lived there last, or on
/// a box that stands on it.
std::optional<Hold> quarantineOn(const Read& file, const HeldThings& held, Id<Hive> hive, Day on);

/// Why a frame is held by its own verdict: "dead brood", "suspected foulbrood", else "hold". Empty
/// where its verdict is another.
std::string_view heldByVerdict(const Frame& frame);
/// The frames in use of a box that are held by their own verdict.
std::vector<Frame> heldByVerdict(const Read& file, Id<Box> box);

/// The colony living in a hive, else the one that ended there last; nothing where none ever lived.
std::optional<Colony> lastColonyIn(const Read& file, Id<Hive> hive, Day on);

}  // namespace combwright
