#include "core/places/pages/harvest_pages.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>

#include "core/model/season_info.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString harvestWord(const char* text) { return QCoreApplication::translate("harvest", text); }

Page pageFor(const Read& file, const QString& title, const QString& day) {
    Page page;
    page.title = title;
    page.day = day;
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

Cell words(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell massCell(std::optional<Mass> mass, How how, bool strong = false) {
    if (!mass) return words({});
    Cell cell = words(massFigure(static_cast<double>(mass->grams()), how), strong);
    cell.how = how;
    return cell;
}

QString perHive(Mass total, How how, int hives) {
    if (hives == 0) return {};
    return massFigure(static_cast<double>(total.grams()) / hives,
                      how == How::Weighed || how == How::ByDifference ? How::Weighed : how);
}

QString changeText(std::optional<Mass> now, std::optional<Mass> before) {
    if (!now || !before) return {};
    const std::int64_t change = now->grams() - before->grams();
    const QString size = massFigure(static_cast<double>(std::abs(change)), How::Weighed);
    return change < 0 ? QStringLiteral("− ") + size : QStringLiteral("+ ") + size;
}

QString howKnownText(const HiveYield& hive) {
    if (!hive.mass) return harvestWord("nothing taken");
    QString text;
    switch (hive.how) {
        case How::Weighed:
            text = harvestWord("weighed boxes");
            break;
        case How::ByDifference:
            text = harvestWord("one box by difference");
            break;
        case How::ByEye:
            text = harvestWord("frames and fill, by eye");
            break;
        default:
            text = howWord(hive.how);
            break;
    }
    return hive.revised ? text + harvestWord("; revised") : text;
}

Cell barCell(std::optional<Mass> mass, std::optional<Mass> before, How how, double scaleG) {
    Cell cell;
    cell.look = Cell::Look::Bar;
    if (mass) cell.bar = static_cast<double>(mass->grams()) / scaleG;
    if (before) cell.stroke = static_cast<double>(before->grams()) / scaleG;
    cell.hatched = how == How::ByDifference || how == How::ByEye;
    return cell;
}

double scaleOf(const SeasonYield& season) {
    double most = 1000;
    for (const YardYield& yard : season.yards) {
        for (const HiveYield& hive : yard.hives) {
            if (hive.mass) most = std::max(most, static_cast<double>(hive.mass->grams()));
            if (hive.before) most = std::max(most, static_cast<double>(hive.before->grams()));
        }
        if (yard.unknown) most = std::max(most, static_cast<double>(yard.unknown->grams()));
    }
    return most;
}

TableBlock yieldTable(const SeasonYield& season) {
    TableBlock table;
    table.columns = {{harvestWord("hive"), 1.3, false},
                     {QStringLiteral("%1, %2").arg(season.year).arg(massUnit()), 0.9, true},
                     {QString::number(season.year - 1), 0.8, true},
                     {harvestWord("change"), 0.8, true},
                     {harvestWord("%1; a stroke: the year before").arg(massUnit()), 3.6, false},
                     {harvestWord("how it is known"), 2.2, false}};
    table.rowMm = 5.2;
    const double scale = scaleOf(season);
    for (const YardYield& yard : season.yards) {
        if (yard.hives.empty() && yard.total == Mass()) continue;
        TableRow head;
        head.group = true;
        Cell averages = words(
            yard.producing ? harvestWord("%1 per producing hive, %2 per hive on 1 May")
                                 .arg(perHive(yard.total, yard.how, yard.producing),
                                      yard.standing ? perHive(yard.total, yard.how, yard.standing)
                                                    : QStringLiteral("?"))
                           : QString());
        head.cells = {words(fromUtf8(yard.yard.name.text()), true),
                      massCell(yard.total > Mass() ? std::optional(yard.total) : std::nullopt,
                               yard.how, true),
                      massCell(yard.before, How::Weighed),
                      words(changeText(yard.total, yard.before)),
                      averages,
                      words({})};
        head.cells[2].how.reset();
        table.rows.push_back(head);
        for (const HiveYield& hive : yard.hives) {
            TableRow row;
            row.cells = {words(QStringLiteral("   ") + fromUtf8(hive.mark)),
                         hive.mass ? massCell(hive.mass, hive.how) : words(harvestWord("none")),
                         massCell(hive.before, hive.beforeHow),
                         words(changeText(hive.mass, hive.before)),
                         barCell(hive.mass, hive.before, hive.how, scale),
                         words(howKnownText(hive))};
            table.rows.push_back(row);
        }
        if (yard.unknown && *yard.unknown > Mass()) {
            TableRow row;
            Cell bar = barCell(yard.unknown, std::nullopt, How::Unknown, scale);
            bar.dashed = true;
            row.cells = {words(QStringLiteral("   ") + harvestWord("no tag"), true),
                         massCell(yard.unknown, yard.how),
                         words({}),
                         words({}),
                         bar,
                         words(harvestWord("hive not known"))};
            table.rows.push_back(row);
        }
        table.rows.back().below = Rule::Ink;
    }
    TableRow all;
    all.below = Rule::Double;
    all.cells = {words(harvestWord("All"), true),
                 massCell(season.total, season.how, true),
                 massCell(season.before, How::Weighed),
                 words(changeText(season.total, season.before)),
                 words({}),
                 words({})};
    all.cells[2].how.reset();
    table.rows.push_back(all);
    return table;
}

TableBlock runTable(const SeasonYield& season) {
    TableBlock table;
    table.title = harvestWord("Runs and lots");
    table.columns = {{harvestWord("day"), 1, false},         {harvestWord("lot"), 1, false},
                     {harvestWord("yard"), 1.4, false},      {harvestWord("boxes"), 0.7, true},
                     {harvestWord("out of boxes"), 1, true}, {harvestWord("buckets"), 1, true},
                     {harvestWord("cappings"), 1, true},     {harvestWord("missing"), 1.2, true},
                     {harvestWord("water %"), 1, true}};
    table.rowMm = 5.5;
    for (const RunBalance& run : season.runs) {
        TableRow row;
        const auto out =
            run.outOfBoxesG ? std::optional(Mass::roundedGrams(*run.outOfBoxesG)) : std::nullopt;
        const bool byDifference =
            std::any_of(run.boxes.begin(), run.boxes.end(),
                        [](const RunBoxLine& box) { return box.byDifference; });
        Cell missing = words(QStringLiteral("?"));
        if (run.unaccountedG) {
            missing = words(massFigure(*run.unaccountedG, How::Weighed));
            missing.how = How::ByDifference;
        }
        row.cells = {
            words(dayAndMonth(run.run.on)),
            words(fromUtf8(run.run.name.text())),
            words(fromUtf8(run.yard)),
            words(QString::number(run.boxes.size())),
            out ? massCell(out, byDifference ? How::ByDifference : How::Weighed)
                : words(QStringLiteral("?")),
            massCell(run.buckets, run.bucketsHow, true),
            run.cappings ? massCell(run.cappings, How::Weighed) : words(QStringLiteral("?")),
            missing,
            words(run.waterLow ? (*run.waterLow == *run.waterHigh
                                      ? QLocale().toString(*run.waterLow, 'f', 1)
                                      : QStringLiteral("%1–%2").arg(
                                            QLocale().toString(*run.waterLow, 'f', 1),
                                            QLocale().toString(*run.waterHigh, 'f', 1)))
                               : QString())};
        table.rows.push_back(row);
    }
    return table;
}

QStringList footnotes(const SeasonYield& season) {
    QStringList notes;
    for (const RunBalance& run : season.runs) {
        for (const RunBoxLine& box : run.boxes)
            if (box.byDifference)
                notes << harvestWord(
                             "%1, %2: box %3 lacked a weight; its %4 is what is left when the "
                             "others "
                             "are taken from buckets and cappings.")
                             .arg(fromUtf8(run.run.name.text()), fromUtf8(box.hive),
                                  fromUtf8(box.mark),
                                  massText(box.offG.value_or(0), How::ByDifference));
        if (run.byEye)
            notes << harvestWord("%1: nothing was weighed; shares follow frames and fill, by eye.")
                         .arg(fromUtf8(run.run.name.text()));
        for (const RunShare& share : run.shares)
            if (share.atClosing)
                notes << harvestWord("Revised since %1 was closed: %2 is %3, was %4.")
                             .arg(fromUtf8(run.run.name.text()),
                                  share.hive ? fromUtf8(share.mark) : harvestWord("no tag"),
                                  massText(static_cast<double>(share.mass.grams()), How::Weighed),
                                  massFigure(static_cast<double>(share.atClosing->grams()),
                                             How::Weighed));
    }
    for (const std::string& run : season.unclosed)
        notes << harvestWord("%1 is not in these figures: two of its weights are missing.")
                     .arg(fromUtf8(run));
    notes << harvestWord(
        "Rows are rounded; totals come from grams. Shares follow what each box lost between full "
        "and wet.");
    return notes;
}

}  // namespace

QString seasonSentence(const SeasonYield& season) {
    if (season.total == Mass())
        return harvestWord("No honey was written down in %1.").arg(season.year);
    const QString total = massText(static_cast<double>(season.total.grams()), season.how);
    QString text = harvestWord("In %1 %2 of %3 colonies gave %4 of honey")
                       .arg(season.year)
                       .arg(season.producing)
                       .arg(std::max(season.standing, season.producing))
                       .arg(total);
    if (season.before) {
        const std::int64_t change = season.total.grams() - season.before->grams();
        text += (change >= 0 ? harvestWord(", %1 more than the year before")
                             : harvestWord(", %1 less than the year before"))
                    .arg(massFigure(static_cast<double>(std::abs(change)), How::Weighed));
    }
    text += harvestWord(", in %1 runs.").arg(season.runs.size());
    if (season.unknown && *season.unknown > Mass())
        text += QLatin1Char(' ') +
                harvestWord("%1 of it has no hive yet.")
                    .arg(massText(static_cast<double>(season.unknown->grams()), season.how));
    if (season.producing)
        text += QLatin1Char(' ') + harvestWord("That is %1 %2 per producing hive (%3)")
                                       .arg(perHive(season.total, season.how, season.producing))
                                       .arg(massUnit())
                                       .arg(season.producing);
    if (season.producing && season.standing)
        text += harvestWord(" and %1 per hive standing on 1 May (%2)")
                    .arg(perHive(season.total, season.how, season.standing))
                    .arg(season.standing);
    return season.producing ? text + QLatin1Char('.') : text;
}

Page harvestSummaryPage(const Read& file, const SeasonYield& season, Day printed) {
    Page page = pageFor(file, harvestWord("Harvest summary %1").arg(season.year),
                        harvestWord("printed %1").arg(dayText(printed)));
    const bool revised = std::any_of(season.runs.begin(), season.runs.end(),
                                     [](const RunBalance& run) { return run.revised; });
    if (revised) page.title += harvestWord(" (revised)");
    TextBlock sentence;
    sentence.text = seasonSentence(season);
    page.blocks.push_back(sentence);
    page.blocks.push_back(yieldTable(season));
    if (!season.runs.empty()) page.blocks.push_back(runTable(season));
    TextBlock notes;
    notes.small = true;
    notes.text = footnotes(season).join(QLatin1Char('\n'));
    page.blocks.push_back(notes);
    TextBlock caution;
    caution.small = true;
    caution.text = harvestWord("Honey is not for infants under 12 months.");
    page.blocks.push_back(caution);
    BlanksBlock blanks;
    blanks.labels = {harvestWord("checked by"), harvestWord("on")};
    blanks.framed = true;
    page.blocks.push_back(blanks);
    page.letters = lettersOf(page);
    return page;
}

}  // namespace combwright
