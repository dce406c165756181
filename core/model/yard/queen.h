// Queens, told apart from colonies and stands: one may head several colonies in her life, and a
// colony goes through several queens.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// Where a queen came from.
enum class QueenFrom { WithColony, OwnCell, Supersedure, Emergency, SwarmCell, Bought, NotKnown };
template <>
struct Choices<QueenFrom> {
    static constexpr auto words =
        std::to_array<std::string_view>({"with the colony", "own cell", "supersedure",
                                         "emergency cell", "swarm cell", "bought", "not known"});
};

/// One queen; which colony she heads, and from when, is a stay. She is not the colony, and neither
/// is the stand.
struct Queen {
    static constexpr std::string_view table = "queen";
    Id<Queen> id;
    std::optional<Count> reared;  ///< the year she came out; her colour follows from it
    std::optional<Id<Queen>> mother;
    QueenFrom from = QueenFrom::NotKnown;
    std::optional<bool> marked;
    std::string colour;  ///< as painted, where it is not the one of her year
    std::string number;  ///< of the disc on her, where there is one
    std::optional<bool> clipped;
    std::string note;
    static const Fields& fields();
};

/// How a queen left a colony.
enum class QueenLeft { Lost, Superseded, Replaced, Moved, Swarmed, WithColony, NotKnown };
template <>
struct Choices<QueenLeft> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"lost", "superseded", "replaced", "moved", "swarmed", "with the colony", "not known"});
};

/// A queen in a colony, from when until when.
struct QueenStay {
    static constexpr std::string_view table = "queen_stay";
    Id<QueenStay> id;
    Id<Queen> queen;
    Id<Colony> colony;
    Day since;
    std::optional<Day> until;  ///< none: she is there still, as far as known
    std::optional<QueenLeft> left;
    static const Fields& fields();
};

/// What a wait for a young queen begins with.
enum class QueenStep { CellOpen, CellSealed, QueenLost, LarvaMoved };
template <>
struct Choices<QueenStep> {
    static constexpr auto words =
        std::to_array<std::string_view>({"cell open", "cell sealed", "queen lost", "larva moved"});
};

/// A young queen is waited for; what a look says of a queen cell left begins a wait by itself and
/// needs no such record.
struct QueenWait {
    static constexpr std::string_view table = "queen_wait";
    Id<QueenWait> id;
    Id<Hive> hive;
    std::optional<Id<Colony>> colony;
    Day on;
    QueenStep step = QueenStep::CellSealed;
    std::optional<Day> notSeenOn;  ///< a day on which no capped cell was there yet
    std::optional<Day> over;       ///< none: waited for still, unless eggs were seen since
    std::string note;
    static const Fields& fields();
};

/// The keeper's own colour for years that end in a digit, instead of the usual five.
struct QueenColour {
    static constexpr std::string_view table = "queen_colour";
    Id<QueenColour> id;
    Count digit;  ///< last digit of the year, 0 to 9
    Name colour;
    Day since;
    static const Fields& fields();
};

}  // namespace combwright
