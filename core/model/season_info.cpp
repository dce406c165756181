#include "core/model/season_info.h"

namespace combwright {

const Fields& SeasonInfo::fields() {
    static const Fields all = describe(ownId<&SeasonInfo::id>(), field<&SeasonInfo::name>("name"),
                                       field<&SeasonInfo::invented>("invented"),
                                       field<&SeasonInfo::currency>("currency"));
    return all;
}

const Fields& Constant::fields() {
    static const Fields all = describe(
        ownId<&Constant::id>(), field<&Constant::name>("name"), field<&Constant::yard>("yard"),
        field<&Constant::since>("since"), field<&Constant::value>("value"),
        field<&Constant::source>("source"), field<&Constant::until>("until"));
    return all;
}

const Fields& Hold::fields() {
    static const Fields all =
        describe(ownId<&Hold::id>(), field<&Hold::colony>("colony"), field<&Hold::box>("box"),
                 field<&Hold::frame>("frame"), field<&Hold::bucket>("bucket"),
                 field<&Hold::why>("why"), field<&Hold::since>("since"),
                 field<&Hold::lifted>("lifted"), field<&Hold::liftedBy>("lifted_by"),
                 field<&Hold::grounds>("grounds"), field<&Hold::note>("note"),
                 field<&Hold::because>("because"), field<&Hold::treatment>("treatment"),
                 field<&Hold::lot>("lot"), field<&Hold::bottling>("bottling"));
    return all;
}

}  // namespace combwright
