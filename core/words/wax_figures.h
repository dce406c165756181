// Wax in words: its mass, finer than honey's, and its shades.
#pragma once

#include <QString>
#include <cstdint>
#include <string>

#include "core/model/wax/batch.h"

namespace combwright {

/// "3.40 kg": two decimals, for a candle is a twentieth of a kilogram.
QString waxText(double grams);
QString waxText(Mass mass);
/// The same without its unit.
QString waxFigure(double grams);
/// To the gram, or to a thousandth of a pound, as whole steps: what is summed as it is printed adds
/// up by hand.
std::int64_t waxFineSteps(double grams);
QString waxFineFigure(std::int64_t steps);
/// A portion as it is printed, grams: the nearest gram, or tenth of an ounce.
double portionShownG(double grams);
/// Wick on a spool: "5.0 m" or "197 in".
QString wickText(double metres);
/// "light"; by the shade's name as a plan has it, "any shade" for none.
QString shadeText(WaxShade shade);
QString shadeText(const std::string& shade);

}  // namespace combwright
