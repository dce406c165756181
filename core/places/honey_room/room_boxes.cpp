#include "core/places/honey_room/room_boxes.h"

#include <QCoreApplication>
#include <algorithm>
#include <cstdlib>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/pegs.h"
#include "core/storage/queries/runs.h"
#include "core/words/words.h"

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

/// Only its water was taken, of a box already off: that says nothing new of its frames.
bool isWaterOnly(const BoxLook& look) {
    return look.water && !look.frames && !look.cappedFrames && !look.filled && !look.toFork &&
           !look.broodIn;
}

std::optional<BoxLook> lastLook(const Read& file, Id<Box> box, Day on) {
    std::optional<BoxLook> last, water;
    for (BoxLook& look : file.where<BoxLook>({is("box", box)})) {
        if (look.on > on) continue;
        std::optional<BoxLook>& of = isWaterOnly(look) ? water : last;
        if (!of || look.on >= of->on) of = std::move(look);
    }
    if (!last) return water;
    if (water && water->on >= last->on) last->water = water->water;
    return last;
}

/// Whose honey it is, since when it waits and until when.
void takeLimit(const Read& file, RoomBox& row, const std::optional<Hive>& stand,
               const std::optional<Extraction>& run, Day on) {
    if (stand) row.yard = stand->yard;
    if (!row.yard && run) row.yard = run->yard;
    row.limit =
        extractLimit(file, file.find(row.yard),
                     run && run->damp ? run->damp : roomAir(file, on).damp, row.off.value_or(on));
    row.extractBy.reset();
    if (row.off && row.limit.days) row.extractBy = *row.off + days(*row.limit.days);
}

RoomBox boxInRoom(const Read& file, const Box& box, std::optional<Id<Hive>> hive,
                  const std::optional<Extraction>& run, Day on) {
    RoomBox row;
    row.box = box.id;
    const auto peg = pegOfBox(file, box.id, on);
    if (peg) row.peg = peg->number.value();
    if (const auto was = lastPegOfBox(file, box.id, on); !peg && was && was->off == on)
        row.pegWas = was->number.value();
    row.mark = !box.mark.empty() ? box.mark
               : peg             ? nameOf(file, Peg::table, peg->id.number)
                                 : nameOf(file, Box::table, box.id.number);
    if (const auto kind = file.find(box.kind); kind && kind->outerHeight)
        row.heightMm = kind->outerHeight->mm();
    if (const auto frames = framesIn(file, box)) row.frames = frames->value();
    row.look = lastLook(file, box.id, on);
    const auto stand = file.find(hive);
    if (stand) row.hive = stand->mark.text();
    if (box.place != BoxPlace::OnHive) row.off = cameOff(file, box.id, on);
    takeLimit(file, row, stand, run, on);
    return row;
}

/// The peg of a line of a run whose box nobody knows.
std::optional<Peg> pegOfUnknown(const Read& file, const ExtractionBox& entry,
                                const Extraction& run) {
    for (const Peg& peg : file.where<Peg>({isUnknown("box")}))
        if (pegTag(file, peg, run.on) == entry.knownAs) return peg;
    return std::nullopt;
}

RoomBox boxOfRun(const Read& file, const ExtractionBox& entry, const Extraction& run, Day on) {
    RoomBox row;
    const auto stand = file.find(entry.hive);
    if (const auto box = file.find(entry.box)) {
        row = boxInRoom(file, *box, entry.hive, run, on);
    } else {
        if (const auto peg = pegOfUnknown(file, entry, run)) {
            if (!peg->off || on < *peg->off)
                row.peg = peg->number.value();
            else if (peg->off == on)
                row.pegWas = peg->number.value();
            row.off = peg->on;
        }
        takeLimit(file, row, stand, run, on);
    }
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

/// Whether a box nobody knows is in a run already, by its peg.
bool inARun(const Read& file, const Peg& peg) {
    for (const Extraction& run : file.all<Extraction>()) {
        const std::string tag = pegTag(file, peg, run.on);
        for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", run.id)}))
            if (!entry.box && entry.knownAs == tag) return true;
    }
    return false;
}

void addPegged(const Read& file, const std::optional<Extraction>& run, Day on, RoomBoxes& room) {
    for (const Peg& peg : file.where<Peg>({isUnknown("box"), isUnknown("off_day")})) {
        const auto stand = file.find(peg.hive);
        const bool elsewhere = run && run->yard && stand && stand->yard != *run->yard;
        if (peg.on > on || elsewhere || inARun(file, peg)) continue;
        RoomBox row;
        row.mark = nameOf(file, Peg::table, peg.id.number);
        row.peg = peg.number.value();
        if (stand) row.hive = stand->mark.text();
        row.off = peg.on;
        takeLimit(file, row, stand, run, on);
        if (!stand) row.yard.reset();
        room.waiting.push_back(std::move(row));
    }
}

void addPlanned(const Read& file, const std::optional<Extraction>& run, Day on, RoomBoxes& room) {
    const auto yard = run ? run->yard : std::nullopt;
    std::optional<PullPlan> plan;
    for (PullPlan& each : file.all<PullPlan>())
        if (each.on <= on) plan = std::move(each);
    std::set<std::int64_t> seen;
    const auto wanted = [&](Id<Hive> hive) {
        const auto stand = file.find(hive);
        return stand && (!yard || stand->yard == *yard);
    };
    if (plan) {
        const auto inRuns = inRunsSince(file, plan->on);
        const auto presumed = presumedIn(file, *plan, on);
        for (const PullLine& line : file.where<PullLine>({is("plan", plan->id)})) {
            const auto box = file.find(line.box);
            if (!box || line.verdict != PullVerdict::Take || !wanted(line.hive) ||
                inRuns.contains(box->id.number))
                continue;
            const bool stillToCome = box->place == BoxPlace::OnHive ||
                                     box->place == BoxPlace::Cleared ||
                                     box->place == BoxPlace::Waiting;
            if (!stillToCome) continue;
            if (presumed.contains(box->id.number)) {
                room.presumed.push_back(nameOf(file, Box::table, box->id.number));
                continue;
            }
            RoomBox row = boxInRoom(file, *box, line.hive, run, on);
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
        if (hive && wanted(*hive)) room.waiting.push_back(boxInRoom(file, box, hive, run, on));
    }
}

/// Boxes of a run: waiting, or wet once their frames are spun or they were weighed so.
void addRun(const Read& file, const Extraction& run, Day on, RoomBoxes& room) {
    const auto went = framesOfBoxes(file, run.id);
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", run.id)})) {
        RoomBox row = boxOfRun(file, entry, run, on);
        if (const auto found = went.find(entry.id.number); found != went.end())
            row.went = found->second;
        const auto gross = row.gross ? row.gross->middle() : std::nullopt;
        const auto most = room.heaviest ? room.heaviest->gross->middle() : std::nullopt;
        if (gross && (!most || *gross > *most)) room.heaviest = row;
        const bool emptied = (row.wet && row.wet->value) || row.left() == 0;
        (emptied || run.closed ? room.wet : room.waiting).push_back(std::move(row));
    }
}

/// Oldest first, those of one day by peg, as who stands before the stack finds them; of what nobody
/// knows the day nobody can say that it is young.
void sortAndSum(RoomBoxes& room, Day on) {
    const auto rank = [](const RoomBox& row) {
        return std::tuple(row.plannedFor ? 1 : 0, row.off.value_or(Day{}),
                          row.peg.value_or(std::numeric_limits<std::int64_t>::max()));
    };
    std::stable_sort(room.waiting.begin(), room.waiting.end(),
                     [&](const RoomBox& a, const RoomBox& b) { return rank(a) < rank(b); });
    for (const RoomBox& row : room.waiting) {
        room.late += row.late(on);
        room.framesLeft += row.left().value_or(0);
        if (row.extractBy && (!room.extractBy || *row.extractBy < *room.extractBy))
            room.extractBy = row.extractBy;
    }
}

}  // namespace

RoomAir roomAir(const Read& file, Day on) {
    RoomAir air;
    for (const Extraction& run : runsInRoom(file, on)) {
        if (run.room) air.warm = run.room;
        if (run.damp) air.damp = run.damp;
    }
    return air;
}

ExtractLimit extractLimit(const Read& file, const std::optional<Yard>& yard,
                          std::optional<Share> damp, Day on) {
    const auto of = yard ? std::optional(yard->id) : std::nullopt;
    ExtractLimit limit;
    if (damp) limit.dampShare = damp->value();
    const auto holds = [&](const char* name, double fallback) {
        const auto constant = constantInForce(file, name, of, on);
        limit.days = static_cast<std::int64_t>(constant ? constant->value : fallback);
        limit.source = constant ? constantSource(*constant) : "common practice, no source";
    };
    if (yard && yard->extractBy == ExtractBy::NoLimit) {
        limit.why = ExtractLimit::Why::NoLimit;
        return limit;
    }
    if (yard && yard->extractBy == ExtractBy::TwoDays) {
        limit.why = ExtractLimit::Why::Setting;
        holds("extract_by_setting_days", 2);
        return limit;
    }
    limit.why = yard && yard->extractBy ? ExtractLimit::Why::Beetle : ExtractLimit::Why::Usual;
    holds("extract_by_days", 3);
    const double dampFrom = constantOr(file, "extract_by_damp_share", of, on, 0.5);
    const std::int64_t usual = *limit.days;
    if (!limit.dampShare || *limit.dampShare <= dampFrom) return limit;
    const ExtractLimit dry = limit;
    holds("extract_by_damp_days", 2);
    if (*limit.days >= usual) return dry;
    limit.why = ExtractLimit::Why::Damp;
    return limit;
}

std::set<std::int64_t> presumedIn(const Read& file, const PullPlan& plan, Day on) {
    std::map<std::int64_t, std::size_t> unnamed;
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.on < plan.on || run.on > on) continue;
        for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", run.id)})) {
            if (entry.box) continue;
            const auto hive = file.find(entry.hive);
            const auto yard = hive ? std::optional(hive->yard) : run.yard;
            if (yard) ++unnamed[yard->number];
        }
    }
    std::set<std::int64_t> presumed;
    if (unnamed.empty()) return presumed;
    const auto inRuns = inRunsSince(file, plan.on);
    std::map<std::int64_t, std::vector<std::int64_t>> left;
    for (const PullLine& line : file.where<PullLine>({is("plan", plan.id)})) {
        const auto box = file.find(line.box);
        const auto stand = file.find(line.hive);
        if (line.verdict == PullVerdict::Take && box && stand && box->place == BoxPlace::OnHive &&
            !inRuns.contains(box->id.number))
            left[stand->yard.number].push_back(box->id.number);
    }
    for (const auto& [yard, boxes] : left)
        if (const auto found = unnamed.find(yard);
            found != unnamed.end() && boxes.size() <= found->second)
            presumed.insert(boxes.begin(), boxes.end());
    return presumed;
}

RoomBoxes roomBoxes(const Read& file, std::optional<Id<Extraction>> id, Day on) {
    RoomBoxes room;
    const auto run = file.find(id);
    if (run) addRun(file, *run, on, room);
    if (!run || !run->closed) {
        addPlanned(file, run, on, room);
        addPegged(file, run, on, room);
    }
    sortAndSum(room, on);
    return room;
}

RoomBoxes allWaiting(const Read& file, Day on) {
    RoomBoxes room;
    for (const Extraction& run : file.all<Extraction>())
        if (!run.closed && run.on <= on) addRun(file, run, on, room);
    addPlanned(file, std::nullopt, on, room);
    addPegged(file, std::nullopt, on, room);
    sortAndSum(room, on);
    return room;
}

std::optional<Day> toldByLaterDays(const Read& file, Day on) {
    Day last = on;
    for (const Extraction& run : file.all<Extraction>())
        last = std::max({last, run.on, run.closed.value_or(run.on)});
    for (const SpinLoad& load : file.all<SpinLoad>()) last = std::max(last, load.on);
    for (const Peg& peg : file.all<Peg>())
        last = std::max({last, peg.on, peg.off.value_or(peg.on)});
    const auto inRoom = [](BoxPlace place) {
        return place == BoxPlace::Cleared || place == BoxPlace::Waiting || place == BoxPlace::Wet;
    };
    for (const BoxMove& move : file.all<BoxMove>())
        if (inRoom(move.toPlace) || (move.fromPlace && inRoom(*move.fromPlace)))
            last = std::max(last, move.on);
    return last > on ? std::optional(last) : std::nullopt;
}

QString toldByLaterText(const Read& file, Day on) {
    const auto last = toldByLaterDays(file, on);
    if (!last) return {};
    return QCoreApplication::translate(
               "room",
               "Told by all that is written down up to %1: a box brought in, weighed or spun after "
               "%2 stands here as it does since, not as it did that day.")
        .arg(dayText(*last), shortDayText(on));
}

std::vector<Explained> explainWaiting(const RoomBoxes& room, Day on) {
    std::vector<Explained> figures;
    for (const RoomBox& row : room.waiting) {
        if (!row.off) continue;
        Explained figure;
        figure.what = QCoreApplication::translate("explain", "Waiting: %1").arg(fromUtf8(row.mark));
        figure.answer = row.extractBy ? QCoreApplication::translate("explain", "extract by %1")
                                            .arg(shortDayText(*row.extractBy))
                                      : QCoreApplication::translate("explain", "no limit");
        note(&figure.working, "days_waiting", static_cast<double>((on - *row.off).count()), "days",
             "since " + isoText(*row.off));
        if (row.limit.why == ExtractLimit::Why::Damp && row.limit.dampShare)
            note(&figure.working, "room_damp", *row.limit.dampShare * 100, "%");
        if (row.limit.days)
            note(&figure.working, "extract_by_days", static_cast<double>(*row.limit.days), "days",
                 limitText(row.limit).toStdString(), row.limit.source);
        figures.push_back(std::move(figure));
    }
    return figures;
}

QString limitText(const ExtractLimit& limit) {
    switch (limit.why) {
        case ExtractLimit::Why::NoLimit:
            return QCoreApplication::translate("explain", "this yard has no limit");
        case ExtractLimit::Why::Beetle:
            return QCoreApplication::translate("explain", "beetle country");
        case ExtractLimit::Why::Damp:
            return QCoreApplication::translate("explain", "the room is over half humid");
        case ExtractLimit::Why::Setting:
            return QCoreApplication::translate("explain", "the crop sets in the comb: 1 to 2 days");
        case ExtractLimit::Why::Usual:
            return QCoreApplication::translate("explain", "nobody said what holds for the yard");
    }
    return {};
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
