#include "core/places/pages/season_book/reckoned_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString gotWord(const char* text) { return QCoreApplication::translate("harvest", text); }

Cell gotCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell quietGotCell(const QString& text) {
    Cell cell = gotCell(text);
    cell.muted = true;
    return cell;
}

QString gotThing(const GotLine& line) {
    switch (line.what) {
        case GotWhat::Frame:
            return gotWord("honey a %1").arg(fromUtf8(line.kind));
        case GotWhat::Load:
            return gotWord("time a load");
        case GotWhat::Cappings:
            return gotWord("cappings of the honey");
        case GotWhat::Uncapping:
            return gotWord("time a frame at the knife");
        case GotWhat::Fill:
            return gotWord("fill judged by eye");
    }
    return {};
}

/// In hundredths, as many digits as a share by eye has.
QString gotPercent(double share) { return QLocale().toString(share * 100.0, 'f', 0); }

}  // namespace

QString gotName(const GotLine& line) {
    const QString thing = gotThing(line);
    return line.yard ? QStringLiteral("%1, %2").arg(thing, fromUtf8(line.yardName)) : thing;
}

QString gotFigure(const GotLine& line, double value) {
    const QLocale locale;
    switch (line.what) {
        case GotWhat::Frame:
            return massRateFigure(value);
        case GotWhat::Load:
            return locale.toString(value, 'f', value == std::round(value) ? 0 : 1);
        case GotWhat::Cappings:
            return locale.toString(value * 100.0, 'f', 1);
        case GotWhat::Uncapping:
            return locale.toString(value, 'f', 2);
        case GotWhat::Fill:
            return gotPercent(value);
    }
    return {};
}

QString gotUnit(const GotLine& line) {
    switch (line.what) {
        case GotWhat::Frame:
            return massUnit();
        case GotWhat::Load:
        case GotWhat::Uncapping:
            return QStringLiteral("min");
        case GotWhat::Cappings:
        case GotWhat::Fill:
            return QStringLiteral("%");
    }
    return {};
}

namespace {

QString nameAtStart(const GotLine& line) {
    QString name = gotName(line);
    name.front() = name.front().toUpper();
    return name;
}

/// "1.85 kg ± 0.28".
QString giveOrTake(const GotLine& line, double value, const std::optional<double>& doubt) {
    QString text = QStringLiteral("%1 %2").arg(gotFigure(line, value), gotUnit(line));
    // What agrees to the last digit shown is not said to be exact.
    if (doubt && gotFigure(line, *doubt) != gotFigure(line, 0))
        text += QStringLiteral(" ± %1").arg(gotFigure(line, *doubt));
    return text;
}

QString seenCount(const GotLine& line) {
    const auto n = static_cast<int>(line.learned->seen.size());
    const bool loads = line.what == GotWhat::Load || line.what == GotWhat::Uncapping;
    if (n == 1) return loads ? gotWord("1 load") : gotWord("1 run");
    return (loads ? gotWord("%1 loads") : gotWord("%1 runs")).arg(n);
}

}  // namespace

QString gotOffer(const GotLine& line) {
    if (!line.learned) return {};
    return giveOrTake(line, line.offered, line.learned->doubt);
}

QString gotRule(const GotLine& line) {
    if (!line.learned) return {};
    const Learned& learned = *line.learned;
    const QString name = nameAtStart(line);
    switch (learned.by) {
        case LearnedBy::WithPublished:
            return gotWord(
                       "%1: %2, the mean of the published %3 and %4 of your own, %5, each "
                       "weighted by how surely it is known (one run ± %6).")
                .arg(name, gotOffer(line),
                     giveOrTake(line, *learned.published, learned.publishedDoubt), seenCount(line),
                     gotFigure(line, learned.seenMean), gotFigure(line, *learned.doubtOfOne));
        case LearnedBy::AsTheyCame:
            return gotWord(
                       "%1: %2 from %3 alone; the published figure is for full frames, and "
                       "how full these were nobody noted.")
                .arg(name, gotOffer(line), seenCount(line));
        case LearnedBy::OwnAlone:
            return gotWord(
                       "%1: %2 from %3 alone; how far the general figure may be off was "
                       "never published.")
                .arg(name, gotOffer(line), seenCount(line));
    }
    return {};
}

QString yardRule(const ReckonedAndGot& reckoned) {
    for (const GotLine& line : reckoned.lines)
        if (line.yard)
            return gotWord(
                "A yard has a figure of its own where what two yards say lies further "
                "apart than both their doubts together.");
    return {};
}

namespace {

QString fillSentence(const GotLine& line) {
    const double off = line.reckoned - line.got;
    QString text = (std::abs(off) < 0.005 ? gotWord("The eye judged %1 % full and the scales agree")
                    : off < 0 ? gotWord("The eye judged %1 % full, the scales say %2 % of the "
                                        "frames reckoned with: %3 points too low")
                              : gotWord("The eye judged %1 % full, the scales say %2 % of the "
                                        "frames reckoned with: %3 points too high"))
                       .replace(QStringLiteral("%1"), gotPercent(line.reckoned))
                       .replace(QStringLiteral("%2"), gotPercent(line.got))
                       .replace(QStringLiteral("%3"), gotPercent(std::abs(off)));
    text += line.boxSpread ? gotWord(", ± %1 from box to box").arg(gotPercent(*line.boxSpread))
                           : QString();
    return text +
           (line.counted == 1 ? gotWord(" (1 box).") : gotWord(" (%1 boxes).").arg(line.counted)) +
           QLatin1Char(' ') +
           gotWord("The honey a frame takes that up; no other figure is replaced.");
}

}  // namespace

QString gotSentence(const GotLine& line) {
    if (line.what == GotWhat::Fill) return fillSentence(line);
    const auto figure = [&](double value) { return gotFigure(line, value); };
    QString text;
    if (line.what == GotWhat::Frame && line.filledShare) {
        text = (line.own ? gotWord("Your %1 was %2 × %3 % full.")
                         : gotWord("The %1 was the published %2 × %3 % full."))
                   .arg(figure(line.reckoned), figure(line.rate),
                        QLocale().toString(*line.filledShare * 100.0, 'f', 0));
        if (!line.taken)
            text += QLatin1Char(' ') + gotWord("Taken, a full frame is reckoned at %1 %2.")
                                           .arg(figure(line.offered), gotUnit(line));
    } else if (line.what == GotWhat::Frame) {
        text = (line.own ? gotWord("Your %1 is for full frames; how full these were was not "
                                   "noted, so %2 is for frames as they came.")
                         : gotWord("The published %1 is for full frames; how full these were was "
                                   "not noted, so %2 is for frames as they came."))
                   .arg(figure(line.rate), figure(line.got));
    } else {
        text = (line.own ? gotWord("%1: yours was %2 %3.")
                         : gotWord("%1: the general figure was %2 %3."))
                   .arg(nameAtStart(line), figure(line.rate), gotUnit(line));
    }
    if (line.yard && line.what == GotWhat::Frame)
        text = QStringLiteral("%1: %2").arg(fromUtf8(line.yardName), text);
    if (!line.taken) return text;
    return text + QLatin1Char(' ') +
           gotWord("Taken: %1 %2 from %3 on.")
               .arg(figure(line.taken->value.value()), gotUnit(line), dayText(line.taken->since));
}

QString gotCount(const GotLine& line) {
    const QString runs = line.runs == 1 ? gotWord("1 run") : gotWord("%1 runs").arg(line.runs);
    const auto with = [&](const QString& counted) { return counted + QStringLiteral(", ") + runs; };
    const bool one = line.counted == 1;
    switch (line.what) {
        case GotWhat::Load:
            return with(one ? gotWord("1 load") : gotWord("%1 loads").arg(line.counted));
        case GotWhat::Frame:
        case GotWhat::Uncapping:
            return with(one ? gotWord("1 frame") : gotWord("%1 frames").arg(line.counted));
        case GotWhat::Fill:
            return with(one ? gotWord("1 box") : gotWord("%1 boxes").arg(line.counted));
        case GotWhat::Cappings:
            break;
    }
    return runs;
}

TableBlock reckonedBlock(const ReckonedAndGot& reckoned) {
    TableBlock table;
    table.title = gotWord("Reckoned and got %1").arg(reckoned.year);
    table.columns = {{gotWord("what"), 2.6, false},    {gotWord("reckoned"), 0.9, true},
                     {gotWord("got"), 0.9, true},      {gotWord("unit"), 0.6, false},
                     {gotWord("between"), 1.2, false}, {gotWord("of"), 1.6, false},
                     {gotWord("offered"), 1.5, false}, {gotWord("taken"), 1.6, false}};
    table.rowMm = 6;
    for (const GotLine& line : reckoned.lines) {
        Cell got = gotCell(gotFigure(line, line.got), true);
        got.how = line.how;
        TableRow row;
        row.cells = {gotCell(gotName(line)),
                     quietGotCell(gotFigure(line, line.reckoned)),
                     got,
                     quietGotCell(gotUnit(line)),
                     quietGotCell(line.spread ? QStringLiteral("%1–%2").arg(
                                                    gotFigure(line, line.spread->low),
                                                    gotFigure(line, line.spread->high))
                                              : QString()),
                     quietGotCell(gotCount(line)),
                     quietGotCell(gotOffer(line)),
                     gotCell(line.taken ? gotWord("%1 from %2")
                                              .arg(gotFigure(line, line.taken->value.value()),
                                                   dayText(line.taken->since))
                                        : QString())};
        table.rows.push_back(row);
    }
    return table;
}

}  // namespace combwright
