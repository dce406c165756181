#include "core/model/health/medicine.h"

namespace combwright {

const Fields& Medicine::fields() {
    static const Fields all = describe(
        ownId<&Medicine::id>(), field<&Medicine::name>("name"), field<&Medicine::active>("active"),
        field<&Medicine::batch>("batch"), field<&Medicine::expires>("expires"),
        field<&Medicine::supplier>("supplier"), field<&Medicine::boughtOn>("bought_on"),
        field<&Medicine::quantity>("quantity"), field<&Medicine::unit>("unit"),
        field<&Medicine::withdrawal>("withdrawal"), field<&Medicine::supers>("supers"),
        field<&Medicine::inHiveFrom>("in_hive_from_days"),
        field<&Medicine::inHiveTo>("in_hive_to_days"), field<&Medicine::waitDays>("wait_days"),
        field<&Medicine::warmFrom>("warm_from"), field<&Medicine::warmTo>("warm_to"),
        field<&Medicine::prescribedBy>("prescribed_by"), field<&Medicine::proof>("proof"),
        field<&Medicine::note>("note"));
    return all;
}

const Fields& Treatment::fields() {
    static const Fields all = describe(
        ownId<&Treatment::id>(), field<&Treatment::medicine>("medicine"),
        field<&Treatment::hive>("hive"), field<&Treatment::colony>("colony"),
        field<&Treatment::on>("on_day"), field<&Treatment::amount>("amount"),
        field<&Treatment::out>("out_day"), field<&Treatment::supersOn>("supers_on"),
        field<&Treatment::supersBack>("supers_back"), field<&Treatment::withdrawal>("withdrawal"),
        field<&Treatment::by>("given_by"), field<&Treatment::note>("note"));
    return all;
}

const Fields& MedicineDisposal::fields() {
    static const Fields all =
        describe(ownId<&MedicineDisposal::id>(), field<&MedicineDisposal::medicine>("medicine"),
                 field<&MedicineDisposal::on>("on_day"), field<&MedicineDisposal::amount>("amount"),
                 field<&MedicineDisposal::how>("how"), field<&MedicineDisposal::note>("note"));
    return all;
}

}  // namespace combwright
