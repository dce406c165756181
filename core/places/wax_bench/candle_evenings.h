// Candles planned backwards from the day they are wanted: wax by shade, moulds and evenings, wick;
// what bites first, what one thing more would change, and what is poured on which evening.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/storage/queries/wax_ledger.h"
#include "core/trade/wax/candle_mix.h"
#include "core/trade/wax/candle_reach.h"
#include "core/trade/wax/pouring_evenings.h"

namespace combwright {

/// One kind wanted by the day.
struct CandlesWantedShown {
    GoodsKind kind;
    /// One wish of it.
    struct Wish {
        Day by;
        std::string whatFor;
        std::int64_t count = 0;
    };
    std::vector<Wish> wishes;     ///< the soonest first
    std::int64_t wished = 0;      ///< in all of them
    std::int64_t ready = 0;       ///< on the shelf or being finished, and taken for it
    std::optional<double> massG;  ///< of one; none: nobody said, and no mould tells
    bool massByMould = false;
    std::string wick;
    std::optional<Length> wickLength;
    std::int64_t cavities = 0;
    std::int64_t cycles = 1;
    double setHours = 2;
    std::set<Day> pouredOn;  ///< today, where its moulds were filled today
    bool safe = true;        ///< a one-way holder burnt well to test, or none
    std::vector<std::string> shades;
};

/// A day candles are wanted by, with everything they are wanted for that day.
struct CandleDate {
    Day by;
    std::string whatFor;       ///< "fair, shop"; empty: nobody said
    std::int64_t candles = 0;  ///< wanted that day
    bool operator==(const CandleDate&) const = default;
};
/// Those from a day on of which it was known by then, the next first.
std::vector<CandleDate> candleDates(const Read& file, Day from);

struct CandleEvenings {
    Day on;
    CandleDate date;
    double lossShare = 0;
    std::vector<CandlesWantedShown> kinds;  ///< in the keeper's order
    std::vector<std::string> unknown;       ///< kinds of which nobody knows what one weighs
    CandleStock stock;                      ///< what there is, by shade
    std::vector<CandleWanted> wants;        ///< as the plan reckons with them
    std::int64_t eveningsFree = 0;          ///< for pouring
    std::vector<FreeEvening> evenings;      ///< free ones until the day
    CandleNeeds needs;
    CandleNeeds mixed;  ///< the same with shades poured together
    CandleReaches reach;
    std::vector<OneMoreCandleThing> oneMore;
    CandleMix best;  ///< by the keeper's order
    PouringPlan plan;
};

/// What if a kind had so many cavities? Asked while they are typed, before moulds come or go.
struct CavitiesIf {
    Id<GoodsKind> kind;
    std::int64_t cavities = 0;
};

/// Everything wanted from `on` up to the date, the soonest first: gifts of the week before take wax
/// and moulds from the fair. What is wanted before it goes before it, and as a mould is filled as
/// soon as it is empty, no order would have more ready by each of the days. An evening a kind was
/// poured on already is none for it any more.
/// Without a date the next that is wanted; nothing where none is. `worth` of each kind in the order
/// of `kinds`, for the best mix; by default all alike. Kinds named in `whatIf` have the cavities
/// said there. The best mix is dear and left empty where it is not asked. Refused as
/// candleNeeds.
Result<std::optional<CandleEvenings>> candleEvenings(const Read& file, Day on,
                                                     std::optional<CandleDate> date = std::nullopt,
                                                     const std::vector<std::int64_t>& worth = {},
                                                     const std::vector<CavitiesIf>& whatIf = {},
                                                     bool withBestMix = true);

}  // namespace combwright
