#include "core/places/pages/honey/vessel_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/trace/trace_words.h"
#include "core/places/trace/trace.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString vesselWord(const char* text) { return QCoreApplication::translate("vessel", text); }

QString gramsKnown(const Mass& mass, How how) {
    return massKnown(static_cast<double>(mass.grams()), how);
}

QString namesIn(const std::vector<std::string>& names) {
    QStringList list;
    for (const std::string& name : names) list << fromUtf8(name);
    return list.join(QStringLiteral(", "));
}

QString lackText(HoneyLacks lacks, const StoredHoney& honey, Day on) {
    switch (lacks) {
        case HoneyLacks::Held:
            return heldText(honey.view);
        case HoneyLacks::WaterNotRead:
            return vesselWord("its water is not read");
        case HoneyLacks::ReadsTooDry:
            return vesselWord("it was read cold and reads too dry: take the corrected figure");
        case HoneyLacks::PartTooDry:
            return vesselWord("a part of it reads too dry: it has rather %1")
                .arg(waterPercentText(honey.view.water->wettestPercent()));
        case HoneyLacks::WaterMustGo:
            return honey.waterOffG ? waterOffText(honey)
                                   : vesselWord("over your %1 of water: dry it or blend it")
                                         .arg(waterPercentText(honey.targetPercent.value_or(0)));
        case HoneyLacks::NotSettled:
            return settlingText(*honey.settling, on);
    }
    return {};
}

/// "0.3 to 1.0 mg/kg of HMF, 98 % of the diastase and 95 % of the invertase left"
QString heatRangeText(const HeatDamage& damage) {
    const auto share = [](double of) { return QLocale().toString(of * 100.0, 'f', 0); };
    return vesselWord("%1 to %2 mg/kg of HMF, %3 % of the diastase and %4 % of the invertase left")
        .arg(QLocale().toString(damage.hmfLow, 'f', 1), QLocale().toString(damage.hmfHigh, 'f', 1),
             share(damage.diastaseLeftShare), share(damage.invertaseLeftShare));
}

QString entryText(const Read& file, const VesselEntry& entry) {
    const QString mass = entry.change
                             ? gramsKnown(Mass::grams(std::abs(entry.change->grams())), entry.how)
                             : vesselWord("nobody knows how much");
    switch (entry.event) {
        case VesselEvent::Filled:
            return vesselWord("filled, %1").arg(mass);
        case VesselEvent::Worked: {
            const auto step = file.find(entry.step);
            const QString work = step ? word(combwright::word(step->work)) : QString();
            return entry.change ? vesselWord("%1: %2 went off").arg(work, mass) : work;
        }
        case VesselEvent::IntoLot: {
            const auto lot = file.find(entry.intoLot);
            return vesselWord("%1 into %2").arg(mass, lot ? fromUtf8(lot->name.text()) : QString());
        }
        case VesselEvent::IntoJars: {
            const auto filling = file.find(entry.bottling);
            return vesselWord("%1 into jars, %2")
                .arg(mass, filling ? fromUtf8(filling->code.text()) : QString());
        }
        case VesselEvent::InBulk: {
            const auto out = file.find(entry.out);
            return vesselWord("%1 in bulk: %2")
                .arg(mass, out ? word(combwright::word(out->how)) : QString());
        }
        case VesselEvent::Weighed:
            return entry.left
                       ? vesselWord("weighed: %1 left").arg(gramsKnown(*entry.left, entry.how))
                       : vesselWord("looked at: nobody knows how much is left");
    }
    return {};
}

}  // namespace

QStringList lackTexts(const StoredHoney& honey, Day on) {
    QStringList texts;
    for (const HoneyLacks each : honey.lacks(on)) texts << lackText(each, honey, on);
    return texts;
}

QString traitsText(const HoneyTraits& traits) {
    QStringList parts;
    if (!traits.colour.empty()) parts << fromUtf8(traits.colour);
    if (traits.pfund) {
        const QString name = fromUtf8(colourName(traits));
        const QString mm = QLocale().toString(traits.pfund->mm(), 'g', 4);
        parts << (name.isEmpty() ? vesselWord("%1 mm on the Pfund scale").arg(mm)
                                 : vesselWord("%1 mm on the Pfund scale (%2)").arg(mm, name));
    }
    if (!traits.strainer.empty())
        parts << vesselWord("strained: %1").arg(fromUtf8(traits.strainer));
    return parts.join(QStringLiteral(", "));
}

QString settlingWhyText(const Settling& settling) {
    return (settling.warmthAssumed
                ? vesselWord("%1 h for bubbles of %2 mm through %3 mm of honey at %4, the warmth "
                             "honey is strained at: nobody wrote down the room's")
                : vesselWord("%1 h for bubbles of %2 mm through %3 mm of honey at %4, the room of "
                             "the day"))
        .arg(QLocale().toString(settling.hours, 'f', 0),
             QLocale().toString(settling.bubbleUm / 1000.0, 'g', 2),
             QLocale().toString(settling.depthMm, 'f', 0),
             shownTemperature(settling.temperatureC).text());
}

QStringList cameFromTexts(const Read& file, const VesselView& view) {
    QStringList texts;
    if (view.bucket) {
        const auto run = file.find(view.bucket->extraction);
        if (!run) return texts;
        const auto yard = file.find(run->yard);
        texts << (yard
                      ? vesselWord("run %1, %2, %3")
                            .arg(fromUtf8(run->name.text()), fromUtf8(yard->name.text()),
                                 dayText(run->on))
                      : vesselWord("run %1, %2").arg(fromUtf8(run->name.text()), dayText(run->on)));
        return texts;
    }
    if (!view.lot) return texts;
    if (view.lot->origin == LotOrigin::BoughtIn)
        texts << (view.lot->supplier.empty()
                      ? vesselWord("bought in on %1; nobody wrote down from whom")
                            .arg(dayText(view.lot->on))
                      : vesselWord("bought in on %1 from %2")
                            .arg(dayText(view.lot->on), fromUtf8(view.lot->supplier)));
    for (const VesselPart& part : partsOf(file, view.lot->id))
        texts << vesselWord("%1 of %2")
                     .arg(gramsKnown(part.mass, part.how), fromUtf8(nameOf(file, part.from)));
    if (!view.lot->reason.empty())
        texts << vesselWord("although a part was held back: %1").arg(fromUtf8(view.lot->reason));
    return texts;
}

QStringList workedTexts(const VesselView& view) {
    QStringList texts;
    for (const HoneyStep& step : view.steps) {
        QString text =
            QStringLiteral("%1: %2").arg(shortDayText(step.on), word(combwright::word(step.work)));
        if (step.temperature)
            text += vesselWord(", %1").arg(shownTemperature(step.temperature->celsius()).text());
        if (step.minutes)
            text += vesselWord(", %1 h").arg(
                QLocale().toString(static_cast<double>(step.minutes->value()) / 60.0, 'g', 3));
        if (!step.temperature && step.work != HoneyWork::Skimmed)
            text += vesselWord("; nobody wrote down how warm");
        if (!step.note.empty()) text += QStringLiteral(" (%1)").arg(fromUtf8(step.note));
        texts << text;
    }
    return texts;
}

QStringList ledgerTexts(const Read& file, const VesselLedger& ledger) {
    QStringList texts;
    for (const VesselEntry& entry : ledger.entries)
        texts << QStringLiteral("%1: %2").arg(shortDayText(entry.on), entryText(file, entry));
    return texts;
}

QStringList heldTexts(const Read& file, const VesselView& view) {
    QStringList texts;
    for (const Hold& hold : view.held)
        texts << (isOwn(hold, view.vessel) ? traceHoldText(tracedHold(file, hold))
                                           : vesselWord("%1 (of what it came from)")
                                                 .arg(traceHoldText(tracedHold(file, hold))));
    return texts;
}

QString readingSaysText(const ReadingSays& says) {
    if (!says.awaits) return {};
    if (!says.correctedPercent)
        return says.tooDry
                   ? vesselWord(
                         "The honey was cold: it reads too dry, and the table of corrections "
                         "does not go so far. Read it again warmer.")
                   : vesselWord(
                         "The honey was warm: it reads too wet, and the table of corrections "
                         "does not go so far. Read it again cooler.");
    return (says.tooDry
                ? vesselWord("The honey was cold: it reads too dry. At 20 °C that is %1; it stays "
                             "as read until you take the corrected figure.")
                : vesselWord("The honey was warm: at 20 °C that is %1. It stays as read until you "
                             "take the corrected figure."))
        .arg(waterPercentText(*says.correctedPercent));
}

QStringList heatOutlookTexts(const HeatOutlook& outlook) {
    QStringList texts;
    if (outlook.step.damage)
        texts << vesselWord("This alone is %1: %2.")
                     .arg(word(key(outlook.step.heat)), heatRangeText(*outlook.step.damage));
    if (outlook.inAll.damage && outlook.inAll.hours > outlook.step.hours)
        texts << vesselWord("With what it has been through before it is %1: %2.")
                     .arg(word(key(outlook.inAll.heat)), heatRangeText(*outlook.inAll.damage));
    const int before = outlook.inAll.notKnown - outlook.step.notKnown;
    if (before > 0)
        texts << vesselWord("Of %1 earlier warming nobody wrote down how warm or how long.")
                     .arg(before);
    return texts;
}

QStringList blendTexts(const BlendOutcome& outcome, double targetPercent) {
    QStringList texts;
    if (outcome.mass <= Mass()) {
        texts << vesselWord("Nothing is poured yet.");
        return texts;
    }
    const QString mass = gramsKnown(outcome.mass, outcome.how);
    if (outcome.waterPercent)
        texts << (*outcome.waterPercent <= targetPercent + 1e-9
                      ? vesselWord("%1 at %2 of water, within your %3.")
                      : vesselWord("%1 at %2 of water, over your %3."))
                     .arg(mass, waterPercentText(*outcome.waterPercent),
                          waterPercentText(targetPercent));
    else
        texts << vesselWord("%1; its water is not known.").arg(mass);
    if (outcome.roomLeft && *outcome.roomLeft >= Mass())
        texts << vesselWord("It fits: room for %1 more, with the headroom kept.")
                     .arg(massText(static_cast<double>(outcome.roomLeft->grams()), How::Weighed));
    if (const QString heat = heatText(outcome.worstHeat); !heat.isEmpty())
        texts << vesselWord("Worst of its parts: %1.").arg(heat);
    if (const QString treated = treatedText(outcome.treated); !treated.isEmpty())
        texts << treated + QLatin1Char('.');
    QStringList tastes;
    for (const TasteWord& taste : outcome.tastes)
        tastes << QStringLiteral("%1 (%2)").arg(fromUtf8(taste.word), fromUtf8(taste.of));
    if (!tastes.isEmpty()) texts << vesselWord("Taste: %1.").arg(tastes.join(QStringLiteral(", ")));
    return texts;
}

QStringList blendWarnings(const BlendOutcome& outcome) {
    QStringList texts;
    if (outcome.roomLeft && *outcome.roomLeft < Mass())
        texts << vesselWord("It does not fit: %1 too much for the tank, with the headroom kept.")
                     .arg(massText(-static_cast<double>(outcome.roomLeft->grams()), How::Weighed));
    if (outcome.wettestPercent)
        texts << vesselWord(
                     "Cold honey nobody corrected reads too dry (%1): with the corrections "
                     "it has %2. Take them first.")
                     .arg(namesIn(outcome.tooDry), waterPercentText(*outcome.wettestPercent));
    if (!outcome.held.empty())
        texts << vesselWord("Held back: %1. Poured on only with a reason, and the hold goes along.")
                     .arg(namesIn(outcome.held));
    if (!outcome.noWater.empty())
        texts << vesselWord("Water not read: %1.").arg(namesIn(outcome.noWater));
    if (!outcome.doubtful.empty())
        texts << vesselWord(
                     "Of %1 nobody said how warm the sample was: read it again before you "
                     "pour.")
                     .arg(namesIn(outcome.doubtful));
    return texts;
}

}  // namespace combwright
