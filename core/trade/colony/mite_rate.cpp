#include "core/trade/colony/mite_rate.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

/// ln n!, n whole. The series (Stirling) is good to the last digit from 16 on.
double logFactorial(double n) {
    if (n < 16) {
        double product = 1;
        for (int i = 2; i <= n; ++i) product *= i;
        return std::log(product);
    }
    const double n2 = n * n;
    return (n + 0.5) * std::log(n) - n + 0.5 * std::log(2 * std::numbers::pi) + 1 / (12 * n) -
           1 / (360 * n * n2) + 1 / (1260 * n * n2 * n2) - 1 / (1680 * n * n2 * n2 * n2);
}

/// The continued fraction of the incomplete beta function by Lentz's method. Below the mean it
/// needs about √(a + b) terms; the limit is there so that it ends whatever comes.
double betaFraction(double x, double a, double b) {
    constexpr double tiny = 1e-300;
    constexpr int mostTerms = 20'000;
    auto away = [](double number) { return std::abs(number) < tiny ? tiny : number; };
    double c = 1;
    double d = 1 / away(1 - (a + b) * x / (a + 1));
    double fraction = d;
    for (int m = 1; m <= mostTerms; ++m) {
        const double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
        d = 1 / away(1 + even * d);
        c = away(1 + even / c);
        fraction *= d * c;
        const double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
        d = 1 / away(1 + odd * d);
        c = away(1 + odd / c);
        fraction *= d * c;
        if (std::abs(d * c - 1) < 1e-15) break;
    }
    return fraction;
}

/// The regularized incomplete beta function with whole a and b, 1 and above; x and 1 − x both
/// given, so that a rate near 0 or 1 keeps its digits.
double incompleteBeta(double x, double rest, double a, double b) {
    if (x <= 0) return 0;
    if (rest <= 0) return 1;
    const double front = std::exp(a * std::log(x) + b * std::log(rest) + logFactorial(a + b - 1) -
                                  logFactorial(a - 1) - logFactorial(b - 1));
    return x < (a + 1) / (a + b + 2) ? front * betaFraction(x, a, b) / a
                                     : 1 - front * betaFraction(rest, b, a) / b;
}

/// P(X ≥ k) for n bees, 1 ≤ k ≤ n.
double upperTail(double p, double k, double n) { return incompleteBeta(p, 1 - p, k, n - k + 1); }

/// P(X ≤ k), 0 ≤ k < n.
double lowerTail(double p, double k, double n) { return incompleteBeta(1 - p, p, n - k, k + 1); }

/// Where a chance that rises (or falls) with the rate passes `wanted`; halving, until two doubles
/// that stand beside each other are left, which takes far less than the limit.
template <class Chance>
double rateAt(double wanted, bool rises, Chance chance) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < 400; ++i) {
        const double middle = low + (high - low) / 2;
        if (middle <= low || middle >= high) break;
        ((chance(middle) < wanted) == rises ? low : high) = middle;
    }
    return low + (high - low) / 2;
}

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
    const double tail = (1 - confidence) / 2;
    MiteRate rate{100 * k / n, 0, 100};
    // With no tail at all nothing is shut out.
    if (mites > 0 && tail > 0)
        rate.low = 100 * rateAt(tail, true, [&](double p) { return upperTail(p, k, n); });
    if (mites < bees && tail > 0)
        rate.high = 100 * rateAt(tail, false, [&](double p) { return lowerTail(p, k, n); });
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
    return upperTail(per100 / 100, static_cast<double>(mites), static_cast<double>(bees));
}

Result<MiteRate> correctedForRecovery(const MiteRate& raw, double recovery) {
    if (!(recovery > 0 && recovery <= 1)) return outOfRange("recovery", recovery, 0, 1);
    return MiteRate{std::min(100.0, raw.per100 / recovery), std::min(100.0, raw.low / recovery),
                    std::min(100.0, raw.high / recovery)};
}

}  // namespace combwright
