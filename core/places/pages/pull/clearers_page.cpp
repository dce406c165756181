#include "core/places/pages/pull/clearers_page.h"

#include <QCoreApplication>

#include "core/model/season_info.h"
#include "core/places/pages/pull/pull_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString clearPageSay(const char* text) { return QCoreApplication::translate("pull", text); }

Cell clearPageCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

TableBlock boardsInTable(const Clearers& boards) {
    TableBlock table;
    table.title = clearPageSay("Boards that are in");
    table.columns = {{clearPageSay("yard"), 1.2, false},
                     {clearPageSay("hive"), 0.8, false},
                     {clearPageSay("until"), 3, false},
                     {clearPageSay("boxes to bring"), 1.4, false},
                     {clearPageSay("taken out"), 1.2, false}};
    table.rowMm = 9;
    for (const ClearerIn& each : boards.in) {
        TableRow row;
        row.cells = {
            clearPageCell(fromUtf8(each.yard)), clearPageCell(fromUtf8(each.hive), true),
            clearPageCell(boardInText(each), each.state != ClearerIn::State::Clearing),
            clearPageCell(each.boxes > 0 ? boxesCounted(each.boxes) : clearPageSay("none left")),
            Cell{}};
        row.cells.back().look = Cell::Look::Blank;
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock boardsNeededTable(const Clearers& boards) {
    TableBlock table;
    table.title = clearPageSay("Hives of the plan without one");
    table.columns = {{clearPageSay("yard"), 1.2, false},
                     {clearPageSay("hive"), 0.8, false},
                     {clearPageSay("boxes to bring"), 1.4, false},
                     {clearPageSay("round"), 0.8, false},
                     {clearPageSay("put in"), 1.2, false}};
    table.rowMm = 9;
    for (const ClearerNeed& each : boards.need) {
        QString round = clearPageSay("brush");
        for (std::size_t i = 0; i < boards.rounds.size(); ++i)
            for (const std::string& hive : boards.rounds[i].hives)
                if (hive == each.mark) round = QString::number(i + 1);
        TableRow row;
        row.cells = {clearPageCell(fromUtf8(each.yard)), clearPageCell(fromUtf8(each.mark), true),
                     clearPageCell(boxesCounted(each.boxes)), clearPageCell(round), Cell{}};
        row.cells.back().look = Cell::Look::Blank;
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace

QString boardInText(const ClearerIn& board) {
    switch (board.state) {
        case ClearerIn::State::Clearing:
            return clearPageSay("in since %1: out by %2")
                .arg(shortDayText(board.board.on), shortDayText(board.outBy));
        case ClearerIn::State::Due:
            return clearPageSay("in since %1: out today at the latest")
                .arg(shortDayText(board.board.on));
        case ClearerIn::State::Overdue:
            return clearPageSay(
                       "in since %1: should have been out %2, look whether bees went back up")
                .arg(shortDayText(board.board.on), shortDayText(board.outBy));
    }
    return {};
}

QStringList roundTexts(const std::vector<ClearerRound>& rounds) {
    QStringList texts;
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        QStringList hives;
        for (const std::string& hive : rounds[i].hives) hives << fromUtf8(hive);
        texts << clearPageSay("Round %1 in %2 at dusk, pulled %3: %4.")
                     .arg(QString::number(i + 1), shortDayText(rounds[i].in),
                          shortDayText(rounds[i].out), hives.join(QLatin1Char(' ')));
    }
    return texts;
}

QString boardsCountedText(const Clearers& boards) {
    const auto in = static_cast<qlonglong>(boards.in.size());
    if (!boards.owned)
        return clearPageSay("%1 in; nobody counted the boards, count them in the storeroom")
            .arg(in);
    return clearPageSay("%1, %2 in, %3 free")
        .arg(boardsCounted(*boards.owned))
        .arg(in)
        .arg(*boards.free());
}

Page clearersPage(const Read& file, const Clearers& boards, Day on) {
    Page page;
    page.title = clearPageSay("Clearer boards");
    page.day = clearPageSay("for %1").arg(dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TextBlock summary;
    QStringList sentences{boardsCountedText(boards) + QLatin1Char('.')};
    if (boards.in.empty() && boards.need.empty())
        sentences << (boards.plan
                          ? clearPageSay("No box of the plan is left on its hive.")
                          : clearPageSay("No pull plan is kept: keep one, then it says which "
                                         "hives need a board."));
    if (!boards.need.empty()) {
        sentences << roundTexts(boards.rounds);
        if (boards.rounds.empty()) sentences << clearPageSay("There is no board: brush the boxes.");
    }
    summary.text = sentences.join(QLatin1Char(' '));
    page.blocks.push_back(summary);
    TextBlock caution;
    caution.caution = true;
    caution.text =
        clearPageSay(
            "A board clears a super that is tight for bees and holds no brood; above gaps it is "
            "robbed. Out within %1 days: longer and the bees find their way back up.")
            .arg(boards.outByDays);
    page.blocks.push_back(caution);
    if (!boards.in.empty()) page.blocks.push_back(boardsInTable(boards));
    if (!boards.need.empty()) page.blocks.push_back(boardsNeededTable(boards));
    return page;
}

}  // namespace combwright
