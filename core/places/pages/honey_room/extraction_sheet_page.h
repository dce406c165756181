// The sheet that hangs beside the extractor: a picture of each load as it is to be hung, lines for
// what was hung and how it felt, how long it ran and how, what was set aside. Two loads without a
// picture stand behind the others, for frames that are spun again.
#pragma once

#include <vector>

#include "core/places/honey_room/load_sheet.h"
#include "core/places/pages/page.h"

namespace combwright {

/// Of the runs whose loads are given; without any it is a sheet of empty loads.
Page extractionSheetPage(const Read& file, const std::vector<LoadSheet>& sheets, Day on);

}  // namespace combwright
