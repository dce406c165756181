// Which wick to try first. A wick goes by the diameter of the candle, and every chart ends with
// "burn one": this table is a first guess only, and the keeper's own burn test stands above it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/support/result.h"

namespace combwright {

/// Square braid from thin to thick: 6/0 … 1/0, #1 … #10.
inline constexpr int wickSizes = 16;
/// A wick is cut to this before it is lit, mm. Common practice, no source.
inline constexpr double trimmedWickMm = 6;

/// Where a size stands among them, 0 the thinnest; "1" is "#1". Nothing for any other text: flat
/// braid is counted in plies and does not compare.
std::optional<int> wickRank(std::string_view size);
/// The size of that rank, 0 to 15.
std::string wickOfRank(int rank);
/// Whether one is thinner than the other; nothing where either is not a size of square braid.
std::optional<bool> thinnerWick(std::string_view one, std::string_view other);

/// Square braid to begin with, all sizes between the two included.
struct WickGuess {
    std::string thinnest;
    std::string thickest;
    bool orThicker = false;  ///< over 3 in: perhaps thicker still
};

/// By the candle's largest diameter, mm: common practice, no source. The supplier's rule "2/0 from
/// 1 to 3 in" is not followed, trade charts go thicker. 3 in itself still belongs to 2½ to 3.
/// Refused: Negative or OutOfRange "diameter_mm" (above 0, at most 500).
Result<WickGuess> wickGuess(double diameterMm);

/// A wick held against the guess.
enum class WickVerdict { Thinner, AsGuessed, Thicker };
std::string_view key(WickVerdict verdict);  ///< "thinner", "as guessed", "thicker"
/// Nothing where the size is not one of square braid.
std::optional<WickVerdict> wickAgainst(const WickGuess& guess, std::string_view size);

}  // namespace combwright
