// What there is: frames by kind and by what they count as, boxes by kind, and everything else, on
// the shelf and on hives. The need of next season, the work list and the stock-take are asked of
// this, so that they cannot disagree. What nobody counted is not counted; it is never 0.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/storeroom/equipment.h"
#include "core/model/yard/yard.h"
#include "core/places/storeroom/frame_use.h"
#include "core/storage/rows.h"

namespace combwright {

/// Where a box stands, as far as it may be used for something else.
enum class BoxStands {
    Nest,       ///< of a living colony: under its excluder, or a brood box without one
    Super,      ///< on a living colony; free next spring
    EmptyHive,  ///< no colony lives there any more
    Store,      ///< in the storeroom, the honey room or on the way there
    Freezer,
    Lent
};

/// A box still about, neither gone nor scrapped nor burnt.
struct StockBox {
    Box box;
    BoxStands stands = BoxStands::Store;
    bool held = false;
    bool counted = false;  ///< somebody said what frames are in it, if it were that there are none

    /// May be put on next season, mended first where it needs repair.
    bool isFree() const { return !held && stands != BoxStands::Nest && stands != BoxStands::Lent; }
    bool isSound() const { return box.condition != BoxCondition::NeedsRepair; }
};

/// Boxes of one kind.
struct BoxStock {
    BoxKind kind;
    std::int64_t about = 0;
    // By condition, wherever they are.
    std::int64_t sound = 0, toScrape = 0, needRepair = 0, wantPaint = 0;
    // By where they are, held or not.
    std::int64_t inNests = 0, supersOn = 0, onEmptyHives = 0, inStore = 0, inFreezer = 0, lent = 0;
    std::int64_t held = 0;
    std::int64_t usable = 0;      ///< free and whole, to be scraped or not
    std::int64_t repairable = 0;  ///< free once mended
    std::int64_t notCounted = 0;  ///< free, and nobody said what frames are in it
};

/// How many frames count as what.
class UseCounts {
  public:
    std::int64_t& operator[](FrameUse use) { return m_counts[static_cast<std::size_t>(use)]; }
    std::int64_t operator[](FrameUse use) const { return m_counts[static_cast<std::size_t>(use)]; }
    std::int64_t sum() const;

  private:
    std::array<std::int64_t, 7> m_counts{};
};

/// Frames of one kind. Kept: here or on a hive. Every frame ever entered is kept, melted, burnt,
/// sold, missing, or gone with its box.
struct FramesOfKind {
    FrameKind kind;
    UseCounts use;                              ///< of those free: not in nests, not lent
    std::map<std::string, std::int64_t> state;  ///< of those free, by the letters of their faults
    std::int64_t inNests = 0, lent = 0, loose = 0;
    std::int64_t kept = 0, melted = 0, burnt = 0, sold = 0, missing = 0;
    std::int64_t gone = 0;  ///< with a box that is gone, scrapped or burnt; back with it
    std::int64_t boxesCounted = 0, boxesNotCounted = 0;  ///< free boxes that take it

    std::int64_t ever() const { return kept + melted + burnt + sold + missing + gone; }
    /// Those that should be there: what is kept and what was found missing.
    std::int64_t expected() const { return kept + missing; }
    /// Looked for and not found, or in boxes nobody counted, or of unknown comb.
    bool inDoubt() const { return boxesNotCounted > 0 || use[FrameUse::Unknown] > 0; }
};

/// Pieces of one item. What is on hives is counted from the hives: an open one has a floor and a
/// lid, an excluder where one is recorded. Nothing where hives say nothing of the item.
struct EquipmentStock {
    EquipmentItem item = EquipmentItem::Other;
    std::vector<Equipment> kinds;                        ///< as they were counted or described
    std::vector<std::optional<Day>> lastCounts;          ///< of each of them, in the same order
    std::optional<std::int64_t> onHand, inRepair, lent;  ///< in the shed; none: nobody counted
    std::optional<std::int64_t> inUse;                   ///< on hives where a colony lives
    std::optional<std::int64_t> onEmptyHives;            ///< where none does, and none is held
    std::optional<std::int64_t> held;
    std::optional<Day> counted;  ///< when, the kind counted longest ago
    bool wholly = false;         ///< every kind of it has been counted

    /// Whole pieces that are known of: on hand, in use, on empty hives.
    std::int64_t there() const {
        return onHand.value_or(0) + inUse.value_or(0) + onEmptyHives.value_or(0);
    }
};

struct Stock {
    Day on;
    std::int64_t colonies = 0;  ///< living
    std::vector<StockBox> boxes;
    std::vector<Frame> frames;  ///< kept, in the order of the file
    std::vector<BoxStock> boxKinds;
    std::vector<FramesOfKind> frameKinds;
    std::vector<EquipmentStock> equipment;  ///< one of each item, in the order of the words

    const BoxStock* of(Id<BoxKind> kind) const;
    const FramesOfKind* of(Id<FrameKind> kind) const;
    const EquipmentStock& of(EquipmentItem item) const;
};

/// A line of the stock-take: a kind known already, or an item nobody counted yet.
struct StockTakeRow {
    EquipmentItem item = EquipmentItem::Other;
    std::optional<Equipment> kind;
    std::optional<std::int64_t> inUse;  ///< on hives; said once, at the first kind of an item
    std::optional<Day> counted;         ///< its own last count
};

/// As the file stands, with the holds of that day.
Stock stockOn(const Read& file, Day on);

/// The lines of the sheet and of the form it is typed into, both in this order.
std::vector<StockTakeRow> stockTake(const Stock& stock);

}  // namespace combwright
