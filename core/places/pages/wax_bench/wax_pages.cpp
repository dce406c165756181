#include "core/places/pages/wax_bench/wax_pages.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/places/pages/goods/goods_pages.h"
#include "core/places/pages/honey_room/room_paper.h"
#include "core/places/pages/wax_bench/wax_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString benchSay(const char* text) { return QCoreApplication::translate("wax_pages", text); }

Cell waxCell(const QString& text, bool strong = false, const QString& second = {}) {
    Cell cell;
    cell.text = text;
    cell.second = second;
    cell.strong = strong;
    return cell;
}

Cell waxMassCell(const std::optional<Mass>& mass, How how) {
    Cell cell;
    cell.text = mass ? waxFigure(static_cast<double>(mass->grams())) : QStringLiteral("?");
    if (mass) cell.how = how;
    return cell;
}

Cell waxToWrite() {
    Cell cell;
    cell.look = Cell::Look::Blank;
    return cell;
}

TextBlock waxLine(const QString& text, bool caution = false) {
    TextBlock block;
    block.text = text;
    block.caution = caution;
    return block;
}

TableBlock batchesTable(const WaxBench& bench) {
    TableBlock table;
    table.title = benchSay("Raw wax and what came of it");
    table.columns = {{benchSay("batch"), 1.6, false},
                     {benchSay("from"), 2, false},
                     {benchSay("in and out"), 2.6, false},
                     {benchSay("to know"), 2.4, false}};
    for (const BatchShown& batch : bench.batches) {
        TableRow row;
        row.cells = {waxCell(fromUtf8(batch.ledger.batch.name.text()), true,
                             shortDayText(batch.ledger.batch.on)),
                     waxCell(batchFromText(batch)), waxCell(batchMassText(batch)),
                     waxCell(batchWaitsText(batch))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock blocksTable(const WaxBench& bench) {
    TableBlock table;
    table.title = benchSay("Clean wax");
    table.columns = {{benchSay("shade"), 1.4, false},
                     {benchSay("block"), 1.4, false},
                     {benchSay("cast, %1").arg(massUnit()), 1, true},
                     {benchSay("left, %1").arg(massUnit()), 1, true}};
    for (const ShadeStock& shade : bench.shades) {
        TableRow sum;
        sum.group = true;
        sum.cells = {waxCell(shadeText(shade.shade), true),
                     waxCell(shade.notWeighed > 0 ? benchSay("%1 not weighed").arg(shade.notWeighed)
                                                  : QString()),
                     waxCell({}), waxMassCell(shade.left, shade.how)};
        table.rows.push_back(std::move(sum));
        for (const BlockLedger& block : bench.blocks) {
            if (block.block.shade != shade.shade) continue;
            TableRow row;
            row.cells = {
                waxCell({}),
                waxCell(fromUtf8(block.block.name.text()), false, shortDayText(block.block.on)),
                waxMassCell(block.mass, block.how), waxMassCell(block.left, block.how)};
            table.rows.push_back(std::move(row));
        }
    }
    return table;
}

TableBlock mouldsTable(const WaxBench& bench) {
    TableBlock table;
    table.title = benchSay("Moulds and holders");
    table.columns = {{benchSay("mould"), 1.2, false},
                     {benchSay("candle"), 1.2, false},
                     {benchSay("holds"), 3, false},
                     {benchSay("wick"), 2.4, false}};
    for (const MouldShown& mould : bench.moulds) {
        TableRow row;
        row.cells = {waxCell(fromUtf8(mould.mould.name.text()), true),
                     waxCell(fromUtf8(mould.candle)), waxCell(mouldText(mould)),
                     waxCell(mouldWickText(mould))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

QString stocksText(const WaxBench& bench) {
    QStringList wick;
    for (const auto& [size, left] : bench.wick)
        wick << fromUtf8(size) + QLatin1Char(' ') +
                    wickText(static_cast<double>(left.count()) / 10'000.0);
    QString text = wick.isEmpty() ? benchSay("Wick: none written down.")
                                  : benchSay("Wick: %1.").arg(wick.join(QStringLiteral(", ")));
    text += QLatin1Char('\n') +
            benchSay("Propolis: %1.")
                .arg(shownPortion(static_cast<double>(bench.propolis.grams())).text());
    if (bench.returned > Mass())
        text += QLatin1Char('\n') + benchSay("Failed pieces and sprues to be melted again: %1.")
                                        .arg(massToTheGram(bench.returned));
    return text;
}

QString perHoneyText(const WaxYear& year) {
    if (!year.per100)
        return benchSay("Wax on 100 of honey: not known without a crop weighed that year.");
    QString held;
    switch (year.per100->verdict) {
        case WaxAgainstHoney::Less:
            held = benchSay("less than");
            break;
        case WaxAgainstHoney::AsPublished:
            held = benchSay("as");
            break;
        case WaxAgainstHoney::More:
            held = benchSay("more than");
            break;
    }
    return benchSay("%1 kg of clean wax on 100 kg of honey, %2 the published 1 to 2.")
        .arg(QLocale().toString(year.per100->per100, 'f', 2), held);
}

void addProjects(Page& page, const Read& file, Day on) {
    bool any = false;
    for (const CombProject& comb : combProjects(file, on)) {
        QString text = projectText(comb, on);
        const QString care = projectCareText(comb);
        if (!care.isEmpty()) text += QStringLiteral(". ") + care;
        TextBlock block = waxLine(text, !care.isEmpty());
        if (!any) block.title = benchSay("Comb jars and small projects");
        any = true;
        page.blocks.emplace_back(std::move(block));
    }
    if (any) page.blocks.emplace_back(infantCautionBlock());
}

/// "burns about 9 to 14 h"; empty where nobody knows what it weighs or how wide it is.
QString burnsText(const MouldShown& mould) {
    if (!mould.burns) return {};
    // By its mass: nobody has burnt one of it.
    const bool assumed = std::none_of(mould.tests.begin(), mould.tests.end(),
                                      [](const BurnTest& test) { return test.hours.has_value(); });
    return (assumed ? benchSay("Burns about %1 to %2 hours, assumed from its mass.")
                    : benchSay("Burns about %1 to %2 hours."))
        .arg(QString::number(std::lround(mould.burns->low)),
             QString::number(std::lround(mould.burns->high)));
}

TableBlock stepsToWrite(const BatchShown* batch) {
    TableBlock table;
    table.title = benchSay("Steps");
    table.columns = {{benchSay("step"), 1.6, false},
                     {benchSay("day"), 1, false},
                     {benchSay("in, %1").arg(massUnit()), 1, true},
                     {benchSay("out, %1").arg(massUnit()), 1, true},
                     {benchSay("warmest"), 1, false}};
    table.rowMm = 10;
    for (const WaxWork work : {WaxWork::Dripped, WaxWork::Pressed, WaxWork::Washed, WaxWork::Melted,
                               WaxWork::Strained, WaxWork::FootScraped, WaxWork::MeltedAgain}) {
        TableRow row;
        row.cells = {waxCell(word(word(work)), true), waxToWrite(), waxToWrite(), waxToWrite(),
                     waxToWrite()};
        if (batch)
            for (const WaxStep& step : batch->ledger.steps) {
                if (step.work != work) continue;
                row.cells[1] = waxCell(shortDayText(step.on));
                if (step.putIn && step.putIn->middle())
                    row.cells[2] = waxCell(waxFigure(*step.putIn->middle()));
                if (step.cameOut && step.cameOut->middle())
                    row.cells[3] = waxCell(waxFigure(*step.cameOut->middle()));
                if (step.temperature)
                    row.cells[4] = waxCell(shownTemperature(step.temperature->celsius()).text());
            }
        table.rows.push_back(std::move(row));
    }
    return table;
}

Page batchSheet(const Read& file, const BatchShown* batch, const QString& day) {
    Page page =
        roomPaper(file,
                  batch ? benchSay("Wax batch: %1").arg(fromUtf8(batch->ledger.batch.name.text()))
                        : benchSay("Wax batch"),
                  day);
    if (batch) {
        QStringList lines{batchFromText(*batch), batchMassText(*batch)};
        if (batch->expectedG)
            lines << benchSay("Clean wax to expect: %1 to %2, likely %3.")
                         .arg(waxText(batch->expectedG->low), waxText(batch->expectedG->high),
                              waxText(batch->expectedG->likely));
        if (batch->honeyG && batch->honeyG->high > 0)
            lines << benchSay("Honey in it still: %1 to %2; let it drip first.")
                         .arg(waxText(batch->honeyG->low), waxText(batch->honeyG->high));
        if (const QString waits = batchWaitsText(*batch); !waits.isEmpty()) lines << waits;
        page.blocks.emplace_back(waxLine(lines.join(QLatin1Char('\n'))));
    }
    page.blocks.emplace_back(waxSafetyBlock());
    BlanksBlock pot;
    pot.framed = true;
    pot.labels = {benchSay("pot on at"), benchSay("timer set for"), benchSay("pot OFF at"),
                  benchSay("raw mass"),  benchSay("clean block"),   benchSay("shade, name")};
    page.blocks.emplace_back(std::move(pot));
    page.blocks.emplace_back(stepsToWrite(batch));
    page.blocks.emplace_back(enteredBy());
    return page;
}

Card linesCard(const QString& name, const QStringList& lines) {
    Card card;
    card.name = cardText(name, PaperSize::Head, true);
    card.ruled = true;
    for (const QString& line : lines) card.lines.push_back(cardText(line, PaperSize::Note));
    return card;
}

}  // namespace

TableBlock waxYearTable(const WaxYear& year) {
    TableBlock table;
    table.title = benchSay("Clean wax in %1, %2").arg(year.year).arg(massUnit());
    table.columns = {
        {QString(), 2.4, false}, {benchSay("in"), 1, true}, {benchSay("out"), 1, true}};
    // To the gram, and summed as printed: what stands there can be added up by hand.
    std::int64_t in = 0;
    std::int64_t out = 0;
    const auto row = [&table](const QString& what, std::int64_t came, std::int64_t went,
                              bool strong = false) {
        const auto figure = [](std::int64_t steps) {
            return steps == 0 ? QString() : waxFineFigure(steps);
        };
        TableRow made;
        made.cells = {waxCell(what, strong), waxCell(figure(came), strong),
                      waxCell(figure(went), strong)};
        if (strong) made.below = Rule::Double;
        table.rows.push_back(std::move(made));
    };
    const auto line = [&](const QString& what, double came, double went) {
        in += waxFineSteps(came);
        out += waxFineSteps(went);
        row(what, waxFineSteps(came), waxFineSteps(went));
    };
    const WaxMoved& moved = year.moved;
    const auto again = static_cast<double>(year.again.grams());
    line(benchSay("blocks at its start"), moved.openingG, 0);
    line(benchSay("cast from batches"), moved.castG, 0);
    line(benchSay("bought or given to us"), moved.broughtG, 0);
    if (moved.returnedG > 0) line(benchSay("cast of failed pieces and sprues"), moved.returnedG, 0);
    line(benchSay("poured"), 0, moved.pouredG);
    line(benchSay("sold, given, traded"), 0, moved.givenG - again);
    if (again > 0) line(benchSay("blocks melted again"), 0, again);
    line(benchSay("lost"), 0, moved.lostG);
    if (year.balance) {
        row(benchSay("in stock"), 0, in - out);
        row(benchSay("closes at"), in, in, true);
    }
    return table;
}

Page waxBalancePage(const Read& file, const WaxBench& bench) {
    const WaxYear& year = bench.year;
    Page page = roomPaper(file, benchSay("Wax balance %1").arg(year.year), dayText(bench.on));
    page.blocks.emplace_back(waxYearTable(year));
    QStringList lines;
    if (!year.balance)
        lines << benchSay("More went out than there was: a block is not written down.");
    lines << benchSay("Raw wax weighed: %1; clean blocks of it: %2, without what was clean before.")
                 .arg(waxText(year.raw), waxText(year.clean));
    if (year.returnedWaits > Mass())
        lines << benchSay(
                     "Beside the blocks, of what was poured: failed pieces and sprues to be "
                     "melted again, %1.")
                     .arg(massToTheGram(year.returnedWaits));
    if (year.honeyDrained > Mass())
        lines << benchSay("Honey that dripped out: %1.").arg(waxText(year.honeyDrained));
    if (year.crop)
        lines << benchSay("Honey of the year: %1.")
                     .arg(massText(static_cast<double>(year.crop->grams()), How::Weighed));
    lines << perHoneyText(year);
    page.blocks.emplace_back(waxLine(lines.join(QLatin1Char('\n'))));
    page.letters = lettersOf(page);
    return page;
}

Page waxBenchPage(const Read& file, const WaxBench& bench) {
    Page page = roomPaper(file, benchSay("Wax bench"), dayText(bench.on));
    for (Block& pot : openHeatBlocks(bench.heat)) page.blocks.push_back(std::move(pot));
    if (bench.batches.empty() && bench.blocks.empty() && bench.moulds.empty())
        page.blocks.emplace_back(waxLine(benchSay("Nothing is on the wax bench yet.")));
    if (!bench.batches.empty()) page.blocks.emplace_back(batchesTable(bench));
    if (!bench.shades.empty()) page.blocks.emplace_back(blocksTable(bench));
    if (!bench.unfinished.empty()) {
        TickBlock ticks;
        ticks.title = benchSay("Candles to finish");
        ticks.columns = 1;
        for (const PourShown& pour : bench.unfinished)
            ticks.lines.push_back({unfinishedText(pour, bench.on), {}});
        page.blocks.emplace_back(std::move(ticks));
    }
    if (!bench.moulds.empty()) page.blocks.emplace_back(mouldsTable(bench));
    page.blocks.emplace_back(waxLine(stocksText(bench)));
    addProjects(page, file, bench.on);
    page.blocks.emplace_back(waxYearTable(bench.year));
    page.blocks.emplace_back(waxLine(perHoneyText(bench.year)));
    page.letters = lettersOf(page);
    return page;
}

Page batchSheetPage(const Read& file, const BatchShown& batch) {
    return batchSheet(file, &batch, dayText(batch.ledger.batch.on));
}

Page nextBatchSheetPage(const Read& file, const WaxBench& bench) {
    const BatchShown* next = nullptr;
    for (const BatchShown& batch : bench.batches)
        if (batch.waits && (!next || (batch.washedOn && !next->washedOn))) next = &batch;
    return batchSheet(file, next, dayText(bench.on));
}

Page careCardsPage(const Read& file, const WaxBench& bench) {
    Page page = roomPaper(file, benchSay("Care cards"), dayText(bench.on));
    CardsBlock block;
    block.about = benchSay("cut along the dashes");
    block.across = 2;
    block.rowMm = 60;
    std::vector<std::string> shown;
    for (const MouldShown& mould : bench.moulds) {
        if (mould.candle.empty() ||
            std::find(shown.begin(), shown.end(), mould.candle) != shown.end())
            continue;
        shown.push_back(mould.candle);
        QStringList lines = candleCareLines();
        if (const QString burns = burnsText(mould); !burns.isEmpty()) lines << burns;
        for (const MouldShown& each : bench.moulds)
            if (!each.safe && each.candle == mould.candle)
                lines << benchSay(
                             "NOT FOR SALE in the holder %1: no test burn with its wick went well "
                             "yet.")
                             .arg(fromUtf8(each.mould.name.text()));
        block.cards.push_back(linesCard(fromUtf8(mould.candle), lines));
    }
    if (block.cards.empty())
        block.cards.push_back(linesCard(benchSay("Beeswax candle"), candleCareLines()));
    page.blocks.emplace_back(std::move(block));
    return page;
}

Page propolisCardPage(const Read& file, Day on) {
    Page page = roomPaper(file, benchSay("Propolis"), dayText(on));
    CardsBlock block;
    block.about = benchSay("cut along the dashes");
    block.across = 2;
    block.rowMm = 60;
    for (int copy = 0; copy < 4; ++copy)
        block.cards.push_back(linesCard(benchSay("Propolis"), propolisCautionLines()));
    page.blocks.emplace_back(std::move(block));
    return page;
}

Page combJarsPage(const Read& file, Day on) {
    Page page = roomPaper(file, benchSay("Comb jars"), dayText(on));
    addProjects(page, file, on);
    if (page.blocks.empty())
        page.blocks.emplace_back(waxLine(benchSay("Nothing is being built in jars.")));
    return page;
}

}  // namespace combwright
