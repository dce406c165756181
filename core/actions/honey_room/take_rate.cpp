#include "core/actions/honey_room/take_rate.h"

namespace combwright {

SetConstant takeRate(const ReckonedAndGot& reckoned, const GotLine& line) {
    SetConstant set;
    set.on = reckoned.from;
    set.constant = *Name::of(line.constant);
    set.yard = line.yard;
    set.value = Number::rounded(line.offered);
    set.source = reckoned.source;
    return set;
}

}  // namespace combwright
