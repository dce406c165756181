#include "core/places/pages/pull/pull_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/places/pages/pull/clearers_page.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString pullSay(const char* text) { return QCoreApplication::translate("pull", text); }

QString marks(const std::vector<std::string>& names) {
    QStringList all;
    for (const std::string& name : names) all << fromUtf8(name);
    return all.join(QLatin1Char(' '));
}

QString lookFirstText(const PullHiveRow& hive, const PullBoxRow& row) {
    if (!row.look) {
        if (!row.lookedOnce) return pullSay("never looked into");
        return pullSay("not looked into since %1").arg(dayAndMonth(*row.lookedOnce));
    }
    if (!row.honey) return pullSay("fill not known");
    if (!hive.nest) return pullSay("nest not counted lately");
    return pullSay("its hive's other boxes first");
}

/// What the keeper should mind before taking it all the same.
QString mindText(const PullBoxRow& row) {
    QStringList minds;
    if (row.look) {
        if (row.why == WhyLeft::NotCappedEnough) minds << pullSay("open");
        if (row.look->broodIn.value_or(false)) minds << pullSay("brood in it");
        if (row.look->water)
            minds << pullSay("%1 % water")
                         .arg(QLocale().toString(row.look->water->percent(), 'f', 1));
    } else {
        minds << pullSay("nobody knows what is in it");
    }
    return minds.join(QStringLiteral(", "));
}

QString loadsText(const PullOtherwise& otherwise) {
    if (otherwise.loads == 0) return {};
    const QString many = loadsCounted(otherwise.loads);
    if (otherwise.moreLoads == 0) return pullSay("%1 as before").arg(many);
    return otherwise.moreLoads > 0 ? pullSay("%1, %2 more").arg(many).arg(otherwise.moreLoads)
                                   : pullSay("%1, %2 fewer").arg(many).arg(-otherwise.moreLoads);
}

}  // namespace

QString boxName(const Box& box) {
    return box.mark.empty() ? pullSay("no mark") : fromUtf8(box.mark);
}

QString placeInStack(const PullHiveRow& hive, const PullBoxRow& row) {
    if (hive.boxes.size() == 1) return pullSay("the only super");
    if (row.fromTop == 1) return pullSay("at the top");
    if (row.fromTop == hive.boxes.size()) return pullSay("the lowest super");
    return pullSay("number %1 from the top").arg(row.fromTop);
}

QString boxPlaceName(const PullHiveRow& hive, const PullBoxRow& row) {
    if (!row.box.mark.empty()) return fromUtf8(row.box.mark);
    return pullSay("no mark, %1").arg(placeInStack(hive, row));
}

QString boxLookText(const PullBoxRow& row) {
    if (!row.look) return {};
    QStringList parts;
    if (row.look->cappedFrames)
        parts
            << pullSay("%1 of %2 capped").arg(framesText(*row.look->cappedFrames)).arg(row.frames);
    if (row.look->filled && row.look->filled->value)
        parts << pullSay("%1 % full")
                     .arg(QLocale().toString(row.look->filled->value->value() * 100, 'f', 0));
    if (row.look->water)
        parts << pullSay("%1 % water").arg(QLocale().toString(row.look->water->percent(), 'f', 1));
    parts << dayAndMonth(row.look->on);
    return parts.join(QStringLiteral(", "));
}

QString whyLeftText(WhyLeft why) {
    switch (why) {
        case WhyLeft::Held:
            return pullSay("held back");
        case WhyLeft::Brood:
            return pullSay("brood in it");
        case WhyLeft::CappingNotKnown:
            return pullSay("capping not known");
        case WhyLeft::WaterNotKnown:
            return pullSay("water not known");
        case WhyLeft::TooWet:
            return pullSay("too wet");
        case WhyLeft::NotCappedEnough:
            return pullSay("not capped enough");
        case WhyLeft::MassNotKnown:
            return pullSay("weight not known");
        case WhyLeft::LookFirst:
            return pullSay("not looked into lately");
        case WhyLeft::HiveNeedsIt:
            return pullSay("the hive needs it");
        case WhyLeft::NothingInIt:
            return pullSay("nothing in it");
        case WhyLeft::LimitOnFrames:
            return pullSay("over the limit of frames");
        case WhyLeft::LimitOnMass:
            return pullSay("over what you will carry");
        case WhyLeft::LimitOnBoxes:
            return pullSay("over the limit of boxes");
        case WhyLeft::LimitOnBoards:
            return pullSay("no clearer board left");
    }
    return {};
}

QString verdictText(const PullBoxRow& row) {
    switch (row.verdict) {
        case PullVerdict::Take:
            return pullSay("take");
        case PullVerdict::Leave:
            return row.refused() ? pullSay("refuse") : pullSay("leave");
        case PullVerdict::LookFirst:
            return row.refused() ? pullSay("refuse") : pullSay("look first");
    }
    return {};
}

QString holdText(const Hold& hold) {
    QString text = pullSay("%1, since %2").arg(choiceText(word(hold.why)), dayAndMonth(hold.since));
    if (!hold.note.empty()) text += QStringLiteral(": ") + fromUtf8(hold.note);
    return text;
}

QString reasonText(const PullHiveRow& hive, const PullBoxRow& row) {
    if (row.forced) {
        if (!row.hold && row.fedOn) return pullSay("fed %1; decided").arg(dayAndMonth(*row.fedOn));
        if (!row.hold) return pullSay("you decided");
        return pullSay("%1; decided").arg(choiceText(word(row.hold->why)));
    }
    if (row.hold)
        return pullSay("%1, %2").arg(choiceText(word(row.hold->why)), dayAndMonth(row.hold->since));
    if (row.verdict == PullVerdict::LookFirst) return lookFirstText(hive, row);
    if (row.why == WhyLeft::NotCappedEnough && hive.shortG > 0)
        return pullSay("open; the hive is short");
    if (row.why) return whyLeftText(*row.why);
    return row.fedOn ? pullSay("fed %1 while on").arg(dayAndMonth(*row.fedOn)) : QString();
}

QString otherwiseText(const PullHiveRow& hive, const PullBoxRow& row,
                      const PullOtherwise& otherwise) {
    QStringList parts;
    const double more = otherwise.moreHoneyG;
    if (std::abs(more) >= 500)
        parts << (more > 0 ? pullSay("%1 more") : pullSay("%1 less"))
                     .arg(massText(std::abs(more), How::ByEye));
    const QString mind = mindText(row);
    if (otherwise.verdict == PullVerdict::Take && !mind.isEmpty()) parts << mind;
    QStringList sentences;
    if (!parts.isEmpty()) sentences << parts.join(QStringLiteral(", "));
    if (!otherwise.remainingG)
        sentences << pullSay("what is left to the hive is not known");
    else if (otherwise.shortG > 0)
        sentences << pullSay("the hive keeps %1 of the %2 it needs, %3 to feed")
                         .arg(massFigure(*otherwise.remainingG, How::ByEye),
                              massText(hive.needG, How::ByEye),
                              massFigure(otherwise.shortG, How::ByEye));
    else
        sentences << pullSay("the hive keeps %1 and needs %2")
                         .arg(massFigure(*otherwise.remainingG, How::ByEye),
                              massText(hive.needG, How::ByEye));
    QStringList room;
    if (const QString loads = loadsText(otherwise); !loads.isEmpty()) room << loads;
    const auto minutes = std::lround(otherwise.moreMin);
    if (minutes > 0) room << pullSay("%1 min longer").arg(minutes);
    if (minutes < 0) room << pullSay("%1 min shorter").arg(-minutes);
    if (otherwise.moreBuckets > 0)
        room << pullSay("%1 more").arg(bucketsCounted(otherwise.moreBuckets));
    if (otherwise.moreBuckets < 0)
        room << pullSay("%1 fewer").arg(bucketsCounted(-otherwise.moreBuckets));
    if (!room.isEmpty()) sentences << room.join(QStringLiteral(", "));
    if (otherwise.brush && otherwise.verdict == PullVerdict::Take)
        sentences << pullSay("no clearer board: brush it");
    return sentences.join(QStringLiteral("; ")) + QLatin1Char('.');
}

QString bucketsCounted(std::int64_t buckets) {
    return buckets == 1 ? pullSay("1 bucket") : pullSay("%1 buckets").arg(buckets);
}

QString loadsCounted(std::int64_t loads) {
    return loads == 1 ? pullSay("1 load") : pullSay("%1 loads").arg(loads);
}

QString boxesCounted(int boxes) {
    return boxes == 1 ? pullSay("1 box") : pullSay("%1 boxes").arg(boxes);
}

QString boardsCounted(std::int64_t boards) {
    return boards == 1 ? pullSay("1 board") : pullSay("%1 boards").arg(boards);
}

QString hoursText(double minutes) {
    const auto whole = std::lround(minutes);
    if (whole < 60) return pullSay("%1 min").arg(whole);
    return pullSay("%1 h %2").arg(whole / 60).arg(whole % 60, 2, 10, QLatin1Char('0'));
}

QString bottleneckText(const DayPlan& day) {
    if (!day.slowest) return {};
    const QString alone = hoursText(day.aloneMin);
    if (std::lround(day.oneMoreSavesMin) > 0 && *day.slowest == Station::Uncapping)
        return pullSay("Uncapping holds it up: a second knife makes it %1, one pair of hands %2.")
            .arg(hoursText(day.withOneMoreDayMin), alone);
    const QString holds = *day.slowest == Station::Uncapping  ? pullSay("Uncapping holds it up")
                          : *day.slowest == Station::Spinning ? pullSay("Spinning holds it up")
                          : *day.slowest == Station::Swapping
                              ? pullSay("Filling the machine holds it up")
                              : pullSay("Straining holds it up");
    const auto saves = std::lround(day.oneMoreSavesMin);
    if (saves > 0)
        return pullSay("%1: a second knife saves %2 min, one pair of hands takes %3.")
            .arg(holds)
            .arg(saves)
            .arg(alone);
    return pullSay("%1: a second knife saves nothing, one pair of hands takes %2.")
        .arg(holds, alone);
}

QString boardsText(const PullSheet& sheet) {
    QStringList sentences;
    if (sheet.rounds.size() > 1)
        sentences << pullSay("%1 for %2 hives.")
                         .arg(sheet.boardsOwned.value_or(0))
                         .arg(sheet.boardsFor.size())
                  << roundTexts(sheet.rounds);
    else if (!sheet.boardsFor.empty())
        sentences << pullSay("%1.").arg(marks(sheet.boardsFor));
    if (!sheet.brush.empty())
        sentences << (sheet.boardsIn ? pullSay("No board for %1: brush on %2.")
                                     : pullSay("Too late for boards. Brush %1 on %2."))
                         .arg(marks(sheet.brush), shortDayText(sheet.asked.forDay));
    return sentences.join(QLatin1Char(' '));
}

QString honeySumText(const PullSheet& sheet) {
    QStringList yards;
    for (const PullYardRow& yard : sheet.yards)
        if (yard.taken > 0)
            yards << pullSay("%1 %2").arg(fromUtf8(yard.yard.name.text()),
                                          massFigure(yard.honeyG, How::Weighed));
    if (yards.size() < 2) return {};
    return pullSay("%1 = %2").arg(yards.join(QStringLiteral(" + ")),
                                  massFigure(sheet.honey.grams, How::Weighed));
}

QString keptText(const PullSheet& sheet, const KeptPull& kept) {
    const QString was = pullSay("kept %1: %2 from %3")
                            .arg(shortDayText(kept.plan.on), massText(kept.honeyG, How::ByEye),
                                 boxesCounted(kept.taken));
    if (kept.done())
        return pullSay("kept %1: done, %2 of %3 brought")
            .arg(shortDayText(kept.plan.on))
            .arg(kept.brought)
            .arg(boxesCounted(kept.taken));
    if (kept.brought > 0)
        return pullSay("%1; %2 of %3 brought")
            .arg(was)
            .arg(kept.brought)
            .arg(boxesCounted(kept.taken));
    if (asKept(sheet, kept)) return was;
    return pullSay("%1; now %2 from %3")
        .arg(was, massFigure(sheet.honey.grams, How::ByEye))
        .arg(sheet.taken);
}

}  // namespace combwright
