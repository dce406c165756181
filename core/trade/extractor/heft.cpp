#include "core/trade/extractor/heft.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

namespace combwright {
namespace {

/// Φ⁻¹(2/3): two thirds of a normal distribution lie below it.
constexpr double upperThird = 0.43072729929545747;

double normalDensity(double z) {
    return std::exp(-z * z / 2.0) / std::sqrt(2.0 * std::numbers::pi);
}

std::optional<Refusal> refuseHeftNumber(double number, const char* field) {
    if (number >= 0.0 && std::isfinite(number)) return std::nullopt;
    return Refusal{Code::Negative, field, {}};
}

}  // namespace

std::optional<HeftThird> heftThirdOf(char letter) {
    switch (letter) {
        case 'h':
        case 'H':
            return HeftThird::Heavy;
        case 'm':
        case 'M':
            return HeftThird::Middling;
        case 'l':
        case 'L':
            return HeftThird::Light;
        default:
            return std::nullopt;
    }
}

char key(HeftThird heft) {
    if (heft == HeftThird::Heavy) return 'h';
    return heft == HeftThird::Middling ? 'm' : 'l';
}

const HeftClass& HeftClasses::of(HeftThird heft) const {
    if (heft == HeftThird::Heavy) return heavy;
    return heft == HeftThird::Middling ? middling : light;
}

Result<HeftClasses> heftClasses(const HeftSpread& frames, double feelSdG, Working* working) {
    if (auto refused = refuseHeftNumber(frames.meanG, "mean_g")) return *refused;
    if (auto refused = refuseHeftNumber(frames.sdG, "sd_g")) return *refused;
    if (auto refused = refuseHeftNumber(feelSdG, "feel_sd_g")) return *refused;

    const double away = 3.0 * normalDensity(upperThird);
    const double outerVariance = 1.0 + upperThird * away - away * away;
    const double middleVariance = 1.0 - 2.0 * upperThird * away;

    const double felt = std::hypot(frames.sdG, feelSdG);
    const double follows = felt > 0.0 ? frames.sdG / felt : 0.0;
    const auto inClass = [&](double variance) {
        return frames.sdG * std::sqrt(1.0 - follows * follows * (1.0 - variance));
    };
    const double shift = away * follows * frames.sdG;

    HeftClasses classes;
    classes.heavy = {frames.meanG + shift, inClass(outerVariance)};
    classes.middling = {frames.meanG, inClass(middleVariance)};
    classes.light = {std::max(0.0, frames.meanG - shift), inClass(outerVariance)};

    note(working, "heft_mean_g", frames.meanG, "g");
    note(working, "heft_sd_g", frames.sdG, "g");
    note(working, "heft_feel_g", feelSdG, "g");
    note(working, "heft_heavy_g", classes.heavy.meanG, "g", "mean + 1.0908 · sd² / √(sd² + feel²)",
         "thirds of a normal distribution");
    note(working, "heft_light_g", classes.light.meanG, "g", "mean − 1.0908 · sd² / √(sd² + feel²)",
         "thirds of a normal distribution");
    return classes;
}

Result<HeftClass> heftInBox(HeftThird heft, const HeftSpread& ofBox, const HeftSpread& atHand,
                            double feelSdG) {
    for (const HeftSpread& each : {ofBox, atHand}) {
        if (auto refused = refuseHeftNumber(each.meanG, "mean_g")) return *refused;
        if (auto refused = refuseHeftNumber(each.sdG, "sd_g")) return *refused;
    }
    if (auto refused = refuseHeftNumber(feelSdG, "feel_sd_g")) return *refused;
    const double felt = std::hypot(ofBox.sdG, feelSdG);
    // Frames all alike: no letter tells more of them.
    if (felt <= 0.0) return HeftClass{ofBox.meanG, ofBox.sdG};

    const double cut = upperThird * std::hypot(atHand.sdG, feelSdG);
    const double endless = std::numeric_limits<double>::infinity();
    const double low = heft == HeftThird::Heavy      ? atHand.meanG + cut
                       : heft == HeftThird::Middling ? atHand.meanG - cut
                                                     : -endless;
    const double high = heft == HeftThird::Heavy      ? endless
                        : heft == HeftThird::Middling ? atHand.meanG + cut
                                                      : atHand.meanG - cut;
    const double alpha = (low - ofBox.meanG) / felt;
    const double beta = (high - ofBox.meanG) / felt;
    const auto below = [](double z) { return std::erfc(-z / std::numbers::sqrt2) / 2.0; };
    // From the nearer end, where the tail is small and its difference would be lost.
    const double inside = alpha > 0.0 ? below(-alpha) - below(-beta) : below(beta) - below(alpha);
    // A letter the box all but rules out: then the slip is more likely the hand's.
    if (inside < 1e-6) return HeftClass{ofBox.meanG, ofBox.sdG};
    const auto moment = [](double z) { return std::isinf(z) ? 0.0 : z * normalDensity(z); };
    const double shift = (normalDensity(alpha) - normalDensity(beta)) / inside;
    const double variance = 1.0 + (moment(alpha) - moment(beta)) / inside - shift * shift;
    const double follows = ofBox.sdG * ofBox.sdG / (felt * felt);
    return HeftClass{
        std::max(0.0, ofBox.meanG + follows * felt * shift),
        ofBox.sdG * std::sqrt(std::max(0.0, 1.0 - follows * (1.0 - std::max(0.0, variance))))};
}

std::optional<HeftSpread> heftTogether(const std::vector<HeftPart>& parts) {
    double frames = 0.0;
    double sum = 0.0;
    for (const HeftPart& each : parts) {
        frames += each.frames;
        sum += each.frames * each.spread.meanG;
    }
    if (frames <= 0.0) return std::nullopt;
    HeftSpread all{sum / frames, 0.0};
    double squares = 0.0;
    for (const HeftPart& each : parts) {
        const double off = each.spread.meanG - all.meanG;
        squares += each.frames * (each.spread.sdG * each.spread.sdG + off * off);
    }
    all.sdG = std::sqrt(squares / frames);
    return all;
}

std::optional<HeftSpread> heftFrom(const std::vector<HeftSample>& boxes, double withinShare,
                                   Working* working) {
    double count = 0.0;
    double frames = 0.0;
    double squares = 0.0;
    double sum = 0.0;
    for (const HeftSample& box : boxes) {
        if (box.frames == 0) continue;
        const auto n = static_cast<double>(box.frames);
        count += 1.0;
        frames += n;
        squares += n * n;
        sum += n * box.meanG;
    }
    if (count < 2.0) return std::nullopt;
    HeftSpread heft;
    heft.meanG = sum / frames;

    double scatter = 0.0;
    for (const HeftSample& box : boxes) {
        const double off = box.meanG - heft.meanG;
        scatter += static_cast<double>(box.frames) * off * off;
    }
    const double within = withinShare * heft.meanG;
    const double framesABox = (frames - squares / frames) / (count - 1.0);
    const double between = std::max(0.0, (scatter / (count - 1.0) - within * within) / framesABox);
    heft.sdG = std::sqrt(between + within * within);

    note(working, "boxes_weighed", count, "");
    note(working, "heft_mean_g", heft.meanG, "g", "Σ n · x / Σ n");
    note(working, "heft_within_g", within, "g", "comb_spread_share · mean");
    note(working, "heft_between_g", std::sqrt(between), "g",
         "√max(0, (Σ n · (x − mean)² / (k − 1) − within²) / n₀)", "one-way analysis of variance");
    note(working, "heft_sd_g", heft.sdG, "g", "√(between² + within²)");
    return heft;
}

LoadedFrame frameOfHeft(HeftThird heft, const HeftClasses& classes, const EmptyFrame& empty) {
    return frameFelt(classes.of(heft), empty);
}

LoadedFrame frameFelt(const HeftClass& felt, const EmptyFrame& empty) {
    LoadedFrame frame;
    frame.startG = empty.massG + felt.meanG;
    frame.endG = empty.massG;
    frame.sdG = std::hypot(felt.sdG, empty.sdG.value_or(0.0));
    frame.radiusMm = empty.radiusMm;
    return frame;
}

Result<std::vector<LoadedFrame>> framesOfLetters(std::string_view letters,
                                                 const HeftClasses& classes,
                                                 const EmptyFrame& empty) {
    std::vector<LoadedFrame> frames;
    for (std::size_t i = 0; i < letters.size(); ++i) {
        const auto heft = heftThirdOf(letters[i]);
        if (!heft)
            return Refusal{Code::NotAChoice,
                           "heft[" + std::to_string(i) + "]",
                           {{"value", std::string(1, letters[i])}, {"choices", "h, m, l"}}};
        frames.push_back(frameOfHeft(*heft, classes, empty));
    }
    return frames;
}

}  // namespace combwright
