#include "core/model/yard/moves.h"

namespace combwright {

const Fields& HiveMove::fields() {
    static const Fields all = describe(
        ownId<&HiveMove::id>(), field<&HiveMove::hive>("hive"), field<&HiveMove::on>("on_day"),
        field<&HiveMove::fromYard>("from_yard"), field<&HiveMove::fromMark>("from_mark"),
        field<&HiveMove::toYard>("to_yard"), field<&HiveMove::toMark>("to_mark"));
    return all;
}

const Fields& ColonyMove::fields() {
    static const Fields all =
        describe(ownId<&ColonyMove::id>(), field<&ColonyMove::colony>("colony"),
                 field<&ColonyMove::on>("on_day"), field<&ColonyMove::fromHive>("from_hive"),
                 field<&ColonyMove::toHive>("to_hive"), field<&ColonyMove::note>("note"));
    return all;
}

}  // namespace combwright
