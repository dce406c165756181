// What usually becomes of a frame, from what was seen of it. The keeper may decide otherwise; until
// then this is the verdict, and it says why.
#pragma once

#include <QString>
#include <string_view>

#include "core/model/frames/frame.h"

namespace combwright {

/// The verdict that follows from the letters of what was seen; of several the gravest: hold, melt,
/// refit, repair, scrape, freeze, keep. Keep where nothing was seen. Common practice, no source,
/// but for dead brood and suspected foulbrood, which are held until disease is ruled out.
Verdict usualVerdict(std::string_view faults);

/// How grave a verdict is: the gravest comb is the first to go.
int gravity(Verdict verdict);

/// "refit: web of moth" or "burn: web of moth; usually refit": why a frame has its verdict. Empty
/// where it has none.
QString whyVerdict(const Frame& frame);

/// "web of moth, broken wood" for letters.
QString faultWords(std::string_view letters);

/// What of the faults lies in the comb and goes with it, and what stays with the wood.
std::string faultsOfWood(std::string_view letters);

}  // namespace combwright
