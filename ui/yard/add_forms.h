// The two small forms with which a yard and its hives come into the file: ten seconds of typing
// each.
#pragma once

#include <optional>

#include "core/model/yard/yard.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

std::optional<Id<Yard>> askForYard(QWidget* parent, Session& session, Day on);
std::optional<Id<Hive>> askForHive(QWidget* parent, Session& session, Id<Yard> yard, Day on);

}  // namespace combwright
