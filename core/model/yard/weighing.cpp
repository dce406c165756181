#include "core/model/yard/weighing.h"

#include "core/model/yard/visit.h"

namespace combwright {

const Fields& HiveWeighing::fields() {
    static const Fields all =
        describe(ownId<&HiveWeighing::id>(), field<&HiveWeighing::hive>("hive"),
                 field<&HiveWeighing::on>("on_day"), known<&HiveWeighing::left>("left"),
                 known<&HiveWeighing::right>("right"), known<&HiveWeighing::whole>("whole"),
                 known<&HiveWeighing::without>("without"), field<&HiveWeighing::note>("note"),
                 field<&HiveWeighing::inspection>("inspection"));
    return all;
}

}  // namespace combwright
