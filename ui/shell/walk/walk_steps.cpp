#include "ui/shell/walk/walk_steps.h"

#include <QCoreApplication>

#include "ui/honey_room/honey_room_place.h"
#include "ui/pull/pull_place.h"
#include "ui/season_book/season_book_place.h"
#include "ui/storeroom/storeroom_place.h"
#include "ui/today/today_place.h"
#include "ui/wax_bench/wax_bench_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

QString walkWord(const char* text) { return QCoreApplication::translate("walk", text); }

WalkStep walkStep(DemoUntil until, const QMetaObject& place, const QString& title,
                  const QString& says) {
    return {until, &place, {}, {}, {}, title, says};
}

}  // namespace

std::vector<WalkStep> walkSteps() {
    std::vector<WalkStep> steps;
    const auto add = [&steps](WalkStep step) -> WalkStep& {
        steps.push_back(std::move(step));
        return steps.back();
    };
    add(walkStep(DemoUntil::JuneVisit, TodayPlace::staticMetaObject,
                 walkWord("What there is to do, on a Wednesday in June"),
                 walkWord("It is reckoned from what was written down; nobody keeps a diary. Go "
                          "down a line with ↓, and open a trip with →: below it stand its hives, "
                          "each with why.")));
    WalkStep& sheet = add(walkStep(
        DemoUntil::JuneVisit, YardPlace::staticMetaObject, walkWord("The visit, a line a hive"),
        walkWord("In the marks one writes on a lid: e b7 s3 +1 is eggs, 7 frames of "
                 "brood, 3 of stores, one super on. Type another line over the "
                 "chosen one: it is read back at its right while one types.")));
    sheet.yard = "Mill Lane";
    sheet.hive = "ML1";
    sheet.where.sheet = true;
    WalkStep& mites = add(walkStep(
        DemoUntil::JuneVisit, YardPlace::staticMetaObject, walkWord("Mites weighed up"),
        walkWord("Two hives were washed at this visit. A count stands with what it leaves open, "
                 "and against the line at which one acts: ML9 is over it. Go there with ↓; "
                 "Ctrl+E says how the figures came about.")));
    mites.yard = "Mill Lane";
    mites.where.page = GoTo::Page::Health;
    add(walkStep(DemoUntil::PullPlan, PullPlace::staticMetaObject,
                 walkWord("Honey to pull, at the end of July"),
                 walkWord("Each super has a verdict and why. H4 would be short for the winter; on "
                          "H5 a medicine was in while the lower box was on. Go to a box, press L "
                          "to leave it: what follows changes at the right. Delete takes that "
                          "back.")));
    add(walkStep(DemoUntil::PullPlan, PullPlace::staticMetaObject,
                 walkWord("The list for the truck"),
                 walkWord("The plan is kept: which boxes, the clearer boards before them, the "
                          "loads after them. Ctrl+P shows the pull list as it is printed, Esc "
                          "closes it. On the day Enter clips a peg onto each box as it comes "
                          "off.")));
    add(walkStep(DemoUntil::HoneyRoom, HoneyRoomPlace::staticMetaObject,
                 walkWord("Loads of the extractor"),
                 walkWord("Boxes wait at the left, and the load is laid out so that the machine "
                          "runs even. + writes that it was spun, and the next one lies there. "
                          "Below, the day before: which hive gave what.")))
        .where.page = GoTo::Page::Board;
    add(walkStep(DemoUntil::Jars, HoneyRoomPlace::staticMetaObject, walkWord("Let it settle"),
                 walkWord("Each bucket says when it has settled and whether it is dry enough to "
                          "bottle. B6 is too wet: go there with ↓ and read at the right why. B "
                          "reckons with what it can be blended.")))
        .where.page = GoTo::Page::Honey;
    add(walkStep(DemoUntil::Jars, HoneyRoomPlace::staticMetaObject, walkWord("Into jars"),
                 walkWord("What was filled, what is left of it and where it went. One filling is "
                          "held back: somebody rang up. Go down to it and press T: it is traced "
                          "back to bucket, box and hive.")))
        .where.page = GoTo::Page::Jars;
    add(walkStep(DemoUntil::Whole, WaxBenchPlace::staticMetaObject, walkWord("Wax, in the winter"),
                 walkWord("From raw wax at the left to candles at the right; a band is as wide as "
                          "its mass. The cursor stands in the first field of moulds: type 7 there, "
                          "and the evenings beside it follow as a what-if. Esc lets it be.")));
    add(walkStep(DemoUntil::Whole, StoreroomPlace::staticMetaObject,
                 walkWord("Boxes over the winter"),
                 walkWord("A row is a box with its frames, looked through on the bench a line a "
                          "box. With the cursor on M06 type 7 keep, 2 burn and Enter. The counts "
                          "at the left, and what has to be bought, follow.")));
    add(walkStep(DemoUntil::Whole, SeasonBookPlace::staticMetaObject, walkWord("The season book"),
                 walkWord("The year in one sentence, when the honey came in, and which hive gave "
                          "how much. Tab goes from block to block; in a chart the arrows go along "
                          "a line, and T turns it into a table.")));
    add(walkStep(DemoUntil::Whole, SeasonBookPlace::staticMetaObject, walkWord("Onto paper"),
                 walkWord("Ctrl+P shows the sheets of a place as they are printed, here the "
                          "harvest of the year. That was the walk. Leave it to try more of the "
                          "sample; Ctrl+N begins a season of your own.")));
    return steps;
}

}  // namespace combwright
