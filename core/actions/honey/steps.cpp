#include "core/actions/honey/steps.h"

#include "core/actions/honey/vessel_rules.h"

namespace combwright {

const Fields& WorkHoney::fields() {
    static const Fields all = describe(
        field<&WorkHoney::on>("on"), field<&WorkHoney::bucket>("bucket"),
        field<&WorkHoney::lot>("lot"), field<&WorkHoney::work>("work"),
        field<&WorkHoney::temperature>("temperature"), field<&WorkHoney::minutes>("minutes"),
        known<&WorkHoney::after>("after"), field<&WorkHoney::note>("note"));
    return all;
}

Result<Id<HoneyStep>> WorkHoney::perform(Write& file) const {
    const auto vessel = vesselMeant(file, bucket, lot, on);
    if (!vessel) return vessel.error();
    HoneyStep step;
    step.bucket = bucket;
    step.lot = lot;
    step.on = on;
    step.work = work;
    step.temperature = temperature;
    step.minutes = minutes;
    step.after = after;
    step.note = note;
    if (auto ok = demandStep(step); !ok) return ok.error();
    file.add(step);
    if (auto ok = demandLedger(file, *vessel, "after_g"); !ok) return ok.error();
    return step.id;
}

const Fields& WeighLeft::fields() {
    static const Fields all =
        describe(field<&WeighLeft::on>("on"), field<&WeighLeft::bucket>("bucket"),
                 field<&WeighLeft::lot>("lot"), known<&WeighLeft::left>("left_over"),
                 field<&WeighLeft::note>("note"));
    return all;
}

Result<Id<HoneyLeft>> WeighLeft::perform(Write& file) const {
    const auto vessel = vesselMeant(file, bucket, lot, on);
    if (!vessel) return vessel.error();
    if (auto ok = demandHoney(left, "left_over_g", true); !ok) return ok.error();
    HoneyLeft found;
    found.bucket = bucket;
    found.lot = lot;
    found.on = on;
    found.left = left;
    found.note = note;
    file.add(found);
    if (auto ok = demandLedger(file, *vessel, "left_over_g"); !ok) return ok.error();
    return found.id;
}

}  // namespace combwright
