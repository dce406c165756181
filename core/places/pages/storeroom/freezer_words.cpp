#include "core/places/pages/storeroom/freezer_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/places/questions/freezer_questions.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString coldSay(const char* text) { return QCoreApplication::translate("freezer", text); }

QString wholeHours(double hours) { return QLocale().toString(hours, 'f', 0); }

QString adviceText(ShelfAdvice advice) {
    switch (advice) {
        case ShelfAdvice::Freeze:
            return coldSay("into the next round; until then cold, light and airy.");
        case ShelfAdvice::DryFirst:
            return coldSay("dry it, then freeze it.");
        case ShelfAdvice::MeltSoon:
            return coldSay("melt it soon; a brood box is eaten within about a week of heat.");
        case ShelfAdvice::KeepCold:
            return coldSay(
                "held: close it bee-tight, keep it cold and by itself, or freeze it in a round of "
                "its own.");
        case ShelfAdvice::LookInside:
            return coldSay("look into it today, then freeze it.");
    }
    return {};
}

/// "Langstroth deep frame" of "Langstroth deep frame (9 1/8 in)".
QString shortKind(const std::string& name) {
    return fromUtf8(name).section(QStringLiteral(" ("), 0, 0);
}

QString marksText(const std::vector<std::string>& marks) {
    QStringList all;
    for (const std::string& mark : marks) all << fromUtf8(mark);
    return all.join(QLatin1Char(' '));
}

QString nameOrLoose(const std::string& name, const std::optional<Id<Box>>& box) {
    if (box) return fromUtf8(name);
    return name.empty() ? coldSay("loose") : coldSay("loose on %1").arg(fromUtf8(name));
}

}  // namespace

QString mothFoodText(MothFood food) {
    switch (food) {
        case MothFood::None:
            return coldSay("chosen on the bench");
        case MothFood::Brood:
            return coldSay("brood comb");
        case MothFood::BroodKind:
            return coldSay("deep comb, taken for brood comb");
        case MothFood::Pollen:
            return coldSay("pollen in it");
        case MothFood::Web:
            return coldSay("moths have been in it");
    }
    return {};
}

QString freezerLoadsText(const std::vector<FreezerFrames>& loads) {
    QStringList all;
    for (const FreezerFrames& each : loads) {
        QString text =
            QStringLiteral("%1 %2").arg(nameOrLoose(each.name, each.box)).arg(each.frames);
        if (!each.faults.empty()) text += QLatin1Char(' ') + fromUtf8(each.faults);
        if (each.stale)
            text +=
                QLatin1Char(' ') + coldSay("(no longer counts since %1%2)")
                                       .arg(dayAndMonth(*each.stale),
                                            each.staleWhy.empty()
                                                ? QString()
                                                : QStringLiteral(": ") + fromUtf8(each.staleWhy));
        all << text;
    }
    return all.join(QStringLiteral(", "));
}

QString freezerRoundText(const FreezerRoundRow& row) {
    const ColdProof& proof = row.proof;
    const QString cold = shownTemperature(proof.temperatureC).text();
    const QString known = proof.byFreezer  ? coldSay("what the freezer can do, nobody measured")
                          : proof.assumed  ? coldSay("taken as usual, nobody measured")
                          : proof.measured ? coldSay("measured")
                                           : coldSay("by the dial");
    if (!row.round.out) {
        const QString until = row.due ? coldSay("in since %1, until %2")
                                            .arg(shortDayText(row.round.in), shortDayText(*row.due))
                                      : coldSay("in since %1").arg(shortDayText(row.round.in));
        if (proof.enough()) return until;
        return until + QStringLiteral("; ") + coldDoubtText(proof);
    }
    if (!proof.enough())
        return coldSay("out %1, not frozen: %2")
            .arg(shortDayText(*row.round.out), coldDoubtText(proof));
    return coldSay("frozen %1: %2 h at %3 (%4), %5 needed")
        .arg(shortDayText(*row.round.out), wholeHours(proof.stayedHours.value_or(0)), cold, known,
             wholeHours(std::ceil(proof.neededHours().value_or(0))));
}

QString freezerPlanText(const FreezerPlan& plan) {
    if (plan.rounds.empty() || !plan.lastOut) return coldSay("nothing to put in");
    const auto many = static_cast<int>(plan.rounds.size());
    return (many == 1 ? coldSay("1 round, out %2") : coldSay("%1 rounds, last out %2").arg(many))
        .replace(QStringLiteral("%2"), dayText(*plan.lastOut));
}

QString freezerCautions() {
    return coldSay(
        "Dry combs first. Count from when the core is cold, not from when the lid shuts; 0 °C is "
        "no kill. Thaw them sealed and keep them so: a box opened or left warm waits again. Cold "
        "does not cure foulbrood. Fumigants and honey comb do not mix: nothing that was fumigated "
        "holds honey for people.");
}

QString freezerRoomText(const FreezerLane& lane) {
    QStringList all;
    for (const FreezerRoom& room : lane.rooms)
        all << (room.counted ? coldSay("%1 × %2 by your own count")
                             : coldSay("%1 × %2 by their bulk"))
                   .arg(room.holds)
                   .arg(shortKind(room.name));
    return all.join(QStringLiteral(", "));
}

QString shelfDangerText(const ShelfDanger& danger) {
    QString text = danger.frames == 1
                       ? coldSay("1 frame, %2").arg(mothFoodText(danger.food))
                       : coldSay("%1 frames, %2").arg(danger.frames).arg(mothFoodText(danger.food));
    text += QStringLiteral(", ");
    if (danger.spoilt)
        text += danger.spoiltWhy.empty()
                    ? coldSay("frozen once, no longer since %1").arg(dayAndMonth(*danger.spoilt))
                    : coldSay("frozen once, no longer since %1 (%2)")
                          .arg(dayAndMonth(*danger.spoilt), fromUtf8(danger.spoiltWhy));
    else if (danger.undone)
        text += coldSay("frozen before it was on a hive, off since %1")
                    .arg(dayAndMonth(*danger.undone));
    else
        text += coldSay("not frozen");
    text += QStringLiteral(": ");
    text += adviceText(danger.advice);
    if (danger.held > 0 && danger.advice != ShelfAdvice::KeepCold)
        text += QLatin1Char(' ') +
                coldSay("%1 of them are held: not into a round with other comb.").arg(danger.held);
    return text;
}

QString wetsStayText(const WetBox& box) {
    switch (box.why) {
        case WetsBar::None:
            return coldSay(
                "every hive of its yard that may have it has enough; give it back in a "
                "second round, or dry it in the air");
        case WetsBar::Disease:
            return coldSay("stays closed where it is: disease is not ruled out where it came from");
        case WetsBar::BoxHeld:
            return coldSay(
                "held back: no hive is named for it, and no other than its own may have it");
        case WetsBar::HiveHeld:
            return coldSay("its hive is held back");
        case WetsBar::Medicine:
            return coldSay(
                "a medicine keeps supers off its hive: give it back when the label lets them on "
                "again, or dry it in the air");
        case WetsBar::NoColony:
            return coldSay("nobody lives in its hive, and no other of its yard may have it");
        case WetsBar::Nucleus:
            return coldSay("its hive is too small, and no other of its yard may have it");
        case WetsBar::OtherYard:
            return coldSay("of another yard");
        case WetsBar::Unknown:
            return coldSay("nobody knows which hive it came off: name it, or dry it in the air");
    }
    return {};
}

QString wetsOffText(Day from, Day to) {
    return coldSay("%1 to %2").arg(shortDayText(from), shortDayText(to));
}

QString leftOverText(const LeftOver& left) {
    const QString frames =
        left.frames == 1 ? coldSay("1 frame") : coldSay("%1 frames").arg(left.frames);
    const QString what = left.granulated ? coldSay("%1, granulated").arg(frames)
                                         : coldSay("%1 with stores").arg(frames);
    switch (left.way) {
        case LeftOverWay::Give:
            return coldSay("%1: to %2, where they are short; last look on %3 was clean")
                .arg(what, marksText(left.hives),
                     left.cleanLook ? dayAndMonth(*left.cleanLook) : QString());
        case LeftOverWay::LookFirst:
            return coldSay("%1: look into %2 first; no clean look since the box came off")
                .arg(what, fromUtf8(left.cameOff));
        case LeftOverWay::Melt:
            return coldSay("%1: melt; no hive may have it for certain").arg(what);
        case LeftOverWay::Held:
            return coldSay("%1: held back, to no hive").arg(what);
    }
    return what;
}

QString wetsCautions() {
    return coldSay(
               "At dusk, when no more bees fly. Entrances small first, all boxes on at once, over "
               "a crown "
               "board with its hole open. Nothing sticky left in the open: robbing starts within "
               "minutes, and disease goes where robbers go. Lift with two what is over %1.")
        .arg(liftLimitText());
}

}  // namespace combwright
