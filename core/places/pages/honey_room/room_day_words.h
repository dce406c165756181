// What is said of a load's slots, of the gate and of the day: the same lines on paper, in the
// window and on the command line.
#pragma once

#include <QString>
#include <QStringList>

#include "core/places/honey_room/gate_minder.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/places/honey_room/room_day.h"

namespace combwright {

/// "1 M14 h, 2 M12 m, 3 empty, …", slot by slot; with how the frame felt where that was said.
QString loadSlotsText(const SheetLoad& load);
/// "off 210 g by eye, may be 640 g", with "proven" where every frame was weighed or "no nearer with
/// these masses".
QString loadDoubtText(const SheetLoad& load);
/// "33 kg in the drum since the gate was open: open it before load 3." and what else it asks for,
/// a line each; empty where it asks for nothing.
QStringList gateLines(const GateMinder& minder);
/// The plan, where the day stands, what would save time; a line each.
QStringList roomDayLines(const RoomDaySheet& sheet);

}  // namespace combwright
