#include "core/trade/honey/heat_damage.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

namespace combwright {
namespace {

void expectSameDamage(const HeatDamage& a, const HeatDamage& b) {
    ASSERT_EQ(a.hmfGain.has_value(), b.hmfGain.has_value());
    if (a.hmfGain) {
        EXPECT_NEAR(*a.hmfGain, *b.hmfGain, 1e-9);
    }
    EXPECT_NEAR(a.hmfLow, b.hmfLow, 1e-9);
    EXPECT_NEAR(a.hmfHigh, b.hmfHigh, 1e-9);
    EXPECT_NEAR(a.diastaseLeftShare, b.diastaseLeftShare, 1e-12);
    EXPECT_NEAR(a.invertaseLeftShare, b.invertaseLeftShare, 1e-12);
}

TEST(HeatDamage, StepsAddUpHoweverTheyAreParted) {
    for (double t = 20; t <= 80; t += 7) {
        const std::array<HeatStep, 3> parted{{{t, 10}, {t, 25.5}, {t, 4.5}}};
        expectSameDamage(*heatDamageInAll(parted), *heatDamage({t, 40}));
    }
    const std::array<HeatStep, 3> steps{{{20, 2000}, {45, 30}, {62.8, 0.5}}};
    const std::array<HeatStep, 3> turned{{{62.8, 0.5}, {20, 2000}, {45, 30}}};
    expectSameDamage(*heatDamageInAll(steps), *heatDamageInAll(turned));
    expectSameDamage(*heatDamageInAll({}), HeatDamage{});
    expectSameDamage(*heatDamage({50, 0}), HeatDamage{});
}

TEST(HeatDamage, MoreWithTimeAndWithWarmth) {
    for (double t = 21; t <= 80; t += 1) {
        const auto cooler = heatDamage({t - 1, 5});
        const auto warmer = heatDamage({t, 5});
        ASSERT_TRUE(cooler && warmer);
        EXPECT_GT(*warmer->hmfGain, *cooler->hmfGain);
        EXPECT_GT(warmer->hmfHigh, cooler->hmfHigh);
        EXPECT_GT(warmer->hmfLow, cooler->hmfLow);
        EXPECT_LT(warmer->diastaseLeftShare, cooler->diastaseLeftShare);
        EXPECT_LT(warmer->invertaseLeftShare, cooler->invertaseLeftShare);
        EXPECT_GE(*warmer->hmfGain, warmer->hmfLow);
        EXPECT_LE(*warmer->hmfGain, warmer->hmfHigh);
        // Invertase always goes first.
        EXPECT_LT(warmer->invertaseLeftShare, warmer->diastaseLeftShare);
    }
}

TEST(HeatDamage, UnderTwentyDegreesHmfIsNotKnownButBounded) {
    const auto cool = heatDamage({14, 24 * 365});
    ASSERT_TRUE(cool);
    EXPECT_FALSE(cool->hmfGain);
    EXPECT_EQ(cool->hmfLow, 0);
    EXPECT_NEAR(cool->hmfHigh, heatDamage({20, 24 * 365})->hmfHigh, 1e-9);
    EXPECT_LT(cool->diastaseLeftShare, 1);
    // One step of which it is not known leaves the sum not known, and the range standing.
    const std::array<HeatStep, 2> steps{{{14, 1000}, {50, 24}}};
    const auto both = heatDamageInAll(steps);
    EXPECT_FALSE(both->hmfGain);
    EXPECT_NEAR(both->hmfLow, heatDamage({50, 24})->hmfLow, 1e-12);
    EXPECT_GT(both->hmfHigh, heatDamage({50, 24})->hmfHigh);
}

// Arrhenius: the logarithm of the time goes straight with 1 / kelvin, so that halfway between two
// rows in that measure stands the geometric mean of their hours.
TEST(HeatDamage, BetweenTwoRowsTheHoursFollowArrhenius) {
    const double halfwayC = 2 / (1 / (20 + 273.15) + 1 / (30 + 273.15)) - 273.15;
    const auto hours = hmfBracketHours(halfwayC);
    ASSERT_TRUE(hours);
    EXPECT_NEAR(hours->low, std::sqrt(14400.0 * 3600.0), 1e-6);
    EXPECT_NEAR(hours->high, std::sqrt(19200.0 * 6000.0), 1e-6);
}

TEST(HeatDamage, ItsClass) {
    EXPECT_EQ(heatClass(*heatDamage({35, 96})), HeatClass::Gentle);
    EXPECT_EQ(heatClass(*heatDamage({40, 48})), HeatClass::Gentle);
    EXPECT_EQ(heatClass(*heatDamage({49, 24})), HeatClass::Noticeable);
    EXPECT_EQ(heatClass(*heatDamage({20, 24 * 365})), HeatClass::Noticeable);
    EXPECT_EQ(heatClass(*heatDamage({50, 72})), HeatClass::Harsh);
    EXPECT_EQ(heatClass(*heatDamage({70, 1})), HeatClass::Harsh);
    // By the worse of the two, and at the line still the milder word.
    EXPECT_EQ(heatClass({1.0, 0.5, 3.0, 0.99, 0.85}), HeatClass::Gentle);
    EXPECT_EQ(heatClass({1.0, 0.5, 3.01, 0.99, 0.85}), HeatClass::Noticeable);
    EXPECT_EQ(heatClass({1.0, 0.5, 3.0, 0.99, 0.84}), HeatClass::Noticeable);
    EXPECT_EQ(heatClass({1.0, 0.5, 20.0, 0.99, 0.5}), HeatClass::Noticeable);
    EXPECT_EQ(heatClass({1.0, 0.5, 20.0, 0.99, 0.49}), HeatClass::Harsh);
    EXPECT_EQ(heatClass({1.0, 0.5, 3.01, 0.99, 0.85}, {4, 0.5, 20, 0.2}), HeatClass::Gentle);
    EXPECT_EQ(key(HeatClass::Noticeable), "noticeable");
}

TEST(HeatDamage, Refusals) {
    for (const double t : {9.9, 80.1, std::nan("")})
        EXPECT_EQ(heatDamage({t, 1}).error().field, "temperature_c");
    EXPECT_EQ(heatDamage({40, -1}).error(), (Refusal{Code::Negative, "hours"}));
    EXPECT_EQ(heatDamage({40, 1e13}).error().code, Code::OutOfRange);
    EXPECT_EQ(hmfHoursTo30(19.9).error().value("low"), "20");
    EXPECT_EQ(hmfBracketHours(19.9).error().field, "temperature_c");
    EXPECT_TRUE(heatDamage({10, 1}));
    EXPECT_TRUE(heatDamage({80, 1}));
    const std::array<HeatStep, 2> steps{{{40, 1}, {90, 1}}};
    EXPECT_EQ(heatDamageInAll(steps).error().field, "temperature_c");
}

}  // namespace
}  // namespace combwright
