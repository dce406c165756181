// The short forms of the health page: medicines bought, given, taken out and disposed of, a finding
// with its signs, and the lines and days the keeper goes by. What a deed comes to is said before it
// is kept; a form advises no dose and names no disease. What is half typed comes back.
#pragma once

#include "core/model/yard/yard.h"
#include "ui/shell/session.h"
#include "ui/yard/hives_field.h"

class QWidget;

namespace combwright {

/// Each says whether it was done. Where no medicine is written down yet the first asks for one
/// before.
bool askToTreat(QWidget* parent, Session& session, const Yard& yard, const HivesAsked& hives,
                Day on);
bool askToTakeOutMedicine(QWidget* parent, Session& session, const Yard& yard,
                          const HivesAsked& hives, Day on);
bool askToBuyMedicine(QWidget* parent, Session& session, Day on);
bool askToDisposeMedicine(QWidget* parent, Session& session, Day on);
bool askForFinding(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askForMiteLine(QWidget* parent, Session& session, const Yard& yard, Day on);
bool askForPhaseDay(QWidget* parent, Session& session, const Yard& yard, Day on);
bool askForTables(QWidget* parent, Session& session, Day on);

}  // namespace combwright
