#include "core/actions/yard/hive_list.h"

#include <algorithm>
#include <charconv>

#include "core/actions/storeroom/marked_boxes.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"

namespace combwright {

Result<Hive> hiveStandingOn(const Read& file, Id<Hive> id, Day on, const std::string& field) {
    auto hive = file.find(id);
    if (!hive) return Refusal{Code::NotFound, field, {}};
    if (on < hive->since)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
    if (hive->closed && on >= *hive->closed)
        return Refusal{Code::Closed, field, {{"name", hive->mark.text()}}};
    return *std::move(hive);
}

Result<Hive> hiveMarked(const Read& file, const std::string& mark, std::optional<Id<Yard>> yard,
                        Day on, const std::string& field) {
    std::int64_t number = 0;
    if (mark.starts_with('#')) {
        const char* end = mark.data() + mark.size();
        if (std::from_chars(mark.data() + 1, end, number).ptr != end) number = 0;
        if (!file.holds(Hive::table, number))
            return Refusal{Code::NotFound, field, {{"name", mark}}};
    } else {
        NameQuery query{.name = mark, .on = on};
        if (yard) query.yard = nameOf(file, Yard::table, yard->number);
        const auto found = findNamed(file, Hive::table, query);
        if (!found) return Refusal{found.error().code, field, found.error().values};
        number = *found;
    }
    return hiveStandingOn(file, Id<Hive>{number}, on, field);
}

bool livedInOn(const Read& file, Id<Hive> hive, Day on) {
    return colonyLivingOn(file, hive, on).has_value();
}

Result<std::vector<Hive>> hivesListed(const Read& file, std::string_view text,
                                      std::optional<Id<Yard>> yard, Day on) {
    std::vector<Hive> hives;
    if (yard && !file.find(*yard)) return Refusal{Code::NotFound, "yard", {}};
    const auto marks = listedParts(text);
    for (const std::string& mark : marks) {
        auto hive = hiveMarked(file, mark, yard, on, "hives");
        if (!hive) return hive.error();
        const bool twice = std::any_of(hives.begin(), hives.end(),
                                       [&](const Hive& each) { return each.id == hive->id; });
        if (twice) return Refusal{Code::Duplicate, "hives", {{"name", mark}}};
        hives.push_back(*std::move(hive));
    }
    if (marks.empty() && yard)
        for (Hive& each : hivesEver(file, *yard)) {
            const bool stood = each.since <= on && (!each.closed || on < *each.closed);
            if (stood && livedInOn(file, each.id, on)) hives.push_back(std::move(each));
        }
    if (hives.empty()) return Refusal{Code::Missing, "hives", {}};
    return hives;
}

}  // namespace combwright
