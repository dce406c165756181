#include "core/model/honey/going_out.h"

namespace combwright {

const Fields& GoingOut::fields() {
    static const Fields all =
        describe(ownId<&GoingOut::id>(), field<&GoingOut::on>("on_day"),
                 field<&GoingOut::how>("went"), field<&GoingOut::kind>("goods_kind"),
                 field<&GoingOut::bottling>("bottling"), field<&GoingOut::bucket>("bucket"),
                 field<&GoingOut::lot>("lot"), field<&GoingOut::count>("count"),
                 known<&GoingOut::mass>("mass"), field<&GoingOut::each>("price"),
                 field<&GoingOut::place>("place"), field<&GoingOut::buyer>("buyer"),
                 field<&GoingOut::reason>("reason"), field<&GoingOut::note>("note"));
    return all;
}

const Fields& Fair::fields() {
    static const Fields all = describe(
        ownId<&Fair::id>(), field<&Fair::name>("name"), field<&Fair::on>("on_day"),
        field<&Fair::place>("place"), field<&Fair::change>("change_money"),
        field<&Fair::cash>("cash"), field<&Fair::closed>("closed"), field<&Fair::note>("note"));
    return all;
}

const Fields& FairLine::fields() {
    static const Fields all =
        describe(ownId<&FairLine::id>(), field<&FairLine::fair>("fair"),
                 field<&FairLine::kind>("goods_kind"), field<&FairLine::bottling>("bottling"),
                 field<&FairLine::packed>("brought"), field<&FairLine::each>("price"),
                 field<&FairLine::home>("home"), field<&FairLine::broken>("broken"),
                 field<&FairLine::given>("given_away"));
    return all;
}

}  // namespace combwright
