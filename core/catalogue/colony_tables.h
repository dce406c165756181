// What is published of colonies and depends on country and edition: the lines at which mites are
// acted on, when the phases of the season begin, how long a medicine keeps supers off. A season
// file starts from these and keeps the keeper's own; a label in the keeper's hand beats them all.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/count.h"

namespace combwright {

/// One line of one table of thresholds.
struct PublishedThreshold {
    std::string edition;  ///< which table, and of when: "usual"
    std::string region;   ///< where it is meant for
    std::string phase;    ///< "dormant", "increase", "peak", "decrease"
    double per100;        ///< mites on 100 bees at which to act
    std::string source;
};

/// The day of the year a phase begins on.
struct PublishedPhase {
    std::string edition;
    std::string region;
    std::string phase;
    unsigned fromMonth;       ///< 1 to 12
    unsigned fromDayOfMonth;  ///< 1 to 31
    std::string source;
};

/// What a medicine's label says of the supers.
enum class PublishedSupers { Off, MayStay, SeeLabel };

/// A medicine by what acts in it, never by a name it is sold under. Blank is not known.
struct PublishedWait {
    std::string edition;
    std::string region;
    std::string active;
    PublishedSupers supers = PublishedSupers::SeeLabel;
    std::optional<Count> inHiveFromDays;
    std::optional<Count> inHiveToDays;
    std::optional<Count> waitDays;  ///< after it is out, until supers go back
    std::optional<double> fromC;    ///< the warmth of the day it works in
    std::optional<double> toC;
    std::string source;
};

/// What a daily fall of mites on a board means in some months. Never a rate of mites on bees: what
/// is printed to turn one into the other differs tenfold.
struct PublishedFall {
    std::string edition;
    std::string region;
    std::optional<unsigned> fromMonth;  ///< none: at any time
    std::optional<unsigned> toMonth;    ///< before fromMonth where it goes over the year's end
    double perDay = 0;
    bool over = true;     ///< more than that; else that many already
    std::string verdict;  ///< "critical", "treat", "act now"
    std::string source;
};

/// What a colony uses in one month of the cold half of the year.
struct PublishedMonthUse {
    unsigned month;  ///< 1 to 12
    double use_g;
    std::string source;
};

/// All rows in the order of the trade tables: the usual edition first.
const std::vector<PublishedThreshold>& publishedThresholds();
const std::vector<PublishedPhase>& publishedPhases();
const std::vector<PublishedWait>& publishedWaits();
const std::vector<PublishedFall>& publishedFalls();
/// October to April; in the other months bees forage, and nothing is known.
const std::vector<PublishedMonthUse>& publishedWinterUse();

/// Whether a row holds in a month, 1 to 12.
bool holdsIn(const PublishedFall& row, unsigned month);

/// The row of that active ingredient and region, or nothing; a row for no region in particular is
/// for all of them.
const PublishedWait* findPublishedWait(std::string_view active, std::string_view region);

}  // namespace combwright
