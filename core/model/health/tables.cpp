#include "core/model/health/tables.h"

namespace combwright {

const Fields& MiteLine::fields() {
    static const Fields all =
        describe(ownId<&MiteLine::id>(), field<&MiteLine::phase>("phase"),
                 field<&MiteLine::yard>("yard"), field<&MiteLine::since>("since"),
                 field<&MiteLine::per100>("per_100"), field<&MiteLine::source>("source"));
    return all;
}

const Fields& PhaseDay::fields() {
    static const Fields all = describe(
        ownId<&PhaseDay::id>(), field<&PhaseDay::phase>("phase"), field<&PhaseDay::yard>("yard"),
        field<&PhaseDay::since>("since"), field<&PhaseDay::month>("month"),
        field<&PhaseDay::dayOfMonth>("day_of_month"), field<&PhaseDay::source>("source"));
    return all;
}

const Fields& TableChoice::fields() {
    static const Fields all =
        describe(ownId<&TableChoice::id>(), field<&TableChoice::since>("since"),
                 field<&TableChoice::lines>("lines_edition"),
                 field<&TableChoice::linesRegion>("lines_region"),
                 field<&TableChoice::phasesRegion>("phases_region"),
                 field<&TableChoice::medicinesRegion>("medicines_region"));
    return all;
}

}  // namespace combwright
