#include "core/storage/queries/holds.h"

#include <algorithm>

#include "core/model/yard/yard.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/stays.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

/// A hold on a box, and the day from which what leaves the box takes the hold along.
struct BoxHold {
    Hold hold;
    Day from;
};

void addOnce(std::vector<Hold>& holds, const Hold& hold) {
    const bool there = std::any_of(holds.begin(), holds.end(),
                                   [&](const Hold& each) { return each.id == hold.id; });
    if (!there) holds.push_back(hold);
}

std::vector<std::pair<Id<Box>, Day>> boxesOfColony(const Read& file, const Colony& colony,
                                                   const Hold& hold, Day on) {
    // A dead colony's boxes are those that stood there when it ended, also where the hold came
    // later.
    const Day last = colony.ended && *colony.ended < on ? *colony.ended : on;
    Day first = std::min(hold.since, last);
    if (keepsApart(hold) && colony.ended && *colony.ended <= on)
        first = std::min(first, std::max(colony.since, *colony.ended - days(clearedBeforeEndDays)));
    // A colony that moved in on the very day brought its boxes with it.
    bool followed = false;
    for (const Colony& each : file.where<Colony>({is("hive", colony.hive)}))
        followed = followed || (each.id != colony.id && colony.ended && each.since == last);
    std::vector<std::pair<Id<Box>, Day>> boxes;
    // Where it lived before it moved its boxes count up to that day.
    for (const ColonyStay& lived : colonyStaysOf(file, colony)) {
        const bool here = lived.hive == colony.hive && lived.to == colony.ended;
        const Day from = here && lived.from == colony.since ? first : std::max(first, lived.from);
        const Day to = here || !lived.to ? last : std::min(last, *lived.to);
        if (from > to) continue;
        for (const BoxStay& stay : staysOn(file, lived.hive)) {
            if (!stay.touches(from, to)) continue;
            if (here && followed && stay.from == last && last > colony.since) continue;
            boxes.emplace_back(stay.box, std::max(from, stay.from));
        }
    }
    return boxes;
}

}  // namespace

std::vector<Hold> HeldThings::of(Id<Box> box) const {
    const auto found = boxes.find(box.number);
    return found == boxes.end() ? std::vector<Hold>{} : found->second;
}

std::vector<Hold> HeldThings::of(const Frame& frame) const {
    std::vector<Hold> all;
    if (const auto own = frames.find(frame.id.number); own != frames.end()) all = own->second;
    if (frame.box)
        for (const Hold& hold : of(*frame.box)) addOnce(all, hold);
    return all;
}

std::optional<Hold> HeldThings::quarantine(Id<Box> box) const {
    for (const Hold& hold : of(box))
        if (quarantines(hold)) return hold;
    return std::nullopt;
}

std::optional<Hold> HeldThings::apart(Id<Box> box) const {
    if (auto hold = quarantine(box)) return hold;
    for (const Hold& hold : of(box))
        if (keepsApart(hold)) return hold;
    return std::nullopt;
}

HeldThings heldThings(const Read& file, Day on) {
    HeldThings held;
    std::map<std::int64_t, std::vector<BoxHold>> heldFrom;
    const auto holdBox = [&](Id<Box> box, const Hold& hold, Day from) {
        addOnce(held.boxes[box.number], hold);
        heldFrom[box.number].push_back({hold, from});
    };
    for (const Hold& hold : file.all<Hold>()) {
        if (!standsOn(hold, on)) continue;
        if (hold.frame) held.frames[hold.frame->number].push_back(hold);
        if (hold.box) holdBox(*hold.box, hold, hold.since);
        if (!hold.colony) continue;
        held.colonies[hold.colony->number].push_back(hold);
        if (const auto colony = file.find(*hold.colony))
            for (const auto& [box, from] : boxesOfColony(file, *colony, hold, on))
                holdBox(box, hold, from);
    }
    if (heldFrom.empty()) return held;
    for (const FrameMove& move : file.all<FrameMove>()) {
        if (!move.fromBox || move.on > on) continue;
        const auto box = heldFrom.find(move.fromBox->number);
        if (box == heldFrom.end()) continue;
        for (const BoxHold& each : box->second)
            if (each.from <= move.on) addOnce(held.frames[move.frame.number], each.hold);
        if (held.frames[move.frame.number].empty()) held.frames.erase(move.frame.number);
    }
    return held;
}

bool anythingApart(const Read& file, Day on) {
    for (const HoldWhy why :
         {HoldWhy::DeadOutUnexplained, HoldWhy::SuspectedDisease, HoldWhy::Contact})
        for (const Hold& hold : file.where<Hold>({is("why", why)}))
            if (standsOn(hold, on)) return true;
    return false;
}

std::optional<Hold> quarantineOn(const Read& file, const HeldThings& held, Id<Hive> hive, Day on) {
    if (const auto colony = lastColonyIn(file, hive, on))
        if (const auto holds = held.colonies.find(colony->id.number); holds != held.colonies.end())
            for (const Hold& hold : holds->second)
                if (quarantines(hold)) return hold;
    for (const Box& box : boxesOn(file, hive))
        if (auto hold = held.quarantine(box.id)) return hold;
    return std::nullopt;
}

std::string_view heldByVerdict(const Frame& frame) {
    if (frame.verdict != Verdict::Hold) return {};
    if (frame.faults.find('Q') != std::string::npos) return "suspected foulbrood";
    if (frame.faults.find('D') != std::string::npos) return "dead brood";
    return word(Verdict::Hold);
}

std::vector<Frame> heldByVerdict(const Read& file, Id<Box> box) {
    return file.where<Frame>({is("box", box), is("verdict", Verdict::Hold), isUnknown("retired")});
}

std::optional<Colony> lastColonyIn(const Read& file, Id<Hive> hive, Day on) {
    std::optional<Colony> last;
    for (ColonyStay& stay : colonyStaysIn(file, hive)) {
        Colony& each = stay.colony;
        if (stay.from > on) continue;
        // Gone to another stand by that day, it is no more of this one.
        const bool movedOn = each.hive != hive || (stay.to && stay.to != each.ended);
        if (movedOn && stay.to && *stay.to <= on) continue;
        if (!last || (last->ended && (!each.ended || *each.ended >= *last->ended)))
            last = std::move(each);
    }
    return last;
}

}  // namespace combwright
