#include "core/trade/honey/drying.h"

#include <algorithm>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr const char* dryingSource = "mass balance, exact";

Result<void> refuseDrying(double massG, double waterPercent, double thenPercent,
                          const char* thenField) {
    if (!(massG >= 0.0)) return Refusal{Code::Negative, "mass_g"};
    if (!std::isfinite(massG)) return Refusal{Code::OutOfRange, "mass_g"};
    if (!(waterPercent >= 0.0 && waterPercent <= 100.0))
        return outOfRange("water_percent", waterPercent, 0.0, 100.0);
    if (!(thenPercent >= 0.0 && thenPercent <= 100.0))
        return outOfRange(thenField, thenPercent, 0.0, 100.0);
    return {};
}

}  // namespace

Result<double> waterOff(double massG, double waterPercent, double targetPercent, Working* working) {
    if (auto good = refuseDrying(massG, waterPercent, targetPercent, "target_percent"); !good)
        return good.error();
    note(working, "honey", massG, "g");
    note(working, "water_percent", waterPercent, "%");
    note(working, "target_percent", targetPercent, "%");
    if (waterPercent <= targetPercent) {
        note(working, "water_off", 0.0, "g", "dry enough");
        return 0.0;
    }
    const double off = massG * ((waterPercent - targetPercent) / (100.0 - targetPercent));
    note(working, "water_off", off, "g", "honey · (water − target) ÷ (100 − target)", dryingSource);
    return off;
}

Result<double> waterToAdd(double massG, double waterPercent, double targetPercent,
                          Working* working) {
    if (auto good = refuseDrying(massG, waterPercent, targetPercent, "target_percent"); !good)
        return good.error();
    if (targetPercent <= waterPercent) return 0.0;
    if (!(targetPercent < 100.0))
        return outOfRange("target_percent", targetPercent, waterPercent, 100.0);
    const double added = massG * ((targetPercent - waterPercent) / (100.0 - targetPercent));
    note(working, "honey", massG, "g");
    note(working, "water_percent", waterPercent, "%");
    note(working, "target_percent", targetPercent, "%");
    note(working, "water_added", added, "g", "honey · (target − water) ÷ (100 − target)",
         dryingSource);
    return added;
}

Result<double> massAtWater(double massG, double waterPercent, double thenPercent,
                           Working* working) {
    if (auto good = refuseDrying(massG, waterPercent, thenPercent, "then_percent"); !good)
        return good.error();
    if (!(thenPercent < 100.0)) return outOfRange("then_percent", thenPercent, 0.0, 100.0);
    const double then = massG * ((100.0 - waterPercent) / (100.0 - thenPercent));
    note(working, "honey", massG, "g");
    note(working, "water_percent", waterPercent, "%");
    note(working, "water_then", thenPercent, "%");
    note(working, "mass_then", then, "g", "honey · (100 − water) ÷ (100 − water then)",
         dryingSource);
    return then;
}

Result<double> waterAtMass(double massG, double waterPercent, double thenG, Working* working) {
    if (auto good = refuseDrying(massG, waterPercent, 0.0, "then_g"); !good) return good.error();
    const double solids = massG * ((100.0 - waterPercent) / 100.0);
    if (!(thenG > 0.0) || !std::isfinite(thenG) || thenG < solids)
        return outOfRange("then_g", thenG, solids, massG);
    const double then = 100.0 * std::max(0.0, 1.0 - solids / thenG);
    note(working, "honey", massG, "g");
    note(working, "water_percent", waterPercent, "%");
    note(working, "mass_then", thenG, "g");
    note(working, "water_then", then, "%", "100 − (100 − water) · honey ÷ mass then", dryingSource);
    return then;
}

}  // namespace combwright
