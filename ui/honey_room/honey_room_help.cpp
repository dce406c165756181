// F1 at the day's extracting.
#include "core/places/pages/honey_room/day_log_page.h"
#include "ui/common/help_groups.h"
#include "ui/honey_room/honey_room_place.h"

#include <QCoreApplication>

namespace combwright {

QString HoneyRoomPlace::helpOfExtracting() const {
    std::vector<HelpGroup> groups;
    HelpGroup safe{tr("Safety, once a day"), {}};
    for (const QString& each : roomSafety()) safe.lines.push_back({{}, each});
    safe.lines.push_back(
        {{},
         tr("Start slow. The allowed offset is advice from a balance grade, not a safety "
            "certificate: the machine's own manual decides.")});
    groups.push_back(std::move(safe));
    groups.push_back(
        {tr("Boxes, by the number pad"),
         {{QStringLiteral("14 ↵ 21.4 ↵"),
           tr("the box on peg 14 and what it weighs: full first, wet when it is spun out")},
          {QStringLiteral("14 ↵ 21.4/17.2 ↵"), tr("with the water of its tag, %")},
          {QStringLiteral("↵"), tr("while a weight is asked: it stays unknown")},
          {QStringLiteral(". ↵"), tr("while a number is asked: it is not kept")},
          {QStringLiteral("0 ↵"), tr("a box without a peg")},
          {{}, tr("The first box of a yard opens its lot by itself.")}}});
    groups.push_back(
        {tr("Extractor and gate"),
         {{QStringLiteral("↵"), tr("on the empty line: starts the spin clock, and quiets it")},
          {QStringLiteral("+"), tr("the load was spun and ran smooth")},
          {QStringLiteral("−"), tr("it walked; − again: it was stopped")},
          {QStringLiteral("/ ↵"), tr("the gate is open; between two lots: drum, gate and strainer "
                                     "are run empty")},
          {QStringLiteral("// 3 2 1 ↵"),
           tr("frames as they felt, heavy, middling, light; or h m l")},
          {QStringLiteral("*"), tr("one frame set aside; then the peg of its box, and why")}}});
    groups.push_back({tr("Buckets"),
                      {{QStringLiteral("/3 ↵ 13.0 ↵ 17.2 ↵"), tr("bucket 3, honey and water")},
                       {QStringLiteral("/0 ↵ 11 ↵"), tr("the cappings tub")},
                       {QStringLiteral("/00 ↵ 0.4 ↵"), tr("scrapings")}}});
    groups.push_back(
        {tr("The day"),
         {{QStringLiteral(". or ⌫"), tr("on the empty line: takes the last entry back")},
          {QStringLiteral("00 ↵"), tr("closes the cautions for the day")},
          {QStringLiteral("000 ↵"), tr("shows the next open run")},
          {QStringLiteral("0000 ↵"),
           tr("the log of the day, and how warm and damp the room is; also Ctrl+L")},
          {QStringLiteral("+"), tr("when nothing is left to spin: what became of frames set aside, "
                                   "then whether the day is closed; + again closes it")},
          {tr("Ctrl+↵"), tr("one form with all weights of the day, which closes it. "
                            "What nobody weighed may stay empty; one box can be found "
                            "by difference, with nothing weighed all is by eye")}}});
    // Typed words, in the language one types.
    const QString spun = QCoreApplication::translate("combwright::RoomEntry", "spun");
    const QString open =
        QCoreApplication::translate("room_line", "open") + QStringLiteral(" 27-3 Creek");
    groups.push_back(
        {tr("By letters"),
         {{QStringLiteral("M07 21.4"), tr("or M07 wet 5.2 · M07 21.4 17.2 % · M07 water 17.2 · "
                                          "M07 ? · ~21 by eye")},
          {QStringLiteral("tag lost 19.5"), tr("then tag lost frames 9, tag lost hive H2")},
          {QStringLiteral("B3 13.0 17.2"), tr("or B3 half · B3 60 % · B3 lid")},
          {QStringLiteral("cappings 11"), tr("or scrapings 0.4")},
          {spun, tr("or walked, stopped; Ctrl+Space: it ran smooth")},
          {open, tr("a run is honey handled together: one lot")}}});
    groups.push_back(
        {tr("Going about"),
         {{tr("Page Up, Page Down"), tr("scroll the room, from the line")},
          {tr("Up, Down"), tr("choose a box; without pegs a bare number is what it weighs")},
          {tr("among the boxes"), tr("W wet, F full, T a table, Delete takes a box out")},
          {tr("in the extractor"),
           tr("arrows go round the slots, Space takes a frame up and puts it down, R puts all "
              "back, L leaves a frame out, A adds an empty one, Page Up and Page Down show other "
              "loads")},
          {tr("in the balance"), tr("Up, Down; Enter on the line without a tag names its hive")}}});
    return helpOf(groups);
}

}  // namespace combwright
