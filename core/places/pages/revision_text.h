// "27-2 was revised on 20 Nov: a lost box named, tag found in the truck."
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/places/honey_room/run_balance.h"

namespace combwright {

/// What was done to a run after its closing, when, and why where somebody said; the same done again
/// and again on one day is one line.
QStringList revisionTexts(const QString& run, const std::vector<RunRevision>& revisions);

}  // namespace combwright
