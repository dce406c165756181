// The short forms for the queen of a hive: put in, marked, lost, moved, waited for. Each is one
// action. Of a queen nobody wrote down yet all of them may be told all the same.
#pragma once

#include "core/model/yard/yard.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done.
bool askToPutQueen(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToMarkQueen(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToLoseQueen(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToMoveQueen(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToWaitForQueen(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToEndQueenWait(QWidget* parent, Session& session, const Hive& hive, Day on);
/// The keeper's own colour for queens of years that end in a digit.
bool askForQueenColour(QWidget* parent, Session& session, Day on);

/// The chooser of all of these by letter; whether one was done.
bool askForQueen(QWidget* parent, Session& session, const Hive& hive, Day on);

}  // namespace combwright
