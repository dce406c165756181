#include "core/actions/honey_room/room_days.h"

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
        field<&LogRoomDay::knifeChecked>("knife_checked"), field<&LogRoomDay::note>("note"));
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
    if (!log.id) {
        const bool says = !who.empty() || hands || begun || ended || roomCleaned || handsWashed ||
                          machineDry || machineWashed || knifeChecked || !note.empty();
        if (!says) return Refusal{Code::NothingToDo, "who", {}};
        return file.add(log);
    }
    if (toRow(log) == before) return Refusal{Code::NothingToDo, "who", {}};
    file.change(log);
    return log.id;
}

}  // namespace combwright
