// What is always in the truck: it stands on every kit list, so that nobody drives out without a
// smoker.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/due.h"

namespace combwright {

/// "smoker, 2 hive tool, matches": from that day always in the truck. One that is in it already
/// gets the new number. Refused with Missing where nothing is named, Duplicate for a thing named
/// twice, NothingToDo where all of it is so already, OutOfRange for none of a thing.
struct PutInTruck {
    static constexpr std::string_view name = "put-in-truck";
    using Answer = std::vector<Id<TruckItem>>;
    Day on;
    std::string items;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// "smoker, matches": no longer in it. Refused with NotFound for what is not in it that day.
struct TakeOffTruck {
    static constexpr std::string_view name = "take-off-truck";
    using Answer = std::vector<Id<TruckItem>>;
    Day on;
    std::string items;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Not out before in, more than none of it; also when it is amended.
Result<void> demandTruckItem(const Read& file, const TruckItem& item);

}  // namespace combwright
