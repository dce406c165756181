#include "core/trade/honey/settling.h"

#include <cmath>
#include <numbers>

#include "core/trade/honey/published_table.h"
#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

constexpr double gravity = 9.80665;  // m/s²
constexpr double stokesDivisor = 18.0;
constexpr double metresPerUm = 1e-6;
constexpr double metresPerMm = 1e-3;
constexpr double secondsPerHour = 3600.0;
constexpr double cubicMmPerMl = 1000.0;
constexpr double quarterPi = std::numbers::pi / 4.0;
constexpr const char* stokesSource = "Stokes' law; a rigid sphere in creeping flow";

Result<void> refuseUnlessAboveZero(double value, const char* field) {
    if (value > 0.0 && std::isfinite(value)) return {};
    return Refusal{value < 0.0 ? Code::Negative : Code::OutOfRange, field, {{"low", "0"}}};
}

Result<void> refuseDepth(double depthMm) {
    if (depthMm >= 0.0 && std::isfinite(depthMm)) return {};
    return Refusal{depthMm < 0.0 ? Code::Negative : Code::OutOfRange, "depth_mm", {{"low", "0"}}};
}

}  // namespace

Result<double> riseSpeed(double pascalSeconds, double lighterKgPerM3, double diameterUm) {
    if (auto good = refuseUnlessAboveZero(pascalSeconds, "pa_s"); !good) return good.error();
    if (auto good = refuseUnlessAboveZero(lighterKgPerM3, "lighter_kg_per_m3"); !good)
        return good.error();
    if (auto good = refuseUnlessAboveZero(diameterUm, "diameter_um"); !good) return good.error();
    const double diameter = diameterUm * metresPerUm;
    const double speed =
        gravity * lighterKgPerM3 * diameter * diameter / (stokesDivisor * pascalSeconds);
    // Nothing of that size: the speed is no number any more, or none above 0.
    if (!(speed > 0.0) || !std::isfinite(speed)) return Refusal{Code::OutOfRange, "diameter_um"};
    return speed;
}

Result<double> depthInVessel(double grams, double kgPerLitre, double wideMm, Working* working) {
    if (auto good = refuseUnlessAboveZero(grams, "honey_g"); !good) return good.error();
    if (auto good = refuseUnlessAboveZero(kgPerLitre, "kg_per_l"); !good) return good.error();
    if (auto good = refuseUnlessAboveZero(wideMm, "wide_mm"); !good) return good.error();
    // A gram of what weighs 1 kg/L fills 1,000 mm³.
    const double depth = grams / kgPerLitre * cubicMmPerMl / (quarterPi * wideMm * wideMm);
    if (!std::isfinite(depth)) return Refusal{Code::OutOfRange, "wide_mm"};
    note(working, "honey_g", grams, "g");
    note(working, "kg_per_l", kgPerLitre, "kg/L");
    note(working, "depth_in_vessel", depth, "mm", "honey ÷ kg/L ÷ (π ÷ 4 · width²)");
    return depth;
}

Result<double> wideAsDeep(double grams, double kgPerLitre) {
    if (auto good = refuseUnlessAboveZero(grams, "honey_g"); !good) return good.error();
    if (auto good = refuseUnlessAboveZero(kgPerLitre, "kg_per_l"); !good) return good.error();
    const double wide = std::cbrt(grams / kgPerLitre * cubicMmPerMl / quarterPi);
    if (!std::isfinite(wide)) return Refusal{Code::OutOfRange, "honey_g"};
    return wide;
}

Result<double> settlingHours(double waterPercent, double temperatureC, double depthMm,
                             double diameterUm, double lighterKgPerM3, Working* working) {
    if (auto good = refuseDepth(depthMm); !good) return good.error();
    const auto viscosity = honeyViscosity(waterPercent, temperatureC, working);
    if (!viscosity) return viscosity.error();
    const auto speed = riseSpeed(*viscosity, lighterKgPerM3, diameterUm);
    if (!speed) return speed.error();
    const double hours = depthMm * metresPerMm / *speed / secondsPerHour;
    if (!std::isfinite(hours)) return Refusal{Code::OutOfRange, "diameter_um"};
    note(working, "settling_depth", depthMm, "mm");
    note(working, "particle_um", diameterUm, "µm");
    note(working, "lighter_kg_per_m3", lighterKgPerM3, "kg/m³");
    note(working, "rise_mm_per_h", *speed / metresPerMm * secondsPerHour, "mm/h",
         "9.80665 · Δρ · d² ÷ (18 · Pa·s)", stokesSource);
    note(working, "settling_hours", hours, "h", "depth ÷ rise");
    return hours;
}

Result<double> clearedFromUm(double waterPercent, double temperatureC, double depthMm, double hours,
                             double lighterKgPerM3, Working* working) {
    if (auto good = refuseDepth(depthMm); !good) return good.error();
    if (auto good = refuseUnlessAboveZero(hours, "hours"); !good) return good.error();
    if (auto good = refuseUnlessAboveZero(lighterKgPerM3, "lighter_kg_per_m3"); !good)
        return good.error();
    const auto viscosity = honeyViscosity(waterPercent, temperatureC, working);
    if (!viscosity) return viscosity.error();
    const double needed = depthMm * metresPerMm / (hours * secondsPerHour);
    const double diameter =
        std::sqrt(needed * stokesDivisor * *viscosity / (gravity * lighterKgPerM3));
    if (!std::isfinite(diameter)) return Refusal{Code::OutOfRange, "hours"};
    note(working, "settling_depth", depthMm, "mm");
    note(working, "settling_hours", hours, "h");
    note(working, "cleared_from_um", diameter / metresPerUm, "µm",
         "√(18 · Pa·s · depth ÷ (9.80665 · Δρ · time))", stokesSource);
    return diameter / metresPerUm;
}

}  // namespace combwright
