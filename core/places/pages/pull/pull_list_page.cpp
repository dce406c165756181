#include "core/places/pages/pull/pull_list_page.h"

#include <QCoreApplication>
#include <QStringList>
#include <functional>

#include "core/model/season_info.h"
#include "core/places/pages/pull/pull_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString pullWord(const char* text) { return QCoreApplication::translate("pull", text); }

Cell plainCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

Cell figureCell(const std::optional<Reckoned>& figure, bool muted) {
    Cell cell = plainCell(figure ? massFigure(figure->grams, figure->how) : QStringLiteral("?"),
                          false, muted);
    if (figure) cell.how = figure->how;
    return cell;
}

/// What the box is called and where in the stack it stands, the one painted over and the other
/// seen.
Cell boxCell(const PullHiveRow& hive, const PullBoxRow& row, bool strong) {
    Cell cell = plainCell(boxName(row.box), strong);
    cell.second = placeInStack(hive, row);
    return cell;
}

/// A box that has its peg and is off: nothing is to be done with it any more.
TableRow broughtRow(const PullHiveRow& hive, const BroughtBox& row, bool first) {
    TableRow line;
    line.cells.resize(8);
    line.cells[0] = plainCell(first ? fromUtf8(hive.hive.mark.text()) : QString(), true);
    line.cells[1] = plainCell(row.box ? boxName(*row.box) : pullWord("a box of it"));
    line.cells[2] = plainCell(pullWord("brought"));
    line.cells[5] = plainCell(pullWord("off since %1").arg(shortDayText(row.peg.on)), false, true);
    line.cells[6] = plainCell(QString::number(row.peg.number.value()), true);
    return line;
}

/// The reason first, then what was seen; where nothing needs saying, only what was seen.
Cell whyCell(const PullHiveRow& hive, const PullBoxRow& row, bool loud) {
    QStringList why;
    if (const QString reason = reasonText(hive, row); !reason.isEmpty()) why << reason;
    if (row.verdict == PullVerdict::Take && row.overLift) why << pullWord("lift with two");
    const QString seen = boxLookText(row);
    if (why.isEmpty()) return plainCell(seen);
    Cell cell = plainCell(why.join(QStringLiteral("; ")), row.hold.has_value(), !loud);
    cell.second = seen;
    return cell;
}

TableRow rowFor(const PullHiveRow& hive, const PullBoxRow& row, bool first) {
    const bool take = row.verdict == PullVerdict::Take;
    const bool loud = take || row.refused();
    TableRow line;
    line.cells.push_back(plainCell(first ? fromUtf8(hive.hive.mark.text()) : QString(), true));
    line.cells.push_back(boxCell(hive, row, take));
    line.cells.push_back(plainCell(
        row.refused() && !take ? verdictText(row).toUpper() : verdictText(row), loud, !loud));
    line.cells.push_back(figureCell(row.honey, !take));
    line.cells.push_back(figureCell(row.gross, !take));
    line.cells.push_back(whyCell(hive, row, loud));
    // A peg is clipped to what is brought; what stays gets none.
    line.cells.push_back(
        plainCell(row.peg ? QString::number(*row.peg) : QStringLiteral("–"), take, !take));
    line.cells.push_back(plainCell(take ? QString() : QStringLiteral("–"), false, true));
    return line;
}

TableRow hungryRow(const PullHiveRow& hive) {
    TableRow line;
    line.cells.resize(8);
    line.cells[5] =
        plainCell(pullWord("%1 keeps %2 of %3: feed %4")
                      .arg(fromUtf8(hive.hive.mark.text()),
                           massFigure(hive.remainingG.value_or(0), How::ByEye),
                           massText(hive.needG, How::ByEye), massFigure(hive.shortG, How::ByEye)));
    return line;
}

TableRow totalRow(const PullYardRow& yard) {
    Reckoned honey{yard.honeyG, 0, How::ByEye};
    Reckoned gross{0, 0, How::Assumed};
    bool known = yard.taken > 0;
    for (const PullHiveRow& hive : yard.hives)
        for (const PullBoxRow& box : hive.boxes) {
            if (box.verdict != PullVerdict::Take) continue;
            gross.grams += box.gross ? box.gross->grams : 0;
            known = known && box.gross.has_value();
        }
    TableRow line;
    line.cells.resize(8);
    line.cells[1] = plainCell(boxesCounted(yard.taken), true);
    line.cells[2] = plainCell(pullWord("in all"), true);
    line.cells[3] = figureCell(honey, false);
    line.cells[4] = figureCell(known ? std::optional(gross) : std::nullopt, false);
    line.cells[5] = plainCell(yard.loads > 0 ? pullWord("%1, %2").arg(loadsCounted(yard.loads),
                                                                      bucketsCounted(yard.buckets))
                                             : QString());
    line.below = Rule::Double;
    return line;
}

TableBlock yardTable(const PullYardRow& yard) {
    TableBlock table;
    table.title = pullWord("%1: %2 to take, about %3")
                      .arg(fromUtf8(yard.yard.name.text()))
                      .arg(yard.taken)
                      .arg(massText(yard.honeyG, How::ByEye));
    table.columns = {{pullWord("hive"), 0.8, false},
                     {pullWord("box"), 1.5, false},
                     {pullWord("do"), 1.1, false},
                     {pullWord("honey %1").arg(massUnit()), 0.9, true},
                     {pullWord("lift %1").arg(massUnit()), 0.9, true},
                     {pullWord("why, what was seen"), 3.6, false},
                     {pullWord("peg"), 0.6, true},
                     {pullWord("moisture"), 1.0, false}};
    table.rowMm = 7.6;
    for (const PullHiveRow& hive : yard.hives) {
        bool first = true;
        for (const BroughtBox& box : hive.brought) {
            table.rows.push_back(broughtRow(hive, box, first));
            first = false;
        }
        for (const PullBoxRow& box : hive.boxes) {
            table.rows.push_back(rowFor(hive, box, first));
            first = false;
        }
        if (hive.shortG > 0 && !hive.boxes.empty()) table.rows.push_back(hungryRow(hive));
    }
    if (!table.rows.empty()) table.rows.back().below = Rule::Ink;
    if (!table.rows.empty()) table.rows.push_back(totalRow(yard));
    return table;
}

/// What is said of each box that is taken, where there is anything to say.
QStringList ofTaken(const PullSheet& sheet,
                    const std::function<QString(const PullHiveRow&, const PullBoxRow&)>& say) {
    QStringList all;
    for (const PullYardRow& yard : sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& row : hive.boxes) {
                if (row.verdict != PullVerdict::Take) continue;
                if (const QString said = say(hive, row); !said.isEmpty()) all << said;
            }
    return all;
}

/// Although it was held back, with the keeper's reason in full.
QString takenAnyway(const PullHiveRow& hive, const PullBoxRow& row) {
    if (!row.hold) return {};
    return pullWord("%1 on %2 is taken although it is held back, %3. Reason: %4.")
        .arg(boxName(row.box), fromUtf8(hive.hive.mark.text()), holdText(*row.hold),
             fromUtf8(row.reason));
}

/// Although its hive was fed while it was on.
QString takenFed(const PullHiveRow& hive, const PullBoxRow& row) {
    if (!row.fedOn) return {};
    return pullWord(
               "%1 on %2 was on when sugar was given on %3: what was fed ends up in it. Keep its "
               "honey for the bees.")
        .arg(boxName(row.box), fromUtf8(hive.hive.mark.text()), dayAndMonth(*row.fedOn));
}

TextBlock summaryOf(const PullSheet& sheet) {
    TextBlock summary;
    QStringList sentences;
    sentences << pullWord(
                     "%1 with about %2 of honey, give or take %3; as of %4. What the bees "
                     "bring or eat until then is not in it.")
                     .arg(boxesCounted(sheet.taken), massText(sheet.honey.grams, How::ByEye),
                          massFigure(sheet.honey.spreadG, How::ByEye), dayText(sheet.on));
    if (sheet.gross.grams > 0)
        sentences << pullWord("To carry about %1 with the boxes.")
                         .arg(massText(sheet.gross.grams, How::Assumed));
    if (sheet.day && sheet.taken > 0)
        sentences << pullWord("%1, %2 in the honey room, %3 with spare.")
                         .arg(loadsCounted(sheet.day->loads), hoursText(sheet.day->dayMin),
                              bucketsCounted(sheet.day->bucketsWithSpare));
    if (sheet.boardsIn && sheet.rounds.size() > 1)
        sentences << pullWord("Clearer boards: %1").arg(boardsText(sheet));
    else if (sheet.boardsIn && !sheet.boardsFor.empty())
        sentences << pullWord("Clearer boards in on %1 at dusk: %2")
                         .arg(shortDayText(*sheet.boardsIn), boardsText(sheet));
    else if (!sheet.brush.empty())
        sentences << boardsText(sheet);
    summary.text = sentences.join(QLatin1Char(' '));
    return summary;
}

}  // namespace

Page pullListPage(const Read& file, const PullSheet& sheet) {
    Page page;
    page.title = pullWord("Pull list");
    page.day = pullWord("for %1").arg(dayText(sheet.asked.forDay));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    page.blocks.push_back(summaryOf(sheet));
    TextBlock caution;
    caution.caution = true;
    QStringList cautions;
    if (sheet.overLift > 0) cautions << liftCaution();
    cautions << pullWord(
        "Cover boxes at once, leave nothing open: robbing starts within the hour. Boxes that were "
        "on while a medicine was in the hive stay off the list where its label, as you wrote it "
        "down, does not allow it; the label decides.");
    cautions << ofTaken(sheet, &takenAnyway) << ofTaken(sheet, &takenFed);
    caution.text = cautions.join(QLatin1Char(' '));
    page.blocks.push_back(caution);
    for (const PullYardRow& yard : sheet.yards)
        if (TableBlock table = yardTable(yard); !table.rows.empty())
            page.blocks.push_back(std::move(table));
    if (sheet.taken > 0) {
        TextBlock pegs;
        pegs.small = true;
        pegs.text = pullWord(
            "Pegs: the next free numbers as one walks, from the top of each hive. Clip one to each "
            "box as it leaves its hive; where you clip another, write that number beside it. It "
            "stays on until the box is weighed wet.");
        page.blocks.push_back(pegs);
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
