#include "core/model/wax/hive_goods.h"

namespace combwright {

const Fields& PropolisMove::fields() {
    static const Fields all =
        describe(ownId<&PropolisMove::id>(), field<&PropolisMove::on>("on_day"),
                 field<&PropolisMove::went>("went"), known<&PropolisMove::mass>("mass"),
                 field<&PropolisMove::hive>("hive"), field<&PropolisMove::box>("box"),
                 field<&PropolisMove::frozen>("frozen"), field<&PropolisMove::price>("price"),
                 field<&PropolisMove::place>("place"), field<&PropolisMove::buyer>("buyer"),
                 field<&PropolisMove::note>("note"));
    return all;
}

const Fields& HiveProject::fields() {
    static const Fields all =
        describe(ownId<&HiveProject::id>(), field<&HiveProject::name>("name"),
                 field<&HiveProject::what>("what"), field<&HiveProject::pieces>("pieces"),
                 field<&HiveProject::on>("on_day"), field<&HiveProject::kind>("goods_kind"),
                 field<&HiveProject::hive>("hive"), field<&HiveProject::starter>("starter_in"),
                 field<&HiveProject::putOn>("put_on"), field<&HiveProject::off>("taken_off"),
                 field<&HiveProject::lidded>("lidded_on"), field<&HiveProject::good>("good"),
                 known<&HiveProject::net>("net"), field<&HiveProject::wantedBy>("wanted_by"),
                 field<&HiveProject::fair>("fair"), field<&HiveProject::code>("code"),
                 field<&HiveProject::reason>("reason"), field<&HiveProject::note>("note"));
    return all;
}

const Fields& ProjectLook::fields() {
    static const Fields all =
        describe(ownId<&ProjectLook::id>(), field<&ProjectLook::project>("project"),
                 field<&ProjectLook::on>("on_day"), field<&ProjectLook::built>("built"),
                 field<&ProjectLook::filled>("filled_pieces"), field<&ProjectLook::note>("note"));
    return all;
}

}  // namespace combwright
