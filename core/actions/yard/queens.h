// Queens: put in, marked, moved, lost, and waited for. A colony whose queen nobody wrote down is
// met with a queen of whom nothing is known, so that a story can begin late.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// A queen is put into a colony, or a young one is met that was not there before. The one before
/// leaves as it is said, else she was replaced; nothing is waited for any more. Refused with
/// InTheFuture for a queen reared after the day's year, Contradiction for one older than her
/// mother, HeldBack where disease is suspected on the hive, BeforeItBegan before the last change of
/// queens.
struct PutQueen {
    static constexpr std::string_view name = "put-queen";
    using Answer = Id<Queen>;
    Day on;
    Id<Hive> hive;
    std::optional<Count> reared;    ///< year
    std::optional<QueenFrom> from;  ///< none: not known
    std::optional<Id<Queen>> mother;
    std::optional<bool> marked;
    std::string colour;
    std::string number;
    std::optional<bool> clipped;
    std::optional<QueenLeft> left;  ///< how the one before left
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The queen of a colony is marked, numbered or clipped, or her year becomes known. A colour or a
/// number says that she is marked. Refused with NothingToDo where nothing new is said, and as
/// put-queen.
struct MarkQueen {
    static constexpr std::string_view name = "mark-queen";
    using Answer = Id<Queen>;
    Day on;
    Id<Hive> hive;
    std::optional<bool> marked;
    std::string colour;
    std::string number;
    std::optional<bool> clipped;
    std::optional<Count> reared;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The queen of one colony is given to another, whose own leaves as it is said. The colony she left
/// waits where `step` says by what. Refused with HeldBack where disease is suspected on either.
struct MoveQueen {
    static constexpr std::string_view name = "move-queen";
    using Answer = Id<Queen>;
    Day on;
    Id<Hive> hive;
    Id<Hive> to;
    std::optional<QueenLeft> left;  ///< how the one there left
    std::optional<QueenStep> step;
    std::optional<Day> notSeenOn;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A colony has no queen any more; it waits for one where `step` says by what. Refused with
/// OtherAction for a queen that was moved or swarmed.
struct LoseQueen {
    static constexpr std::string_view name = "lose-queen";
    using Answer = Id<Queen>;
    Day on;
    Id<Hive> hive;
    std::optional<QueenLeft> left;  ///< lost, when left out
    std::optional<QueenStep> step;
    std::optional<Day> notSeenOn;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A young queen is waited for: by a cell, a larva moved into one, or because the queen is lost.
/// Takes the place of what was waited for before. Refused with Contradiction where the day nothing
/// was seen yet comes after it.
struct WaitForQueen {
    static constexpr std::string_view name = "wait-for-queen";
    using Answer = Id<QueenWait>;
    Day on;
    Id<Hive> hive;
    QueenStep step = QueenStep::CellSealed;
    std::optional<Day> notSeenOn;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Nothing is waited for any more, whatever came of it. Refused with NothingToDo where nothing was.
struct EndQueenWait {
    static constexpr std::string_view name = "end-queen-wait";
    using Answer = Id<QueenWait>;
    Day on;
    Id<Hive> hive;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The keeper's own colour for queens of years that end in a digit. Refused with OutOfRange for a
/// digit over 9, NothingToDo where it is so already.
struct SetQueenColour {
    static constexpr std::string_view name = "set-queen-colour";
    using Answer = Id<QueenColour>;
    Day on;
    Count digit;
    Name colour;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Years a queen can have been reared in, by a day; also when she is amended. Refused under
/// "reared" with OutOfRange, InTheFuture.
Result<void> demandRearedBy(const std::optional<Count>& reared, Day on);

}  // namespace combwright
