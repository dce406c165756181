// What a litre of honey weighs: buckets, jars and tanks are bought by volume and filled by mass.
#pragma once

#include <array>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/honey/published_table.h"

namespace combwright {

/// Water in per cent against kg/L at 20 °C: White 1975 in Crane (ed.), from specific gravity 20/20
/// times 0.998203. The row of 17 % is printed in two sources, that of 18 % in one, the others are
/// from memory and agree within 0.2 % with sucrose syrup of the same refractive index.
inline constexpr std::array<TablePoint, 9> honeyDensityTable{{{13.0, 1.4431},
                                                              {14.0, 1.4378},
                                                              {15.0, 1.4324},
                                                              {16.0, 1.4269},
                                                              {17.0, 1.4211},
                                                              {18.0, 1.4146},
                                                              {19.0, 1.4076},
                                                              {20.0, 1.4002},
                                                              {21.0, 1.3925}}};

/// The warmth the table is for.
inline constexpr double honeyDensityC = 20.0;

/// kg/L lost per degree above 20 °C. No published figure for honey; between sucrose syrup (0.0004,
/// computed) and what papers on honey imply (0.0005 to 0.0007, from memory).
inline constexpr double densityPerDegree = 0.0005;

/// Mass of a litre of liquid honey in kg, to about ± 0.2 %. Water 13 to 21 %, 10 to 50 °C; refused
/// outside (fields "water_percent", "temperature_c").
Result<double> honeyDensity(double waterPercent, double temperatureC, Working* working = nullptr);

}  // namespace combwright
