// The workings of a place's figures as a page: for --why, and to print.
#pragma once

#include "core/places/explain/explained.h"
#include "core/places/pages/page.h"

namespace combwright {

Page explainedPage(const std::vector<Explained>& figures);

}  // namespace combwright
