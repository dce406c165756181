// The short forms about what leaves the shelf and what is said of it later: sold, given, kept,
// broken, come back; a complaint; a filling held back and released.
#pragma once

#include <optional>

#include "core/places/trace/trace.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether anything was kept.
bool askToGoOut(QWidget* parent, Session& session, Day on);
/// Honey out of a bucket or lot by its mass.
bool askToGoInBulk(QWidget* parent, Session& session, Day on);
/// Afterwards the trace is shown where that was wished.
bool askForComplaint(QWidget* parent, Session& session, const std::optional<Id<Bottling>>& filling,
                     Day on);
bool askToCloseComplaint(QWidget* parent, Session& session, Day on);
/// Holds a filling back, or releases it.
bool askToHoldFilling(QWidget* parent, Session& session, Id<Bottling> filling, Day on);

}  // namespace combwright
