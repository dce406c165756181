#include "core/trade/extractor/heft.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>

namespace combwright {
namespace {

/// Mass, mean and variance of a standard normal between two ends, by Simpson's rule: independent of
/// the closed form.
struct CutNormal {
    double mass, mean, variance;
};

CutNormal integrated(double from, double to) {
    constexpr int steps = 20'000;
    const double width = (to - from) / steps;
    double sums[3] = {0, 0, 0};
    for (int i = 0; i <= steps; ++i) {
        const double z = from + width * i;
        const double weight = i == 0 || i == steps ? 1 : (i % 2 == 1 ? 4 : 2);
        const double density = std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
        for (int power = 0; power < 3; ++power)
            sums[power] += weight * density * std::pow(z, power) * width / 3;
    }
    const double mean = sums[1] / sums[0];
    return {sums[0], mean, sums[2] / sums[0] - mean * mean};
}

constexpr double third = 0.4307272993;  // Φ⁻¹(2/3), any table of the normal distribution

TEST(Heft, LettersAndTheirNames) {
    for (const HeftThird heft : {HeftThird::Heavy, HeftThird::Middling, HeftThird::Light})
        EXPECT_EQ(heftThirdOf(key(heft)), heft);
    EXPECT_EQ(heftThirdOf('M'), HeftThird::Middling);
    EXPECT_EQ(heftThirdOf('x'), std::nullopt);
    EXPECT_EQ(heftThirdOf('\0'), std::nullopt);
}

TEST(Heft, ThirdsOfANormalDistribution) {
    const auto classes = heftClasses({0.0 + 10, 1});
    ASSERT_TRUE(classes);
    const CutNormal outer = integrated(third, 12);
    const CutNormal middle = integrated(-third, third);
    EXPECT_NEAR(outer.mass, 1.0 / 3, 1e-9);
    EXPECT_NEAR(middle.mass, 1.0 / 3, 1e-9);
    EXPECT_NEAR(classes->heavy.meanG, 10 + outer.mean, 1e-8);
    EXPECT_NEAR(classes->light.meanG, 10 - outer.mean, 1e-8);
    EXPECT_EQ(classes->middling.meanG, 10);
    EXPECT_NEAR(classes->heavy.sdG, std::sqrt(outer.variance), 1e-8);
    EXPECT_NEAR(classes->light.sdG, std::sqrt(outer.variance), 1e-8);
    EXPECT_NEAR(classes->middling.sdG, std::sqrt(middle.variance), 1e-8);
    // As they are told to the keeper.
    EXPECT_NEAR(outer.mean, 1.0908, 5e-5);
    // The thirds together are the whole again: mean of the variances + variance of the means = 1.
    EXPECT_NEAR((2 * outer.variance + middle.variance + 2 * outer.mean * outer.mean) / 3, 1, 1e-9);
}

/// Frames sorted into thirds by what a hand feels of them.
TEST(Heft, ThirdsAsFeltAgreeWithASample) {
    for (const double feel : {0.0, 217.5, 500.0}) {
        std::mt19937 dice(20270729);
        std::normal_distribution<double> honey(1450, 360);
        std::normal_distribution<double> off(0, feel > 0 ? feel : 1);
        const double cut = third * std::hypot(360, feel);
        double count[3] = {0, 0, 0};
        double sum[3] = {0, 0, 0};
        double square[3] = {0, 0, 0};
        for (int i = 0; i < 400'000; ++i) {
            const double mass = honey(dice);
            const double felt = mass + (feel > 0 ? off(dice) : 0);
            const int at = felt > 1450 + cut ? 0 : (felt > 1450 - cut ? 1 : 2);
            count[at] += 1;
            sum[at] += mass;
            square[at] += mass * mass;
        }
        const auto classes = heftClasses({1450, 360}, feel);
        ASSERT_TRUE(classes);
        const HeftClass found[3] = {classes->heavy, classes->middling, classes->light};
        for (int at = 0; at < 3; ++at) {
            const double mean = sum[at] / count[at];
            EXPECT_NEAR(found[at].meanG, mean, 4) << feel << " " << at;
            EXPECT_NEAR(found[at].sdG, std::sqrt(square[at] / count[at] - mean * mean), 3)
                << feel << " " << at;
        }
    }
}

TEST(Heft, AHandThatFeelsNothingSaysNothing) {
    const auto classes = heftClasses({1450, 360}, 1e9);
    EXPECT_NEAR(classes->heavy.meanG, 1450, 0.01);
    EXPECT_NEAR(classes->heavy.sdG, 360, 0.01);
    EXPECT_NEAR(classes->middling.sdG, 360, 0.01);
    const auto alike = heftClasses({1450, 0}, 0);
    EXPECT_EQ(alike->heavy.meanG, 1450);
    EXPECT_EQ(alike->heavy.sdG, 0);
}

TEST(Heft, NoFrameHoldsLessThanNothing) { EXPECT_EQ(heftClasses({100, 360})->light.meanG, 0); }

TEST(Heft, RefusesWhatIsNoMass) {
    EXPECT_EQ(heftClasses({-1, 1}).error(), (Refusal{Code::Negative, "mean_g"}));
    EXPECT_EQ(heftClasses({1, -1}).error(), (Refusal{Code::Negative, "sd_g"}));
    EXPECT_EQ(heftClasses({1, 1}, std::nan("")).error(), (Refusal{Code::Negative, "feel_sd_g"}));
}

TEST(Heft, LearnedFromBoxes) {
    // By hand: boxes of 10 and 10 frames, 1400 and 1600 g a frame: mean 1500, within 0.1 · 1500 =
    // 150. Σ n (x − M)² / (k − 1) = 2 · 10 · 100² / 1 = 200 000; less 150² = 177 500; n₀ = (20 −
    // 200 / 20) / 1 = 10; between² = 17 750; sd² = 17 750 + 22 500 = 40 250, sd = 200.624.
    const auto heft = heftFrom({{1400, 10}, {1600, 10}}, 0.1);
    ASSERT_TRUE(heft);
    EXPECT_NEAR(heft->meanG, 1500, 1e-9);
    EXPECT_NEAR(heft->sdG, std::sqrt(40'250.0), 1e-9);
    // Unequal: 6 and 9 frames, 1200 and 1500: mean 20 700 / 15 = 1380, within 138; Σ n (x − M)² =
    // 6 · 180² + 9 · 120² = 324 000; n₀ = 15 − 117 / 15 = 7.2; between² = (324 000 − 19 044) / 7.2
    // = 42 355; sd² = 61 399.
    const auto unequal = heftFrom({{1200, 6}, {1500, 9}, {9999, 0}}, 0.1);
    EXPECT_NEAR(unequal->meanG, 1380, 1e-9);
    EXPECT_NEAR(unequal->sdG, std::sqrt(61'399.0), 1e-9);
}

TEST(Heft, BoxesAlikeLeaveWhatIsWithinThem) {
    const auto heft = heftFrom({{1500, 9}, {1500, 9}, {1500, 8}}, 0.1);
    EXPECT_NEAR(heft->sdG, 150, 1e-9);
}

TEST(Heft, OneBoxTellsNothingOfBoxes) {
    EXPECT_FALSE(heftFrom({}, 0.1));
    EXPECT_FALSE(heftFrom({{1500, 9}}, 0.1));
    EXPECT_FALSE(heftFrom({{1500, 9}, {1400, 0}}, 0.1));
}

TEST(Heft, ASampleOfBoxesIsLearnedBack) {
    // Boxes differ by 300 g, frames of a box by 150 g (0.1 · 1500).
    std::mt19937 dice(11);
    std::normal_distribution<double> ofBox(1500, 300);
    std::normal_distribution<double> ofFrame(0, 150);
    std::vector<HeftSample> boxes;
    for (int b = 0; b < 4000; ++b) {
        const std::size_t frames = 7 + dice() % 4;
        const double middle = ofBox(dice);
        double sum = 0;
        for (std::size_t f = 0; f < frames; ++f) sum += middle + ofFrame(dice);
        boxes.push_back({sum / static_cast<double>(frames), frames});
    }
    const auto heft = heftFrom(boxes, 0.1);
    EXPECT_NEAR(heft->meanG, 1500, 15);
    EXPECT_NEAR(heft->sdG, std::hypot(300, 150), 10);
}

TEST(Heft, TwelveLettersAreTwelveFrames) {
    const auto classes = heftClasses({1450, 360}, 0);
    const auto frames = framesOfLetters("hmlHMLhmlhml", *classes, {600, 30, 240});
    ASSERT_TRUE(frames);
    ASSERT_EQ(frames->size(), 12U);
    EXPECT_NEAR((*frames)[0].startG, 600 + 1450 + 1.0908 * 360, 0.05);
    EXPECT_NEAR((*frames)[1].startG, 2050, 1e-9);
    EXPECT_NEAR((*frames)[5].startG, 600 + 1450 - 1.0908 * 360, 0.05);
    EXPECT_EQ((*frames)[5].endG, 600);
    EXPECT_EQ((*frames)[5].radiusMm, 240);
    EXPECT_NEAR((*frames)[1].sdG.value(), std::hypot(classes->middling.sdG, 30), 1e-9);
    const auto balance = balanceLoad(12, *frames);
    ASSERT_TRUE(balance);
    EXPECT_TRUE(balance->proven);
    EXPECT_NEAR(balance->offset.largerG(), 0, 1e-9);  // four of each cancel
    // 1.52 · √(8 · 0.2799 + 4 · 0.0604) · 360 = 862 of the honey, 1.52 · √12 · 30 = 158 of the
    // wood: 876.
    EXPECT_NEAR(balance->doubtG.value(), 876, 1);
}

TEST(Heft, ALetterThatIsNoneIsNamed) {
    const auto classes = heftClasses({1450, 360}, 0);
    const auto refused = framesOfLetters("hm?", *classes, {600, {}, {}});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, Code::NotAChoice);
    EXPECT_EQ(refused.error().field, "heft[2]");
    EXPECT_TRUE(framesOfLetters("", *classes, {600, {}, {}})->empty());
    // Thirteen letters in twelve slots.
    const auto many = framesOfLetters("hmlhmlhmlhmlh", *classes, {600, {}, {}});
    EXPECT_EQ(balanceLoad(12, *many).error().code, Code::TooMany);
}

TEST(Heft, OfABoxLikeAllAtHandALetterSaysWhatItsClassSays) {
    const HeftSpread all{1450, 360};
    const auto classes = heftClasses(all, 217);
    for (const HeftThird heft : {HeftThird::Heavy, HeftThird::Middling, HeftThird::Light}) {
        const auto one = heftInBox(heft, all, all, 217);
        ASSERT_TRUE(one);
        EXPECT_NEAR(one->meanG, classes->of(heft).meanG, 1e-6);
        EXPECT_NEAR(one->sdG, classes->of(heft).sdG, 1e-6);
    }
}

TEST(Heft, ABoxAndALetterTogether) {
    // Worked by hand. A box of 1,700 ± 150 g among frames of 1,500 ± 200, the hand off by 225.
    // The cut is at 1500 + 0.43073 · √(200² + 225²) = 1500 + 0.43073 · 301.04 = 1629.67; the box's
    // frames feel as 1,700 ± √(150² + 225²) = 270.42, so α = −70.33 / 270.42 = −0.26009.
    // λ = φ(α) / (1 − Φ(α)) = 0.38567 / 0.60260 = 0.64001, ρ² = 22500 / 73125 = 0.30769:
    // 1700 + 0.30769 · 270.42 · 0.64001 = 1753.3, and V y / s² = 1 − 0.26009 · 0.64001 − 0.40961
    // = 0.42392, 150 · √(1 − 0.30769 · 0.57608) = 136.06.
    const HeftSpread box{1700, 150};
    const HeftSpread all{1500, 200};
    const auto heavy = heftInBox(HeftThird::Heavy, box, all, 225);
    ASSERT_TRUE(heavy);
    EXPECT_NEAR(heavy->meanG, 1753.3, 0.1);
    EXPECT_NEAR(heavy->sdG, 136.06, 0.02);
    // A light frame of the same box is a light one of a heavy box.
    const auto light = heftInBox(HeftThird::Light, box, all, 225);
    EXPECT_LT(light->meanG, 1700);
    EXPECT_GT(light->meanG, 1500);
}

TEST(Heft, ALetterNeverMakesAFrameLessSureThanItsBox) {
    const HeftSpread all{1450, 360};
    for (const double mean : {600.0, 1200.0, 1450.0, 1900.0, 2600.0})
        for (const double sd : {0.0, 40.0, 160.0, 360.0})
            for (const double feel : {0.0, 100.0, 500.0})
                for (const HeftThird heft :
                     {HeftThird::Heavy, HeftThird::Middling, HeftThird::Light}) {
                    const auto one = heftInBox(heft, {mean, sd}, all, feel);
                    ASSERT_TRUE(one);
                    EXPECT_LE(one->sdG, sd + 1e-9) << mean << " " << sd << " " << feel;
                    EXPECT_GE(one->meanG, 0);
                    EXPECT_TRUE(std::isfinite(one->meanG) && std::isfinite(one->sdG));
                }
    EXPECT_FALSE(heftInBox(HeftThird::Heavy, {-1, 10}, all, 10));
}

TEST(Heft, BoxesTogetherDifferWithinAndAmongThemselves) {
    // Nine frames of 1,800 ± 100 and nine of 1,600 ± 100: 1,700 ± √(100² + 100²).
    const auto all = heftTogether({{{1800, 100}, 9}, {{1600, 100}, 9}});
    ASSERT_TRUE(all);
    EXPECT_NEAR(all->meanG, 1700, 1e-9);
    EXPECT_NEAR(all->sdG, 100 * std::numbers::sqrt2, 1e-9);
    EXPECT_FALSE(heftTogether({}));
}

}  // namespace
}  // namespace combwright
