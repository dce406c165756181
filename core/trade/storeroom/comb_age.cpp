#include "core/trade/storeroom/comb_age.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace combwright {

std::int64_t cullTarget(std::int64_t combs, double share, Working* working) {
    // A share of 0.2 is no whole number to the machine: five combs are one, not a hair over it.
    constexpr double crumb = 1e-9;
    const auto wanted = static_cast<std::int64_t>(
        std::ceil(static_cast<double>(combs) * std::clamp(share, 0.0, 1.0) - crumb));
    const std::int64_t target = std::max<std::int64_t>(wanted, 0);
    note(working, "brood_combs", static_cast<double>(combs), "");
    note(working, "comb_cull_share", share, "", "of the brood combs a year, the oldest first",
         "printed in 1 source: 0.20 to 0.25; so none grows older than 4 to 5 years, printed in 2 "
         "sources: 3 to 5");
    note(working, "cull_target", static_cast<double>(target), "", "⌈combs · share⌉");
    return target;
}

std::string_view key(CombAge age) {
    switch (age) {
        case CombAge::Unknown:
            return "unknown";
        case CombAge::Young:
            return "young";
        case CombAge::Old:
            return "old";
        case CombAge::NotForSale:
            return "not_for_sale";
    }
    return {};
}

Result<CombAge> judgeCombAge(std::optional<int> drawnYear, int thisYear, const CombLife& life) {
    if (!drawnYear) return CombAge::Unknown;
    if (*drawnYear > thisYear) return Refusal{Code::InTheFuture, "drawn_year"};
    const std::int64_t age = thisYear - *drawnYear;
    if (age >= life.notForSaleFrom) return CombAge::NotForSale;
    return age >= life.flagFrom ? CombAge::Old : CombAge::Young;
}

std::vector<CullOf> cullFirst(std::span<const CombsOfYear> combs, std::int64_t target) {
    std::vector<std::size_t> order(combs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto year = [&](std::size_t at) {
        return combs[at].drawnYear.value_or(std::numeric_limits<int>::max());
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return year(a) < year(b); });
    std::vector<CullOf> cull;
    for (const std::size_t at : order) {
        const std::int64_t count = std::min(combs[at].combs, target);
        if (count <= 0) continue;
        cull.push_back({at, count});
        target -= count;
    }
    return cull;
}

}  // namespace combwright
