// Honey as it came in through a year, by what one asks it for: by run, lot, yard or hive. Every way
// of asking adds up to the year's own total, to the gram; what is on no day that is known keeps a
// figure of its own.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/places/season_book/season_yield.h"

namespace combwright {

enum class HarvestBy { Run, Lot, Yard, Hive };

/// "run", "lot", "yard", "hive".
std::string_view key(HarvestBy by);
std::optional<HarvestBy> harvestByOf(std::string_view key);

/// What one run brought to a part.
struct HarvestCame {
    Day on;
    Mass mass;
    How how = How::Unknown;
    Id<Extraction> run;
    std::string lot;   ///< the run's name
    std::string yard;  ///< the run's; empty: of several yards
};

struct HarvestPart {
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Extraction>> run;  ///< of a lot
    bool withoutHive = false;           ///< nobody knows whose it is
    std::string name;                   ///< the yard's, hive's or lot's; empty: of the whole year
    std::vector<HarvestCame> came;      ///< in the order of the days
    /// On no day that is known: noted from paper, or in buckets of a run not shared out yet.
    Mass undated;
    Mass total;
    How how = How::Unknown;  ///< of the total
};

struct HarvestLine {
    int year = 0;
    HarvestBy by = HarvestBy::Run;
    std::vector<HarvestPart> parts;  ///< in walking order, lots by their days
    Mass total;                      ///< the year's; that of all parts together
    How how = How::Unknown;

    const HarvestPart* partLike(const HarvestPart& other) const;
};

HarvestLine harvestLine(const SeasonYield& season, HarvestBy by);

}  // namespace combwright
