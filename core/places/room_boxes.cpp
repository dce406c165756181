#include "core/places/room_boxes.h"

#include <algorithm>
#include <cstdlib>
#include <set>

#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"

namespace combwright {
namespace {

/// The last day, up to that one, on which a box left a hive.
std::optional<Day> cameOff(const Read& file, Id<Box> box, Day on) {
    std::optional<Day> off;
    for (const BoxMove& move : file.where<BoxMove>({is("box", box)}))
        if (move.on <= on && move.fromPlace == BoxPlace::OnHive &&
            move.toPlace != BoxPlace::OnHive && (!off || move.on >= *off))
            off = move.on;
    return off;
}

std::optional<BoxLook> lastLook(const Read& file, Id<Box> box, Day on) {
    std::optional<BoxLook> last;
    for (BoxLook& look : file.where<BoxLook>({is("box", box)}))
        if (look.on <= on && (!last || look.on >= last->on)) last = std::move(look);
    return last;
}

/// The yard's own limit in days; the usual one where the yard names none.
std::optional<std::int64_t> daysAllowed(const Read& file, const std::optional<Yard>& yard, Day on) {
    if (yard && yard->extractBy) {
        switch (*yard->extractBy) {
            case ExtractBy::NoLimit:
                return std::nullopt;
            case ExtractBy::ThreeDays:
                return 3;
            case ExtractBy::TwoDays:
                return 2;
        }
    }
    return static_cast<std::int64_t>(
        constantOr(file, "extract_by_days", yard ? std::optional(yard->id) : std::nullopt, on, 3));
}

RoomBox boxInRoom(const Read& file, const Box& box, std::optional<Id<Hive>> hive, Day on) {
    RoomBox row;
    row.box = box.id;
    row.mark = box.mark.empty() ? nameOf(file, Box::table, box.id.number) : box.mark;
    if (const auto kind = file.find(box.kind); kind && kind->outerHeight)
        row.heightMm = kind->outerHeight->mm();
    if (const auto frames = framesIn(file, box)) row.frames = frames->value();
    row.look = lastLook(file, box.id, on);
    const auto stand = file.find(hive);
    if (stand) row.hive = stand->mark.text();
    if (box.place != BoxPlace::OnHive) row.off = cameOff(file, box.id, on);
    const auto yard = stand ? file.find(stand->yard) : std::nullopt;
    if (row.off)
        if (const auto allowed = daysAllowed(file, yard, *row.off))
            row.extractBy = *row.off + days(*allowed);
    return row;
}

RoomBox boxOfRun(const Read& file, const ExtractionBox& entry, Day on) {
    RoomBox row;
    if (const auto box = file.find(entry.box)) row = boxInRoom(file, *box, entry.hive, on);
    row.entry = entry;
    row.mark = calledInRun(file, entry);
    row.hive = entry.hive ? nameOf(file, Hive::table, entry.hive->number) : std::string();
    row.gross = entry.gross;
    row.wet = entry.wet;
    if (entry.frames) row.frames = entry.frames->value();
    return row;
}

/// Boxes that are in a run opened on or after a day.
std::set<std::int64_t> inRunsSince(const Read& file, Day since) {
    std::set<std::int64_t> boxes;
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.on < since) continue;
        for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", run.id)}))
            if (entry.box) boxes.insert(entry.box->number);
    }
    return boxes;
}

void addPlanned(const Read& file, std::optional<Id<Yard>> yard, Day on, RoomBoxes& room) {
    std::optional<PullPlan> plan;
    for (PullPlan& each : file.all<PullPlan>())
        if (each.on <= on) plan = std::move(each);
    std::set<std::int64_t> seen;
    const auto wanted = [&](Id<Hive> hive) {
        const auto stand = file.find(hive);
        return stand && (!yard || stand->yard == *yard);
    };
    if (plan) {
        const auto run = inRunsSince(file, plan->on);
        for (const PullLine& line : file.where<PullLine>({is("plan", plan->id)})) {
            const auto box = file.find(line.box);
            if (!box || line.verdict != PullVerdict::Take || !wanted(line.hive) ||
                run.contains(box->id.number))
                continue;
            const bool stillToCome = box->place == BoxPlace::OnHive ||
                                     box->place == BoxPlace::Cleared ||
                                     box->place == BoxPlace::Waiting;
            if (!stillToCome) continue;
            RoomBox row = boxInRoom(file, *box, line.hive, on);
            if (box->place == BoxPlace::OnHive) row.plannedFor = plan->forDay;
            seen.insert(box->id.number);
            room.waiting.push_back(std::move(row));
        }
    }
    // Brought in without a plan.
    for (const Box& box : file.where<Box>({is("place", BoxPlace::Waiting)})) {
        if (seen.contains(box.id.number) || inRunsSince(file, box.since).contains(box.id.number))
            continue;
        const auto hive = hiveThatFilled(file, box.id, on);
        if (hive && wanted(*hive)) room.waiting.push_back(boxInRoom(file, box, hive, on));
    }
}

}  // namespace

RoomBoxes roomBoxes(const Read& file, std::optional<Id<Extraction>> id, Day on) {
    RoomBoxes room;
    const auto run = file.find(id);
    if (run) {
        const auto spun = framesSpun(file, run->id);
        for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", run->id)})) {
            RoomBox row = boxOfRun(file, entry, on);
            if (const auto found = spun.find(entry.id.number); found != spun.end())
                row.spun = found->second;
            const auto gross = row.gross ? row.gross->middle() : std::nullopt;
            const auto most = room.heaviest ? room.heaviest->gross->middle() : std::nullopt;
            if (gross && (!most || *gross > *most)) room.heaviest = row;
            const bool emptied = (row.wet && row.wet->value) || row.left() == 0;
            (emptied || run->closed ? room.wet : room.waiting).push_back(std::move(row));
        }
    }
    if (!run || !run->closed) addPlanned(file, run ? run->yard : std::nullopt, on, room);
    std::stable_sort(room.waiting.begin(), room.waiting.end(),
                     [](const RoomBox& a, const RoomBox& b) {
                         if (a.plannedFor.has_value() != b.plannedFor.has_value())
                             return b.plannedFor.has_value();
                         return a.off && b.off && *a.off < *b.off;
                     });
    for (const RoomBox& row : room.waiting) {
        room.framesLeft += row.left().value_or(0);
        if (row.extractBy && (!room.extractBy || *row.extractBy < *room.extractBy))
            room.extractBy = row.extractBy;
    }
    return room;
}

bool heavyForWet(const RoomBox& box, Mass wet) {
    const auto gross = box.gross ? box.gross->middle() : std::nullopt;
    return gross && static_cast<double>(wet.grams()) > *gross * 0.6;
}

NextLot nextLot(const Read& file, Day on) {
    NextLot lot;
    const std::string year = isoText(on).substr(2, 2) + "-";
    std::int64_t highest = 0;
    for (const Extraction& run : file.all<Extraction>())
        if (run.name.text().starts_with(year))
            highest =
                std::max<std::int64_t>(highest, std::atoll(run.name.text().c_str() + year.size()));
    lot.name = year + std::to_string(highest + 1);
    for (const RoomBox& box : roomBoxes(file, std::nullopt, on).waiting) {
        const auto filled = box.box ? hiveThatFilled(file, *box.box, on) : std::nullopt;
        if (const auto hive = file.find(filled); hive && !lot.yard) lot.yard = hive->yard;
    }
    return lot;
}

}  // namespace combwright
