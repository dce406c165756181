// How heavy a frame is when nobody weighs it: one letter as it comes off the fork, h heavy, m
// middling, l light. A hand that has lifted fifty frames of the day sorts them into thirds well
// enough, and thirds say nearly as much as a scale would. What a letter leaves open is told as a
// doubt and never hidden.
//
// Masses here are of the honey in a frame unless said otherwise.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/extractor/balance.h"

namespace combwright {

enum class HeftThird { Heavy, Middling, Light };

/// 'h', 'm', 'l', in either case; nothing for any other letter.
std::optional<HeftThird> heftThirdOf(char letter);
char key(HeftThird heft);

/// The frames at hand before any of them was lifted, grams a frame.
struct HeftSpread {
    double meanG = 0.0;
    double sdG = 0.0;
};

/// What a letter says of a frame, grams.
struct HeftClass {
    double meanG = 0.0;
    double sdG = 0.0;  ///< of frames of the class among themselves
};

struct HeftClasses {
    HeftClass heavy;
    HeftClass middling;
    HeftClass light;

    const HeftClass& of(HeftThird heft) const;
};

/// Judging ± 15 % of the honey in an average frame: with it the trial told in the tests comes out
/// as told. Common practice has no figure.
inline constexpr double heftDoubtShare = 0.15;

/// The thirds of a normal distribution. With z = Φ⁻¹(2/3) = 0.4307 and k = φ(z) / (1/3) = 1.0908
/// the outer thirds have the means ± k · sd and the deviation √(1 + z · k − k²) · sd = 0.5291 · sd,
/// the middle one the mean and √(1 − 2 · z · k) · sd = 0.2458 · sd.
///
/// `feelSdG` is how far the hand is off when it lifts one frame. The thirds are then those of what
/// was felt, and the mass follows it only by ρ² = sd² / (sd² + feel²): the means are ± k · ρ · sd,
/// the variance in a class is sd² · (1 − ρ² · (1 − v)) with v that of the third of a normal.
///
/// A light frame holds no less than nothing: where the mean is so small that the class would, it is
/// 0. Refused: a negative or endless number ("mean_g", "sd_g", "feel_sd_g").
Result<HeftClasses> heftClasses(const HeftSpread& frames, double feelSdG = 0.0,
                                Working* working = nullptr);

/// What a letter says of a frame whose box was weighed or judged. The letter sorts it among all the
/// frames at hand, the box says what its own are like, and both are true of the one frame: of what
/// its box allows only that part is left which feels so heavy. With x the frame, N(box mean, box
/// sd²), and y = x + feel what the hand felt, the letter says that y lies in a third of what is at
/// hand, cut at M ± 0.4307 · √(sd² + feel²). Cut there y has, from α to β in its own deviations
/// s = √(box sd² + feel²), Z = Φ(β) − Φ(α),
///
///     λ = (φ(α) − φ(β)) / Z        E y = box mean + s · λ
///     V y / s² = 1 + (α φ(α) − β φ(β)) / Z − λ²
///
/// and x follows it by ρ² = box sd² / s²: E x = box mean + ρ² · s · λ, V x = box sd² · (1 − ρ² ·
/// (1 − V y / s²)). A letter never makes the frame less sure than its box did; the hand's doubt is
/// in ρ² and comes on top of nothing. Where the box is as all at hand this is heftClasses.
///
/// Refused as heftClasses.
Result<HeftClass> heftInBox(HeftThird heft, const HeftSpread& ofBox, const HeftSpread& atHand,
                            double feelSdG);

/// Frames that differ in mean and deviation, as one: of each so many.
struct HeftPart {
    HeftSpread spread;
    double frames = 0.0;
};
/// Mean and deviation of them all; nothing without a frame.
std::optional<HeftSpread> heftTogether(const std::vector<HeftPart>& parts);

/// A box weighed full and wet: what a frame of it held on average.
struct HeftSample {
    double meanG = 0.0;
    std::size_t frames = 0;
};

/// Mean and deviation of a frame, learned from boxes. A box tells only the mean of its frames; how
/// its frames differ among themselves is `withinShare` of the mean (comb_spread_share). How boxes
/// differ is what the box means scatter beyond that (one-way analysis of variance, the variance
/// within known):
///
///     M = Σ n·x / N        w = withinShare · M        n₀ = (N − Σ n² / N) / (k − 1)
///     between² = max(0, (Σ n·(x − M)² / (k − 1) − w²) / n₀)        sd² = between² + w²
///
/// Nothing with fewer than two boxes: of one box nobody can tell how boxes differ. Boxes without
/// frames are passed over.
std::optional<HeftSpread> heftFrom(const std::vector<HeftSample>& boxes, double withinShare,
                                   Working* working = nullptr);

/// What a frame is besides its honey.
struct EmptyFrame {
    double massG = 0.0;              ///< wood and wet comb: what is left after the spin
    std::optional<double> sdG = {};  ///< of such frames among themselves; absent: not counted
    std::optional<double> radiusMm = {};
};

/// One frame of what a letter says, as balanceLoad takes it.
LoadedFrame frameFelt(const HeftClass& felt, const EmptyFrame& empty);
/// One frame of a letter.
LoadedFrame frameOfHeft(HeftThird heft, const HeftClasses& classes, const EmptyFrame& empty);
/// One frame for each letter, in their order. Refused: a letter that is none of h, m, l
/// (NotAChoice, "heft[3]").
Result<std::vector<LoadedFrame>> framesOfLetters(std::string_view letters,
                                                 const HeftClasses& classes,
                                                 const EmptyFrame& empty);

}  // namespace combwright
