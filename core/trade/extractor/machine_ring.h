// How far off balance a machine may be is written in no book: it hangs on its feet, its floor and
// its age. So the machine is asked. After a load one key keeps how it ran; from then on the ring
// drawn is the largest offset that ran smooth on this machine. Offsets count with their doubt, as
// they are shown: a load of 40 g known to 200 g has tried the machine at no more than that.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace combwright {

enum class RanLike { Smooth, Walked, Stopped };

/// A load that was spun and whose running was kept.
struct RingRecord {
    double offsetG = 0.0;  ///< the larger offset reckoned, its doubt added
    RanLike ran = RanLike::Smooth;
};

struct MachineRing {
    std::optional<double> ranSmoothG;  ///< the largest that ran smooth
    std::optional<double> walkedG;     ///< the smallest that walked or was stopped
    std::size_t overruled = 0;         ///< older records that newer ones speak against
    /// It walked since below all that ran smooth before: the least of those stands, for want of
    /// better, and the next load shows.
    bool contradicted = false;

    /// The ring to draw: what ran smooth; where nothing did, what the balance grade allows, and
    /// where the machine walked at no more than that, a gram less than where it walked.
    double ringG(double allowedByGradeG) const;
    /// Whether a load of that offset lies where no load ran smooth yet and none walked.
    bool untried(double offsetG) const;
};

/// What the records, oldest first, say of the machine. Where two contradict each other (it walked
/// at an offset below one that ran smooth) the newer outweighs: feet are levelled, bolts work
/// loose. So one that walks below what ran smooth before shrinks the ring to the largest smooth one
/// not above it, to the least where none is, and one that runs smooth at or above an older walk
/// takes that walk away. Offsets that are negative or no number are passed over. Without records
/// nothing is known.
MachineRing learnRing(const std::vector<RingRecord>& records);

}  // namespace combwright
