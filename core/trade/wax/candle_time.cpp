#include "core/trade/wax/candle_time.h"

#include <algorithm>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double votiveFromMm = 38.1;
constexpr double pillarFromMm = 63.5;
constexpr double widestTimedMm = 500;

}  // namespace

std::string_view key(CandleSize size) {
    switch (size) {
        case CandleSize::Slender:
            return "slender";
        case CandleSize::Votive:
            return "votive";
        case CandleSize::Pillar:
            return "pillar";
    }
    return {};
}

Result<CandleSize> candleSize(double diameterMm) {
    if (diameterMm < 0) return Refusal{Code::Negative, "diameter_mm"};
    if (!(diameterMm > 0 && diameterMm <= widestTimedMm))
        return outOfRange("diameter_mm", diameterMm, 0, widestTimedMm);
    if (diameterMm < votiveFromMm) return CandleSize::Slender;
    return diameterMm < pillarFromMm ? CandleSize::Votive : CandleSize::Pillar;
}

Result<Between> setHours(double diameterMm) {
    const auto size = candleSize(diameterMm);
    if (!size) return size.error();
    switch (*size) {
        case CandleSize::Slender:
            return Between{2, 2, 2};
        case CandleSize::Votive:
            return Between{2, 3, 4};
        case CandleSize::Pillar:
            break;
    }
    return Between{12, 12, 12};
}

Result<std::int64_t> cyclesIn(double hours, double settingHours) {
    if (hours < 0) return Refusal{Code::Negative, "hours"};
    if (!(hours <= 24)) return outOfRange("hours", hours, 0, 24);
    if (!(settingHours > 0) || !std::isfinite(settingHours))
        return Refusal{Code::OutOfRange, "set_hours", {{"low", "0"}}};
    const double fills = std::min(std::floor(hours / settingHours + 1e-9), 1000.0);
    return std::max<std::int64_t>(1, static_cast<std::int64_t>(fills));
}

Result<Between> burnGPerHour(double diameterMm) {
    const auto size = candleSize(diameterMm);
    if (!size) return size.error();
    switch (*size) {
        case CandleSize::Slender:
            return Between{4.8, 6, 7.2};
        case CandleSize::Votive:
            return Between{4.1, 4.2, 4.4};
        case CandleSize::Pillar:
            break;
    }
    return Between{5.9, 7.4, 8.9};
}

Result<Between> burnHours(double massG, double diameterMm, Working* working) {
    const auto rate = burnGPerHour(diameterMm);
    if (!rate) return rate.error();
    if (massG < 0) return Refusal{Code::Negative, "mass_g"};
    if (!(massG > 0) || !std::isfinite(massG))
        return Refusal{Code::OutOfRange, "mass_g", {{"low", "0"}}};
    const Between hours{massG / rate->high, massG / rate->likely, massG / rate->low};
    note(working, "candle_g", massG, "g");
    note(working, "burn_g_per_h", rate->likely, "g/h", "by diameter",
         "computed from burning times printed in 3 sources");
    note(working, "burn_hours", hours.likely, "h", "candle ÷ g/h");
    return hours;
}

}  // namespace combwright
