#include "core/trade/honey/share_yield.h"

#include <gtest/gtest.h>

#include <map>
#include <numeric>
#include <random>

namespace combwright {
namespace {

std::map<std::string, std::int64_t> yieldGramsOf(const YieldShares& shares) {
    std::map<std::string, std::int64_t> grams;
    for (const auto& line : shares.hives) grams[line.hive] = line.honey.grams();
    return grams;
}

std::int64_t yieldSumOf(const YieldShares& shares) {
    std::int64_t sum = shares.unknown.grams();
    for (const auto& line : shares.hives) sum += line.honey.grams();
    return sum;
}

YieldRun yieldRunOf(double bucketG, std::optional<double> cappingsG = {},
                    std::optional<double> scrapingsG = {}) {
    return {bucketG, cappingsG, scrapingsG};
}

TEST(ShareYield, LargestRemainderTiesToTheEarlier) {
    // Three equal hives and 100 g: 33 1/3 each, the odd gram to the first.
    const auto shares =
        shareYield(yieldRunOf(100), {{"a", "H2", 9, 1}, {"b", "H1", 9, 1}, {"c", "H3", 9, 1}});
    ASSERT_TRUE(shares);
    EXPECT_EQ(yieldGramsOf(*shares),
              (std::map<std::string, std::int64_t>{{"H1", 33}, {"H2", 34}, {"H3", 33}}));
    // 1 : 1 : 4 of 100 g: 16 2/3, 16 2/3, 66 2/3: two odd grams to the first two.
    const auto other =
        shareYield(yieldRunOf(100), {{"a", "H1", 2, 1}, {"b", "H2", 2, 1}, {"c", "H3", 5, 1}});
    EXPECT_EQ(yieldGramsOf(*other),
              (std::map<std::string, std::int64_t>{{"H1", 17}, {"H2", 17}, {"H3", 66}}));
}

TEST(ShareYield, TheUnknownLineIsOneOfThem) {
    const auto shares = shareYield(
        yieldRunOf(100), {{"a", std::nullopt, 9, 1}, {"b", "H1", 9, 1}, {"c", std::nullopt, 9, 1}});
    ASSERT_TRUE(shares);
    EXPECT_EQ(shares->unknown.grams(), 67);
    EXPECT_EQ(shares->hives[0].honey.grams(), 33);
    EXPECT_EQ(shares->boxes[0].grams() + shares->boxes[2].grams(), 67);
    EXPECT_EQ(shares->boxes[0].grams(), 34) << "the odd gram of a line to its earlier box";
}

TEST(ShareYield, RandomRunsAddUpAndKeepProportion) {
    std::mt19937 random(91500);
    for (int i = 0; i < 500; ++i) {
        std::vector<YieldBox> boxes;
        double off = 0;
        const std::size_t count = 1 + random() % 30;
        for (std::size_t b = 0; b < count; ++b) {
            YieldBox box{"b" + std::to_string(b), std::nullopt, 10000.0 + random() % 15000,
                         1000.0 + random() % 5000};
            if (random() % 4) box.hive = "H" + std::to_string(random() % 9);
            off += *box.grossG - *box.wetG;
            boxes.push_back(box);
        }
        const double bucket = random() % 400000;
        const auto shares = shareYield(yieldRunOf(bucket, 5000), boxes);
        ASSERT_TRUE(shares);
        EXPECT_EQ(yieldSumOf(*shares), static_cast<std::int64_t>(bucket));
        std::map<std::string, std::int64_t> fromBoxes;
        std::int64_t fromLost = 0;
        for (std::size_t b = 0; b < count; ++b)
            (boxes[b].hive ? fromBoxes[*boxes[b].hive] : fromLost) += shares->boxes[b].grams();
        EXPECT_EQ(fromBoxes, yieldGramsOf(*shares));
        EXPECT_EQ(fromLost, shares->unknown.grams());
        for (const auto& line : shares->hives) {
            double part = 0;
            for (const YieldBox& box : boxes)
                if (box.hive == line.hive) part += *box.grossG - *box.wetG;
            EXPECT_NEAR(static_cast<double>(line.honey.grams()), bucket * part / off, 1);
            EXPECT_EQ(line.how, How::Weighed);
        }
        EXPECT_NEAR(shares->unaccountedG.value(), off - bucket - 5000, 1e-6);
    }
}

TEST(ShareYield, OneBoxByDifference) {
    const std::vector<YieldBox> boxes{{"a", "H1", 20000, 5000}, {"b", "H2", {}, 5000}};
    const auto shares = shareYield(yieldRunOf(24000, 3500, 500), boxes);
    ASSERT_TRUE(shares);
    EXPECT_EQ(shares->byDifference, std::vector<std::size_t>{1});
    EXPECT_NEAR(shares->offG[1], 13000, 1e-9);
    EXPECT_FALSE(shares->unaccountedG);
    EXPECT_EQ(shares->hives[0].how, How::Weighed);
    EXPECT_EQ(shares->hives[1].how, How::ByDifference);
    EXPECT_EQ(yieldSumOf(*shares), 24000);
}

TEST(ShareYield, ALackingWetOrBothIsLackingAMassToo) {
    EXPECT_NEAR(shareYield(yieldRunOf(9000, 1000), {{"a", "H1", 20000, {}}})->offG[0], 10000, 1e-9);
    EXPECT_NEAR(shareYield(yieldRunOf(9000, 1000), {{"a", "H1", {}, {}}})->offG[0], 10000, 1e-9);
}

TEST(ShareYield, Refusals) {
    const YieldBox good{"a", "H1", 20000, 5000};
    const YieldBox open{"b", "H2", {}, 5000};
    EXPECT_EQ(shareYield(yieldRunOf(24000, 3500), {open, good, {"c", "H3", 20000, {}}}).error(),
              (Refusal{Code::SecondUnknown, "boxes[2].wet_g", {{"mark", "c"}}}));
    EXPECT_EQ(shareYield(yieldRunOf(24000), {good, open}).error(),
              (Refusal{Code::SecondUnknown, "cappings_g", {{"mark", "b"}}}));
    EXPECT_EQ(shareYield(yieldRunOf(9000, 1000), {good, open}).error(),
              (Refusal{Code::Contradiction, "boxes[1].gross_g", {{"other", "bucket_g"}}}));
    EXPECT_EQ(shareYield(yieldRunOf(9000), {{"a", "H1", 5000, 5001}}).error(),
              (Refusal{Code::Contradiction, "boxes[0].wet_g", {{"other", "gross_g"}}}));
}

TEST(ShareYield, CappingsNotKnownLeaveTheLossOpen) {
    const auto shares = shareYield(yieldRunOf(9000), {{"a", "H1", 15000, 5000}});
    ASSERT_TRUE(shares);
    EXPECT_FALSE(shares->unaccountedG);
    EXPECT_EQ(shares->hives[0].honey.grams(), 9000);
}

TEST(ShareYield, WhereNoBoxLostAnythingNobodyKnowsWhoseItIs) {
    EXPECT_EQ(shareYield(yieldRunOf(500), {})->unknown.grams(), 500);
    const auto shares = shareYield(yieldRunOf(500), {{"a", "H1", 5000, 5000}});
    EXPECT_EQ(shares->unknown.grams(), 500);
    EXPECT_EQ(shares->hives[0].honey.grams(), 0);
    EXPECT_EQ(shareYield(yieldRunOf(0), {{"a", "H1", 9000, 5000}})->unknown.grams(), 0);
}

TEST(ShareYield, LargeMassesDoNotOverflow) {
    const auto shares = shareYield(yieldRunOf(1e9), {{"a", "H1", 1e9, 0}, {"b", "H2", 1e9, 0}});
    ASSERT_TRUE(shares);
    EXPECT_EQ(shares->hives[0].honey.grams(), 500'000'000);
}

TEST(ShareByEye, SharesBucketsByWhatWasReckoned) {
    const auto shares =
        shareByEye(91500, {{"a", "H1", 12240}, {"b", std::nullopt, 12240}, {"c", "H2", 24480}});
    EXPECT_EQ(yieldGramsOf(shares),
              (std::map<std::string, std::int64_t>{{"H1", 22875}, {"H2", 45750}}));
    EXPECT_EQ(shares.unknown.grams(), 22875);
    for (const auto& line : shares.hives) EXPECT_EQ(line.how, How::ByEye);
    EXPECT_FALSE(shares.unaccountedG);
}

TEST(ShareByEye, WithoutBucketsTheReckonedHoneyItself) {
    const auto shares = shareByEye(std::nullopt, {{"a", "H1", 12240}, {"b", "H1", 6120.4}});
    EXPECT_EQ(shares.hives[0].honey.grams(), 18360);
}

TEST(ShareYield, WorkingSaysWhatIsLost) {
    Working working;
    ASSERT_TRUE(shareYield(yieldRunOf(9000, 500), {{"a", "H1", 15000, 5000}}, &working));
    EXPECT_EQ(working.steps.back().what, "unaccounted");
    EXPECT_NEAR(working.steps.back().value, 500, 1e-9);
}

}  // namespace
}  // namespace combwright
