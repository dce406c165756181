// The pull list for the yard: which boxes to bring, which to leave, and why; clearer boards; what
// to expect. With the cautions that belong to lifting and to honey.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/pull/pull_sheet.h"

namespace combwright {

Page pullListPage(const Read& file, const PullSheet& sheet);

}  // namespace combwright
