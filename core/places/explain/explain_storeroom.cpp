#include "core/places/explain/explain_storeroom.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/places/storeroom/stack_words.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString storeSay(const char* text) { return QCoreApplication::translate("storeroom", text); }

QString shortAnswer(const Shortage& line) {
    return line.afterRepairs() ? QString::number(line.afterRepairsAtMost)
                               : storeSay("at most %1").arg(line.afterRepairsAtMost);
}

/// The working, with the end that no trade function writes.
Working withEnd(const Shortage& line, const Working& working, const char* there) {
    Working all;
    note(&all, "kit_there", static_cast<double>(line.there), "", there);
    for (const Working::Step& step : working.steps) all.steps.push_back(step);
    return all;
}

/// The hours a round stays are the keeper's or the published ones: the plan says whose.
Working withHours(Working working, const std::string& source) {
    for (Working::Step& step : working.steps)
        if (step.what == "freezer_hours") step.source = source;
    return working;
}

QString hoursAnswer(double hours) {
    return storeSay("%1 h").arg(QLocale().toString(hours, 'f', 1));
}

}  // namespace

std::vector<Explained> explainFreezer(const FreezerLane& lane) {
    std::vector<Explained> all;
    for (const FreezerRoom& room : lane.rooms)
        all.push_back({storeSay("%1: the freezer takes at once").arg(fromUtf8(room.name)),
                       QString::number(room.holds), room.working});
    if (!lane.next.rounds.empty())
        all.push_back({storeSay("Rounds, each kind by itself"),
                       QString::number(lane.next.rounds.size()),
                       withHours(lane.next.working, lane.hoursSource)});
    if (lane.shared)
        all.push_back({storeSay("Rounds, kinds together"),
                       QString::number(lane.shared->rounds.size()),
                       withHours(lane.shared->working, lane.hoursSource)});
    for (const auto* rows : {&lane.in, &lane.done})
        for (const FreezerRoundRow& row : *rows) {
            const auto needed = row.proof.neededHours();
            all.push_back(
                {storeSay("Round of %1: hours it needs").arg(dayText(row.round.in)),
                 needed ? hoursAnswer(*needed) : storeSay("too warm to kill, however long"),
                 row.proof.working});
        }
    return all;
}

std::vector<Explained> explainStacks(const std::vector<BoxStack>& stacks) {
    std::vector<Explained> all;
    for (const BoxStack& each : stacks)
        all.push_back(
            {storeSay("Stack %1: weighs").arg(stackText(each)), stackMassText(each), each.working});
    return all;
}

std::vector<Explained> explainBoxes(const BoxNeed& need) {
    return {{storeSay("%1: short after repairs").arg(kindText(need.kind.name.text())),
             shortAnswer(need.boxes),
             withEnd(need.boxes, need.working,
                     "boxes not held, not lent and in no living nest, to be scraped or not")}};
}

std::vector<Explained> explainFrames(const FrameNeed& need) {
    const QString name = kindText(need.kind.name.text());
    std::vector<Explained> all{
        {storeSay("%1: to buy").arg(name), shortAnswer(need.frames), need.working}};
    if (need.sheets > 0)
        all.push_back({storeSay("%1: sheets of foundation").arg(name),
                       need.sheetsThere ? QString::number(need.sheetsToBuy)
                                        : storeSay("at most %1").arg(need.sheetsToBuy),
                       need.working});
    return all;
}

std::vector<Explained> explainPieces(const ItemNeed& need) {
    return {{storeSay("%1: short after repairs")
                 .arg(fromUtf8(
                     Choices<EquipmentItem>::words[static_cast<std::size_t>(need.plan.item)])),
             shortAnswer(need.pieces),
             withEnd(need.pieces, need.working, "in the shed, in use and on empty hives")}};
}

std::vector<Explained> explainStock(const Stock& stock) {
    std::vector<Explained> all;
    const auto step = [](Working& working, const char* what, std::int64_t value,
                         const char* how = "") {
        note(&working, what, static_cast<double>(value), "", how);
    };
    for (const BoxStock& each : stock.boxKinds) {
        Explained line{storeSay("%1: usable").arg(kindText(each.kind.name.text())),
                       QString::number(each.usable),
                       {}};
        step(line.working, "boxes_about", each.about);
        step(line.working, "boxes_in_nests", each.inNests,
             "under the excluder, or the first box and those of its kind on it");
        step(line.working, "boxes_lent", each.lent);
        step(line.working, "boxes_held", each.held, "may be among those in nests");
        step(line.working, "boxes_to_repair", each.repairable);
        step(line.working, "boxes_usable", each.usable,
             "in no living nest, not lent, not held, not to be repaired");
        all.push_back(std::move(line));
    }
    for (const FramesOfKind& each : stock.frameKinds) {
        Explained line{storeSay("%1: kept").arg(kindText(each.kind.name.text())),
                       QString::number(each.kept),
                       {}};
        step(line.working, "frames_ever", each.ever());
        step(line.working, "frames_melted", each.melted);
        step(line.working, "frames_burnt", each.burnt);
        step(line.working, "frames_sold", each.sold);
        step(line.working, "frames_missing", each.missing);
        step(line.working, "frames_gone", each.gone, "in boxes that are gone, scrapped or burnt");
        step(line.working, "frames_kept", each.kept,
             "ever entered − melted − burnt − sold − missing − gone");
        step(line.working, "frames_in_nests", each.inNests);
        step(line.working, "frames_lent", each.lent);
        step(line.working, "frames_free", each.use.sum(), "kept − in nests − lent");
        all.push_back(std::move(line));
    }
    return all;
}

std::vector<Explained> explainNeeds(const NextSeason& next) {
    std::vector<Explained> all;
    const auto append = [&all](std::vector<Explained> more) {
        for (Explained& each : more) all.push_back(std::move(each));
    };
    for (const BoxNeed& each : next.boxes) append(explainBoxes(each));
    for (const FrameNeed& each : next.frames) append(explainFrames(each));
    for (const ItemNeed& each : next.pieces) append(explainPieces(each));
    if (next.cull)
        all.push_back(
            {storeSay("Brood combs to take out, %1").arg(fromUtf8(next.cull->kind.name.text())),
             QString::number(next.cull->target), next.cull->working});
    if (next.spared)
        all.push_back({storeSay("Honey the drawn comb on the shelf spares"),
                       storeSay("%1, between %2 and %3")
                           .arg(massText(next.spared->honeyG.likely, How::Assumed),
                                massFigure(next.spared->honeyG.low, How::Assumed),
                                massFigure(next.spared->honeyG.high, How::Assumed)),
                       next.spared->working});
    return all;
}

}  // namespace combwright
