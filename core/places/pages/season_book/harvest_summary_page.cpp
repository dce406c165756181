#include "core/places/pages/season_book/harvest_summary_page.h"

#include <QCoreApplication>
#include <algorithm>

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

}  // namespace

Page harvestSummaryPage(const Read& file, const SeasonYield& season, Day printed,
                        const std::vector<SeasonYield>& beside) {
    Page page = summaryFor(file, summaryWord("Harvest summary %1").arg(season.year), printed);
    const bool revised = std::any_of(season.runs.begin(), season.runs.end(),
                                     [](const RunBalance& run) { return run.revised; });
    if (revised) page.title += summaryWord(" (revised)");
    const ColoniesOfYear colonies = coloniesOfYear(file, season.year, printed);
    page.blocks.emplace_back(seasonSentence(season, &colonies));
    if (season.total > Mass() || season.before) page.blocks.emplace_back(yieldBlock(season));
    if (!season.runs.empty()) page.blocks.emplace_back(runsBlock(season));
    StepsBlock timeline = timelineBlock(season, beside);
    // Its axis says what it is; the sheet is to hang as one.
    timeline.title.clear();
    timeline.heightMm = 26;
    page.oneSheet = true;
    if (!timeline.lines.empty() && !season.runs.empty())
        page.blocks.emplace_back(std::move(timeline));
    QStringList account{
        waxInWords(waxYear(file, season.year, std::min(printed, *makeDay(season.year, 12, 31)))),
        coloniesInWords(colonies)};
    account.removeAll(QString());
    if (!account.isEmpty()) {
        TextBlock words;
        words.text = account.join(QLatin1Char('\n'));
        page.blocks.emplace_back(std::move(words));
    }
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

Page yieldsByPage(const Read& file, const YieldsBy& yields, const SeasonYield& season,
                  Day printed) {
    Page page = summaryFor(file, yieldsByTitle(yields), printed);
    page.blocks.emplace_back(yieldsByBlock(yields));
    QStringList notes = yieldsByNotes(yields);
    notes << yieldNotes(season);
    page.blocks.emplace_back(smallText(notes.join(QLatin1Char('\n'))));
    page.letters = lettersOf(page);
    return page;
}

Page accountPage(const Read& file, const AccountSection& section, int year, Day printed) {
    TableBlock table = accountBlock(section);
    Page page = summaryFor(file, QStringLiteral("%1, %2").arg(section.title).arg(year), printed);
    table.title.clear();
    page.blocks.emplace_back(std::move(table));
    if (!section.note.isEmpty()) page.blocks.emplace_back(smallText(section.note));
    page.letters = lettersOf(page);
    return page;
}

Page accountRecordsPage(const Read& file, const QString& title, const AccountLine& line,
                        Day printed) {
    Page page = summaryFor(file, title, printed);
    page.blocks.emplace_back(accountRecordsBlock(line));
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
