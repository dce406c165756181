#include "core/trade/honey/warming.h"

#include <algorithm>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double coldestWarmedC = -40.0;
constexpr double warmestWarmedC = 100.0;

Result<void> refuseWarmC(double celsius, const char* field) {
    if (celsius >= coldestWarmedC && celsius <= warmestWarmedC) return {};
    return outOfRange(field, celsius, coldestWarmedC, warmestWarmedC);
}

}  // namespace

Result<double> warmingKj(double massG, double fromC, double toC, Working* working) {
    if (!(massG >= 0.0)) return Refusal{Code::Negative, "mass_g"};
    if (!std::isfinite(massG)) return Refusal{Code::OutOfRange, "mass_g"};
    if (auto good = refuseWarmC(fromC, "from_c"); !good) return good.error();
    if (auto good = refuseWarmC(toC, "to_c"); !good) return good.error();
    const double kj = massG / 1000.0 * honeyKjPerKgK * std::max(0.0, toC - fromC);
    note(working, "honey", massG, "g");
    note(working, "warm_from", fromC, "°C");
    note(working, "warm_to", toC, "°C");
    note(working, "warming_kj", kj, "kJ", "kg · 2.26 · (to − from)",
         "specific heat of honey at 17 % water, printed in 1 source");
    return kj;
}

Result<double> warmingHours(double massG, double fromC, double toC, double watt, Working* working) {
    if (!(watt > 0.0) || !std::isfinite(watt))
        return Refusal{Code::OutOfRange, "watt", {{"low", "0"}}};
    const auto kj = warmingKj(massG, fromC, toC, working);
    if (!kj) return kj.error();
    const double hours = *kj * 1000.0 / watt / 3600.0;
    note(working, "heater_watt", watt, "W");
    note(working, "warming_hours", hours, "h", "energy ÷ power; losses not counted");
    return hours;
}

}  // namespace combwright
