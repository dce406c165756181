// Marks that count up, as boxes and hives bear them: "M43" and two further is "M45", "H1-H8" are
// eight of them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/support/result.h"

namespace combwright {

/// "M01" is "M" and 1, two digits wide.
struct CountedMark {
    std::string before;
    std::int64_t number = 0;
    std::size_t width = 0;

    /// With another number; leading zeros stay: "M07" and 11 is "M11".
    std::string with(std::int64_t other) const;
    std::string further(std::int64_t by) const { return with(number + by); }
};
/// Nothing where no number ends it.
std::optional<CountedMark> countedMark(const std::string& mark);

/// The first and last of a row, "M01-M08" or "M01-08" parted at its dash; nothing where the two do
/// not count up from one to the other, or more than 500 would be in it.
std::optional<std::pair<CountedMark, CountedMark>> rowOfMarks(const std::string& first,
                                                              const std::string& last);

/// The marks of "H1-H8, H12" one by one; a part with a dash that is no row is a mark itself
/// ("East-wall"). Refused under `field` with WrongType for a row that counts down, Duplicate for a
/// mark named twice.
Result<std::vector<std::string>> marksListed(std::string_view text, const std::string& field);

}  // namespace combwright
