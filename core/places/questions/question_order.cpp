#include "core/places/questions/question_order.h"

#include <algorithm>
#include <optional>
#include <tuple>
#include <utility>

#include "core/model/health/medicine.h"
#include "core/model/yard/visit.h"
#include "core/model/yard/weighing.h"

namespace combwright {
namespace {

template <class Record>
std::optional<Id<Hive>> hiveOfRow(const Read& file, const RowChange& row) {
    if (row.table != Record::table) return std::nullopt;
    const auto record = file.find(Id<Record>{row.id});
    return record ? std::optional(record->hive) : std::nullopt;
}

std::optional<Id<Hive>> walkedHive(const Read& file, const RowChange& row) {
    for (const auto& found : {hiveOfRow<Treatment>(file, row), hiveOfRow<Feeding>(file, row),
                              hiveOfRow<Finding>(file, row), hiveOfRow<Inspection>(file, row),
                              hiveOfRow<HiveWeighing>(file, row)})
        if (found) return found;
    return std::nullopt;
}

}  // namespace

std::vector<RowChange> inWalkingOrder(const Read& file, const std::vector<RowChange>& rows) {
    using Place = std::tuple<std::int64_t, std::int64_t, std::int64_t>;
    std::vector<RowChange> ordered = rows;
    for (std::size_t from = 0; from < rows.size();) {
        std::size_t to = from;
        std::vector<std::pair<Place, std::size_t>> walked;
        for (; to < rows.size() && rows[to].table == rows[from].table; ++to) {
            const auto id = walkedHive(file, rows[to]);
            const auto hive = id ? file.find(*id) : std::nullopt;
            const auto yard = hive ? file.find(hive->yard) : std::nullopt;
            if (!yard) break;
            walked.emplace_back(
                Place{yard->walkOrder.value(), hive->standOrder.value(), hive->id.number}, to);
        }
        std::stable_sort(walked.begin(), walked.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        for (std::size_t n = 0; n < walked.size(); ++n) ordered[from + n] = rows[walked[n].second];
        from = std::max(to, from + 1);
    }
    return ordered;
}

}  // namespace combwright
