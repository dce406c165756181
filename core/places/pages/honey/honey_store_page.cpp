#include "core/places/pages/honey/honey_store_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/model/season_info.h"
#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString honeySay(const char* text) { return QCoreApplication::translate("honey_store", text); }

QString honeyShare(double share) { return QLocale().toString(share * 100.0, 'f', 0); }

Cell honeyCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell leftCell(const std::optional<Mass>& mass, How how) {
    Cell cell;
    cell.text =
        mass ? massFigure(static_cast<double>(mass->grams()), How::Weighed) : QStringLiteral("?");
    if (mass) cell.how = how;
    return cell;
}

TextBlock sayBlock(const QString& text, bool caution = false) {
    TextBlock block;
    block.text = text;
    block.caution = caution;
    return block;
}

/// Said once for all buckets.
TextBlock settingBlock() {
    return sayBlock(honeySay(
        "Once set: the liquid between the crystals gets wetter, by about so much where 10 to 15 g "
        "of glucose in 100 g set. Honey that is sound now can ferment then: fill it liquid, dry "
        "it, or use it first."));
}

QString storeSummary(const HoneyStore& store) {
    QStringList sentences;
    sentences << honeySay(store.standing.size() == 1 ? "%1 bucket or lot with honey, %2 in all."
                                                     : "%1 buckets and lots with honey, %2 in all.")
                     .arg(static_cast<int>(store.standing.size()))
                     .arg(massKnown(static_cast<double>(store.known.grams()), store.knownHow));
    if (store.notKnown > 0) sentences << honeySay("Nobody weighed %1 of them.").arg(store.notKnown);
    sentences << honeySay("Your line is %1 of water.").arg(waterPercentText(store.targetPercent));
    if (!store.profile.empty())
        sentences << honeySay("Limits of %1, as published; the code of your place decides.")
                         .arg(fromUtf8(store.profile));
    return sentences.join(QLatin1Char(' '));
}

}  // namespace

QString waterPercentText(double percent) {
    return QLocale().toString(percent, 'f', 1) + QStringLiteral(" %");
}

QString airText(const AirOverHoney& air) {
    QString text = honeySay("Room air %1 % damp on %2: ")
                       .arg(QLocale().toString(air.dampPercent, 'f', 0), dayAndMonth(air.on));
    if (!air.verdict) return text + honeySay("what that does to such honey is not published.");
    switch (*air.verdict) {
        case AirVerdict::Gains:
            text += honeySay("in an open vessel it takes up water. Put a tight lid on.");
            break;
        case AirVerdict::Stays:
            text += honeySay("it stays as it is.");
            break;
        case AirVerdict::Loses:
            text += honeySay("in an open vessel it gives water off.");
            break;
    }
    if (air.restsAtPercent)
        text += QLatin1Char(' ') +
                honeySay("It would come to %1.").arg(waterPercentText(*air.restsAtPercent));
    return text;
}

QString settingText(const StoredHoney& honey) {
    return honeySay("once set %1 to %2")
        .arg(waterPercentText(*honey.whenSetFrom), waterPercentText(*honey.whenSetTo));
}

QString waterText(const std::optional<WaterInUse>& water) {
    return water ? waterPercentText(water->percent) : honeySay("not read");
}

QString waterKnownText(const WaterInUse& water) {
    QStringList parts;
    const auto since = water.on ? shortDayText(*water.on) : QString();
    switch (water.from) {
        case WaterFrom::Reading: {
            QString text = honeySay("read %1").arg(since);
            if (water.reading && water.reading->temperature)
                text += honeySay(" at %1").arg(
                    shownTemperature(water.reading->temperature->celsius()).text());
            if (water.reading && !water.reading->instrument.empty())
                text += QStringLiteral(", ") + fromUtf8(water.reading->instrument);
            if (water.reading && water.reading->corrected) text += honeySay(", corrected");
            parts << text;
            break;
        }
        case WaterFrom::AtTheGate:
            parts << honeySay("said at the gate %1").arg(since);
            break;
        case WaterFrom::Parts:
            parts << honeySay("by what went in, %1").arg(since);
            break;
        case WaterFrom::Drying:
            parts << honeySay("by what it lost in drying, %1").arg(since);
            break;
    }
    for (const WaterDoubt doubt : water.doubts) switch (doubt) {
            case WaterDoubt::NotCorrected:
                parts << honeySay("not corrected: %1 at 20 °C")
                             .arg(water.correctedPercent ? waterPercentText(*water.correctedPercent)
                                                         : honeySay("beyond the table"));
                break;
            case WaterDoubt::ReadsTooDry:
                parts << honeySay(
                             "READS TOO DRY: the honey was cold and nothing was corrected; it "
                             "has %1")
                             .arg(water.correctedPercent ? waterPercentText(*water.correctedPercent)
                                                         : honeySay("more than it says"));
                break;
            case WaterDoubt::WarmthNotSaid:
                parts << honeySay("nobody said how warm the sample was");
                break;
            case WaterDoubt::CalibratedLongAgo:
                parts << (water.reading && water.reading->calibrated
                              ? honeySay("instrument last checked %1")
                                    .arg(dayText(*water.reading->calibrated))
                              : honeySay("nobody said when the instrument was checked"));
                break;
            case WaterDoubt::DriedSince:
                parts << honeySay("dried since: read it again");
                break;
            case WaterDoubt::WetterThanShown:
                parts << honeySay("a part of it reads too dry: it has rather %1")
                             .arg(waterPercentText(water.wettestPercent()));
                break;
        }
    return parts.join(QStringLiteral("; "));
}

QString keepsText(const FermentVerdict& verdict) {
    switch (verdict.keeping) {
        case KeepingClass::Keeps:
            return honeySay("keeps");
        case KeepingClass::Watch:
            return honeySay("keeps if it has few yeasts");
        case KeepingClass::Act:
            return honeySay("can ferment: dry it, blend it, or sell it soon");
        case KeepingClass::Danger:
            return honeySay("will ferment sooner or later");
    }
    return {};
}

QString heatText(const HoneyHeat& heat) {
    QStringList parts;
    if (heat.damage)
        parts << honeySay(
                     "warming so far %1: %2 to %3 mg/kg of HMF, %4 % of the diastase and %5 % "
                     "of the invertase left")
                     .arg(word(key(heat.heat)), QLocale().toString(heat.damage->hmfLow, 'f', 1),
                          QLocale().toString(heat.damage->hmfHigh, 'f', 1),
                          honeyShare(heat.damage->diastaseLeftShare),
                          honeyShare(heat.damage->invertaseLeftShare));
    if (heat.notKnown > 0)
        parts << honeySay(heat.notKnown == 1
                              ? "%1 warming of which nobody wrote down how warm or how long"
                              : "%1 warmings of which nobody wrote down how warm or how long")
                     .arg(heat.notKnown);
    return parts.join(QStringLiteral("; "));
}

QString heldText(const VesselView& view) {
    QStringList parts;
    for (const Hold& hold : view.held) {
        QString text = honeySay("held since %1: %2")
                           .arg(dayAndMonth(hold.since),
                                word(Choices<HoldWhy>::words[static_cast<std::size_t>(hold.why)]));
        if (!isOwn(hold, view.vessel)) text += honeySay(" (of what it came from)");
        parts << text;
    }
    return parts.join(QStringLiteral("; "));
}

QString treatedText(const TreatedShare& share) {
    QStringList parts;
    if (share.all())
        parts << honeySay("treated while on: all %1 boxes").arg(share.of);
    else if (share.any())
        parts
            << honeySay("treated while on: perhaps, %1 of %2 boxes").arg(share.boxes).arg(share.of);
    if (share.any() && share.unknown > 0)
        parts << honeySay(share.unknown == 1 ? "of %1 box nobody knows it"
                                             : "of %1 boxes nobody knows it")
                     .arg(share.unknown);
    return parts.join(QStringLiteral("; "));
}

QString settlingText(const Settling& settling, Day on) {
    return (settling.until <= on ? honeySay("settled since %1") : honeySay("settles until %1"))
        .arg(shortDayText(settling.until, on));
}

QString colourText(const HoneyTraits& traits) {
    QStringList parts;
    if (!traits.colour.empty()) parts << fromUtf8(traits.colour);
    if (traits.pfund)
        parts << honeySay("%1 (%2 mm Pfund)")
                     .arg(fromUtf8(colourClassOf(traits)),
                          QLocale().toString(traits.pfund->mm(), 'g', 4));
    return parts.join(QStringLiteral(", "));
}

QString waterOffText(const StoredHoney& honey) {
    if (!honey.waterOffG || *honey.waterOffG <= 0 || !honey.targetPercent) return {};
    return honeySay("to %1: %2 of water must go, or blend it")
        .arg(waterPercentText(*honey.targetPercent), shownPortion(*honey.waterOffG).text());
}

QString limitText(const std::string& profile, const LimitAnswer& answer) {
    QString text = fromUtf8(profile);
    if (!answer.limit.grade.empty()) text += QLatin1Char(' ') + fromUtf8(answer.limit.grade);
    if (answer.limit.atMost)
        text += honeySay(": %1 at most").arg(waterPercentText(*answer.limit.atMost));
    return text + QStringLiteral(", ") + choiceText(key(answer.verdict));
}

QStringList honeyRemarks(const StoredHoney& honey, const HoneyStore& store) {
    QStringList remarks;
    const auto add = [&](const QString& text) {
        if (!text.isEmpty()) remarks << text;
    };
    add(heldText(honey.view));
    add(treatedText(honey.view.treated));
    if (honey.view.water)
        add(honey.view.water->from == WaterFrom::AtTheGate ? honeySay("water as said at the gate")
                                                           : waterKnownText(*honey.view.water));
    if (honey.ferment) add(keepsText(*honey.ferment));
    for (const LimitAnswer& answer : honey.limits)
        if (answer.verdict == LimitVerdict::Outside) add(limitText(store.profile, answer));
    add(waterOffText(honey));
    if (honey.setAtRisk && honey.whenSetFrom && honey.whenSetTo) add(settingText(honey));
    add(heatText(honey.view.heat));
    QStringList tastes;
    for (const TasteWord& taste : honey.view.tastes) tastes << fromUtf8(taste.word);
    if (!tastes.isEmpty()) add(honeySay("taste: %1").arg(tastes.join(QStringLiteral(", "))));
    if (const QString colour = colourText(honey.view.traits); !colour.isEmpty())
        add(honeySay("colour: %1").arg(colour));
    if (!honey.view.traits.place.empty())
        add(honeySay("stands in %1").arg(fromUtf8(honey.view.traits.place)));
    if (honey.view.lidded == false) add(honeySay("no lid on"));
    if (honey.view.ledger.missing != Mass())
        add((honey.view.ledger.missing > Mass() ? honeySay("%1 missing when it was weighed")
                                                : honeySay("%1 more than reckoned was found"))
                .arg(shownPortion(std::abs(static_cast<double>(honey.view.ledger.missing.grams())))
                         .text()));
    return remarks;
}

Page honeyStorePage(const Read& file, const HoneyStore& store) {
    Page page =
        roomPaper(file, honeySay("Honey in the room"), honeySay("for %1").arg(dayText(store.on)));
    page.blocks.emplace_back(sayBlock(storeSummary(store)));
    TableBlock table;
    table.columns = {{honeySay("bucket or lot"), 1.4, false},
                     {honeySay("honey, %1").arg(massUnit()), 0.8, true},
                     {honeySay("water"), 0.8, true},
                     {honeySay("settled"), 1.5, false},
                     {honeySay("what to know"), 4.5, false}};
    std::optional<AirOverHoney> air;
    for (const StoredHoney& honey : store.standing) {
        TableRow row;
        row.cells = {
            honeyCell(fromUtf8(honey.view.name), true),
            leftCell(honey.view.ledger.left, honey.view.ledger.leftHow),
            honeyCell(waterText(honey.view.water)),
            honeyCell(honey.settling ? settlingText(*honey.settling, store.on) : QString()),
            honeyCell(honeyRemarks(honey, store).join(QStringLiteral("; ")))};
        table.rows.push_back(std::move(row));
        if (honey.air && (!air || honey.air->verdict == AirVerdict::Gains)) air = honey.air;
    }
    if (!table.rows.empty()) page.blocks.emplace_back(std::move(table));
    if (!store.notWrittenOf.empty())
        page.blocks.emplace_back(sayBlock(
            honeySay("Not emptied by what is written, and nothing written for a year: %1. Weigh "
                     "what is left, 0 where nothing is.")
                .arg(listed(store.notWrittenOf))));
    if (std::any_of(store.standing.begin(), store.standing.end(),
                    [](const StoredHoney& honey) { return honey.setAtRisk; }))
        page.blocks.emplace_back(settingBlock());
    if (air) page.blocks.emplace_back(sayBlock(airText(*air)));
    if (std::any_of(store.standing.begin(), store.standing.end(), [](const StoredHoney& honey) {
            return honey.settling && honey.settling->depth != Settling::Depth::OfWidth;
        }))
        page.blocks.emplace_back(
            sayBlock(honeySay("When honey has settled goes by how deep it stands; where nobody "
                              "wrote down how wide a vessel is, it is taken to be as deep as it is "
                              "wide.")));
    page.blocks.emplace_back(sayBlock(
        honeySay("A bucket of honey is heavy and slips: lift it with straight arms close to the "
                 "body, a tank never full. ") +
            liftCaution(),
        true));
    page.letters = lettersOf(page);
    return page;
}

Page blendPage(const Read& file, const BlendPlan& plan) {
    Page page = roomPaper(file, honeySay("Blend to %1").arg(waterPercentText(plan.targetPercent)),
                          honeySay("for %1").arg(dayText(plan.on)));
    const BlendOutcome& out = plan.outcome;
    QStringList says;
    if (out.mass <= Mass())
        says << honeySay("No honey whose mass and water are known comes to that.");
    else
        says << honeySay("The most there can be: %1 at %2 of water.")
                    .arg(massKnown(static_cast<double>(out.mass.grams()), out.how),
                         out.waterPercent ? waterPercentText(*out.waterPercent)
                                          : QStringLiteral("?"));
    if (out.roomLeft)
        says << honeySay("The tank has room for %1 more.")
                    .arg(massText(static_cast<double>(out.roomLeft->grams()), How::Weighed));
    page.blocks.emplace_back(sayBlock(says.join(QLatin1Char(' '))));
    if (out.wettestPercent)
        page.blocks.emplace_back(sayBlock(
            honeySay("Cold honey that nobody corrected reads too dry (%1): with the corrections "
                     "the blend has %2. Take them first, then plan again.")
                .arg(listed(out.tooDry), waterPercentText(*out.wettestPercent)),
            true));
    if (!out.doubtful.empty())
        page.blocks.emplace_back(sayBlock(
            honeySay("Of %1 nobody said how warm the sample was: read again before you pour.")
                .arg(listed(out.doubtful))));
    TableBlock table;
    table.columns = {{honeySay("bucket or lot"), 1.5, false},
                     {honeySay("there, %1").arg(massUnit()), 1, true},
                     {honeySay("water"), 0.8, true},
                     {honeySay("pour, %1").arg(massUnit()), 1, true},
                     {honeySay("why not"), 1.6, false}};
    for (const BlendLine& line : plan.lines) {
        TableRow row;
        row.cells = {
            honeyCell(fromUtf8(line.name), true), leftCell(line.there, line.thereHow),
            honeyCell(waterText(line.water)),
            honeyCell(line.use > Mass() ? massTold(line.use) : QString()),
            honeyCell(line.leftOut == BlendLeftOut::Not ? QString() : word(key(line.leftOut)))};
        table.rows.push_back(std::move(row));
    }
    if (!table.rows.empty()) page.blocks.emplace_back(std::move(table));
    page.letters = lettersOf(page);
    return page;
}

Page usualBlendPage(const Read& file, Day on) {
    const auto plan = usualBlend(file, on);
    if (plan) return blendPage(file, *plan);
    Page page = roomPaper(file, honeySay("Blend to %1").arg(waterPercentText(waterLine(file, on))),
                          honeySay("for %1").arg(dayText(on)));
    page.blocks.emplace_back(sayBlock(sentence(plan.error())));
    return page;
}

}  // namespace combwright
