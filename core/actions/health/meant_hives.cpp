#include "core/actions/health/meant_hives.h"

#include <algorithm>
#include <charconv>

#include "core/actions/storeroom/marked_boxes.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/treatments.h"

namespace combwright {
namespace {

Result<Hive> hiveMeant(const Read& file, const std::optional<Yard>& yard, const std::string& mark,
                       Day on) {
    std::int64_t number = 0;
    if (mark.starts_with('#')) {
        const char* end = mark.data() + mark.size();
        if (std::from_chars(mark.data() + 1, end, number).ptr != end) number = 0;
    } else {
        NameQuery query{.name = mark, .on = on};
        if (yard) query.yard = yard->name.text();
        const auto found = findNamed(file, Hive::table, query);
        if (!found) return Refusal{found.error().code, "hives", found.error().values};
        number = *found;
    }
    auto hive = file.find(Id<Hive>{number});
    if (!hive) return Refusal{Code::NotFound, "hives", {{"name", mark}}};
    return *std::move(hive);
}

}  // namespace

Result<void> demandStands(const Hive& hive, Day on, const char* field, const char* dayField) {
    if (on < hive.since)
        return Refusal{Code::BeforeItBegan,
                       dayField,
                       {{"name", hive.mark.text()}, {"since", isoText(hive.since)}}};
    if (hive.closed && *hive.closed <= on)
        return Refusal{Code::Closed, field, {{"name", hive.mark.text()}}};
    return {};
}

Result<std::vector<Hive>> meantHives(const Read& file, std::optional<Id<Yard>> yardId,
                                     std::string_view text, Day on) {
    const auto yard = file.find(yardId);
    if (yardId && !yard) return Refusal{Code::NotFound, "yard", {}};
    const auto parts = listedParts(text);
    const bool all = parts.empty() || (parts.size() == 1 && parts.front() == "all");
    std::vector<Hive> hives;
    if (all) {
        if (!yard) return Refusal{Code::Missing, "hives", {}};
        // Those that stood there that day; one closed or moved since among them.
        for (Hive& hive : hivesOn(file, yard->id, on))
            if (livedIn(file, hive.id, on).value_or(true)) hives.push_back(std::move(hive));
        if (hives.empty()) return Refusal{Code::Missing, "hives", {}};
        return hives;
    }
    for (const std::string& part : parts) {
        auto hive = hiveMeant(file, yard, part, on);
        if (!hive) return hive.error();
        if (auto stands = demandStands(*hive, on, "hives", "on"); !stands) return stands.error();
        if (std::any_of(hives.begin(), hives.end(),
                        [&](const Hive& each) { return each.id == hive->id; }))
            return Refusal{Code::Duplicate, "hives", {{"name", part}}};
        hives.push_back(*std::move(hive));
    }
    return hives;
}

}  // namespace combwright
