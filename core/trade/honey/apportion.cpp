#include "core/trade/honey/apportion.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace combwright {
namespace {

// Products of two masses in the smallest units do not fit 64 bits.
__extension__ typedef __int128 WideProduct;

constexpr double billionth = 1e9;

}  // namespace

std::vector<std::int64_t> largestRemainder(std::int64_t whole,
                                           const std::vector<std::int64_t>& weights) {
    std::vector<std::int64_t> parts(weights.size(), 0);
    const std::int64_t total = std::accumulate(weights.begin(), weights.end(), std::int64_t{0});
    if (total == 0) return parts;
    std::vector<std::int64_t> remainders(weights.size());
    std::int64_t open = whole;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const WideProduct product = static_cast<WideProduct>(whole) * weights[i];
        parts[i] = static_cast<std::int64_t>(product / total);
        remainders[i] = static_cast<std::int64_t>(product % total);
        open -= parts[i];
    }
    std::vector<std::size_t> order(weights.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return remainders[a] > remainders[b]; });
    for (std::size_t i = 0; open > 0; ++i, --open) ++parts[order[i]];
    return parts;
}

std::vector<std::int64_t> apportioned(std::int64_t whole, const std::vector<double>& shares) {
    std::vector<std::int64_t> weights;
    weights.reserve(shares.size());
    for (const double share : shares) weights.push_back(std::llround(share * billionth));
    return largestRemainder(whole, weights);
}

}  // namespace combwright
