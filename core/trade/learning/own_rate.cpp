#include "core/trade/learning/own_rate.h"

#include <algorithm>
#include <cmath>

namespace combwright {

std::optional<double> runDoubt(const std::vector<double>& seen, double usualShare,
                               double leastShare) {
    const auto rates = seenRates(seen);
    if (!rates || !(rates->mean > 0.0)) return std::nullopt;
    const double own =
        rates->n >= runsThatShowSpread && rates->sd ? *rates->sd : usualShare * rates->mean;
    return std::max(own, leastShare * rates->mean);
}

std::optional<RateWithDoubt> seenWithDoubt(const std::vector<double>& seen, double doubtOfOne) {
    const auto rates = seenRates(seen);
    if (!rates) return std::nullopt;
    return RateWithDoubt{rates->mean, doubtOfOne / std::sqrt(static_cast<double>(rates->n))};
}

bool apart(const RateWithDoubt& one, const RateWithDoubt& other) {
    return std::abs(one.value - other.value) > one.doubt + other.doubt;
}

}  // namespace combwright
