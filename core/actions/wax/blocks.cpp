#include "core/actions/wax/blocks.h"

#include "core/actions/wax/wax_rules.h"

namespace combwright {

const Fields& CastBlock::fields() {
    static const Fields all =
        describe(field<&CastBlock::on>("on"), field<&CastBlock::block>("name"),
                 field<&CastBlock::batch>("batch"), field<&CastBlock::shade>("shade"),
                 known<&CastBlock::mass>("mass"), field<&CastBlock::supplier>("supplier"),
                 field<&CastBlock::fromCandles>("from_candles"), field<&CastBlock::note>("note"));
    return all;
}

Result<Id<WaxBlock>> CastBlock::perform(Write& file) const {
    WaxBlock made;
    made.name = block;
    made.batch = batch;
    made.on = on;
    made.shade = shade;
    made.mass = mass;
    made.supplier = supplier;
    made.fromCandles = fromCandles;
    made.note = note;
    if (auto ok = demandBlock(file, made); !ok) return ok.error();
    file.add(made);
    if (auto ok = demandBatchLedger(file, batch, "mass_g"); !ok) return ok.error();
    return made.id;
}

const Fields& UseWax::fields() {
    static const Fields all = describe(
        field<&UseWax::on>("on"), field<&UseWax::block>("block"), field<&UseWax::went>("went"),
        field<&UseWax::mass>("mass"), field<&UseWax::how>("how"), field<&UseWax::batch>("batch"),
        field<&UseWax::price>("price"), field<&UseWax::buyer>("buyer"),
        field<&UseWax::note>("note"));
    return all;
}

Result<Id<WaxUse>> UseWax::perform(Write& file) const {
    if (went == WaxWent::Poured)
        return Refusal{Code::OtherAction, "went", {{"action", "pour-candles"}}};
    if ((went == WaxWent::MeltedAgain) != batch.has_value())
        return Refusal{batch ? Code::Contradiction : Code::Missing, "batch", {{"other", "went"}}};
    WaxUse use;
    use.block = block;
    use.on = on;
    use.went = went;
    use.batch = batch;
    use.mass = mass;
    use.how = how.value_or(How::Weighed);
    use.price = price;
    use.buyer = buyer;
    use.note = note;
    if (mass <= Mass()) return Refusal{Code::OutOfRange, "mass_g", {{"low", "1"}}};
    file.add(use);
    if (auto ok = demandBlockLedger(file, block, "mass_g"); !ok) return ok.error();
    return use.id;
}

}  // namespace combwright
