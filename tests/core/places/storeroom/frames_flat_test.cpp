// A box laid flat adds up to what was counted and judged of it, and shows nothing nobody recorded.
#include "core/places/storeroom/frames_flat.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

std::vector<Frame> flatFramesOf(int drawn, int foundation = 0) {
    std::vector<Frame> frames(static_cast<std::size_t>(drawn + foundation));
    for (int i = 0; i < foundation; ++i)
        frames[static_cast<std::size_t>(i)].comb = Comb::Foundation;
    for (int i = foundation; i < drawn + foundation; ++i)
        frames[static_cast<std::size_t>(i)].comb = Comb::Drawn;
    return frames;
}

BoxLook flatLook(std::optional<double> capped, std::optional<int> percent) {
    BoxLook look;
    if (capped)
        look.cappedFrames =
            Known<Frames>{Frames::tenths(std::llround(*capped * 10)), {}, How::Counted};
    if (percent) look.filled = Known<Share>{Share::percent(*percent), {}, How::ByEye};
    return look;
}

double flatHoney(const std::vector<FlatFrame>& frames) {
    double sum = 0;
    for (const FlatFrame& frame : frames) sum += frame.filledA.value_or(0);
    return sum;
}

double flatCapped(const std::vector<FlatFrame>& frames) {
    double sum = 0;
    for (const FlatFrame& frame : frames) sum += frame.capped.value_or(0);
    return sum;
}

TEST(FramesFlat, AddUpToTheLook) {
    for (const double capped : {0.0, 1.0, 6.5, 8.0, 9.0})
        for (const int percent : {7, 40, 73, 90, 100}) {
            if (capped / 9 > percent / 100.0) continue;
            const auto flat = framesFlat(flatFramesOf(9), flatLook(capped, percent), 9);
            ASSERT_EQ(flat.size(), 9U);
            EXPECT_NEAR(flatHoney(flat), 9 * percent / 100.0, 1e-9) << capped << " " << percent;
            EXPECT_NEAR(flatCapped(flat), capped, 1e-9) << capped << " " << percent;
            for (const FlatFrame& frame : flat) {
                EXPECT_LE(*frame.capped, *frame.filledA + 1e-12) << "capped is honey";
                EXPECT_LE(*frame.filledA, 1 + 1e-12);
            }
        }
}

TEST(FramesFlat, CappedFramesAreFullAndStandFirst) {
    const auto flat = framesFlat(flatFramesOf(9), flatLook(7, 85), 9);
    EXPECT_EQ(flat[6].filledA, 1.0);
    EXPECT_EQ(flat[6].capped, 1.0);
    EXPECT_NEAR(*flat[7].filledA, 0.325, 1e-9) << "(7.65 − 7) ÷ 2";
    EXPECT_EQ(flat[7].capped, 0.0);
    EXPECT_EQ(flat[8].filledB, flat[8].filledA);
}

TEST(FramesFlat, MoreCappedThanThereIsHoneyIsHeldToTheHoney) {
    const auto flat = framesFlat(flatFramesOf(9), flatLook(9, 50), 9);
    EXPECT_NEAR(flatHoney(flat), 4.5, 1e-9);
    EXPECT_LE(flatCapped(flat), 4.5 + 1e-9);
}

TEST(FramesFlat, FoundationHoldsNone) {
    const auto flat = framesFlat(flatFramesOf(2, 7), flatLook(0, 7), 9);
    EXPECT_EQ(flat[0].comb, Comb::Drawn) << "drawn comb stands first";
    EXPECT_NEAR(*flat[0].filledA, 0.315, 1e-9);
    EXPECT_EQ(flat[2].comb, Comb::Foundation);
    EXPECT_FALSE(flat[2].filledA);
}

TEST(FramesFlat, WhatNobodySaidIsNotShown) {
    for (const FlatFrame& frame : framesFlat(flatFramesOf(9), std::nullopt, 9)) {
        EXPECT_FALSE(frame.filledA);
        EXPECT_FALSE(frame.capped);
    }
    const auto onlyCapped = framesFlat(flatFramesOf(9), flatLook(3, std::nullopt), 9);
    EXPECT_EQ(onlyCapped[2].filledA, 1.0);
    EXPECT_FALSE(onlyCapped[3].filledA) << "the others may hold anything";
    const auto onlyFilled = framesFlat(flatFramesOf(9), flatLook(std::nullopt, 60), 9);
    EXPECT_NEAR(*onlyFilled[8].filledA, 0.6, 1e-9);
    EXPECT_FALSE(onlyFilled[8].capped);
    const auto blank = framesFlat({}, std::nullopt, 4);
    ASSERT_EQ(blank.size(), 4U);
    EXPECT_FALSE(blank[0].comb) << "nobody recorded what they are";
    EXPECT_EQ(framesFlat({}, flatLook(4, 100), 4)[0].comb, Comb::Drawn) << "honey needs comb";
}

TEST(FramesFlat, AFrameWithAPlaceKeepsItAndItsOwnFill) {
    auto frames = flatFramesOf(3);
    frames[2].position = Count(1);
    frames[2].filledA = Share::percent(50);
    frames[2].filledB = Share::percent(30);
    frames[2].capped = Share::percent(20);
    frames[1].position = Count(2);
    const auto flat = framesFlat(frames, flatLook(1.2, 80), 3);
    EXPECT_EQ(flat[0].place, 1);
    EXPECT_EQ(flat[0].filledA, 0.5);
    EXPECT_EQ(flat[1].place, 2);
    EXPECT_FALSE(flat[2].place);
    EXPECT_NEAR(0.4 + *flat[1].filledA + *flat[2].filledA, 2.4, 1e-9) << "the rest of the box";
    EXPECT_EQ(flat[1].filledA, 1.0);
}

}  // namespace
}  // namespace combwright
