// Reckoned and got: the rates a season was planned with, beside what its own runs say of them. A
// new value is offered, never taken by itself: the keeper takes it, from the next season on, and
// the old one stays in the history.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/season_info.h"
#include "core/places/season_yield.h"
#include "core/trade/honey/season_sums.h"

namespace combwright {

enum class GotWhat {
    Frame,     ///< honey a frame of one kind, g
    Load,      ///< minutes a load turns
    Cappings,  ///< wet cappings as a share of the honey, 0 to 1
};

/// Lowest and highest of the single runs.
struct GotSpread {
    double low = 0;
    double high = 0;
};

struct GotLine {
    GotWhat what = GotWhat::Frame;
    std::string constant;  ///< the one a new value would replace
    std::string kind;      ///< the frame's name, without what stands in brackets
    double rate = 0;       ///< the constant as it was in force
    bool own = false;      ///< set by the keeper; else published
    std::string rateSource;
    double reckoned = 0;  ///< what was to be expected, comparable with got
    double got = 0;
    How how = How::Unknown;             ///< of got
    std::optional<double> filledShare;  ///< of frames: what the rate was multiplied with
    double offered = 0;                 ///< the constant's new value, rounded as it would be kept
    std::optional<GotSpread> spread;    ///< of got; none for a single run
    int runs = 0;
    std::int64_t counted = 0;         ///< frames or loads
    std::optional<Constant> taken;    ///< the keeper took what is offered
    std::vector<FrameYield> tallies;  ///< of frames, box by box
    double over = 0, under = 0;       ///< of the others: got is over / under
};

struct ReckonedAndGot {
    int year = 0;
    Day from;            ///< a new value would hold from that day on
    std::string source;  ///< "own runs of 2027"
    std::vector<GotLine> lines;
};

/// From the runs whose boxes were weighed full and wet; a line only where there is something to
/// compare. A past season's new values hold from today on: what was reckoned since stays as it was.
ReckonedAndGot reckonedAndGot(const Read& file, const SeasonYield& season, Day today);

}  // namespace combwright
