// The log of a day in the honey room typed back from its sheet: the same fields in the same order.
// What is left empty stays unknown; what is known of the day stands there already.
#pragma once

#include "core/units/day.h"

class QWidget;

namespace combwright {

class Session;

/// Says whether something was kept.
bool askForDayLog(QWidget* parent, Session& session, Day on);

/// The same of today; what was kept is told.
void openDayLog(QWidget* parent, Session& session);

/// Ctrl+L opens it from a place and what is in it.
void addDayLogKey(QWidget* place, Session& session);

}  // namespace combwright
