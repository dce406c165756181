#include "core/model/honey/room.h"

namespace combwright {

const Fields& Peg::fields() {
    static const Fields all =
        describe(ownId<&Peg::id>(), field<&Peg::number>("number"), field<&Peg::box>("box"),
                 field<&Peg::hive>("hive"), field<&Peg::on>("on_day"), field<&Peg::off>("off_day"));
    return all;
}

const Fields& SlotFrame::fields() {
    static const Fields all = describe(
        ownId<&SlotFrame::id>(), field<&SlotFrame::load>("load"), field<&SlotFrame::slot>("slot"),
        field<&SlotFrame::box>("box"), field<&SlotFrame::heft>("heft"));
    return all;
}

const Fields& SetAside::fields() {
    static const Fields all =
        describe(ownId<&SetAside::id>(), field<&SetAside::extraction>("extraction"),
                 field<&SetAside::box>("box"), field<&SetAside::on>("on_day"),
                 field<&SetAside::frames>("frames"), field<&SetAside::why>("reason"),
                 field<&SetAside::became>("became"), field<&SetAside::becameOn>("became_on"),
                 field<&SetAside::note>("note"));
    return all;
}

const Fields& GateOpening::fields() {
    static const Fields all = describe(
        ownId<&GateOpening::id>(), field<&GateOpening::extraction>("extraction"),
        field<&GateOpening::on>("on_day"), field<&GateOpening::at>("at"),
        field<&GateOpening::afterLoad>("after_load"), field<&GateOpening::runEmpty>("run_empty"));
    return all;
}

const Fields& ClearerBoard::fields() {
    static const Fields all =
        describe(ownId<&ClearerBoard::id>(), field<&ClearerBoard::hive>("hive"),
                 field<&ClearerBoard::on>("on_day"), field<&ClearerBoard::off>("off_day"),
                 field<&ClearerBoard::note>("note"));
    return all;
}

const Fields& RoomDay::fields() {
    static const Fields all = describe(
        ownId<&RoomDay::id>(), field<&RoomDay::on>("on_day"), field<&RoomDay::who>("who"),
        field<&RoomDay::hands>("hands"), field<&RoomDay::begun>("begun"),
        field<&RoomDay::ended>("ended"), field<&RoomDay::roomCleaned>("room_cleaned"),
        field<&RoomDay::handsWashed>("hands_washed"), field<&RoomDay::machineDry>("machine_dry"),
        field<&RoomDay::machineWashed>("machine_washed"),
        field<&RoomDay::knifeChecked>("knife_checked"), field<&RoomDay::note>("note"));
    return all;
}

}  // namespace combwright
