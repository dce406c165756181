// From reckoned to got. A published figure is somebody else's bees, room and hands; each run says
// what it was here. Neither is thrown away: the figure for next year is the mean of both, each
// weighted by how surely it is known, so one odd run moves it little and ten of them move it far.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

struct LearnedRate {
    double value = 0.0;
    double sd = 0.0;  ///< of the value itself, not of the next run
};

/// The mean weighted by precision (the posterior mean of normal numbers with known deviations):
///
///     p = 1 / published_sd²     q = 1 / seen_sd² for each run
///     value = (p · published + q · Σ seen) / (p + n · q)      sd = 1 / √(p + n · q)
///
/// `publishedSd` is how far the published value may be off for this keeper, `seenSd` how far one
/// run is off by chance. With nothing seen the published value stands. Refused: a deviation not
/// above 0 ("published_sd", "seen_sd"), and anything without end.
Result<LearnedRate> learnRate(double published, double publishedSd, const std::vector<double>& seen,
                              double seenSd, Working* working = nullptr);

/// What the runs themselves say.
struct SeenRates {
    std::size_t n = 0;
    double mean = 0.0;
    std::optional<double> sd;  ///< of one run against the others; nobody knows with fewer than two
};

/// Nothing where nothing was seen.
std::optional<SeenRates> seenRates(const std::vector<double>& seen);

}  // namespace combwright
