// The small forms with which a yard, its hives and new boxes come into the file: ten seconds of
// typing each.
#pragma once

#include <optional>

#include "core/model/yard/yard.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

std::optional<Id<Yard>> askForYard(QWidget* parent, Session& session, Day on);
/// Which super +1 puts on in a yard, from now on; with the reason, as any amendment.
bool askForUsualSuper(QWidget* parent, Session& session, const Yard& yard, Day on);
/// A hive, or several alike by a row of marks; the first of them.
std::optional<Id<Hive>> askForHive(QWidget* parent, Session& session, Id<Yard> yard, Day on);
/// New boxes into the storeroom; whether any came.
bool askForBoxes(QWidget* parent, Session& session, Day on);

}  // namespace combwright
