// History and differences as pages: to be read in the terminal, looked at in the window and pinned
// to the wall when two people wrote into two copies.
#pragma once

#include <QString>
#include <vector>

#include "core/places/copies/differences.h"
#include "core/places/copies/history_steps.h"
#include "core/places/pages/page.h"

namespace combwright {

/// The steps by day, newest first, what was taken back marked.
Page historyPage(const Read& file, const std::vector<HistoryStep>& steps);

/// What the two sides are called stands over their columns: two days, "planned" and "done".
Page differencesPage(const Read& file, const Differences& differences, const QString& first,
                     const QString& second);

/// "2 added, 1 changed, none gone".
QString differencesSum(const Differences& differences);

}  // namespace combwright
