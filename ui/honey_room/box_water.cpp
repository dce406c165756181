#include "ui/honey_room/box_water.h"

#include <QCoreApplication>

#include "core/actions/amend/amend.h"
#include "core/actions/boxes/looks.h"

namespace combwright {
namespace {

QString boxWaterSay(const char* text) { return QCoreApplication::translate("box_water", text); }

}  // namespace

Result<void> keepBoxWater(Season& season, Id<Box> box, std::optional<double> percent, Day on) {
    const auto water =
        percent ? std::optional(WaterContent::roundedPercent(*percent)) : std::nullopt;
    // A second look of a day takes the place of the first, with all that was seen; what is not
    // known any more is taken from the look that said it.
    std::optional<BoxLook> earlier;
    for (BoxLook& each : season.read().where<BoxLook>({is("box", box)}))
        if ((water ? each.on == on : each.on <= on && each.water.has_value()) &&
            (!earlier || each.on >= earlier->on))
            earlier = std::move(each);
    if (earlier) {
        BoxLook said = *earlier;
        said.water = water;
        const auto amend = amendment(on, *earlier, said);
        if (!amend) return {};
        StepNote note;
        note.why = boxWaterSay("its water, read in the honey room").toStdString();
        if (const auto done = perform(season, *amend, note); !done) return done.error();
        return {};
    }
    if (!water) return {};
    LookBox look;
    look.on = on;
    look.box = box;
    look.water = water;
    if (const auto done = perform(season, look); !done) return done.error();
    return {};
}

bool keepBoxWater(Session& session, Id<Box> box, double percent) {
    const Day on = session.clock().today();
    return session.together([&](Season& season) { return keepBoxWater(season, box, percent, on); });
}

QString waterOfUnknownBox(const QString& called) {
    return boxWaterSay(
               "%1: nobody knows which box that is; its water was not written down. Type it with "
               "the mark on its wood (M07 water 17.2), or with its bucket (B3 13.0 17.2).")
        .arg(called);
}

}  // namespace combwright
