// A box laid out flat as its last look tells it: a keeper counts capped frames and judges how
// full the box is, and few frames have a place of their own. What is drawn of a counted frame is
// shared out so that the counts and the fill add up to what was recorded, and to nothing else.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/model/frames/frame.h"

namespace combwright {

struct FlatFrame {
    std::optional<std::int64_t> place;  ///< from 1 at the left; none: known only as a count
    std::optional<Comb> comb;           ///< none: nobody recorded it
    std::optional<double> filledA;      ///< share of the comb, 0 to 1
    std::optional<double> filledB;
    std::optional<double> capped;  ///< share of the comb
    bool wet = false;
    std::string faults;
};

/// The frames of a box: those with a place in their order, then those counted, drawn comb
/// first and faulty ones last.
/// Of a look, capped frames are full ones and come first, and what the fill leaves is shared evenly
/// among the rest; without a fill only the capped ones are known. Frames the look counted and
/// nobody entered are added without a comb.
/// @param count how many frames the box holds
std::vector<FlatFrame> framesFlat(const std::vector<Frame>& frames,
                                  const std::optional<BoxLook>& look, std::int64_t count);

}  // namespace combwright
