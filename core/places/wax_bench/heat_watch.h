// A pot on heat as everybody sees it, in every place: what, since when, for how long, and when the
// clock calls. Wax is never left alone; the clock calls until somebody says that they are there.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/storage/queries/wax_ledger.h"

namespace combwright {

/// How long the clock is quiet, minutes, where the keeper says nothing: common practice, no source.
inline constexpr std::int64_t heatCallMinutes = 15;

struct HeatShown {
    HeatSession session;
    std::int64_t minutes = 0;  ///< it has been on; 0 where the clock was put back
    bool calls = false;        ///< nobody has looked for so long
};

/// Pots that are on, the longest first. `lookedAt` is when somebody last said to be there.
std::vector<HeatShown> heatNow(const Read& file, Instant now, std::optional<Instant> lookedAt,
                               std::int64_t callMinutes = heatCallMinutes);
/// The same of pots that were read before: a second later nothing is asked of the file.
std::vector<HeatShown> heatNow(std::vector<HeatSession> open, Instant now,
                               std::optional<Instant> lookedAt,
                               std::int64_t callMinutes = heatCallMinutes);

/// What a temperature of the wax means, in words; nothing where none is known.
enum class HeatMind { Plain, Mind, Stop };
struct HeatSaid {
    HeatMind mind = HeatMind::Plain;
    QString words;
};
std::optional<HeatSaid> heatSaid(const std::optional<Temperature>& temperature);

}  // namespace combwright
