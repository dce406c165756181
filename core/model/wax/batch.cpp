#include "core/model/wax/batch.h"

namespace combwright {

const Fields& WaxBatch::fields() {
    static const Fields all = describe(
        ownId<&WaxBatch::id>(), field<&WaxBatch::name>("name"), field<&WaxBatch::on>("on_day"),
        field<&WaxBatch::source>("source"), field<&WaxBatch::state>("state"),
        field<&WaxBatch::shade>("shade"), known<&WaxBatch::raw>("raw"),
        field<&WaxBatch::combs>("combs"), field<&WaxBatch::frameKind>("frame_kind"),
        field<&WaxBatch::kept>("kept"), field<&WaxBatch::keptSince>("kept_since"),
        field<&WaxBatch::reason>("reason"), field<&WaxBatch::note>("note"));
    return all;
}

const Fields& WaxSource::fields() {
    static const Fields all =
        describe(ownId<&WaxSource::id>(), field<&WaxSource::batch>("batch"),
                 field<&WaxSource::run>("run"), field<&WaxSource::rawWax>("raw_wax"),
                 field<&WaxSource::box>("box"), known<&WaxSource::mass>("mass"));
    return all;
}

const Fields& WaxStep::fields() {
    static const Fields all = describe(
        ownId<&WaxStep::id>(), field<&WaxStep::batch>("batch"), field<&WaxStep::on>("on_day"),
        field<&WaxStep::work>("work"), known<&WaxStep::putIn>("put_in"),
        known<&WaxStep::cameOut>("came_out"), field<&WaxStep::bucket>("bucket"),
        field<&WaxStep::into>("into_batch"), field<&WaxStep::hive>("hive"),
        field<&WaxStep::temperature>("temperature"), field<&WaxStep::note>("note"));
    return all;
}

const Fields& HeatSession::fields() {
    static const Fields all = describe(
        ownId<&HeatSession::id>(), field<&HeatSession::on>("on_day"),
        field<&HeatSession::begun>("begun"), field<&HeatSession::off>("off_at"),
        field<&HeatSession::what>("what_heated"), field<&HeatSession::batch>("batch"),
        field<&HeatSession::temperature>("temperature"), field<&HeatSession::note>("note"));
    return all;
}

}  // namespace combwright
