#include "core/trade/pull/clearer_rounds.h"

#include <algorithm>

namespace combwright {

std::vector<std::vector<std::size_t>> clearerRounds(const std::vector<std::int64_t>& boxes,
                                                    std::int64_t now, std::int64_t boards) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < boxes.size(); ++i)
        if (boxes[i] > 0) order.push_back(i);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return boxes[a] > boxes[b]; });
    std::vector<std::vector<std::size_t>> rounds;
    std::size_t at = 0;
    const auto next = [&](std::int64_t free) {
        const std::size_t end =
            std::min(order.size(), at + static_cast<std::size_t>(std::max<std::int64_t>(0, free)));
        std::vector<std::size_t> round(order.begin() + static_cast<std::ptrdiff_t>(at),
                                       order.begin() + static_cast<std::ptrdiff_t>(end));
        std::sort(round.begin(), round.end());
        at = end;
        if (!round.empty()) rounds.push_back(std::move(round));
    };
    if (boards < 1) return rounds;
    next(std::min(now, boards));
    while (at < order.size()) next(boards);
    return rounds;
}

}  // namespace combwright
