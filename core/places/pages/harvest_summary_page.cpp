#include "core/places/pages/harvest_summary_page.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/model/season_info.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString summaryWord(const char* text) { return QCoreApplication::translate("harvest", text); }

Page summaryFor(const Read& file, const QString& title, Day printed) {
    Page page;
    page.title = title;
    page.day = summaryWord("printed %1").arg(dayText(printed));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

TextBlock smallText(const QString& text) {
    TextBlock block;
    block.small = true;
    block.text = text;
    return block;
}

double summaryGrams(Mass mass) { return static_cast<double>(mass.grams()); }

}  // namespace

TextBlock seasonSentence(const SeasonYield& season) {
    TextBlock block;
    QString& text = block.text;
    if (season.total == Mass()) {
        text = summaryWord("No honey was written down in %1.").arg(season.year);
        return block;
    }
    const auto strong = [&block](const QString& words) {
        block.strong << words;
        return words;
    };
    const QString total = strong(massText(summaryGrams(season.total), season.how));
    if (season.producing)
        text = summaryWord("In %1, %2 of %3 colonies gave %4 of honey")
                   .arg(season.year)
                   .arg(season.producing)
                   .arg(std::max(season.lived, season.producing))
                   .arg(total);
    else
        text = summaryWord("In %1 there was %2 of honey, of no hive by name")
                   .arg(season.year)
                   .arg(total);
    if (const auto change = changeGrams(season.total, season.before))
        text += (*change >= 0 ? summaryWord(", %1 more than %2") : summaryWord(", %1 less than %2"))
                    .arg(massFigure(std::abs(*change), weaker(season.how, season.beforeHow)),
                         season.beforeYear == season.year - 1
                             ? summaryWord("the year before")
                             : summaryWord("in %1").arg(season.beforeYear));
    if (season.runs.size() == 1)
        text += summaryWord(", in one run on %1").arg(dayAndMonth(season.runs.front().run.on));
    else if (season.runs.size() > 1)
        text += summaryWord(", in %1 runs from %2 to %3")
                    .arg(season.runs.size())
                    .arg(dayAndMonth(season.runs.front().run.on),
                         dayAndMonth(season.runs.back().run.on));
    if (season.noted == season.total)
        text += summaryWord(", all noted from paper");
    else if (season.noted)
        text += summaryWord(", %1 of it noted from paper")
                    .arg(massText(summaryGrams(*season.noted), season.how));
    text += QLatin1Char('.');
    if (season.unknown)
        text += QLatin1Char(' ') +
                summaryWord("%1 of it has no hive yet.")
                    .arg(strong(massText(summaryGrams(*season.unknown), season.how)));
    if (!season.producing) return block;
    const auto each = [&](int hives) {
        return massFigure(gramsPerHive(summaryGrams(season.total), hives), season.how);
    };
    text +=
        QLatin1Char(' ') +
        summaryWord("That is %1 (%2)")
            .arg(strong(
                summaryWord("%1 %2 per producing hive").arg(each(season.producing), massUnit())))
            .arg(season.producing);
    if (season.standing)
        text += summaryWord(" and %1 (%2)")
                    .arg(strong(summaryWord("%1 %2 per hive standing on 1 May")
                                    .arg(each(season.standing), massUnit())))
                    .arg(season.standing);
    text += QLatin1Char('.');
    return block;
}

Page harvestSummaryPage(const Read& file, const SeasonYield& season, Day printed,
                        const std::vector<SeasonYield>& beside) {
    Page page = summaryFor(file, summaryWord("Harvest summary %1").arg(season.year), printed);
    const bool revised = std::any_of(season.runs.begin(), season.runs.end(),
                                     [](const RunBalance& run) { return run.revised; });
    if (revised) page.title += summaryWord(" (revised)");
    page.blocks.emplace_back(seasonSentence(season));
    if (season.total > Mass() || season.before) page.blocks.emplace_back(yieldBlock(season));
    if (!season.runs.empty()) page.blocks.emplace_back(runsBlock(season));
    StepsBlock timeline = timelineBlock(season, beside);
    if (!timeline.lines.empty() && !season.runs.empty())
        page.blocks.emplace_back(std::move(timeline));
    QStringList notes = yieldNotes(season);
    notes << summaryWord("Honey is not for infants under 12 months.");
    page.blocks.emplace_back(smallText(notes.join(QLatin1Char('\n'))));
    BlanksBlock blanks;
    blanks.labels = {summaryWord("checked by"), summaryWord("on")};
    blanks.framed = true;
    page.blocks.emplace_back(blanks);
    page.letters = lettersOf(page);
    return page;
}

Page timelinePage(const Read& file, const SeasonYield& season,
                  const std::vector<SeasonYield>& beside, Day printed) {
    Page page = summaryFor(file, summaryWord("Harvest timeline %1").arg(season.year), printed);
    StepsBlock steps = timelineBlock(season, beside);
    steps.title.clear();
    page.blocks.emplace_back(std::move(steps));
    return page;
}

Page yieldPage(const Read& file, const SeasonYield& season, Day printed) {
    Page page = summaryFor(file, summaryWord("Honey by hive %1").arg(season.year), printed);
    page.blocks.emplace_back(yieldBlock(season));
    const QStringList notes = yieldNotes(season);
    if (!notes.isEmpty()) page.blocks.emplace_back(smallText(notes.join(QLatin1Char('\n'))));
    page.letters = lettersOf(page);
    return page;
}

Page reckonedPage(const Read& file, const ReckonedAndGot& reckoned, Day printed) {
    TableBlock table = reckonedBlock(reckoned);
    Page page = summaryFor(file, table.title, printed);
    table.title.clear();
    page.blocks.emplace_back(std::move(table));
    QStringList sentences;
    for (const GotLine& line : reckoned.lines) {
        sentences << gotSentence(line);
        if (line.learned) sentences << gotRule(line);
    }
    if (const QString yards = yardRule(reckoned); !yards.isEmpty()) sentences << yards;
    page.blocks.emplace_back(smallText(sentences.join(QLatin1Char('\n'))));
    page.letters = lettersOf(page);
    return page;
}

Page recordsPage(const Read& file, const YieldRecords& records, Day printed) {
    TableBlock table = recordsBlock(records);
    Page page = summaryFor(file, table.title, printed);
    table.title.clear();
    page.blocks.emplace_back(std::move(table));
    page.letters = lettersOf(page);
    return page;
}

}  // namespace combwright
