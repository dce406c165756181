#include "core/model/honey/telling.h"

namespace combwright {

const Fields& LabelText::fields() {
    static const Fields all = describe(
        ownId<&LabelText::id>(), field<&LabelText::since>("since"),
        field<&LabelText::producer>("producer"), field<&LabelText::address>("address"),
        field<&LabelText::origin>("origin"), field<&LabelText::months>("months"),
        field<&LabelText::code>("code_rule"), field<&LabelText::flower>("flower"),
        field<&LabelText::flowerGrounds>("flower_grounds"), field<&LabelText::more>("more"),
        field<&LabelText::limits>("limits_edition"), field<&LabelText::region>("label_region"));
    return all;
}

const Fields& LabelOffset::fields() {
    static const Fields all =
        describe(ownId<&LabelOffset::id>(), field<&LabelOffset::grid>("grid"),
                 field<&LabelOffset::since>("since"), field<&LabelOffset::right>("right_mm"),
                 field<&LabelOffset::down>("down_mm"));
    return all;
}

const Fields& KeptSheet::fields() {
    static const Fields all =
        describe(ownId<&KeptSheet::id>(), field<&KeptSheet::on>("on_day"),
                 field<&KeptSheet::sheet>("what_sheet"), field<&KeptSheet::subject>("subject"),
                 field<&KeptSheet::text>("as_it_read"));
    return all;
}

}  // namespace combwright
