// The wax of the year as one flow, by hand: 50.0 kg raw became 8.7 kg washed and 6.75 kg in blocks.
#include "core/places/wax_bench/wax_flow.h"

#include <gtest/gtest.h>

#include "core/places/wax_bench/wax_records.h"
#include "core/places/wax_bench/wax_waits.h"
#include "tests/support/candle_lines.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class WaxOfAYear : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        done(test::candleStockLines);
        done(test::candleBatchLines);
    }
    WaxFlow flow(const CandleEvenings* plan = nullptr) {
        return waxFlow(waxBench(file(), day("2027-11-13")), plan);
    }
};

TEST_F(WaxOfAYear, RawToBlocksClosesWithWhatIsMissing) {
    const WaxFlow all = flow();
    ASSERT_EQ(all.raw.size(), 4U);
    EXPECT_DOUBLE_EQ(all.rawG, 50'000);
    EXPECT_DOUBLE_EQ(all.washedG, 8'700);
    EXPECT_TRUE(all.washedWeighed);
    EXPECT_DOUBLE_EQ(all.slumgumG, 1'450);
    ASSERT_TRUE(all.missingG);
    EXPECT_DOUBLE_EQ(*all.missingG, 500);
    EXPECT_DOUBLE_EQ(all.castG, 6'750);
    EXPECT_DOUBLE_EQ(all.haveG, 6'750);
    // No honey was caught in a bucket: it is in what was washed away.
    EXPECT_DOUBLE_EQ(all.honeyG, 0);
    EXPECT_DOUBLE_EQ(all.awayG, 41'300);
    EXPECT_DOUBLE_EQ(all.rawG, all.honeyG + all.awayG + all.waitsG + all.washedG);
    EXPECT_DOUBLE_EQ(all.washedG, all.castG + all.slumgumG + *all.missingG);
}

TEST_F(WaxOfAYear, WhatNobodyWeighedIsNoZero) {
    done(
        R"({"do":"gather-wax","on":"2027-09-01","name":"late","source":"cappings"}
{"do":"gather-wax","on":"2027-09-02","name":"later","source":"scrapings","raw_g":700})");
    const WaxFlow all = flow();
    ASSERT_EQ(all.raw.size(), 6U);
    EXPECT_FALSE(all.raw[4].grams);
    EXPECT_EQ(all.rawNotWeighed, 1);
    EXPECT_TRUE(all.raw[4].waits);
    EXPECT_DOUBLE_EQ(all.waitsG, 700);
}

TEST_F(WaxOfAYear, ShadesGoToWhatIsWanted) {
    done(test::candleWishLines);
    const auto plan = candleEvenings(file(), day("2027-11-13"));
    ASSERT_TRUE(plan && *plan);
    const WaxFlow all = flow(&**plan);
    EXPECT_NEAR(all.neededG, 9621.05, 0.005);
    EXPECT_NEAR(all.shortG, 2871.05, 0.005);
    ASSERT_EQ(all.links.size(), 4U);
    EXPECT_EQ(all.links[0].count, 60);
    EXPECT_NEAR(all.links[0].blockG, 60 * 45 / 0.95, 1e-6);
    ASSERT_EQ(all.wants.size(), 3U);
    EXPECT_EQ(all.wants[1].made, 37);
    EXPECT_NEAR(all.wants[1].shortG, 3 * 68 / 0.95, 1e-6);
    EXPECT_EQ(all.wants[2].made, 3);
    // 1200 − 3 · 310 ÷ 0.95.
    EXPECT_NEAR(all.shades[2].unusedG, 221.05, 0.01);
}

TEST_F(WaxOfAYear, WhatWentIsOnItsBlock) {
    done(R"({"do":"use-wax","on":"2027-11-01","block":"M","went":"sold","mass_g":400})");
    const WaxFlow all = flow();
    EXPECT_DOUBLE_EQ(all.shades[1].leftG, 1'750);
    EXPECT_DOUBLE_EQ(all.shades[1].goneG, 400);
    const auto lines = waxRecords(file(), {.shade = WaxShade::Mid}, day("2027-11-13"));
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(lines[1].on, day("2027-11-01"));
    EXPECT_TRUE(lines[1].what.contains(QStringLiteral("sold"))) << lines[1].what.toStdString();
    EXPECT_EQ(lines[1].mass, QStringLiteral("0.40 kg w"));
}

TEST_F(WaxOfAYear, RecordsOfABatchAreItsStepsAndBlocks) {
    const auto batch = file().first<WaxBatch>({is("name", test::name("Mill Lane"))});
    ASSERT_TRUE(batch);
    const auto lines = waxRecords(file(), {.batch = batch->id}, day("2027-11-13"));
    EXPECT_EQ(lines.size(), 7U);  // gathered, three steps, three blocks
    EXPECT_LT(waxRecords(file(), {.batch = batch->id}, day("2027-08-10")).size(), lines.size());
}

TEST_F(WaxOfAYear, WhatCameOutOfThePotIsNotWashedAwayBeforeItIsCast) {
    const WaxFlow before = flow();
    done(R"({"do":"gather-wax","on":"2027-11-12","name":"scrap","source":"scrapings","raw_g":4200}
{"do":"work-wax","on":"2027-11-12","batch":"scrap","work":"melted","came_out_g":1900})");
    EXPECT_DOUBLE_EQ(flow().awayG - before.awayG, 2'300);
    EXPECT_DOUBLE_EQ(flow().washedG - before.washedG, 1'900);
    done(
        R"({"do":"cast-block","on":"2027-11-12","name":"S","batch":"scrap","shade":"mid","mass_g":1850})");
    EXPECT_DOUBLE_EQ(flow().washedG - before.washedG, 1'900);
}

TEST_F(WaxOfAYear, WashedAndNotMeltedWaits) {
    EXPECT_EQ(waxThatWaits(file(), day("2027-11-13")), 0);
    done(R"({"do":"gather-wax","on":"2027-11-12","name":"wet","source":"cappings","raw_g":900}
{"do":"work-wax","on":"2027-11-12","batch":"wet","work":"washed","came_out_g":500})");
    EXPECT_EQ(waxThatWaits(file(), day("2027-11-13")), 1);
    EXPECT_DOUBLE_EQ(flow().washedWaitsG, 500);
}

}  // namespace
}  // namespace combwright
