#include "core/trade/honey/viscosity.h"

#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

// Vogel, Fulcher and Tammann's form; one per cent of water acts like 3.5 degrees.
constexpr double viscosityAtInfinity = -7.37;
constexpr double viscositySlope = 720.0;
constexpr double viscosityZero = 52.0;
constexpr double degreesPerPercent = 3.5;
constexpr double ordinaryWater = 17.0;

}  // namespace

Result<double> honeyViscosity(double waterPercent, double temperatureC, Working* working) {
    if (!(waterPercent >= driestViscosityPercent && waterPercent <= wettestViscosityPercent))
        return outOfRange("water_percent", waterPercent, driestViscosityPercent,
                          wettestViscosityPercent);
    if (!(temperatureC >= coldestViscosityC && temperatureC <= warmestViscosityC))
        return outOfRange("temperature_c", temperatureC, coldestViscosityC, warmestViscosityC);
    const double as = temperatureC + degreesPerPercent * (waterPercent - ordinaryWater);
    const double viscosity = std::exp(viscosityAtInfinity + viscositySlope / (as + viscosityZero));
    note(working, "water_percent", waterPercent, "%");
    note(working, "temperature_c", temperatureC, "°C");
    note(working, "pa_s", viscosity, "Pa·s", "exp(−7.37 + 720 ÷ (t + 3.5 · (water − 17) + 52))",
         "computed from the table of White 1975 and Krell 1996");
    return viscosity;
}

double temperatureOfViscosity(double waterPercent, double pascalSeconds) {
    const double as =
        viscositySlope / (std::log(pascalSeconds) - viscosityAtInfinity) - viscosityZero;
    return as - degreesPerPercent * (waterPercent - ordinaryWater);
}

}  // namespace combwright
