#include "core/model/yard/sheet_line.h"

namespace combwright {

const Fields& SheetLine::fields() {
    static const Fields all =
        describe(part<&SheetLine::seen>(), field<&SheetLine::supersOn>("supers_on"),
                 field<&SheetLine::supersOff>("supers_off"), field<&SheetLine::deepsOn>("deeps_on"),
                 field<&SheetLine::deepsOff>("deeps_off"), known<&SheetLine::mites>("mites"),
                 known<&SheetLine::bees>("bees"), known<&SheetLine::fed>("fed"));
    return all;
}

}  // namespace combwright
