#include "core/trade/honey/blend.h"

#include <glpk.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <random>
#include <string>

namespace combwright {
namespace {

using BlendBuckets = std::vector<BlendBucket>;

double waterOfUse(const BlendBuckets& buckets, const Blend& blend) {
    double water = 0;
    for (std::size_t i = 0; i < buckets.size(); ++i)
        water += static_cast<double>(blend.use[i].grams()) * buckets[i].waterPercent;
    return water / static_cast<double>(blend.mass.grams());
}

/// The most honey by the simplex of GLPK, grams with fractions; nothing where nothing is feasible.
std::optional<double> mostByLinearProgram(const BlendBuckets& buckets, const BlendWish& wish) {
    glp_term_out(GLP_OFF);
    glp_prob* problem = glp_create_prob();
    glp_set_obj_dir(problem, GLP_MAX);
    const int count = static_cast<int>(buckets.size());
    glp_add_cols(problem, count);
    glp_add_rows(problem, 2);
    glp_set_row_bnds(problem, 1, GLP_UP, 0, 0);
    glp_set_row_bnds(problem, 2, wish.mostG ? GLP_UP : GLP_FR, 0, wish.mostG.value_or(0));
    std::vector<int> columns(buckets.size() + 1);
    std::vector<double> over(buckets.size() + 1);
    std::vector<double> ones(buckets.size() + 1, 1);
    for (int i = 1; i <= count; ++i) {
        const BlendBucket& bucket = buckets[static_cast<std::size_t>(i - 1)];
        const double low = bucket.use == BlendUse::All ? bucket.massG : 0;
        const double high = bucket.use == BlendUse::None ? 0 : bucket.massG;
        glp_set_col_bnds(problem, i, low < high ? GLP_DB : GLP_FX, low, high);
        glp_set_obj_coef(problem, i, 1);
        columns[static_cast<std::size_t>(i)] = i;
        over[static_cast<std::size_t>(i)] = bucket.waterPercent - wish.targetPercent;
    }
    glp_set_mat_row(problem, 1, count, columns.data(), over.data());
    glp_set_mat_row(problem, 2, count, columns.data(), ones.data());
    glp_smcp options;
    glp_init_smcp(&options);
    options.msg_lev = GLP_MSG_OFF;
    std::optional<double> most;
    if (glp_simplex(problem, &options) == 0 && glp_get_status(problem) == GLP_OPT)
        most = glp_get_obj_val(problem);
    glp_delete_prob(problem);
    return most;
}

BlendBuckets randomBuckets(std::mt19937& random, std::size_t count, bool choices) {
    BlendBuckets buckets(count);
    for (BlendBucket& bucket : buckets) {
        bucket.massG = static_cast<double>(random() % 30000);
        bucket.waterPercent = 15.0 + static_cast<double>(random() % 70) / 10.0;
        if (choices && random() % 6 == 0) bucket.use = BlendUse::None;
        if (choices && random() % 9 == 0) bucket.use = BlendUse::All;
    }
    return buckets;
}

TEST(HoneyBlend, NeverOverTheTargetAndNeverLessThanTheLinearProgram) {
    std::mt19937 random(20271101);
    int roomMet = 0;
    int refused = 0;
    for (int round = 0; round < 1500; ++round) {
        const bool choices = round % 2 == 1;
        const BlendBuckets buckets = randomBuckets(random, 1 + random() % 14, choices);
        BlendWish wish{16.0 + static_cast<double>(random() % 50) / 10.0, {}};
        if (random() % 2 == 0) wish.mostG = static_cast<double>(random() % 150000);
        const auto most = mostByLinearProgram(buckets, wish);
        const auto blend = bestBlend(buckets, wish);
        ASSERT_EQ(blend.has_value(), most.has_value()) << round;
        if (!blend) {
            ++refused;
            continue;
        }
        const auto grams = static_cast<double>(blend->mass.grams());
        // Buckets hold whole grams, so less than one gram in all is lost by rounding.
        EXPECT_GT(grams, *most - 1.0 - 1e-3) << round;
        EXPECT_LT(grams, *most + 1e-3) << round;
        double sum = 0;
        for (std::size_t i = 0; i < buckets.size(); ++i) {
            const auto used = static_cast<double>(blend->use[i].grams());
            sum += used;
            EXPECT_GE(used, buckets[i].use == BlendUse::All ? buckets[i].massG : 0);
            EXPECT_LE(used, buckets[i].use == BlendUse::None ? 0 : buckets[i].massG);
        }
        EXPECT_EQ(sum, grams);
        if (wish.mostG) {
            EXPECT_LE(grams, *wish.mostG);
        }
        if (wish.mostG && grams == *wish.mostG) ++roomMet;
        ASSERT_EQ(blend->waterPercent.has_value(), grams > 0);
        if (grams == 0) continue;
        EXPECT_LE(*blend->waterPercent, wish.targetPercent);
        EXPECT_NEAR(waterOfUse(buckets, *blend), *blend->waterPercent, 1e-9) << round;
    }
    EXPECT_GT(roomMet, 50);
    EXPECT_GT(refused, 20);
}

// Fractions of grams and readings with many decimals, as computed ones have.
TEST(HoneyBlend, FractionsLoseLessThanAGramABucket) {
    std::mt19937 random(8);
    std::uniform_real_distribution<double> grams(0, 25000);
    std::uniform_real_distribution<double> water(15, 22);
    for (int round = 0; round < 500; ++round) {
        BlendBuckets buckets(1 + random() % 12);
        for (BlendBucket& bucket : buckets) bucket = {grams(random), water(random), BlendUse::Free};
        const BlendWish wish{water(random), {}};
        const auto blend = bestBlend(buckets, wish);
        ASSERT_TRUE(blend);
        const double most = *mostByLinearProgram(buckets, wish);
        double slack = 0;
        // Flooring a dry bucket by a gram also loses the wet it would have carried.
        for (const BlendBucket& each : buckets)
            slack += std::max(0.0, wish.targetPercent - each.waterPercent);
        double leastOver = 100;
        for (const BlendBucket& each : buckets)
            if (each.waterPercent > wish.targetPercent)
                leastOver = std::min(leastOver, each.waterPercent - wish.targetPercent);
        const double carried = slack / leastOver;
        EXPECT_GT(static_cast<double>(blend->mass.grams()),
                  most - static_cast<double>(buckets.size()) - carried - 1e-3);
        EXPECT_LT(static_cast<double>(blend->mass.grams()), most + 1e-3);
        if (blend->mass > Mass()) {
            EXPECT_LE(waterOfUse(buckets, *blend), wish.targetPercent + 1e-9);
        }
    }
}

/// Every choice of whole grams: the most mass, then the most of the honey above the target.
std::pair<std::int64_t, std::int64_t> bestOfAllBlends(const BlendBuckets& buckets,
                                                      const std::vector<int>& tenthsOver,
                                                      std::int64_t room) {
    std::pair<std::int64_t, std::int64_t> best{-1, -1};
    std::vector<std::int64_t> use(buckets.size(), 0);
    for (std::size_t i = 0; i < buckets.size(); ++i)
        if (buckets[i].use == BlendUse::All) use[i] = static_cast<std::int64_t>(buckets[i].massG);
    const std::vector<std::int64_t> least = use;
    for (;;) {
        std::int64_t sum = 0;
        std::int64_t wet = 0;
        std::int64_t over = 0;
        for (std::size_t i = 0; i < use.size(); ++i) {
            sum += use[i];
            over += use[i] * tenthsOver[i];
            if (tenthsOver[i] > 0) wet += use[i];
        }
        if (over <= 0 && sum <= room) best = std::max(best, {sum, wet});
        std::size_t i = use.size();
        while (i > 0) {
            const BlendBucket& bucket = buckets[i - 1];
            if (bucket.use != BlendUse::None && use[i - 1] < bucket.massG) {
                ++use[i - 1];
                break;
            }
            use[i - 1] = least[i - 1];
            --i;
        }
        if (i == 0) return best;
    }
}

TEST(HoneyBlend, AgreesWithTryingEveryGram) {
    std::mt19937 random(27);
    int infeasible = 0;
    for (int round = 0; round < 1500; ++round) {
        BlendBuckets buckets(1 + random() % 4);
        std::vector<int> over;
        for (BlendBucket& bucket : buckets) {
            over.push_back(static_cast<int>(random() % 9) - 4);
            bucket.massG = static_cast<double>(random() % 7);
            bucket.waterPercent = (178 + over.back()) / 10.0;
            if (random() % 8 == 0) bucket.use = BlendUse::None;
            if (random() % 8 == 0) bucket.use = BlendUse::All;
        }
        const auto room = static_cast<std::int64_t>(random() % 20);
        const auto best = bestOfAllBlends(buckets, over, room);
        const auto blend = bestBlend(buckets, {17.8, static_cast<double>(room)});
        ASSERT_EQ(blend.has_value(), best.first >= 0) << round;
        if (!blend) {
            ++infeasible;
            continue;
        }
        std::int64_t wet = 0;
        for (std::size_t i = 0; i < buckets.size(); ++i)
            if (over[i] > 0) wet += blend->use[i].grams();
        EXPECT_EQ(blend->mass.grams(), best.first) << round;
        EXPECT_EQ(wet, best.second) << round;
    }
    EXPECT_GT(infeasible, 30);
}

TEST(HoneyBlend, AllDryThenTheLeastWet) {
    const BlendBuckets buckets{
        {20000, 19.4, {}}, {30000, 17.0, {}}, {10000, 18.2, {}}, {10000, 17.8, {}}};
    const auto blend = bestBlend(buckets, {17.8, {}});
    ASSERT_TRUE(blend);
    // 30 kg pay 0.8 each: 24. The 18.2 cost 4, which leaves 20 for 19.4 at 1.6: 12.5 kg.
    EXPECT_EQ(blend->use[0], Mass::grams(12500));
    EXPECT_EQ(blend->use[1], Mass::grams(30000));
    EXPECT_EQ(blend->use[2], Mass::grams(10000));
    EXPECT_EQ(blend->use[3], Mass::grams(10000));
    EXPECT_EQ(*blend->waterPercent, 17.8);
}

TEST(HoneyBlend, EqualWaterInTheOrderGiven) {
    const BlendBuckets buckets{{1000, 17.0, {}}, {5000, 18.0, {}}, {5000, 18.0, {}}};
    const auto blend = bestBlend(buckets, {17.9, {}});
    ASSERT_TRUE(blend);
    EXPECT_EQ(blend->use[1], Mass::grams(5000));
    EXPECT_EQ(blend->use[2], Mass::grams(4000));
}

TEST(HoneyBlend, ATankThatIsTooSmallSavesTheDryHoney) {
    const BlendBuckets buckets{{200000, 17.0, {}}, {100000, 19.0, {}}};
    const auto blend = bestBlend(buckets, {18.0, 100000.0});
    ASSERT_TRUE(blend);
    EXPECT_EQ(blend->use[0], Mass::grams(50000));
    EXPECT_EQ(blend->use[1], Mass::grams(50000));
    EXPECT_EQ(*blend->waterPercent, 18.0);
    EXPECT_EQ(bestBlend(buckets, {18.0, {}})->mass, Mass::grams(300000));
}

TEST(HoneyBlend, WhatMustGoInAndWhatMustNot) {
    BlendBuckets buckets{{10000, 16.8, {}}, {10000, 18.2, {}}, {5000, 19.8, BlendUse::All}};
    const auto forced = bestBlend(buckets, {17.8, {}});
    ASSERT_TRUE(forced);
    EXPECT_EQ(forced->use[2], Mass::grams(5000));
    EXPECT_EQ(forced->use[1], Mass());  // 10 kg at 1.0 just carry 5 kg at 2.0
    EXPECT_EQ(*forced->waterPercent, 17.8);
    buckets[2].use = BlendUse::None;
    EXPECT_EQ(bestBlend(buckets, {17.8, {}})->mass, Mass::grams(20000));
    // Too wet for all the dry there is: what can be reached is named.
    buckets[2] = {6000, 19.8, BlendUse::All};
    const auto refused = bestBlend(buckets, {17.8, {}});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().field, "target_percent");
    EXPECT_EQ(refused.error().value("low"), "17.93");  // 286.8 / 16
    EXPECT_TRUE(bestBlend(buckets, {17.93, {}}));
    const auto noRoom = bestBlend(buckets, {18, 5999.0});
    ASSERT_FALSE(noRoom);
    EXPECT_EQ(noRoom.error(), (Refusal{Code::TooMany, "most_g", {{"most", "5999"}}}));
}

TEST(HoneyBlend, NothingFits) {
    const auto wet = bestBlend(BlendBuckets{{1000, 19, {}}}, {18, {}});
    ASSERT_TRUE(wet);
    EXPECT_EQ(wet->mass, Mass());
    EXPECT_EQ(wet->waterPercent, std::nullopt);
    EXPECT_EQ(bestBlend({}, {18, {}})->mass, Mass());
    EXPECT_EQ(bestBlend(BlendBuckets{{0.9, 17, {}}}, {18, {}})->mass, Mass());
    EXPECT_EQ(bestBlend(BlendBuckets{{900, 17, {}}}, {18, 0.0})->mass, Mass());
}

// 17.1 and 17.1 are the same water in every double, and at the target is under it.
TEST(HoneyBlend, AtTheTargetIsUnderIt) {
    for (double target = 13; target <= 25; target += 0.1) {
        EXPECT_EQ(bestBlend(BlendBuckets{{1000, target, {}}}, {target, {}})->mass,
                  Mass::grams(1000));
        // 0.3 under and 0.3 over to equal parts, to the gram.
        const auto tenths = std::llround(target * 10);
        const BlendBuckets even{{7777, static_cast<double>(tenths - 3) / 10, {}},
                                {9999, static_cast<double>(tenths + 3) / 10, {}}};
        EXPECT_EQ(bestBlend(even, {static_cast<double>(tenths) / 10, {}})->mass,
                  Mass::grams(15554));
    }
}

TEST(HoneyBlend, PouredByHand) {
    const std::vector<HoneyPart> parts{{100000, 19.4}, {60000, 16.8}};
    const auto all = pouredTogether(parts);
    ASSERT_TRUE(all && *all);
    EXPECT_NEAR((*all)->waterPercent, 18.425, 1e-12);
    EXPECT_EQ((*all)->massG, 160000);
    EXPECT_EQ(*pouredTogether({}), std::nullopt);
    const std::vector<HoneyPart> bad{{1, 17}, {-1, 17}};
    EXPECT_EQ(pouredTogether(bad).error().field, "parts[1].mass_g");
}

TEST(HoneyBlend, Refusals) {
    EXPECT_EQ(bestBlend({}, {101, {}}).error().field, "target_percent");
    EXPECT_EQ(bestBlend({}, {18, -1.0}).error(), (Refusal{Code::Negative, "most_g"}));
    EXPECT_EQ(bestBlend(BlendBuckets{{1, 17, {}}, {-1, 17, {}}}, {18, {}}).error(),
              (Refusal{Code::Negative, "buckets[1].mass_g"}));
    EXPECT_EQ(bestBlend(BlendBuckets{{1e13, 17, {}}}, {18, {}}).error().code, Code::OutOfRange);
    EXPECT_EQ(bestBlend(BlendBuckets{{1, 174, {}}}, {18, {}}).error().field,
              "buckets[0].water_percent");
    EXPECT_EQ(wetShare(19, 17, 18).error().field, "target_percent");
    EXPECT_EQ(wetShare(17, 19, 19.1).error().field, "target_percent");
    EXPECT_EQ(*wetShare(17, 19, 18), 0.5);
}

}  // namespace
}  // namespace combwright
