// A dead colony's combs are all held back until somebody says what it looked like and whether
// foulbrood was looked for. What is suspected is quarantined and stays in the history.
#pragma once

#include "core/actions/action.h"
#include "core/model/season_info.h"
#include "core/model/storeroom/dead_out.h"

namespace combwright {

/// What a colony's end holds back: every comb of it until the dead-out is explained, or as
/// suspected disease where it was destroyed for that. Called by whatever ends a colony.
void holdDeadCombs(Write& file, const Colony& ended);
/// The same where the end was amended: the hold goes to the new day, comes where the colony now
/// counts as dead, and never stood where it turns out to live, to be united or sold. A suspicion of
/// disease stays.
void followEnding(Write& file, const Colony& before, const Colony& after);

/// Answers the eight questions of a dead colony. A second answer of the same day replaces the
/// first; a later one adds to it, what it leaves blank stays as it was. Where scale and ropiness
/// were both looked for and not found and nothing else looks like disease, and cause and who looked
/// are given, its combs are released on these grounds. Where the brood ropes, dried down or sank,
/// they are quarantined. Otherwise the hold stays. Refused with Missing where neither hive nor
/// colony is named, with OtherAction while the colony lives, with Contradiction where it was united
/// or sold, with BeforeItBegan before it ended.
struct RecordDeadOut {
    static constexpr std::string_view name = "record-dead-out";
    using Answer = Id<DeadOut>;
    Day on;
    std::optional<Id<Hive>> hive;      ///< the colony that ended there last
    std::optional<Id<Colony>> colony;  ///< or that one
    std::optional<DeadCluster> cluster;
    std::optional<StoresNear> stores;
    std::optional<BroodSeen> brood;
    std::optional<bool> frass;
    std::optional<bool> wet;
    std::optional<bool> queen;
    std::optional<bool> droppings;
    std::optional<bool> ropy;
    std::optional<bool> scale;
    std::optional<bool> mouse;
    std::optional<bool> sampleKept;
    std::string cause;
    std::string by;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Holds back what went from or to where disease is suspected, as the contact trace lists it: each
/// box, frame and colony that is not held for it yet. Refused with NotFound where no disease is
/// suspected on the hive's colony, with NothingToDo where all of it is held already.
struct HoldContacts {
    static constexpr std::string_view name = "hold-contacts";
    using Answer = std::vector<Id<Hold>>;
    Day on;
    Id<Hive> hive;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
