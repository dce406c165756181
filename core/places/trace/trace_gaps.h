// What a trace cannot know, said beside what it knows. Silence would be taken for "nothing more".
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace combwright {

enum class TraceGap {
    MixedInRun,     ///< which hive's honey is in which of `count` buckets of run `name`
    HiveUnknown,    ///< `count` boxes of run `name` whose hive nobody knows
    BoxUnknown,     ///< `count` boxes of run `name` that are no known box: nothing of their days
    NoBoxes,        ///< nobody wrote down which boxes the honey of run `name` came out of
    NotShared,      ///< run `name` lacks weights: its honey cannot be shared out to hives
    BoughtIn,       ///< lot `name` was bought in, from `more` where that is written down
    NoParts,        ///< nobody said what went into lot `name`
    ToppedUp,       ///< lot `name` was filled on `count` days; it is taken as mixed through
    InARing,        ///< lots that went into each other: no end
    MassUnknown,    ///< how much honey `name` held was not written down
    PartUnknown,    ///< how much of the traced honey is in `name` cannot be reckoned
    NoBuyer,        ///< `count` jars of code `name` went out to people nobody wrote down
    BulkNoBuyer,    ///< honey of `name` went out in bulk, to whom was not written down
    NoFilling,      ///< `count` jars of kind `name` went out without a code since: may be of these
    NoCode,         ///< `count` complaints of which nobody knows the jar
    MarkUnknown,    ///< `count` boxes of hive `more` in run `name` without mark: treated or not?
    StayNotWritten  ///< box `name`: since when it stood on hive `more` was not written down
};

struct TraceUnknown {
    TraceGap gap = TraceGap::MixedInRun;
    std::string name;
    std::int64_t count = 0;
    std::string more;
    bool operator==(const TraceUnknown&) const = default;
};

/// Adds it unless it is said already.
void sayOnce(std::vector<TraceUnknown>& unknown, const TraceUnknown& gap);

}  // namespace combwright
