#include "core/trade/storeroom/kit_needs.h"

#include <algorithm>
#include <optional>
#include <string>

#include "core/trade/honey/jars.h"
#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double mostKit = 9e15;

std::optional<Refusal> refuseKit(std::int64_t colonies, std::int64_t splits, const KitNeed& kit) {
    if (colonies < 0) return Refusal{Code::Negative, "colonies"};
    if (splits < 0) return Refusal{Code::Negative, "splits"};
    if (!(kit.perColony >= 0)) return Refusal{Code::Negative, "per_colony"};
    if (!(kit.perSplit >= 0)) return Refusal{Code::Negative, "per_split"};
    if (!(kit.spareShare >= 0 && kit.spareShare <= 1))
        return outOfRange("spare_share", kit.spareShare, 0, 1);
    if (kit.usable < 0) return Refusal{Code::Negative, "usable"};
    if (kit.inRepair < 0) return Refusal{Code::Negative, "in_repair"};
    return std::nullopt;
}

}  // namespace

Result<KitAnswer> kitNeeds(std::int64_t colonies, std::int64_t splits, const KitNeed& kit,
                           Working* working) {
    if (const auto refused = refuseKit(colonies, splits, kit)) return *refused;
    const double wanted =
        static_cast<double>(colonies) * kit.perColony + static_cast<double>(splits) * kit.perSplit;
    if (wanted * 2 > mostKit)
        return Refusal{Code::TooMany, "need", {{"most", std::to_string(std::int64_t(mostKit))}}};
    const std::int64_t spare = neededFor(wanted * kit.spareShare, 1);
    KitAnswer answer;
    answer.need = neededFor(wanted, 1) + spare;
    answer.missing = std::max<std::int64_t>(0, answer.need - kit.usable);
    answer.missingAfterRepair = std::max<std::int64_t>(0, answer.missing - kit.inRepair);
    note(working, "kit_wanted", wanted, "", "colonies · each + splits · each");
    note(working, "kit_spare", static_cast<double>(spare), "", "⌈wanted · spare share⌉");
    note(working, "kit_need", static_cast<double>(answer.need), "", "⌈wanted⌉ + spare");
    note(working, "kit_usable", static_cast<double>(kit.usable), "");
    note(working, "kit_in_repair", static_cast<double>(kit.inRepair), "");
    note(working, "kit_short", static_cast<double>(answer.missing), "",
         "need − usable, not below 0");
    note(working, "kit_short_after_repair", static_cast<double>(answer.missingAfterRepair), "",
         "need − usable − in repair, not below 0");
    return answer;
}

std::int64_t packsFor(std::int64_t pieces, std::int64_t packSize) {
    return pieces / packSize + (pieces % packSize != 0 ? 1 : 0);
}

}  // namespace combwright
