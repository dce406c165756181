// How the honey room's figures came about: each hive's share, what is missing, the rate a frame,
// the mean water, and how far each load may be off balance.
#pragma once

#include <vector>

#include "core/places/explain/explained.h"
#include "core/places/honey/bucket_sheet.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/places/honey_room/room_day.h"
#include "core/places/honey_room/run_balance.h"

namespace combwright {

/// Every figure of a run's balance; none where it cannot be drawn up.
std::vector<Explained> explainRun(const Read& file, const RunBalance& balance);
/// The offsets of a load as its frames stand, and what their ring is.
std::vector<Explained> explainLoad(const Read& file, const LoadSheet& sheet, const SheetLoad& load,
                                   Day on);
/// How long the day takes, from the steps planDay noted.
Explained explainRoomDay(const RoomDaySheet& sheet, Working steps);
/// Buckets needed and the mean water.
std::vector<Explained> explainBuckets(const Read& file, Id<Extraction> run, Day on);

}  // namespace combwright
