// What a strainer lets through. Honey creeps through cloth and mesh as through any narrow way, so
// the rate is as one over the viscosity: half as thick, twice as fast. A keeper who once took the
// time knows the rate of this strainer at that warmth; from it every other follows, as a range,
// because water and warmth are never quite known. A strainer that clogs passes less.
#pragma once

#include <optional>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// A range; both ends belong to it.
struct HoneyRange {
    double low = 0.0;
    double high = 0.0;
};

/// A strainer's rate, and the honey it was seen with.
struct StrainerRate {
    double kgPerH = 0.0;
    double waterPercent = 0.0;
    double temperatureC = 0.0;
    /// Taken on this keeper's honey. Else another honey, or a figure to plan with: then honeys
    /// differ by 1.5 either way (honeysDifferBy).
    bool thisHoney = true;
};

struct StrainerFlow {
    double kgPerH = 0.0;  ///< in the middle of both ranges
    double lowKgPerH = 0.0;
    double highKgPerH = 0.0;
    bool atMost = false;  ///< honey colder than is published for: it passes no more than that
};

/// Through the strainer go rate · η(rate's honey) / η(water, temperature): slowest dry and cold,
/// fastest wet and warm. Refused: a rate not above 0 ("strain_kg_per_h"), ranges turned round and
/// values outside those of honeyViscosity ("water_percent", "temperature_c", of the honey the rate
/// was seen with "seen_water_percent", "seen_temperature_c").
Result<StrainerFlow> strainerFlow(const StrainerRate& seen, HoneyRange waterPercent,
                                  HoneyRange temperatureC, Working* working = nullptr);

/// By what the rate grows when the honey gets warmer: η(before) / η(after). Refused as
/// honeyViscosity.
Result<double> warmerFactor(double waterPercent, double fromC, double toC);

/// How warm the honey must be to pass so much, °C, for the middle of the water range and from the
/// wettest to the driest. Honey comes no colder than it is published for: what 10 °C passes already
/// answers 10 °C. Refused where even the driest at 70 °C passes less (OutOfRange,
/// "strain_kg_per_h", "high" what it passes), and as strainerFlow. Whether so warm is wise is the
/// caller's to say: combs fail from 38 °C, and honey suffers.
struct StrainerWarmth {
    double temperatureC = 0.0;
    double lowC = 0.0;   ///< were it as wet as it may be
    double highC = 0.0;  ///< were it as dry
};
Result<StrainerWarmth> warmthToStrain(const StrainerRate& seen, HoneyRange waterPercent,
                                      double wantedKgPerH);

}  // namespace combwright
