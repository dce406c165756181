// The log of a day in the honey room, with a pencil: who was there, what was cleaned and checked,
// when it began and ended; and, above it, what can hurt there. Typed back line by line in the form
// of the honey room.
#pragma once

#include <QStringList>

#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/page.h"

namespace combwright {

/// What is known of the day stands in it already; a second log without a day stands below.
Page dayLogPage(const Read& file, Day on);

/// What can hurt in the honey room, said once a day, a few words each: knife, drum, sockets,
/// children, lifting, infants. For paper, the window and its help alike.
QStringList roomSafety();
/// The one of them about lifting.
QString liftSafety();

}  // namespace combwright
