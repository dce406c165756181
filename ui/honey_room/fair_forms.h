// The forms of a fair: the box packed in the evening, and at night only what came home.
#pragma once

#include "core/model/honey/going_out.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// The fair that was packed for; nothing where none was.
std::optional<Id<Fair>> askToPackFair(QWidget* parent, Session& session,
                                      const std::optional<Id<Fair>>& fair, Day on);
/// Whether it was kept.
bool askForFairHome(QWidget* parent, Session& session, Id<Fair> fair, Day on);

}  // namespace combwright
