#include "core/trade/extractor/machine_ring.h"

#include <algorithm>
#include <cmath>

namespace combwright {

double MachineRing::ringG(double allowedByGradeG) const {
    if (ranSmoothG) return *ranSmoothG;
    if (!walkedG || *walkedG > allowedByGradeG) return allowedByGradeG;
    return std::max(0.0, *walkedG - 1.0);
}

bool MachineRing::untried(double offsetG) const {
    return offsetG > ranSmoothG.value_or(-1.0) && (!walkedG || offsetG < *walkedG);
}

MachineRing learnRing(const std::vector<RingRecord>& records) {
    MachineRing ring;
    std::optional<double> leastOverruled;  // of those that ran smooth
    // Newest first: what is already known outweighs.
    for (auto each = records.rbegin(); each != records.rend(); ++each) {
        if (!(each->offsetG >= 0.0) || !std::isfinite(each->offsetG)) continue;
        if (each->ran == RanLike::Smooth) {
            if (ring.walkedG && each->offsetG > *ring.walkedG) {
                ++ring.overruled;
                leastOverruled = std::min(leastOverruled.value_or(each->offsetG), each->offsetG);
            } else
                ring.ranSmoothG = std::max(ring.ranSmoothG.value_or(0.0), each->offsetG);
        } else {
            if (ring.ranSmoothG && each->offsetG <= *ring.ranSmoothG)
                ++ring.overruled;
            else
                ring.walkedG = std::min(ring.walkedG.value_or(each->offsetG), each->offsetG);
        }
    }
    // One load that walked, stopped perhaps for another reason, does not undo all that ran.
    if (!ring.ranSmoothG && leastOverruled) {
        ring.ranSmoothG = leastOverruled;
        ring.contradicted = true;
    }
    return ring;
}

}  // namespace combwright
