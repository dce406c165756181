// The best mix for the wax there is. Asked by order, the first kind takes what it wants; asked by
// what is wanted most, a few pillars may be given up for many skeps. Searched exactly, in whole
// numbers.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/support/result.h"
#include "core/trade/wax/candle_plan.h"

namespace combwright {

/// How long to search, in mixes looked at: work, never time, so that the answer is the same
/// everywhere. Our own measurement: under a second. Up to twelve kinds of one wax and five of three
/// shades were always proven, eight of five shades seldom.
struct MixWork {
    std::int64_t trials = 4'000'000;
};

struct CandleMix {
    std::vector<std::int64_t> counts;     ///< of each kind wanted
    std::vector<CandlesOfShade> ofShade;  ///< counts above 0, in the order wanted
    std::int64_t worth = 0;               ///< Σ count · worth of one
    std::int64_t bound = 0;               ///< no mix is worth more
    bool proven = true;                   ///< worth equals bound
    bool firstAmongEquals = true;         ///< and of equal mixes it is the one told below
};

/// The counts worth most, none above what is wanted, within wax by shade and wick, and, where
/// `evenings` is given, cavities. `worth` is how much one of each kind is wanted, 0 to 10⁶. Of
/// mixes worth the same the one with most of the kind that comes first, then of the second, and so
/// on; then with most in the shades a kind names first. Refused as candleNeeds; WrongType "worth"
/// where it is not one for each kind; TooMany "want" (40), "blocks" (20 shades); Negative or
/// OutOfRange "want[N].worth".
Result<CandleMix> bestMix(const CandleStock& stock, std::optional<std::int64_t> evenings,
                          std::span<const CandleWanted> wants, std::span<const std::int64_t> worth,
                          const MixWork& work = {});

}  // namespace combwright
