#include "core/trade/colony/hive_weight.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace combwright {

Result<double> storesFromWeighing(double left_g, double right_g, const HiveTare& tare,
                                  Working* working) {
    const std::pair<std::string_view, double> masses[] = {{"left_g", left_g},
                                                          {"right_g", right_g},
                                                          {"wood_g", tare.wood_g},
                                                          {"frames_g", tare.frames_g},
                                                          {"bees_g", tare.bees_g}};
    for (const auto& [name, mass] : masses)
        if (!(mass >= 0)) return Refusal{Code::Negative, std::string(name), {}};
    const double stores_g = left_g + right_g - tare.wood_g - tare.frames_g - tare.bees_g;
    note(working, "hive_gross_g", left_g + right_g, "g", "left + right");
    note(working, "hive_wood_g", tare.wood_g, "g");
    note(working, "hive_frames_g", tare.frames_g, "g");
    note(working, "hive_bees_g", tare.bees_g, "g");
    note(working, "stores_g", stores_g, "g", "gross − wood − frames − bees");
    return stores_g;
}

double massOfBees(double bees) { return 0.12 * bees; }

std::optional<double> useFromWeighings(const std::vector<WeighedOn>& weighings, double added_g) {
    if (weighings.empty()) return std::nullopt;
    const auto [first, last] =
        std::minmax_element(weighings.begin(), weighings.end(),
                            [](const auto& a, const auto& b) { return a.on < b.on; });
    if (first->on == last->on) return std::nullopt;
    return (first->mass_g + added_g - last->mass_g) /
           static_cast<double>((last->on - first->on).count());
}

double winterNeedByBees(double bees) { return bees * 0.0022 * 453.59237; }

}  // namespace combwright
