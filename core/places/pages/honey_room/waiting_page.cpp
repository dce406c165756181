#include "core/places/pages/honey_room/waiting_page.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/model/season_info.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString waitSay(const char* text) { return QCoreApplication::translate("room", text); }

Cell waitCell(const QString& text, bool strong = false, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    cell.muted = muted;
    return cell;
}

TableRow waitingRow(const RoomBox& box, Day today) {
    TableRow row;
    const bool late = box.late(today);
    row.cells = {waitCell(box.peg ? QString::number(*box.peg) : QString(), true),
                 waitCell(fromUtf8(box.mark)),
                 waitCell(box.hive.empty() ? QStringLiteral("?") : fromUtf8(box.hive)),
                 waitCell(box.left() ? QString::number(*box.left()) : QStringLiteral("?")),
                 waitCell(box.off ? shortDayText(*box.off) : QString()),
                 waitCell(late ? untilText(box, today).toUpper() : untilText(box, today), late),
                 waitCell(box.off ? limitText(box.limit) : QString(), false, true)};
    return row;
}

}  // namespace

QString untilText(const RoomBox& box, Day today) {
    if (box.plannedFor)
        return waitSay("on its hive, to come %1").arg(shortDayText(*box.plannedFor));
    if (!box.off) return waitSay("nobody knows since when");
    if (!box.extractBy) return waitSay("no limit");
    if (*box.extractBy < today)
        return waitSay("overdue since %1").arg(shortDayText(*box.extractBy));
    if (*box.extractBy == today) return waitSay("today at the latest");
    return waitSay("extract by %1").arg(shortDayText(*box.extractBy));
}

Page waitingPage(const Read& file, const RoomBoxes& room, Day on) {
    Page page;
    page.title = waitSay("Waiting for the extractor");
    page.day = waitSay("for %1").arg(dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TextBlock summary;
    const auto waiting = std::count_if(room.waiting.begin(), room.waiting.end(),
                                       [](const RoomBox& box) { return !box.plannedFor; });
    QStringList sentences;
    const auto toCome = static_cast<qsizetype>(room.waiting.size()) - waiting;
    sentences << (waiting == 0   ? waitSay("No box waits.")
                  : waiting == 1 ? waitSay("1 box waits.")
                                 : waitSay("%1 boxes wait, oldest first.").arg(waiting));
    if (toCome > 0)
        sentences << (toCome == 1
                          ? waitSay("1 of the plan is still on its hive.")
                          : waitSay("%1 of the plan are still on their hives.").arg(toCome));
    for (const std::string& box : room.presumed)
        sentences << waitSay(
                         "Taken to be in the run, as a box without a tag: %1. Where it still "
                         "stands on its hive, bring it in.")
                         .arg(fromUtf8(box));
    if (room.late > 0)
        sentences << (room.late == 1
                          ? waitSay("1 is overdue: extract it first, and look for beetle larvae "
                                    "and honey that has set.")
                          : waitSay("%1 are overdue: extract them first, and look for beetle "
                                    "larvae and honey that has set.")
                                .arg(room.late));
    if (const QString later = toldByLaterText(file, on); !later.isEmpty()) sentences << later;
    summary.text = sentences.join(QLatin1Char(' '));
    summary.caution = room.late > 0;
    page.blocks.push_back(summary);
    TableBlock table;
    table.columns = {{waitSay("peg"), 0.6, true},          {waitSay("box"), 1.2, false},
                     {waitSay("hive"), 0.8, false},        {waitSay("frames"), 0.8, true},
                     {waitSay("waits since"), 1.2, false}, {waitSay("until"), 2.2, false},
                     {waitSay("because"), 2, false}};
    table.rowMm = 9;
    for (const RoomBox& box : room.waiting) table.rows.push_back(waitingRow(box, on));
    if (!table.rows.empty()) page.blocks.push_back(std::move(table));
    return page;
}

}  // namespace combwright
