#include "core/places/pages/storeroom/stock_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/places/pages/storeroom/storeroom_words.h"
#include "core/places/storeroom/stack_words.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString stockWord(const char* text) { return QCoreApplication::translate("stock", text); }

Cell stockCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

Cell stockNumber(std::int64_t count) {
    return stockCell(QString::number(count), false, count == 0);
}

Cell stockNumber(const std::optional<std::int64_t>& count) {
    return count ? stockNumber(*count) : stockCell(QStringLiteral("?"), false, true);
}

TableBlock framesTable(const KindNames& names, const Stock& stock) {
    TableBlock table;
    table.title = stockWord("Frames, free to use next season");
    table.columns = {{stockWord("frame"), 3.2, false},     {stockWord("drawn"), 0.9, true},
                     {stockWord("foundation"), 1.2, true}, {stockWord("bare"), 0.8, true},
                     {stockWord("to repair"), 1.0, true},  {stockWord("held"), 0.8, true},
                     {stockWord("melt, burn"), 1.1, true}, {stockWord("comb ?"), 0.9, true},
                     {stockWord("in nests"), 0.9, true},   {stockWord("counted"), 1.4, true}};
    for (const FramesOfKind& each : stock.frameKinds) {
        TableRow row;
        row.cells.push_back(stockCell(names.frames(each.kind), true));
        for (const FrameUse use :
             {FrameUse::Drawn, FrameUse::Foundation, FrameUse::Bare, FrameUse::Repairable,
              FrameUse::Held, FrameUse::Lost, FrameUse::Unknown})
            row.cells.push_back(stockNumber(each.use[use]));
        row.cells.push_back(stockNumber(each.inNests));
        Cell counted =
            stockCell(stockWord("%1 of %2").arg(each.kept).arg(each.expected()), each.missing > 0);
        row.cells.push_back(counted);
        table.rows.push_back(row);
    }
    return table;
}

QString statesText(const FramesOfKind& kind) {
    QStringList parts;
    for (const auto& [letters, frames] : kind.state)
        if (!letters.empty()) parts << QStringLiteral("%1 %2").arg(frames).arg(fromUtf8(letters));
    return parts.join(QStringLiteral(", "));
}

TextBlock framesNotes(const KindNames& names, const Stock& stock) {
    QStringList lines;
    for (const FramesOfKind& each : stock.frameKinds) {
        const QString name = names.frames(each.kind);
        if (each.boxesNotCounted > 0)
            lines << stockWord(
                         "%1: nobody counted the frames of %2 boxes; what is in them is in "
                         "none of the figures.")
                         .arg(name)
                         .arg(each.boxesNotCounted);
        if (each.gone > 0)
            lines << stockWord("%1: %2 gone with their box.").arg(name).arg(each.gone);
        if (each.missing > 0) lines << stockWord("%1: %2 missing.").arg(name).arg(each.missing);
        if (each.lent > 0) lines << stockWord("%1: %2 lent.").arg(name).arg(each.lent);
        if (const QString states = statesText(each); !states.isEmpty())
            lines << stockWord("%1, by what was seen: %2.").arg(name, states);
        if (each.ever() != each.kept)
            lines << stockWord(
                         "%1: %2 entered = %3 kept + %4 melted + %5 burnt + %6 sold + %7 "
                         "missing + %8 gone.")
                         .arg(name)
                         .arg(each.ever())
                         .arg(each.kept)
                         .arg(each.melted)
                         .arg(each.burnt)
                         .arg(each.sold)
                         .arg(each.missing)
                         .arg(each.gone);
    }
    TextBlock block;
    block.text = lines.join(QLatin1Char('\n'));
    block.small = true;
    return block;
}

TableBlock boxesTable(const KindNames& names, const Stock& stock) {
    TableBlock table;
    table.title = stockWord("Boxes");
    table.columns = {{stockWord("box"), 3.0, false},      {stockWord("usable"), 0.9, true},
                     {stockWord("sound"), 0.8, true},     {stockWord("to scrape"), 1.0, true},
                     {stockWord("to repair"), 1.0, true}, {stockWord("to paint"), 0.9, true},
                     {stockWord("held"), 0.7, true},      {stockWord("lent"), 0.7, true},
                     {stockWord("freezer"), 0.9, true},   {stockWord("on hives"), 1.6, false},
                     {stockWord("in all"), 0.8, true}};
    for (const BoxStock& each : stock.boxKinds) {
        TableRow row;
        row.cells.push_back(stockCell(names.box(kindText(each.kind.name.text())), true));
        for (const std::int64_t count : {each.usable, each.sound, each.toScrape, each.needRepair,
                                         each.wantPaint, each.held, each.lent, each.inFreezer})
            row.cells.push_back(stockNumber(count));
        QStringList on;
        if (each.inNests > 0) on << stockWord("%1 nest").arg(each.inNests);
        if (each.supersOn > 0) on << stockWord("%1 super").arg(each.supersOn);
        if (each.onEmptyHives > 0) on << stockWord("%1 empty").arg(each.onEmptyHives);
        row.cells.push_back(stockCell(on.join(QStringLiteral(", "))));
        row.cells.push_back(stockNumber(each.about));
        table.rows.push_back(row);
    }
    return table;
}

TableBlock equipmentTable(const Read& file, const KindNames& names, const Stock& stock) {
    TableBlock table;
    table.title = stockWord("Other equipment");
    table.columns = {{stockWord("item"), 3.4, false},  {stockWord("on hand"), 1.2, true},
                     {stockWord("in use"), 0.9, true}, {stockWord("empty hives"), 1.2, true},
                     {stockWord("held"), 0.7, true},   {stockWord("in repair"), 1.0, true},
                     {stockWord("lent"), 0.7, true},   {stockWord("last counted"), 1.8, false}};
    for (const EquipmentStock& each : stock.equipment) {
        const bool onHives =
            each.inUse.value_or(0) + each.onEmptyHives.value_or(0) + each.held.value_or(0) > 0;
        if (each.kinds.empty() && !onHives) continue;
        TableRow row;
        QString name = itemText(each.item);
        if (each.kinds.size() == 1)
            name = names.item(each.item, each.kinds.front().name,
                              file.find(each.kinds.front().frameKind));
        row.cells.push_back(stockCell(name, true));
        row.cells.push_back(stockNumber(each.onHand));
        row.cells.push_back(stockNumber(each.inUse));
        row.cells.push_back(stockNumber(each.onEmptyHives));
        row.cells.push_back(stockNumber(each.held));
        row.cells.push_back(stockNumber(each.inRepair));
        row.cells.push_back(stockNumber(each.lent));
        row.cells.push_back(
            stockCell(each.counted ? dayText(*each.counted) : stockWord("not counted"), false,
                      !each.counted));
        table.rows.push_back(row);
    }
    return table;
}

TableBlock stacksTable(const std::vector<BoxStack>& stacks) {
    TableBlock table;
    table.title = stockWord("Stacks, and what they weigh");
    table.columns = {{stockWord("where"), 2.0, false},
                     {stockWord("boxes"), 0.8, true},
                     {stockWord("weighs"), 2.6, false},
                     {stockWord("heaviest now"), 1.8, false},
                     {stockWord("a full one"), 1.4, false}};
    for (const BoxStack& each : stacks) {
        TableRow row;
        row.cells.push_back(stockCell(stackText(each), true));
        row.cells.push_back(stockNumber(static_cast<std::int64_t>(each.boxes.size())));
        row.cells.push_back(stockCell(stackMassText(each)));
        row.cells.push_back(stockCell(heaviestNowText(each)));
        row.cells.push_back(stockCell(heaviestFullText(each)));
        table.rows.push_back(row);
    }
    return table;
}

}  // namespace

Page stockPage(const Read& file, const Stock& stock) {
    const KindNames names(file);
    Page page = storeroomPage(file, stockWord("What there is"), stock.on);
    if (!stock.frameKinds.empty()) {
        page.blocks.emplace_back(framesTable(names, stock));
        if (TextBlock notes = framesNotes(names, stock); !notes.text.isEmpty())
            page.blocks.emplace_back(std::move(notes));
    }
    if (!stock.boxKinds.empty()) page.blocks.emplace_back(boxesTable(names, stock));
    if (const TableBlock table = equipmentTable(file, names, stock); !table.rows.empty())
        page.blocks.emplace_back(table);
    if (const auto stacks = boxStacks(file, stock); !stacks.empty()) {
        page.blocks.emplace_back(stacksTable(stacks));
        QStringList cautions;
        for (const BoxStack& each : stacks)
            if (const QString caution = stackCaution(each); !caution.isEmpty()) cautions << caution;
        TextBlock lift;
        lift.text = cautions.join(QLatin1Char('\n'));
        if (!cautions.isEmpty()) page.blocks.emplace_back(lift);
    }
    TextBlock note;
    note.small = true;
    note.text = page.blocks.empty()
                    ? stockWord("Nothing is entered yet. Add boxes, or count what is in the shed.")
                    : stockWord(
                          "Usable: not held, not lent, in no living nest, whole. ? means "
                          "nobody counted; it is not 0.");
    page.blocks.emplace_back(note);
    return page;
}

Page stockTakePage(const Read& file, const Stock& stock) {
    const KindNames names(file);
    Page page = storeroomPage(file, stockWord("Stock-take"), stock.on);
    TextBlock how;
    how.text = stockWord(
        "Count what lies in the shed, not what is on hives. Leave a line empty where you did not "
        "look; write 0 where there is none. Where there are fewer than last time, say why.");
    page.blocks.emplace_back(how);
    TableBlock table;
    table.columns = {{stockWord("item"), 3.4, false},
                     {stockWord("on hives"), 0.8, true},
                     {{}, 0.2, false},
                     {stockWord("last time"), 1.7, false},
                     {stockWord("sound, in the shed"), 1.2, false},
                     {stockWord("in repair"), 1.0, false},
                     {stockWord("lent"), 1.0, false},
                     {stockWord("why fewer"), 2.1, false}};
    table.rowMm = 10;
    for (const StockTakeRow& each : stockTake(stock)) {
        TableRow row;
        row.cells.resize(8);
        row.cells[0] = stockCell(
            each.kind ? names.item(each.item, each.kind->name, file.find(each.kind->frameKind))
                      : itemText(each.item),
            true);
        row.cells[0].big = true;
        if (each.inUse) row.cells[1] = stockCell(QString::number(*each.inUse));
        if (each.kind && each.kind->onHand && each.counted) {
            row.cells[3] = stockCell(QString::number(each.kind->onHand->value()));
            row.cells[3].second = dayText(*each.counted);
        } else {
            row.cells[3] = stockCell(stockWord("not counted"), false, true);
        }
        for (std::size_t i = 4; i < 8; ++i) row.cells[i].look = Cell::Look::Blank;
        table.rows.push_back(row);
    }
    page.blocks.emplace_back(table);
    BlanksBlock entry;
    entry.labels = {stockWord("counted on"), stockWord("by"), stockWord("enter by"),
                    stockWord("entered on")};
    entry.framed = true;
    page.blocks.emplace_back(entry);
    return page;
}

}  // namespace combwright
