// Boxes are what is tracked: they are painted, carried, weighed and stacked. A box remembers every
// hive it stood on, because the hive that filled a super is asked for when the super stands in the
// honey room without it.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/visit.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// A size of frame, from the trade's tables or measured by the keeper.
struct FrameKind {
    static constexpr std::string_view table = "frame_kind";
    Id<FrameKind> id;
    Name code;
    Name name;
    std::string family;
    std::optional<Length> topBarLength, topBarWidth, topBarThickness;
    std::optional<Length> height;  ///< top of the top bar to underside of the bottom bar
    std::optional<Length> bottomBarLength, spacing;
    std::optional<Length> combWidth, combHeight;  ///< the opening comb can fill
    std::string source;
    static const Fields& fields();
};

enum class BeeSpace { Top, Bottom, None };
template <>
struct Choices<BeeSpace> {
    static constexpr auto words = std::to_array<std::string_view>({"top", "bottom", "none"});
};

/// A size of box.
struct BoxKind {
    static constexpr std::string_view table = "box_kind";
    Id<BoxKind> id;
    Name code;
    Name name;
    std::string family;
    std::optional<Count> framesNominal;
    std::optional<Length> outerLength, outerWidth, outerHeight;
    std::optional<Length> innerLength, innerWidth;
    std::optional<Length> restDepth;
    std::optional<BeeSpace> beeSpace;
    std::optional<Id<FrameKind>> takes;
    std::string source;
    static const Fields& fields();
};

/// Whether it is a nucleus box, by what it is called.
bool isNucleusBox(const BoxKind& kind);

enum class BoxCondition { Sound, ToScrape, NeedsRepair, Scrapped, Burnt };
template <>
struct Choices<BoxCondition> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"sound", "to scrape", "needs repair", "scrapped", "burnt"});
};

/// Where a box is. "On hive" goes with a hive and a level, the floor being 0.
enum class BoxPlace { OnHive, Cleared, Waiting, Wet, GivenBack, Storeroom, Freezer, Lent, Gone };
template <>
struct Choices<BoxPlace> {
    static constexpr auto words =
        std::to_array<std::string_view>({"on hive", "cleared", "waiting", "wet", "given back",
                                         "storeroom", "freezer", "lent", "gone"});
};

struct Box {
    static constexpr std::string_view table = "box";
    Id<Box> id;
    Id<BoxKind> kind;
    std::string mark;  ///< painted on it; empty for none
    BoxCondition condition = BoxCondition::Sound;
    BoxPlace place = BoxPlace::Storeroom;
    std::optional<Id<Hive>> hive;  ///< only on a hive or given back to one
    std::optional<Count> level;    ///< only on a hive: 0 stands on the floor
    std::string stack;             ///< which stack or shelf of the storeroom
    Day since;
    std::string note;
    std::optional<bool> wantsPaint;
    static const Fields& fields();
};

/// Whether a box is still about: neither gone nor scrapped nor burnt. Only such a box keeps its
/// mark from others.
bool inUse(const Box& box);

/// A box went from one place to another. The latest before a day says where it was on that day.
struct BoxMove {
    static constexpr std::string_view table = "box_move";
    Id<BoxMove> id;
    Id<Box> box;
    Day on;
    std::optional<BoxPlace> fromPlace;
    std::optional<Id<Hive>> fromHive;
    std::optional<Count> fromLevel;
    BoxPlace toPlace = BoxPlace::Storeroom;
    std::optional<Id<Hive>> toHive;
    std::optional<Count> toLevel;
    std::optional<Id<Inspection>> inspection;  ///< when a line of the yard sheet moved it
    std::string fromStack, toStack;            ///< which stack or shelf of the storeroom
    std::optional<bool> fromUnder;             ///< it stood under the excluder
    static const Fields& fields();
};

/// What a keeper sees of a box before a pull: how many frames, how many capped, how full.
struct BoxLook {
    static constexpr std::string_view table = "box_look";
    Id<BoxLook> id;
    Id<Box> box;
    Day on;
    std::optional<Id<Inspection>> inspection;
    std::optional<Count> frames;
    std::optional<Known<Frames>> cappedFrames;
    std::optional<Known<Share>> filled;
    std::optional<Known<Share>> toFork;  ///< share that needs the fork, not only the knife
    std::optional<WaterContent> water;
    std::optional<bool> broodIn;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
