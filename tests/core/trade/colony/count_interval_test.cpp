#include "core/trade/colony/count_interval.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/binomial.hpp>

namespace combwright {
namespace {

TEST(CountIntervalTest, IsTheBinomialsOwn) {
    using Binomial = boost::math::binomial;
    for (const std::int64_t of : {1, 2, 7, 21, 120, 1000})
        for (std::int64_t count = 0; count <= of; count += 1 + of / 9)
            for (const double confidence : {0.8, 0.95, 0.99}) {
                const auto n = static_cast<double>(of);
                const auto k = static_cast<double>(count);
                const double tail = (1 - confidence) / 2;
                const CountInterval ends = countInterval(count, of, confidence);
                EXPECT_NEAR(ends.low, count == 0 ? 0 : Binomial::find_lower_bound_on_p(n, k, tail),
                            1e-12)
                    << count << " of " << of;
                EXPECT_NEAR(ends.high,
                            count == of ? 1 : Binomial::find_upper_bound_on_p(n, k, tail), 1e-12)
                    << count << " of " << of;
            }
}

TEST(CountIntervalTest, MoreColoniesSayMore) {
    double wide = 1;
    for (const std::int64_t of : {5, 10, 20, 100, 1000}) {
        const CountInterval ends = countInterval(of / 5, of);
        EXPECT_LT(ends.low, 0.2);
        EXPECT_GT(ends.high, 0.2);
        EXPECT_LT(ends.high - ends.low, wide);
        wide = ends.high - ends.low;
    }
}

}  // namespace
}  // namespace combwright
