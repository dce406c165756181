#include <QCoreApplication>
#include <QLocale>

#include "core/places/due/due_quarantine.h"
#include "core/places/pages/due/due_look_words.h"
#include "core/places/pages/due/due_phrases.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/health/health_words.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString sharpFigure(double value) { return QLocale().toString(value, 'f', 1); }

QString boardFallText(const DueItem& item) {
    QString text = dueTr("Board, %1 mites a day on %2: %3")
                       .arg(sharpFigure(*item.perDay), dueSince(item), word(item.about));
    if (!item.source.empty()) text += dueTr("; %1").arg(fromUtf8(item.source));
    return text;
}

QString tooEarlyWhy(const DueItem& item) {
    const QString boxes = fromUtf8(item.about);
    const QString medicine = fromUtf8(item.source);
    return (item.other ? dueTr("%1 went on %2, before %3, the first day after %4")
                             .arg(boxes, dueSince(item), dueDay(item, *item.other), medicine)
                       : dueTr("%1 went on %2, when %3 kept supers off")
                             .arg(boxes, dueSince(item), medicine)) +
           dueTr(
               ": take it off or hold it back; its honey is not for people. Your label is the "
               "law.");
}

QString quarantineWhy(const DueItem& item) {
    QString text = dueTr("%1 since %2. ").arg(word(item.about), dueSince(item)) + reportingDuty();
    text[0] = text.at(0).toUpper();
    return text;
}

QString dueRateText(const DueItem& item) {
    if (!item.rate) return dueTr("mites");
    return dueTr("%1 mites on 100 bees, between %2 and %3")
        .arg(sharpFigure(item.rate->per100), sharpFigure(item.rate->low),
             sharpFigure(item.rate->high));
}

QString treatWhy(const DueItem& item) {
    if (item.perDay)
        return boardFallText(item) +
               dueTr("; a wash says more. A fall is no rate on bees. Your label is the law.");
    QString text = dueTr("%1 on %2").arg(dueRateText(item), dueSince(item));
    if (item.value)
        text += item.about.empty() ? dueTr("; your line is %1").arg(sharpFigure(*item.value))
                                   : dueTr("; the line is %1 (%2)")
                                         .arg(sharpFigure(*item.value), choiceText(item.about));
    return text + dueTr(". Your label is the law.");
}

QString sampleAgainWhy(const DueItem& item) {
    if (!item.rate)
        return item.about.empty() ? dueTr("Treated until %1; a sample tells whether it worked.")
                                        .arg(dueSince(item))
                                  : dueTr("%1 out on %2; a sample tells whether it worked.")
                                        .arg(fromUtf8(item.about), dueSince(item));
    QString text = dueTr("%1 on %2").arg(dueRateText(item), dueSince(item));
    if (item.other && item.value)
        text += dueTr("; may reach %1 about %2, a planning guess")
                    .arg(sharpFigure(*item.value), dueDay(item, *item.other));
    return text + QLatin1Char('.');
}

QString sampleWhy(const DueItem& item) {
    if (item.perDay)
        return boardFallText(item) + dueTr("; it lay too short or too long ago to act on.");
    if (item.about == "bees")
        return dueTr("%1 mites on %2 in nobody knows how many bees: no rate without the bees.")
            .arg(dueCountOf(item))
            .arg(dueSince(item));
    if (!item.rate) return dueTr("Last sample %1.").arg(dueSince(item));
    if (item.rate->per100 > 0)
        return dueTr("%1 on %2: too old to say anything of today.")
            .arg(dueRateText(item), dueSince(item));
    return dueTr("None found on %1; there may still be up to %2 on 100 bees.")
        .arg(dueSince(item), sharpFigure(item.rate->high));
}

QString queenWhy(const DueItem& item) {
    QString text = dueTr("Waiting for a young queen since %1").arg(dueSince(item));
    if (item.leaveShut) text += QStringLiteral("; ") + leaveShutText(item.from - days(1));
    if (item.other) text += dueTr("; act by %1").arg(shortDayText(*item.other));
    return text + QLatin1Char('.');
}

QString testFrameWhy(const DueItem& item) {
    QString text = item.other ? dueTr("Looked for eggs %1, none").arg(shortDayText(*item.other))
                              : dueTr("No eggs seen since %1").arg(dueSince(item));
    text += dueTr("; a frame with eggs shows whether there is a queen");
    if (item.by) text += dueTr("; unite or requeen by %1").arg(shortDayText(*item.by));
    return text + QLatin1Char('.');
}

QString feedWhy(const DueItem& item) {
    QString text = item.about == "light"
                       ? dueTr("Hefted light on %1").arg(dueSince(item))
                       : dueTr("Too little for winter, seen %1").arg(dueSince(item));
    if (item.value && *item.value > 0) text += dueTr("; too cold for syrup: fondant");
    if (item.by) text += dueTr("; syrup is taken until about %1").arg(shortDayText(*item.by));
    return text + QLatin1Char('.');
}

QString wetsWhy(const DueItem& item) {
    if (wetsComeOff(item))
        return dueTr("Given back %1; clean and dry by then, longer and it is filled again.")
            .arg(shortDayText(*item.other));
    if (item.where == DueWhere::Storeroom)
        return dueTr("Wet since %1, and no hive may have it: dry it, or it ferments and moulds.")
            .arg(dueSince(item));
    return dueTr("Wet since %1; its own bees lick it dry.").arg(dueSince(item));
}

QString clearersWhy(const DueItem& item) {
    if (dueGoesIn(item))
        return item.other ? dueTr("In at dusk; %1 to pull on %2.")
                                .arg(dueBoxes(item), shortDayText(*item.other))
                          : dueTr("In at dusk; %1 to pull.").arg(dueBoxes(item));
    return item.count
               ? dueTr("In since %1; %2 to bring with it.").arg(dueSince(item), dueBoxes(item))
               : dueTr("In since %1; longer and the bees find their way back up.")
                     .arg(dueSince(item));
}

QString dueStoresWhy(const DueItem& item) {
    QString text = item.mass
                       ? dueTr("About %1 left, seen %2")
                             .arg(massText(static_cast<double>(item.mass->grams()), How::Assumed),
                                  dueSince(item))
                       : dueTr("Seen %1").arg(dueSince(item));
    if (item.by) text += dueTr("; down to the reserve about %1").arg(shortDayText(*item.by));
    if (item.other) text += dueTr(", first flow about %1").arg(dayAndMonth(*item.other));
    return text + QLatin1Char('.');
}

QString deadOutWhy(const DueItem& item) {
    const auto boxes = static_cast<std::int64_t>(item.value.value_or(0));
    const QString uncounted =
        boxes > 0 ? dueCounted(boxes, QT_TRANSLATE_NOOP("due", "1 box nobody counted"),
                               QT_TRANSLATE_NOOP("due", "%1 boxes nobody counted"))
                  : QString();
    if (item.count.value_or(0) > 0 && boxes > 0)
        return dueTr("Dead since %1; %2, and the combs of %3, held until foulbrood is ruled out.")
            .arg(dueSince(item), dueFrames(item), uncounted);
    if (item.count.value_or(0) > 0)
        return dueTr("Dead since %1; %2 held until foulbrood is ruled out.")
            .arg(dueSince(item), dueFrames(item));
    if (boxes > 0)
        return dueTr("Dead since %1; the combs of %2 held until foulbrood is ruled out.")
            .arg(dueSince(item), uncounted);
    return dueTr("Dead since %1; no comb of it is held any more.").arg(dueSince(item));
}

}  // namespace

QString dueWhyText(const DueItem& item) {
    switch (item.rule) {
        case DueRule::Look:
            return isQuarantine(item) ? quarantineWhy(item) : openedWhy(item);
        case DueRule::Swarm:
            return checksCells(item) ? checkCellsWhy(item) : openedWhy(item);
        case DueRule::Queen:
            return queenWhy(item);
        case DueRule::TestFrame:
            if (withoutQueen(item)) return withoutQueenWhy(item);
            return withoutEggs(item) ? withoutEggsWhy(item) : testFrameWhy(item);
        case DueRule::Sample:
            return sampleWhy(item);
        case DueRule::SampleAgain:
            return sampleAgainWhy(item);
        case DueRule::Treat:
            return treatWhy(item);
        case DueRule::TakeOut:
            return item.by ? dueTr("In since %1, out by %2 as its label says.")
                                 .arg(dueSince(item), shortDayText(*item.by))
                           : dueTr("In since %1; your label says until when.").arg(dueSince(item));
        case DueRule::SupersBack:
            if (superTooEarly(item)) return tooEarlyWhy(item);
            return dueTr("Medicine out %1; from %2 on, if your label says no longer.")
                .arg(dueSince(item), shortDayText(item.from));
        case DueRule::Feed:
            return feedWhy(item);
        case DueRule::Stores:
            return dueStoresWhy(item);
        case DueRule::AddBox:
            return addBoxWhy(item);
        case DueRule::ComeBack:
            return dueTr("You meant to come back, said on %1.").arg(dueSince(item));
        case DueRule::Extract:
            if (item.where == DueWhere::Pull)
                return dueTr("In the pull plan kept for %1.").arg(shortDayText(item.from));
            return item.by ? dueTr("Off since %1; extract by %2.")
                                 .arg(dueSince(item), shortDayText(*item.by))
                           : dueTr("Off since %1; its yard has no limit.").arg(dueSince(item));
        case DueRule::Clearers:
            return clearersWhy(item);
        case DueRule::Wets:
            return wetsWhy(item);
        case DueRule::Freezer:
            if (dueGoesIn(item))
                return dueTr("The next round: comb a moth would eat, not through the cold yet.");
            return item.value ? dueTr("In since %1; %2 h are over on %3.")
                                    .arg(dueSince(item), QLocale().toString(*item.value),
                                         shortDayText(item.from))
                              : dueTr("In since %1; through on %2.")
                                    .arg(dueSince(item), shortDayText(item.from));
        case DueRule::DeadOut:
            if (foundDead(item)) return foundDeadWhy(item);
            return deadOutWhy(item);
        case DueRule::Honey:
            return dueHoneyWhy(item);
        case DueRule::Wax:
            return dueWaxWhy(item);
        case DueRule::Visit:
            return dueTr("No line yet for %1.").arg(fromUtf8(item.about));
        case DueRule::Task:
            return item.by ? dueTr("Noted %1, for %2.").arg(dueSince(item), shortDayText(*item.by))
                           : dueTr("Noted %1.").arg(dueSince(item));
    }
    return {};
}

}  // namespace combwright
