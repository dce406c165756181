// What warmth costs. Warming clears a bucket and thins it for the strainer; it also makes HMF and
// spends the enzymes, a little for ever. Published figures differ widely, so a single number is
// never the whole answer: the range behind it comes along. Every step a lot went through adds up,
// months on a warm shelf as well.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

inline constexpr double coldestHeatC = 10.0;
inline constexpr double warmestHeatC = 80.0;
/// HMF is published from here on.
inline constexpr double coldestHmfC = 20.0;

/// One printed row; nothing where nothing is printed. Hours.
struct HeatRow {
    double temperatureC;
    std::optional<double> hmfLowH;  ///< to gain 30 mg/kg, the fastest honey
    std::optional<double> hmfHighH;
    double diastaseHalfLifeH;
    double invertaseHalfLifeH;
};
/// White, Kushnir and Subers 1964: HMF printed in 2 sources with rounded limits, at 80 °C the pages
/// contradict each other; diastase in 1; invertase from memory, on one line with diastase.
std::span<const HeatRow> heatRows();

struct HoursRange {
    double low = 0;
    double high = 0;
};
/// Hours to gain 30 mg/kg as published: at a printed temperature the printed bracket, between two
/// the logarithm of the hours straight in 1 ÷ kelvin. Refused outside 20 to 80 °C
/// ("temperature_c").
Result<HoursRange> hmfBracketHours(double temperatureC);

/// The closed forms, fitted to the middle of the brackets and to the half-lives (T in kelvin):
/// exp(−42.96 + 15511 / T), within every bracket from 30 to 70 °C, slower than the bracket at 20
/// and at 80. Refused outside 20 to 80 °C.
Result<double> hmfHoursTo30(double temperatureC);
/// exp(−49.99 + 17726 / T), each row within 5 %. Refused outside 10 to 80 °C.
Result<double> diastaseHalfLifeHours(double temperatureC);
/// exp(−59.55 + 20353 / T), each row within 6 %. Refused outside 10 to 80 °C.
Result<double> invertaseHalfLifeHours(double temperatureC);

/// So long at that warmth.
struct HeatStep {
    double temperatureC = 0;
    double hours = 0;
};

struct HeatDamage {
    /// mg/kg by the closed form; nothing where a step lay under 20 °C, where none is published.
    std::optional<double> hmfGain = 0.0;
    /// Between these, always: by the published bracket, widened to the closed form where that lies
    /// beside it; a step under 20 °C from nothing to what 20 °C would make.
    double hmfLow = 0;
    double hmfHigh = 0;
    double diastaseLeftShare = 1;
    double invertaseLeftShare = 1;
};

/// One step: HMF grows evenly in time, enzymes halve. Refused: OutOfRange "temperature_c" (10 to
/// 80), Negative "hours", OutOfRange "hours".
Result<HeatDamage> heatDamage(const HeatStep& step, Working* working = nullptr);
/// All steps a lot went through: gains add, shares multiply, so the order does not matter and a
/// step may be parted. No steps: no damage. Refused as one step.
Result<HeatDamage> heatDamageInAll(std::span<const HeatStep> steps, Working* working = nullptr);

/// What a keeper calls it. Common practice, no source: gentle while the most HMF gained is 3 mg/kg
/// and 0.85 of the invertase is left, noticeable to 20 mg/kg (half of what most laws allow in all)
/// and 0.50, harsh beyond.
enum class HeatClass { Gentle, Noticeable, Harsh };
std::string_view key(HeatClass heat);  ///< "gentle", "noticeable", "harsh"

struct HeatLines {
    double gentleHmf = 3.0;
    double gentleInvertaseShare = 0.85;
    double noticeableHmf = 20.0;
    double noticeableInvertaseShare = 0.5;
};
HeatClass heatClass(const HeatDamage& damage, const HeatLines& lines = {});

}  // namespace combwright
