#include "core/places/pages/pull_list_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/model/season_info.h"
#include "core/places/pages/yard_sheet_page.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString pullWord(const char* text) { return QCoreApplication::translate("pull", text); }

Cell plainCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

QString verdictText(const PullBoxRow& row) {
    switch (row.verdict) {
        case PullVerdict::Take:
            return pullWord("take");
        case PullVerdict::Leave:
            return pullWord("leave");
        case PullVerdict::LookFirst:
            return pullWord("look first");
    }
    return {};
}

TableRow rowFor(const PullHiveRow& hive, const PullBoxRow& row, bool first) {
    TableRow line;
    line.cells.push_back(plainCell(first ? fromUtf8(hive.hive.mark.text()) : QString(), true));
    line.cells.push_back(plainCell(boxName(row.box)));
    line.cells.push_back(plainCell(verdictText(row), row.verdict == PullVerdict::Take));
    Cell honey =
        plainCell(row.honey ? massFigure(row.honey->grams, row.honey->how) : QStringLiteral("?"));
    if (row.honey) honey.how = row.honey->how;
    line.cells.push_back(honey);
    QStringList why;
    if (row.forced) why << pullWord("your own decision");
    if (row.why && !row.forced) why << whyLeftText(*row.why);
    const QString seen = boxLookText(row);
    if (!seen.isEmpty()) why << seen;
    line.cells.push_back(plainCell(why.join(QStringLiteral("; "))));
    Cell room;
    room.look = Cell::Look::Text;
    line.cells.push_back(room);
    return line;
}

}  // namespace

QString boxName(const Box& box) {
    return box.mark.empty() ? pullWord("no mark") : fromUtf8(box.mark);
}

QString boxLookText(const PullBoxRow& row) {
    if (!row.look) return {};
    QStringList parts;
    if (row.look->cappedFrames)
        parts
            << pullWord("%1 of %2 capped").arg(framesText(*row.look->cappedFrames)).arg(row.frames);
    if (row.look->filled && row.look->filled->value)
        parts << pullWord("%1 % full")
                     .arg(QLocale().toString(row.look->filled->value->value() * 100, 'f', 0));
    if (row.look->water)
        parts << pullWord("%1 % water").arg(QLocale().toString(row.look->water->percent(), 'f', 1));
    parts << dayAndMonth(row.look->on);
    return parts.join(QStringLiteral(", "));
}

QString whyLeftText(WhyLeft why) {
    switch (why) {
        case WhyLeft::Held:
            return pullWord("held back");
        case WhyLeft::Brood:
            return pullWord("brood in it");
        case WhyLeft::CappingNotKnown:
            return pullWord("capping not known");
        case WhyLeft::WaterNotKnown:
            return pullWord("water not known");
        case WhyLeft::TooWet:
            return pullWord("too wet");
        case WhyLeft::NotCappedEnough:
            return pullWord("not capped enough");
        case WhyLeft::MassNotKnown:
            return pullWord("weight not known");
        case WhyLeft::LookFirst:
            return pullWord("not looked into lately");
        case WhyLeft::HiveNeedsIt:
            return pullWord("the hive needs it");
        case WhyLeft::NothingInIt:
            return pullWord("nothing in it");
        case WhyLeft::LimitOnFrames:
            return pullWord("over the limit of frames");
        case WhyLeft::LimitOnMass:
            return pullWord("over what you will carry");
        case WhyLeft::LimitOnBoxes:
            return pullWord("over the limit of boxes");
        case WhyLeft::LimitOnBoards:
            return pullWord("no clearer board left");
    }
    return {};
}

Page pullListPage(const Read& file, const PullSheet& sheet, Day forDay) {
    Page page;
    page.title = pullWord("Pull list");
    page.day = pullWord("for %1").arg(dayText(forDay));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TextBlock summary;
    QStringList boards;
    for (const std::string& hive : sheet.boardsFor) boards << fromUtf8(hive);
    summary.text = pullWord(
                       "%1 boxes with about %2 of honey, give or take %3; as of %4. What the "
                       "bees bring or eat until then is not in it.")
                       .arg(sheet.taken)
                       .arg(massText(sheet.honey.grams, How::ByEye),
                            massFigure(sheet.honey.spreadG, How::ByEye), dayText(sheet.on));
    if (!boards.isEmpty())
        summary.text += QLatin1Char(' ') + pullWord("Clearer boards one or two days before: %1.")
                                               .arg(boards.join(QStringLiteral(", ")));
    page.blocks.push_back(summary);
    TextBlock caution;
    caution.caution = true;
    caution.text = liftCaution() + QLatin1Char(' ') +
                   pullWord(
                       "Cover boxes at once, leave nothing open: robbing starts within the hour. "
                       "Boxes that were on while a medicine was in the hive stay off the list; "
                       "the label decides.");
    page.blocks.push_back(caution);
    for (const PullYardRow& yard : sheet.yards) {
        TableBlock table;
        table.title = pullWord("%1: %2 to take, about %3")
                          .arg(fromUtf8(yard.yard.name.text()))
                          .arg(yard.taken)
                          .arg(massText(yard.honeyG, How::ByEye));
        table.columns = {{pullWord("hive"), 1, false},
                         {pullWord("box"), 1.1, false},
                         {pullWord("do"), 1.2, false},
                         {massUnit(), 0.7, true},
                         {pullWord("why, what was seen"), 4, false},
                         {pullWord("peg, notes"), 2, false}};
        table.rowMm = 8;
        for (const PullHiveRow& hive : yard.hives) {
            bool first = true;
            for (const PullBoxRow& box : hive.boxes) {
                table.rows.push_back(rowFor(hive, box, first));
                first = false;
            }
            if (hive.shortG > 0) {
                TableRow line;
                line.cells = {
                    plainCell({}), plainCell({}), plainCell({}), plainCell({}),
                    plainCell(pullWord("%1 keeps %2 of %3: feed %4")
                                  .arg(fromUtf8(hive.hive.mark.text()),
                                       massFigure(hive.remainingG.value_or(0), How::ByEye),
                                       massText(hive.needG, How::ByEye),
                                       massFigure(hive.shortG, How::ByEye)))};
                table.rows.push_back(line);
            }
        }
        if (!table.rows.empty()) page.blocks.push_back(table);
    }
    BlanksBlock blanks;
    blanks.labels = {pullWord("boxes brought"), pullWord("began"), pullWord("ended"),
                     pullWord("by")};
    blanks.framed = true;
    page.blocks.push_back(blanks);
    page.letters = lettersOf(page);
    return page;
}

}  // namespace combwright
