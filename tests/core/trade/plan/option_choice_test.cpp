#include "core/trade/plan/option_choice.h"

#include <gtest/gtest.h>

#include <array>
#include <random>

namespace combwright {
namespace {

struct OptionCase {
    std::vector<OptionGroup> groups;
    SharedLimits limits;
};

std::int64_t optionDraw(std::mt19937& random, std::int64_t low, std::int64_t high) {
    return low + static_cast<std::int64_t>(random() % static_cast<std::uint32_t>(high - low + 1));
}

OptionCase randomOptionCase(std::mt19937& random, std::size_t groups, std::int64_t finest) {
    OptionCase made;
    LimitUse most{};
    for (std::size_t g = 0; g < groups; ++g) {
        OptionGroup group(1 + random() % 4);
        for (std::size_t o = 0; o + 1 < group.size(); ++o) {
            group[o].gain = optionDraw(random, 0, finest);
            for (std::size_t k = 0; k < mostSharedLimits; ++k)
                group[o].uses[k] = optionDraw(random, 0, k == 1 ? finest : 3);
        }
        for (std::size_t k = 0; k < mostSharedLimits; ++k) most[k] += group.front().uses[k];
        made.groups.push_back(std::move(group));
    }
    for (std::size_t k = 0; k < mostSharedLimits; ++k)
        if (random() % 3 > 0) made.limits[k] = optionDraw(random, 0, most[k]);
    return made;
}

/// Every choice in the order of preference; the first of greatest gain.
OptionChoice bestOfAll(const OptionCase& given) {
    OptionChoice best;
    best.gain = -1;
    std::vector<std::size_t> chosen(given.groups.size(), 0);
    for (;;) {
        std::int64_t gain = 0;
        LimitUse uses{};
        for (std::size_t g = 0; g < chosen.size(); ++g) {
            gain += given.groups[g][chosen[g]].gain;
            for (std::size_t k = 0; k < mostSharedLimits; ++k)
                uses[k] += given.groups[g][chosen[g]].uses[k];
        }
        bool holds = true;
        for (std::size_t k = 0; k < mostSharedLimits; ++k)
            holds = holds && (!given.limits[k] || uses[k] <= *given.limits[k]);
        if (holds && gain > best.gain) {
            best.gain = gain;
            best.chosen = chosen;
        }
        std::size_t g = chosen.size();
        while (g > 0 && ++chosen[g - 1] == given.groups[g - 1].size()) chosen[--g] = 0;
        if (g == 0) return best;
    }
}

TEST(OptionChoice, AgreesWithTryingEverything) {
    std::mt19937 random(20270806);
    int limited = 0;
    for (int i = 0; i < 3000; ++i) {
        // Small numbers make ties, large ones make sums that differ by little.
        const OptionCase given = randomOptionCase(random, 1 + random() % 7, i % 2 ? 6 : 50'000'000);
        const OptionChoice best = bestOfAll(given);
        const OptionChoice choice = chooseOptions(given.groups, given.limits);
        EXPECT_EQ(choice.gain, best.gain) << i;
        EXPECT_EQ(choice.chosen, best.chosen) << i;
        EXPECT_EQ(choice.bound, choice.gain) << i;
        EXPECT_TRUE(choice.proven) << i;
        EXPECT_TRUE(choice.firstAmongEquals) << i;
        for (const auto& limit : given.limits) limited += limit ? 1 : 0;
    }
    EXPECT_GT(limited, 3000);
}

/// Sets of three boxes a group, what they weigh and what they hold going nearly together: the hard
/// kind.
OptionCase heavyBoxes(std::mt19937& random, std::size_t groups) {
    OptionCase made;
    std::int64_t most = 0;
    for (std::size_t g = 0; g < groups; ++g) {
        const std::array<std::int64_t, 3> honey{optionDraw(random, 4'000'000, 16'000'000),
                                                optionDraw(random, 4'000'000, 16'000'000),
                                                optionDraw(random, 4'000'000, 16'000'000)};
        OptionGroup group;
        for (unsigned mask = 8; mask-- > 0;) {
            ChoiceOption option;
            for (std::size_t b = 0; b < honey.size(); ++b)
                if ((mask >> b & 1U) != 0) {
                    option.gain += honey[b];
                    option.uses[0] += 8 + static_cast<std::int64_t>(honey[b] % 3);
                    option.uses[1] += honey[b] + 4'000'000 + honey[b] % 2'000'000;
                }
            group.push_back(option);
        }
        most += group.front().uses[1];
        made.groups.push_back(std::move(group));
    }
    made.limits[0] = static_cast<std::int64_t>(groups) * 6;
    made.limits[1] = most / 4;
    return made;
}

TEST(OptionChoice, StoppedEarlySaysSoAndItsBoundHolds) {
    std::mt19937 random(7);
    int open = 0;
    for (int i = 0; i < 4; ++i) {
        const OptionCase given = heavyBoxes(random, 40);
        const OptionChoice full = chooseOptions(given.groups, given.limits, {1'000'000});
        const OptionChoice early = chooseOptions(given.groups, given.limits, {1});
        ASSERT_EQ(early.proven, early.gain == early.bound);
        EXPECT_LE(early.gain, full.bound);
        EXPECT_GE(early.bound, full.gain);
        // Two limits that nearly go together are the hardest; still within a few tenths of a per
        // cent.
        EXPECT_GT(static_cast<double>(full.gain), 0.995 * static_cast<double>(full.bound));
        EXPECT_GT(static_cast<double>(early.gain), 0.99 * static_cast<double>(early.bound));
        open += early.proven ? 0 : 1;
    }
    EXPECT_GT(open, 0) << "one trial is never enough for all of these";
}

TEST(OptionChoice, SameWorkSameAnswer) {
    std::mt19937 random(8);
    const OptionCase given = heavyBoxes(random, 60);
    const OptionChoice once = chooseOptions(given.groups, given.limits, {50'000});
    const OptionChoice again = chooseOptions(given.groups, given.limits, {50'000});
    EXPECT_EQ(once.chosen, again.chosen);
    EXPECT_EQ(once.bound, again.bound);
}

TEST(OptionChoice, NothingToChooseFrom) {
    const OptionChoice choice = chooseOptions({}, {5, 5, 5, 5});
    EXPECT_TRUE(choice.chosen.empty());
    EXPECT_EQ(choice.gain, 0);
    EXPECT_TRUE(choice.proven);
}

TEST(OptionChoice, ALimitOfZeroLeavesWhatUsesNothing) {
    const OptionGroup group{{5, {1, 0, 0, 0}}, {3, {0, 9, 0, 0}}, {0, {}}};
    const OptionChoice choice = chooseOptions({group, group}, {0, {}, {}, {}});
    EXPECT_EQ(choice.gain, 6);
    EXPECT_EQ(choice.chosen, (std::vector<std::size_t>{1, 1}));
}

}  // namespace
}  // namespace combwright
