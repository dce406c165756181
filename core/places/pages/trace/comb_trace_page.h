// A trace sheet's part on comb jars: where the comb was built, what was given there, who has them.
#pragma once

#include <QStringList>

#include "core/places/pages/page.h"
#include "core/places/trace/comb_trace.h"

namespace combwright {

void addCombTrace(const CombTrace& traced, Day on, Page& page);
/// What cannot be known of them.
QStringList combGapTexts(const CombTrace& traced);

}  // namespace combwright
