// The trade prints its laws as tables. They are read here as a keeper reads them: straight between
// two rows, and nothing beyond the last one; a value outside is refused, never clamped.
#pragma once

#include <span>
#include <string>

#include "core/support/refusal.h"

namespace combwright {

/// One row of a published table.
struct TablePoint {
    double at;     ///< what the table is entered with
    double value;  ///< what it answers
};

/// The value between the two rows around `at`, on a straight line. The rows are in rising or in
/// falling order of `at`, at least two; `at` lies between the first and the last (a caller checks;
/// beyond an end only by rounding errors, which give that end).
double interpolate(std::span<const TablePoint> rows, double at);

/// The refusal for a value outside a published range, both ends of which belong to it.
Refusal outOfRange(std::string field, double value, double low, double high);

}  // namespace combwright
