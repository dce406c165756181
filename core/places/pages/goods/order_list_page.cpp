#include "core/places/pages/goods/order_list_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/places/pages/storeroom/storeroom_words.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString orderWord(const char* text) { return QCoreApplication::translate("order_list", text); }

Cell orderCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

QString startsBig(QString words) {
    if (!words.isEmpty()) words.front() = words.front().toUpper();
    return words;
}

QString boxUse(const BoxNeed& need) {
    return need.supers && need.brood ? orderWord("supers and splits")
           : need.supers             ? orderWord("supers")
                                     : orderWord("splits");
}

TableRow needRow(const QString& name, const Shortage& line, const QString& about) {
    TableRow row;
    row.cells = {orderCell(name, true),
                 orderCell(QString::number(line.need)),
                 orderCell(QString::number(line.there)),
                 orderCell(QString::number(line.inRepair)),
                 orderCell(shortText(line, false)),
                 orderCell(shortText(line, true), true),
                 Cell{},
                 orderCell(about)};
    return row;
}

QString boxesName(const KindNames& names, const BoxKind& kind) {
    return orderWord("%1 boxes").arg(names.box(kindText(kind.name.text())));
}

TableBlock needsTable(const KindNames& names, const NextSeason& next) {
    TableBlock table;
    table.title = orderWord("Needed and there");
    table.columns = {{orderWord("what"), 2.6, false},
                     {orderWord("needed"), 1.0, true},
                     {orderWord("there"), 0.8, true},
                     {orderWord("in repair"), 0.8, true},
                     {orderWord("short now"), 1.3, true},
                     {orderWord("after repairs"), 1.5, true},
                     {{}, 0.2, false},
                     {orderWord("of it"), 3.8, false}};
    for (const BoxNeed& each : next.boxes) {
        QStringList about{boxUse(each)};
        if (each.toScrape > 0) about << orderWord("%1 to scrape").arg(each.toScrape);
        if (each.held > 0) about << orderWord("%1 held").arg(each.held);
        table.rows.push_back(
            needRow(boxesName(names, each.kind), each.boxes, about.join(QStringLiteral(", "))));
    }
    for (const FrameNeed& each : next.frames) {
        QStringList about;
        if (const QString uses = usesOnPaper(each.use); !uses.isEmpty()) about << uses;
        if (each.boxesNotCounted > 0)
            about << orderWord("%1 boxes not counted").arg(each.boxesNotCounted);
        table.rows.push_back(
            needRow(names.frames(each.kind), each.frames, about.join(QStringLiteral("; "))));
    }
    for (const ItemNeed& each : next.pieces) {
        QStringList about;
        if (each.inUse.value_or(0) > 0) about << orderWord("%1 on hives").arg(*each.inUse);
        if (each.held.value_or(0) > 0) about << orderWord("%1 held").arg(*each.held);
        if (!each.pieces.known) about << orderWord("shed not counted");
        table.rows.push_back(
            needRow(itemText(each.plan.item), each.pieces, about.join(QStringLiteral(", "))));
    }
    return table;
}

void addOrder(TableBlock& table, const QString& what, const QString& pieces,
              const std::optional<std::int64_t>& pack, const std::optional<std::int64_t>& packs) {
    TableRow row;
    row.cells.resize(6);
    row.cells[0] = orderCell(what, true);
    row.cells[1] = orderCell(pieces, true);
    row.cells[0].big = row.cells[1].big = true;
    if (pack && packs) row.cells[2] = orderCell(QStringLiteral("%1 × %2").arg(*packs).arg(*pack));
    row.cells[4].look = row.cells[5].look = Cell::Look::Blank;
    table.rows.push_back(row);
}

TableBlock orderTable(const KindNames& names, const NextSeason& next) {
    TableBlock table;
    table.title = orderWord("To order, after repairs");
    table.columns = {{orderWord("what"), 3.9, false},     {orderWord("pieces"), 1.6, true},
                     {orderWord("packs"), 1.0, true},     {{}, 0.2, false},
                     {orderWord("supplier"), 2.8, false}, {orderWord("price"), 1.3, false}};
    table.rowMm = 9;
    for (const BoxNeed& each : next.boxes)
        if (each.boxes.afterRepairsAtMost > 0)
            addOrder(table, boxesName(names, each.kind), shortText(each.boxes, true), {}, {});
    for (const FrameNeed& each : next.frames) {
        const QString name = names.frames(each.kind);
        if (each.frames.afterRepairsAtMost > 0)
            addOrder(table, name, shortText(each.frames, true), each.pack, each.packs);
        if (each.sheetsToBuy > 0)
            addOrder(table, orderWord("foundation, %1").arg(name),
                     each.sheetsThere && each.frames.known
                         ? QString::number(each.sheetsToBuy)
                         : orderWord("at most %1").arg(each.sheetsToBuy),
                     each.sheetPack, each.sheetPacks);
    }
    for (const ItemNeed& each : next.pieces)
        if (each.pieces.afterRepairsAtMost > 0) {
            const auto pack =
                each.plan.pack ? std::optional(each.plan.pack->value()) : std::nullopt;
            addOrder(table, itemText(each.plan.item), shortText(each.pieces, true), pack,
                     each.packs);
        }
    return table;
}

QString cullText(const KindNames& names, const CombCull& cull) {
    QStringList years;
    for (const CullYear& each : cull.years)
        if (each.takeOut > 0)
            years << (each.drawnYear
                          ? orderWord("%1 of %2").arg(each.takeOut).arg(*each.drawnYear)
                          : orderWord("%1 whose year nobody wrote down: choose by what is seen")
                                .arg(each.takeOut));
    return orderWord("%1: %2 of %3 brood combs a year, the oldest first: %4.")
        .arg(startsBig(names.frames(cull.kind)))
        .arg(cull.target)
        .arg(cull.combs)
        .arg(years.join(QStringLiteral(", ")));
}

QString sparedText(const CombSpared& spared) {
    QString text =
        orderWord(
            "%1 drawn combs on the shelf hold about %2 of wax. To build it anew bees would "
            "eat about %3 of honey, between %4 and %5; less in a flow, less on foundation. "
            "Whitcomb 1946: 8.4 of honey for 1 of wax, 6 to 13 elsewhere.")
            .arg(spared.combs)
            .arg(massText(spared.waxG, How::Weighed), massText(spared.honeyG.likely, How::Assumed),
                 massFigure(spared.honeyG.low, How::Assumed),
                 massFigure(spared.honeyG.high, How::Assumed));
    if (spared.combsWithoutSize > 0)
        text += QLatin1Char(' ') +
                orderWord("%1 more are of a kind nobody measured.").arg(spared.combsWithoutSize);
    return text;
}

TextBlock orderText(const QString& title, const QString& text, bool small = false) {
    TextBlock block;
    block.title = title;
    block.text = text;
    block.small = small;
    return block;
}

}  // namespace

Page orderListPage(const Read& file, const NextSeason& next) {
    const KindNames names(file);
    Page page = storeroomPage(file, orderWord("Order list for %1").arg(next.year), next.on);
    for (const PlanGap gap : next.gaps)
        page.blocks.emplace_back(orderText({}, gapText(gap, next.year)));
    if (next.plan) {
        page.blocks.emplace_back(orderText(
            {}, orderWord("For %1 colonies (%2) and %3 splits.")
                    .arg(next.colonies)
                    .arg(next.coloniesPlanned ? orderWord("planned") : orderWord("as live now"))
                    .arg(next.splits)));
        if (const TableBlock order = orderTable(names, next); !order.rows.empty())
            page.blocks.emplace_back(order);
        else if (next.gaps.empty())
            page.blocks.emplace_back(orderText({}, orderWord("Nothing is short.")));
        if (const TableBlock needs = needsTable(names, next); !needs.rows.empty())
            page.blocks.emplace_back(needs);
    }
    if (next.cull)
        page.blocks.emplace_back(
            orderText(orderWord("Old comb to take out"), cullText(names, *next.cull)));
    if (next.spared && next.spared->combs > 0)
        page.blocks.emplace_back(
            orderText(orderWord("What the comb is worth"), sparedText(*next.spared)));
    return page;
}

}  // namespace combwright
