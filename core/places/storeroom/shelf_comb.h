// The combs of the storeroom as a moth sees them: which hold what it eats, which the cold has been
// through, which lie in the freezer now. Freezer, shelf danger and the homeward way of wet boxes
// ask here, so that they cannot disagree about a frame.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/model/storeroom/equipment.h"
#include "core/places/storeroom/frame_use.h"
#include "core/storage/queries/holds.h"

namespace combwright {

/// What of a comb feeds the wax moth: cocoons and skins of brood, pollen. New white comb is hardly
/// ever hit (University of Illinois).
enum class MothFood {
    None,       ///< white comb of a super, as far as is known
    Brood,      ///< stood in the nest, brood was seen in it, or it is dark or shows dead brood
    BroodKind,  ///< a deep comb nobody said anything else of: taken for brood comb
    Pollen,
    Web  ///< moths have been in it already
};

/// A frame from about this height on is taken for a brood frame where nobody knows better. Common
/// practice, no source: deeps are 220 mm and more, mediums 160.
inline constexpr double broodFrameMm = 200.0;

struct ShelfFrame {
    Frame frame;
    FrameUse use = FrameUse::Unknown;
    bool held = false;  ///< by a hold or by its verdict
    MothFood food = MothFood::None;
    bool wet = false;
    bool frozen = false;        ///< and nothing has undone it since
    std::optional<Day> undone;  ///< when what the cold had done was undone: it was on a hive since
    std::optional<Id<FreezerLoad>> load;  ///< lies in the freezer now

    /// Comb a moth can eat, kept or not; a frame that was never drawn has none.
    bool comb() const;
};

/// A box, or a shelf of loose frames.
struct ShelfBox {
    std::optional<Box> box;  ///< none: loose frames
    std::optional<BoxKind> kind;
    std::string name;   ///< its mark, else "#12"; the shelf of loose frames, may be empty
    std::string stack;  ///< where it stands
    std::optional<Id<Hive>> cameOff;  ///< the hive it stood on last
    std::optional<Day> offSince;      ///< the day it came off
    std::vector<ShelfFrame> frames;   ///< not retired, in the order of their ids

    /// Stands in the storeroom, the honey room or the freezer, not with bees and not elsewhere.
    bool onShelf() const;
};

/// Every box still about that has frames or is on the shelf, in the order of ids; loose frames
/// last, a shelf each. A constant number of queries.
std::vector<ShelfBox> shelfComb(const Read& file, Day on);

/// One box alone, for an action.
ShelfBox shelfBox(const Read& file, Id<Box> box, Day on);
/// All loose frames together, whatever shelf they lie on.
ShelfBox looseFrames(const Read& file, Day on);

/// Which of the frames are meant by "6", "all" or "6 with these faults": those the cold is for
/// first, held ones last, never one that lies in the freezer. Where `many` is left out all drawn
/// comb that is kept, or all of the held where nothing else is there. Positions in `frames`.
std::vector<std::size_t> framesMeant(const std::vector<ShelfFrame>& frames,
                                     std::optional<Count> many, const std::string& faults,
                                     std::optional<Id<FrameKind>> kind = std::nullopt);

/// Whether a frame bears all those letters.
bool bearsFaults(const Frame& frame, const std::string& letters);

}  // namespace combwright
