// What a frame counts as in the stock. One rule for the counts, the needs, the board and the lists,
// so that they cannot disagree about what is usable.
#pragma once

#include "core/model/frames/frame.h"

namespace combwright {

enum class FrameUse {
    Drawn,  ///< comb to put on: kept, to be scraped or frozen first, granulated for bees to clean
    Foundation,  ///< a sheet, not drawn
    Bare,        ///< sound wood without comb, and frames to be refitted
    Repairable,  ///< usable once mended; its comb is taken as lost
    Held,        ///< not usable until released
    Lost,        ///< to be melted with its wood, or burnt
    Unknown      ///< nobody said what comb it has
};

/// @param held by a hold of its own, of its box or its colony
FrameUse useOf(const Frame& frame, bool held);

}  // namespace combwright
