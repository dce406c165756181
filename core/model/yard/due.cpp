#include "core/model/yard/due.h"

namespace combwright {

const Fields& Task::fields() {
    static const Fields all =
        describe(ownId<&Task::id>(), field<&Task::text>("text"), field<&Task::yard>("yard"),
                 field<&Task::hive>("hive"), field<&Task::since>("since"), field<&Task::due>("due"),
                 field<&Task::done>("done"), field<&Task::who>("who"));
    return all;
}

const Fields& Quiet::fields() {
    static const Fields all =
        describe(ownId<&Quiet::id>(), field<&Quiet::rule>("rule"), field<&Quiet::yard>("yard"),
                 field<&Quiet::hive>("hive"), field<&Quiet::since>("since"),
                 field<&Quiet::until>("until"), field<&Quiet::reason>("reason"));
    return all;
}

const Fields& TruckItem::fields() {
    static const Fields all =
        describe(ownId<&TruckItem::id>(), field<&TruckItem::item>("item"),
                 field<&TruckItem::howMany>("how_many"), field<&TruckItem::since>("since"),
                 field<&TruckItem::until>("until"));
    return all;
}

}  // namespace combwright
