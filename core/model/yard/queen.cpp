#include "core/model/yard/queen.h"

namespace combwright {

const Fields& Queen::fields() {
    static const Fields all = describe(
        ownId<&Queen::id>(), field<&Queen::reared>("reared"), field<&Queen::mother>("mother"),
        field<&Queen::from>("origin"), field<&Queen::marked>("marked"),
        field<&Queen::colour>("colour"), field<&Queen::number>("number"),
        field<&Queen::clipped>("clipped"), field<&Queen::note>("note"));
    return all;
}

const Fields& QueenStay::fields() {
    static const Fields all =
        describe(ownId<&QueenStay::id>(), field<&QueenStay::queen>("queen"),
                 field<&QueenStay::colony>("colony"), field<&QueenStay::since>("since"),
                 field<&QueenStay::until>("until"), field<&QueenStay::left>("left_how"));
    return all;
}

const Fields& QueenWait::fields() {
    static const Fields all =
        describe(ownId<&QueenWait::id>(), field<&QueenWait::hive>("hive"),
                 field<&QueenWait::colony>("colony"), field<&QueenWait::on>("on_day"),
                 field<&QueenWait::step>("step"), field<&QueenWait::notSeenOn>("not_seen_on"),
                 field<&QueenWait::over>("over_day"), field<&QueenWait::note>("note"));
    return all;
}

const Fields& QueenColour::fields() {
    static const Fields all =
        describe(ownId<&QueenColour::id>(), field<&QueenColour::digit>("digit"),
                 field<&QueenColour::colour>("colour"), field<&QueenColour::since>("since"));
    return all;
}

}  // namespace combwright
