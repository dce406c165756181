#include "core/actions/honey_room/gate.h"

#include "core/actions/honey_room/run_rules.h"

namespace combwright {

const Fields& OpenGate::fields() {
    static const Fields all =
        describe(field<&OpenGate::on>("on"), field<&OpenGate::run>("run"),
                 field<&OpenGate::at>("at"), field<&OpenGate::runEmpty>("run_empty"));
    return all;
}

Result<Id<GateOpening>> OpenGate::perform(Write& file) const {
    const auto lot = openRun(file, run, on);
    if (!lot) return lot.error();
    GateOpening opening;
    opening.extraction = run;
    opening.on = on;
    opening.at = at;
    opening.afterLoad =
        Count(static_cast<std::int64_t>(file.where<SpinLoad>({is("extraction", run)}).size()));
    opening.runEmpty = runEmpty;
    return file.add(opening);
}

}  // namespace combwright
