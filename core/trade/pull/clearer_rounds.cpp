#include "core/trade/pull/clearer_rounds.h"

#include <algorithm>

namespace combwright {
namespace {

using Hives = std::vector<std::size_t>;

/// Hives of one yard, most boxes first.
struct YardsHives {
    std::int64_t yard = 0;
    std::int64_t boxes = 0;
    Hives hives;
};

/// Yards with most boxes first.
std::vector<YardsHives> byYard(const std::vector<std::int64_t>& boxes,
                               const std::vector<std::int64_t>& yards) {
    std::vector<YardsHives> groups;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (boxes[i] < 1) continue;
        const std::int64_t yard = i < yards.size() ? yards[i] : 0;
        auto found = std::find_if(groups.begin(), groups.end(),
                                  [&](const YardsHives& each) { return each.yard == yard; });
        if (found == groups.end()) found = groups.insert(groups.end(), YardsHives{yard, 0, {}});
        found->boxes += boxes[i];
        found->hives.push_back(i);
    }
    for (YardsHives& each : groups)
        std::stable_sort(each.hives.begin(), each.hives.end(),
                         [&](std::size_t a, std::size_t b) { return boxes[a] > boxes[b]; });
    std::stable_sort(groups.begin(), groups.end(),
                     [](const YardsHives& a, const YardsHives& b) { return a.boxes > b.boxes; });
    return groups;
}

/// One yard after the other, cut where the boards end: the fewest rounds there can be.
std::vector<Hives> cutByBoards(const std::vector<YardsHives>& groups, std::size_t now,
                               std::size_t boards) {
    std::vector<Hives> rounds;
    std::size_t room = now;
    rounds.emplace_back();
    for (const YardsHives& group : groups)
        for (const std::size_t hive : group.hives) {
            if (rounds.back().size() == room) {
                rounds.emplace_back();
                room = boards;
            }
            rounds.back().push_back(hive);
        }
    return rounds;
}

/// Whole yards as they fit; only one larger than all boards is parted.
std::vector<Hives> wholeYards(std::vector<YardsHives> groups, std::size_t now, std::size_t boards) {
    std::vector<Hives> rounds;
    std::size_t room = now;
    while (!groups.empty()) {
        rounds.emplace_back();
        Hives& round = rounds.back();
        for (auto at = groups.begin(); at != groups.end();) {
            if (round.size() + at->hives.size() > room) {
                ++at;
                continue;
            }
            round.insert(round.end(), at->hives.begin(), at->hives.end());
            at = groups.erase(at);
        }
        YardsHives* const first = groups.empty() ? nullptr : &groups.front();
        if (round.empty() && first && first->hives.size() > boards) {
            const auto end = first->hives.begin() + static_cast<std::ptrdiff_t>(room);
            round.assign(first->hives.begin(), end);
            first->hives.erase(first->hives.begin(), end);
        }
        room = boards;
    }
    return rounds;
}

}  // namespace

std::vector<std::vector<std::size_t>> clearerRounds(const std::vector<std::int64_t>& boxes,
                                                    std::int64_t now, std::int64_t boards,
                                                    const std::vector<std::int64_t>& yards) {
    if (boards < 1) return {};
    const auto groups = byYard(boxes, yards);
    const auto all = static_cast<std::size_t>(boards);
    const auto free = static_cast<std::size_t>(std::clamp<std::int64_t>(now, 0, boards));
    auto rounds = cutByBoards(groups, free, all);
    // A round more is two days more: then a yard is parted rather.
    if (auto whole = wholeYards(groups, free, all); whole.size() <= rounds.size())
        rounds = std::move(whole);
    for (Hives& round : rounds) std::sort(round.begin(), round.end());
    std::erase_if(rounds, [](const Hives& round) { return round.empty(); });
    return rounds;
}

}  // namespace combwright
