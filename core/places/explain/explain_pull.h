// How the figures of a pull came about: each asks the trade functions again with a Working, so that
// its steps end in the very figure that is shown.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/places/explain/explained.h"
#include "core/places/pull/pull_sheet.h"

namespace combwright {

/// The box with that id first, then the answer as a whole, then every other super whose honey is
/// reckoned. The input is the one the sheet was reckoned from.
std::vector<Explained> explainPull(const Read& file, const PullInput& input, const PullSheet& sheet,
                                   std::optional<std::int64_t> box = std::nullopt);

}  // namespace combwright
