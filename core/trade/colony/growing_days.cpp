#include "core/trade/colony/growing_days.h"

#include <algorithm>

#include "core/trade/honey/published_table.h"

namespace combwright {

Result<double> growingDegreeDays(double highF, double lowF) {
    constexpr double least = -100;
    constexpr double most = 150;
    if (!(highF >= least && highF <= most)) return outOfRange("high_f", highF, least, most);
    if (!(lowF >= least && lowF <= most)) return outOfRange("low_f", lowF, least, most);
    if (lowF > highF) return Refusal{Code::Contradiction, "low_f", {{"other", "high_f"}}};
    constexpr double base = 50;
    constexpr double cap = 86;
    const double mean = (std::min(highF, cap) + std::max(lowF, base)) / 2;
    return std::max(0.0, mean - base);
}

}  // namespace combwright
