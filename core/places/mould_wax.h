// What a mould's candles take, whoever asks: the deed that pours, or a question put back about it.
#pragma once

#include <cstdint>
#include <optional>

#include "core/model/wax/candle.h"

namespace combwright {

/// Good, failed and seconds.
std::int64_t piecesOf(const Pour& pour);
/// Wax in so many pieces, by the volume of a cavity; none where nobody knows it.
std::optional<Mass> neededFor(const Mould& mould, std::int64_t pieces);

}  // namespace combwright
