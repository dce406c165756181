// The amounts of a candle plan as whole numbers. Forty tapers of 68 g either come out of a block or
// they do not; that must not hang on the last bit of a floating-point sum, and a plan called proven
// is a statement about integers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "core/support/result.h"
#include "core/trade/wax/candle_plan.h"

namespace combwright {

/// A plan in whole micrograms and micrometres: stock rounded down, what a candle takes rounded up.
struct CandleAmounts {
    struct Kind {
        std::int64_t count = 0;
        std::int64_t mass = 0;            ///< µg of one, above 0
        std::int64_t wick = 0;            ///< µm of one
        std::size_t wickSize = 0;         ///< index into `wick`
        std::vector<std::size_t> shades;  ///< it may be of, indices into `wax`, first preferred
        std::int64_t byMoulds = 0;        ///< cavities · cycles · evenings
    };
    std::vector<std::string> shades;  ///< each once; one without a name where mixed
    std::vector<double> blockG;       ///< of each shade, as given
    std::vector<std::int64_t> wax;    ///< of each shade, µg after losses
    std::vector<std::string> wickSizes;
    std::vector<std::int64_t> wick;  ///< of each size, µm
    std::vector<Kind> kinds;

    /// Pieces of a kind that this wax gives, taken shade by shade; at most `most`.
    std::int64_t fromWax(const Kind& kind, std::span<const std::int64_t> waxLeft,
                         std::int64_t most) const;
};

/// Refused as candleNeeds.
Result<CandleAmounts> candleAmounts(const CandleStock& stock, std::int64_t evenings,
                                    std::span<const CandleWanted> wants);

}  // namespace combwright
