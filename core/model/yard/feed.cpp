#include "core/model/yard/feed.h"

namespace combwright {

const Fields& FeedStock::fields() {
    static const Fields all =
        describe(ownId<&FeedStock::id>(), field<&FeedStock::on>("on_day"),
                 field<&FeedStock::kind>("kind"), known<&FeedStock::bought>("bought"),
                 known<&FeedStock::counted>("counted"), field<&FeedStock::pack>("pack"),
                 field<&FeedStock::supplier>("supplier"), field<&FeedStock::note>("note"));
    return all;
}

}  // namespace combwright
