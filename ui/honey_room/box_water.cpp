#include "ui/honey_room/box_water.h"

#include "core/actions/amend/amend.h"
#include "core/actions/boxes/looks.h"

namespace combwright {

bool keepBoxWater(Session& session, Id<Box> box, double percent) {
    const Day on = session.clock().today();
    const auto water = WaterContent::roundedPercent(percent);
    const auto looks = session.read().where<BoxLook>({is("box", box), is("on_day", on)});
    if (!looks.empty()) {
        // A second look of a day takes the place of the first, with all that was seen.
        BoxLook said = looks.back();
        said.water = water;
        const auto amend = amendment(on, looks.back(), said);
        return !amend || session.run(*amend).has_value();
    }
    LookBox look;
    look.on = on;
    look.box = box;
    look.water = water;
    return session.run(look).has_value();
}

}  // namespace combwright
