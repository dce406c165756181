// What to take along, as words and as a page to tick off beside the truck.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/yard/kit_list.h"

namespace combwright {

/// "2 feeders", "3 packs of feed, 7.0 kg of sugar", "frame with eggs, from a strong hive"; the
/// keeper's own things as he wrote them.
QString kitText(const KitLine& line);

Page kitListPage(const Read& file, const KitList& kit);

}  // namespace combwright
