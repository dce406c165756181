// What may stand in the records of a run, whoever writes them: the action that records, or the one
// that amends.
#pragma once

#include "core/model/honey/extraction.h"
#include "core/support/result.h"

namespace combwright {

/// Refused with OutOfRange beyond what a box of comb can weigh (60 kg), with Contradiction where
/// wet outweighs full.
Result<void> demandWeights(const ExtractionBox& entry);
/// Refused with OutOfRange beyond 1,000 kg, or for honey outside 10 to 30 % of water.
Result<void> demandBucket(const Bucket& bucket);
/// Refused with OutOfRange beyond 1,000 kg of cappings or scrapings.
Result<void> demandCappings(const Extraction& run);

}  // namespace combwright
