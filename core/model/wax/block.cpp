#include "core/model/wax/block.h"

#include "core/model/wax/candle.h"

namespace combwright {

const Fields& WaxBlock::fields() {
    static const Fields all = describe(
        ownId<&WaxBlock::id>(), field<&WaxBlock::name>("name"), field<&WaxBlock::batch>("batch"),
        field<&WaxBlock::on>("on_day"), field<&WaxBlock::shade>("shade"),
        known<&WaxBlock::mass>("mass"), field<&WaxBlock::supplier>("supplier"),
        field<&WaxBlock::note>("note"), field<&WaxBlock::fromCandles>("from_candles"));
    return all;
}

const Fields& WaxUse::fields() {
    static const Fields all = describe(
        ownId<&WaxUse::id>(), field<&WaxUse::block>("block"), field<&WaxUse::on>("on_day"),
        field<&WaxUse::went>("went"), field<&WaxUse::pour>("pour"), field<&WaxUse::batch>("batch"),
        field<&WaxUse::mass>("mass"), field<&WaxUse::how>("how"), field<&WaxUse::price>("price"),
        field<&WaxUse::buyer>("buyer"), field<&WaxUse::note>("note"));
    return all;
}

}  // namespace combwright
