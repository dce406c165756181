#include "core/model/yard/visit.h"

#include "core/model/frames/box.h"

namespace combwright {

const Fields& Visit::fields() {
    static const Fields all =
        describe(ownId<&Visit::id>(), field<&Visit::yard>("yard"), field<&Visit::on>("on_day"),
                 field<&Visit::begun>("begun"), field<&Visit::ended>("ended"),
                 field<&Visit::all>("all_line"), field<&Visit::note>("note"));
    return all;
}

const Fields& Seen::fields() {
    static const Fields all =
        describe(field<&Seen::looked>("looked"), field<&Seen::queenSeen>("queen_seen"),
                 field<&Seen::eggs>("eggs"), field<&Seen::openBrood>("open_brood"),
                 field<&Seen::cappedBrood>("capped_brood"), known<&Seen::brood>("brood"),
                 known<&Seen::stores>("stores"), known<&Seen::seams>("seams"),
                 known<&Seen::queenCells>("queen_cells"), field<&Seen::cellState>("cell_state"),
                 known<&Seen::cellsLeft>("cells_left"), field<&Seen::temper>("temper"),
                 field<&Seen::heft>("heft"), field<&Seen::comeBack>("come_back"),
                 field<&Seen::note>("note"));
    return all;
}

const Fields& Inspection::fields() {
    static const Fields all = describe(ownId<&Inspection::id>(), field<&Inspection::visit>("visit"),
                                       field<&Inspection::hive>("hive"), part<&Inspection::seen>(),
                                       field<&Inspection::line>("line"));
    return all;
}

const Fields& FieldSigns::fields() {
    static const Fields all = describe(
        field<&FieldSigns::spotty>("spotty"), field<&FieldSigns::sunkenCaps>("sunken_caps"),
        field<&FieldSigns::holedCaps>("holed_caps"), field<&FieldSigns::ropes>("ropes"),
        field<&FieldSigns::scaleSticks>("scale_sticks"),
        field<&FieldSigns::glueSmell>("glue_smell"), field<&FieldSigns::sourSmell>("sour_smell"),
        field<&FieldSigns::twistedLarvae>("twisted_larvae"), field<&FieldSigns::mummies>("mummies"),
        field<&FieldSigns::crippledWings>("crippled_wings"), field<&FieldSigns::soiled>("soiled"));
    return all;
}

const Fields& Finding::fields() {
    static const Fields all =
        describe(ownId<&Finding::id>(), field<&Finding::hive>("hive"),
                 field<&Finding::inspection>("inspection"), field<&Finding::on>("on_day"),
                 field<&Finding::what>("what"), field<&Finding::method>("method"),
                 known<&Finding::mites>("mites"), known<&Finding::bees>("bees"),
                 field<&Finding::note>("note"), field<&Finding::daysOnBoard>("days_on_board"),
                 field<&Finding::level>("level"), field<&Finding::box>("box"),
                 known<&Finding::cells>("cells"), part<&Finding::signs>());
    return all;
}

const Fields& Feeding::fields() {
    static const Fields all =
        describe(ownId<&Feeding::id>(), field<&Feeding::hive>("hive"),
                 field<&Feeding::inspection>("inspection"), field<&Feeding::on>("on_day"),
                 known<&Feeding::given>("given"), field<&Feeding::note>("note"),
                 field<&Feeding::kind>("kind"), field<&Feeding::packs>("packs"));
    return all;
}

}  // namespace combwright
