// Year by year: what the runs brought beside what was noted from paper, and the colonies. The two
// are never added up here: a note of a year with runs is shown and not counted.
#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <map>

#include "core/model/honey/pull.h"
#include "core/places/season_book/account_sections.h"
#include "core/places/season_book/season_yield.h"
#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// So many years back, the newest first; what lies further back is in the book of its own year.
constexpr std::size_t mostYears = 12;

QString yearsSay(const char* text, int count = -1) {
    return QCoreApplication::translate("account", text, nullptr, count);
}

/// What is known of one year's honey.
struct CropOfYear {
    double runsG = 0;
    How runsHow = How::Weighed;
    int runs = 0;
    double paperG = 0;
    How paperHow = How::Weighed;
    int notes = 0;
    std::vector<AccountRecord> records;
    Working working;
};

std::map<int, CropOfYear> cropsOf(const Read& file, Day today) {
    std::map<int, CropOfYear> years;
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.on > today) continue;
        CropOfYear& year = years[yearOf(run.on)];
        const BucketSum sum = bucketSum(file, run.id);
        const double grams = static_cast<double>(sum.mass.grams());
        ++year.runs;
        const QString name = fromUtf8(run.name.text());
        if (sum.mass > Mass()) {
            year.runsG += grams;
            year.runsHow = weaker(year.runsHow, sum.how);
            note(&year.working, "in_buckets", grams, "g", run.name.text());
        }
        const auto yard = file.find(run.yard);
        year.records.push_back({run.on, yearsSay("run %1").arg(name),
                                sum.mass > Mass() ? massKnown(grams, sum.how) : QString(),
                                yard ? fromUtf8(yard->name.text()) : QString()});
    }
    for (const CropNote& crop : file.all<CropNote>()) {
        const auto middle = crop.mass ? crop.mass->middle() : std::nullopt;
        if (!middle) continue;
        CropOfYear& year = years[static_cast<int>(crop.year.value())];
        year.paperG += *middle;
        year.paperHow = weaker(year.paperHow, crop.mass->how);
        ++year.notes;
        const QString of = crop.hive   ? fromUtf8(nameOf(file, Hive::table, crop.hive->number))
                           : crop.yard ? fromUtf8(nameOf(file, Yard::table, crop.yard->number))
                                       : yearsSay("the whole year");
        year.records.push_back({std::nullopt, yearsSay("from paper: %1").arg(of),
                                massKnown(*middle, crop.mass->how), fromUtf8(crop.note)});
    }
    return years;
}

AccountLine cropLine(int number, CropOfYear crop) {
    AccountLine line;
    line.name = QString::number(number);
    line.strong = crop.runs > 0;
    line.unit = massUnit();
    line.working = std::move(crop.working);
    if (crop.runs > 0) {
        line.figure = massFigure(crop.runsG, crop.runsHow);
        line.how = crop.runsHow;
        line.note = yearsSay("in %n runs", crop.runs);
        if (crop.notes > 0)
            line.note = yearsSay("in %n runs; paper says %1 beside it", crop.runs)
                            .arg(massKnown(crop.paperG, crop.paperHow));
        note(&line.working, "honey_sum", crop.runsG, "g", "sum of the buckets");
    } else {
        line.figure = massFigure(crop.paperG, crop.paperHow);
        line.how = crop.paperHow;
        line.note = yearsSay("noted from paper, %n notes", crop.notes);
        note(&line.working, "noted_from_paper", crop.paperG, "g", {}, "the keeper's notes");
    }
    line.records = std::move(crop.records);
    return line;
}

}  // namespace

AccountSection cropYearsSection(const Read& file, Day today) {
    AccountSection section;
    section.id = QStringLiteral("honey-by-year");
    section.title = yearsSay("Honey year by year");
    auto years = cropsOf(file, today);
    for (auto year = years.rbegin(); year != years.rend(); ++year)
        if (section.lines.size() < mostYears)
            section.lines.push_back(cropLine(year->first, std::move(year->second)));
    section.note =
        section.lines.empty()
            ? yearsSay("No run and no crop is written down yet.")
            : yearsSay(
                  "What paper says is shown beside what the runs brought and never added to "
                  "it: which of it counts the book of that year tells, hive by hive.");
    return section;
}

AccountSection colonyYearsSection(const Read& file, Day today) {
    AccountSection section;
    section.id = QStringLiteral("colonies-by-year");
    section.title = yearsSay("Colonies year by year");
    std::optional<Day> first;
    for (const Colony& colony : file.all<Colony>())
        first = first ? std::min(*first, colony.since) : colony.since;
    if (!first) {
        section.note = yearsSay("No colony is written down yet.");
        return section;
    }
    const QLocale locale;
    for (int number = yearOf(today); number >= yearOf(*first) && section.lines.size() < mostYears;
         --number) {
        const ColoniesOfYear year = coloniesOfYear(file, number, today);
        AccountLine line;
        line.name = QString::number(number);
        if (year.begun) {
            line.figure = QString::number(year.standing.size());
            line.how = How::Counted;
            line.unit = yearsSay("on 1 May");
            note(&line.working, "colonies_standing", static_cast<double>(year.standing.size()), "");
        }
        QStringList about;
        if (year.before && year.before->loss.loss) {
            const WinterLoss& winter = year.before->loss;
            about << yearsSay(
                         "the winter before took %1 of %2: %3 % of all, %4 % as the mean of "
                         "the yards")
                         .arg(QString::number(winter.dead), QString::number(winter.atRisk),
                              locale.toString(winter.loss->totalShare * 100, 'f', 1),
                              locale.toString(winter.loss->meanShare * 100, 'f', 1));
            for (const ColonyGone& gone : year.before->dead)
                line.records.push_back({gone.colony.ended, fromUtf8(gone.hive.mark.text()),
                                        yearsSay("lost in the winter before"),
                                        fromUtf8(gone.cause)});
        }
        if (!year.came.empty()) about << yearsSay("%n came", static_cast<int>(year.came.size()));
        if (const int lost = year.lost(); lost > 0) about << yearsSay("%n lost", lost);
        for (const ColonyGone& gone : year.left)
            line.records.push_back({gone.colony.ended, fromUtf8(gone.hive.mark.text()),
                                    gone.colony.ending ? fromUtf8(word(*gone.colony.ending))
                                                       : yearsSay("why is not known"),
                                    fromUtf8(gone.into.empty() ? gone.cause : gone.into)});
        line.note = about.join(QStringLiteral("; "));
        section.lines.push_back(std::move(line));
    }
    return section;
}

}  // namespace combwright
