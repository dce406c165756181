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

}  // namespace

Page loadsPage(const Read& file, const LoadSheet& sheet, Day on) {
    QStringList runs;
    for (const std::string& run : sheet.runs) runs << fromUtf8(run);
    Page page =
        pageFor(file, harvestWord("Extractor loads"), harvestWord("for %1").arg(dayText(on)));
    TextBlock head;
    head.text = harvestWord(
                    "%1 loads of %2 slots for %3; %4 if lots are mixed. Slot 1 at the mark, then "
                    "as the clock goes.")
                    .arg(sheet.loads.size())
                    .arg(sheet.slotCount)
                    .arg(runs.join(QStringLiteral(", ")))
                    .arg(sheet.loadsIfMixed);
    page.blocks.push_back(head);
    TextBlock caution;
    caution.caution = true;
    caution.text = harvestWord(
                       "Lid shut while it turns, hands and sleeves away from the drum, start slow. "
                       "Hot knife: set "
                       "it "
                       "down where nobody reaches. Wet floors are slippery. Over %1 lift with two.")
                       .arg(liftLimitText());
    page.blocks.push_back(caution);
    TableBlock table;
    table.columns = {{harvestWord("load"), 0.6, true},          {harvestWord("lot"), 1, false},
                     {harvestWord("frames by slot"), 6, false}, {harvestWord("off, g"), 0.8, true},
                     {harvestWord("may be, g"), 0.9, true},     {harvestWord("ran"), 1.2, false}};
    table.rowMm = 11;
    int number = 0;
    for (const SheetLoad& load : sheet.loads) {
        QStringList places;
        for (std::size_t slot = 0; slot < load.places.size(); ++slot)
            places << QStringLiteral("%1 %2").arg(slot + 1).arg(
                load.places[slot] ? fromUtf8(load.places[slot]->box) : QStringLiteral("–"));
        TableRow row;
        Cell frames = words(places.mid(0, places.size() / 2).join(QStringLiteral("  ")));
        frames.second = places.mid(places.size() / 2).join(QStringLiteral("  "));
        Cell off = words(QString::number(std::lround(load.offset.largerG())));
        off.how = How::ByEye;
        row.cells = {words(QString::number(++number), true),
                     words(fromUtf8(load.lot)),
                     frames,
                     off,
                     words(QString::number(std::lround(load.offset.largerG() + load.doubtG))),
                     words({})};
        table.rows.push_back(row);
    }
    page.blocks.push_back(table);
    page.letters = lettersOf(page);
    return page;
}

Page runBalancePage(const Read& file, const RunBalance& balance, Day printed) {
    Page page = pageFor(file, harvestWord("Run %1").arg(fromUtf8(balance.run.name.text())),
                        harvestWord("printed %1").arg(dayText(printed)));
    if (balance.revised) page.title += harvestWord(" (revised)");
    TableBlock table;
    table.columns = {{harvestWord("hive"), 1, false},
                     {massUnit(), 1, true},
                     {harvestWord("at closing"), 1, true}};
    for (const RunShare& share : balance.shares) {
        TableRow row;
        row.cells = {words(share.hive ? fromUtf8(share.mark) : harvestWord("hive not known"), true),
                     massCell(share.mass, share.how),
                     share.atClosing ? massCell(share.atClosing, share.how) : words({})};
        table.rows.push_back(row);
    }
    TableRow sum;
    sum.below = Rule::Double;
    sum.cells = {words(harvestWord("in the buckets"), true),
                 massCell(balance.buckets, balance.bucketsHow, true), words({})};
    table.rows.push_back(sum);
    page.blocks.push_back(table);
    TextBlock missing;
    missing.text = balance.unaccountedG
                       ? harvestWord("Out of the boxes %1; missing %2.")
                             .arg(massText(balance.outOfBoxesG.value_or(0), How::Weighed),
                                  massText(*balance.unaccountedG, How::Weighed))
                       : harvestWord("What is missing is not known.");
    page.blocks.push_back(missing);
    page.letters = lettersOf(page);
    return page;
}

}  // namespace combwright
