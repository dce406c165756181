// What the keeper himself says of things due. The due list is reckoned from the records and is no
// diary; only what no record can know is written down here.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// What makes something due.
enum class DueRule {
    Look,
    Swarm,
    Queen,
    TestFrame,
    Sample,
    SampleAgain,
    Treat,
    TakeOut,
    SupersBack,
    Feed,
    Stores,
    AddBox,
    ComeBack,
    Extract,
    Clearers,
    Wets,
    Freezer,
    DeadOut,
    Visit,
    Task,
    Honey,
    Wax
};
template <>
struct Choices<DueRule> {
    static constexpr auto words = std::to_array<std::string_view>({"look",
                                                                   "swarm check",
                                                                   "young queen",
                                                                   "test frame",
                                                                   "mite sample",
                                                                   "sample again",
                                                                   "mites over the line",
                                                                   "medicine out",
                                                                   "supers may return",
                                                                   "feed",
                                                                   "stores run out",
                                                                   "add a box",
                                                                   "come back",
                                                                   "extract",
                                                                   "clearer boards",
                                                                   "wet boxes",
                                                                   "freezer",
                                                                   "dead-out",
                                                                   "visit not finished",
                                                                   "own note",
                                                                   "honey",
                                                                   "wax"});
};

/// Something the keeper wants to be reminded of; all else that is due follows from the records.
struct Task {
    static constexpr std::string_view table = "task";
    Id<Task> id;
    Name text;
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    Day since;
    std::optional<Day> due;
    std::optional<Day> done;
    std::string who;
    static const Fields& fields();
};

/// A rule the keeper does not want to hear of, for a hive or a yard, and why.
struct Quiet {
    static constexpr std::string_view table = "quiet";
    Id<Quiet> id;
    DueRule rule = DueRule::Look;
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;  ///< neither yard nor hive: nowhere
    Day since;
    std::optional<Day> until;  ///< the last quiet day; none: until it is ended
    Name reason;
    static const Fields& fields();
};

/// What is always in the truck.
struct TruckItem {
    static constexpr std::string_view table = "truck_item";
    Id<TruckItem> id;
    Name item;
    std::optional<Count> howMany;
    Day since;
    std::optional<Day> until;
    static const Fields& fields();
};

}  // namespace combwright
