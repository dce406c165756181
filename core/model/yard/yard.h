// Where the bees stand. Stand, colony and queen are three things: a colony moves from one stand to
// another, a stand's mark is painted over and used again, and neither loses its past.
#pragma once

#include "core/model/describe.h"

namespace combwright {

struct BoxKind;

/// How soon after pulling honey must be extracted here: beetles and quick-setting crops do not
/// wait.
enum class ExtractBy { NoLimit, ThreeDays, TwoDays };
template <>
struct Choices<ExtractBy> {
    static constexpr auto words =
        std::to_array<std::string_view>({"no limit", "3 days", "1-2 days"});
};

struct Yard {
    static constexpr std::string_view table = "yard";
    Id<Yard> id;
    Name name;
    Count walkOrder;  ///< where it comes in the round of the yards
    std::string place;
    std::string registration;
    std::optional<ExtractBy> extractBy;
    std::optional<Mass> winterNeed;         ///< stores a hive should go into winter with
    std::optional<Id<BoxKind>> usualSuper;  ///< what "+1" on the yard sheet puts on
    Day since;
    std::optional<Day> closed;
    static const Fields& fields();
};

/// A stand in a yard and the mark painted on it; the mark is unique among open hives of a yard.
struct Hive {
    static constexpr std::string_view table = "hive";
    Id<Hive> id;
    Id<Yard> yard;
    Name mark;
    Count standOrder;  ///< its place in walking order, from 1
    std::optional<Known<Mass>> tare;
    std::optional<Count> excluderAbove;  ///< how many boxes stand under the excluder
    std::string note;
    Day since;
    std::optional<Day> closed;
    static const Fields& fields();
};

enum class Origin { Overwintered, Split, Swarm, Package, Nucleus, NotKnown };
template <>
struct Choices<Origin> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"overwintered", "split", "swarm", "package", "nucleus", "not known"});
};

enum class Ending { WinterLoss, Queenless, United, Sold, Absconded, DestroyedForDisease, Other };
template <>
struct Choices<Ending> {
    static constexpr auto words =
        std::to_array<std::string_view>({"winter loss", "queenless", "united", "sold", "absconded",
                                         "destroyed for disease", "other"});
};

/// Who lives in a hive, from when until when.
struct Colony {
    static constexpr std::string_view table = "colony";
    Id<Colony> id;
    Id<Hive> hive;
    Day since;
    Origin origin = Origin::NotKnown;
    std::optional<Id<Colony>> mother;
    std::optional<Day> ended;
    std::optional<Ending> ending;
    std::string note;
    std::optional<Id<Colony>> unitedInto;  ///< the colony it was united with
    static const Fields& fields();
};

}  // namespace combwright
