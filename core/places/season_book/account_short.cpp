// What is short for the spring that is planned for, beside the equipment of the year: each number
// with the boxes, frames and counts it rests on.
#include <QCoreApplication>
#include <algorithm>
#include <map>

#include "core/places/explain/explain_storeroom.h"
#include "core/places/season_book/account_sections.h"
#include "core/places/storeroom/needs.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString shortSay(const char* text, int count = -1) {
    return QCoreApplication::translate("account", text, nullptr, count);
}

QString whereBoxStands(const StockBox& box) {
    switch (box.stands) {
        case BoxStands::Super:
            return shortSay("a super on a hive");
        case BoxStands::EmptyHive:
            return shortSay("on an empty hive");
        case BoxStands::Freezer:
            return shortSay("in the freezer");
        case BoxStands::Nest:
        case BoxStands::Lent:
        case BoxStands::Store:
            break;
    }
    return box.box.stack.empty() ? shortSay("in the storeroom") : fromUtf8(box.box.stack);
}

QString boxMark(const Box& box) {
    return box.mark.empty() ? shortSay("no mark") : fromUtf8(box.mark);
}

/// The free boxes of a kind: what is there of what is needed.
std::vector<AccountRecord> boxRecords(const Stock& stock, Id<BoxKind> kind) {
    std::vector<AccountRecord> records;
    for (const StockBox& each : stock.boxes)
        if (each.isFree() && each.box.kind == kind)
            records.push_back({each.box.since, boxMark(each.box),
                               choiceText(word(each.box.condition)), whereBoxStands(each)});
    return records;
}

/// Frames of a kind box by box, then those lying loose.
std::vector<AccountRecord> frameRecords(const Stock& stock, const FrameKind& kind) {
    std::map<std::int64_t, std::int64_t> inBox;
    std::int64_t loose = 0;
    for (const Frame& frame : stock.frames) {
        if (frame.kind != kind.id) continue;
        if (frame.box)
            ++inBox[frame.box->number];
        else
            ++loose;
    }
    std::vector<AccountRecord> records;
    for (const StockBox& each : stock.boxes)
        if (const auto found = inBox.find(each.box.id.number);
            found != inBox.end() && each.isFree())
            records.push_back({each.box.since, boxMark(each.box), framesText(found->second, kind),
                               whereBoxStands(each)});
    if (loose > 0)
        records.push_back(
            {std::nullopt, shortSay("loose on a shelf"), framesText(loose, kind), {}});
    return records;
}

/// What was counted last of each kind of an item.
std::vector<AccountRecord> countRecords(const Read& file, const EquipmentStock& item, Day today) {
    std::vector<AccountRecord> records;
    for (const Equipment& kind : item.kinds) {
        const auto counts =
            file.where<EquipmentCount>({is("equipment", kind.id), isUpTo("on_day", today)});
        const auto newest = std::max_element(
            counts.begin(), counts.end(),
            [](const EquipmentCount& a, const EquipmentCount& b) { return a.on < b.on; });
        if (newest == counts.end()) continue;
        QString what = choiceText(word(kind.item));
        if (!kind.name.empty()) what += QStringLiteral(", ") + fromUtf8(kind.name);
        records.push_back({newest->on, what, shortSay("%1 in the shed").arg(newest->onHand.value()),
                           fromUtf8(newest->why)});
    }
    if (item.inUse && *item.inUse > 0)
        records.push_back({std::nullopt, shortSay("on hives"), QString::number(*item.inUse),
                           shortSay("counted from the hives that live")});
    return records;
}

AccountLine shortLine(const QString& name, const Shortage& line, std::vector<Explained> explained,
                      std::vector<AccountRecord> records) {
    AccountLine said;
    said.name = name;
    if (!explained.empty()) {
        said.figure = explained.front().answer;
        said.working = std::move(explained.front().working);
    }
    QStringList about{shortSay("needed %1, there %2").arg(line.need).arg(line.there)};
    if (line.inRepair > 0) about << shortSay("%n in repair", static_cast<int>(line.inRepair));
    if (line.inRepair > 0 && line.nowAtMost > line.afterRepairsAtMost)
        about << shortSay("%1 short until that is done").arg(line.nowAtMost);
    if (!line.known) about << shortSay("not all of it was counted");
    said.note = about.join(QStringLiteral(", "));
    said.records = std::move(records);
    return said;
}

}  // namespace

AccountSection shortSection(const Read& file, int year, Day today) {
    AccountSection section;
    section.id = QStringLiteral("short");
    const int planned = plannedYear(file, today);
    // The stock is only known as it stands: what was short for a spring gone by is not.
    if (planned < year || planned > year + 1) {
        section.title = shortSay("Short for spring %1").arg(year + 1);
        section.note = shortSay(
                           "Only what is short for spring %1 can be told, from the stock as it "
                           "stands: it is with the year %2.")
                           .arg(planned)
                           .arg(planned - 1);
        return section;
    }
    section.title = shortSay("Short for spring %1").arg(planned);
    const NextSeason next = nextSeason(file, today, planned);
    if (!next.plan) {
        section.note = shortSay(
                           "No plan for %1 is kept yet. Say in the storeroom (Ctrl+6) how many "
                           "colonies, splits and supers: what is short follows.")
                           .arg(planned);
        return section;
    }
    const Stock stock = stockOn(file, today);
    for (const BoxNeed& each : next.boxes)
        if (each.boxes.afterRepairsAtMost > 0 || each.boxes.nowAtMost > 0)
            section.lines.push_back(
                shortLine(shortSay("%1 boxes").arg(kindText(each.kind.name.text())), each.boxes,
                          explainBoxes(each), boxRecords(stock, each.kind.id)));
    for (const FrameNeed& each : next.frames) {
        const std::vector<Explained> why = explainFrames(each);
        const std::vector<AccountRecord> records = frameRecords(stock, each.kind);
        if (each.frames.afterRepairsAtMost > 0 || each.frames.nowAtMost > 0)
            section.lines.push_back(
                shortLine(frameKindText(each.kind), each.frames, {why.front()}, records));
        if (each.sheetsToBuy <= 0 || why.size() < 2) continue;
        AccountLine sheets;
        sheets.name = shortSay("foundation, %1").arg(frameKindText(each.kind));
        sheets.figure = why.back().answer;
        sheets.working = why.back().working;
        sheets.note =
            each.sheetsThere
                ? shortSay("%1 sheets to put in, %2 there").arg(each.sheets).arg(*each.sheetsThere)
                : shortSay(
                      "%n sheets to put in, what is there nobody "
                      "counted",
                      static_cast<int>(each.sheets));
        sheets.records = records;
        section.lines.push_back(std::move(sheets));
    }
    for (const ItemNeed& each : next.pieces)
        if (each.pieces.afterRepairsAtMost > 0 || each.pieces.nowAtMost > 0)
            section.lines.push_back(shortLine(choiceText(word(each.plan.item)), each.pieces,
                                              explainPieces(each),
                                              countRecords(file, stock.of(each.plan.item), today)));
    section.note =
        section.lines.empty()
            ? shortSay("Nothing is short for spring %1, as the plan and the stock stand today.")
                  .arg(planned)
            : shortSay(
                  "After repairs, as the plan for %1 and the stock stand today; the storeroom "
                  "(Ctrl+6) prints the order list.")
                  .arg(planned);
    return section;
}

}  // namespace combwright
