// Reckoned and got: the rates a season was planned with, beside what its own runs say of them. A
// new value is offered, never taken by itself: the keeper takes it, from the next season on, and
// the old one stays in the history. Where it was published how far a general value may be off, the
// new one is the mean of both by their doubts; else own runs stand alone.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/season_info.h"
#include "core/places/honey_room/run_rates.h"
#include "core/places/season_book/season_yield.h"
#include "core/trade/honey/season_sums.h"

namespace combwright {

enum class GotWhat {
    Frame,      ///< honey a frame of one kind, g
    Load,       ///< minutes a load turns
    Cappings,   ///< wet cappings as a share of the honey, 0 to 1
    Uncapping,  ///< minutes a frame takes at the knife
    Fill,       ///< how full boxes were judged, against the scales; as shares, 0 to 1
};

/// Lowest and highest of the single runs.
struct GotSpread {
    double low = 0;
    double high = 0;
};

/// The rule a new value comes by.
enum class LearnedBy {
    WithPublished,  ///< mean of the published value and own runs, each by how surely it is known
    OwnAlone,       ///< nobody published how far the general value may be off: own runs alone
    AsTheyCame,     ///< frames whose fill nobody noted: the published value is for full ones
};

/// Where a new value comes from. Every run up to then speaks, not only those of the season.
struct Learned {
    LearnedBy by = LearnedBy::OwnAlone;
    double value = 0;             ///< before it is rounded as it would be kept
    std::optional<double> doubt;  ///< how far it may be off; none where one run alone speaks
    std::optional<double> published, publishedDoubt;
    std::string publishedSource;
    std::vector<double> seen;  ///< run by run, or load by load
    double seenMean = 0;
    std::optional<double> doubtOfOne;  ///< how far one of them may be off by chance
    std::vector<FrameYield> tallies;   ///< of frames, box by box, of all these runs
    RateSum sum;                       ///< of the others
};

struct GotLine {
    GotWhat what = GotWhat::Frame;
    std::string constant;          ///< the one a new value would replace
    std::string kind;              ///< the frame's name, without what stands in brackets
    std::optional<Id<Yard>> yard;  ///< for that yard alone, where yards differ
    std::string yardName;
    double rate = 0;   ///< the constant as it was in force
    bool own = false;  ///< set by the keeper; else published
    std::string rateSource;
    double reckoned = 0;  ///< what was to be expected, comparable with got
    double got = 0;
    How how = How::Unknown;             ///< of got
    std::optional<double> filledShare;  ///< of frames: what the rate was multiplied with
    double offered = 0;                 ///< the constant's new value, rounded as it would be kept
    std::optional<Learned> learned;     ///< none: nothing is offered, what is shown is for the eye
    std::optional<GotSpread> spread;    ///< of got; none for a single run
    std::optional<double> boxSpread;    ///< of the fill: how far one box is off beside the mean
    int runs = 0;
    std::int64_t counted = 0;         ///< frames, loads or boxes
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
/// Where yards differ by more than their doubts together, each yard's own line follows.
ReckonedAndGot reckonedAndGot(const Read& file, const SeasonYield& season, Day today);

/// The same after one run: what it gave, and what is offered from it and those before it.
ReckonedAndGot reckonedAndGotOfRun(const Read& file, const RunBalance& balance, Day today);

}  // namespace combwright
