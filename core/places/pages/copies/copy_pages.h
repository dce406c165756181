// What comes in from another copy, as a page to look at before it is done.
#pragma once

#include <QString>

#include "core/places/copies/merge_plan.h"
#include "core/places/pages/page.h"

namespace combwright {

/// What would come, what is to be chosen with both values, and what was decided without asking.
Page mergePage(const Read& file, const MergePlan& plan);

/// "New records: 3, changed: 1, …".
QString mergeSum(const MergePlan& plan);
/// "ours", "theirs", "the same", "two of them".
QString choiceText(MergeChoice choice);

}  // namespace combwright
