// What a lot is called on the jar. Jars packed alike carry one code, and the code leads back to the
// tank: by the keeper's rule year, run and filling, or the best-before day itself. Whether a code
// is taken already only the file knows; its caller asks.
#pragma once

#include <optional>
#include <string>

#include "core/support/result.h"
#include "core/units/day.h"

namespace combwright {

struct LotCodeRule {
    enum class From {
        YearRunFilling,  ///< "27-4-2"
        BestBeforeDay    ///< "2029-03-15"
    };
    From from = From::YearRunFilling;
    /// Before it, "L" by the custom of the EU; up to eight letters or digits, or none.
    std::string prefix = "L";
    bool shortYear = true;  ///< 27, not 2027
    char separator = '-';   ///< '-', '.' or '/'
};

struct LotCodeParts {
    int year = 0;     ///< of the harvest, 1000 to 9999
    int run = 0;      ///< the run's number in that year, from 1
    int filling = 0;  ///< the how-manieth filling from its honey, from 1
    std::optional<Day> bestBefore;
};

/// The code, prefix and all: "L27-4-2". Equal parts give equal codes and, by one rule, within a
/// century unequal parts unequal codes. Refused: OutOfRange "year", "run", "filling" (1 to 9999);
/// Missing "best_before"; NotAChoice "prefix", "separator".
Result<std::string> lotCode(const LotCodeRule& rule, const LotCodeParts& parts);

}  // namespace combwright
