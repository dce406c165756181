#include "core/places/pages/health/health_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString healthSay(const char* text) { return QCoreApplication::translate("health", text); }

QString oneDecimal(double figure) { return QLocale().toString(figure, 'f', 1); }
QString plainNumber(double figure) { return QLocale().toString(figure, 'g', 6); }

QString countedText(const Known<Count>& counted) {
    const QString low = QString::number(counted.value->value());
    return counted.to ? low + QLatin1Char('-') + QString::number(counted.to->value()) : low;
}

bool isCounted(const std::optional<Known<Count>>& counted) { return counted && counted->value; }

QString ownLineText(const MiteLineInForce& line) {
    using From = MiteLineInForce::From;
    switch (line.from) {
        case From::OwnOfYard:
            return healthSay("your own for this yard since %1").arg(dayText(*line.since));
        case From::Own:
            return healthSay("your own since %1").arg(dayText(*line.since));
        case From::OwnAllYear:
            return healthSay("your own for the whole year since %1").arg(dayText(*line.since));
        case From::Table:
            return tableText(line.edition) + QStringLiteral(", ") + tableText(line.region);
    }
    return {};
}

QString standingAlone(const HiveMites& mites) {
    switch (mites.standing) {
        case HiveMites::Standing::NoSample:
            return healthSay("not sampled: nobody knows");
        case HiveMites::Standing::Under:
            return mites.undecided
                       ? healthSay("under the line, but one sample leaves it open: it may be over")
                       : healthSay("under the line");
        case HiveMites::Standing::At:
            return healthSay("at the line");
        case HiveMites::Standing::Over:
            return mites.undecided ? healthSay("over the line; it may still be under it")
                                   : healthSay("over the line");
    }
    return {};
}

}  // namespace

QString miteRateText(const MiteRate& rate) {
    return healthSay("%1 in 100 bees (between %2 and %3)")
        .arg(oneDecimal(rate.per100), oneDecimal(rate.low), oneDecimal(rate.high));
}

QString rateText(const MiteRate& rate) {
    return healthSay("%1 (%2 to %3)")
        .arg(oneDecimal(rate.per100), oneDecimal(rate.low), oneDecimal(rate.high));
}

QString miteSampleText(const MiteSample& sample) {
    const Finding& finding = sample.finding;
    const QString method = choiceText(word(finding.method));
    if (sample.rate)
        return healthSay("%1, %2 of %3: %4")
            .arg(method, countedText(*finding.mites), QString::number(sample.bees),
                 miteRateText(*sample.rate));
    if (sample.perDay)
        return (finding.daysOnBoard->value() == 1 ? healthSay("%1, %2 in %3 day: %4 a day, %5")
                                                  : healthSay("%1, %2 in %3 days: %4 a day, %5"))
            .arg(method, countedText(*finding.mites))
            .arg(finding.daysOnBoard->value())
            .arg(oneDecimal(*sample.perDay), fallVerdictText(sample));
    if (sample.cellShare)
        return healthSay("%1, %2 of %3 cells: %4 in 100 cells (between %5 and %6)")
            .arg(method, countedText(*finding.mites), countedText(*finding.cells),
                 oneDecimal(sample.cellShare->per100), oneDecimal(sample.cellShare->low),
                 oneDecimal(sample.cellShare->high));
    if (lacksItsBees(finding))
        return healthSay("%1, %2 mites in nobody knows how many bees: no rate without the bees")
            .arg(method, countedText(*finding.mites));
    if (isCounted(finding.mites))
        return healthSay("%1, %2 mites: no rate can be told from it")
            .arg(method, countedText(*finding.mites));
    if (finding.level)
        return healthSay("%1, by eye: %2").arg(method, choiceText(word(*finding.level)));
    return healthSay("%1, nothing counted").arg(method);
}

QString signsText(const FieldSigns& signs) {
    QStringList seen;
    for (const FieldInfo& field : FieldSigns::fields()) {
        const Value value = field.valueIn(&signs);
        if (const auto* flag = std::get_if<std::int64_t>(&value))
            seen << (*flag ? word(field.name) : healthSay("not: %1").arg(word(field.name)));
    }
    return seen.join(QStringLiteral(", "));
}

QString correctedText(const MiteSample& sample) {
    if (!sample.corrected) return {};
    return healthSay("corrected, where it finds %1 of them: %2 (between %3 and %4)")
        .arg(QLocale().toString(sample.recovery, 'g', 3), oneDecimal(sample.corrected->per100),
             oneDecimal(sample.corrected->low), oneDecimal(sample.corrected->high));
}

QString miteLineText(const std::optional<MiteLineInForce>& line, bool withSource) {
    if (!line) return healthSay("no line: the chosen table has none for this phase");
    QString text =
        healthSay("act at %1 in 100 in the %2 phase (%3)")
            .arg(plainNumber(line->per100), phaseText(line->phase.phase), ownLineText(*line));
    if (withSource && !line->source.empty()) text += QStringLiteral("; ") + fromUtf8(line->source);
    return text;
}

QString miteStandingText(const HiveMites& mites) {
    QString text = (mites.old ? healthSay("then ") : QString()) + standingAlone(mites);
    if (mites.old && mites.standsBy)
        text +=
            healthSay(", %1 in 100 in the %2 phase")
                .arg(plainNumber(mites.standsBy->per100), phaseText(mites.standsBy->phase.phase));
    if (!mites.board) return text;
    const QString board =
        (mites.boardOld ? healthSay("then by the board: %1") : healthSay("by the board: %1"))
            .arg(fallVerdictText(*mites.board));
    return mites.sample ? board + QStringLiteral("; ") + text : board;
}

QString miteForecastText(const HiveMites& mites) {
    if (mites.board) return healthSay("A fall is no rate on bees: a wash now says more.");
    if (mites.treatedSince)
        return mites.medicineIn
                   ? healthSay("%1 is in since %2: what was counted before says nothing of now.")
                         .arg(fromUtf8(mites.medicine), dayText(mites.treatedSince->on))
                   : healthSay("%1 was given %2: sample again.")
                         .arg(fromUtf8(mites.medicine), dayText(mites.treatedSince->on));
    if (mites.old)
        return healthSay("Sampled %1: that says little of now. Sample again.")
            .arg(dayText(mites.sample->finding.on));
    if (!mites.forecast || mites.standing != HiveMites::Standing::Under) return {};
    const MiteForecastSpan& span = *mites.forecast;
    if (!span.likely)
        return healthSay(
                   "None found says nothing of when; there may still be %1 in 100. Sample "
                   "again.")
            .arg(oneDecimal(mites.sample->rate->high));
    const QString earliest = span.earliest ? dayText(*span.earliest) : QString();
    return (span.latest
                ? healthSay("Doubling every %1 days it reaches the line about %2, between %3 and "
                            "%4: a planning guess. Sample again.")
                      .arg(plainNumber(mites.doublingDays), dayText(*span.likely), earliest,
                           dayText(*span.latest))
                : healthSay("Doubling every %1 days it reaches the line about %2, %3 at the "
                            "earliest: a planning guess. Sample again.")
                      .arg(plainNumber(mites.doublingDays), dayText(*span.likely), earliest));
}

QString miteForecastShort(const HiveMites& mites) {
    const bool plain = !mites.treatedSince && !mites.old && mites.forecast && mites.line &&
                       mites.standing == HiveMites::Standing::Under && mites.forecast->likely;
    if (!plain) return miteForecastText(mites);
    const MiteForecastSpan& span = *mites.forecast;
    const QString line = plainNumber(mites.line->per100);
    // The year only where it is another than the sample's.
    const auto said = [&](Day day) {
        return yearOf(day) == yearOf(mites.sample->finding.on) ? dayAndMonth(day) : dayText(day);
    };
    const QString likely = said(*span.likely);
    const QString earliest = said(span.earliest.value_or(*span.likely));
    return span.latest ? healthSay("reaches %1 about %2 (%3 to %4): a planning guess, sample again")
                             .arg(line, likely, earliest, said(*span.latest))
                       : healthSay(
                             "reaches %1 about %2 (%3 at the earliest): a planning guess, sample "
                             "again")
                             .arg(line, likely, earliest);
}

QString fallVerdictText(const MiteSample& sample) {
    QString text = healthSay("the table has no limit for this month");
    if (sample.verdict) switch (*sample.verdict) {
            case FallVerdict::NoDanger:
                text = healthSay("no danger");
                break;
            case FallVerdict::Critical:
                text = healthSay("critical");
                break;
            case FallVerdict::Treat:
                text = healthSay("treat");
                break;
            case FallVerdict::ActNow:
                text = healthSay("act now");
                break;
        }
    if (sample.shortBoard)
        text += healthSay("; the board lay under %1 days, that says little").arg(fewestBoardDays);
    return text;
}

QString phaseText(SeasonPhase phase) {
    switch (phase) {
        case SeasonPhase::Dormant:
            return healthSay("dormant");
        case SeasonPhase::Increase:
            return healthSay("increase");
        case SeasonPhase::Peak:
            return healthSay("peak");
        case SeasonPhase::Decrease:
            return healthSay("decrease");
    }
    return {};
}

QString labelIsLaw() { return healthSay("Your label is the law; local codes decide."); }

QString reportingDuty() {
    return healthSay(
        "Suspected brood disease must be reported almost everywhere: call your apiary inspector. "
        "Do not move anything. Signs are no diagnosis; the laboratory decides.");
}

QString amountText(double amount, const Medicine& medicine) {
    const QString figure = plainNumber(amount);
    return medicine.unit.empty() ? figure : figure + QLatin1Char(' ') + fromUtf8(medicine.unit);
}

QString leftText(const MedicineStock& stock) {
    const Medicine& medicine = stock.medicine;
    if (!stock.use.bought) return healthSay("how much was bought is not written down");
    if (stock.use.unknown)
        return healthSay("bought %1; what is left is not known, an amount was not written down")
            .arg(amountText(*stock.use.bought, medicine));
    const double left = *stock.use.left();
    if (left < 0)
        return healthSay("bought %1; %2 more is written down than that")
            .arg(amountText(*stock.use.bought, medicine), amountText(-left, medicine));
    return healthSay("%1 of %2 left")
        .arg(plainNumber(left), amountText(*stock.use.bought, medicine));
}

QString labelSupersText(const std::optional<LabelSupers>& supers) {
    if (!supers) return healthSay("supers: not written down");
    switch (*supers) {
        case LabelSupers::Off:
            return healthSay("supers off");
        case LabelSupers::MayStay:
            return healthSay("supers may stay");
        case LabelSupers::SeeLabel:
            return healthSay("supers: see the label");
    }
    return {};
}

QString spanText(const std::optional<Count>& from, const std::optional<Count>& to) {
    if (!from && !to) return {};
    if (from && to && *from != *to)
        return healthSay("%1 to %2 days").arg(from->value()).arg(to->value());
    const Count only = from ? *from : *to;
    return only.value() == 1 ? healthSay("1 day") : healthSay("%1 days").arg(only.value());
}

QString warmthText(const Medicine& medicine) {
    if (!medicine.warmFrom && !medicine.warmTo) return {};
    const auto degrees = [](const Temperature& warmth) {
        return shownTemperature(warmth.celsius()).text();
    };
    if (!medicine.warmTo) return healthSay("from %1 on").arg(degrees(*medicine.warmFrom));
    if (!medicine.warmFrom) return healthSay("up to %1").arg(degrees(*medicine.warmTo));
    return healthSay("%1 to %2").arg(degrees(*medicine.warmFrom), degrees(*medicine.warmTo));
}

QString windowText(InWindow window) {
    switch (window) {
        case InWindow::TooCold:
            return healthSay("too cold for it by the label");
        case InWindow::Suits:
            return healthSay("within the label's warmth");
        case InWindow::TooWarm:
            return healthSay("too warm for it by the label");
    }
    return {};
}

QString publishedWindowText(InWindow window) {
    switch (window) {
        case InWindow::TooCold:
            return healthSay("too cold for it by the published table; read your label");
        case InWindow::Suits:
            return healthSay("within the published warmth; read your label");
        case InWindow::TooWarm:
            return healthSay("too warm for it by the published table; read your label");
    }
    return {};
}

QString publishedText(const MedicineStock& stock) {
    if (!stock.published) return {};
    const PublishedWait& row = *stock.published;
    QStringList parts;
    const QString span = spanText(row.inHiveFromDays, row.inHiveToDays);
    if (!span.isEmpty()) parts << healthSay("%1 in the hive").arg(span);
    parts << (row.supers == PublishedSupers::Off       ? healthSay("supers off")
              : row.supers == PublishedSupers::MayStay ? healthSay("supers may stay")
                                                       : healthSay("supers: see the label"));
    if (row.waitDays) parts << healthSay("%1 to wait").arg(spanText(row.waitDays, row.waitDays));
    if (row.fromC || row.toC)
        parts << healthSay("warmth %1 to %2")
                     .arg(row.fromC ? shownTemperature(*row.fromC).text() : healthSay("any"),
                          row.toC ? shownTemperature(*row.toC).text() : healthSay("any"));
    return healthSay("published for %1 (%2, %3): %4; %5")
        .arg(fromUtf8(row.active),
             row.region.empty() ? healthSay("any region") : fromUtf8(row.region),
             fromUtf8(row.edition), parts.join(QStringLiteral(", ")), fromUtf8(row.source));
}

QString comesOutText(const TreatmentLine& line, Day on) {
    if (line.treatment.out)
        return *line.treatment.out == line.treatment.on
                   ? healthSay("given in one go")
                   : healthSay("out %1").arg(dayText(*line.treatment.out));
    if (!line.dueOut)
        return healthSay("in still; when it comes out is not written down: read your label");
    if (on > line.dueOut->to)
        return healthSay("should have been out by %1").arg(dayText(line.dueOut->to));
    if (line.dueOut->from == line.dueOut->to)
        return healthSay("comes out %1").arg(dayText(line.dueOut->from));
    return healthSay("comes out between %1 and %2")
        .arg(dayText(line.dueOut->from), dayText(line.dueOut->to));
}

QString supersBackText(const TreatmentLine& line) {
    if (line.supersMayStay) return healthSay("supers may stay");
    if (!line.treatment.out) {
        if (!line.supersEarliest || !line.medicine.waitDays)
            return healthSay("no super until it is out");
        return line.medicine.waitDays->value() == 0
                   ? healthSay("no super until it is out; from %1 at the earliest")
                         .arg(dayText(*line.supersEarliest))
                   : healthSay("supers from %1 at the earliest, %2 after it is out")
                         .arg(dayText(*line.supersEarliest),
                              spanText(line.medicine.waitDays, line.medicine.waitDays));
    }
    if (!line.supersBack) return healthSay("how long to wait with supers is not written down");
    return healthSay("supers from %1").arg(dayText(*line.supersBack));
}

QString tooEarlyText(const SuperTooEarly& early) {
    const TreatmentLine& line = early.back.line;
    const QString box = fromUtf8(early.name);
    const QString hive = fromUtf8(line.hive.mark.text());
    const QString medicine = fromUtf8(line.medicine.name.text());
    return (early.back.from
                ? healthSay("%1 went on %2 %3, before %4, the first day after %5")
                      .arg(box, hive, dayText(early.wentOn), dayText(*early.back.from), medicine)
                : healthSay("%1 went on %2 %3, when %4 kept supers off")
                      .arg(box, hive, dayText(early.wentOn), medicine)) +
           healthSay(": take it off or hold it back");
}

QString otherPestText(const Finding& finding) {
    QStringList parts{choiceText(word(finding.what))};
    if (finding.level) parts << choiceText(word(*finding.level));
    parts << dayText(finding.on);
    return parts.join(QStringLiteral(", "));
}

QString treatedBoxText(const TreatedBox& box) {
    const QString place = choiceText(word(box.box.place));
    if (!box.line)
        return healthSay("%1: held since %2; now %3")
            .arg(fromUtf8(box.name), dayText(box.hold.since), place);
    return healthSay("%1: on %2 with %3 from %4; now %5")
        .arg(fromUtf8(box.name), fromUtf8(box.line->hive.mark.text()),
             fromUtf8(box.line->medicine.name.text()), dayText(box.hold.since), place);
}

}  // namespace combwright
