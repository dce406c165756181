// One thing that is due, and the record it follows from. Nothing here is a diary somebody must
// maintain: every item is reckoned anew from what was seen, put in, pulled or frozen, so it goes
// away by itself when the work is written down.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/due.h"
#include "core/model/yard/yard.h"
#include "core/trade/colony/mite_rate.h"
#include "core/units/mass.h"

namespace combwright {

/// Where the work is done.
enum class DueWhere { Yard, Pull, HoneyRoom, Storeroom, WaxBench };

/// Something to take along for it. The key of a word: "feeder", "wash jar", "medium super".
struct DueKit {
    std::string item;
    std::int64_t count = 1;
    std::optional<Mass> mass = std::nullopt;  ///< of feed, instead of a count
};

struct DueItem {
    DueRule rule = DueRule::Task;
    DueWhere where = DueWhere::Yard;
    std::optional<Id<Yard>> yard = std::nullopt;
    std::optional<Id<Hive>> hive = std::nullopt;
    /// Stays the same as long as it is the same thing: "mites-h12-2027-06-09". It becomes the id of
    /// the calendar entry.
    std::string id = {};
    Day since;  ///< of the record it follows from
    Day from;   ///< from that day on it can be done
    /// The last good day; late after it. None: any day from then on.
    std::optional<Day> by = std::nullopt;
    std::optional<Day> other =
        std::nullopt;        ///< a second day its sentence needs: queen out, first flow
    std::string about = {};  ///< a box, a run, a medicine, the keeper's own words
    std::optional<std::int64_t> count = std::nullopt;  ///< frames, hives, days: by rule
    std::optional<double> value = std::nullopt;        ///< a share, a line per 100: by rule
    std::optional<Mass> mass = std::nullopt;
    std::optional<MiteRate> rate = std::nullopt;
    std::optional<double> perDay = std::nullopt;  ///< mites a day on a board
    std::string source = {};                      ///< who says so: by rule
    /// The day the list was asked for: a day of another year is said with it.
    std::optional<Day> asked = std::nullopt;
    bool leaveShut = false;  ///< until `from` the hive must not be opened
    std::vector<DueKit> take = {};
    std::optional<double> minutes = std::nullopt;  ///< none: not known
};

}  // namespace combwright
