#include "core/actions/amend/amend_rules.h"
#include "core/actions/yard/feeds.h"
#include "core/actions/yard/hive_list.h"
#include "core/actions/yard/truck.h"
#include "core/actions/yard/weighings.h"

namespace combwright {
namespace {

/// On another day the hive must have stood too.
Result<void> demandStoodThen(const Read& file, Id<Hive> hive, Day on) {
    const auto stand = hiveStandingOn(file, hive, on, "on_day");
    if (stand) return {};
    return Refusal{stand.error().code, "on_day", stand.error().values};
}

Result<void> settleWeighing(Write& file, const HiveWeighing& before, HiveWeighing& after) {
    if (auto ok = demandWeighing(after); !ok) return ok;
    if (after.on == before.on) return {};
    if (auto stood = demandStoodThen(file, after.hive, after.on); !stood) return stood;
    if (file.first<HiveWeighing>({is("hive", after.hive), is("on_day", after.on)}))
        return Refusal{Code::Taken, "on_day", {{"name", isoText(after.on)}}};
    return {};
}

/// What a line of the sheet fed stands in that line; it is typed again there.
Result<void> settleFeeding(Write& file, const Feeding& before, Feeding& after) {
    if (after.inspection && after.given != before.given)
        return Refusal{Code::OtherAction, "given_g", {{"action", "write-line"}}};
    if (after.inspection && after.on != before.on)
        return Refusal{Code::OtherAction, "on_day", {{"action", "write-line"}}};
    if (auto ok = demandFeeding(after); !ok) return ok;
    return after.on == before.on ? Result<void>() : demandStoodThen(file, after.hive, after.on);
}

Result<void> settleFeedStock(Write&, const FeedStock&, FeedStock& after) {
    return demandStock(after);
}

Result<void> settleTruckItem(Write& file, const TruckItem&, TruckItem& after) {
    return demandTruckItem(file, after);
}

}  // namespace

std::vector<AmendType> feedAmends() {
    return {
        amends<HiveWeighing>({{"hive", ""}}, &settleWeighing),
        amends<Feeding>({{"hive", ""}, {"inspection", ""}}, &settleFeeding),
        amends<FeedStock>({}, &settleFeedStock),
        amends<TruckItem>({}, &settleTruckItem),
    };
}

}  // namespace combwright
