// Where in its year a colony stands. Records, tables and the reckoning of the trade all speak of
// it, so it stands with what all of them know.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace combwright {

enum class SeasonPhase {
    Dormant,   ///< cluster, little brood or none
    Increase,  ///< more bees each week
    Peak,
    Decrease,  ///< fewer bees; the winter bees are reared
};

/// As the file, tables and JSON name them, in the same order.
inline constexpr auto seasonPhaseKeys =
    std::to_array<std::string_view>({"dormant", "increase", "peak", "decrease"});

constexpr std::string_view key(SeasonPhase phase) {
    return seasonPhaseKeys[static_cast<std::size_t>(phase)];
}

/// Nothing for any other word.
constexpr std::optional<SeasonPhase> seasonPhaseOf(std::string_view key) {
    for (std::size_t i = 0; i < seasonPhaseKeys.size(); ++i)
        if (seasonPhaseKeys[i] == key) return static_cast<SeasonPhase>(i);
    return std::nullopt;
}

}  // namespace combwright
