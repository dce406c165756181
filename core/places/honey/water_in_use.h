// Which water of a bucket or lot is gone by: the newest reading, corrected where the keeper took
// the correction, else as it was read; failing that what was said at the gate; of a blend nobody
// read, what its parts make. And what is doubtful of it: an instrument is believed no further than
// it was checked.
#pragma once

#include <optional>
#include <vector>

#include "core/storage/queries/vessels.h"
#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/honey/water_read.h"

namespace combwright {

enum class WaterFrom {
    Reading,
    AtTheGate,  ///< said when the bucket was filled; nobody wrote down how it was measured
    Parts,      ///< by mass, of what went into the lot
    Drying      ///< of an earlier one, by what the honey lost in weight
};
std::string_view key(WaterFrom from);  ///< "reading", "at the gate", "parts", "drying"

enum class WaterDoubt {
    NotCorrected,       ///< warm honey: reads too wet
    ReadsTooDry,        ///< cold honey, not corrected: there is more water in it than it says
    WarmthNotSaid,      ///< neither is known, nor whether the instrument corrects by itself
    CalibratedLongAgo,  ///< or never
    DriedSince,         ///< dried after it was read, and not weighed before and after
    WetterThanShown     ///< a part of the blend reads too dry
};
std::string_view key(WaterDoubt doubt);

/// A refractometer is checked every so many days. Common practice, no source.
inline constexpr int calibrationGoodDays = 365;
/// Nearer to 20 °C than that the correction is under 0.1 points: nothing is asked.
inline constexpr double correctionFromC = 1.0;

struct WaterInUse {
    double percent = 0;
    WaterFrom from = WaterFrom::Reading;
    std::optional<Day> on;
    std::optional<WaterReading> reading;
    /// What it would be corrected, where the keeper did not take that yet.
    std::optional<double> correctedPercent;
    std::vector<WaterDoubt> doubts;

    bool has(WaterDoubt doubt) const;
    /// As the keeper should reckon with it: the wetter of the two.
    double wettestPercent() const;
};

/// What the reading shows, for the trade functions.
ScaleShown shownBy(const WaterReading& reading);
/// Of a vessel, readings up to a day, the oldest first.
std::vector<WaterReading> readingsOf(const Read& file, const Vessel& vessel, Day upTo);
/// A reading that was taken at another warmth, does not compensate and is not corrected yet.
bool awaitsCorrection(const WaterReading& reading);

/// What a reading says before it is kept.
struct ReadingSays {
    double percent = 0;  ///< as read
    std::optional<double>
        correctedPercent;  ///< where it awaits correction and the table goes so far
    bool awaits = false;   ///< the warmth matters and nothing was corrected
    bool tooDry = false;   ///< and it was cold: there is more water in it
};
/// Refused as the scale is: Missing, Contradiction, OutOfRange.
Result<ReadingSays> readingSays(const WaterReading& reading);

/// Nothing where nobody knows. The steps go into `working`.
std::optional<WaterInUse> waterInUse(const Read& file, const Vessel& vessel, Day on,
                                     Working* working = nullptr);
/// The same of the buckets of a run, in their order; what nobody read since costs no question.
std::vector<std::optional<WaterInUse>> waterOfBuckets(const Read& file,
                                                      const std::vector<Bucket>& buckets, Day on);

}  // namespace combwright
