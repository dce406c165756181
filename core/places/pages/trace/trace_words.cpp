#include "core/places/pages/trace/trace_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString traceWord(const char* text) { return QCoreApplication::translate("trace", text); }

QString traceBoxes(std::int64_t count) {
    return count == 1 ? traceWord("1 box") : traceWord("%1 boxes").arg(count);
}

/// In words of their own: a hive is given feed, a jar is given away.
QString outHowText(OutHow how) {
    switch (how) {
        case OutHow::Sold:
            return traceWord("sold");
        case OutHow::Given:
            return traceWord("given away");
        case OutHow::Kept:
            return traceWord("kept");
        case OutHow::Broken:
            return traceWord("broken");
        case OutHow::CameBack:
            return traceWord("came back");
    }
    return {};
}

}  // namespace

QString traceGapText(const TraceUnknown& gap) {
    const QString name = fromUtf8(gap.name);
    const QString more = fromUtf8(gap.more);
    switch (gap.gap) {
        case TraceGap::MixedInRun:
            return traceWord(
                       "Which hive's honey is in which of the %2 buckets of %1 cannot be "
                       "known: each is taken as the run's mixture.")
                .arg(name)
                .arg(gap.count);
        case TraceGap::HiveUnknown:
            return traceWord("%1: of %2 nobody knows the hive; any hive may have given it.")
                .arg(name, traceBoxes(gap.count));
        case TraceGap::BoxUnknown:
            return traceWord(
                       "%1: %2 without a known mark; where such a box stood, and what was given "
                       "meanwhile, cannot be known.")
                .arg(name, traceBoxes(gap.count));
        case TraceGap::NoBoxes:
            return traceWord("%1: which boxes and hives its honey came from was not written down.")
                .arg(name);
        case TraceGap::NotShared:
            return traceWord("%1 lacks weights: its honey cannot be shared out to hives.")
                .arg(name);
        case TraceGap::BoughtIn:
            return more.isEmpty()
                       ? traceWord("%1 was bought in; from whom was not written down.").arg(name)
                       : traceWord("%1 was bought in from %2: ask there for what is behind it.")
                             .arg(name, more);
        case TraceGap::NoParts:
            return traceWord("What went into %1 was not written down.").arg(name);
        case TraceGap::ToppedUp:
            return traceWord(
                       "%1 was filled on %2 days. It is taken as mixed through; what left it "
                       "before the last filling holds none of that.")
                .arg(name)
                .arg(gap.count);
        case TraceGap::InARing:
            return name.isEmpty() ? traceWord("Lots went into each other; the way has no end.")
                                  : traceWord(
                                        "%1 went into itself through other lots; the way "
                                        "has no end.")
                                        .arg(name);
        case TraceGap::MassUnknown:
            return traceWord("How much honey %1 held was not written down.").arg(name);
        case TraceGap::PartUnknown:
            return traceWord("How much of %1 it is cannot be reckoned.").arg(name);
        case TraceGap::NoBuyer:
            return gap.count == 1
                       ? traceWord("1 jar of %1 went to somebody nobody wrote down.").arg(name)
                       : traceWord("%2 jars of %1 went to people nobody wrote down.")
                             .arg(name)
                             .arg(gap.count);
        case TraceGap::BulkNoBuyer:
            return traceWord("Honey of %1 went out in bulk; to whom was not written down.")
                .arg(name);
        case TraceGap::NoFilling:
            return traceWord(
                       "%2 of %1 went out since without a code written down: they may be of "
                       "these.")
                .arg(name)
                .arg(gap.count);
        case TraceGap::NoCode:
            return gap.count == 1
                       ? traceWord("There is 1 complaint of which nobody knows the jar.")
                       : traceWord("There are %1 complaints of which nobody knows the jar.")
                             .arg(gap.count);
        case TraceGap::MarkUnknown:
            return traceWord(
                       "%1: %2 of hive %3 without mark; whether they were on meanwhile "
                       "cannot be known.")
                .arg(name, traceBoxes(gap.count), more);
        case TraceGap::StayNotWritten:
            return traceWord("Since when box %1 stood on %2 was not written down.").arg(name, more);
    }
    return {};
}

QString traceHoldText(const TraceHold& held) {
    const QString why = traceWord("%1, since %2")
                            .arg(word(combwright::word(held.hold.why)), dayText(held.hold.since));
    const QString name = fromUtf8(held.name);
    switch (held.on) {
        case TraceHold::On::Filling:
            return traceWord("%1: filling %2").arg(why, name);
        case TraceHold::On::Honey:
            return traceWord("%1: %2").arg(why, name);
        case TraceHold::On::Box:
            return traceWord("%1: box %2").arg(why, name);
        case TraceHold::On::Hive:
            return traceWord("%1: hive %2").arg(why, name);
        case TraceHold::On::Frame:
            return traceWord("%1: a frame").arg(why);
        case TraceHold::On::Nothing:
            break;
    }
    return why;
}

QString treatedShareText(const TreatedShare& treated) {
    QStringList parts;
    if (treated.all())
        parts << traceWord("Treated while on: every box behind it was on while a medicine was in.");
    else if (treated.any())
        parts << traceWord(
                     "Treated while on, perhaps: %1 of %2 boxes behind it were on while a "
                     "medicine was in.")
                     .arg(treated.boxes)
                     .arg(treated.of);
    if (treated.any() && treated.unknown > 0)
        parts << traceWord("Of %1 nothing can be said.").arg(traceBoxes(treated.unknown));
    return parts.join(QLatin1Char(' '));
}

QString traceBoxesOnText(const TraceMedicine& medicine) {
    if (medicine.boxesOn > 0)
        return traceWord("%1 of %2 boxes of this run were on")
            .arg(medicine.boxesOn)
            .arg(medicine.boxes);
    if (!medicine.line.treatment.supersOn) return traceWord("supers: not known");
    return *medicine.line.treatment.supersOn ? traceWord("supers on, none of this run")
                                             : traceWord("supers off");
}

QString tracedOutText(const TracedOut& out) {
    QStringList parts;
    QString what = out.inTheBox ? traceWord("in the fair's box") : outHowText(out.how);
    if (out.count) what += QStringLiteral(" %1 × %2").arg(*out.count).arg(fromUtf8(out.kind));
    if (out.mass)
        if (const auto grams = out.mass->middle())
            what += QLatin1Char(' ') + massKnown(*grams, out.mass->how);
    parts << what;
    if (!out.fair.empty()) parts << fromUtf8(out.fair);
    if (!out.place.empty()) parts << fromUtf8(out.place);
    if (!out.buyer.empty()) parts << traceWord("to %1").arg(fromUtf8(out.buyer));
    return parts.join(QStringLiteral(", "));
}

}  // namespace combwright
