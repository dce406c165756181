#include "core/model/yard/yard.h"

#include "core/model/frames/box.h"

namespace combwright {

const Fields& Yard::fields() {
    static const Fields all =
        describe(ownId<&Yard::id>(), field<&Yard::name>("name"),
                 field<&Yard::walkOrder>("walk_order"), field<&Yard::place>("place"),
                 field<&Yard::registration>("registration"), field<&Yard::extractBy>("extract_by"),
                 field<&Yard::winterNeed>("winter_need"), field<&Yard::usualSuper>("usual_super"),
                 field<&Yard::since>("since"), field<&Yard::closed>("closed"));
    return all;
}

const Fields& Hive::fields() {
    static const Fields all =
        describe(ownId<&Hive::id>(), field<&Hive::yard>("yard"), field<&Hive::mark>("mark"),
                 field<&Hive::standOrder>("stand_order"), known<&Hive::tare>("tare"),
                 field<&Hive::excluderAbove>("excluder_above"), field<&Hive::note>("note"),
                 field<&Hive::since>("since"), field<&Hive::closed>("closed"));
    return all;
}

const Fields& Colony::fields() {
    static const Fields all =
        describe(ownId<&Colony::id>(), field<&Colony::hive>("hive"), field<&Colony::since>("since"),
                 field<&Colony::origin>("origin"), field<&Colony::mother>("mother"),
                 field<&Colony::ended>("ended"), field<&Colony::ending>("ending"),
                 field<&Colony::note>("note"), field<&Colony::unitedInto>("united_into"));
    return all;
}

}  // namespace combwright
