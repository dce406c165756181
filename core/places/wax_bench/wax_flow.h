// The wax of a year as one flow, from what came off the knife to what is wanted of it: raw by
// source, honey drained and water washed away, clean blocks by shade, candles. What nobody weighed
// keeps a place of its own, and what is missing is told.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/wax_bench/candle_evenings.h"
#include "core/places/wax_bench/wax_bench.h"

namespace combwright {

/// A batch as it came to the bench.
struct WaxFlowRaw {
    Id<WaxBatch> batch;
    std::string name;  ///< its own
    RawWaxSource source = RawWaxSource::Cappings;
    std::vector<std::string> from;
    std::optional<double> grams;  ///< none: not weighed
    How how = How::Unknown;
    bool waits = false;  ///< nothing of it was melted yet
};

/// Clean wax of a shade.
struct WaxFlowShade {
    WaxShade shade = WaxShade::Light;
    double castG = 0;    ///< this year from the batches
    double otherG = 0;   ///< left of earlier years or bought
    double goneG = 0;    ///< of those, poured, sold or given away already
    double leftG = 0;    ///< there now
    double unusedG = 0;  ///< of that, what nothing wanted takes
    How how = How::Weighed;
    int notWeighed = 0;  ///< blocks nobody weighed
};

/// So many candles of a kind out of a shade.
struct WaxFlowLink {
    std::size_t shade = 0;
    std::size_t want = 0;
    std::int64_t count = 0;
    double blockG = 0;  ///< with what is lost in pouring
};

struct WaxFlowWant {
    std::string name;
    std::int64_t count = 0;  ///< still to pour
    std::int64_t made = 0;   ///< of this wax
    double blockG = 0;       ///< for all of them, with what is lost in pouring
    double shortG = 0;       ///< of that, what there is no wax for
};

struct WaxFlow {
    std::vector<WaxFlowRaw> raw;
    double rawG = 0;
    int rawNotWeighed = 0;
    double honeyG = 0;   ///< dripped into buckets
    double waitsG = 0;   ///< raw wax not gone on yet
    double awayG = 0;    ///< washed away: by difference
    double washedG = 0;  ///< what went on, washed and weighed, else what came of it
    bool washedWeighed = false;
    double washedWaitsG = 0;         ///< washed and not melted yet
    double slumgumG = 0;             ///< and foot scraped off
    std::optional<double> missingG;  ///< between the washing and the block, where both were weighed
    double castG = 0;
    std::vector<WaxFlowShade> shades;
    double haveG = 0;  ///< blocks there now
    std::vector<WaxFlowLink> links;
    std::vector<WaxFlowWant> wants;
    double netG = 0;     ///< in the candles wanted
    double neededG = 0;  ///< block wax for them
    double shortG = 0;
    double overG = 0;
    double lossShare = 0;
    bool anything() const { return !raw.empty() || !shades.empty() || !wants.empty(); }
};

/// Of the year of the bench's day, and of earlier batches that still wait; wanted as planned.
WaxFlow waxFlow(const WaxBench& bench, const CandleEvenings* plan);

}  // namespace combwright
