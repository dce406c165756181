#include "core/places/gate_minder.h"

#include <algorithm>
#include <set>

#include "core/model/storeroom/equipment.h"
#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

/// Whether the run's drum was run empty behind its last load up to that one of the file.
bool ranEmpty(const Read& file, Id<Extraction> run, std::int64_t loadsSpun) {
    for (const GateOpening& each : file.where<GateOpening>({is("extraction", run)}))
        if (each.runEmpty.value_or(false) && each.afterLoad.value() >= loadsSpun) return true;
    return false;
}

}  // namespace

double bucketHoldsG(const Read& file, Day on) {
    double most = 0;
    for (const Equipment& each : file.where<Equipment>({is("item", EquipmentItem::Bucket)}))
        if (each.capacity && each.since <= on)
            most = std::max(most, static_cast<double>(each.capacity->grams()));
    if (most > 0) return most;
    return constantOr(file, "bucket_g", {}, on, 13600) *
           (1 + constantOr(file, "bucket_room_share", {}, on, 0.05));
}

std::optional<Id<Extraction>> lotInDrumBefore(const Read& file, const SpinLoad& load) {
    std::optional<SpinLoad> last;
    std::set<std::pair<std::int64_t, std::int64_t>> met;
    std::optional<Id<Extraction>> found;
    for (SpinLoad& each : file.where<SpinLoad>({is("on_day", load.on)})) {
        if (each.id > load.id) break;
        const bool otherDrum =
            last && last->machine && each.machine && *last->machine != *each.machine;
        found.reset();
        if (last && last->extraction != each.extraction && !otherDrum &&
            !ranEmpty(file, last->extraction, last->number.value())) {
            const auto pair = std::minmax(last->extraction.number, each.extraction.number);
            if (met.insert(pair).second) found = last->extraction;
        }
        last = std::move(each);
    }
    return found;
}

}  // namespace combwright
