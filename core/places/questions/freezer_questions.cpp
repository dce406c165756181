#include "core/places/questions/freezer_questions.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/places/pull/wets_home.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askCold(const char* text) { return QCoreApplication::translate("questions", text); }

QString hoursFigure(double hours) {
    return QLocale().toString(hours, 'f', hours < 10 && hours != static_cast<int>(hours) ? 1 : 0);
}

void aboutOut(const Read& file, const FreezerRound& round, std::vector<Question>& list) {
    const ColdProof proof = coldProof(file, round);
    if (proof.enough()) return;
    list.push_back({Asked::NotColdEnough,
                    askCold("The round of %1 is out, but its combs do not count as frozen: %2")
                        .arg(dayAndMonth(round.in), coldDoubtText(proof))});
}

void aboutIn(const Read& file, const FreezerRound& round, std::vector<Question>& list) {
    const auto freezer = file.find(round.freezer);
    if (!freezer) return;
    double full = 0;
    std::int64_t frames = 0;
    std::int64_t fits = 0;
    bool known = true;
    for (const FreezerRound& inside :
         file.where<FreezerRound>({is("freezer", round.freezer), isUnknown("out_day")}))
        for (const FreezerLoad& load : file.where<FreezerLoad>({is("round", inside.id)})) {
            const auto kind = file.find(load.frameKind);
            const auto room = kind ? freezerRoom(file, *freezer, *kind, round.in) : std::nullopt;
            known = known && room && room->holds > 0;
            if (!known) continue;
            frames += load.frames.value();
            full += static_cast<double>(load.frames.value()) / static_cast<double>(room->holds);
            fits = room->holds;
        }
    // The share of several kinds is a sum of fractions; a full one may come out a hair over.
    if (!known || full <= 1 + 1e-9) return;
    list.push_back(
        {Asked::FreezerOverfull,
         askCold("In the freezer: %1; by what is known of it %2 of this kind fit. If they "
                 "do, enter how many it holds.")
             .arg(frames == 1 ? askCold("1 frame") : askCold("%1 frames").arg(frames))
             .arg(fits)});
}

void aboutLoad(const Read& file, const FreezerLoad& load, std::vector<Question>& list) {
    const auto round = file.find(load.round);
    if (!round || round->out || load.stale || !load.box) return;
    const ShelfBox box = shelfBox(file, *load.box, round->in);
    int wet = 0;
    for (const ShelfFrame& each : box.frames)
        if (each.load == load.id && each.wet) ++wet;
    if (wet == 0) return;
    list.push_back(
        {Asked::WetIntoFreezer,
         askCold("%1: wet comb went into the freezer, %2 of it. Dry comb first, one or two "
                 "days in moving air, or it moulds when it comes out.")
             .arg(fromUtf8(box.name),
                  wet == 1 ? askCold("1 frame") : askCold("%1 frames").arg(wet))});
}

void aboutGivenBack(const Read& file, const BoxMove& move, std::vector<Question>& list) {
    if (move.toPlace != BoxPlace::GivenBack || !move.toHive) return;
    const WetsRules rules(file, move.on);
    const ShelfBox box = shelfBox(file, move.box, move.on);
    const WetsHive* hive = rules.find(*move.toHive);
    if (!hive) return;
    const QString name = fromUtf8(box.name);
    const QString mark = fromUtf8(hive->hive.mark.text());
    switch (rules.bar(box, *move.toHive)) {
        case WetsBar::Medicine:
            list.push_back({Asked::SuperTooEarly,
                            askCold("%1 is on %2, where a medicine keeps supers off. Take it off "
                                    "again, or hold it back. Your label is the law.")
                                .arg(name, mark)});
            break;
        case WetsBar::Nucleus:
            list.push_back({Asked::WetsToNucleus,
                            askCold("%1 is on %2, which is small: too few bees to clean a box and "
                                    "to keep robbers out. Give it to a strong hive.")
                                .arg(name, mark)});
            break;
        case WetsBar::OtherYard:
            list.push_back({Asked::WetsElsewhere,
                            askCold("%1 came from another yard than %2 stands in. What one yard "
                                    "has, the other gets: was that meant?")
                                .arg(name, mark)});
            break;
        case WetsBar::Unknown:
            list.push_back({Asked::WetsElsewhere,
                            askCold("Nobody wrote down which hive %1 came off; it is on %2 now. If "
                                    "it is from another yard, take it off again.")
                                .arg(name, mark)});
            break;
        case WetsBar::None:
        case WetsBar::Disease:
        case WetsBar::BoxHeld:
        case WetsBar::HiveHeld:
        case WetsBar::NoColony:
            break;
    }
}

}  // namespace

QString coldDoubtText(const ColdProof& proof) {
    const QString cold = shownTemperature(proof.temperatureC).text();
    switch (proof.doubt) {
        case ColdDoubt::None:
            return {};
        case ColdDoubt::TooWarm:
            return askCold(
                       "%1 kills no moth for certain, however long; the table begins at %2. "
                       "Freeze them again, colder.")
                .arg(cold, shownTemperature(-6.7).text());
        case ColdDoubt::TimeNotKnown:
            return askCold(
                "in and out on one day, and nobody said for how long. Write down when, "
                "or freeze them again.");
        case ColdDoubt::NotLongEnough:
            return askCold(
                       "%1 h at %2; %3 are needed, %4 until the core is cold and %5 to kill. "
                       "Put them back in.")
                .arg(hoursFigure(proof.stayedHours.value_or(0)), cold,
                     hoursFigure(proof.neededHours().value_or(0)),
                     hoursFigure(proof.lagHours.value_or(0)),
                     hoursFigure(proof.killHours.value_or(0)));
    }
    return {};
}

std::vector<Question> freezerQuestions(const Read& file, const RowChange& row) {
    std::vector<Question> list;
    if (row.table == FreezerRound::table) {
        if (const auto round = file.find(Id<FreezerRound>{row.id}))
            round->out ? aboutOut(file, *round, list) : aboutIn(file, *round, list);
    } else if (row.table == FreezerLoad::table) {
        if (const auto load = file.find(Id<FreezerLoad>{row.id})) aboutLoad(file, *load, list);
    } else if (row.table == BoxMove::table) {
        if (const auto move = file.find(Id<BoxMove>{row.id})) aboutGivenBack(file, *move, list);
    }
    return list;
}

}  // namespace combwright
