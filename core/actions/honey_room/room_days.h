// The log of a day in the honey room: who was there, how many pairs of hands, the ticks an
// inspector asks for. Written down piece by piece while the day goes on.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/room.h"

namespace combwright {

/// One row a day; what is said later is added to it, or stands instead of what was said of the
/// same. How warm and damp the room is, is kept with the runs that are open in it that day, as
/// OpenRun keeps it, or with the one closed last; lots stand in one air. Refused with OutOfRange
/// for hands outside 1 to 20 and as demandRoomAir, with Contradiction where it ends before it
/// began, with Missing, field "run", where the room was measured and no run was in it that day,
/// with NothingToDo where nothing new is said.
struct LogRoomDay {
    static constexpr std::string_view name = "log-room-day";
    using Answer = Id<RoomDay>;
    Day on;
    std::string who;
    std::optional<Count> hands;
    std::optional<Instant> begun;
    std::optional<Instant> ended;
    std::optional<bool> roomCleaned, handsWashed, machineDry, machineWashed, knifeChecked;
    std::string note;
    std::optional<Temperature> room;
    std::optional<Share> damp;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What may stand in the log, whoever writes it. Refused as LogRoomDay.
Result<void> demandRoomDay(const RoomDay& log);

}  // namespace combwright
