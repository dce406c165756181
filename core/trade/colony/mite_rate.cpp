#include "core/trade/colony/mite_rate.h"

#include <algorithm>
#include <string>

#include "core/trade/colony/count_interval.h"
#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

Result<void> goodSample(std::int64_t mites, std::int64_t bees) {
    if (bees < 1 || bees > mostBeesInSample)
        return outOfRange("bees", static_cast<double>(bees), 1,
                          static_cast<double>(mostBeesInSample));
    if (mites < 0) return Refusal{Code::Negative, "mites", {{"value", std::to_string(mites)}}};
    if (mites > bees) return Refusal{Code::TooMany, "mites", {{"most", std::to_string(bees)}}};
    return {};
}

}  // namespace

Result<MiteRate> miteRate(std::int64_t mites, std::int64_t bees, double confidence,
                          Working* working) {
    if (const auto good = goodSample(mites, bees); !good) return good.error();
    if (!(confidence >= 0 && confidence <= 1)) return outOfRange("confidence", confidence, 0, 1);
    const double k = static_cast<double>(mites);
    const double n = static_cast<double>(bees);
    const CountInterval ends = countInterval(mites, bees, confidence);
    const MiteRate rate{100 * k / n, 100 * ends.low, 100 * ends.high};
    note(working, "mites", k, "");
    note(working, "bees", n, "");
    note(working, "mites_per_100", rate.per100, "", "100 · mites ÷ bees");
    note(working, "mites_low_per_100", rate.low, "", "P(X ≥ mites) = (1 − confidence) ÷ 2",
         "Clopper and Pearson 1934");
    note(working, "mites_high_per_100", rate.high, "", "P(X ≤ mites) = (1 − confidence) ÷ 2",
         "Clopper and Pearson 1934");
    return rate;
}

Result<double> chanceOfAtLeast(std::int64_t mites, std::int64_t bees, double per100) {
    if (const auto good = goodSample(mites, bees); !good) return good.error();
    if (!(per100 >= 0 && per100 <= 100)) return outOfRange("per_100", per100, 0, 100);
    if (mites == 0) return 1.0;
    return chanceOfOrMore(mites, bees, per100 / 100);
}

Result<MiteRate> correctedForRecovery(const MiteRate& raw, double recovery) {
    if (!(recovery > 0 && recovery <= 1)) return outOfRange("recovery", recovery, 0, 1);
    return MiteRate{std::min(100.0, raw.per100 / recovery), std::min(100.0, raw.low / recovery),
                    std::min(100.0, raw.high / recovery)};
}

}  // namespace combwright
