#include "tests/bench/plain_descent.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <ctime>
#include <limits>
#include <numbers>
#include <random>

namespace combwright::bench {
namespace {

using Moment = std::complex<double>;

double computedMs() { return 1000.0 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

struct Sums {
    Moment start;
    Moment end;
    double largerSquared() const { return std::max(std::norm(start), std::norm(end)); }
};

Sums sumsOf(const std::vector<RingItem>& items, const std::vector<Moment>& to) {
    Sums sums;
    for (std::size_t k = 0; k < items.size(); ++k) {
        sums.start += items[k].start * to[k];
        sums.end += items[k].end * to[k];
    }
    return sums;
}

/// Takes the first exchange that lessens what is left, until none does.
double descend(std::vector<RingItem>& items, const std::vector<Moment>& to) {
    Sums now = sumsOf(items, to);
    for (bool better = true; better;) {
        better = false;
        for (std::size_t i = 0; i < items.size(); ++i)
            for (std::size_t j = i + 1; j < items.size(); ++j) {
                const Moment way = to[j] - to[i];
                const Sums then{now.start + (items[i].start - items[j].start) * way,
                                now.end + (items[i].end - items[j].end) * way};
                if (then.largerSquared() >= now.largerSquared() - 1e-9) continue;
                std::swap(items[i], items[j]);
                now = then;
                better = true;
            }
    }
    return std::sqrt(now.largerSquared());
}

}  // namespace

double plainDescentG(const std::vector<RingItem>& items, double forMs, unsigned seed) {
    std::vector<Moment> to;
    for (std::size_t k = 0; k < items.size(); ++k)
        to.push_back(std::polar(1.0, 2 * std::numbers::pi * static_cast<double>(k) /
                                         static_cast<double>(items.size())));
    std::mt19937 generator(seed);
    double best = std::numeric_limits<double>::infinity();
    const double begun = computedMs();
    do {
        std::vector<RingItem> arranged = items;
        std::shuffle(arranged.begin(), arranged.end(), generator);
        best = std::min(best, descend(arranged, to));
    } while (computedMs() - begun < forMs);
    return best;
}

}  // namespace combwright::bench
