// Many plans come down to one question: from each of many groups choose one option (which boxes of
// a hive to take), so that the gain is greatest and a few limits shared by all groups hold (what
// the car carries, how many clearer boards there are). Answered here once, in whole numbers, so
// that "proven" is a statement about integers and not about floating-point tolerances.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace combwright {

/// How many shared limits one plan may have.
constexpr std::size_t mostSharedLimits = 4;

using LimitUse = std::array<std::int64_t, mostSharedLimits>;

/// One way to treat a group: what it brings and what it uses of each shared limit. None negative.
struct ChoiceOption {
    std::int64_t gain = 0;
    LimitUse uses{};
};

/// The options of one group, those earlier in the list preferred among equals. One of them uses
/// nothing of any limit.
using OptionGroup = std::vector<ChoiceOption>;

using SharedLimits = std::array<std::optional<std::int64_t>, mostSharedLimits>;

/// How long to search, in options tried: work, never time, so that the answer is the same
/// everywhere.
struct SearchWork {
    std::int64_t trials = 8'000'000;  ///< about half a second; our own measurement
};

struct OptionChoice {
    std::vector<std::size_t> chosen;  ///< for each group the index of its option
    std::int64_t gain = 0;
    std::int64_t bound = 0;  ///< no choice within the limits gains more than this
    bool proven = true;      ///< gain equals bound
    /// Among the choices of this gain none prefers an earlier option in the first group they differ
    /// in.
    bool firstAmongEquals = true;
};

/// The options of greatest gain within the limits. The sum of all gains, and of all uses of a
/// limit, must stay under 2^57.
OptionChoice chooseOptions(const std::vector<OptionGroup>& groups, const SharedLimits& limits,
                           const SearchWork& work = {});

}  // namespace combwright
