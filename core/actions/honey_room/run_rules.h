// What may stand in the records of a run, whoever writes them: the action that records, or the one
// that amends.
#pragma once

#include "core/model/honey/extraction.h"
#include "core/places/honey_room/run_balance.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// The run, on a day it was there. Refused with NotFound, or with BeforeItBegan.
Result<Extraction> openRun(const Read& file, Id<Extraction> id, Day on);
/// The box is one of the run, or none is named. Refused with NotFound, field "box".
Result<void> demandBoxOfRun(const Read& file, Id<Extraction> run,
                            const std::optional<Id<ExtractionBox>>& box);

/// Refused with OutOfRange beyond what a box of comb can weigh (60 kg), with Contradiction where
/// wet outweighs full.
Result<void> demandWeights(const ExtractionBox& entry);
/// Refused with OutOfRange beyond 1,000 kg, or for honey outside 10 to 30 % of water.
Result<void> demandBucket(const Bucket& bucket);
/// Beyond these nobody works in a room, °C; a figure outside is a slip of the pen.
inline constexpr double coldestRoomC = -20;
inline constexpr double warmestRoomC = 60;
/// Refused with OutOfRange beyond them, or where it is damper than 100 %.
Result<void> demandRoomAir(const Extraction& run);
/// Refused with OutOfRange beyond 1,000 kg of cappings or scrapings.
Result<void> demandCappings(const Extraction& run);

/// Refused with Missing where nobody said how much honey a bucket holds, naming it, or where no
/// bucket holds any: a run is shared out by what is in its buckets.
Result<void> demandHoneyCounted(const RunBalance& balance);

}  // namespace combwright
