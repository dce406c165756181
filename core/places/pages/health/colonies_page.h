// How many colonies stood where on a day, for whoever registers yards and for the keeper's own
// losses; and which queen heads which. The same on paper and by the command line.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/yard/colonies_on.h"
#include "core/places/yard/queens.h"

namespace combwright {

/// "5 colonies on 6 stands: 3 overwintered, 2 split".
QString coloniesCountedText(const YardColonies& yard);
/// "26 of 104 at risk died: 25 % of all; 33.3 % as the mean of the yards …".
QString winterLossText(const WinterLoss& winter);
/// "Winter 2026/27: 1 of 21 at risk ended, 4.8 % of all …": in one line; empty where nobody was at
/// risk.
QString winterLossBrief(const WinterLoss& winter);

Page coloniesPage(const Read& file, const ColoniesOn& colonies);
Page queensPage(const Read& file, const Queens& queens);

}  // namespace combwright
