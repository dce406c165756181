// What was left half done, in words: what it is, how far it came, and what carries it on.
#pragma once

#include <QStringList>

#include "core/places/today/half_done.h"
#include "core/places/today/year_ribbon.h"

namespace combwright {

/// "Visit, Mill Lane, Wed 4 Aug", "Run 27-2", "Box without a tag".
QString halfDoneTitle(const HalfDone& half);
/// Two short lines: how far it came, what is open.
QStringList halfDoneLines(const HalfDone& half, Day today);
/// What carries it on, for its button: "Carry on", "Name it".
QString halfDoneAction(const HalfDone& half);

/// The lane's name: "Yard visits".
QString laneText(RibbonWork work);

}  // namespace combwright
