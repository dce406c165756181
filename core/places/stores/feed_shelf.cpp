#include "core/places/stores/feed_shelf.h"

#include <algorithm>
#include <map>

#include "core/storage/queries/treatments.h"

namespace combwright {
namespace {

bool isSyrup(FeedKind kind) { return kind == FeedKind::Thick || kind == FeedKind::Thin; }

/// The kind on the shelf a feeding draws on.
template <class Rows>
auto drawnOn(Rows& rows, std::optional<FeedKind> kind) {
    auto row = kind ? rows.find(*kind) : rows.end();
    if (row == rows.end() && (!kind || isSyrup(*kind))) row = rows.find(FeedKind::Dry);
    return row;
}

/// The newest count of a kind; of one day the later one.
std::optional<FeedStock> newestCount(const std::vector<FeedStock>& stocks, FeedKind kind) {
    std::optional<FeedStock> newest;
    for (const FeedStock& each : stocks)
        if (each.kind == kind && each.counted && (!newest || each.on >= newest->on)) newest = each;
    return newest;
}

std::vector<FeedStock> stocksBy(const Read& file, Day on) {
    auto stocks = file.all<FeedStock>();
    std::erase_if(stocks, [on](const FeedStock& each) { return each.on > on; });
    std::stable_sort(stocks.begin(), stocks.end(),
                     [](const FeedStock& a, const FeedStock& b) { return a.on < b.on; });
    return stocks;
}

}  // namespace

std::vector<FeedShelfRow> feedShelf(const Read& file, Day on) {
    const auto stocks = stocksBy(file, on);
    std::map<FeedKind, FeedShelfRow> rows;
    std::map<FeedKind, FeedStock> counts;
    std::map<FeedKind, Day> first;
    for (const FeedStock& each : stocks) {
        first.emplace(each.kind, each.on);
        FeedShelfRow& row = rows[each.kind];
        row.kind = each.kind;
        if (each.pack) row.pack = each.pack;
    }
    for (auto& [kind, row] : rows)
        if (const auto count = newestCount(stocks, kind)) {
            counts.emplace(kind, *count);
            row.counted = count->on;
            row.startG = count->counted->middle().value_or(0);
        }
    for (const FeedStock& each : stocks) {
        if (!each.bought) continue;
        const auto count = counts.find(each.kind);
        const bool since =
            count == counts.end() || each.on > count->second.on ||
            (each.on == count->second.on && each.id.number > count->second.id.number);
        if (since) rows[each.kind].boughtG += each.bought->middle().value_or(0);
    }
    for (const Feeding& each : file.all<Feeding>()) {
        if (each.on > on || each.kind == FeedKind::Comb) continue;
        const auto row = drawnOn(rows, each.kind);
        if (row == rows.end()) continue;
        if (row->second.counted && each.on <= *row->second.counted) continue;
        // What was given before anything was written down of the shelf never lay on it.
        const auto begun = first.find(row->first);
        if (begun != first.end() && each.on < begun->second) continue;
        const auto given = each.given ? each.given->middle() : std::nullopt;
        if (given)
            row->second.givenG += *given;
        else
            ++row->second.givenUnknown;
    }
    std::vector<FeedShelfRow> list;
    for (auto& [kind, row] : rows) list.push_back(row);
    return list;
}

FeedOutlook feedOutlook(const Read& file, const std::vector<Hive>& hives,
                        std::optional<FeedKind> kind, const std::optional<Known<Mass>>& each,
                        const std::optional<Count>& packs, Day on) {
    FeedOutlook outlook;
    std::optional<double> eachG = each ? each->middle() : std::nullopt;
    if (!each && packs)
        if (const auto pack = packOf(file, kind.value_or(FeedKind::Dry), on))
            eachG = static_cast<double>(packs->value()) * static_cast<double>(pack->grams());
    if (eachG) outlook.takesG = *eachG * static_cast<double>(hives.size());
    if (kind != FeedKind::Comb) {
        std::map<FeedKind, FeedShelfRow> rows;
        for (const FeedShelfRow& row : feedShelf(file, on)) rows.emplace(row.kind, row);
        if (const auto row = drawnOn(rows, kind); row != rows.end()) outlook.shelf = row->second;
    }
    if (outlook.takesG && outlook.shelf)
        outlook.leftAfterG = outlook.shelf->leftG() - *outlook.takesG;
    for (const Hive& hive : hives)
        if (supersStood(file, hive.id, on) == true) outlook.supersOn.push_back(hive.mark.text());
    return outlook;
}

std::optional<Mass> packOf(const Read& file, FeedKind kind, Day on) {
    std::optional<Mass> pack;
    for (const FeedStock& each : stocksBy(file, on))
        if (each.kind == kind && each.pack) pack = each.pack;
    return pack;
}

}  // namespace combwright
