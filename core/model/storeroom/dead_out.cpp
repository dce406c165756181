#include "core/model/storeroom/dead_out.h"

namespace combwright {

const Fields& DeadOut::fields() {
    static const Fields all = describe(
        ownId<&DeadOut::id>(), field<&DeadOut::colony>("colony"), field<&DeadOut::on>("on_day"),
        field<&DeadOut::cluster>("cluster"), field<&DeadOut::stores>("stores_near"),
        field<&DeadOut::brood>("brood_seen"), field<&DeadOut::frass>("frass"),
        field<&DeadOut::wet>("wet"), field<&DeadOut::queen>("queen"),
        field<&DeadOut::droppings>("droppings"), field<&DeadOut::ropy>("ropy"),
        field<&DeadOut::scale>("scale"), field<&DeadOut::mouse>("mouse"),
        field<&DeadOut::sampleKept>("sample_kept"), field<&DeadOut::cause>("cause"),
        field<&DeadOut::by>("by"), field<&DeadOut::note>("note"));
    return all;
}

const Fields& SetOut::fields() {
    static const Fields all = describe(
        ownId<&SetOut::id>(), field<&SetOut::on>("on_day"), field<&SetOut::what>("what_out"),
        field<&SetOut::yard>("yard"), field<&SetOut::boxes>("boxes"),
        field<&SetOut::takenIn>("taken_in"), field<&SetOut::note>("note"));
    return all;
}

}  // namespace combwright
