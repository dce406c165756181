#include "core/actions/amend/amend_rules.h"
#include "core/actions/health/findings.h"
#include "core/actions/health/meant_hives.h"
#include "core/actions/health/medicines.h"
#include "core/actions/health/tables.h"
#include "core/actions/health/treatments.h"

namespace combwright {
namespace {

/// The refusal of an action under the name its field has in the record.
Result<void> underRecord(Result<void> asked) {
    if (asked || asked.error().field != "on") return asked;
    Refusal refusal = asked.error();
    refusal.field = "on_day";
    return refusal;
}

Result<void> settleFinding(Write& file, const Finding& before, Finding& after) {
    const auto hive = file.find(after.hive);
    if (hive && after.on != before.on)
        if (auto stands = demandStands(*hive, after.on, "on_day", "on_day"); !stands) return stands;
    // A line of the yard sheet may hold what an action of its own refuses.
    if (after.mites == before.mites && after.bees == before.bees && after.cells == before.cells &&
        after.daysOnBoard == before.daysOnBoard && after.method == before.method)
        return {};
    return demandFinding(after);
}

Result<void> settleMedicine(Write& file, const Medicine& before, Medicine& after) {
    if (auto good = demandMedicine(after); !good) return good;
    if (after.boughtOn && after.boughtOn != before.boughtOn)
        for (const MedicineDisposal& each :
             file.where<MedicineDisposal>({is("medicine", after.id)}))
            if (each.on < *after.boughtOn)
                return against("bought_on", "medicine_disposal " + isoText(each.on));
    if (after.supers == before.supers) return {};
    // What the label says of supers decides what is held back.
    file.change(after);
    for (const Treatment& each : file.where<Treatment>({is("medicine", after.id)}))
        followTreatment(file, each);
    return {};
}

Result<void> settleTreatment(Write& file, const Treatment& before, Treatment& after) {
    if (auto good = underRecord(demandTreatment(file, after)); !good) return good;
    if (after.on == before.on && after.out == before.out) return {};
    for (const Treatment& each : file.where<Treatment>(
             {is("hive", after.hive), is("on_day", after.on), is("medicine", after.medicine)}))
        if (each.id != after.id) return against("on_day", "treatment " + isoText(each.on));
    file.change(after);
    followTreatment(file, after);
    return {};
}

Result<void> settleDisposal(Write& file, const MedicineDisposal&, MedicineDisposal& after) {
    return underRecord(demandDisposal(file, after));
}

Result<void> settleMiteLine(Write&, const MiteLine&, MiteLine& after) {
    return demandMiteLine(after);
}

Result<void> settlePhaseDay(Write& file, const PhaseDay&, PhaseDay& after) {
    return demandPhaseDay(file, after);
}

}  // namespace

std::vector<AmendType> healthAmends() {
    return {
        amends<Finding>({{"hive", ""}, {"inspection", ""}, {"what", ""}}, &settleFinding),
        amends<Medicine>({}, &settleMedicine),
        amends<Treatment>({{"medicine", ""}, {"hive", ""}, {"colony", ""}}, &settleTreatment),
        amends<MedicineDisposal>({{"medicine", ""}}, &settleDisposal),
        amends<MiteLine>({{"phase", ""}, {"yard", ""}}, &settleMiteLine),
        amends<PhaseDay>({{"phase", ""}, {"yard", ""}}, &settlePhaseDay),
    };
}

}  // namespace combwright
