// What a year brought: every hive's honey from its runs, and where no run knows, as it was noted
// from paper; beside it another year. Paper never enters a run's balance and is always said.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/places/honey_room/run_balance.h"

namespace combwright {

struct HiveYield {
    Id<Hive> hive;
    std::string mark;
    std::optional<Mass> mass;  ///< none: nothing was taken
    How how = How::Unknown;
    /// How the hive's part of the buckets is known, whatever the buckets are.
    How partHow = How::Unknown;
    bool noted = false;             ///< from paper: no run of that year knows the hive
    std::optional<Mass> paperSays;  ///< noted although runs say something; not counted
    bool revised = false;           ///< a run differs from what it was when it was closed
    std::optional<Mass> before;     ///< of the year beside it
    How beforeHow = How::Unknown;
    bool beforeNoted = false;
    bool standing = false;  ///< with a colony on 1 May
};

struct YardYield {
    Yard yard;
    std::vector<HiveYield> hives;
    std::optional<Mass> unknown;  ///< boxes of this yard whose hive nobody knows
    Mass total;
    How how = How::Unknown;
    bool noted = false;             ///< all that is known is a total for the yard, from paper
    std::optional<Mass> paperSays;  ///< a total from paper although hives or runs say something
    std::optional<Mass> before;
    How beforeHow = How::Unknown;
    int producing = 0;
    bool producingKnown = true;  ///< false where all that is known is a total for the yard
    int standing = 0;            ///< hives with a colony on 1 May
    int lived = 0;               ///< hives with a colony at some time of the year

    /// Over how many hives an average is told; 0 where nobody knows how many gave honey.
    int averagedOver() const { return producingKnown ? producing : 0; }
};

struct SeasonYield {
    int year = 0;
    int beforeYear = 0;  ///< the year beside it
    std::vector<YardYield> yards;
    Mass total;
    How how = How::Unknown;
    std::optional<Mass> unknown;  ///< of the total, whose hive nobody knows
    std::optional<Mass> nowhere;  ///< of that, not even the yard is known
    std::optional<Mass> noted;    ///< of the total, from paper
    std::optional<Mass> before;
    How beforeHow = How::Unknown;
    std::optional<Mass> beforeNoted;
    int producing = 0;
    bool producingKnown = true;  ///< false where a part is only known for a yard, or for the year
    int standing = 0;
    int lived = 0;
    std::vector<RunBalance> runs;  ///< in the order of their days
    std::vector<std::string>
        unclosed;  ///< runs that cannot be shared out yet: their honey has no hive

    int averagedOver() const { return producingKnown ? producing : 0; }
};

/// The year beside another, by default the one before it.
SeasonYield seasonYield(const Read& file, int year, std::optional<int> beside = std::nullopt);

/// Years with a run or a crop noted from paper, and the year of today; oldest first.
std::vector<int> seasonYears(const Read& file, Day today);
/// The newest year up to today's that brought honey; today's where none did.
int newestHarvest(const Read& file, Day today);

/// "+" is more than in the year beside it; nothing where either is not known.
std::optional<double> changeGrams(const std::optional<Mass>& now,
                                  const std::optional<Mass>& before);

}  // namespace combwright
