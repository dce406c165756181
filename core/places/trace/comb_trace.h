// Comb jars asked for by their code: which hive the comb was built on and when, what was given to
// it meanwhile, and who has them. They go through no bucket: their way is short, and it is told
// like that of a jar.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/places/storeroom/comb_projects.h"
#include "core/places/trace/trace_forward.h"

namespace combwright {

struct CombTrace {
    CombProject comb;
    std::vector<TracedOut> out;    ///< of that kind since they were lidded, by day
    std::int64_t otherSets = 0;    ///< lidded sets sold as the same kind: it may be of those
    std::int64_t nobodyKnows = 0;  ///< sold or given to people nobody wrote down
};

/// The set a code stands on, else the one of that name; none where there is none.
std::optional<Id<HiveProject>> combCalled(const Read& file, const std::string& code);
CombTrace combTrace(const Read& file, const HiveProject& project, Day on);

}  // namespace combwright
