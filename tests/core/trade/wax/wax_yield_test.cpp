#include "core/trade/wax/wax_yield.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <vector>

namespace combwright {
namespace {

TEST(WaxYieldPublished, RangesLieRightAndNothingIsMadeUp) {
    std::set<std::string_view> names;
    for (const WaxMaterial material : allWaxMaterials) {
        EXPECT_TRUE(names.insert(key(material)).second);
        const auto range = publishedWaxYield(material);
        if (!range) continue;
        EXPECT_GT(range->low, 0);
        EXPECT_LT(range->low, range->high);
        EXPECT_NEAR(range->likely, (range->low + range->high) / 2, 0.0051);
        EXPECT_LT(range->high, 1);
    }
    EXPECT_FALSE(publishedWaxYield(WaxMaterial::Scrapings));
    EXPECT_FALSE(publishedWaxYield(WaxMaterial::Mixed));
    const auto nobody = waxYield(WaxMaterial::Scrapings);
    ASSERT_TRUE(nobody);
    EXPECT_FALSE(*nobody);
}

TEST(WaxYieldOwn, IsWeightedByMass) {
    const std::vector<WaxWeighed> batches{{1000, 900}, {3000, 2760}};
    const auto own = ownWaxYield(batches);
    ASSERT_TRUE(own && *own);
    EXPECT_EQ((*own)->n, 2U);
    EXPECT_DOUBLE_EQ((*own)->rawG, 4000);
    EXPECT_DOUBLE_EQ((*own)->cleanG, 3660);
    EXPECT_DOUBLE_EQ((*own)->share, 0.915);
    // √(2 · (¼ · 0.015² + ¾ · 0.005²))
    EXPECT_NEAR(*(*own)->spread, std::sqrt(2 * (0.25 * 0.015 * 0.015 + 0.75 * 0.005 * 0.005)),
                1e-12);
    EXPECT_FALSE((*ownWaxYield({batches.data(), 1}))->spread);
    EXPECT_FALSE(*ownWaxYield({}));
    // Batches of one mass spread as any others.
    const std::vector<WaxWeighed> even{{1000, 400}, {1000, 500}, {1000, 600}};
    EXPECT_NEAR(*(*ownWaxYield(even))->spread, 0.1, 1e-12);
}

TEST(WaxYieldOwn, RefusesMoreOutThanIn) {
    const WaxWeighed more[] = {{1000, 900}, {1000, 1001}};
    EXPECT_EQ(ownWaxYield(more).error().code, Code::Contradiction);
    EXPECT_EQ(ownWaxYield(more).error().field, "batches[1].clean_g");
    const WaxWeighed nothing[] = {{0, 0}};
    EXPECT_EQ(waxYield(WaxMaterial::WhiteComb, nothing).error().field, "batches[0].raw_g");
    const WaxWeighed less[] = {{10, -1}};
    EXPECT_EQ(ownWaxYield(less).error().code, Code::Negative);
}

TEST(WaxYieldLearned, MovesFromThePublishedToTheOwn) {
    const auto published = *publishedWaxYield(WaxMaterial::CappingsDrained);
    const auto plain = **waxYield(WaxMaterial::CappingsDrained);
    EXPECT_DOUBLE_EQ(plain.share.low, published.low);
    EXPECT_DOUBLE_EQ(plain.share.high, published.high);
    EXPECT_TRUE(plain.published);
    double before = plain.share.likely;
    std::vector<WaxWeighed> batches;
    for (int n = 1; n <= 8; ++n) {
        batches.push_back({1000, n % 2 ? 340.0 : 360.0});
        const auto learned = **waxYield(WaxMaterial::CappingsDrained, batches);
        EXPECT_EQ(learned.ownBatches, batches.size());
        EXPECT_LT(learned.share.likely, published.likely);
        EXPECT_GT(learned.share.likely, 0.339);
        EXPECT_LT(learned.share.low, learned.share.likely);
        EXPECT_GT(learned.share.high, learned.share.likely);
        if (n == 1) {
            // One batch is as doubtful as the published figure: half way.
            EXPECT_NEAR(learned.share.likely, (0.45 + 0.34) / 2, 1e-12);
        }
        before = learned.share.likely;
    }
    EXPECT_NEAR(before, 0.35, 0.003);
}

TEST(WaxYieldLearned, ScrapingsKnowOnlyTheirOwn) {
    const WaxWeighed one[] = {{500, 150}};
    const auto single = **waxYield(WaxMaterial::Scrapings, one);
    EXPECT_DOUBLE_EQ(single.share.likely, 0.3);
    EXPECT_DOUBLE_EQ(single.share.low, single.share.high);
    EXPECT_FALSE(single.published);
    const WaxWeighed two[] = {{500, 150}, {500, 200}};
    const auto both = **waxYield(WaxMaterial::Scrapings, two);
    EXPECT_DOUBLE_EQ(both.share.likely, 0.35);
    EXPECT_LT(both.share.low, 0.3);
    EXPECT_GT(both.share.high, 0.4);
}

TEST(WaxYieldLearned, StaysAShare) {
    const WaxWeighed none[] = {{500, 0}, {600, 0}, {700, 0}};
    const auto empty = **waxYield(WaxMaterial::CappingsWashed, none);
    EXPECT_GE(empty.share.low, 0);
    EXPECT_LE(empty.share.high, 1);
    const WaxWeighed all[] = {{500, 500}, {600, 600}, {700, 700}};
    EXPECT_LE((*waxYield(WaxMaterial::CappingsWashed, all))->share.high, 1);
}

TEST(CleanWax, AndTheHoneyStillInIt) {
    const auto yield = **waxYield(WaxMaterial::CappingsDrained);
    Working working;
    const auto wax = cleanWaxG(6000, yield, &working);
    ASSERT_TRUE(wax);
    EXPECT_DOUBLE_EQ(wax->low, 2400);
    EXPECT_DOUBLE_EQ(wax->high, 3000);
    EXPECT_EQ(cleanWaxG(-1, yield).error().field, "raw_g");
    EXPECT_DOUBLE_EQ((*honeyInCappingsG(6000, WaxMaterial::CappingsDrained))->low, 3000);
    EXPECT_DOUBLE_EQ((*honeyInCappingsG(6000, WaxMaterial::CappingsWashed))->high, 0);
    EXPECT_FALSE(*honeyInCappingsG(6000, WaxMaterial::WhiteComb));
    EXPECT_EQ(honeyInCappingsG(-1, WaxMaterial::WhiteComb).error().code, Code::Negative);
    // Honey and wax of fresh cappings are the whole of it.
    const auto fresh = *honeyInCappingsG(1000, WaxMaterial::CappingsUndrained);
    const auto freshWax = *publishedWaxYield(WaxMaterial::CappingsUndrained);
    EXPECT_NEAR(fresh->likely / 1000 + freshWax.likely, 1, 0.005);
    EXPECT_NEAR(fresh->low / 1000 + freshWax.high, 1, 0.005);
    EXPECT_NEAR(fresh->high / 1000 + freshWax.low, 1, 0.005);
}

TEST(WaxOfACrop, TheKeepersOwnShareStandsEvenOutside) {
    const auto crop = cappingsOfCrop(100'000);
    ASSERT_TRUE(crop);
    EXPECT_DOUBLE_EQ(crop->waxG.likely, 1500);
    const auto own = cappingsOfCrop(100'000, 0.025);
    EXPECT_DOUBLE_EQ(own->waxG.likely, 2500);
    EXPECT_DOUBLE_EQ(own->waxG.high, 2500);
    EXPECT_DOUBLE_EQ(own->waxG.low, 1000);
    EXPECT_EQ(cappingsOfCrop(-1).error().field, "honey_g");
    EXPECT_EQ(cappingsOfCrop(1, 1.5).error().field, "wax_share");
}

TEST(WaxOfACrop, AgainstThePublishedRange) {
    EXPECT_EQ((*waxPer100Honey(999, 100'000))->verdict, WaxAgainstHoney::Less);
    EXPECT_EQ((*waxPer100Honey(1000, 100'000))->verdict, WaxAgainstHoney::AsPublished);
    EXPECT_EQ((*waxPer100Honey(2000, 100'000))->verdict, WaxAgainstHoney::AsPublished);
    EXPECT_EQ((*waxPer100Honey(2001, 100'000))->verdict, WaxAgainstHoney::More);
    EXPECT_FALSE(*waxPer100Honey(1000, 0));
    EXPECT_EQ(waxPer100Honey(-1, 1).error().field, "wax_g");
    EXPECT_EQ(key(WaxAgainstHoney::AsPublished), "as published");
}

TEST(Propolis, ByTheColony) {
    EXPECT_DOUBLE_EQ(propolisG(0)->high, 0);
    EXPECT_DOUBLE_EQ(propolisG(10)->likely, 750);
    EXPECT_EQ(propolisG(-1).error().field, "colonies");
}

}  // namespace
}  // namespace combwright
