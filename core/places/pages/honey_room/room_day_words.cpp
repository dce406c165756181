#include "core/places/pages/honey_room/room_day_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/places/pages/pull/pull_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString daySay(const char* text) { return QCoreApplication::translate("room_day", text); }

QString heftLetter(FrameHeft heft) { return fromUtf8(word(heft).substr(0, 1)); }

QString stationText(Station station) {
    switch (station) {
        case Station::Uncapping:
            return daySay("the knife");
        case Station::Spinning:
            return daySay("the machine");
        case Station::Swapping:
            return daySay("changing the loads");
        case Station::Straining:
            break;
    }
    return daySay("the strainer");
}

/// What a change saves, or that it saves nothing.
QString savesText(const char* what, double minutes) {
    return minutes >= 1 ? daySay("%1 would save %2.").arg(daySay(what), hoursText(minutes))
                        : daySay("%1 would save nothing.").arg(daySay(what));
}

}  // namespace

QString loadSlotsText(const SheetLoad& load) {
    QStringList places;
    for (std::size_t slot = 0; slot < load.places.size(); ++slot) {
        const auto& place = load.places[slot];
        QString text = QString::number(slot + 1) + QLatin1Char(' ');
        text += !place           ? QStringLiteral("–")
                : place->emptied ? daySay("empty frame")
                                 : fromUtf8(place->box);
        if (place && place->heft) text += QLatin1Char(' ') + heftLetter(*place->heft);
        places << text;
    }
    return places.join(QStringLiteral(", "));
}

QString loadDoubtText(const SheetLoad& load) {
    const double mayBe =
        std::max(load.offset.startG + load.doubtG, load.offset.endG + load.endDoubtG);
    const QString text =
        daySay("off %1, may be %2")
            .arg(shownPortion(load.offset.largerG()).text(), shownPortion(mayBe).text());
    return load.proven ? text + daySay("; these masses hang no nearer") : text;
}

QStringList gateLines(const GateMinder& minder) {
    QStringList lines;
    if (minder.ranTogether)
        lines << daySay(
                     "In drum, gate and strainer this lot runs together with %1: run them empty "
                     "before the next load, and label that bucket as of both.")
                     .arg(fromUtf8(minder.emptyOf));
    else if (!minder.emptyOf.empty())
        lines << daySay("Drum, gate and strainer still hold %1: run them empty before this lot.")
                     .arg(fromUtf8(minder.emptyOf));
    if (minder.inDrumG > 0 || minder.openBefore) {
        const QString drum =
            massKnown(minder.inDrumG, minder.inDrumG > 0 ? minder.how : How::Assumed);
        QString line = minder.turning ? daySay("%1 in the drum when this load stands").arg(drum)
                       : minder.inDrumG > 0
                           ? daySay("%1 in the drum since the gate was open").arg(drum)
                           : daySay("The drum is empty");
        line += minder.now          ? daySay(": open the gate now, or it reaches the cage.")
                : minder.openBefore ? daySay(": open it before load %1.").arg(*minder.openBefore)
                : minder.waits      ? daySay("; what waits still fits.")
                                    : daySay(".");
        if (!minder.drumSaid)
            line += daySay(" The drum is taken to hold %1; nobody wrote down what yours does.")
                        .arg(massText(minder.drumG, How::Assumed));
        lines << line;
    }
    if (!minder.bucket.empty() && minder.takesG) {
        QString line = daySay("%1 under the gate takes %2 more")
                           .arg(fromUtf8(minder.bucket), massText(*minder.takesG, How::ByEye));
        if (!minder.nextBucket.empty())
            line += daySay(", then %1").arg(fromUtf8(minder.nextBucket));
        lines << line + (minder.bucketNearlyFull ? daySay(": stay beside it.") : daySay("."));
    }
    if (minder.strainer && minder.strainer->atMost)
        lines << daySay(
                     "The room is too cold to strain: honey hardly runs. Warm it; no more than "
                     "%1 an hour pass.")
                     .arg(massText(minder.strainer->kgPerH * 1000, How::Assumed));
    if (minder.strainerBehind && minder.toStrainG)
        lines << daySay("The strainer is behind: %1 wait, about %2.")
                     .arg(massText(*minder.toStrainG, How::ByEye), hoursText(minder.strainMin));
    if (!minder.emptyFor.empty() && minder.emptyOf.empty())
        lines << daySay("All of this lot is spun: run drum, gate and strainer empty before %1.")
                     .arg(fromUtf8(minder.emptyFor));
    return lines;
}

QStringList roomDayLines(const RoomDaySheet& sheet) {
    QStringList lines;
    for (const KindLeftOut& each : sheet.leftOut)
        lines << (each.frames == 1
                      ? daySay("1 frame (%1) is in no load: nobody wrote down how many of its kind "
                               "hang in the machine.")
                            .arg(fromUtf8(each.kind))
                      : daySay("%1 frames (%2) are in no load: nobody wrote down how many of them "
                               "hang in the machine.")
                            .arg(each.frames)
                            .arg(fromUtf8(each.kind)));
    if (sheet.plan.loads == 0) return lines;
    const QString hands =
        sheet.hands == 1 ? daySay("1 pair of hands") : daySay("%1 pairs of hands").arg(sheet.hands);
    const QString loads = loadsCounted(sheet.plan.loads);
    lines << daySay(
                 "%1, %2 at the knife: the last load ends %3 after the first cut, the day "
                 "is %4 with setting up and washing.")
                 .arg(loads, hands, hoursText(sheet.plan.lastLoadEndsMin),
                      hoursText(sheet.plan.doneMin));
    if (sheet.plan.slowest) {
        lines << daySay("Slowest is %1.").arg(stationText(*sheet.plan.slowest));
        QStringList saves{savesText(QT_TRANSLATE_NOOP("room_day", "One helper more at the knife"),
                                    sheet.plan.oneUncapperMore.doneSavesMin)};
        if (sheet.plan.oneStrainerMore)
            saves << savesText(QT_TRANSLATE_NOOP("room_day", "A second strainer"),
                               sheet.plan.oneStrainerMore->doneSavesMin);
        if (sheet.warmer)
            saves << savesText(QT_TRANSLATE_NOOP("room_day", "Warmer boxes"),
                               sheet.warmer->doneSavesMin);
        lines << saves.join(QLatin1Char(' '));
    }
    if (sheet.fromHere && sheet.nowMin) {
        const double behind = sheet.fromHere->behindMin;
        const QString against = std::abs(behind) < 1 ? daySay("as planned")
                                : behind > 0 ? daySay("%1 behind the plan").arg(hoursText(behind))
                                             : daySay("%1 before the plan").arg(hoursText(-behind));
        const std::int64_t left = sheet.fromHere->loadsLeft;
        const QString last = hoursText(sheet.fromHere->lastLoadEndsMin);
        lines << (left == 0
                      ? daySay("All loads are spun: the last ended %1 after the first cut, %2.")
                            .arg(last, against)
                      : daySay("%1 after the first cut: %2 to go, the last ends after %3, %4.")
                            .arg(hoursText(*sheet.nowMin), loadsCounted(left), last, against));
    }
    if (sheet.clockSet)
        lines << daySay(
            "The clock on the wall was set during the day, or a time is a slip: minutes "
            "of the loads are counted on without it.");
    else if (sheet.longestGapMin > 45)
        lines << daySay("%1 between two loads are not explained: a pause, or the clock was set.")
                     .arg(hoursText(sheet.longestGapMin));
    return lines;
}

}  // namespace combwright
