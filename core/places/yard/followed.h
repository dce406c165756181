// A box, a named comb or a queen through the years: from which hive to which, and on what day. What
// moved between hives carries what was in it, so the way itself is worth a page.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/model/yard/queen.h"
#include "core/places/yard/queens.h"
#include "core/storage/rows.h"

namespace combwright {

/// One step on the way of a thing.
struct WayStep {
    enum class What {
        Came,        ///< written down for the first time
        Stood,       ///< came onto `hive`, under `level` from the floor
        Went,        ///< off its hive, to `place`
        InBox,       ///< a comb was hung into `box`
        Loose,       ///< a comb lies loose, on `stack`
        Checked,     ///< a comb was looked at
        Retired,     ///< a comb is gone
        Headed,      ///< a queen came to head the colony of `hive`
        Left,        ///< and left it, as `left` says
        WithColony,  ///< her colony went to live on `hive`
        WithHive,    ///< the hive it stood on came to `yard` from `fromYard`
        Renamed,     ///< the hive it stood on was `fromHive` and is called `hive` since
    } what;
    Day on;
    std::string hive = {};  ///< as it was called that day
    std::string yard = {};
    std::string fromHive = {};
    std::string fromYard = {};
    std::string box = {};
    std::string stack = {};
    std::optional<BoxPlace> place = {};
    std::optional<Count> level = {};
    std::string faults = {};
    std::optional<Verdict> verdict = {};
    std::string note = {};
    std::optional<QueenLeft> left = {};
    std::optional<Retired> retired = {};
};

struct Followed {
    enum class Thing { Box, Comb, Queen } thing = Thing::Box;
    std::string name;  ///< as it is called now; empty for a thing without one
    std::string kind;  ///< of a box or comb
    std::optional<Queen> queen;
    std::string colour;
    std::vector<Queen> mothers;
    std::vector<Queen> daughters;
    std::vector<WayStep> way;  ///< oldest first
};

Followed followBox(const Read& file, Id<Box> box, Day until);
/// With the moves of the boxes it hung in.
Followed followComb(const Read& file, Id<Frame> frame, Day until);
Followed followQueen(const Read& file, Id<Queen> queen, Day until);

}  // namespace combwright
