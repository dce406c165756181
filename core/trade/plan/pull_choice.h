// Which boxes come off before winter. Whole boxes only: a hive that could spare seven kilograms
// gives nothing if its lightest ripe box holds ten. What a hive needs goes before what the keeper
// would like, and what nobody looked at is not taken on a guess.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/support/working.h"

namespace combwright {

/// A box above the nest as it was last seen. Nothing where nobody knows.
struct PullBox {
    std::string mark;
    std::optional<double> honeyG;  ///< grams, 0 or more
    std::int64_t frames = 0;
    std::optional<double> cappedShare;   ///< of the comb's cells, 0 to 1
    std::optional<double> waterPercent;  ///< grams of water in 100 g of honey
    std::optional<double> grossG;        ///< what lifting it weighs, grams
    bool brood = false;
    bool held = false;  ///< on hold, for whatever reason: it stays
};

struct PullHive {
    std::string mark;
    std::optional<double> nestStoresG;  ///< grams of stores in the nest
    double expectedChangeG = 0;         ///< what the bees will still bring (+) or eat (−), grams
    std::vector<PullBox> boxes;         ///< nearer the top first, or as the keeper lists them
};

/// Nothing means: no such limit.
struct PullLimits {
    double winterNeedG = 0;  ///< stores a hive must have, grams
    double feedUpToG = 0;    ///< how much the keeper will feed a hive, grams
    std::optional<double> minCappedShare;
    std::optional<double> maxWaterPercent;
    std::optional<std::int64_t> frames;         ///< frames in all boxes taken
    std::optional<double> carryG;               ///< gross mass of all boxes taken, grams
    std::optional<std::int64_t> boxes;          ///< boxes taken
    std::optional<std::int64_t> clearerBoards;  ///< hives taken from
};

/// Why a box stays. The first that holds, in this order.
enum class WhyLeft {
    Held,
    Brood,
    CappingNotKnown,  ///< a least capping is asked for and nobody looked
    WaterNotKnown,    ///< a most water is asked for and nobody measured
    TooWet,
    NotCappedEnough,
    MassNotKnown,  ///< what can be carried is limited and nobody weighed it
    LookFirst,     ///< its hive must be looked at first
    HiveNeedsIt,
    NothingInIt,
    LimitOnFrames,
    LimitOnMass,
    LimitOnBoxes,
    LimitOnBoards,
};

/// The reason in JSON: "held", "not capped enough", "hive needs it" …
std::string_view key(WhyLeft why);

struct PullChoice {
    struct Place {
        std::size_t hive = 0;  ///< index into the hives given
        std::size_t box = 0;   ///< index into its boxes
        bool operator==(const Place&) const = default;
    };
    struct Left {
        Place place;
        WhyLeft why = WhyLeft::Held;
    };
    struct Winter {
        std::size_t hive = 0;
        double remainingG = 0;  ///< nest, boxes left and expected change; the feed not counted
        double shortG = 0;      ///< winter need less that, never below 0: what is to be fed
    };

    std::vector<Place> take;  ///< in the order given
    std::vector<Left> leave;  ///< every other box, in the order given
    std::vector<std::size_t> lookFirst;
    double honeyG = 0;  ///< in the boxes taken
    bool proven = true;
    double boundG = 0;           ///< no choice within the limits takes more honey
    std::vector<Winter> winter;  ///< of every hive whose stores are all known
};

/// The boxes that together hold the most honey, of equal choices the one with boxes earlier in the
/// order given. A hive taken from keeps stores + boxes left + expected change + feed ≥ winter need.
/// Hives whose nest or any box is not known are to be looked at first and nothing is taken. Where
/// both capping and water are limited and both are known, water decides.
///
/// It reckons in whole milligrams: honey, stores, change and what may be carried or fed rounded
/// down, winter need and masses to carry up, so that rounding never breaks a limit; a thousandth of
/// a milligram is left to floating point. Masses are at most 10⁹ g; more than 16 boxes of one hive
/// that could be taken are searched among the 16 with most honey and the rest is only filled up.
PullChoice choosePull(const std::vector<PullHive>& hives, const PullLimits& limits,
                      Working* working = nullptr);

}  // namespace combwright
