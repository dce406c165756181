// How long a candle sets in its mould, and how long it burns. Both go by the diameter, both are
// what others saw once or twice, and both are overruled by the keeper's own notes.
#pragma once

#include <cstdint>
#include <string_view>

#include "core/support/result.h"
#include "core/trade/storeroom/comb_wax.h"

namespace combwright {

/// What a candle of that diameter behaves like.
enum class CandleSize { Slender, Votive, Pillar };
std::string_view key(CandleSize size);  ///< "slender", "votive", "pillar"
/// Under 1½ in, under 2½ in, from there on. The trade's words are printed for 7/8, 1¾ and 3 in;
/// where one becomes the other is a planning assumption, no source. Refused: Negative or OutOfRange
/// "diameter_mm" (above 0, at most 500).
Result<CandleSize> candleSize(double diameterMm);

/// Hours from the pour until it may be taken out: small moulds about 2 h (printed in 1 source),
/// votives 2 to 4, pillars overnight (common practice, no source; reckoned as 12). Refused as
/// candleSize.
Result<Between> setHours(double diameterMm);

/// How often a mould is filled in so many free hours: once at least, for the last pour may set
/// overnight. Planning assumption, no source; told are one, at most two on a weekday evening and
/// about five on a free day. Refused: Negative or OutOfRange "hours" (0 to 24); OutOfRange
/// "set_hours" (above 0).
Result<std::int64_t> cyclesIn(double hours, double settingHours);

/// Grams of wax burnt in an hour. A votive burns 15 to 16 h, a taper about an inch an hour, pillars
/// of 3 × 4 in and 3 × 6 in 60 and 90 h (printed in 3 sources); with their masses 4.2, 6 and 7.4
/// g/h. How far a taper or a pillar may be off was not found: a fifth either way is a planning
/// assumption, no source. The wick decides. Refused as candleSize.
Result<Between> burnGPerHour(double diameterMm);
/// Hours a candle of that mass burns, at the fastest, likely and slowest. Refused: Negative or
/// OutOfRange "mass_g"; as candleSize.
Result<Between> burnHours(double massG, double diameterMm, Working* working = nullptr);

}  // namespace combwright
