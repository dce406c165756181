// Which evening pours what. A mould pours as soon as it is empty again, the earliest free evening
// first: nothing is ever poured later than it could be, so the last pour is as early as it can be
// and a failed one leaves time to pour again. The last evening is for trimming, pairing and labels,
// unless the keeper gives it to pouring.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/support/result.h"
#include "core/units/day.h"

namespace combwright {

/// A kind to be poured, in the keeper's order.
struct KindToPour {
    std::string what;
    std::int64_t count = 0;
    std::int64_t cavities = 0;
    std::int64_t cyclesPerEvening = 1;
    double setHours = 2;  ///< above 0; over 24 the mould is not free the next day
    /// Cycles on days they differ from the usual; 0: not on that day.
    std::map<Day, std::int64_t> cyclesOn = {};
};

struct FreeEvenings {
    std::vector<Day> days;  ///< in any order, each once
    bool keepLast = true;   ///< the last one is for finishing
    /// The day all must be ready: evenings on it and after are too late.
    std::optional<Day> wantedOn;
};

struct PouringEvening {
    struct Pours {
        std::size_t want = 0;  ///< index into the kinds
        std::int64_t count = 0;
        std::int64_t cycles = 0;  ///< how often its moulds are filled
        Day outFrom;              ///< the day it is set: the next one, or later
    };
    Day day;
    std::vector<Pours> pours;  ///< in the keeper's order, counts above 0
};

struct PouringPlan {
    std::vector<PouringEvening> evenings;  ///< those something is poured on, by day
    std::optional<Day> lastPour;
    std::optional<Day>
        finishing;             ///< the evening kept; none where none was free or it was given up
    std::vector<Day> tooLate;  ///< evenings that cannot be used, on the day wanted or after
    std::vector<std::int64_t> poured;  ///< of each kind
    std::vector<std::int64_t> open;    ///< of each kind: wanted and not poured
};

/// Each evening fills a kind's cavities as often as its cycles say, up to what is still wanted, if
/// the mould is free by then and what is poured is set by the finishing evening (or by the day
/// wanted where that is given to pouring). Kinds do not wait for each other. Refused: Duplicate
/// "evenings[N]"; TooMany "evenings" (1,000); of "want[N]." Negative or OutOfRange "count" (to
/// 10⁶), "cavities" (to 10,000), "cycles_per_evening" (1 to 100), "cycles_on" (0 to 100),
/// "set_hours" (above 0, to 240).
Result<PouringPlan> planEvenings(const FreeEvenings& free, std::span<const KindToPour> kinds);

/// Evenings left for pouring: the free ones before the day wanted, less the one for finishing.
std::int64_t pouringEvenings(const FreeEvenings& free);

}  // namespace combwright
