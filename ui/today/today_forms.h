// The two short forms of Today: a note to oneself, and a rule one does not want to hear of.
#pragma once

#include "core/places/due/due_list.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Asks for a note and writes it down; whether it did. The yard stands there already where one is
/// given.
bool askForTask(QWidget* parent, Session& session, std::optional<Id<Yard>> yard);

/// Asks why, for how long and for what, then quiets the rule of one of these; whether it did.
bool askForQuiet(QWidget* parent, Session& session, const std::vector<DueItem>& items,
                 const QString& hive, const QString& yard);

}  // namespace combwright
