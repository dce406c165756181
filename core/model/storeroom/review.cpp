#include "core/model/storeroom/review.h"

namespace combwright {

const Fields& BoxReview::fields() {
    static const Fields all = describe(
        ownId<&BoxReview::id>(), field<&BoxReview::box>("box"), field<&BoxReview::on>("on_day"),
        field<&BoxReview::expected>("expected"), field<&BoxReview::found>("found"),
        field<&BoxReview::web>("web"), field<&BoxReview::scraped>("scraped"),
        known<&BoxReview::scrapings>("scrapings"), known<&BoxReview::propolis>("propolis"),
        field<&BoxReview::wood>("wood"), field<&BoxReview::combYears>("comb_years"),
        field<&BoxReview::line>("line"), field<&BoxReview::note>("note"));
    return all;
}

const Fields& RawWax::fields() {
    static const Fields all = describe(
        ownId<&RawWax::id>(), field<&RawWax::on>("on_day"), field<&RawWax::source>("source"),
        field<&RawWax::review>("review"), field<&RawWax::box>("box"),
        field<&RawWax::frameKind>("frame_kind"), field<&RawWax::combs>("combs"),
        known<&RawWax::clean>("clean"), field<&RawWax::note>("note"));
    return all;
}

}  // namespace combwright
