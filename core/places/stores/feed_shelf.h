// What feed there is. Nobody keeps a balance: it is what was counted last, and bought since, less
// what the hives were given, so a feeding that is taken back is on the shelf again.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/visit.h"
#include "core/storage/rows.h"

namespace combwright {

/// Feed of one kind, in grams of sugar.
struct FeedShelfRow {
    FeedKind kind = FeedKind::Dry;
    std::optional<Day> counted;  ///< the newest count; none: reckoned from what was bought
    double startG = 0;           ///< counted that day
    double boughtG = 0;          ///< since
    double givenG = 0;           ///< since
    int givenUnknown = 0;        ///< feedings since of which nobody said how much
    std::optional<Mass> pack;    ///< sugar in one pack, as bought or counted last

    /// Below 0: more was given than is written down as bought.
    double leftG() const { return startG + boughtG - givenG; }
    How how() const { return givenUnknown > 0 ? How::Assumed : How::ByDifference; }
};

/// Each kind that was ever bought or counted by that day, at its end, in the order of the kinds. A
/// feeding draws on its own kind where there is such a stock, else syrup and what has no kind draw
/// on dry sugar, of which it is made. Frames of stores draw on nothing. A count is of the end of
/// its day.
std::vector<FeedShelfRow> feedShelf(const Read& file, Day on);

/// What a feeding meant would come to, before it is written down.
struct FeedOutlook {
    std::optional<double> takesG;       ///< sugar, all hives together; none: nobody knows
    std::optional<FeedShelfRow> shelf;  ///< what it draws on; none: frames, or nothing written down
    std::optional<double> leftAfterG;   ///< below 0: more than is written down
    std::vector<std::string> supersOn;  ///< hives with supers on that day
};
/// `each` of sugar a hive, or so many packs of the kind.
FeedOutlook feedOutlook(const Read& file, const std::vector<Hive>& hives,
                        std::optional<FeedKind> kind, const std::optional<Known<Mass>>& each,
                        const std::optional<Count>& packs, Day on);

/// The pack a kind was bought or counted in last.
std::optional<Mass> packOf(const Read& file, FeedKind kind, Day on);

}  // namespace combwright
