#include "core/trade/frames/frame_honey.h"

#include <cmath>
#include <string>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr const char* wideSpacingSource = "S02 S40 S73";
constexpr const char* spreadAssumption = "planning assumption, no source";

std::optional<Refusal> refuseFill(const FrameFill& fill) {
    if (!(fill.leftFilled >= 0.0 && fill.leftFilled <= 1.0))
        return outOfRange("left_filled", fill.leftFilled, 0.0, 1.0);
    if (!(fill.rightFilled >= 0.0 && fill.rightFilled <= 1.0))
        return outOfRange("right_filled", fill.rightFilled, 0.0, 1.0);
    return std::nullopt;
}

std::optional<Refusal> refuseSpacing(const BoxSpacing& spacing) {
    if (spacing.frames > spacing.nominal)
        return Refusal{Code::TooMany, "frames_in_box", {{"most", std::to_string(spacing.nominal)}}};
    // With b of air at every face, half the frames leave exactly one comb's room between two.
    const std::int64_t fewest = spacing.nominal / 2 + 1;
    if (spacing.frames < fewest)
        return outOfRange("frames_in_box", static_cast<double>(spacing.frames),
                          static_cast<double>(fewest), static_cast<double>(spacing.nominal));
    if (!(combThicknessMm(spacing.innerWidthMm, spacing.nominal) > 0.0))
        return Refusal{Code::TooMany, "box_nominal", {}};
    return std::nullopt;
}

// The published 333 g/dm² already is what a comb holds at ordinary spacing; only how much thicker
// the comb gets is asked of the geometry. So the figure has no jump where nothing is taken out.
double fatnessOf(const BoxSpacing& spacing, Working* working) {
    const double thickness = combThicknessMm(spacing.innerWidthMm, spacing.frames);
    const double ordinary = combThicknessMm(spacing.innerWidthMm, spacing.nominal);
    const char* rule = "(W − (n + 1) · 9.525) / n";
    note(working, "box_inner_width_mm", spacing.innerWidthMm, "mm");
    note(working, "ordinary_comb_thickness_mm", ordinary, "mm", rule, wideSpacingSource);
    note(working, "comb_thickness_mm", thickness, "mm", rule, wideSpacingSource);
    return thickness / ordinary;
}

double fillByEyeError(double filled, const HoneyRates& rates) {
    return 2.0 * rates.fillByEye * std::sqrt(filled * (1.0 - filled));
}

void noteSpread(const HoneyEstimate& honey, double byEyeG, const HoneyRates& rates,
                Working* working) {
    note(working, "crop_spread_share", rates.cropSpreadShare, "", {}, "S93");
    note(working, "comb_spread_share", rates.combSpreadShare, "", {}, spreadAssumption);
    note(working, "fill_by_eye", rates.fillByEye, "", {}, spreadAssumption);
    note(working, "fill_by_eye_g", byEyeG, "g",
         "full / 2 · √(e₁² + e₂²), e = 2 · fill_by_eye · √(f · (1 − f))");
    note(working, "spread_g", honey.spreadG(), "g",
         "√((crop_spread_share · honey)² + (comb_spread_share · honey)² + fill_by_eye_g²)");
}

}  // namespace

double HoneyEstimate::spreadG() const { return std::hypot(sharedG, ownG); }

double fullFrameGrams(double combAreaDm2, const HoneyRates& rates) {
    return combAreaDm2 * rates.fullFrameGPerDm2;
}

double fullFrameGramsAtThickness(double combAreaDm2, double thicknessMm) {
    const double litres = combAreaDm2 * thicknessMm / 100.0;
    return litres * combHoneyDensity * combFillFactor * 1000.0;
}

double combThicknessMm(double innerWidthMm, std::int64_t frames, double beeSpace) {
    const auto n = static_cast<double>(frames);
    return (innerWidthMm - (n + 1.0) * beeSpace) / n;
}

Result<HoneyEstimate> frameHoney(const FrameFill& fill, const HoneyRates& rates, Working* working) {
    if (const auto refused = refuseFill(fill)) return *refused;
    if (fill.spacing)
        if (const auto refused = refuseSpacing(*fill.spacing)) return *refused;

    note(working, "full_frame_g", fill.fullFrameG, "g");
    const double fatness = fill.spacing ? fatnessOf(*fill.spacing, working) : 1.0;
    const double full = fill.fullFrameG * fatness;
    note(working, "left_filled", fill.leftFilled, "");
    note(working, "right_filled", fill.rightFilled, "");

    HoneyEstimate honey;
    honey.grams = full * (fill.leftFilled + fill.rightFilled) / 2.0;
    note(working, "honey_g", honey.grams, "g",
         fill.spacing ? "full · T / T₀ · (left + right) / 2" : "full · (left + right) / 2");
    const double byEye =
        full / 2.0 *
        std::hypot(fillByEyeError(fill.leftFilled, rates), fillByEyeError(fill.rightFilled, rates));
    honey.sharedG = rates.cropSpreadShare * honey.grams;
    honey.ownG = std::hypot(rates.combSpreadShare * honey.grams, byEye);
    noteSpread(honey, byEye, rates, working);
    return honey;
}

HoneyEstimate together(std::span<const HoneyEstimate> parts) {
    HoneyEstimate sum;
    for (const HoneyEstimate& each : parts) {
        sum.grams += each.grams;
        sum.sharedG += each.sharedG;
        sum.ownG = std::hypot(sum.ownG, each.ownG);
    }
    return sum;
}

HoneyEstimate alike(const HoneyEstimate& one, std::int64_t frames) {
    const auto n = static_cast<double>(frames);
    return {one.grams * n, one.sharedG * n, one.ownG * std::sqrt(n)};
}

}  // namespace combwright
