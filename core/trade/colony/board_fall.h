// Mites that fall onto a board under the hive. How many fall in a day is judged against what is
// printed for the season, and never turned into mites on a hundred bees: the factors printed for
// that differ tenfold.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// A board that lay less long says little. Common practice, no source: many ask for 5 to 7 days.
inline constexpr std::int64_t fewestBoardDays = 3;

/// From mild to grave.
enum class FallVerdict { NoDanger, Critical, Treat, ActNow };
/// As tables and JSON name it: "no danger", "critical", "treat", "act now".
std::string_view key(FallVerdict verdict);
std::optional<FallVerdict> fallVerdictOf(std::string_view key);

/// What a fall means from some number on.
struct FallBand {
    double perDay = 0;
    bool over = true;      ///< more than that; else that many already
    bool anyTime = false;  ///< holds the year round: says nothing of a fall below it
    FallVerdict verdict = FallVerdict::Treat;
};

/// Mites a day. Refused: Negative "mites"; OutOfRange "days_on_board" (1 to 366).
Result<double> fallPerDay(std::int64_t mites, std::int64_t daysOnBoard, Working* working = nullptr);

/// The gravest band reached; no danger where none is and the season has bands of its own; nothing
/// where the table knows none for the season.
std::optional<FallVerdict> judgeFall(double perDay, const std::vector<FallBand>& bands);

}  // namespace combwright
