#include "core/places/feed_shelf.h"

#include <algorithm>
#include <map>

namespace combwright {
namespace {

bool isSyrup(FeedKind kind) { return kind == FeedKind::Thick || kind == FeedKind::Thin; }

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
        auto row = each.kind ? rows.find(*each.kind) : rows.end();
        if (row == rows.end() && (!each.kind || isSyrup(*each.kind)))
            row = rows.find(FeedKind::Dry);
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

std::optional<Mass> packOf(const Read& file, FeedKind kind, Day on) {
    std::optional<Mass> pack;
    for (const FeedStock& each : stocksBy(file, on))
        if (each.kind == kind && each.pack) pack = each.pack;
    return pack;
}

}  // namespace combwright
