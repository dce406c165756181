// "27-2 was revised on 20 Nov: a lost box named, tag found in the truck."
#pragma once

#include <QString>

#include "core/places/honey_room/run_balance.h"

namespace combwright {

/// What was done to a run after its closing, when, and why where somebody said.
QString revisionText(const QString& run, const RunRevision& revision);

}  // namespace combwright
