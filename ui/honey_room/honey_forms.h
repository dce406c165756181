// The forms of what is read, told and done of the honey in a bucket or lot. Each says live what the
// figure typed would come to, and closes only when it was kept.
#pragma once

#include <QLineEdit>

#include "core/places/honey/vessel.h"
#include "ui/shell/session.h"

namespace combwright {

/// Water with the instrument behind it. A reading that is not right at 20 °C is asked about openly:
/// it stays as read, or the corrected figure is taken with it.
bool askToReadWater(QWidget* parent, Session& session, const VesselView& view, Day on);
/// Strainer, colour, taste, place, lid, kind of bucket or what the tank holds.
bool askToDescribe(QWidget* parent, Session& session, const VesselView& view, Day on);
/// Warmed, dried, creamed or skimmed; what the warmth costs stands there before it is kept.
bool askToWorkHoney(QWidget* parent, Session& session, const VesselView& view, Day on);
bool askToWeighLeft(QWidget* parent, Session& session, const VesselView& view, Day on);
/// The lot that was bought; nothing where nothing was kept.
std::optional<Id<Lot>> askToBuyHoney(QWidget* parent, Session& session, Day on);
bool askToHoldHoney(QWidget* parent, Session& session, const VesselView& view, Day on);
/// Of its own holds; what it has from its parts is lifted there, which is told.
bool askToLiftHoneyHold(QWidget* parent, Session& session, const VesselView& view, Day on);
/// The name of a new lot; nothing where none was typed, which was then told.
std::optional<Name> lotNameTyped(Session& session, QLineEdit* field);
/// Whose limits the keeper goes by, and the line of water of their own.
bool askForLimits(QWidget* parent, Session& session, Day on);

}  // namespace combwright
