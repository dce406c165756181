// What is meant by the word somebody types into a trace: the code on a jar, a bucket or a lot, a
// run, a hive, a box, comb jars; one name may be several of these, and then it is asked back.
#pragma once

#include <string>
#include <vector>

#include "core/places/trace/trace.h"
#include "core/support/result.h"

namespace combwright {

/// All that bears the name, in this order; refused with NotFound "trace" where nothing does, and
/// with Ambiguous where only things of one sort do, and several.
Result<std::vector<TraceOf>> tracesNamed(const Read& file, const std::string& name, Day on);

/// "filling L27-3-1", "bucket B1 of 27-2", "hive H2", with what sort of thing it is.
std::string_view traceSort(const TraceOf& of);  ///< "bottling", "bucket", "lot", "run", …

}  // namespace combwright
