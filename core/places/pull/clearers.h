// Clearer boards: which hives have one in, since when and until when it comes out, which hives of
// the kept plan still need one, and in how many rounds where there are fewer boards than hives.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/places/explain/explained.h"
#include "core/storage/rows.h"

namespace combwright {

/// A board that is in.
struct ClearerIn {
    enum class State {
        Clearing,  ///< the bees are going down
        Due,       ///< the last day it should stay
        Overdue
    };
    ClearerBoard board;
    std::string hive;
    std::string yard;
    std::int64_t daysIn = 0;
    Day outBy;
    State state = State::Clearing;
    int boxes = 0;  ///< of the kept plan that still stand on it
};

/// A hive of the kept plan whose boxes still stand on it without a board under them.
struct ClearerNeed {
    Id<Hive> hive;
    std::string mark;
    Id<Yard> of;  ///< where it stands
    std::string yard;
    int boxes = 0;
};

/// Boards that go in together.
struct ClearerRound {
    Day in;   ///< at dusk
    Day out;  ///< the day these boxes are pulled
    std::vector<std::string> hives;
    std::vector<Id<Hive>> ids;  ///< the same hives
};

struct Clearers {
    std::optional<PullPlan> plan;       ///< the one that is being carried out
    std::optional<std::int64_t> owned;  ///< none: nobody counted
    std::vector<ClearerIn> in;          ///< those in longest first
    std::vector<ClearerNeed> need;      ///< in walking order
    std::vector<ClearerRound> rounds;   ///< of those that need one
    std::int64_t outByDays = 3;

    /// Boards left to put in now.
    std::optional<std::int64_t> free() const;
    /// Boards that are due out or overdue.
    int due() const;
};

/// Boards counted in the shed, and those that were in hives on the day of the count.
std::optional<std::int64_t> clearerBoardsOwned(const Read& file, Day on);
/// Hives with a board under their supers on that day.
std::vector<Id<Hive>> clearedHives(const Read& file, Day on);

Clearers clearers(const Read& file, Day on);

/// Until when each board comes out and how the rounds come about.
std::vector<Explained> explainClearers(const Read& file, const Clearers& boards, Day on);

}  // namespace combwright
