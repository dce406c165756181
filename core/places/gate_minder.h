// What the gate of the drum asks for. While it is shut the honey of each load gathers below the
// cage; before the next would reach the frames it must be opened, the bucket under it must take
// what comes, the strainer must keep up, and another lot waits until all three have run empty.
#pragma once

#include <optional>

#include "core/model/honey/room.h"
#include "core/storage/rows.h"

namespace combwright {

/// Grams of honey a bucket can hold: the largest of those written down with the equipment, else
/// what it is filled with and the room above (bucket_room_share).
double bucketHoldsG(const Read& file, Day on);

/// The lot whose honey was in the drum when a load of another was spun, where nobody said that it
/// was run empty between them: on the same day and in the same machine. Nothing where the two had
/// met before, for then they are one lot already.
std::optional<Id<Extraction>> lotInDrumBefore(const Read& file, const SpinLoad& load);

}  // namespace combwright
