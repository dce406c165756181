// The foot of the yields and the marks that point at it.
#include <QCoreApplication>

#include "core/places/pages/revision_text.h"
#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString noteWord(const char* text) { return QCoreApplication::translate("harvest", text); }

double noteGrams(Mass mass) { return static_cast<double>(mass.grams()); }

QString raised(int number) {
    static const QString digits = QStringLiteral("⁰¹²³⁴⁵⁶⁷⁸⁹");
    const QString plain = QString::number(number);
    QString text;
    for (const QChar digit : plain) text += digits[digit.digitValue()];
    return text;
}

/// Footnotes a row points at, numbered in the order of the runs.
struct Numbered {
    QStringList lines;
    int count = 0;
    std::multimap<std::int64_t, int> ofHive;
    std::multimap<std::int64_t, int> ofYard;  ///< for the line without a hive

    QString marksOf(const std::multimap<std::int64_t, int>& of, std::int64_t id) const {
        QStringList marks;
        const auto [first, last] = of.equal_range(id);
        for (auto at = first; at != last; ++at) marks << raised(at->second);
        return marks.join(QLatin1Char(' '));
    }
};

void addNumbered(Numbered& notes, const std::optional<Id<Hive>>& hive,
                 const std::optional<Id<Yard>>& yard, const QString& text) {
    const int number = ++notes.count;
    notes.lines << raised(number) + QLatin1Char(' ') + text;
    if (hive)
        notes.ofHive.emplace(hive->number, number);
    else if (yard)
        notes.ofYard.emplace(yard->number, number);
}

Numbered numberedNotes(const SeasonYield& season) {
    Numbered notes;
    for (const RunBalance& run : season.runs) {
        const QString name = fromUtf8(run.run.name.text());
        for (const RunBoxLine& box : run.boxes)
            if (box.byDifference)
                addNumbered(
                    notes, box.box.hive, run.run.yard,
                    noteWord("%1, %2: box %3 lacked a weight; its %4 is what is left when the "
                             "others are taken from buckets and cappings.")
                        .arg(name, box.hive.empty() ? noteWord("no tag") : fromUtf8(box.hive),
                             fromUtf8(box.mark),
                             massText(box.offG.value_or(0), How::ByDifference)));
        for (const RunShare& share : run.shares)
            if (share.atClosing && !share.hive && share.mass == Mass())
                notes.lines << noteWord("%1: no box is without a tag now; they had %2.")
                                   .arg(name, massText(noteGrams(*share.atClosing), How::Weighed));
            else if (share.atClosing)
                addNumbered(notes, share.hive, run.run.yard,
                            noteWord("Revised since %1 was closed: %2 is %3, was %4.")
                                .arg(name, share.hive ? fromUtf8(share.mark) : noteWord("no tag"),
                                     massText(noteGrams(share.mass), How::Weighed),
                                     massFigure(noteGrams(*share.atClosing), How::Weighed)));
        // What was done, in one line below what it changed.
        if (const QStringList deeds = revisionTexts(name, run.revisions); !deeds.isEmpty())
            notes.lines << deeds.join(QLatin1Char(' '));
    }
    return notes;
}

}  // namespace

FootnoteMarks footnoteMarks(const SeasonYield& season) {
    const Numbered notes = numberedNotes(season);
    FootnoteMarks marks;
    for (const auto& [hive, number] : notes.ofHive)
        marks.ofHive[hive] = notes.marksOf(notes.ofHive, hive);
    for (const auto& [yard, number] : notes.ofYard)
        marks.ofYard[yard] = notes.marksOf(notes.ofYard, yard);
    return marks;
}

QStringList yieldNotes(const SeasonYield& season) {
    QStringList notes = numberedNotes(season).lines;
    for (const RunBalance& run : season.runs)
        if (run.byEye)
            notes << noteWord("%1: nothing was weighed; shares follow frames and fill, by eye.")
                         .arg(fromUtf8(run.run.name.text()));
    for (const std::string& run : season.unclosed)
        notes << noteWord(
                     "%1: two of its weights are missing, so nobody knows yet which hive gave its "
                     "honey; it "
                     "stands without a hive.")
                     .arg(fromUtf8(run));
    if (season.noted)
        notes << noteWord("%1 of %2 is noted from paper: open bars.")
                     .arg(massText(noteGrams(*season.noted), season.how))
                     .arg(season.year);
    if (season.beforeNoted)
        notes << (season.beforeNoted == season.before
                      ? noteWord("%1 is noted from paper.").arg(season.beforeYear)
                      : noteWord("%1 of %2 is noted from paper.")
                            .arg(massText(noteGrams(*season.beforeNoted), season.beforeHow))
                            .arg(season.beforeYear));
    for (const YardYield& yard : season.yards) {
        if (yard.paperSays)
            notes << noteWord("%1: paper says %2; not counted beside what is known by hive.")
                         .arg(fromUtf8(yard.yard.name.text()),
                              massText(noteGrams(*yard.paperSays), How::Weighed));
        for (const HiveYield& hive : yard.hives)
            if (hive.paperSays)
                notes << noteWord("%1: paper says %2; the runs' figure counts.")
                             .arg(fromUtf8(hive.mark),
                                  massText(noteGrams(*hive.paperSays), How::Weighed));
    }
    if (!season.runs.empty())
        notes << noteWord(
            "Rows are rounded; totals come from grams. Shares follow what each box "
            "lost between full and wet.");
    return notes;
}

}  // namespace combwright
