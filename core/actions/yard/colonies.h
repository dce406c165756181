// Who lives in a hive, apart from the stand and the boxes: a colony that died leaves both where
// they are, and another may move in. And the excluder, which parts nest from supers.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// Writes down that the colony of a hive ended; stand and boxes stay. What was neither united nor
/// sold is a dead-out: its combs are held until it is explained. Refused with NotFound where
/// none lives there, with Contradiction where `into` is given and it was not united, with
/// BeforeItBegan before it came, with HeldBack where disease is suspected on it, or on the hive it
/// would be united with, and it would be united or sold.
struct EndColony {
    static constexpr std::string_view name = "end-colony";
    using Answer = Id<Colony>;
    Day on;
    Id<Hive> hive;
    std::optional<Ending> ending;  ///< none: why is not known
    std::optional<Id<Hive>> into;  ///< the hive it was united with
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Writes down that a colony lives in a hive from now on. Refused with Taken where one does
/// already, with HeldBack where the mother is under suspicion of disease. Where the hive is, or
/// combs that stand there are held, it needs a reason, which stays on the colony and on those
/// boxes; HeldBack without.
struct StartColony {
    static constexpr std::string_view name = "start-colony";
    using Answer = Id<Colony>;
    Day on;
    Id<Hive> hive;
    Origin origin = Origin::NotKnown;
    std::optional<Id<Hive>> mother;  ///< the hive it was split from
    std::string note;
    std::string reason;  ///< on what grounds, where the combs there are held back
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Puts the excluder on so many boxes from the floor, or takes it off. Refused with TooMany over
/// the boxes that stand there, with NothingToDo where it is so already.
struct SetExcluder {
    static constexpr std::string_view name = "set-excluder";
    using Answer = Id<Hive>;
    Day on;
    Id<Hive> hive;
    std::optional<Count> boxesUnder;  ///< none: no excluder
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
