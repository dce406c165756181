// What really comes of a plan when wax, cavities, evenings and wick all count at once, and which of
// them bites first. What one cavity, one evening or one kilogram more would change is not estimated
// but reckoned again, for a kind that gains may take wax from the kind after it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/support/result.h"
#include "core/trade/wax/candle_plan.h"

namespace combwright {

enum class CandleLimit { Wax, Moulds, Wick };
std::string_view key(CandleLimit limit);  ///< "wax", "moulds", "wick"

/// One kind, with what the kinds before it leave.
struct CandleReach {
    std::int64_t made = 0;      ///< the least of the four
    std::int64_t byWax = 0;     ///< at most `count`, like those below
    std::int64_t byMoulds = 0;  ///< cavities · cycles · evenings
    std::int64_t byWick = 0;
    std::vector<CandleLimit> bites;  ///< those that hold it to `made`; none where all are made
};
struct CandleReaches {
    std::vector<CandleReach> kinds;       ///< one for each wanted
    std::vector<CandlesOfShade> ofShade;  ///< counts above 0, in the order wanted
};
/// In the keeper's order; a kind's shades in its order. Refused as candleNeeds.
Result<CandleReaches> candleReach(const CandleStock& stock, std::int64_t evenings,
                                  std::span<const CandleWanted> wants);

/// One thing more, and the whole plan reckoned again.
struct OneMoreCandleThing {
    enum class What { Cavity, Evening, Kilogram, Metre };
    What what = What::Cavity;
    std::size_t want = 0;              ///< Cavity: for which kind
    std::string name;                  ///< Kilogram: the shade, empty where mixed; Metre: the wick
    std::vector<std::int64_t> change;  ///< of each kind, may be negative
    std::int64_t more = 0;             ///< candles in all
};
std::string_view key(OneMoreCandleThing::What what);  ///< "cavity", "evening", "kilogram", "metre"
/// A cavity for each kind, an evening, a kilogram of each shade in stock or named by a kind, a
/// metre of each wick; those that change nothing are there too. Refused as candleNeeds.
Result<std::vector<OneMoreCandleThing>> oneMoreOfEach(const CandleStock& stock,
                                                      std::int64_t evenings,
                                                      std::span<const CandleWanted> wants);

}  // namespace combwright
