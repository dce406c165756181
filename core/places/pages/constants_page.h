// The list of rates, limits and days as text: what is published, who says so, and the keeper's own.
#pragma once

#include "core/places/constants_list.h"
#include "core/places/pages/page.h"

namespace combwright {

Page constantsPage(const Read& file, const std::vector<ConstantRow>& rows, Day on);

}  // namespace combwright
