// The honey room as JSON: loads as they hang, the gate, the day. Keys are a promise.
#pragma once

#include <QJsonArray>
#include <QJsonObject>

#include "core/places/honey_room/gate_minder.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/places/honey_room/room_day.h"

namespace combwright::cli {

QJsonObject loadObject(const SheetLoad& load);
QJsonObject machineObject(const LoadSheet& sheet);
QJsonObject gateObject(const std::string& run, const GateMinder& minder);
QJsonObject roomDayObject(const RoomDaySheet& sheet);

}  // namespace combwright::cli
