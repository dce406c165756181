// A day at the extractor: which frames are spun together, in which order, and where each hangs.
// Frames come box by box. A load holds one kind and one lot unless the keeper allows mixing; lots
// keep the order they are given in, because before another lot drum, gate and strainer are run
// empty.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/support/result.h"
#include "core/trade/extractor/balance.h"

namespace combwright {

/// A frame waiting to be spun.
struct SpinFrame {
    std::string box;
    std::string kind;
    std::optional<std::string> lot = {};
    LoadedFrame frame;
};

struct SpinRules {
    std::map<std::string, std::int64_t> slotsOfKind;  ///< 2 to 72
    /// At no time are more boxes begun and not finished. A box counts from the load with its first
    /// frame to the load with its last; where no plan keeps to that, frame by frame, boxes begun
    /// being finished first.
    std::optional<std::int64_t> openBoxes = {};
    bool mixLots = false;
    bool mixKinds = false;  ///< only kinds with the same number of slots
    /// Offsets up to here count as equally good. Masses are whole grams, so less says nothing.
    double sameScoreG = 1.0;
};

struct PlannedLoad {
    std::vector<std::string> kinds;  ///< in the order of their first frame in the list given
    std::vector<std::string> lots;
    FrameSlots places;  ///< indices of the list given
    LoadOffsets offset;
};

/// The loads in the order they are spun: as few as possible; of those plans one whose worst offset
/// is as small as a fixed amount of work can make it; then few boxes open, and the frames of a box
/// near each other. Refused: frames as in balanceLoad; a kind without slots, or not 2 to 72
/// ("slots.medium"); a limit below 1, or one no order of the boxes keeps to ("open_boxes", out of
/// range, "low" being the smallest that can be kept).
Result<std::vector<PlannedLoad>> planSpinLoads(const std::vector<SpinFrame>& frames,
                                               const SpinRules& rules);

/// The slots a load put together by hand has. Refused: a kind without slots, as above; frames of
/// kinds that do not fit together, because the machine has another number of places for each or the
/// keeper does not mix kinds (Contradiction, "frames[3].kind", "other" the first frame's kind);
/// likewise lots ("frames[3].lot"); more frames than slots (TooMany, "frames"). Nothing where there
/// are no frames.
Result<std::optional<std::int64_t>> slotsOfLoad(const std::vector<SpinFrame>& frames,
                                                const SpinRules& rules);

/// How many loads that takes, without planning them.
std::int64_t countSpinLoads(const std::vector<SpinFrame>& frames, const SpinRules& rules);

}  // namespace combwright
