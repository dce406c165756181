// A good mix to begin a search with. The better the mix one knows, the more of the others need not
// be looked at; this one is found by filling and refilling, and claims nothing.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/trade/wax/candle_amounts.h"

namespace combwright {

/// A mix by kind and shade.
using MixTable = std::vector<std::vector<std::int64_t>>;

std::int64_t mixCount(const MixTable& mix, std::size_t kind);
std::int64_t mixWorth(const MixTable& mix, std::span<const std::int64_t> worth);

/// Fills by worth to the gram and to what wick there is, takes out a few pieces of a kind and fills
/// again with the others for as long as that is worth more. At most `caps` of each kind.
MixTable goodMix(const CandleAmounts& amounts, std::span<const std::int64_t> caps,
                 std::span<const std::int64_t> worth);

}  // namespace combwright
