#include "core/model/honey/lot.h"

namespace combwright {

const Fields& Lot::fields() {
    static const Fields all =
        describe(ownId<&Lot::id>(), field<&Lot::name>("name"), field<&Lot::on>("on_day"),
                 field<&Lot::origin>("origin"), known<&Lot::net>("net"),
                 field<&Lot::tankHolds>("tank_holds"), field<&Lot::lidded>("lidded"),
                 part<&Lot::traits>(), field<&Lot::supplier>("supplier"), field<&Lot::note>("note"),
                 field<&Lot::reason>("reason"), field<&Lot::tankWide>("tank_wide"));
    return all;
}

const Fields& LotPart::fields() {
    static const Fields all = describe(
        ownId<&LotPart::id>(), field<&LotPart::lot>("lot"), field<&LotPart::bucket>("bucket"),
        field<&LotPart::from>("from_lot"), field<&LotPart::on>("on_day"),
        field<&LotPart::mass>("mass"), field<&LotPart::how>("how"));
    return all;
}

const Fields& WaterReading::fields() {
    static const Fields all = describe(
        ownId<&WaterReading::id>(), field<&WaterReading::bucket>("bucket"),
        field<&WaterReading::lot>("lot"), field<&WaterReading::on>("on_day"),
        field<&WaterReading::water>("water"), field<&WaterReading::index>("refractive_index"),
        field<&WaterReading::brix>("brix"), field<&WaterReading::temperature>("temperature"),
        field<&WaterReading::compensates>("compensates"),
        field<&WaterReading::corrected>("corrected"),
        field<&WaterReading::instrument>("instrument"),
        field<&WaterReading::calibrated>("calibrated"), field<&WaterReading::note>("note"));
    return all;
}

const Fields& HoneyStep::fields() {
    static const Fields all = describe(
        ownId<&HoneyStep::id>(), field<&HoneyStep::bucket>("bucket"), field<&HoneyStep::lot>("lot"),
        field<&HoneyStep::on>("on_day"), field<&HoneyStep::work>("work"),
        field<&HoneyStep::temperature>("temperature"), field<&HoneyStep::minutes>("minutes"),
        known<&HoneyStep::after>("after"), field<&HoneyStep::note>("note"));
    return all;
}

const Fields& HoneyLeft::fields() {
    static const Fields all =
        describe(ownId<&HoneyLeft::id>(), field<&HoneyLeft::bucket>("bucket"),
                 field<&HoneyLeft::lot>("lot"), field<&HoneyLeft::on>("on_day"),
                 known<&HoneyLeft::left>("left_over"), field<&HoneyLeft::note>("note"));
    return all;
}

}  // namespace combwright
