#include "core/model/photos/photo.h"

namespace combwright {

const Fields& Photo::fields() {
    static const Fields all =
        describe(ownId<&Photo::id>(), field<&Photo::on>("on_day"), field<&Photo::name>("name"),
                 field<&Photo::digest>("digest"), field<&Photo::width>("width"),
                 field<&Photo::height>("height"), field<&Photo::sizeBytes>("size_bytes"),
                 field<&Photo::yard>("yard"), field<&Photo::hive>("hive"),
                 field<&Photo::sheet>("of_sheet"), field<&Photo::note>("note"));
    return all;
}

}  // namespace combwright
