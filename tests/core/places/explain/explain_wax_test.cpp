// Every figure of the bench and of the plan can be opened, with its source where there is one.
#include "core/places/explain/explain_wax.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class ExplainWax : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        done(R"({"do":"open-run","on":"2027-08-08","name":"27-1"}
{"do":"gather-wax","on":"2027-08-09","name":"A","source":"cappings","state":"drained","runs":"27-1","raw_g":8000}
{"do":"cast-block","on":"2027-11-01","name":"L","batch":"A","shade":"light","mass_g":3400}
{"do":"gather-wax","on":"2027-11-02","name":"B","source":"cappings","state":"drained","raw_g":4000}
{"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle","net_g":45}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"measured":true,"wick":"#1","wick_length_mm":120}
{"do":"buy-wick","on":"2027-11-01","wick":"#1","bought_length_mm":5000}
{"do":"pour-candles","on":"2027-11-12","mould":"Skeps","good":4,"blocks":"L 180 g"}
{"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"mon wed fri"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":64,"wanted_by":"2027-12-11"})");
    }
    static const Explained* of(const std::vector<Explained>& all, const char* part) {
        const auto found = std::find_if(all.begin(), all.end(), [part](const Explained& each) {
            return each.what.contains(QLatin1String(part));
        });
        return found == all.end() ? nullptr : &*found;
    }
    static std::optional<double> step(const Explained& why, std::string_view what) {
        for (const Working::Step& each : why.working.steps)
            if (each.what == what) return each.value;
        return std::nullopt;
    }
};

TEST_F(ExplainWax, TheBench) {
    const auto all = explainWax(file(), waxBench(file(), day("2027-11-13")));
    const Explained* gave = of(all, "What A gave");
    ASSERT_TRUE(gave);
    EXPECT_EQ(step(*gave, "wax_raw_g"), 8000);
    EXPECT_EQ(step(*gave, "wax_lost_g"), 4600);
    EXPECT_NEAR(*step(*gave, "wax_yield_share"), 0.425, 1e-9);
    const Explained* expected = of(all, "expect of B");
    ASSERT_TRUE(expected);
    EXPECT_EQ(step(*expected, "own_batches"), 1) << "A was weighed in and out";
    const Explained* stock = of(all, "light");
    ASSERT_TRUE(stock);
    EXPECT_EQ(step(*stock, "wax_stock_g"), 3220);
    const Explained* mould = of(all, "one of Skeps");
    ASSERT_TRUE(mould);
    EXPECT_NEAR(*step(*mould, "candle_g"), 45.12, 1e-9);
    EXPECT_FALSE(mould->working.steps.front().source.empty()) << "the density has a source";
    const Explained* year = of(all, "balance 2027");
    ASSERT_TRUE(year);
    EXPECT_EQ(step(*year, "wax_cast_g"), 3400);
    EXPECT_EQ(step(*year, "wax_poured_g"), 180);
    EXPECT_EQ(step(*year, "wax_stock_g"), 3220);
}

// 60 more of 45 g: 2,700 g, ÷ 0.95 = 2,842; there are 3,220. 12 evenings · 4 = 48 by moulds;
// 5 m less four wicks of 0.12 m leave 4.52 m, 37 more.
TEST_F(ExplainWax, ThePlan) {
    const auto plan = candleEvenings(file(), day("2027-11-13"));
    ASSERT_TRUE(plan && *plan);
    const auto all = explainCandlePlan(file(), **plan);
    const Explained* wax = of(all, "Wax for the candles");
    ASSERT_TRUE(wax);
    EXPECT_EQ(step(*wax, "wax_net_g"), 2700);
    EXPECT_EQ(step(*wax, "wax_short_g"), 0);
    const Explained* skeps = of(all, "How many skep");
    ASSERT_TRUE(skeps);
    EXPECT_EQ(step(*skeps, "candles_by_moulds"), 48);
    EXPECT_EQ(step(*skeps, "candles_by_wick"), 37);
    EXPECT_EQ(step(*skeps, "candles_made"), 37);
    const Explained* wick = of(all, "Wick #1");
    ASSERT_TRUE(wick);
    EXPECT_NEAR(*step(*wick, "wick_left_m"), 4.52 - 7.2, 1e-9);
}

}  // namespace
}  // namespace combwright
