#include "core/places/pages/due/half_done_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "core/words/clock_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

using HalfWhat = HalfDone::What;

QString halfTr(const char* text) { return QCoreApplication::translate("half_done", text); }

QString halfCount(std::int64_t many, const char* one, const char* several) {
    return many == 1 ? halfTr(one) : halfTr(several).arg(many);
}

QString boxesOf(const HalfDone& half) {
    return halfCount(static_cast<std::int64_t>(half.boxes.size()),
                     QT_TRANSLATE_NOOP("half_done", "1 box"),
                     QT_TRANSLATE_NOOP("half_done", "%1 boxes"));
}

QString framesOf(const HalfDone& half) {
    return halfCount(half.frames.value_or(0), QT_TRANSLATE_NOOP("half_done", "1 frame"),
                     QT_TRANSLATE_NOOP("half_done", "%1 frames"));
}

QStringList runLines(const HalfDone& half) {
    std::vector<std::int64_t> pegs;
    std::int64_t notWeighed = 0;
    for (const RoomBox& box : half.boxes) {
        if (box.peg) pegs.push_back(*box.peg);
        notWeighed += !box.gross || !box.gross->value;
    }
    std::sort(pegs.begin(), pegs.end());
    QStringList numbers;
    for (const std::int64_t peg : pegs) numbers << QString::number(peg);
    QStringList lines;
    if (half.boxes.empty())
        lines << halfTr("no box waits; weigh the cappings and close it");
    else if (pegs.empty())
        lines << halfTr("%1 waiting").arg(boxesOf(half));
    else
        lines << halfTr("%1 waiting, on pegs %2")
                     .arg(boxesOf(half), numbers.join(QStringLiteral(", ")));
    QString spun = half.loads == 0
                       ? halfTr("none spun yet")
                       : halfCount(half.loads, QT_TRANSLATE_NOOP("half_done", "1 load spun"),
                                   QT_TRANSLATE_NOOP("half_done", "%1 loads spun"));
    if (notWeighed > 0)
        spun += QStringLiteral("; ") +
                halfCount(notWeighed, QT_TRANSLATE_NOOP("half_done", "1 not weighed full"),
                          QT_TRANSLATE_NOOP("half_done", "%1 not weighed full"));
    return lines << spun;
}

QStringList visitLines(const HalfDone& half) {
    const auto written = std::count(half.written.begin(), half.written.end(), true);
    QStringList open;
    for (std::size_t i = 0; i < half.hives.size(); ++i)
        if (!half.written[i]) open << fromUtf8(half.hives[i]);
    return {halfTr("%1 of %2 hives written").arg(written).arg(half.hives.size()),
            halfTr("open: %1").arg(open.join(QStringLiteral(", ")))};
}

QStringList typedLines(const HalfDone& half) {
    QStringList of;
    for (const std::string& each : half.hives) of << fromUtf8(each);
    return {halfCount(static_cast<std::int64_t>(half.hives.size()),
                      QT_TRANSLATE_NOOP("half_done", "1 line typed and not kept"),
                      QT_TRANSLATE_NOOP("half_done", "%1 lines typed and not kept")),
            halfTr("of %1").arg(of.join(QStringLiteral(", ")))};
}

QStringList wetLines(const HalfDone& half) {
    QStringList marks;
    for (const RoomBox& box : half.boxes) marks << fromUtf8(box.mark);
    return {marks.join(QStringLiteral(", ")), halfTr("wet since %1").arg(shortDayText(half.since))};
}

QString massOr(const HalfDone& half, const char* unknown) {
    const auto grams = half.mass ? half.mass->middle() : std::nullopt;
    return grams ? massText(*grams, half.mass->how) : halfTr(unknown);
}

}  // namespace

QString halfDoneTitle(const HalfDone& half) {
    const QString name = fromUtf8(half.name);
    switch (half.what) {
        case HalfWhat::Visit:
            return halfTr("Visit, %1, %2").arg(name, shortDayText(half.since));
        case HalfWhat::Typed:
            return halfTr("Yard sheet, %1, %2").arg(name, shortDayText(half.since));
        case HalfWhat::Run:
            return halfTr("Run %1").arg(name);
        case HalfWhat::WetBoxes:
            return halfTr("%1 wet").arg(boxesOf(half));
        case HalfWhat::NoTag:
            return halfTr("Box without a tag");
        case HalfWhat::Freezer:
            return halfTr("%1 in the freezer").arg(framesOf(half));
        case HalfWhat::Bucket:
            return halfTr("Bucket %1, run %2").arg(name, fromUtf8(half.run));
        case HalfWhat::Aside:
            return halfTr("%1 set aside").arg(framesOf(half));
        case HalfWhat::Held:
            return halfTr("%1 is held: suspected disease").arg(name);
        case HalfWhat::Heat:
            return halfTr("POT ON HEAT: %1").arg(name);
    }
    return {};
}

QStringList halfDoneLines(const HalfDone& half, Day today) {
    switch (half.what) {
        case HalfWhat::Visit:
            return visitLines(half);
        case HalfWhat::Typed:
            return typedLines(half);
        case HalfWhat::Run:
            return runLines(half);
        case HalfWhat::WetBoxes:
            return wetLines(half);
        case HalfWhat::NoTag:
            return {halfTr("%1, run %2").arg(fromUtf8(half.name), fromUtf8(half.run)),
                    half.mass ? halfTr("%1 of honey has no hive")
                                    .arg(massOr(half, QT_TRANSLATE_NOOP("half_done", "honey")))
                              : halfTr("its honey has no hive")};
        case HalfWhat::Freezer:
            return {halfTr("in since %1").arg(shortDayText(half.since)),
                    !half.due            ? halfTr("nobody said for how long")
                    : *half.due <= today ? halfTr("through since %1").arg(shortDayText(*half.due))
                                         : halfTr("until %1").arg(shortDayText(*half.due))};
        case HalfWhat::Bucket:
            return {halfTr("%1 % water, your limit is %2")
                        .arg(QLocale().toString(half.water.value_or(0), 'f', 1),
                             QLocale().toString(half.waterLimit.value_or(0), 'f', 1)),
                    halfTr("not to be bottled as it is")};
        case HalfWhat::Aside:
            return {halfTr("of run %1").arg(fromUtf8(half.run)),
                    halfTr("nobody said what became of them")};
        case HalfWhat::Held:
            return {halfTr("since %1").arg(shortDayText(half.since)),
                    halfTr("nothing leaves until it is ruled out")};
        case HalfWhat::Heat:
            return {halfTr("since %1, %2")
                        .arg(clockText(half.begun.value_or(Instant(half.since))),
                             shortDayText(half.since)),
                    halfTr("never leave it; tick it off when the heat is off")};
    }
    return {};
}

QString halfDoneAction(const HalfDone& half) {
    switch (half.what) {
        case HalfWhat::Visit:
        case HalfWhat::Run:
            return halfTr("Carry on");
        case HalfWhat::NoTag:
            return halfTr("Name it");
        case HalfWhat::Typed:
        case HalfWhat::WetBoxes:
        case HalfWhat::Freezer:
        case HalfWhat::Bucket:
        case HalfWhat::Aside:
        case HalfWhat::Held:
        case HalfWhat::Heat:
            return halfTr("Go there");
    }
    return {};
}

QString laneText(RibbonWork work) {
    switch (work) {
        case RibbonWork::YardVisits:
            return halfTr("Yard visits");
        case RibbonWork::Supers:
            return halfTr("Boxes on, off");
        case RibbonWork::FeedAndTreat:
            return halfTr("Feed and treat");
        case RibbonWork::HoneyRoom:
            return halfTr("Honey room");
        case RibbonWork::Storeroom:
            return halfTr("Storeroom");
    }
    return {};
}

}  // namespace combwright
