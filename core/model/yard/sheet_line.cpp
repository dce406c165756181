#include "core/model/yard/sheet_line.h"

namespace combwright {

const Fields& SheetLine::fields() {
    static const Fields all = describe(
        part<&SheetLine::seen>(), field<&SheetLine::supersOn>("supers_on"),
        field<&SheetLine::supersOff>("supers_off"), field<&SheetLine::deepsOn>("deeps_on"),
        field<&SheetLine::deepsOff>("deeps_off"), known<&SheetLine::mites>("mites"),
        known<&SheetLine::bees>("bees"), known<&SheetLine::fed>("fed"),
        field<&SheetLine::sampledBy>("sampled_by"), known<&SheetLine::boardMites>("board_mites"),
        field<&SheetLine::boardDays>("board_days"), known<&SheetLine::droneMites>("drone_mites"),
        known<&SheetLine::droneCells>("drone_cells"), field<&SheetLine::fedAs>("fed_as"),
        known<&SheetLine::left>("left"), known<&SheetLine::right>("right"),
        known<&SheetLine::whole>("whole"), field<&SheetLine::beetles>("beetles"),
        field<&SheetLine::moths>("moths"), field<&SheetLine::chalk>("chalk"));
    return all;
}

}  // namespace combwright
