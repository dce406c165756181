// The short forms of candles: pours, finishing, what is wanted by when, and the evenings there are.
#pragma once

#include "core/units/day.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done.
bool askToPour(QWidget* parent, Session& session, Day on);
bool askToFinish(QWidget* parent, Session& session, Day on);
bool askToWish(QWidget* parent, Session& session, Day on);
bool askToDropWish(QWidget* parent, Session& session, Day on);
bool askForEvenings(QWidget* parent, Session& session, Day on);
bool askForEvening(QWidget* parent, Session& session, Day on);

}  // namespace combwright
