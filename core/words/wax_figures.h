// Wax in words: its mass, finer than honey's, and its shades.
#pragma once

#include <QString>
#include <string>

#include "core/model/wax/batch.h"

namespace combwright {

/// "3.40 kg": two decimals, for a candle is a twentieth of a kilogram.
QString waxText(double grams);
QString waxText(Mass mass);
/// "light"; by the shade's name as a plan has it, "any shade" for none.
QString shadeText(WaxShade shade);
QString shadeText(const std::string& shade);

}  // namespace combwright
