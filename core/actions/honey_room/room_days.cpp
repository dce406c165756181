#include "core/actions/honey_room/room_days.h"

#include <algorithm>

#include "core/actions/honey_room/run_rules.h"
#include "core/storage/queries/runs.h"

namespace combwright {
namespace {

constexpr std::int64_t mostHands = 20;

template <class T>
void takeLogged(std::optional<T>& present, const std::optional<T>& said) {
    if (said) present = said;
}

void takeLogged(std::string& present, const std::string& said) {
    if (!said.empty()) present = said;
}

/// Says whether anything is new.
Result<bool> keepAir(Write& file, const LogRoomDay& said) {
    if (!said.room && !said.damp) return false;
    auto runs = runsInRoom(file, said.on);
    if (runs.empty()) return Refusal{Code::Missing, "run", {{"day", isoText(said.on)}}};
    const bool anyOpen =
        std::any_of(runs.begin(), runs.end(), [](const Extraction& run) { return !run.closed; });
    // Of runs closed by the evening the newest keeps it.
    if (anyOpen)
        std::erase_if(runs, [](const Extraction& run) { return run.closed.has_value(); });
    else
        runs.erase(runs.begin(), runs.end() - 1);
    bool news = false;
    for (Extraction& run : runs) {
        const Row before = toRow(run);
        takeLogged(run.room, said.room);
        takeLogged(run.damp, said.damp);
        if (auto ok = demandRoomAir(run); !ok) return ok.error();
        if (toRow(run) == before) continue;
        file.change(run);
        news = true;
    }
    return news;
}

}  // namespace

Result<void> demandRoomDay(const RoomDay& log) {
    if (log.hands && (*log.hands < Count(1) || *log.hands > Count(mostHands)))
        return Refusal{
            Code::OutOfRange, "hands", {{"low", "1"}, {"high", std::to_string(mostHands)}}};
    if (log.begun && log.ended && *log.ended < *log.begun)
        return Refusal{Code::Contradiction, "ended", {{"other", "begun"}}};
    return {};
}

const Fields& LogRoomDay::fields() {
    static const Fields all = describe(
        field<&LogRoomDay::on>("on"), field<&LogRoomDay::who>("who"),
        field<&LogRoomDay::hands>("hands"), field<&LogRoomDay::begun>("begun"),
        field<&LogRoomDay::ended>("ended"), field<&LogRoomDay::roomCleaned>("room_cleaned"),
        field<&LogRoomDay::handsWashed>("hands_washed"),
        field<&LogRoomDay::machineDry>("machine_dry"),
        field<&LogRoomDay::machineWashed>("machine_washed"),
        field<&LogRoomDay::knifeChecked>("knife_checked"), field<&LogRoomDay::note>("note"),
        field<&LogRoomDay::room>("room"), field<&LogRoomDay::damp>("damp"));
    return all;
}

Result<Id<RoomDay>> LogRoomDay::perform(Write& file) const {
    RoomDay log;
    if (auto present = file.first<RoomDay>({is("on_day", on)})) log = *std::move(present);
    const Row before = toRow(log);
    log.on = on;
    takeLogged(log.who, who);
    takeLogged(log.hands, hands);
    takeLogged(log.begun, begun);
    takeLogged(log.ended, ended);
    takeLogged(log.roomCleaned, roomCleaned);
    takeLogged(log.handsWashed, handsWashed);
    takeLogged(log.machineDry, machineDry);
    takeLogged(log.machineWashed, machineWashed);
    takeLogged(log.knifeChecked, knifeChecked);
    takeLogged(log.note, note);
    if (auto ok = demandRoomDay(log); !ok) return ok.error();
    const auto air = keepAir(file, *this);
    if (!air) return air.error();
    if (!log.id) {
        const bool says = *air || !who.empty() || hands || begun || ended || roomCleaned ||
                          handsWashed || machineDry || machineWashed || knifeChecked ||
                          !note.empty();
        if (!says) return Refusal{Code::NothingToDo, "who", {}};
        return file.add(log);
    }
    const bool same = toRow(log) == before;
    if (same && !*air) return Refusal{Code::NothingToDo, "who", {}};
    if (!same) file.change(log);
    return log.id;
}

}  // namespace combwright
