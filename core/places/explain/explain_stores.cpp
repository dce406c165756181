#include <QCoreApplication>

#include "core/catalogue/colony_tables.h"
#include "core/places/stores/stores.h"
#include "core/storage/queries/constants.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString storesWhy(const char* text) { return QCoreApplication::translate("stores", text); }

void noteRate(Working* working, const Read& file, const char* name, Id<Yard> yard, Day on,
              const char* unit) {
    if (const auto found = constantInForce(file, name, yard, on))
        note(working, name, found->value, unit, {}, constantSource(*found));
}

Explained storesFigure(const Read& file, const Yard& yard, const HiveStores& row, Day on) {
    Explained why;
    why.what = storesWhy("Stores of %1").arg(fromUtf8(row.hive.mark.text()));
    why.answer = row.nowG ? massInWords(*row.nowG, row.how) : storesWhy("not known");
    Working* working = &why.working;
    if (row.from == StoresFrom::Weighed || (row.scale && row.tareWrong)) {
        readScale(file, row.hive, row.scale->weighing, working);
        if (row.scale->tare.from == TareFrom::Kinds)
            noteRate(working, file, "floor_and_lid_g", yard.id, on, "g");
        if (row.scale->tare.from == TareFrom::Hive)
            noteRate(working, file, "empty_frame_g", yard.id, on, "g");
        if (row.scale->tare.from != TareFrom::Without)
            noteRate(working, file, "hive_bees_g", yard.id, on, "g");
    } else if (row.from == StoresFrom::Frames && row.grams && *row.framesOfStores > 0) {
        note(working, "stores_frames", *row.framesOfStores, "", "seen " + isoText(*row.known));
        note(working, "full_frame_g", *row.grams / *row.framesOfStores, "g");
        note(working, "stores_g", *row.grams, "g", "frames of stores · a full frame");
    }
    if (row.fedSince.storesG > 0) {
        note(working, "fed_since_g", row.fedSince.sugarG, "g", "sugar, since then");
        noteRate(working, file, "stores_per_sugar", yard.id, on, "");
    }
    if (row.use == UseFrom::OwnScale)
        note(working, "stores_use_g_per_day", row.own->gPerDay, "g",
             "own weighings " + isoText(row.own->from) + " and " + isoText(row.own->to) +
                 ", feed between taken off");
    if (row.usedSinceG && row.use != UseFrom::OwnScale)
        note(working, "used_since_g", *row.usedSinceG, "g", "each day its part of its month",
             winterUseSource(file, yard.id, on));
    if (row.nowG) note(working, "stores_now_g", *row.nowG, "g", "stores + fed − used");
    return why;
}

Explained runOutFigure(const Read& file, const Yard& yard, const HiveStores& row, Day on) {
    Explained why;
    why.what = storesWhy("How long %1 lasts").arg(fromUtf8(row.hive.mark.text()));
    why.answer = row.runsOut ? storesWhy("to %1").arg(dayText(*row.runsOut))
                             : storesWhy("to the first flow, %1").arg(dayText(row.firstFlow));
    Working* working = &why.working;
    noteRate(working, file, "stores_floor_g", yard.id, on, "g");
    noteRate(working, file, "first_flow_month", yard.id, on, "");
    noteRate(working, file, "first_flow_day", yard.id, on, "");
    const auto daysFrom = [&](Day day) { return static_cast<double>((day - *row.known).count()); };
    if (row.byOwn)
        note(working, "lasts_by_own_days", daysFrom(*row.byOwn), "d",
             "(stores − floor) ÷ own use, to " + isoText(*row.byOwn));
    if (row.byTable)
        note(working, "lasts_by_table_days", daysFrom(*row.byTable), "d",
             "each day its part of its month, to " + isoText(*row.byTable),
             winterUseSource(file, yard.id, on));
    return why;
}

Explained gapFigure(const Read& file, const Yard& yard, const HiveStores& row, Day on) {
    Explained why;
    why.what = storesWhy("To give %1").arg(fromUtf8(row.hive.mark.text()));
    why.answer = storesWhy("%1 of sugar").arg(massText(row.give->sugarG, How::Weighed));
    Working* working = &why.working;
    if (row.gapTo == GapTo::FirstFlow) {
        note(working, "lacks_to_first_flow", *row.gapG, "g",
             "from the day it is down to the reserve to " + isoText(row.firstFlow));
        toGive(file, yard.id, on, *row.gapG, working);
        return why;
    }
    note(working, "winter_need", row.needG, "g");
    note(working, "for_winter_g", *row.forWinterG, "g",
         row.from == StoresFrom::Weighed ? "stores − what the plan takes off"
                                         : "nest + supers that stay");
    toGive(file, yard.id, on, *row.gapG, working);
    return why;
}

}  // namespace

std::vector<Explained> explainStores(const Read& file, const Stores& stores) {
    std::vector<Explained> figures;
    for (const auto& [yard, rows] : stores.yards)
        for (const HiveStores& row : rows) {
            if (!row.lives || !row.known) continue;
            if (row.grams || row.tareWrong)
                figures.push_back(storesFigure(file, yard, row, stores.on));
            if (row.runsOut || row.lasts == true)
                figures.push_back(runOutFigure(file, yard, row, stores.on));
            if (row.give) figures.push_back(gapFigure(file, yard, row, stores.on));
        }
    for (const MonthChange& each : stores.past) {
        Explained why;
        why.what = storesWhy("What month %1 brings").arg(each.month);
        why.answer = storesWhy("%1 a day").arg(massText(each.gPerDay, How::Weighed));
        note(&why.working, "pairs_of_weighings", each.pairs, "",
             "a week to 45 days apart, no box carried off between, earlier years");
        note(&why.working, "change_g_per_day", each.gPerDay, "g", "mean, feed taken off");
        figures.push_back(std::move(why));
    }
    return figures;
}

}  // namespace combwright
