// The frame-status board: one row a box, its frames side by side, shelf by shelf, with what was
// seen of each and what is to become of it. The picture on the wall of the storeroom, the counts
// beside it, the page and the work on many boxes at once all read this one answer.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/model/season_info.h"
#include "core/places/storeroom/frame_use.h"
#include "core/storage/rows.h"

namespace combwright {

/// What is to be known of a box before one goes to it. In the order they are said: the first that
/// holds stands on the board.
enum class BoxState {
    Held,
    Lent,
    InFreezer,
    Stale,             ///< frozen, but opened or left warm since: the cold does not count
    ChangedSince,      ///< what is in it changed after it was looked through
    NotLookedThrough,  ///< never, or nobody wrote it down
    ToFreeze,
    ToScrape,
    Frozen,
    Scraped,
    LookedThrough
};
template <>
struct Choices<BoxState> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"held", "lent", "in freezer", "stale", "changed since", "not looked through", "to freeze",
         "to scrape", "frozen", "scraped", "looked through"});
};

struct RowState {
    BoxState state = BoxState::NotLookedThrough;
    std::optional<Day> on;       ///< since when, or when it was done
    std::int64_t frames = 0;     ///< of the box that are to freeze, in the freezer, frozen
    std::int64_t of = 0;         ///< frames in the box
    std::optional<HoldWhy> why;  ///< only where it is held
};

/// What happened to a box after it was looked through. Carrying it from shelf to shelf is nothing;
/// CameOrWent are frames hung in or taken out, on a day nobody wrote down.
enum class BoardChange { Move, Count, Look, Check, CameOrWent, FreezerStay };

/// The one thing a frame is counted as: held by a hold, of its box or its own; else the gravest
/// letter on it; without letters what is to be done; else kept, or not looked through yet.
struct FrameState {
    enum class Kind { Keep, Letter, ToDo, NotLookedThrough, Held } kind = Kind::Keep;
    char letter = 0;                  ///< only with Letter
    Verdict verdict = Verdict::Keep;  ///< only with ToDo
    auto operator<=>(const FrameState&) const = default;
};

/// Where rows stand together.
struct BoardPlace {
    enum class Kind {
        Stack,  ///< of the storeroom, by its name, which may be empty
        Loose,  ///< frames without a box on a shelf
        Wet,
        Waiting,
        Cleared,
        Freezer,
        GivenBack,
        Lent,
        OnHives  ///< by the name of the yard
    } kind = Kind::Stack;
    std::string name;
    auto operator<=>(const BoardPlace&) const = default;
};

enum class BoardGroup { Shelf, Kind, Hive, Verdict, Year };
template <>
struct Choices<BoardGroup> {
    static constexpr auto words =
        std::to_array<std::string_view>({"shelf", "kind", "hive", "verdict", "year"});
};

/// What is shown of it. Frames that do not match are left out, and boxes without any that match.
struct BoardFilter {
    std::optional<Id<FrameKind>> kind;
    std::optional<FrameState>
        state;  ///< a letter: every frame that bears it, graver ones beside it
    std::optional<Verdict> verdict;
    std::optional<std::int64_t> year;  ///< the comb was drawn in
    std::optional<BoardPlace> place;
    std::optional<Id<Hive>> cameOff;
    bool notFrozen = false;    ///< comb the cold has not killed the moths in
    bool notReviewed = false;  ///< never looked through, or changed since
    bool held = false;         ///< held back, by a hold or by its verdict
    bool toMelt = false;       ///< its comb goes into the pot
    bool onHives = false;      ///< boxes on hives too, yard by yard
    BoardGroup group = BoardGroup::Shelf;
    bool operator==(const BoardFilter&) const = default;
    /// Whether it leaves anything out.
    bool narrows() const;
};

struct BoardFrame {
    Id<Frame> id;  ///< none for one that should be here and was not found
    std::optional<std::int64_t> position;
    std::optional<Comb> comb;
    std::string faults;
    std::optional<Verdict> verdict;
    std::optional<std::int64_t> drawnYear;
    std::optional<Day> frozen;  ///< since it came off a hive, and not stale
    std::optional<Day> reviewed;
    std::optional<double> filledA, filledB, capped;  ///< shares of the comb, 0 to 1
    std::string mark;
    bool wet = false;
    bool held = false;
    bool found = true;
    FrameUse use = FrameUse::Unknown;
    FrameState state;
};

/// The hive a box stands on, or last came off.
struct CameOff {
    Id<Hive> hive;
    std::string mark;
    std::string yard;
    std::optional<Day> on;  ///< none while it stands there
    bool operator==(const CameOff&) const = default;
};

/// What is asked of every row when a board is laid out stands together, first.
struct BoardRow {
    std::optional<Id<Box>> box;  ///< none: loose frames
    std::string name;  ///< its mark, "ML3, second from the floor", "#12"; empty for loose frames
    std::optional<Id<FrameKind>> frameKind;
    /// As they are drawn: pointed at in their places, then counted ones sorted, then missing ones.
    std::vector<BoardFrame> frames;
    std::vector<RowState> states;  ///< what holds, the first shown; empty for loose frames
    std::optional<Id<BoxKind>> kind;
    BoardPlace place;
    std::optional<Day> reviewed;  ///< the newest look at the bench
    std::optional<BoardChange> changed;
    std::optional<Day> changedOn;
    std::optional<std::int64_t> expected, found;  ///< none where nobody counted
    std::int64_t missing = 0;                     ///< not found at the newest look
    std::optional<CameOff> cameOff;
    std::int64_t leftOut = 0;  ///< frames the filter or the group does not show
};

struct BoardShelf {
    BoardPlace place;  ///< each of these only where it is grouped by it
    std::optional<Id<FrameKind>> kind;
    std::optional<CameOff> hive;
    std::optional<Verdict> verdict;
    std::optional<std::int64_t> year;
    std::vector<BoardRow> rows;
    std::optional<Day> reviewed, scraped;  ///< the newest of its boxes
    std::int64_t notReviewed = 0;          ///< boxes never looked through
    std::int64_t frames = 0;
};

struct StateCount {
    FrameState state;
    std::int64_t frames = 0;
    std::int64_t also = 0;  ///< frames that bear the letter beside a graver one, counted there
};

/// Frames of one kind; `states` add up to `together`.
struct KindCounts {
    Id<FrameKind> kind;
    std::string name;
    std::vector<StateCount> states;
    std::int64_t together = 0;
    std::int64_t missing = 0;
    std::int64_t withMissing() const { return together + missing; }
};

/// Frames held back, by what they bear or why they are held.
struct HeldCount {
    char letter = 0;             ///< by their verdict, because of that letter; 0 for a hold
    std::optional<HoldWhy> why;  ///< none: by their verdict
    std::int64_t frames = 0;
    std::optional<Day> since;
};

/// Combs that go into the pot.
struct MeltCount {
    Id<FrameKind> kind;
    std::string name;
    std::int64_t combs = 0;
    std::optional<double> gramsEach;  ///< clean wax of one, assumed; none for a comb not measured
};

struct FrameBoard {
    Day on;
    BoardFilter filter;
    BoardGroup group() const { return filter.group; }
    std::vector<BoardShelf> shelves;
    std::int64_t shown = 0, all = 0;            ///< frames, missing ones not among them
    std::int64_t boxesShown = 0, boxesAll = 0;  ///< in a group by frames a box is counted once

    // Of everything that is asked for, whatever the filter leaves out.
    std::vector<KindCounts> counts;
    std::vector<HeldCount> held;
    std::vector<MeltCount> melt;

    // What there is to choose from.
    std::vector<FrameKind> kinds;
    std::vector<BoxKind> boxKinds;
    std::vector<FrameState> states;
    std::vector<Verdict> verdicts;
    std::vector<std::int64_t> years;
    std::vector<BoardPlace> places;
    std::vector<CameOff> hives;

    const FrameKind* kind(std::optional<Id<FrameKind>> id) const;
    const BoxKind* boxKind(std::optional<Id<BoxKind>> id) const;
};

/// Whether its comb goes into the pot: drawn comb of a frame to melt or to refit that is not held.
bool goesIntoPot(const BoardFrame& frame);

/// The gravest of the letters, by what usually becomes of a frame that bears it; 0 for none.
char gravestLetter(const std::string& faults);

/// "M9" before "M10", "Shelf 2" before "Shelf 10"; capitals do not matter.
bool inNaturalOrder(std::string_view a, std::string_view b);

/// A constant number of queries however many boxes there are. Throws StorageError.
FrameBoard frameBoard(const Read& file, Day on, const BoardFilter& filter = {});

}  // namespace combwright
