#include "core/trade/colony/loss.h"

#include <cstddef>
#include <string>

#include "core/trade/honey/published_table.h"

namespace combwright {

Result<ColonyLoss> colonyLoss(const std::vector<YardLoss>& yards, Working* working) {
    constexpr std::int64_t mostAtRisk = 1'000'000;
    if (yards.empty()) return Refusal{Code::Missing, "yards", {}};
    double dead = 0;
    double atRisk = 0;
    double shares = 0;
    for (std::size_t i = 0; i < yards.size(); ++i) {
        const YardLoss& yard = yards[i];
        const std::string path = "yards[" + std::to_string(i) + "].";
        if (yard.atRisk < 1 || yard.atRisk > mostAtRisk)
            return outOfRange(path + "at_risk", static_cast<double>(yard.atRisk), 1,
                              static_cast<double>(mostAtRisk));
        if (yard.dead < 0)
            return Refusal{Code::Negative, path + "dead", {{"value", std::to_string(yard.dead)}}};
        if (yard.dead > yard.atRisk)
            return Refusal{Code::TooMany, path + "dead", {{"most", std::to_string(yard.atRisk)}}};
        dead += static_cast<double>(yard.dead);
        atRisk += static_cast<double>(yard.atRisk);
        shares += static_cast<double>(yard.dead) / static_cast<double>(yard.atRisk);
    }
    const ColonyLoss loss{
        dead / atRisk, shares / static_cast<double>(yards.size()),
        countInterval(static_cast<std::int64_t>(dead), static_cast<std::int64_t>(atRisk))};
    note(working, "colonies_dead", dead, "");
    note(working, "colonies_at_risk", atRisk, "");
    note(working, "loss_low_share", loss.total.low, "", "P(X ≥ dead) = 0.025",
         "Clopper and Pearson 1934");
    note(working, "loss_high_share", loss.total.high, "", "P(X ≤ dead) = 0.025",
         "Clopper and Pearson 1934");
    note(working, "loss_total_share", loss.totalShare, "", "Σ dead ÷ Σ at risk");
    note(working, "loss_mean_share", loss.meanShare, "", "mean of dead ÷ at risk");
    return loss;
}

}  // namespace combwright
