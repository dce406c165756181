#include "core/trade/storeroom/left_over_stores.h"

#include <algorithm>

namespace combwright {
namespace {

std::optional<WhyKeptBack> keptBack(const LeftOverStores& stores) {
    if (stores.everHeld) return WhyKeptBack::EverHeld;
    if (!stores.hive || !stores.yard || !stores.cameOff) return WhyKeptBack::OriginNotKnown;
    if (!stores.cleanLook || *stores.cleanLook < *stores.cameOff)
        return WhyKeptBack::NoCleanLookSince;
    return std::nullopt;
}

/// Own hive, own yard, elsewhere.
int nearness(const LeftOverStores& stores, const HungryHive& hive) {
    if (hive.yard != *stores.yard) return 2;
    return hive.hive == *stores.hive ? 0 : 1;
}

}  // namespace

std::string_view key(WhyKeptBack why) {
    switch (why) {
        case WhyKeptBack::EverHeld:
            return "ever_held";
        case WhyKeptBack::OriginNotKnown:
            return "origin_not_known";
        case WhyKeptBack::NoCleanLookSince:
            return "no_clean_look_since";
        case WhyKeptBack::NoHiveForIt:
            return "no_hive_for_it";
    }
    return {};
}

StoresAnswer hivesFor(const LeftOverStores& stores, std::span<const HungryHive> hives) {
    StoresAnswer answer;
    answer.keptBack = keptBack(stores);
    if (answer.keptBack) return answer;
    for (std::size_t i = 0; i < hives.size(); ++i) {
        const HungryHive& hive = hives[i];
        if (hive.held || !hive.wanted) continue;
        if (stores.granulated && hive.yard != *stores.yard) continue;
        answer.hives.push_back(i);
    }
    std::stable_sort(answer.hives.begin(), answer.hives.end(), [&](std::size_t a, std::size_t b) {
        return nearness(stores, hives[a]) < nearness(stores, hives[b]);
    });
    if (answer.hives.empty()) {
        answer.keptBack = WhyKeptBack::NoHiveForIt;
        answer.melt = stores.granulated;
    }
    return answer;
}

}  // namespace combwright
