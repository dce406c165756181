// Yards to choose a pull for, made up from a seed: what the second solver is asked about and what
// is timed are the same cases.
#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "core/trade/plan/pull_choice.h"

namespace combwright {

struct YardCase {
    std::vector<PullHive> hives;
    PullLimits limits;
};

inline double yardDraw(std::mt19937& random, int low, int high) {
    return low + static_cast<int>(random() % static_cast<std::uint32_t>(high - low + 1));
}

/// Hives of four boxes, all ripe and known, whole grams; what limits there are is set by the
/// caller.
inline YardCase yardCase(unsigned seed, int hives) {
    std::mt19937 random(seed);
    YardCase made;
    made.limits.winterNeedG = 20000;
    made.limits.feedUpToG = 3000;
    for (int h = 0; h < hives; ++h) {
        PullHive hive;
        hive.mark = "H" + std::to_string(h);
        hive.nestStoresG = yardDraw(random, 8000, 25000);
        hive.expectedChangeG = yardDraw(random, -3000, 3000);
        for (int b = 0; b < 4; ++b) {
            PullBox box;
            box.mark = hive.mark + "-" + std::to_string(b);
            box.honeyG = yardDraw(random, 4000, 16000);
            box.grossG = *box.honeyG + yardDraw(random, 4000, 6000);
            box.frames = 8 + static_cast<int>(random() % 3);
            hive.boxes.push_back(std::move(box));
        }
        made.hives.push_back(std::move(hive));
    }
    return made;
}

inline double grossTaken(const YardCase& given, const PullChoice& choice) {
    double gross = 0;
    for (const auto& each : choice.take) gross += *given.hives[each.hive].boxes[each.box].grossG;
    return gross;
}

inline std::int64_t framesTaken(const YardCase& given, const PullChoice& choice) {
    std::int64_t frames = 0;
    for (const auto& each : choice.take) frames += given.hives[each.hive].boxes[each.box].frames;
    return frames;
}

}  // namespace combwright
