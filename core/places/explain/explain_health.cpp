// How the figures about mites and medicines come about.
#include <QCoreApplication>
#include <QLocale>

#include "core/places/health/mites.h"
#include "core/places/health/treatments.h"
#include "core/storage/queries/constants.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString healthWhy(const char* text) { return QCoreApplication::translate("explain_health", text); }

QString per100Text(double per100) { return QLocale().toString(per100, 'f', 1); }

Explained rateFigure(const HiveMites& mites) {
    return explainSample(fromUtf8(mites.hive.mark.text()), *mites.sample);
}

Explained lineFigure(const HiveMites& mites) {
    Explained why;
    const MiteLineInForce& line = *mites.line;
    why.what = healthWhy("Line for %1").arg(fromUtf8(mites.yard.name.text()));
    why.answer =
        healthWhy("act at %1 in 100 bees, %2")
            .arg(QLocale().toString(line.per100, 'g', 4), choiceText(key(line.phase.phase)));
    const std::string whose = line.from == MiteLineInForce::From::Table
                                  ? line.edition + ", " + line.region
                                  : "the keeper's own";
    why.working.steps.push_back({"mite_line_per_100", line.per100, "", whose, line.source});
    return why;
}

Explained forecastFigure(const Read& file, const HiveMites& mites, Day on) {
    Explained why;
    why.what = healthWhy("When %1 reaches the line").arg(fromUtf8(mites.hive.mark.text()));
    why.answer =
        healthWhy("about %1: a planning guess, sample again").arg(dayText(*mites.forecast->likely));
    [[maybe_unused]] const auto again =
        miteForecast(mites.sample->rate->per100, mites.line->per100, mites.doublingDays,
                     mites.sample->finding.on, &why.working);
    const auto constant = constantInForce(file, "mite_doubling_days", mites.yard.id, on);
    for (Working::Step& step : why.working.steps)
        if (step.what == "mite_doubling_days" && constant) step.source = constantSource(*constant);
    return why;
}

Explained boardFigure(const HiveMites& mites, const MiteSample& sample) {
    Explained why;
    why.what = healthWhy("Board under %1, %2")
                   .arg(fromUtf8(mites.hive.mark.text()), dayText(sample.finding.on));
    why.answer = healthWhy("%1 a day").arg(per100Text(*sample.perDay));
    [[maybe_unused]] const auto again =
        fallPerDay(static_cast<std::int64_t>(*sample.finding.mites->middle()),
                   sample.finding.daysOnBoard->value(), &why.working);
    if (!why.working.steps.empty()) why.working.steps.back().source = sample.fallSource;
    return why;
}

}  // namespace

Explained explainSample(const QString& hive, const MiteSample& sample) {
    Explained why;
    why.what = healthWhy("Mites in %1").arg(hive);
    why.answer = healthWhy("%1 in 100 bees, between %2 and %3, %4")
                     .arg(per100Text(sample.rate->per100), per100Text(sample.rate->low),
                          per100Text(sample.rate->high), dayText(sample.finding.on));
    const auto counted = static_cast<std::int64_t>(*sample.finding.mites->middle());
    [[maybe_unused]] const auto again = miteRate(counted, sample.bees, 0.95, &why.working);
    if (sample.corrected) {
        note(&why.working, "mite_recovery", sample.recovery, "", "beside the count, never instead");
        note(&why.working, "mites_corrected_per_100", sample.corrected->per100, "",
             "mites in 100 ÷ recovery");
    }
    return why;
}

std::vector<Explained> explainMites(const Read& file, const std::vector<HiveMites>& hives, Day on) {
    std::vector<Explained> figures;
    std::optional<Id<Yard>> lineOf;
    for (const HiveMites& each : hives) {
        if (each.line && lineOf != each.yard.id) {
            figures.push_back(lineFigure(each));
            lineOf = each.yard.id;
        }
        if (each.sample) figures.push_back(rateFigure(each));
        if (each.forecast && each.forecast->likely && each.standing == HiveMites::Standing::Under)
            figures.push_back(forecastFigure(file, each, on));
        for (const MiteSample& sample : each.samples)
            if (sample.perDay) {
                figures.push_back(boardFigure(each, sample));
                break;
            }
    }
    return figures;
}

std::vector<Explained> explainTreatments(const Read& file, std::optional<Id<Yard>> yard, Day on) {
    std::vector<Explained> figures;
    for (const MedicineStock& each : medicinesOn(file, on)) {
        const auto left = each.use.left();
        if (!left) continue;
        Explained why;
        why.what = healthWhy("Left of %1").arg(fromUtf8(each.medicine.name.text()));
        why.answer = QLocale().toString(*left, 'g', 6);
        note(&why.working, "medicine_bought", *each.use.bought, each.medicine.unit);
        note(&why.working, "medicine_used", each.use.used, each.medicine.unit);
        note(&why.working, "medicine_disposed", each.use.disposed, each.medicine.unit);
        note(&why.working, "medicine_left", *left, each.medicine.unit, "bought - used - disposed");
        figures.push_back(std::move(why));
    }
    for (const TreatmentLine& each : runningTreatments(file, yard, on)) {
        if (!each.dueOut) continue;
        Explained why;
        why.what = healthWhy("%1 out of %2")
                       .arg(fromUtf8(each.medicine.name.text()), fromUtf8(each.hive.mark.text()));
        why.answer = healthWhy("between %1 and %2")
                         .arg(dayText(each.dueOut->from), dayText(each.dueOut->to));
        const auto after = [&](Day day) {
            return static_cast<double>((day - each.treatment.on).count());
        };
        note(&why.working, "in_hive_from_days", after(each.dueOut->from), "d", {},
             "the label, as it was written down");
        note(&why.working, "in_hive_to_days", after(each.dueOut->to), "d", {},
             "the label, as it was written down");
        figures.push_back(std::move(why));
    }
    return figures;
}

}  // namespace combwright
