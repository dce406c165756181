#include "core/trade/frames/frame_honey.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace combwright {
namespace {

constexpr double tenFrameWidthMm = 374.65;  // Langstroth, 14 3/4 in

TEST(FrameHoney, IsTheMeanOfBothSides) {
    const double full = fullFrameGrams(5.58);
    EXPECT_NEAR(full, 1858.14, 1e-9);
    EXPECT_NEAR(frameHoney({full, 1.0, 1.0})->grams, full, 1e-9);
    EXPECT_NEAR(frameHoney({full, 0.5, 1.0})->grams, 0.75 * full, 1e-9);
    EXPECT_NEAR(frameHoney({full, 1.0, 0.5})->grams, 0.75 * full, 1e-9);
    EXPECT_NEAR(frameHoney({1600.0, 0.85, 0.85})->grams, 1360.0, 1e-9);
}

TEST(FrameHoney, AnEmptyFrameHoldsNothingForCertain) {
    const auto empty = frameHoney({1858.0, 0.0, 0.0});
    ASSERT_TRUE(empty);
    EXPECT_DOUBLE_EQ(empty->grams, 0.0);
    EXPECT_DOUBLE_EQ(empty->spreadG(), 0.0);
}

TEST(FrameHoney, AsManyFramesAsNominalChangeNothing) {
    const auto ordinary = frameHoney({1858.0, 1.0, 0.7});
    for (const std::int64_t n : {8, 10, 11}) {
        const auto spaced = frameHoney({1858.0, 1.0, 0.7, BoxSpacing{37.465 * double(n), n, n}});
        ASSERT_TRUE(spaced);
        EXPECT_NEAR(spaced->grams, ordinary->grams, 1e-9);
        EXPECT_NEAR(spaced->spreadG(), ordinary->spreadG(), 1e-9);
    }
}

TEST(FrameHoney, FewerFramesAreFatterAndTheBoxGainsTheBeeSpacesSaved) {
    const double ordinary = tenFrameWidthMm - 11 * beeSpaceMm;
    double last = 1858.0;
    for (const std::int64_t n : {9, 8, 7, 6}) {
        const auto frame = frameHoney({1858.0, 1.0, 1.0, BoxSpacing{tenFrameWidthMm, n, 10}});
        ASSERT_TRUE(frame) << n;
        EXPECT_GT(frame->grams, last) << n;
        const double saved = double(10 - n) * beeSpaceMm;
        EXPECT_NEAR(frame->grams * double(n) / (1858.0 * 10), 1.0 + saved / ordinary, 1e-9) << n;
        last = frame->grams;
    }
}

TEST(FrameHoney, RefusesWhatCannotHang) {
    const auto tooMany = frameHoney({1858.0, 1.0, 1.0, BoxSpacing{tenFrameWidthMm, 11, 10}});
    ASSERT_FALSE(tooMany);
    EXPECT_EQ(tooMany.error().code, Code::TooMany);
    EXPECT_EQ(tooMany.error().field, "frames_in_box");
    EXPECT_EQ(tooMany.error().value("most"), "10");

    const auto tooFew = frameHoney({1858.0, 1.0, 1.0, BoxSpacing{tenFrameWidthMm, 5, 10}});
    ASSERT_FALSE(tooFew);
    EXPECT_EQ(tooFew.error().code, Code::OutOfRange);
    EXPECT_EQ(tooFew.error().value("low"), "6");

    const auto narrow = frameHoney({1858.0, 1.0, 1.0, BoxSpacing{100.0, 10, 10}});
    ASSERT_FALSE(narrow);
    EXPECT_EQ(narrow.error().field, "box_nominal");
}

TEST(FrameHoney, HalfTheFramesLeaveRoomForOneMoreCombBetweenTwo) {
    // The reason for the limit: n frames of 2n leave exactly two combs and a bee space each.
    for (const std::int64_t n : {2, 4, 5}) {
        const double ordinary = combThicknessMm(37.465 * double(2 * n), 2 * n);
        EXPECT_NEAR(combThicknessMm(37.465 * double(2 * n), n), 2 * ordinary + beeSpaceMm, 1e-9);
    }
}

TEST(FrameHoney, RefusesSharesOutsideAWhole) {
    const double none = std::numeric_limits<double>::quiet_NaN();
    for (const double wrong : {-0.01, 1.01, none}) {
        const auto left = frameHoney({1858.0, wrong, 1.0});
        const auto right = frameHoney({1858.0, 1.0, wrong});
        ASSERT_FALSE(left || right);
        EXPECT_EQ(left.error().field, "left_filled");
        EXPECT_EQ(right.error().field, "right_filled");
    }
}

TEST(FrameHoney, SpreadJoinsCropCombAndEye) {
    const auto full = frameHoney({1000.0, 1.0, 1.0});
    EXPECT_NEAR(full->sharedG, 150.0, 1e-9);
    EXPECT_NEAR(full->ownG, 100.0, 1e-9);
    EXPECT_NEAR(full->spreadG(), 180.28, 0.01);

    // Half full the eye adds 0.07 of each side: √(50² + (500 · 0.07 · √2)²).
    const auto half = frameHoney({1000.0, 0.5, 0.5});
    EXPECT_NEAR(half->sharedG, 75.0, 1e-9);
    EXPECT_NEAR(half->ownG, 70.36, 0.01);

    const HoneyRates sure{333.0, 0.02, 0.0, 0.0};
    EXPECT_NEAR(frameHoney({1000.0, 0.5, 0.5}, sure)->spreadG(), 10.0, 1e-9);
}

TEST(HoneyEstimate, OwnErrorsEvenOutTheCropsDoesNot) {
    const HoneyEstimate frame = *frameHoney({1858.0, 1.0, 1.0});
    const std::vector<HoneyEstimate> nine(9, frame);
    const HoneyEstimate box = together(nine);
    EXPECT_NEAR(box.grams, 9 * frame.grams, 1e-9);
    EXPECT_NEAR(box.sharedG, 9 * frame.sharedG, 1e-9);
    EXPECT_NEAR(box.ownG, 3 * frame.ownG, 1e-9);
    EXPECT_LT(box.spreadG() / box.grams, frame.spreadG() / frame.grams);
    EXPECT_GT(box.spreadG() / box.grams, 0.15);

    const HoneyEstimate counted = alike(frame, 9);
    EXPECT_NEAR(counted.grams, box.grams, 1e-9);
    EXPECT_NEAR(counted.spreadG(), box.spreadG(), 1e-9);
}

TEST(HoneyEstimate, SummingByBoxesOrAllAtOnceIsTheSame) {
    std::vector<HoneyEstimate> all;
    std::vector<HoneyEstimate> boxes;
    for (int b = 0; b < 3; ++b) {
        std::vector<HoneyEstimate> box;
        for (int f = 0; f <= b + 5; ++f)
            box.push_back(*frameHoney({1858.0, 0.1 * f, 0.05 * (f + b)}));
        all.insert(all.end(), box.begin(), box.end());
        boxes.push_back(together(box));
    }
    EXPECT_NEAR(together(boxes).grams, together(all).grams, 1e-9);
    EXPECT_NEAR(together(boxes).spreadG(), together(all).spreadG(), 1e-9);
    EXPECT_DOUBLE_EQ(together({}).grams, 0.0);
    EXPECT_DOUBLE_EQ(together({}).spreadG(), 0.0);
}

TEST(FrameHoney, TheWorkingShowsEveryInputAndEndsInTheAnswer) {
    Working working;
    const auto honey =
        frameHoney({1858.0, 1.0, 0.5, BoxSpacing{tenFrameWidthMm, 9, 10}}, {}, &working);
    ASSERT_TRUE(honey);
    auto valueOf = [&](const std::string& what) {
        for (const auto& step : working.steps)
            if (step.what == what) return step.value;
        return std::nan("");
    };
    EXPECT_DOUBLE_EQ(valueOf("full_frame_g"), 1858.0);
    EXPECT_NEAR(valueOf("comb_thickness_mm"), 31.044, 0.001);
    EXPECT_NEAR(valueOf("ordinary_comb_thickness_mm"), 26.9875, 0.001);
    EXPECT_DOUBLE_EQ(valueOf("honey_g"), honey->grams);
    EXPECT_DOUBLE_EQ(valueOf("spread_g"), honey->spreadG());
}

}  // namespace
}  // namespace combwright
