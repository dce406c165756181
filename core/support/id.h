// The number of a row, typed by what the row is, so that a hive is never taken for a box. Ids start
// at 1 and are never used twice in a file; 0 stands in a record that has not been stored yet.
#pragma once

#include <compare>
#include <cstdint>

namespace combwright {

template <class Record>
struct Id {
    std::int64_t number = 0;

    constexpr explicit operator bool() const { return number != 0; }
    constexpr auto operator<=>(const Id&) const = default;
};

}  // namespace combwright
