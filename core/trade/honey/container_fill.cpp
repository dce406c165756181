#include "core/trade/honey/container_fill.h"

#include <cmath>

#include "core/trade/honey/density.h"
#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

// A vessel that is exactly full must not be a billionth too small.
constexpr double fillRounding = 1e-9;

Result<void> refuseFill(double amount, const char* field, double headroomShare) {
    if (!(amount >= 0.0)) return Refusal{Code::Negative, field};
    if (!std::isfinite(amount)) return Refusal{Code::OutOfRange, field};
    if (!(headroomShare >= 0.0 && headroomShare <= 1.0))
        return outOfRange("headroom_share", headroomShare, 0.0, 1.0);
    return {};
}

}  // namespace

Result<double> massHeld(double volumeMl, double waterPercent, double temperatureC,
                        double headroomShare, Working* working) {
    if (auto good = refuseFill(volumeMl, "volume_ml", headroomShare); !good) return good.error();
    const auto density = honeyDensity(waterPercent, temperatureC, working);
    if (!density) return density.error();
    const double grams = volumeMl * (1.0 - headroomShare) * *density;
    note(working, "volume_ml", volumeMl, "ml");
    note(working, "headroom_share", headroomShare, "");
    note(working, "vessel_holds", grams, "g", "volume · (1 − headroom) · kg/L");
    return grams;
}

Result<double> volumeFor(double netG, double waterPercent, double temperatureC,
                         double headroomShare, Working* working) {
    if (auto good = refuseFill(netG, "net_g", headroomShare); !good) return good.error();
    if (!(headroomShare < 1.0)) return outOfRange("headroom_share", headroomShare, 0.0, 1.0);
    const auto density = honeyDensity(waterPercent, temperatureC, working);
    if (!density) return density.error();
    const double ml = netG / *density / (1.0 - headroomShare);
    note(working, "net_g", netG, "g");
    note(working, "headroom_share", headroomShare, "");
    note(working, "volume_ml", ml, "ml", "net ÷ kg/L ÷ (1 − headroom)");
    return ml;
}

Result<bool> fitsInto(double netG, double volumeMl, double waterPercent, double temperatureC,
                      double headroomShare) {
    if (auto good = refuseFill(netG, "net_g", headroomShare); !good) return good.error();
    const auto held = massHeld(volumeMl, waterPercent, temperatureC, headroomShare);
    if (!held) return held.error();
    return netG <= *held * (1.0 + fillRounding);
}

}  // namespace combwright
