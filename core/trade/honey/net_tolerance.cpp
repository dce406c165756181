#include "core/trade/honey/net_tolerance.h"

#include <cmath>
#include <numeric>
#include <string>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

// A mean of 500 g summed in doubles is 500 g, and so is a step that fits.
constexpr double netRounding = 1e-9;
constexpr double tolerancePerGram = 10.0;  // per cents are rounded up to 0.1 g
constexpr double mostOunces = 1e6;

bool fitsNet(double netG) { return netG > 0.0 && std::isfinite(netG); }

}  // namespace

std::optional<double> tolerableDeficit(double netG, std::span<const ToleranceRow> rows) {
    for (const ToleranceRow& row : rows) {
        if (netG < row.fromG || netG > row.toG) continue;
        if (row.deficitG) return row.deficitG;
        if (!row.deficitPercent) continue;
        const double grams = netG * *row.deficitPercent / 100.0;
        return std::ceil(grams * tolerancePerGram - netRounding) / tolerancePerGram;
    }
    return std::nullopt;
}

Result<NetCheck> checkNet(double netG, std::span<const double> weighedG,
                          std::span<const ToleranceRow> rows, Working* working) {
    if (!fitsNet(netG)) return Refusal{Code::OutOfRange, "net_g", {{"low", "0"}}};
    if (weighedG.empty()) return Refusal{Code::Missing, "weighed"};
    for (std::size_t i = 0; i < weighedG.size(); ++i)
        if (!(weighedG[i] >= 0.0))
            return Refusal{Code::Negative, "weighed[" + std::to_string(i) + "]"};

    NetCheck check;
    check.meanG = std::accumulate(weighedG.begin(), weighedG.end(), 0.0) /
                  static_cast<double>(weighedG.size());
    check.meanHolds = check.meanG >= netG * (1.0 - netRounding);
    check.deficitG = tolerableDeficit(netG, rows);
    note(working, "net_g", netG, "g");
    note(working, "jars_weighed", static_cast<double>(weighedG.size()), "");
    note(working, "mean_g", check.meanG, "g", "Σ ÷ jars");
    if (!check.deficitG) return check;
    for (const double each : weighedG) {
        const double lacks = netG - each;
        if (lacks > 2.0 * *check.deficitG + netRounding)
            ++check.farShortJars;
        else if (lacks > *check.deficitG + netRounding)
            ++check.shortJars;
    }
    check.shortShare = static_cast<double>(check.shortJars + check.farShortJars) /
                       static_cast<double>(weighedG.size());
    note(working, "tolerable_deficit_g", *check.deficitG, "g", "row(table, net)");
    note(working, "short_jars", static_cast<double>(check.shortJars + check.farShortJars), "",
         "lack more than that");
    return check;
}

Result<double> leastToShow(double netG, double scaleStepG) {
    if (!fitsNet(netG)) return Refusal{Code::OutOfRange, "net_g", {{"low", "0"}}};
    if (!fitsNet(scaleStepG)) return Refusal{Code::OutOfRange, "scale_step_g", {{"low", "0"}}};
    const double steps = netG / scaleStepG + 0.5;
    return std::ceil(steps - netRounding) * scaleStepG;
}

Result<std::int64_t> declaredGrams(double ounces) {
    if (!(ounces > 0.0 && ounces <= mostOunces))
        return outOfRange("net_oz", ounces, 0.0, mostOunces);
    return std::llround(ounces * gramsPerOunce);
}

}  // namespace combwright
