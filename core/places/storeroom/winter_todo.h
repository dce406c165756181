// The work of the winter: what is to be scraped, mended, refitted, melted and frozen, what it
// takes, what is held back and why, and what stands in which stack. Read off the stock; ticking a
// piece of work is an action, and the list is then shorter.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/season_info.h"
#include "core/places/storeroom/stock.h"
#include "core/storage/rows.h"

namespace combwright {

/// A box with work on it.
struct TodoBox {
    Id<Box> box;
    std::string name;  ///< its mark, or where it stands
    std::string kind;
    std::string stack;
    std::string wood;  ///< what was broken, as typed at its last look
    bool held = false;
};

/// So many frames of a box, or loose ones of a shelf.
struct TodoPart {
    std::optional<Id<Box>> box;
    std::string name;  ///< of the box, or of the shelf; empty for loose ones without a shelf
    std::int64_t frames = 0;
};

/// Frames of one kind with the same work before them, none of them held.
struct TodoFrames {
    Verdict verdict = Verdict::Keep;
    FrameKind kind;
    std::int64_t frames = 0;
    std::vector<TodoPart> parts;
    bool combGone = false;  ///< to refit, and the comb is in the pot already
};

/// What refitting takes of one kind of frame.
struct TodoMaterial {
    FrameKind kind;
    std::int64_t refit = 0, repair = 0, bare = 0;  ///< frames that lack foundation
    std::optional<std::int64_t> sheetsThere;       ///< none: nobody counted

    std::int64_t sheets() const { return refit + repair + bare; }
};

/// Something held back.
struct TodoHold {
    std::string what;            ///< a box, a hive's colony, frames
    std::optional<HoldWhy> why;  ///< none: held by its verdict alone
    std::optional<Day> since;
    std::string note;
    std::int64_t frames = 0;
};

struct StackedContents {
    std::string box;
    std::string kind;
    bool held = false;
    bool counted = false;
    UseCounts use;
    std::int64_t combs = 0, frozen = 0;  ///< drawn ones, and how many of them were frozen
};
/// Boxes that stand on each other in the storeroom, and frames loose on a shelf.
struct TodoStack {
    std::string stack;  ///< empty: nobody said where
    std::vector<StackedContents> boxes;
    UseCounts loose;
    std::optional<Day> frozen;    ///< the earliest day any of its combs were
    std::optional<Day> lastLook;  ///< the earliest last look into one of its boxes
    std::int64_t neverLooked = 0;
};

struct WinterTodo {
    Day on;
    std::vector<TodoBox> scrape, repair, paint;
    std::vector<TodoFrames> frames;  ///< by verdict, in the order of the digits, keep left out
    std::vector<TodoMaterial> materials;
    std::vector<TodoFrames> notFrozen;  ///< brood and pollen comb, not frozen since it came in
    std::vector<TodoHold> held;
    std::vector<TodoStack> stacks;

    bool isEmpty() const;
};

WinterTodo winterTodo(const Read& file, Day on);

/// What a mended frame most likely carries: bare wood where its comb had to come out for the
/// mending; where all that wait to be repaired carry foundation, that. Common practice, no source.
Comb likelyAfterRepair(const Read& file);

}  // namespace combwright
