// What one run says of the rates a season is planned with: honey a frame by kind, how far the eye
// was off, minutes at the knife and in the machine, wet cappings. Only what was weighed or timed
// speaks; nothing is filled in.
#pragma once

#include <map>
#include <vector>

#include "core/model/frames/box.h"
#include "core/places/honey_room/run_balance.h"
#include "core/trade/honey/season_sums.h"

namespace combwright {

/// A sum of parts over a sum of what they are shares of: minutes over loads, cappings over honey.
struct RateSum {
    double over = 0;
    double under = 0;
    std::vector<double> each;  ///< of single loads or runs

    void add(double partOver, double partUnder) {
        over += partOver;
        under += partUnder;
        each.push_back(partOver / partUnder);
    }
    void add(const RateSum& other) {
        over += other.over;
        under += other.under;
        each.insert(each.end(), other.each.begin(), other.each.end());
    }
    double rate() const { return over / under; }
    bool empty() const { return each.empty(); }
};

struct RunRates {
    Extraction run;
    std::map<std::int64_t, FrameKind> kinds;
    std::map<std::int64_t, std::vector<FrameYield>> frames;  ///< by kind, box by box
    RateSum uncapping;                                       ///< minutes over frames, load by load
    RateSum spinning;                                        ///< minutes over loads, load by load
    RateSum cappings;           ///< wet cappings over what left the boxes, g
    std::vector<double> fills;  ///< judged less weighed, box by box, as shares of full frames
    double fillsJudged = 0;     ///< sum of what was judged, a share a box
};

/// @param balance  of the run as it stands; one shared out by eye says nothing of frames
RunRates runRates(const Read& file, const RunBalance& balance);

/// Of every run up to a day that can be shared out, oldest first.
std::vector<RunRates> runRatesUpTo(const Read& file, Day last);

}  // namespace combwright
