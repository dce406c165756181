#include "core/places/pages/goods/fair_pages.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/places/pages/goods/goods_pages.h"
#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/money_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString fairSay(const char* text) { return QCoreApplication::translate("fair", text); }

Cell fairCell(const QString& text, bool strong = false, const QString& second = {}) {
    Cell cell;
    cell.text = text;
    cell.second = second;
    cell.strong = strong;
    return cell;
}

Cell toWrite() {
    Cell cell;
    cell.look = Cell::Look::Blank;
    return cell;
}

Cell fairCount(const std::optional<Count>& count) {
    return fairCell(count ? QString::number(count->value()) : QString());
}

QString beforeText(const FairRow& row) {
    if (!row.packedBefore) return {};
    return row.soldBefore
               ? fairSay("%1 packed, %2 sold").arg(*row.packedBefore).arg(*row.soldBefore)
               : fairSay("%1 packed").arg(*row.packedBefore);
}

QString fairKindName(const FairRow& row) { return fromUtf8(row.kind.name.text()); }

TableBlock packedTable(const FairSheet& sheet) {
    TableBlock table;
    table.title = fairSay("Packed");
    table.columns = {{fairSay("kind"), 2, false},   {fairSay("packed"), 0.8, true},
                     {fairSay("price"), 0.8, true}, {fairSay("last time"), 1.8, false},
                     {fairSay("home"), 0.9, false}, {fairSay("broken"), 0.9, false},
                     {fairSay("given"), 0.9, false}};
    table.rowMm = 10;
    for (const FairRow& row : sheet.rows) {
        TableRow line;
        line.cells = {fairCell(fairKindName(row), true, fromUtf8(row.code)),
                      fairCell(QString::number(row.line.packed.value()), true),
                      fairCell(row.line.each ? moneyFigure(*row.line.each) : QString()),
                      fairCell(beforeText(row)),
                      toWrite(),
                      toWrite(),
                      toWrite()};
        table.rows.push_back(std::move(line));
    }
    return table;
}

TableBlock soldTable(const FairSheet& sheet) {
    TableBlock table;
    table.title = fairSay("Sold");
    table.columns = {{fairSay("kind"), 2, false},     {fairSay("packed"), 0.8, true},
                     {fairSay("home"), 0.8, true},    {fairSay("broken"), 0.8, true},
                     {fairSay("given"), 0.8, true},   {fairSay("sold"), 0.8, true},
                     {fairSay("price"), 0.9, true},   {fairSay("takings"), 1, true},
                     {fairSay("to know"), 1.8, false}};
    for (const FairRow& row : sheet.rows) {
        QStringList about;
        if (row.ranOut) about << fairSay("ran out");
        if (const QString before = beforeText(row); !before.isEmpty())
            about << fairSay("last time %1").arg(before);
        TableRow line;
        line.cells = {fairCell(fairKindName(row), true, fromUtf8(row.code)),
                      fairCell(QString::number(row.line.packed.value())),
                      fairCount(row.line.home),
                      fairCount(row.line.broken),
                      fairCount(row.line.given),
                      fairCell(row.sold ? QString::number(*row.sold) : fairSay("?"), true),
                      fairCell(row.line.each ? moneyFigure(*row.line.each) : QString()),
                      fairCell(row.takings ? moneyFigure(*row.takings) : fairSay("?")),
                      fairCell(about.join(QStringLiteral("; ")))};
        table.rows.push_back(std::move(line));
    }
    return table;
}

}  // namespace

QString fairSoldText(const FairSheet& sheet) {
    if (!sheet.fair.closed)
        return fairSay("%1 packed; what came home is not counted").arg(sheet.packed);
    QString text =
        fairSay("%1 sold, %2").arg(sheet.sold).arg(moneyText(sheet.takings, sheet.currency));
    if (sheet.unpriced > 0)
        text += fairSay("; %1 of them without a price written down").arg(sheet.unpriced);
    return text;
}

QString fairCashText(const FairSheet& sheet) {
    if (!sheet.fair.closed) return {};
    if (!sheet.fair.cash) return fairSay("The cash box was not counted.");
    if (!sheet.fair.change)
        return fairSay("%1 in the cash box; what was in it in the morning is not known.")
            .arg(moneyText(*sheet.fair.cash, sheet.currency));
    const QString earned = fairSay("%1 in the cash box less %2 change: %3.")
                               .arg(moneyText(*sheet.fair.cash, sheet.currency),
                                    moneyText(*sheet.fair.change, sheet.currency),
                                    moneyText(*sheet.earned, sheet.currency));
    if (!sheet.difference) return earned;
    if (*sheet.difference == Money{}) return earned + fairSay(" That is what was sold.");
    const bool more = *sheet.difference > Money{};
    return earned +
           (more ? fairSay(" That is %1 more than what was sold.")
                 : fairSay(" That is %1 less than what was sold."))
               .arg(moneyText(more ? *sheet.difference : -*sheet.difference, sheet.currency));
}

Page fairPage(const Read& file, const FairSheet& sheet) {
    const QString name = fromUtf8(sheet.fair.name.text());
    Page page = roomPaper(file, sheet.fair.closed ? name : fairSay("Packing list: %1").arg(name),
                          dayText(sheet.fair.on));
    TextBlock head;
    QStringList lines;
    if (!sheet.fair.place.empty()) lines << fromUtf8(sheet.fair.place);
    lines << fairSoldText(sheet);
    if (const QString cash = fairCashText(sheet); !cash.isEmpty()) lines << cash;
    if (!sheet.fair.note.empty()) lines << fromUtf8(sheet.fair.note);
    head.text = lines.join(QLatin1Char('\n'));
    page.blocks.emplace_back(std::move(head));
    page.blocks.emplace_back(sheet.fair.closed ? soldTable(sheet) : packedTable(sheet));
    if (!sheet.fair.closed) {
        BlanksBlock cash;
        cash.framed = true;
        cash.labels = {
            sheet.fair.change
                ? fairSay("change %1, counted").arg(moneyText(*sheet.fair.change, sheet.currency))
                : fairSay("change in the morning"),
            fairSay("cash at night"), fairSay("wished for and not there")};
        page.blocks.emplace_back(std::move(cash));
    }
    page.blocks.emplace_back(infantCautionBlock());
    return page;
}

Page newestFairPage(const Read& file, Day on) {
    if (const auto fair = fairToShow(file)) return fairPage(file, fairSheet(file, *fair));
    Page page = roomPaper(file, fairSay("Packing list"), dayText(on));
    TextBlock none;
    none.text = fairSay("Nothing is packed for a fair yet.");
    page.blocks.emplace_back(none);
    return page;
}

Page fairCardsPage(const Read& file, const FairSheet& sheet) {
    Page page = roomPaper(file, fairSay("Price cards: %1").arg(fromUtf8(sheet.fair.name.text())),
                          dayText(sheet.fair.on));
    CardsBlock block;
    block.about = fairSay("cut along the dashes");
    block.across = 2;
    block.rowMm = 50;
    std::vector<std::pair<Id<GoodsKind>, Money>> shown;
    for (const FairRow& row : sheet.rows) {
        if (!row.line.each) continue;
        // Two fillings of a kind stand behind one card.
        const std::pair card{row.kind.id, *row.line.each};
        if (std::find(shown.begin(), shown.end(), card) != shown.end()) continue;
        shown.push_back(card);
        block.cards.push_back(priceCard(row.kind, *row.line.each, sheet.currency));
    }
    if (block.cards.empty()) {
        TextBlock none;
        none.text = fairSay("Nothing packed has a price written down.");
        page.blocks.emplace_back(none);
        return page;
    }
    page.blocks.emplace_back(std::move(block));
    return page;
}

}  // namespace combwright
