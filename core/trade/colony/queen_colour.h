// The colour queens of a year are marked with: five colours that come round, so that a glance tells
// how old she is.
#pragma once

#include <string_view>

namespace combwright {

/// "white", "yellow", "red", "green" or "blue", by the year she was reared in, not the one she was
/// marked in: (year - 1) mod 5. The usual international set; printed in 6 sources. Empty for a year
/// before 1.
std::string_view queenColour(int year);

}  // namespace combwright
