// Water as an instrument said it, whatever its scale, and as it would have said it at 20 °C. The
// two stay apart: a reading is corrected when the keeper takes the correction, not before.
#pragma once

#include <optional>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/honey/moisture.h"

namespace combwright {

/// One of the three scales, and what is known of the sample.
struct ScaleShown {
    std::optional<double> waterPercent;
    std::optional<double> index;
    std::optional<double> brix;
    std::optional<double> temperatureC;
    bool compensates = false;  ///< for warmth, by itself
};

/// What was read, taken as if at 20 °C. A scale of water is given back as it is. Refused: Missing
/// "water_percent" where no scale is given; as moistureFromIndex and moistureFromBrix.
Result<double> waterAsRead(const ScaleShown& shown, Working* working = nullptr);

/// The same at 20 °C. What compensates is right as read. Warm honey is drier than it reads, cold
/// honey wetter: about 0.09 points a degree. Refused: Missing "temperature_c" where nobody measured
/// it, as waterAsRead, and outside the table's 13 to 25 %.
Result<double> waterAtTwenty(const ScaleShown& shown, Working* working = nullptr);

}  // namespace combwright
