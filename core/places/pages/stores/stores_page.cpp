#include "core/places/pages/stores/stores_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/model/season_info.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString storesSay(const char* text) { return QCoreApplication::translate("stores", text); }

Page storesHead(const Read& file, const QString& title, Day on) {
    Page page;
    page.title = title;
    page.day = storesSay("for %1").arg(dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

Cell storesCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell massCell(const std::optional<double>& grams, How how) {
    Cell cell;
    cell.text = grams ? massFigure(*grams, How::Weighed) : storesSay("?");
    if (grams) cell.how = how;
    return cell;
}

Cell blankCell() {
    Cell cell;
    cell.look = Cell::Look::Blank;
    return cell;
}

QString litresText(double litres) { return QLocale().toString(litres, 'f', 1); }

QString heftText(Heft heft) {
    switch (heft) {
        case Heft::Light:
            return storesSay("hefted light");
        case Heft::AllRight:
            return storesSay("hefted all right");
        case Heft::Heavy:
            return storesSay("hefted heavy");
    }
    return {};
}

QString hivesText(int many, const char* one, const char* several) {
    return storesSay(many == 1 ? one : several).arg(many);
}

TextBlock storesSummary(const Stores& stores) {
    QStringList sentences;
    int living = 0;
    for (const auto& [yard, rows] : stores.yards)
        for (const HiveStores& row : rows) living += row.lives;
    sentences << hivesText(living, "%1 hive lives.", "%1 hives live.");
    if (stores.runOut > 0)
        sentences << hivesText(stores.runOut, "%1 does not last to the first flow.",
                               "%1 do not last to the first flow.");
    if (stores.runOut == 0 && stores.lastsNotKnown > 0)
        sentences << storesSay("Whether %1 of them last to the first flow is not known.")
                         .arg(stores.lastsNotKnown);
    if (stores.notKnown > 0)
        sentences << hivesText(stores.notKnown, "The stores of %1 are not known.",
                               "The stores of %1 are not known.");
    if (stores.sugarG > 0)
        sentences << storesSay("What is known to lack takes %1 of sugar in all.")
                         .arg(massText(stores.sugarG, How::Weighed));
    for (const FeedShelfRow& each : stores.shelf) sentences << feedShelfText(each);
    TextBlock block;
    block.text = sentences.join(QLatin1Char(' '));
    return block;
}

void addRow(TableBlock& table, const HiveStores& row) {
    TableRow line;
    line.cells = {storesCell(fromUtf8(row.hive.mark.text()), true),
                  massCell(row.nowG, row.how),
                  storesCell(storesKnownText(row)),
                  storesCell(storesLastText(row), row.lasts == false),
                  storesCell(massFigure(row.needG, How::Weighed)),
                  storesCell(row.gapG ? massFigure(*row.gapG, How::Weighed) : QString())};
    table.rows.push_back(std::move(line));
}

TableBlock storesTable(const Yard& yard, const std::vector<HiveStores>& rows) {
    TableBlock table;
    table.title = fromUtf8(yard.name.text());
    table.columns = {{storesSay("hive"), 0.8, false},
                     {storesSay("stores, %1").arg(massUnit()), 1, true},
                     {storesSay("how that is known"), 3, false},
                     {storesSay("lasts"), 1.6, false},
                     {storesSay("for winter"), 0.9, true},
                     {storesSay("lacks"), 0.8, true}};
    for (const HiveStores& row : rows)
        if (row.lives) addRow(table, row);
    return table;
}

TextBlock pastBlock(const std::vector<MonthChange>& past) {
    TextBlock block;
    block.title = storesSay("What a month brought or took here in earlier years");
    QStringList lines;
    for (const MonthChange& each : past) lines << monthChangeText(each);
    if (past.empty())
        lines << storesSay(
            "Not known: no hive was weighed twice within 45 days in an earlier "
            "year");
    block.text = lines.join(QStringLiteral("; ")) + QLatin1Char('.');
    block.small = true;
    return block;
}

TextBlock storesCaution(const QString& text) {
    TextBlock caution;
    caution.caution = true;
    caution.text = text;
    return caution;
}

}  // namespace

QString storesKnownText(const HiveStores& row) {
    QString text;
    switch (row.from) {
        case StoresFrom::Weighed:
            text = storesSay("weighed %1").arg(shortDayText(*row.known));
            break;
        case StoresFrom::Frames:
            text =
                (*row.framesOfStores == 1 ? storesSay("%1 frame seen %2")
                                          : storesSay("%1 frames seen %2"))
                    .arg(QLocale().toString(*row.framesOfStores, 'g', 3), shortDayText(*row.known));
            break;
        case StoresFrom::Heft:
            text = storesSay("%1 %2").arg(heftText(*row.heft), shortDayText(*row.known));
            break;
        case StoresFrom::Nothing:
            text = storesSay("not known");
            break;
    }
    QStringList parts{text};
    if (row.from == StoresFrom::Weighed && row.scale) {
        if (row.scale->tare.from == TareFrom::Kinds)
            parts << storesSay("empty weight reckoned from its boxes");
        if (row.scale->tare.from == TareFrom::Hive) parts << storesSay("by its own empty weight");
    }
    if (row.tareWrong)
        parts << storesSay("weighed %1 it was lighter than its empty weight: put that right")
                     .arg(shortDayText(row.scale->weighing.on));
    if (row.oneSide)
        parts << storesSay("only one side weighed %1").arg(shortDayText(row.scale->weighing.on));
    if (row.scale && row.scale->grossG && !row.scale->netG)
        parts << storesSay(
                     "weighed %1, %2 in all; its empty weight is missing: say it, or which "
                     "boxes stand there")
                     .arg(shortDayText(row.scale->weighing.on),
                          massKnown(*row.scale->grossG, row.scale->how));
    if (row.supersHide)
        parts << storesSay(
                     row.scaledSupers == 1
                         ? "weighed %3, %1 with what is in its super: look into it to know the "
                           "nest"
                         : "weighed %3, %1 with what is in its %2 supers: look into them to know "
                           "the nest")
                     .replace(QLatin1String("%2"), QString::number(row.scaledSupers))
                     .replace(QLatin1String("%3"), shortDayText(row.scale->weighing.on))
                     .arg(massText(*row.withSupersG, row.scale->how));
    else if (row.withSupersG)
        parts
            << storesSay("%1 in the supers set apart").arg(massText(row.scaledSupersG, How::ByEye));
    if (row.takenSince)
        parts << storesSay("boxes were taken since it was weighed %1: weigh again")
                     .arg(shortDayText(row.scale->weighing.on));
    if (row.from != StoresFrom::Heft && row.heft && row.heftOn &&
        (!row.known || *row.heftOn > *row.known))
        parts << storesSay("%1 %2").arg(heftText(*row.heft), shortDayText(*row.heftOn));
    if (row.fedSince.sugarG > 0)
        parts << storesSay("%1 fed since").arg(massText(row.fedSince.sugarG, How::Weighed));
    if (row.fedSince.unknown > 0) parts << storesSay("fed since, nobody said how much");
    if (row.known && row.grams && !row.nowG) parts << storesSay("too long ago to go by");
    return parts.join(QStringLiteral("; "));
}

QString storesMissingText(const HiveStores& row) {
    if (row.supersHide) return storesSay("look into its supers first");
    if (row.scale && row.scale->grossG && !row.scale->netG)
        return storesSay("say its empty weight first");
    if (row.tareWrong) return storesSay("put its empty weight right first");
    return storesSay("weigh or look first");
}

QString storesLastText(const HiveStores& row) {
    if (row.runsOut) return storesSay("to %1").arg(shortDayText(*row.runsOut));
    if (row.lasts == true) return storesSay("to the first flow");
    return {};
}

QString toGiveText(const ToGive& give) {
    if (give.sugarG <= 0) return {};
    const QString sugar = massText(give.sugarG, How::Weighed);
    if (give.fondant)
        return give.packs ? storesSay(*give.packs == 1 ? "%1 pack of fondant, %2 of sugar in it"
                                                       : "%1 packs of fondant, %2 of sugar in them")
                                .arg(static_cast<qlonglong>(*give.packs))
                                .arg(sugar)
                          : storesSay("fondant with %1 of sugar in it").arg(sugar);
    QString text =
        storesSay("%1 of sugar in %2 l of water").arg(sugar, litresText(give.waterMl / 1000));
    if (give.litres) text += storesSay(", %1 l of syrup").arg(litresText(*give.litres));
    if (give.packs)
        text += storesSay(*give.packs == 1 ? ", %1 bag" : ", %1 bags")
                    .arg(static_cast<qlonglong>(*give.packs));
    return text;
}

QString feedShelfText(const FeedShelfRow& row) {
    const QString kind = word(Choices<FeedKind>::words[static_cast<std::size_t>(row.kind)]);
    if (row.leftG() < 0)
        return storesSay("Of %1 more was given than is written down: count it.").arg(kind);
    const QString left = massText(row.leftG(), row.how());
    QString text =
        row.counted
            ? storesSay("On the shelf %1 of %2, counted %3.")
                  .arg(left, kind, shortDayText(*row.counted))
            : storesSay("On the shelf %1 of %2, as bought less what was given.").arg(left, kind);
    if (row.givenUnknown > 0)
        text += QLatin1Char(' ') + storesSay("Less by what nobody weighed when it was given.");
    return text;
}

QString monthChangeText(const MonthChange& change) {
    const QString amount = massText(std::abs(change.gPerDay) * 30.0, How::Weighed);
    QString text = (change.gPerDay < 0 ? storesSay("%1 took %2 a hive in 30 days")
                                       : storesSay("%1 brought %2 a hive in 30 days"))
                       .arg(QLocale().monthName(static_cast<int>(change.month)), amount);
    text += storesSay(" (%1 pairs of weighings, %2 hives, %3 years")
                .arg(change.pairs)
                .arg(change.hives)
                .arg(change.years);
    if (change.spreadG)
        text += storesSay(", give or take %1").arg(massText(*change.spreadG * 30.0, How::Weighed));
    return text + QLatin1Char(')');
}

QString flowText(FlowState state) {
    switch (state) {
        case FlowState::Dearth:
            return storesSay("dearth");
        case FlowState::Steady:
            return storesSay("steady");
        case FlowState::Light:
            return storesSay("light flow");
        case FlowState::Good:
            return storesSay("good flow");
        case FlowState::Main:
            return storesSay("main flow");
    }
    return {};
}

Page storesPage(const Read& file, const Stores& stores) {
    Page page = storesHead(file, storesSay("Stores"), stores.on);
    page.blocks.emplace_back(storesSummary(stores));
    for (const auto& [yard, rows] : stores.yards)
        if (!rows.empty()) page.blocks.emplace_back(storesTable(yard, rows));
    page.blocks.emplace_back(storesCaution(
        storesSay("In the cold a cluster starves a hand's breadth from honey: look where the "
                  "stores are, not only how much. A full hive is not lifted by hand: one side at "
                  "a time with the scale, and two people for a box. ") +
        liftCaution()));
    page.blocks.emplace_back(pastBlock(stores.past));
    page.letters = lettersOf(page);
    return page;
}

Page feedingSheetPage(const Read& file, const Stores& stores) {
    Page page = storesHead(file, storesSay("Feeding sheet"), stores.on);
    page.blocks.emplace_back(storesSummary(stores));
    page.blocks.emplace_back(storesCaution(
        storesSay("Only with the supers off: what is fed ends up in them. In the evening, nothing "
                  "spilled, entrances small: open feed draws robbers. Ratios are by mass; never "
                  "brown or raw sugar, and no honey of unknown hives.")));
    for (const auto& [yard, rows] : stores.yards) {
        TableBlock table;
        table.title = fromUtf8(yard.name.text());
        table.columns = {{storesSay("hive"), 0.8, false},
                         {storesSay("stores, %1").arg(massUnit()), 0.9, true},
                         {storesSay("how that is known"), 2.2, false},
                         {storesSay("target"), 0.8, true},
                         {storesSay("to give"), 2.4, false},
                         {storesSay("given"), 1.3, false}};
        table.rowMm = 10;
        for (const HiveStores& row : rows) {
            if (!row.lives) continue;
            QString give = row.give                      ? toGiveText(*row.give)
                           : row.gapTo == GapTo::Nothing ? storesSay("nothing in the flow")
                           : row.gapG                    ? storesSay("enough")
                                                         : storesMissingText(row);
            if (row.supers + row.toPull > 0 && row.give) give += storesSay("; supers are on");
            TableRow line;
            line.cells = {storesCell(fromUtf8(row.hive.mark.text()), true),
                          massCell(row.forWinterG, row.how),
                          storesCell(storesKnownText(row)),
                          storesCell(massFigure(row.needG, How::Weighed)),
                          storesCell(give),
                          blankCell()};
            table.rows.push_back(std::move(line));
        }
        if (!table.rows.empty()) page.blocks.emplace_back(std::move(table));
    }
    page.letters = lettersOf(page);
    return page;
}

}  // namespace combwright
