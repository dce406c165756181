// Frames to buy and sheets of foundation to put in, from the places next season has for frames and
// what hangs on the shelf. A frame that was melted out or mended has no comb: it counts among the
// frames, and asks for a sheet.
#pragma once

#include <cstdint>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Frames of one kind on the shelf; what is held, or not known, is in none of them.
struct FrameStock {
    std::int64_t drawn = 0;
    std::int64_t withFoundation = 0;
    std::int64_t bareSound = 0;   ///< sound wood without comb
    std::int64_t repairable = 0;  ///< broken wood that will be mended, without comb
};

/// Boxes to fill: with drawn comb they take fewer frames than with foundation, on which bees build
/// across when it hangs wide (S40 S12 S18).
struct BoxesToFill {
    std::int64_t boxes = 0;
    std::int64_t drawnPerBox = 1;    ///< 1 or more
    std::int64_t undrawnPerBox = 1;  ///< 1 or more; also of a box that is drawn in part
};

struct FrameAnswer {
    std::int64_t places = 0;
    std::int64_t usable = 0;            ///< drawn + foundation + bare + repairable
    std::int64_t buyFrames = 0;         ///< places − usable, never below 0
    std::int64_t foundationSheets = 0;  ///< places − drawn − with foundation, never below 0
};

/// Places in boxes that are filled with drawn comb first: as many boxes as it fills at
/// `drawnPerBox`, the others at `undrawnPerBox`.
/// Refused: Negative "boxes" or "drawn", OutOfRange "drawn_per_box" or "undrawn_per_box" (below 1,
/// above 1000), TooMany "boxes" (above a million).
Result<std::int64_t> placesToFill(const BoxesToFill& fill, std::int64_t drawn,
                                  Working* working = nullptr);

/// Refused, Negative: "slots", "drawn", "with_foundation", "bare_sound", "repairable".
Result<FrameAnswer> frameNeeds(std::int64_t places, const FrameStock& stock,
                               Working* working = nullptr);

}  // namespace combwright
