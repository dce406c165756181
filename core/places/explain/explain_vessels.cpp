#include "core/places/explain/explain_vessels.h"

#include <QCoreApplication>
#include <QLocale>
#include <tuple>

#include "core/storage/queries/constants.h"
#include "core/trade/honey/density.h"
#include "core/trade/honey/drying.h"
#include "core/trade/honey/settling.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString vesselWhy(const char* text) { return QCoreApplication::translate("honey_store", text); }

QString percentAnswer(double percent) {
    return QLocale().toString(percent, 'f', 2) + QStringLiteral(" %");
}

void noteOwnRate(Working* working, const Read& file, const char* name, Day on, const char* unit) {
    if (const auto found = constantInForce(file, name, {}, on))
        note(working, name, found->value, unit, {}, constantSource(*found));
}

const char* entryKey(VesselEvent event) {
    switch (event) {
        case VesselEvent::Filled:
            return "vessel_in";
        case VesselEvent::Worked:
            return "vessel_worked";
        case VesselEvent::IntoLot:
            return "vessel_into_lot";
        case VesselEvent::IntoJars:
            return "vessel_into_jars";
        case VesselEvent::InBulk:
            return "vessel_in_bulk";
        case VesselEvent::Weighed:
            return "vessel_missing";
    }
    return "";
}

Explained leftFigure(const QString& name, const VesselLedger& ledger) {
    Explained why;
    why.what = vesselWhy("Honey left in %1").arg(name);
    why.answer = ledger.left ? massKnown(static_cast<double>(ledger.left->grams()), ledger.leftHow)
                             : vesselWhy("not known");
    for (const VesselEntry& entry : ledger.entries)
        if (entry.change)
            note(&why.working, entryKey(entry.event), static_cast<double>(entry.change->grams()),
                 "g", isoText(entry.on));
    if (ledger.left)
        note(&why.working, "vessel_left", static_cast<double>(ledger.left->grams()), "g",
             "in + all of these");
    return why;
}

Explained waterFigure(const Read& file, const QString& name, const Vessel& vessel, Day on) {
    Explained why;
    why.what = vesselWhy("Water of %1").arg(name);
    const auto water = waterInUse(file, vessel, on, &why.working);
    why.answer = water ? percentAnswer(water->percent) : vesselWhy("not read");
    if (water && water->correctedPercent && water->reading) {
        note(&why.working, "water_not_corrected", water->percent, "%", "as read, in use");
        std::ignore = waterAtTwenty(shownBy(*water->reading), &why.working);
    }
    return why;
}

Explained keepsFigure(const QString& name, const StoredHoney& honey) {
    Explained why;
    why.what = vesselWhy("Whether %1 keeps").arg(name);
    std::ignore = fermentRisk(honey.view.water->wettestPercent(), {}, &why.working);
    why.answer = word(key(honey.ferment->risk));
    return why;
}

Explained settlingFigure(const Read& file, const QString& name, const Settling& settling, Day on) {
    Explained why;
    why.what = vesselWhy("When %1 has settled").arg(name);
    why.answer = dayText(settling.until);
    if (settling.honeyG && settling.wideMm) {
        if (settling.depth == Settling::Depth::Likely)
            note(&why.working, "vessel_wide", *settling.wideMm, "mm",
                 "not measured: as wide as it is deep when full", "planning assumption, no source");
        else
            note(&why.working, "vessel_wide", *settling.wideMm, "mm");
        if (const auto density = honeyDensity(settling.waterPercent, honeyDensityC))
            std::ignore = depthInVessel(*settling.honeyG, *density, *settling.wideMm, &why.working);
    }
    std::ignore = settlingHours(settling.waterPercent, settling.temperatureC, settling.depthMm,
                                settling.bubbleUm, airLighterKgPerM3, &why.working);
    noteOwnRate(&why.working, file, "settling_plan_factor", on, "");
    note(&why.working, "settling_planned_hours", settling.hours, "h", "hours · the factor");
    return why;
}

Explained dryingFigure(const QString& name, const StoredHoney& honey) {
    Explained why;
    why.what = vesselWhy("Water that must go from %1").arg(name);
    why.answer = shownPortion(*honey.waterOffG).text();
    std::ignore = waterOff(static_cast<double>(honey.view.ledger.left->grams()),
                           honey.view.water->wettestPercent(), *honey.targetPercent, &why.working);
    return why;
}

Explained heatFigure(const QString& name, const StoredHoney& honey) {
    Explained why;
    why.what = vesselWhy("What warming cost %1").arg(name);
    why.answer = word(key(honey.view.heat.heat));
    for (const HeatStep& step : heatSteps(honey.view.steps))
        std::ignore = heatDamage(step, &why.working);
    note(&why.working, "heat_hmf_low", honey.view.heat.damage->hmfLow, "mg/kg",
         "all steps, with the worst of what went in");
    note(&why.working, "heat_hmf_high", honey.view.heat.damage->hmfHigh, "mg/kg",
         "all steps, with the worst of what went in");
    return why;
}

}  // namespace

std::vector<Explained> explainHoneyStore(const Read& file, const HoneyStore& store) {
    std::vector<Explained> figures;
    for (const StoredHoney& honey : store.standing) {
        const QString name = fromUtf8(honey.view.name);
        figures.push_back(leftFigure(name, honey.view.ledger));
        figures.push_back(waterFigure(file, name, honey.view.vessel, store.on));
        if (honey.ferment) figures.push_back(keepsFigure(name, honey));
        if (honey.settling)
            figures.push_back(settlingFigure(file, name, *honey.settling, store.on));
        if (honey.waterOffG && *honey.waterOffG > 0 && honey.view.ledger.left)
            figures.push_back(dryingFigure(name, honey));
        if (honey.view.heat.damage) figures.push_back(heatFigure(name, honey));
    }
    return figures;
}

std::vector<Explained> explainBlend(const Read& file, const BlendWanted& wanted, Day on) {
    Explained why;
    why.what = vesselWhy("Most honey at or under the target");
    const auto plan = blendPlan(file, on, wanted, &why.working);
    if (!plan) return {};
    why.answer = massKnown(static_cast<double>(plan->outcome.mass.grams()), plan->outcome.how);
    return {why};
}

}  // namespace combwright
