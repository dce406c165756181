#include "core/trade/extractor/unbalance.h"

#include <cmath>
#include <numbers>
#include <optional>
#include <string>

namespace combwright {
namespace {

constexpr double gMmInKgM = 1e6;
constexpr const char* gradeSource = "ISO 21940-11";

std::optional<Refusal> refuseNegative(double value, const char* field) {
    if (value >= 0.0 && std::isfinite(value)) return std::nullopt;
    return Refusal{Code::Negative, field, {}};
}

std::optional<Refusal> refuseNotAbove0(double value, const char* field) {
    if (auto refused = refuseNegative(value, field)) return refused;
    if (value > 0.0) return std::nullopt;
    return Refusal{Code::OutOfRange, field, {{"value", "0"}, {"low", "0"}}};
}

std::optional<Refusal> refuseRotor(const TurningRotor& rotor) {
    if (auto refused = refuseNegative(rotor.radiusMm, "radius_mm")) return refused;
    if (auto refused = refuseNotAbove0(rotor.rpm, "rpm")) return refused;
    if (auto refused = refuseNotAbove0(rotor.rotorKg, "rotor_kg")) return refused;
    return refuseNotAbove0(rotor.grade, "grade");
}

double radiansPerSecond(double rpm) { return 2.0 * std::numbers::pi * rpm / 60.0; }

double allowedUnbalance(const TurningRotor& rotor) {
    return 1000.0 * rotor.grade * rotor.rotorKg / radiansPerSecond(rotor.rpm);
}

}  // namespace

Result<Unbalance> unbalanceOf(double offsetG, const TurningRotor& rotor, Working* working) {
    if (const auto refused = refuseNegative(offsetG, "offset_g")) return *refused;
    if (const auto refused = refuseRotor(rotor)) return *refused;

    const double omega = radiansPerSecond(rotor.rpm);
    Unbalance unbalance;
    unbalance.gMm = offsetG * rotor.radiusMm;
    unbalance.newton = unbalance.gMm / gMmInKgM * omega * omega;
    unbalance.allowedGMm = allowedUnbalance(rotor);
    unbalance.shareOfAllowed = unbalance.gMm / unbalance.allowedGMm;

    note(working, "offset_g", offsetG, "g");
    note(working, "radius_mm", rotor.radiusMm, "mm");
    note(working, "rpm", rotor.rpm, "1/min");
    note(working, "omega", omega, "rad/s", "ω = 2π · rpm / 60");
    note(working, "g_mm", unbalance.gMm, "g·mm", "U = offset_g · radius_mm");
    note(working, "newton", unbalance.newton, "N", "F = U / 10⁶ · ω²");
    note(working, "rotor_kg", rotor.rotorKg, "kg");
    note(working, "grade", rotor.grade, "mm/s", {}, gradeSource);
    note(working, "allowed_g_mm", unbalance.allowedGMm, "g·mm", "1000 · G · m / ω", gradeSource);
    note(working, "share_of_allowed", unbalance.shareOfAllowed, "", "g_mm / allowed_g_mm");
    return unbalance;
}

Result<double> allowedOffsetG(const TurningRotor& rotor) {
    if (const auto refused = refuseRotor(rotor)) return *refused;
    if (const auto refused = refuseNotAbove0(rotor.radiusMm, "radius_mm")) return *refused;
    return allowedUnbalance(rotor) / rotor.radiusMm;
}

}  // namespace combwright
