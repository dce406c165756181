// What next season needs and what to order, with room for the supplier and the price.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/storeroom/needs.h"

namespace combwright {

Page orderListPage(const Read& file, const NextSeason& next);

}  // namespace combwright
