// Wax is kept like money: what came in has gone out, was lost, or is in stock, and what is missing
// is shown. A step cannot give more than went into it, and a year not more than it had.
#pragma once

#include <optional>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// From the raw mass to the clean block, grams. What else was weighed on the way.
struct WaxRendered {
    double rawG = 0;
    double cleanG = 0;
    double honeyG = 0;    ///< that dripped out and went into a bucket
    double slumgumG = 0;  ///< and foot scraped off
};
struct RenderedBalance {
    double lostG = 0;  ///< raw less all that came of it: honey washed out, water, dirt
    double yield = 0;  ///< clean ÷ raw
};
/// Refused: Negative or OutOfRange of each ("raw_g" above 0, "clean_g", "honey_g", "slumgum_g");
/// Contradiction "clean_g" where more came out than went in.
Result<RenderedBalance> renderedBalance(const WaxRendered& batch, Working* working = nullptr);

/// What a step took and gave, where both were weighed, grams: the difference. Refused: Negative or
/// OutOfRange "in_g", "out_g"; Contradiction "out_g" where it is above what went in.
Result<double> waxStepLossG(double inG, double outG);

/// Clean wax over a time, grams.
struct WaxMoved {
    double openingG = 0;   ///< blocks at its start
    double castG = 0;      ///< blocks cast from batches
    double broughtG = 0;   ///< bought or given to us
    double returnedG = 0;  ///< failed or broken candles melted again
    double pouredG = 0;    ///< taken for candles, good and failed
    double givenG = 0;     ///< blocks sold, given, traded for foundation
    double lostG = 0;      ///< known to be lost: pot film, re-melt, spilt
    std::optional<double>
        countedG;  ///< blocks as they were weighed at its end; nothing: not weighed
};
struct WaxYearBalance {
    double inG = 0;                  ///< opening, cast, brought and returned
    double outG = 0;                 ///< poured, given and lost
    double inStockG = 0;             ///< what should be there: in − out
    std::optional<double> missingG;  ///< should be less counted; negative: more than should be
};
/// Closes to the last bit of the grams given: in = out + in stock, and in stock = counted +
/// missing. Refused: Negative or OutOfRange of each ("opening_g", "cast_g" …, "counted_g");
/// Contradiction "out_g" where more went out than there was.
Result<WaxYearBalance> waxBalance(const WaxMoved& moved, Working* working = nullptr);

}  // namespace combwright
