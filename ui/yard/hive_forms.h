// The short forms for what is done with a hive as a whole or held back: to another yard, closing it
// with how the colony ended and where its boxes go, holding back and lifting a hold. Each is one
// action.
#pragma once

#include "core/model/season_info.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// What a hold is put on: a box, or the colony of a hive.
struct HeldThing {
    std::optional<Id<Box>> box;
    std::optional<Id<Hive>> hive;
    QString name;
};

/// Each says whether it was done.
bool askToMoveHive(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToCloseHive(QWidget* parent, Session& session, const Hive& hive, Day on);
bool askToHoldBack(QWidget* parent, Session& session, const HeldThing& thing, Day on);
bool askToLiftHold(QWidget* parent, Session& session, const Hold& hold, const QString& name,
                   Day on);

}  // namespace combwright
