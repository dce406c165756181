// The short forms of propolis and of small projects on a hive.
#pragma once

#include "core/units/day.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done.
bool askAboutPropolis(QWidget* parent, Session& session, Day on);
bool askToStartProject(QWidget* parent, Session& session, Day on);
bool askToWorkProject(QWidget* parent, Session& session, Day on);
bool askToLookAtProject(QWidget* parent, Session& session, Day on);

}  // namespace combwright
