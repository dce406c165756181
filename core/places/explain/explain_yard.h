// How the figures of a yard came about: means, mites in a hundred, the dates of a young queen,
// supers standing and in store. Each asks the same functions again as the sheet did.
#pragma once

#include <optional>

#include "core/places/explain/explained.h"
#include "core/places/yard/yard_sheet.h"

namespace combwright {

/// Every figure the sheet and the board show, those of `first` before the others.
std::vector<Explained> explainYard(const Read& file, const YardSheet& sheet,
                                   std::optional<Id<Hive>> first);

}  // namespace combwright
