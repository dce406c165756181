#include "core/places/trace/trace_gaps.h"

#include <algorithm>

namespace combwright {

void sayOnce(std::vector<TraceUnknown>& unknown, const TraceUnknown& gap) {
    if (std::find(unknown.begin(), unknown.end(), gap) == unknown.end()) unknown.push_back(gap);
}

}  // namespace combwright
