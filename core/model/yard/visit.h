// A visit to a yard and what was seen in each hive. Nothing here must be filled in: a value left
// out was not recorded, which is neither zero nor "no" nor "not opened".
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/feed.h"
#include "core/model/yard/yard.h"

namespace combwright {

struct Box;

/// One day in one yard. Without inspections the yard counts as visited, no hive as opened.
struct Visit {
    static constexpr std::string_view table = "visit";
    Id<Visit> id;
    Id<Yard> yard;
    Day on;
    std::optional<Instant> begun;
    std::optional<Instant> ended;
    std::string all;  ///< the line typed for all opened hives
    std::string note;
    static const Fields& fields();
};

enum class Looked { Opened, LidOnly, NotOpened, FoundDead };
template <>
struct Choices<Looked> {
    static constexpr auto words =
        std::to_array<std::string_view>({"opened", "lid only", "not opened", "found dead"});
};

enum class CellState { Open, Capped };
template <>
struct Choices<CellState> {
    static constexpr auto words = std::to_array<std::string_view>({"open", "capped"});
};

enum class Heft { Light, AllRight, Heavy };
template <>
struct Choices<Heft> {
    static constexpr auto words = std::to_array<std::string_view>({"light", "all right", "heavy"});
};

/// What was seen in one hive. The shorthand of the yard sheet fills exactly these.
struct Seen {
    Looked looked = Looked::Opened;
    std::optional<bool> queenSeen;  ///< false: looked for, not seen
    std::optional<bool> eggs;       ///< false: looked, none
    std::optional<bool> openBrood;
    std::optional<bool> cappedBrood;
    std::optional<Known<Frames>> brood;
    std::optional<Known<Frames>> stores;
    std::optional<Known<Frames>> seams;  ///< spaces between frames with bees in them
    std::optional<Known<Count>> queenCells;
    std::optional<CellState> cellState;
    std::optional<Known<Count>> cellsLeft;
    std::optional<Count> temper;  ///< 1 calm to 5 fierce
    std::optional<Heft> heft;
    std::optional<bool> comeBack;
    std::string note;
    static const Fields& fields();
    bool operator==(const Seen&) const = default;
};

/// One hive at one visit.
struct Inspection {
    static constexpr std::string_view table = "inspection";
    Id<Inspection> id;
    Id<Visit> visit;
    Id<Hive> hive;
    Seen seen;
    std::string line;  ///< as it was typed
    static const Fields& fields();
};

enum class Pest {
    Varroa,
    SmallHiveBeetle,
    WaxMoth,
    Nosema,
    Chalkbrood,
    BroodDiseaseSuspected,
    Other
};
template <>
struct Choices<Pest> {
    static constexpr auto words =
        std::to_array<std::string_view>({"varroa", "small hive beetle", "wax moth", "nosema",
                                         "chalkbrood", "brood disease suspected", "other"});
};

enum class FindingMethod { Wash, SugarRoll, Board, DroneBrood, Seen };
template <>
struct Choices<FindingMethod> {
    static constexpr auto words =
        std::to_array<std::string_view>({"wash", "sugar roll", "board", "drone brood", "seen"});
};

enum class Level { None, Few, Some, Many, Seen };
template <>
struct Choices<Level> {
    static constexpr auto words =
        std::to_array<std::string_view>({"none", "few", "some", "many", "seen"});
};

/// Field signs, ticked as looked for: true seen, false looked and not there. Signs never name a
/// disease; that is for the laboratory and the inspector.
struct FieldSigns {
    std::optional<bool> spotty;         ///< brood with gaps
    std::optional<bool> sunkenCaps;     ///< dark, sunken, greasy
    std::optional<bool> holedCaps;      ///< chewed open
    std::optional<bool> ropes;          ///< a match draws a thread
    std::optional<bool> scaleSticks;    ///< dry scale that does not come loose
    std::optional<bool> glueSmell;      ///< of glue, foul
    std::optional<bool> sourSmell;      ///< of vinegar
    std::optional<bool> twistedLarvae;  ///< young, uncapped, yellow or brown
    std::optional<bool> mummies;        ///< hard, chalky, falling out
    std::optional<bool> crippledWings;  ///< bees with stumps for wings
    std::optional<bool> soiled;         ///< droppings on combs or front
    static const Fields& fields();
    bool operator==(const FieldSigns&) const = default;
};

/// A pest or disease that was looked for or met.
struct Finding {
    static constexpr std::string_view table = "finding";
    Id<Finding> id;
    Id<Hive> hive;
    std::optional<Id<Inspection>> inspection;
    Day on;
    Pest what = Pest::Other;
    FindingMethod method = FindingMethod::Seen;
    std::optional<Known<Count>> mites;
    std::optional<Known<Count>> bees;
    std::string note;
    std::optional<Count> daysOnBoard;   ///< how long the board lay
    std::optional<Level> level;         ///< where nothing was counted
    std::optional<Id<Box>> box;         ///< the box it was met in
    std::optional<Known<Count>> cells;  ///< drone cells opened
    FieldSigns signs;
    static const Fields& fields();
};

/// Sugar given; syrup and fondant are told apart later by kind, what counts is the sugar.
struct Feeding {
    static constexpr std::string_view table = "feeding";
    Id<Feeding> id;
    Id<Hive> hive;
    std::optional<Id<Inspection>> inspection;
    Day on;
    std::optional<Known<Mass>> given;
    std::string note;
    std::optional<FeedKind> kind;
    std::optional<Count> packs;  ///< bags or packs given, where they were counted
    static const Fields& fields();
};

}  // namespace combwright
