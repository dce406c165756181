#include "core/places/pages/pull/wets_home_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/model/season_info.h"
#include "core/places/pages/storeroom/freezer_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString wetSay(const char* text) { return QCoreApplication::translate("freezer", text); }

Cell wetCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

Page startPage(const Read& file, const QString& title, Day on) {
    Page page;
    page.title = title;
    page.day = wetSay("for %1").arg(dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

TextBlock cautionBlock(const QString& text) {
    TextBlock block;
    block.caution = true;
    block.text = text;
    return block;
}

TableBlock goTable(const WetsHome& home) {
    TableBlock table;
    table.columns = {{wetSay("hive"), 1, false},      {wetSay("box"), 1, false},
                     {wetSay("came off"), 1, false},  {wetSay("on at"), 1.2, false},
                     {wetSay("off again"), 2, false}, {wetSay("taken off"), 1.2, false}};
    table.rowMm = 9;
    std::string yard;
    std::string hive;
    for (const WetBox& box : home.go) {
        if (box.yard != yard || table.rows.empty()) {
            TableRow head;
            head.group = true;
            head.cells.resize(6);
            head.cells[0] = wetCell(fromUtf8(box.yard), true);
            head.cells[0].big = true;
            head.below = Rule::Ink;
            table.rows.push_back(std::move(head));
            yard = box.yard;
            hive.clear();
        }
        TableRow row;
        row.cells = {
            wetCell(box.hive == hive ? QString() : fromUtf8(box.hive), true),
            wetCell(fromUtf8(box.box.name)),
            wetCell(box.ownHive ? wetSay("the same") : fromUtf8(box.cameOff), false, box.ownHive),
            Cell{},
            wetCell(wetsOffText(home.offFrom, home.offTo)),
            Cell{}};
        row.cells[0].big = row.cells[1].big = true;
        row.cells[3].look = Cell::Look::Blank;
        row.cells[5].look = Cell::Look::Blank;
        table.rows.push_back(std::move(row));
        hive = box.hive;
    }
    return table;
}

TableBlock twoColumns(const QString& title, const QString& first, const QString& second) {
    TableBlock table;
    table.title = title;
    table.columns = {{first, 1.4, false}, {second, 6, false}};
    return table;
}

TableRow twoCells(const QString& first, const QString& second) {
    TableRow row;
    row.cells = {wetCell(first, true), wetCell(second)};
    return row;
}

TableBlock roundsTable(const QString& title, const FreezerPlan& plan) {
    TableBlock table;
    table.title = title;
    table.columns = {{wetSay("in"), 1.3, false},
                     {wetSay("out"), 1.3, false},
                     {wetSay("frames"), 0.8, true},
                     {wetSay("of box"), 5, false},
                     {wetSay("in at, out at"), 1.6, false}};
    table.rowMm = 9;
    for (const FreezerNext& each : plan.rounds) {
        TableRow row;
        row.cells = {wetCell(shortDayText(each.in), true), wetCell(shortDayText(each.out), true),
                     wetCell(QString::number(each.frames())), wetCell(freezerLoadsText(each.loads)),
                     Cell{}};
        row.cells[4].look = Cell::Look::Blank;
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace

Page wetsHomePage(const Read& file, const WetsHome& home) {
    Page page = startPage(file, wetSay("Wets home"), home.on);
    TextBlock summary;
    const auto many = static_cast<int>(home.go.size());
    summary.text = many == 0   ? wetSay("No wet box to give back.")
                   : many == 1 ? wetSay("1 box back to the bees to be cleaned.")
                               : wetSay("%1 boxes back to the bees to be cleaned.").arg(many);
    if (many > 0)
        summary.text += QLatin1Char(' ') + wetSay(
                                               "At most %1 on a hive. Then dry onto the stack, "
                                               "or into the freezer.")
                                               .arg(home.perHive);
    page.blocks.push_back(summary);
    page.blocks.push_back(cautionBlock(wetsCautions()));
    if (many > 0) page.blocks.push_back(goTable(home));
    if (!home.stay.empty()) {
        TableBlock table = twoColumns(wetSay("Not given to a hive"), wetSay("box"), wetSay("why"));
        for (const WetBox& box : home.stay)
            table.rows.push_back(twoCells(fromUtf8(box.box.name), wetsStayText(box)));
        page.blocks.push_back(std::move(table));
    }
    if (!home.out.empty()) {
        TableBlock table =
            twoColumns(wetSay("With the bees already"), wetSay("box"), wetSay("off again"));
        for (const WetsOut& out : home.out)
            table.rows.push_back(twoCells(
                fromUtf8(out.name),
                wetSay("on %1, %2: %3")
                        .arg(fromUtf8(out.hive), fromUtf8(out.yard),
                             wetsOffText(out.from, out.to)) +
                    (home.on > out.to ? QStringLiteral("; ") + wetSay("overdue") : QString())));
        page.blocks.push_back(std::move(table));
    }
    if (!home.leftOver.empty()) {
        TableBlock table =
            twoColumns(wetSay("Left-over stores"), wetSay("box"), wetSay("what to do"));
        for (const LeftOver& left : home.leftOver)
            table.rows.push_back(twoCells(fromUtf8(left.box.name), leftOverText(left)));
        page.blocks.push_back(std::move(table));
    }
    if (many > 0 || !home.out.empty()) {
        BlanksBlock entry;
        entry.labels = {wetSay("enter by"), wetSay("entered on")};
        entry.framed = true;
        page.blocks.emplace_back(entry);
    }
    return page;
}

Page freezerSlipPage(const Read& file, const FreezerLane& lane) {
    Page page = startPage(file, wetSay("Freezer"), lane.on);
    TextBlock summary;
    QStringList said;
    if (!lane.freezer)
        said << wetSay("No freezer is written down yet: enter it with the equipment.");
    else if (!lane.rooms.empty())
        said << wetSay("Holds %1.").arg(freezerRoomText(lane));
    for (const std::string& kind : lane.noRoomKnown)
        if (lane.freezer)
            said << wetSay(
                        "How many %1 fit, nobody knows: enter the freezer's litres or how many "
                        "frames it holds.")
                        .arg(fromUtf8(kind));
    said << (lane.waitingFrames() == 1 ? wetSay("%1 comb waits, %2.")
                                       : wetSay("%1 combs wait, %2."))
                .arg(lane.waitingFrames())
                .arg(freezerPlanText(lane.next));
    if (lane.shared)
        said << wetSay("If kinds share a round: %1.").arg(freezerPlanText(*lane.shared));
    if (const auto wet = framesIn(lane.dryFirst); wet > 0)
        said << wetSay("%1 are wet and dry first: %2.")
                    .arg(wet)
                    .arg(freezerLoadsText(lane.dryFirst));
    if (const auto held = framesIn(lane.held); held > 0)
        said << wetSay("%1 are held: in a round of their own, if at all.").arg(held);
    if (lane.superCombs > 0)
        said << wetSay("%1 white super combs need no freezer where they lie cold and light.")
                    .arg(lane.superCombs);
    summary.text = said.join(QLatin1Char(' '));
    page.blocks.push_back(summary);
    page.blocks.push_back(cautionBlock(freezerCautions()));
    if (!lane.in.empty() || !lane.done.empty()) {
        TableBlock table =
            twoColumns(wetSay("Rounds so far"), wetSay("round"), wetSay("how it stands"));
        for (const auto* list : {&lane.in, &lane.done})
            for (const FreezerRoundRow& row : *list) {
                TableRow cells = twoCells(shortDayText(row.round.in), freezerRoundText(row));
                cells.cells[1].second = freezerLoadsText(row.loads);
                table.rows.push_back(std::move(cells));
            }
        page.blocks.push_back(std::move(table));
    }
    if (!lane.next.rounds.empty())
        page.blocks.push_back(roundsTable(wetSay("Next rounds"), lane.next));
    if (lane.shared)
        page.blocks.push_back(roundsTable(wetSay("Next rounds, kinds sharing"), *lane.shared));
    return page;
}

}  // namespace combwright
