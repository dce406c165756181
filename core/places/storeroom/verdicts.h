// What becomes of a frame: the verdict that follows from what was seen of it, and why a frame has
// the one it has. The rule itself stands in core/trade; here it meets the records.
#pragma once

#include <QString>
#include <string_view>

#include "core/model/frames/frame.h"

namespace combwright {

/// The verdict that follows from the letters of what was seen; keep where nothing was.
Verdict verdictFor(std::string_view faults);

/// Which of two comes first to go: hold before burn, melt, refit, repair, scrape, freeze, keep.
int gravityOf(Verdict verdict);

/// "moth ate the comb": why those faults lead to their usual verdict.
QString whyUsual(std::string_view faults);
/// "refit: web of moth, moth ate the comb", "burn: web of moth; usually refit": why a frame has its
/// verdict, with what was noted of it. Empty where it has none.
QString whyVerdict(const Frame& frame);

/// "web of moth, broken wood" for letters.
QString faultWords(std::string_view letters);

/// What of the faults stays with the wood when the comb is gone.
std::string faultsOfWood(std::string_view letters);

}  // namespace combwright
