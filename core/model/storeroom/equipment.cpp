#include "core/model/storeroom/equipment.h"

namespace combwright {

const Fields& Equipment::fields() {
    static const Fields all =
        describe(ownId<&Equipment::id>(), field<&Equipment::item>("item"),
                 field<&Equipment::name>("name"), field<&Equipment::frameKind>("frame_kind"),
                 field<&Equipment::onHand>("on_hand"), field<&Equipment::inRepair>("in_repair"),
                 field<&Equipment::lent>("lent"), field<&Equipment::litres>("litres"),
                 field<&Equipment::coldest>("coldest"), field<&Equipment::holds>("holds"),
                 field<&Equipment::radius>("radius"), field<&Equipment::rpm>("rpm"),
                 field<&Equipment::capacity>("capacity"), field<&Equipment::since>("since"),
                 field<&Equipment::note>("note"), field<&Equipment::wide>("wide"));
    return all;
}

const Fields& EquipmentCount::fields() {
    static const Fields all =
        describe(ownId<&EquipmentCount::id>(), field<&EquipmentCount::equipment>("equipment"),
                 field<&EquipmentCount::on>("on_day"), field<&EquipmentCount::onHand>("on_hand"),
                 field<&EquipmentCount::inRepair>("in_repair"),
                 field<&EquipmentCount::lent>("lent"), field<&EquipmentCount::why>("why_fewer"));
    return all;
}

const Fields& FreezerRound::fields() {
    static const Fields all = describe(
        ownId<&FreezerRound::id>(), field<&FreezerRound::freezer>("freezer"),
        field<&FreezerRound::in>("in_day"), field<&FreezerRound::inAt>("in_at"),
        field<&FreezerRound::hours>("hours"), field<&FreezerRound::out>("out_day"),
        field<&FreezerRound::outAt>("out_at"), field<&FreezerRound::temperature>("temperature"),
        field<&FreezerRound::measured>("measured"), field<&FreezerRound::note>("note"),
        field<&FreezerRound::packed>("packed"));
    return all;
}

const Fields& FreezerLoad::fields() {
    static const Fields all =
        describe(ownId<&FreezerLoad::id>(), field<&FreezerLoad::round>("round"),
                 field<&FreezerLoad::box>("box"), field<&FreezerLoad::frameKind>("frame_kind"),
                 field<&FreezerLoad::frames>("frames"), field<&FreezerLoad::stale>("stale"),
                 field<&FreezerLoad::staleWhy>("stale_why"), field<&FreezerLoad::faults>("faults"));
    return all;
}

}  // namespace combwright
