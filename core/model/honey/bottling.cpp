#include "core/model/honey/bottling.h"

namespace combwright {

const Fields& Bottling::fields() {
    static const Fields all = describe(
        ownId<&Bottling::id>(), field<&Bottling::bucket>("bucket"), field<&Bottling::lot>("lot"),
        field<&Bottling::on>("on_day"), field<&Bottling::code>("code"),
        field<&Bottling::bestBefore>("best_before"), known<&Bottling::drawn>("drawn"),
        known<&Bottling::lost>("lost_honey"), field<&Bottling::note>("note"));
    return all;
}

const Fields& BottledJars::fields() {
    static const Fields all =
        describe(ownId<&BottledJars::id>(), field<&BottledJars::bottling>("bottling"),
                 field<&BottledJars::kind>("goods_kind"), field<&BottledJars::count>("count"),
                 field<&BottledJars::spoiled>("spoiled"), field<&BottledJars::weighed>("weighed"),
                 field<&BottledJars::mean>("mean_net"), field<&BottledJars::lightest>("lightest"));
    return all;
}

const Fields& Complaint::fields() {
    static const Fields all =
        describe(ownId<&Complaint::id>(), field<&Complaint::on>("on_day"),
                 field<&Complaint::bottling>("bottling"), field<&Complaint::what>("what"),
                 field<&Complaint::who>("who"), field<&Complaint::closed>("closed"),
                 field<&Complaint::became>("became"));
    return all;
}

}  // namespace combwright
