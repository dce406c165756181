// What next season needs and what to order, with room for the supplier and the price.
#pragma once

#include "core/places/needs.h"
#include "core/places/pages/page.h"

namespace combwright {

Page orderListPage(const Read& file, const NextSeason& next);

}  // namespace combwright
