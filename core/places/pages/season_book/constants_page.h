// The list of rates, limits and days as text: what is published, who says so, and the keeper's own.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/season_book/constants_list.h"

namespace combwright {

Page constantsPage(const Read& file, const std::vector<ConstantRow>& rows, Day on);

}  // namespace combwright
