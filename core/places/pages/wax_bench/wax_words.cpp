#include "core/places/pages/wax_bench/wax_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/words/clock_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString waxSay(const char* text) { return QCoreApplication::translate("wax", text); }

QString waxShare(double share) { return QLocale().toString(share * 100.0, 'f', 0); }

QString kindOfWant(const CandleEvenings& plan, std::size_t want) {
    return want < plan.wants.size() ? fromUtf8(plan.wants[want].what) : QString();
}

QString projectWhat(const HiveProject& project) { return word(word(project.what)); }

}  // namespace

QString openHeatText(const HeatSession& heat) {
    QString text = waxSay("POT ON HEAT: %1, since %2 on %3.")
                       .arg(fromUtf8(heat.what.text()), clockText(heat.begun),
                            shortDayText(dayAt(heat.begun)));
    return text + QLatin1Char(' ') + waxSay("Never leave it. Write heat-off when the heat is off.");
}

std::vector<Block> openHeatBlocks(const std::vector<HeatSession>& heat) {
    std::vector<Block> blocks;
    for (const HeatSession& each : heat) {
        TextBlock block;
        block.caution = true;
        block.text = openHeatText(each);
        block.strong = {block.text};
        blocks.emplace_back(std::move(block));
    }
    return blocks;
}

QString batchFromText(const BatchShown& batch) {
    QStringList parts;
    const WaxBatch& own = batch.ledger.batch;
    parts << word(word(own.source));
    QStringList names;
    for (const std::string& name : batch.from) names << fromUtf8(name);
    if (!names.isEmpty()) parts.last() += waxSay(" of %1").arg(names.join(QStringLiteral(", ")));
    if (own.shade) parts << shadeText(*own.shade);
    if (batch.state) parts << word(word(*batch.state));
    if (own.combs) parts << waxSay("%1 combs").arg(own.combs->value());
    return parts.join(QStringLiteral(", "));
}

QString batchMassText(const BatchShown& batch) {
    QStringList parts;
    if (batch.ledger.in) parts << waxSay("in %1").arg(waxText(*batch.ledger.in));
    const bool since = batch.weighed && batch.raw && *batch.weighed != *batch.raw;
    if (since) parts << waxSay("%1 on its way").arg(waxText(*batch.weighed));
    if (!batch.ledger.blocks.empty())
        parts << waxSay(batch.ledger.allWeighed ? "out %1" : "out %1 and what was not weighed")
                     .arg(waxText(batch.ledger.clean));
    if (batch.lost) parts.last() += QStringLiteral(" (%1 %)").arg(waxShare(batch.lost->yield));
    QString text = parts.join(QStringLiteral(", "));
    if (batch.yield) {
        const Between& share = batch.yield->share;
        const QString range =
            share.low == share.high
                ? waxSay("%1 %").arg(waxShare(share.likely))
                : waxSay("%1 to %2 %").arg(waxShare(share.low), waxShare(share.high));
        QString expected = since ? waxSay("%1 of %2 expected").arg(range, waxText(*batch.weighed))
                                 : waxSay("%1 expected").arg(range);
        if (batch.yield->ownBatches > 0)
            expected +=
                waxSay(", %1 of your own among it").arg(static_cast<int>(batch.yield->ownBatches));
        text += (text.isEmpty() ? QString() : QStringLiteral("; ")) + expected;
    }
    return text.isEmpty() ? waxSay("not weighed") : text;
}

QString batchWaitsText(const BatchShown& batch) {
    if (batch.washedOn)
        return waxSay("Washed %1 and not melted: washed wax ferments, melt it the same day.")
            .arg(shortDayText(*batch.washedOn));
    if (batch.ledger.wentInto) return waxSay("Went together with another batch.");
    if (!batch.waits) return {};
    QString how = batch.kept ? word(word(*batch.kept)) : waxSay("nobody said how it is kept");
    if (batch.keptSince) how = waxSay("%1 since %2").arg(how, shortDayText(*batch.keptSince));
    return waxSay(batch.days == 1 ? "Waits for the pot, 1 day: %2."
                                  : "Waits for the pot, %1 days: %2.")
        .replace(QStringLiteral("%1"), QString::number(batch.days))
        .replace(QStringLiteral("%2"), how);
}

QString mouldText(const MouldShown& mould) {
    QString text = waxSay(mould.mould.cavities.value() == 1 ? "%1 cavity" : "%1 cavities")
                       .arg(mould.mould.cavities.value());
    if (mould.mass)
        text += waxSay(", %1 each (first pour %2)")
                    .arg(shownPortion(mould.mass->massG).text(),
                         shownPortion(mould.mass->firstPourG).text()) +
                (mould.byScales  ? waxSay(", weighed")
                 : mould.byWater ? waxSay(", by water")
                                 : waxSay(", by size"));
    else
        text += waxSay(", nobody knows what one takes");
    if (mould.mould.oneWay == true)
        text += mould.safe ? waxSay("; goes with the candle")
                           : waxSay(
                                 "; goes with the candle: not for sale before a test burn with "
                                 "its wick went well");
    return text;
}

namespace {

/// The wick in use and what was burnt with it, and two more that were tried.
constexpr qsizetype shownWicks = 4;

}  // namespace

QString mouldWickText(const MouldShown& mould) {
    const QString own = fromUtf8(mould.mould.wick);
    QStringList parts;
    if (!own.isEmpty()) parts << own;
    for (const BurnTest& test : lastTests(mould)) {
        if (parts.size() == shownWicks) break;
        parts << waxSay("%1 burnt %2: %3")
                     .arg(fromUtf8(test.wick.text()), shortDayText(test.on),
                          word(word(test.verdict)));
    }
    if (mould.tests.empty() && mould.guess) {
        parts << waxSay("no test burn yet; the table begins with %1 to %2")
                         .arg(fromUtf8(mould.guess->thinnest), fromUtf8(mould.guess->thickest)) +
                     (mould.guess->orThicker ? waxSay(" or thicker") : QString());
    }
    return parts.join(QStringLiteral("; "));
}

QString unfinishedText(const PourShown& pour, Day on) {
    const Pour& own = pour.pour;
    QString text = waxSay("%1 %2 of %3, poured %4")
                       .arg(QString::number(own.good.value()), fromUtf8(pour.candle),
                            fromUtf8(pour.mould), shortDayText(own.on));
    if (own.trimmed && *own.trimmed <= on) return text + waxSay(": to be paired and labelled");
    if (own.released && *own.released <= on)
        return text + waxSay(": foot to be trimmed, wick to be cut");
    if (!pour.setBy) return text + waxSay(": nobody said how long they set");
    return text + (*pour.setBy <= on ? waxSay(": set, take them out")
                                     : waxSay(": set %1").arg(shortDayText(*pour.setBy)));
}

QString limitText(CandleLimit limit) {
    switch (limit) {
        case CandleLimit::Wax:
            return waxSay("wax");
        case CandleLimit::Moulds:
            return waxSay("moulds and evenings");
        case CandleLimit::Wick:
            return waxSay("wick");
    }
    return {};
}

QString countedInText(const CandleEvenings& plan) {
    std::map<std::pair<Day, std::string>, QStringList> wishes;
    for (const CandlesWantedShown& kind : plan.kinds)
        for (const CandlesWantedShown::Wish& wish : kind.wishes)
            wishes[{wish.by, wish.whatFor}]
                << QString::number(wish.count) + QLatin1Char(' ') + fromUtf8(kind.kind.name.text());
    if (wishes.size() < 2) return {};
    QStringList parts;
    for (const auto& [of, kinds] : wishes)
        parts << (of.second.empty()
                      ? waxSay("by %1: %2")
                            .arg(shortDayText(of.first), kinds.join(QStringLiteral(", ")))
                      : waxSay("by %1, %2: %3")
                            .arg(shortDayText(of.first), fromUtf8(of.second),
                                 kinds.join(QStringLiteral(", "))));
    return waxSay("Counted in, the soonest first: %1.").arg(parts.join(QStringLiteral("; ")));
}

QString bitesText(const CandleEvenings& plan, std::size_t want) {
    if (want >= plan.reach.kinds.size() || plan.reach.kinds[want].bites.empty()) return {};
    const CandleReach& reach = plan.reach.kinds[want];
    const std::int64_t count = plan.wants[want].count;
    // Everything that is short is named, what bites first in front: the next one bites when that is
    // mended.
    std::vector<std::pair<std::int64_t, CandleLimit>> limits{{reach.byWax, CandleLimit::Wax},
                                                             {reach.byMoulds, CandleLimit::Moulds},
                                                             {reach.byWick, CandleLimit::Wick}};
    std::stable_sort(limits.begin(), limits.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    QStringList said;
    for (const auto& [gives, limit] : limits)
        if (gives < count) said << waxSay("%1 for %2").arg(limitText(limit)).arg(gives);
    return waxSay("%1 of %2: %3")
        .arg(QString::number(reach.made), QString::number(count), said.join(QStringLiteral(", ")));
}

QString ofShadeText(const CandleEvenings& plan, const std::vector<CandlesOfShade>& counts) {
    QStringList parts;
    for (const CandlesOfShade& each : counts) {
        QString part = QString::number(each.count) + QLatin1Char(' ') + kindOfWant(plan, each.want);
        if (!each.shade.empty()) part += QLatin1Char(' ') + shadeText(each.shade);
        parts << part;
    }
    return parts.isEmpty() ? waxSay("none") : parts.join(QStringLiteral(", "));
}

QString oneMoreText(const CandleEvenings& plan, const OneMoreCandleThing& more) {
    QString what;
    switch (more.what) {
        case OneMoreCandleThing::What::Cavity:
            what = waxSay("One cavity more for %1").arg(kindOfWant(plan, more.want));
            break;
        case OneMoreCandleThing::What::Evening:
            what = waxSay("One evening more");
            break;
        case OneMoreCandleThing::What::Kilogram:
            what = waxSay("One kilogram more, %1").arg(shadeText(more.name));
            break;
        case OneMoreCandleThing::What::Metre:
            what = waxSay("One metre more of wick %1").arg(fromUtf8(more.name));
            break;
    }
    QStringList parts;
    for (std::size_t want = 0; want < more.change.size(); ++want)
        if (const std::int64_t change = more.change[want]; change != 0)
            parts << (change > 0 ? waxSay("%1 %2 more") : waxSay("%1 %2 fewer"))
                         .arg(QString::number(std::abs(change)), kindOfWant(plan, want));
    const bool held = parts.isEmpty() && more.what == OneMoreCandleThing::What::Cavity &&
                      !plan.reach.kinds[more.want].bites.empty();
    if (held) {
        QStringList limits;
        for (const CandleLimit limit : plan.reach.kinds[more.want].bites)
            limits << limitText(limit);
        parts << waxSay("changes nothing before there is more %1")
                     .arg(limits.join(QStringLiteral(", ")));
    }
    return what + QStringLiteral(": ") +
           (parts.isEmpty() ? waxSay("changes nothing") : parts.join(QStringLiteral(", ")));
}

QString projectText(const CombProject& comb, Day on) {
    const HiveProject& project = comb.project;
    QString text = waxSay("%1: %2 %3")
                       .arg(fromUtf8(project.name.text()), QString::number(project.pieces.value()),
                            projectWhat(project));
    const QString hive = comb.hive.empty() ? waxSay("a hive") : fromUtf8(comb.hive);
    switch (comb.stage) {
        case ProjectStage::Written:
            text += waxSay(", starter to be put in");
            break;
        case ProjectStage::StarterIn:
            text += waxSay(", to be put on %1 in a flow").arg(hive);
            break;
        case ProjectStage::OnHive:
            text += waxSay(", on %1 since %2").arg(hive, shortDayText(*project.putOn));
            if (!comb.looks.empty() && comb.looks.back().filled)
                text += waxSay(", %1 filled %2")
                            .arg(QString::number(comb.looks.back().filled->value()),
                                 shortDayText(comb.looks.back().on));
            text += comb.built ? waxSay(": built, take them off")
                    : comb.nextLook && *comb.nextLook <= on
                        ? waxSay(": look")
                        : waxSay(": look %1").arg(shortDayText(*comb.nextLook));
            break;
        case ProjectStage::OffHive:
            text += waxSay(", off %1 since %2: to be lidded and weighed, comb and honey together")
                        .arg(hive, shortDayText(*project.off));
            break;
        case ProjectStage::Lidded:
            text += waxSay(", lidded %1").arg(shortDayText(*project.lidded));
            if (project.good) text += waxSay(", %1 good").arg(project.good->value());
            if (project.net && project.net->middle())
                text += waxSay(", %1 comb and honey").arg(waxText(*project.net->middle()));
            break;
    }
    if (comb.onLatest)
        text += waxSay("; on by %1 for %2 (28 days to build, planning assumption)")
                    .arg(shortDayText(*comb.onLatest), shortDayText(*project.wantedBy));
    if (!project.code.empty()) text += waxSay("; lot %1").arg(fromUtf8(project.code));
    return text;
}

QString projectCareText(const CombProject& comb) {
    QStringList parts;
    if (comb.quarantine)
        parts << waxSay("%1 is quarantined since %2: nothing of it leaves")
                     .arg(fromUtf8(comb.hive), shortDayText(comb.quarantine->since));
    for (const TreatmentLine& line : comb.treated)
        parts << waxSay(
                     "treated while on: %1 went into %2 on %3; not for people unless its label "
                     "says so")
                     .arg(fromUtf8(line.medicine.name.text()), fromUtf8(comb.hive),
                          shortDayText(line.treatment.on));
    return parts.join(QStringLiteral("; "));
}

QStringList waxSafetyLines() {
    return {waxSay("Heat wax over water or by steam only, never on a flame or a bare ring."),
            waxSay("Thermometer in the wax: 75 to 80 °C is enough, at 85 °C it discolours, do not "
                   "let the water boil."),
            waxSay("Never leave it. Set the timer, and tick the pot off."),
            waxSay("Lid, and an extinguisher of class B or a fire blanket, within reach."),
            waxSay("No water on burning wax: lid on, heat off."),
            waxSay("Wax on the skin: cool with water, do not pull it off.")};
}

Block waxSafetyBlock() {
    TextBlock block;
    block.title = waxSay("At the pot");
    block.caution = true;
    block.text = waxSafetyLines().join(QLatin1Char('\n'));
    return block;
}

QStringList candleCareLines() {
    return {waxSay("Never leave it burning alone; keep it from children, animals and curtains."),
            waxSay("Stand it upright on something that does not burn, out of draughts."),
            waxSay("Cut the wick to about %1 before you light it.")
                .arg(shownLength(trimmedWickMm).text()),
            waxSay("The first time let it burn until the pool is nearly as wide as the candle."),
            waxSay("Put it out before the flame comes near the foot. No water on burning wax."),
            waxSay("A white bloom is the wax's own; a soft cloth takes it off.")};
}

QStringList propolisCautionLines() {
    return {waxSay("Propolis can cause an allergy of the skin, also after years without one."),
            waxSay("Wear gloves. Do not wash the skin with solvents."),
            waxSay("Stop at the first rash and see a doctor. Do not use it where bee products were "
                   "not borne before."),
            waxSay("It is sold and given as it is: nothing is promised for health.")};
}

}  // namespace combwright
