#include "core/places/pages/goods/goods_pages.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <functional>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/figures.h"
#include "core/words/money_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString goodsSay(const char* text) { return QCoreApplication::translate("goods", text); }

QString manyText(std::int64_t many) { return QString::number(many); }

Cell goodsCell(const QString& text, bool strong = false, const QString& second = {}) {
    Cell cell;
    cell.text = text;
    cell.second = second;
    cell.strong = strong;
    return cell;
}

Cell moneyCell(const std::optional<Money>& money) {
    return goodsCell(money ? moneyFigure(*money) : goodsSay("?"));
}

/// "12 sold"; nothing for none.
void addStory(QStringList& parts, std::int64_t many, const char* text) {
    if (many != 0) parts << goodsSay(text).arg(many);
}

std::int64_t outBy(const GoodsShelf& shelf, OutHow how) {
    return shelf.out[static_cast<std::size_t>(how)];
}

QString priceHead(const std::string& currency) {
    return currency.empty() ? goodsSay("price") : goodsSay("price, %1").arg(fromUtf8(currency));
}

QString takingsHead(const std::string& currency) {
    return currency.empty() ? goodsSay("takings") : goodsSay("takings, %1").arg(fromUtf8(currency));
}

QString netText(const GoodsKind& kind) {
    return kind.net ? shownPortion(static_cast<double>(kind.net->grams())).text() : QString();
}

TableBlock shelfTable(const GoodsStock& stock) {
    TableBlock table;
    table.title = goodsSay("On the shelf");
    table.columns = {{goodsSay("kind"), 2, false},
                     {goodsSay("there"), 0.7, true},
                     {goodsSay("at a fair"), 0.8, true},
                     {priceHead(stock.currency), 0.9, true},
                     {goodsSay("what became of them"), 4, false}};
    for (const GoodsShelf& each : stock.shelves) {
        TableRow row;
        row.cells = {goodsCell(fromUtf8(each.kind.name.text()), true, netText(each.kind)),
                     goodsCell(each.written ? manyText(each.left) : goodsSay("?"), true),
                     goodsCell(each.atFair > 0 ? manyText(each.atFair) : QString()),
                     goodsCell(each.kind.price ? moneyFigure(*each.kind.price) : QString()),
                     goodsCell(goodsStoryText(each))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

QString holdsText(const std::vector<Hold>& holds) {
    QStringList parts;
    for (const Hold& each : holds)
        parts << goodsSay("held since %1 (%2)").arg(shortDayText(each.since), word(word(each.why)));
    return parts.join(QStringLiteral("; "));
}

QString goodsTreatedText(const TreatedShare& treated) {
    if (!treated.any()) return {};
    if (treated.all()) return goodsSay("treated while on");
    return goodsSay("perhaps treated while on: %1 of %2 boxes").arg(treated.boxes).arg(treated.of);
}

TableBlock fillingTable(const GoodsStock& stock) {
    TableBlock table;
    table.title = goodsSay("Fillings, the newest first");
    table.columns = {{goodsSay("code"), 1.4, false},   {goodsSay("filled"), 1, false},
                     {goodsSay("out of"), 1.8, false}, {goodsSay("jars"), 1.6, false},
                     {goodsSay("left"), 0.8, true},    {goodsSay("to know"), 3, false}};
    for (const FillingSheet& sheet : stock.fillings) {
        bool first = true;
        for (const FilledJars& jars : sheet.jars) {
            const QString best =
                sheet.bottling.bestBefore
                    ? goodsSay("best before %1").arg(dayText(*sheet.bottling.bestBefore))
                    : QString();
            QStringList about;
            if (first)
                if (const QString said = fillingToKnowText(sheet); !said.isEmpty()) about << said;
            if (const QString judged = netJudgedText(jars); !judged.isEmpty()) about << judged;
            TableRow row;
            row.cells = {
                first ? goodsCell(fromUtf8(sheet.bottling.code.text()), true, best) : Cell{},
                first ? goodsCell(shortDayText(sheet.bottling.on, stock.on)) : Cell{},
                first ? goodsCell(fromUtf8(sheet.from), false, fillingDrawnText(sheet)) : Cell{},
                goodsCell(goodsSay("%1 × %2")
                              .arg(jars.line.count.value())
                              .arg(fromUtf8(jars.kind.name.text()))),
                goodsCell(fillingLeftText(jars.left), true),
                goodsCell(about.join(QStringLiteral("; ")))};
            table.rows.push_back(std::move(row));
            first = false;
        }
    }
    return table;
}

TextBlock packingBlock(const GoodsStock& stock) {
    TextBlock block;
    block.title = goodsSay("Empty jars and lids");
    QStringList lines;
    for (const PackingShelf& each : stock.packing) lines << packingText(each);
    block.text = lines.join(QLatin1Char('\n'));
    return block;
}

std::vector<Cell> totalsCells(const QString& name, const OutTotals& out) {
    const auto figure = [](std::int64_t many) {
        return goodsCell(many != 0 ? manyText(many) : QString());
    };
    QString takings = moneyFigure(out.takings);
    if (out.unpriced > 0) takings += goodsSay(" + %1 without a price").arg(out.unpriced);
    return {goodsCell(name, true), figure(out.sold),     figure(out.given), figure(out.kept),
            figure(out.broken),    figure(out.cameBack), goodsCell(takings)};
}

TableBlock totalsTable(const QString& title, const QString& head, const std::string& currency) {
    TableBlock table;
    table.title = title;
    table.columns = {{head, 2.4, false},
                     {goodsSay("sold"), 0.7, true},
                     {goodsSay("given"), 0.7, true},
                     {goodsSay("kept"), 0.7, true},
                     {goodsSay("broken"), 0.8, true},
                     {goodsSay("came back"), 1, true},
                     {takingsHead(currency), 2, true}};
    return table;
}

TextBlock bulkBlock(const QString& title, const BulkTotals& bulk, const std::string& sign,
                    const std::function<QString(Mass)>& mass) {
    TextBlock block;
    block.title = title;
    QStringList parts;
    if (bulk.sold > Mass{}) parts << goodsSay("%1 sold").arg(mass(bulk.sold));
    if (bulk.given > Mass{}) parts << goodsSay("%1 given").arg(mass(bulk.given));
    if (bulk.kept > Mass{}) parts << goodsSay("%1 kept").arg(mass(bulk.kept));
    if (bulk.broken > Mass{}) parts << goodsSay("%1 spilled").arg(mass(bulk.broken));
    if (bulk.cameBack > Mass{}) parts << goodsSay("%1 came back").arg(mass(bulk.cameBack));
    QString text = parts.join(QStringLiteral(", "));
    text += goodsSay("; takings %1").arg(moneyText(bulk.takings, sign));
    if (bulk.unpriced > 0)
        text += goodsSay(", %1 sold without a price written down").arg(bulk.unpriced);
    block.text = text + QLatin1Char('.');
    return block;
}

/// Honey in bulk, wax and propolis, each where any of it went.
void addBulk(Page& page, const Sales& sales) {
    const std::string& sign = sales.currency;
    const auto kilos = [](Mass mass) {
        return massText(static_cast<double>(mass.grams()), How::Weighed);
    };
    if (sales.bulk.any)
        page.blocks.emplace_back(bulkBlock(goodsSay("Honey in bulk"), sales.bulk, sign, kilos));
    if (sales.wax.any)
        page.blocks.emplace_back(bulkBlock(goodsSay("Wax"), sales.wax, sign, &massToTheGram));
    if (sales.propolis.any)
        page.blocks.emplace_back(
            bulkBlock(goodsSay("Propolis"), sales.propolis, sign, &massToTheGram));
}

TextBlock wishesBlock(const Sales& sales) {
    TextBlock block;
    block.title = goodsSay("For next year: what ran out");
    QStringList lines;
    for (const Wish& each : sales.wishes)
        lines << goodsSay("%1: all %2 sold at %3 on %4; more were perhaps wanted")
                     .arg(fromUtf8(each.kind.name.text()))
                     .arg(each.sold)
                     .arg(fromUtf8(each.fair.name.text()), shortDayText(each.fair.on));
    for (const KindTotals& each : sales.kinds)
        if (each.ranOut)
            lines << goodsSay("%1: none on the shelf since %2")
                         .arg(fromUtf8(each.kind.name.text()), shortDayText(*each.ranOut));
    if (lines.isEmpty()) lines << goodsSay("Nothing ran out.");
    block.text = lines.join(QLatin1Char('\n'));
    return block;
}

TableBlock fairsTable(const Sales& sales) {
    TableBlock table;
    table.title = goodsSay("Fairs");
    table.columns = {{goodsSay("fair"), 2, false},
                     {goodsSay("day"), 1.2, false},
                     {goodsSay("packed"), 0.8, true},
                     {goodsSay("sold"), 0.8, true},
                     {takingsHead(sales.currency), 1.2, true},
                     {goodsSay("cash less change"), 1.3, true},
                     {goodsSay("difference"), 1.2, true}};
    for (const FairSheet& each : sales.fairs) {
        TableRow row;
        row.cells = {goodsCell(fromUtf8(each.fair.name.text()), true),
                     goodsCell(shortDayText(each.fair.on)),
                     goodsCell(manyText(each.packed)),
                     goodsCell(manyText(each.sold)),
                     goodsCell(moneyFigure(each.takings)),
                     moneyCell(each.earned),
                     moneyCell(each.difference)};
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace

QString goodsStoryText(const GoodsShelf& shelf) {
    QStringList parts;
    addStory(parts, shelf.filled, "%1 filled");
    addStory(parts, outBy(shelf, OutHow::Sold) + shelf.soldAtFairs, "%1 sold");
    addStory(parts, outBy(shelf, OutHow::Given) + shelf.givenAtFairs, "%1 given");
    addStory(parts, outBy(shelf, OutHow::Kept), "%1 kept");
    addStory(parts, outBy(shelf, OutHow::Broken) + shelf.brokenAtFairs, "%1 broken");
    addStory(parts, outBy(shelf, OutHow::CameBack), "%1 came back");
    if (shelf.corrected > 0)
        addStory(parts, shelf.corrected,
                 shelf.filled > 0 ? "%1 more found when counted" : "%1 by count");
    if (shelf.corrected < 0) addStory(parts, -shelf.corrected, "%1 missing when counted");
    if (shelf.counted) parts << goodsSay("counted %1").arg(shortDayText(*shelf.counted));
    if (shelf.ofNoFilling > 0 && shelf.filled > 0)
        addStory(parts, shelf.ofNoFilling, "%1 of no known filling");
    if (shelf.seconds > 0) addStory(parts, shelf.seconds, "beside them %1 seconds, not for sale");
    if (!shelf.written) parts << goodsSay("nothing written down");
    return parts.join(QStringLiteral(", "));
}

QString fillingLeftText(const FillingLeft& left) {
    return left.least == left.most ? manyText(left.most)
                                   : goodsSay("%1 to %2").arg(left.least).arg(left.most);
}

QString fillingToKnowText(const FillingSheet& sheet) {
    QStringList parts;
    if (const QString held = holdsText(sheet.holds); !held.isEmpty()) parts << held;
    if (const QString treated = goodsTreatedText(sheet.treated); !treated.isEmpty())
        parts << treated;
    for (const Complaint& each : sheet.complaints)
        parts << (each.closed ? goodsSay("complaint %1, closed: %2")
                                    .arg(shortDayText(each.on), fromUtf8(each.became))
                              : goodsSay("complaint %1: %2")
                                    .arg(shortDayText(each.on), fromUtf8(each.what.text())));
    return parts.join(QStringLiteral("; "));
}

QString fillingDrawnText(const FillingSheet& sheet) {
    if (!sheet.drawn.mass) return goodsSay("how much honey is not known");
    // To the gram: a filling's honey is kept like money.
    const QString drawn =
        massToTheGram(*sheet.drawn.mass) + QLatin1Char(' ') + QLatin1Char(letter(sheet.drawn.how));
    if (sheet.drawn.lost == Mass{}) return goodsSay("%1 of honey").arg(drawn);
    return goodsSay("%1 of honey, %2 g of it not in jars")
        .arg(drawn, QString::number(sheet.drawn.lost.grams()));
}

QString netJudgedText(const FilledJars& jars) {
    if (!jars.meanHolds) return {};
    const QString weighed = goodsSay("%1 weighed, mean %2 g, lightest %3 g")
                                .arg(jars.line.weighed->value())
                                .arg(QLocale().toString(jars.line.mean->value(), 'f', 1))
                                .arg(jars.line.lightest->grams());
    QStringList parts{weighed};
    if (!*jars.meanHolds) parts << goodsSay("the mean is short of the label");
    if (jars.lightestFarShort == true)
        parts << goodsSay("the lightest lacks more than twice the %1 g it may (%2): not to be sold")
                     .arg(QLocale().toString(*jars.deficitG, 'g', 4), fromUtf8(jars.table));
    else if (jars.lightestShort == true)
        parts << goodsSay("the lightest lacks more than the %1 g it may (%2)")
                     .arg(QLocale().toString(*jars.deficitG, 'g', 4), fromUtf8(jars.table));
    if (!jars.deficitG) parts << goodsSay("what one jar may lack is not known here");
    return parts.join(QStringLiteral(", "));
}

QString packingText(const PackingShelf& shelf) {
    const QString what = shelf.kind ? goodsSay("empty %1").arg(fromUtf8(shelf.kind->name.text()))
                                    : goodsSay("lids %1").arg(fromUtf8(shelf.lid));
    if (shelf.left < 0)
        return goodsSay("%1: %2 more were used than are written down. Count them.")
            .arg(what)
            .arg(-shelf.left);
    return shelf.counted
               ? goodsSay("%1: %2, counted %3")
                     .arg(what, manyText(shelf.left), shortDayText(*shelf.counted))
               : goodsSay("%1: %2, as bought less what was used").arg(what, manyText(shelf.left));
}

Block infantCautionBlock() {
    TextBlock caution;
    caution.caution = true;
    caution.text = infantCaution();
    return caution;
}

Card priceCard(const GoodsKind& kind, Money price, const std::string& currency) {
    Card card;
    card.name = cardText(fromUtf8(kind.name.text()), PaperSize::Title, true);
    if (const QString net = netText(kind); !net.isEmpty()) card.about = {mutedText(net)};
    card.lines = {cardText(moneyText(price, currency), PaperSize::Poster, true)};
    const bool honey = kind.what == GoodsWhat::Jar || kind.what == GoodsWhat::Comb;
    if (honey) card.lines.push_back(mutedText(infantCaution(), PaperSize::Note));
    if (kind.what == GoodsWhat::Candle)
        card.lines.push_back(mutedText(
            goodsSay("Never leave a burning candle alone; on a plate, away from children."),
            PaperSize::Note));
    return card;
}

Page goodsStockPage(const Read& file, const GoodsStock& stock) {
    Page page =
        roomPaper(file, goodsSay("Jars and goods"), goodsSay("for %1").arg(dayText(stock.on)));
    if (stock.shelves.empty()) {
        TextBlock none;
        none.text = goodsSay("No kind of jar or candle is written down yet. Add one first.");
        page.blocks.emplace_back(none);
        return page;
    }
    page.blocks.emplace_back(shelfTable(stock));
    if (!stock.fillings.empty()) page.blocks.emplace_back(fillingTable(stock));
    if (!stock.packing.empty()) page.blocks.emplace_back(packingBlock(stock));
    page.blocks.emplace_back(infantCautionBlock());
    page.letters = lettersOf(page);
    return page;
}

Page priceListPage(const Read& file, const GoodsStock& stock) {
    Page page = roomPaper(file, goodsSay("Prices"), goodsSay("from %1").arg(dayText(stock.on)));
    TableBlock table;
    table.columns = {{goodsSay("what"), 3, false},
                     {goodsSay("holds"), 1.5, false},
                     {priceHead(stock.currency), 1.2, true}};
    table.rowMm = 12;
    for (const GoodsShelf& each : stock.shelves) {
        if (!each.kind.price) continue;
        TableRow row;
        row.cells = {goodsCell(fromUtf8(each.kind.name.text()), true),
                     goodsCell(netText(each.kind)), goodsCell(moneyFigure(*each.kind.price), true)};
        table.rows.push_back(std::move(row));
    }
    if (table.rows.empty()) {
        TextBlock none;
        none.text = goodsSay("No price is written down yet.");
        page.blocks.emplace_back(none);
    } else {
        page.blocks.emplace_back(std::move(table));
    }
    page.blocks.emplace_back(infantCautionBlock());
    return page;
}

Page priceCardsPage(const Read& file, const GoodsStock& stock) {
    Page page =
        roomPaper(file, goodsSay("Price cards"), goodsSay("printed %1").arg(dayText(stock.on)));
    CardsBlock block;
    block.about = goodsSay("cut along the dashes");
    block.across = 2;
    block.rowMm = 50;
    for (const GoodsShelf& each : stock.shelves)
        if (each.kind.price)
            block.cards.push_back(priceCard(each.kind, *each.kind.price, stock.currency));
    if (block.cards.empty()) {
        TextBlock none;
        none.text = goodsSay("No price is written down yet.");
        page.blocks.emplace_back(none);
        return page;
    }
    page.blocks.emplace_back(std::move(block));
    return page;
}

Page salesPage(const Read& file, const Sales& sales) {
    Page page = roomPaper(file, goodsSay("Out of the door %1").arg(sales.year),
                          goodsSay("up to %1").arg(dayText(sales.until)));
    if (!sales.all.any() && !sales.bulk.any && !sales.wax.any && !sales.propolis.any) {
        TextBlock none;
        none.text = goodsSay("Nothing went out by what is written down.");
        page.blocks.emplace_back(none);
        return page;
    }
    TableBlock kinds = totalsTable(goodsSay("By kind"), goodsSay("kind"), sales.currency);
    for (const KindTotals& each : sales.kinds) {
        TableRow row;
        row.cells = totalsCells(fromUtf8(each.kind.name.text()), each.out);
        kinds.rows.push_back(std::move(row));
    }
    TableRow sum;
    sum.cells = totalsCells(goodsSay("all"), sales.all);
    if (!kinds.rows.empty()) kinds.rows.back().below = Rule::Ink;
    kinds.rows.push_back(std::move(sum));
    page.blocks.emplace_back(std::move(kinds));
    TableBlock places = totalsTable(goodsSay("By place"), goodsSay("place"), sales.currency);
    for (const PlaceTotals& each : sales.places) {
        TableRow row;
        row.cells =
            totalsCells(each.place.empty() ? goodsSay("not said") : fromUtf8(each.place), each.out);
        places.rows.push_back(std::move(row));
    }
    page.blocks.emplace_back(std::move(places));
    TableBlock months = totalsTable(goodsSay("By month"), goodsSay("month"), sales.currency);
    for (const MonthTotals& each : sales.months) {
        TableRow row;
        row.cells =
            totalsCells(QLocale().standaloneMonthName(static_cast<int>(each.month)), each.out);
        months.rows.push_back(std::move(row));
    }
    page.blocks.emplace_back(std::move(months));
    addBulk(page, sales);
    if (!sales.fairs.empty()) page.blocks.emplace_back(fairsTable(sales));
    page.blocks.emplace_back(wishesBlock(sales));
    page.blocks.emplace_back(infantCautionBlock());
    return page;
}

}  // namespace combwright
