// The short forms of the freezer: a round goes in, comes out, is spoilt; and what the freezer is
// like. What the plan says stands in the form already; whether the cold will do is said before it
// is kept.
#pragma once

#include "core/model/storeroom/equipment.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done. With no freezer written down yet the first asks for one before.
bool askToFreeze(QWidget* parent, Session& session, Day on);
bool askToTakeOut(QWidget* parent, Session& session, Day on);
/// `boxes` as typed: "M01, M02".
bool askToSpoil(QWidget* parent, Session& session, const QString& boxes, Day on);
/// What stands there already is shown, and only what is changed is kept.
bool askToDescribeFreezer(QWidget* parent, Session& session, const std::optional<Equipment>& known,
                          Day on);

}  // namespace combwright
