#include "core/places/stores/stores_past.h"

#include <cmath>
#include <map>
#include <set>

#include "core/places/stores/hive_scale.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

constexpr int leastApart = 7;
constexpr int mostApart = 45;

struct MonthPairs {
    std::vector<double> changes;
    std::set<std::int64_t> hives;
    std::set<int> years;
};

void addPairs(const Read& file, const Hive& hive, Day before, std::map<unsigned, MonthPairs>& all) {
    const auto left = boxesLeftOn(file, hive.id, hive.since);
    const auto readings = scaleReadings(file, hive, hive.since, before);
    const ScaleReading* earlier = nullptr;
    for (const ScaleReading& each : readings) {
        if (!each.netG || *each.netG < 0) continue;
        const ScaleReading* from = earlier;
        if (!from || (each.weighing.on - from->weighing.on).count() >= leastApart) earlier = &each;
        if (!from) continue;
        const auto apart = (each.weighing.on - from->weighing.on).count();
        if (apart < leastApart || apart > mostApart) continue;
        if (boxLeftBetween(left, from->weighing.on, each.weighing.on)) continue;
        const auto fed = fedBetween(file, hive, from->weighing.on, each.weighing.on);
        const auto use = useFromWeighings(
            {{from->weighing.on, *from->netG}, {each.weighing.on, *each.netG}}, fed.storesG);
        if (fed.unknown > 0 || !use) continue;
        const Day middle = from->weighing.on + days(apart / 2);
        MonthPairs& month = all[monthOf(middle)];
        month.changes.push_back(-*use);
        month.hives.insert(hive.id.number);
        month.years.insert(yearOf(middle));
    }
}

}  // namespace

std::vector<MonthChange> pastChanges(const Read& file, const std::vector<Id<Yard>>& yards, Day on) {
    std::map<unsigned, MonthPairs> all;
    const auto newYear = makeDay(yearOf(on), 1, 1);
    for (const Id<Yard> yard : yards)
        for (const Hive& hive : hivesEver(file, yard))
            addPairs(file, hive, *newYear - days(1), all);
    std::vector<MonthChange> months;
    for (const auto& [month, pairs] : all) {
        const auto n = static_cast<double>(pairs.changes.size());
        double sum = 0;
        for (const double each : pairs.changes) sum += each;
        MonthChange change{month,
                           static_cast<int>(pairs.changes.size()),
                           static_cast<int>(pairs.hives.size()),
                           static_cast<int>(pairs.years.size()),
                           sum / n,
                           std::nullopt};
        if (pairs.changes.size() > 1) {
            double squares = 0;
            for (const double each : pairs.changes)
                squares += (each - change.gPerDay) * (each - change.gPerDay);
            change.spreadG = std::sqrt(squares / (n - 1));
        }
        months.push_back(change);
    }
    return months;
}

}  // namespace combwright
