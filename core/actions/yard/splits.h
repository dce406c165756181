// Colonies that become two, two that become one, and bees that leave by themselves. What each does
// to stand, boxes and queen is one step: written down in three, one of them would be forgotten.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/box.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// Splits a colony onto an empty hive, or onto a new stand with a mark, whose own boxes are listed
/// as add-hive lists them. Boxes are carried over by their marks, so many frames from one box to
/// another; the queen stays or goes along, and the part without one waits for a queen where `step`
/// says what it waits by. Of a box nobody counted the frames carried are what the keeper says.
/// Refused with Missing "new_boxes" where frames have no box to hang in, Taken where a colony lives
/// there, Missing where no stand is said, or where a wait begins and nobody says where the queen
/// is, Contradiction for both stands, NotFound for a box that does not stand on the hive, and with
/// HeldBack as start-colony.
struct SplitColony {
    static constexpr std::string_view name = "split-colony";
    using Answer = Id<Colony>;
    Day on;
    Id<Hive> hive;                 ///< that is split
    std::optional<Id<Hive>> onto;  ///< an empty hive
    std::optional<Id<Yard>> yard;  ///< of a new stand; the mother's, when left out
    std::string mark;              ///< of a new stand
    std::string newBoxes;          ///< on a new stand: "nuc N7"
    std::string boxes;             ///< carried over: "D31, M31", "deep", "top"
    std::optional<Count> frames;   ///< carried over, of a box that stays
    std::optional<Id<Box>> fromBox;
    std::optional<Id<Box>> toBox;
    std::optional<Count> withBrood;  ///< of those frames; seen in the new part that day
    std::optional<bool> queenGoes;   ///< none: nobody knows where she is
    std::optional<QueenStep> step;
    std::optional<Day> notSeenOn;
    std::string note;
    std::string reason;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Which queen a united colony has.
enum class QueenKept { Host, Other, NotKnown };
template <>
struct Choices<QueenKept> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"of the hive it went to", "of the hive that went", "not known"});
};

/// Unites the colony of a hive with another: it ends there, its bees live on. Its boxes stay, or go
/// where it is said: onto the other hive without naming it again. The queen that is not kept is
/// lost. Refused as end-colony, and with HeldBack as move-box.
struct UniteColonies {
    static constexpr std::string_view name = "unite-colonies";
    using Answer = Id<Colony>;
    Day on;
    Id<Hive> hive;  ///< whose colony ends
    Id<Hive> into;
    std::optional<QueenKept> queenKept;
    std::optional<BoxPlace> boxesTo;
    std::string stack;
    std::string note;
    std::string reason;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The colony of a hive threw a swarm that was not caught. Its queen went with it, unless it is
/// said that she did not; the colony waits for a young one, by a capped cell where nothing else is
/// said.
struct Swarmed {
    static constexpr std::string_view name = "swarmed";
    using Answer = Id<Colony>;
    Day on;
    Id<Hive> hive;
    std::optional<bool> queenGoes;  ///< false: an afterswarm, with a young queen
    std::optional<QueenStep> step;
    std::optional<Day> notSeenOn;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A swarm is hived on an empty hive or a new stand. Where it came from a hive of ours, that one
/// has swarmed, and where the old queen came with it, she is written down here. Refused as
/// split-colony and start-colony.
struct HiveSwarm {
    static constexpr std::string_view name = "hive-swarm";
    using Answer = Id<Colony>;
    Day on;
    std::optional<Id<Hive>> hive;  ///< an empty one
    std::optional<Id<Yard>> yard;  ///< of a new stand
    std::string mark;
    std::string newBoxes;
    std::optional<Id<Hive>> from;   ///< none: from elsewhere, or nobody knows
    std::optional<bool> queenGoes;  ///< the old queen of that hive came along
    std::optional<QueenStep> step;  ///< by what the colony it left waits
    std::optional<Day> notSeenOn;
    std::string note;
    std::string reason;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A colony goes to live on another stand, with boxes named by their marks, with "all" of them, or
/// onto those that stand there, into which its combs then go where that is said: so a nucleus
/// becomes a hive of its own. Refused with Taken where one lives there, BeforeItBegan before it
/// came to where it lives, HeldBack as start-colony.
struct MoveColony {
    static constexpr std::string_view name = "move-colony";
    using Answer = Id<Colony>;
    Day on;
    Id<Hive> hive;
    Id<Hive> to;
    std::string boxes;
    std::string note;
    std::string reason;
    std::optional<bool> combs;  ///< those of the boxes that stay behind hang in the new ones
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
