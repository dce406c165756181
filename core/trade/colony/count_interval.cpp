#include "core/trade/colony/count_interval.h"

#include <cmath>
#include <numbers>

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

}  // namespace

CountInterval countInterval(std::int64_t count, std::int64_t of, double confidence) {
    const double k = static_cast<double>(count);
    const double n = static_cast<double>(of);
    const double tail = (1 - confidence) / 2;
    CountInterval ends;
    // With no tail at all nothing is shut out.
    if (count > 0 && tail > 0)
        ends.low = rateAt(tail, true, [&](double p) { return upperTail(p, k, n); });
    if (count < of && tail > 0)
        ends.high = rateAt(tail, false, [&](double p) { return lowerTail(p, k, n); });
    return ends;
}

double chanceOfOrMore(std::int64_t count, std::int64_t of, double rate) {
    return upperTail(rate, static_cast<double>(count), static_cast<double>(of));
}

}  // namespace combwright
