#include "core/model/honey/goods.h"

#include "core/model/honey/bottling.h"

namespace combwright {

const Fields& GoodsKind::fields() {
    static const Fields all = describe(
        ownId<&GoodsKind::id>(), field<&GoodsKind::name>("name"), field<&GoodsKind::what>("what"),
        field<&GoodsKind::net>("net"), field<&GoodsKind::brim>("brim_ml"),
        field<&GoodsKind::empty>("empty"), field<&GoodsKind::lid>("lid"),
        field<&GoodsKind::price>("price"), field<&GoodsKind::note>("note"));
    return all;
}

const Fields& PackingStock::fields() {
    static const Fields all =
        describe(ownId<&PackingStock::id>(), field<&PackingStock::on>("on_day"),
                 field<&PackingStock::kind>("goods_kind"), field<&PackingStock::lid>("lid"),
                 field<&PackingStock::bought>("bought"), field<&PackingStock::counted>("counted"),
                 field<&PackingStock::supplier>("supplier"), field<&PackingStock::note>("note"),
                 field<&PackingStock::daySoFar>("day_so_far"));
    return all;
}

const Fields& GoodsCount::fields() {
    static const Fields all =
        describe(ownId<&GoodsCount::id>(), field<&GoodsCount::kind>("goods_kind"),
                 field<&GoodsCount::bottling>("bottling"), field<&GoodsCount::on>("on_day"),
                 field<&GoodsCount::count>("count"), field<&GoodsCount::why>("why"),
                 field<&GoodsCount::daySoFar>("day_so_far"));
    return all;
}

}  // namespace combwright
