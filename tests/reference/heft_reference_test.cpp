// Source of what a letter a frame is worth: a trial made before this program. 200 loads of 12
// frames, honey per frame 1450 ± 360 g. Told there, the median of the real offset: placed blind 996
// g, arranged by fill guesses of ± 15 % 519 g, by three classes of heft 646 g, by weighed frames 6
// g. What the hand is off by when it sorts into three is not told; with the same ± 15 % the classes
// come out as told, with thirds felt without a fault they would come out at 472 g. The last figure
// is what that trial's search left; ours, being proven, leaves less.
//
// Tolerance: the median of 200 loads has itself a deviation of 6 % (Rayleigh: 0.85 · σ / √200), and
// two such trials are compared: 3 · √2 · 6 % would be 25 %, 15 % is asked for.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "core/trade/extractor/heft.h"

namespace combwright {
namespace {

constexpr double trialMeanG = 1450;
constexpr double trialSdG = 360;
constexpr double trialEmptyG = 600;
constexpr int trialLoads = 200;

/// Normal numbers of our own making (Box and Muller), so that every library rolls the same.
class TrialDice {
  public:
    double normal() {
        const double radius = std::sqrt(-2 * std::log(uniform()));
        return radius * std::cos(2 * std::numbers::pi * uniform());
    }

  private:
    double uniform() { return (static_cast<double>(m_dice()) + 0.5) / 4294967296.0; }
    std::mt19937 m_dice{20270729};
};

struct TrialMedians {
    double blind, byGuess, byHeft, weighed;
    double withinDoubt;  ///< share of the loads by heft whose real offset lies within the doubt
};

TrialMedians trialOf(double feelSdG) {
    TrialDice dice;
    const HeftClasses classes = *heftClasses({trialMeanG, trialSdG}, feelSdG);
    const double cut = 0.4307273 * std::hypot(trialSdG, feelSdG);
    std::vector<double> offsets[4];
    int within = 0;
    for (int i = 0; i < trialLoads; ++i) {
        std::vector<LoadedFrame> real;
        std::vector<LoadedFrame> guessed;
        std::string letters;
        FrameSlots blind;
        for (std::size_t f = 0; f < 12; ++f) {
            const double honey = std::max(0.0, trialMeanG + trialSdG * dice.normal());
            const double felt = honey + feelSdG * dice.normal();
            letters += felt > trialMeanG + cut ? 'h' : (felt > trialMeanG - cut ? 'm' : 'l');
            real.push_back({trialEmptyG + honey, trialEmptyG});
            guessed.push_back({trialEmptyG + std::max(0.0, felt), trialEmptyG});
            blind.emplace_back(f);
        }
        const auto felt = framesOfLetters(letters, classes, {trialEmptyG, {}, {}});
        const auto byHeft = balanceLoad(12, *felt);
        offsets[0].push_back(offsetsOf(blind, real).largerG());
        offsets[1].push_back(offsetsOf(balanceLoad(12, guessed)->places, real).largerG());
        offsets[2].push_back(offsetsOf(byHeft->places, real).largerG());
        offsets[3].push_back(offsetsOf(balanceLoad(12, real)->places, real).largerG());
        // The offset reckoned from the letters is nearly always 0; where it is not it counts too.
        if (offsets[2].back() <= byHeft->offset.startG + *byHeft->doubtG) ++within;
    }
    for (auto& each : offsets) std::sort(each.begin(), each.end());
    const auto middle = [](const std::vector<double>& sorted) {
        return (sorted[trialLoads / 2 - 1] + sorted[trialLoads / 2]) / 2;
    };
    return {middle(offsets[0]), middle(offsets[1]), middle(offsets[2]), middle(offsets[3]),
            static_cast<double>(within) / trialLoads};
}

TEST(HeftReference, TheTrialOfTwoHundredLoads) {
    const TrialMedians found = trialOf(heftDoubtShare * trialMeanG);
    EXPECT_NEAR(found.blind, 996, 0.15 * 996);
    EXPECT_NEAR(found.byGuess, 519, 0.15 * 519);
    EXPECT_NEAR(found.byHeft, 646, 0.15 * 646);
    EXPECT_LE(found.weighed, 6);
    EXPECT_GT(found.blind, found.byHeft);
    EXPECT_GT(found.byHeft, found.byGuess);
    EXPECT_GT(found.byGuess, found.weighed);
    // "9 of 10": within three deviations of a share of 200 loads, √(0.9 · 0.1 / 200) = 0.021.
    EXPECT_NEAR(found.withinDoubt, 0.9, 0.064);
}

TEST(HeftReference, ThirdsFeltWithoutAFault) {
    const TrialMedians found = trialOf(0);
    // √(2 · ln 2) · σ with σ² = (8 · 0.2799 + 4 · 0.0604) / 2 · 360²: 472 g.
    EXPECT_NEAR(found.byHeft, 472, 0.15 * 472);
    EXPECT_NEAR(found.withinDoubt, 0.9, 0.064);
}

}  // namespace
}  // namespace combwright
