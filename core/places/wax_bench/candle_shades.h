// The shades a candle may be of, as they are typed: "light, mid", in the order they may be taken.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/model/wax/batch.h"
#include "core/support/result.h"

namespace combwright {

/// Parts parted by commas, without blanks at their ends; empty ones left out.
std::vector<std::string> waxParts(std::string_view line);

/// "light, mid" in that order. Refused with NotAChoice under "shades", Duplicate.
Result<std::vector<WaxShade>> readShades(std::string_view line);

}  // namespace combwright
