// The water of a box's honey as it stands on its tag, typed behind its weight. It is kept with the
// looks into the box, without saying anything anew of its frames.
#pragma once

#include <QString>
#include <optional>

#include "core/model/frames/box.h"
#include "ui/shell/session.h"

namespace combwright {

/// Within a deed of several. Refused as LookBox and Amend.
/// @param percent  of the honey's mass; none: it is not known any more
Result<void> keepBoxWater(Season& season, Id<Box> box, std::optional<double> percent, Day on);

/// By itself, today. False where it was refused; that is told.
bool keepBoxWater(Session& session, Id<Box> box, double percent);

/// Why the water of a box nobody knows is not kept, and what to do with the figure.
QString waterOfUnknownBox(const QString& called);

}  // namespace combwright
