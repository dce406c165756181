// What a jar may lack. A label promises a mass: the mean of a filling must reach it, a single jar
// may be a little short, none by a lot, and how much is a table of the country. The tables are
// data; where none is known only the mean is judged.
#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// One row of a table of tolerances: of nominal masses from one to the other, both ends included, a
/// deficit in grams or in per cent of the nominal mass.
struct ToleranceRow {
    double fromG = 0;
    double toG = 0;
    std::optional<double> deficitG;
    std::optional<double> deficitPercent;
};

/// What a jar of that nominal mass may lack, grams; per cent rounded up to 0.1 g. Where two rows
/// meet, the first. Nothing where no row speaks of it. `netG` above 0.
std::optional<double> tolerableDeficit(double netG, std::span<const ToleranceRow> rows);

/// A filling, weighed jar by jar (honey alone).
struct NetCheck {
    double meanG = 0;
    bool meanHolds = false;            ///< the mean is the nominal mass or more
    std::optional<double> deficitG;    ///< what a jar may lack; nothing: no table
    std::int64_t shortJars = 0;        ///< lack more than that, but not twice
    std::int64_t farShortJars = 0;     ///< lack more than twice that: never to be sold
    std::optional<double> shortShare;  ///< of the jars weighed, both kinds; nothing without a table
};
/// More than that share of short jars fails a filling (EU reference test; from memory).
inline constexpr double mostShortShare = 0.025;

/// Refused: OutOfRange "net_g" (above 0); Missing "weighed" (no jar); Negative "weighed[i]".
Result<NetCheck> checkNet(double netG, std::span<const double> weighedG,
                          std::span<const ToleranceRow> rows, Working* working = nullptr);

/// What the scale must show so that no jar holds less than the label says, however the scale
/// rounded: the first of its steps at or above net + half a step. Refused: OutOfRange "net_g",
/// "scale_step_g" (above 0).
Result<double> leastToShow(double netG, double scaleStepG);

inline constexpr double gramsPerOunce = 28.349523125;
inline constexpr double gramsPerPound = 453.59237;
/// Whole grams declared beside ounces of weight: 16 oz are 454 g. Refused: OutOfRange "net_oz"
/// (above 0, to 1e6).
Result<std::int64_t> declaredGrams(double ounces);

}  // namespace combwright
