// The short forms for what happens to a colony: it is split, united, it swarmed, a swarm was hived,
// it goes to live on another stand, begins or ends. Each is one action.
#pragma once

#include "core/model/yard/yard.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done.
bool askToSplit(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToUnite(QWidget* parent, Session& session, const Hive& hive, Day on);
/// A swarm is hived: into the hive where it stands empty, else it is where the swarm may have come
/// from.
bool askToHiveSwarm(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askSwarmed(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToMoveColony(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToStartColony(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToEndColony(QWidget* parent, Session& session, const Hive& hive, Day on);
/// Another mark is painted over the old one.
bool askToRelabel(QWidget* parent, Session& session, const Hive& hive, Day on);

/// The chooser of all of these by letter; whether one was done.
bool askForChange(QWidget* parent, Session& session, const Hive& hive, Day on);

}  // namespace combwright
