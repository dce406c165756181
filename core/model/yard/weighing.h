// What the scale said of a hive. Two weighings of one hive tell what it uses a day, which no table
// knows as well.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"

namespace combwright {

struct Inspection;

/// What the scale said of a hive: lifted at each side and added, or as a whole.
struct HiveWeighing {
    static constexpr std::string_view table = "hive_weighing";
    Id<HiveWeighing> id;
    Id<Hive> hive;
    Day on;
    std::optional<Known<Mass>> left;
    std::optional<Known<Mass>> right;
    std::optional<Known<Mass>> whole;    ///< on a platform, instead of both sides
    std::optional<Known<Mass>> without;  ///< all that is no stores that day: wood, frames, bees;
                                         ///< none: reckoned from what stands there
    std::string note;
    std::optional<Id<Inspection>> inspection;  ///< the line of the yard sheet it was typed in
    static const Fields& fields();
};

}  // namespace combwright
