// The short forms from the knife to the clean block, and the pot on heat.
#pragma once

#include "core/units/day.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done.
bool askToGatherWax(QWidget* parent, Session& session, Day on);
bool askToWorkWax(QWidget* parent, Session& session, Day on);
bool askToKeepWax(QWidget* parent, Session& session, Day on);
bool askToCastBlock(QWidget* parent, Session& session, Day on);
bool askToUseWax(QWidget* parent, Session& session, Day on);
bool askToHeatWax(QWidget* parent, Session& session, Day on);

/// What is said wherever wax is heated.
QString hotWaxCaution();

}  // namespace combwright
