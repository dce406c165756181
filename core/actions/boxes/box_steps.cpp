#include "core/actions/boxes/box_steps.h"

#include <algorithm>

#include "core/actions/boxes/late_moves.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/model/season_info.h"
#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/storage/queries/pegs.h"
#include "core/storage/queries/yards.h"

namespace combwright {

bool markTaken(const Read& file, const std::string& mark, Id<Box> by) {
    if (mark.empty()) return false;
    const auto bearing = file.where<Box>({is("mark", mark)});
    return std::any_of(bearing.begin(), bearing.end(),
                       [&](const Box& each) { return each.id != by && inUse(each); });
}

namespace {

/// A hive that takes boxes on that day.
Result<void> demandStands(const Read& file, Id<Hive> id, Day on) {
    const auto hive = file.find(id);
    if (!hive) return Refusal{Code::NotFound, "hive", {}};
    // One closed later stood there on that day.
    if (hive->closed && *hive->closed <= on)
        return Refusal{Code::Closed, "hive", {{"name", hive->mark.text()}}};
    if (on < hive->since)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
    return {};
}

/// Makes room on a hive and says at which level the box will stand.
Count makeRoom(Write& file, Id<Hive> hive, std::optional<Count> wanted) {
    auto standing = boxesOn(file, hive);
    const Count top(static_cast<std::int64_t>(standing.size()));
    const Count level = wanted && *wanted < top ? *wanted : top;
    for (Box& each : standing) {
        if (!each.level || *each.level < level) continue;
        each.level = *each.level + Count(1);
        file.change(each);
    }
    return level;
}

void closeGap(Write& file, Id<Hive> hive) {
    Count level;
    for (Box& each : boxesOn(file, hive)) {
        if (each.level != level) {
            each.level = level;
            file.change(each);
        }
        level += Count(1);
    }
}

/// The excluder stays on the boxes it lies on when one of them goes. Says whether it was one.
std::optional<bool> leaveNest(Write& file, Id<Hive> id, Count level) {
    auto hive = file.find(id);
    if (!hive || !hive->excluderAbove) return std::nullopt;
    if (level >= *hive->excluderAbove) return false;
    const std::int64_t left = hive->excluderAbove->value() - 1;
    hive->excluderAbove = left > 0 ? std::optional(Count(left)) : std::nullopt;
    file.change(*hive);
    return true;
}

/// And when one is put among them.
void enterNest(Write& file, Id<Hive> id, Count level, std::optional<bool> under) {
    auto hive = file.find(id);
    if (!hive) return;
    const auto& lies = hive->excluderAbove;
    if (!under.value_or(lies && level < *lies)) return;
    hive->excluderAbove = lies ? *lies + Count(1) : level + Count(1);
    file.change(*hive);
}

/// Where on a hive a box is put: counted from the floor as the stack stood that day, and whether it
/// goes under the excluder.
struct Landing {
    std::vector<BoxMove> before;  ///< moves of the hive so far; none unless late
    bool late = false;            ///< moves of later days are written down already
    std::optional<Count> level;
    std::optional<bool> under;
};

Landing landingOn(const Read& file, const BoxSpot& spot, std::optional<Count> level, Day on) {
    Landing landing{{}, false, level, spot.under};
    if (!spot.hive || spot.place != BoxPlace::OnHive) return landing;
    landing.before = lateMovesAt(file, *spot.hive, on);
    landing.late = anyAfter(landing.before, on);
    if (!landing.late) return landing;
    const Standing then = standingOn(file, *file.find(*spot.hive), on);
    const Count top(static_cast<std::int64_t>(then.boxes.size()));
    landing.level = std::min(level.value_or(top), top);
    if (!landing.under) landing.under = then.excluderAbove && *landing.level < *then.excluderAbove;
    return landing;
}

/// A stand that was closed since was cleared by then: what is put on it late went to the storeroom
/// on that day.
void leaveClosed(Write& file, Id<Box> id, std::optional<Id<Inspection>> inspection) {
    auto box = file.find(id);
    const auto hive = box ? file.find(box->hive) : std::nullopt;
    if (!hive || !hive->closed || box->place != BoxPlace::OnHive) return;
    const auto before = movesAt(file, hive->id);
    const auto wasUnder = leaveNest(file, hive->id, *box->level);
    BoxMove went{{},           id,         *hive->closed,       box->place,
                 box->hive,    box->level, BoxPlace::Storeroom, std::nullopt,
                 std::nullopt, inspection, box->stack,          {},
                 wasUnder};
    box->place = BoxPlace::Storeroom;
    box->hive.reset();
    box->level.reset();
    file.change(*box);
    closeGap(file, hive->id);
    file.add(went);
    followLate(file, hive->id, before, went.on);
}

void addFrames(Write& file, const Box& box, const BoxKind& kind, const BoxContents& contents,
               Day on) {
    if (!kind.takes) return;
    for (const FrameTally& tally : contents.tallies) {
        file.add(BoxCount{{}, box.id, on, Occasion::Added, tally.comb, tally.faults, tally.frames});
        for (std::int64_t n = 0; n < tally.frames.value(); ++n) {
            Frame frame;
            frame.kind = *kind.takes;
            frame.box = box.id;
            frame.comb = tally.comb;
            frame.faults = tally.faults;
            file.add(frame);
        }
    }
}

}  // namespace

std::optional<Count> mostFrames(const BoxKind& kind) {
    if (!kind.framesNominal) return std::nullopt;
    return *kind.framesNominal + Count(2);
}

Result<void> demandFits(const BoxKind& kind, const BoxContents& contents) {
    if (!kind.framesNominal) return {};
    const std::int64_t most = mostFrames(kind)->value();
    // Ten and a half capped in tenths of a frame need eleven frames.
    const std::int64_t capped =
        contents.capped && contents.capped->value ? (contents.capped->value->count() + 9) / 10 : 0;
    if (std::max(contents.frames().value(), capped) <= most) return {};
    return Refusal{Code::TooMany, "contents", {{"most", std::to_string(most)}}};
}

Result<Id<Box>> addBoxTo(Write& file, const ListedBox& listed, const BoxSpot& spot, Day on) {
    if (markTaken(file, listed.mark)) return Refusal{Code::Taken, "mark", {{"name", listed.mark}}};
    const auto kind = file.find(listed.kind);
    if (!kind) return Refusal{Code::NotFound, "kind", {}};
    if (!kind->takes && listed.contents.frames() > Count())
        return Refusal{
            Code::UnknownSize, "contents", {{"name", kind->name.text()}, {"which", "frame"}}};
    if (auto fits = demandFits(*kind, listed.contents); !fits) return fits.error();
    if (spot.hive)
        if (auto stands = demandStands(file, *spot.hive, on); !stands) return stands.error();
    if (spot.hive && spot.reason.empty())
        if (auto free = demandHiveFree(file, *spot.hive, on, "hive"); !free) return free.error();

    const Landing landing = landingOn(file, spot, spot.level, on);
    Box box;
    box.kind = listed.kind;
    box.mark = listed.mark;
    box.place = spot.place;
    box.since = on;
    box.stack = spot.stack;
    if (spot.hive) {
        box.hive = spot.hive;
        box.level = makeRoom(file, *spot.hive, landing.level);
        if (spot.place == BoxPlace::OnHive) enterNest(file, *spot.hive, *box.level, landing.under);
    }
    file.add(box);
    file.add(BoxMove{{},
                     box.id,
                     on,
                     std::nullopt,
                     std::nullopt,
                     std::nullopt,
                     box.place,
                     box.hive,
                     landing.late ? landing.level : box.level,
                     std::nullopt,
                     {},
                     box.stack});
    if (landing.late) followLate(file, *spot.hive, landing.before, on);
    leaveClosed(file, box.id, std::nullopt);
    addFrames(file, box, *kind, listed.contents, on);
    // What is said of the honey in it is a look of that day.
    if (listed.contents.capped || listed.contents.filled) {
        BoxLook look;
        look.box = box.id;
        look.on = on;
        if (!listed.contents.tallies.empty()) look.frames = listed.contents.frames();
        look.cappedFrames = listed.contents.capped;
        look.filled = listed.contents.filled;
        file.add(look);
    }
    return box.id;
}

namespace {

enum class Ask { WhatIsHeld, Nothing };

Result<void> shiftBox(Write& file, Id<Box> id, const BoxSpot& spot, Day on,
                      std::optional<Id<Inspection>> inspection, Ask ask) {
    auto box = file.find(id);
    if (!box) return Refusal{Code::NotFound, "box", {}};
    if (spot.hive)
        if (auto stands = demandStands(file, *spot.hive, on); !stands) return stands;
    const Box before = *box;
    if (!inUse(before) && spot.place != BoxPlace::Gone && markTaken(file, before.mark, id))
        return Refusal{Code::Taken, "box", {{"name", before.mark}}};
    const bool sameHive = before.place == spot.place && before.hive == spot.hive;
    // No box is put higher than the top.
    auto level = spot.level;
    if (sameHive && level && spot.hive) {
        const auto standing = static_cast<std::int64_t>(boxesOn(file, *spot.hive).size());
        level = std::min(*level, Count(std::max<std::int64_t>(standing - 1, 0)));
    }
    const bool sameSpot =
        sameHive && (!level || level == before.level) && before.stack == spot.stack;
    if (sameSpot) return Refusal{Code::NothingToDo, "box", {{"name", before.mark}}};
    if (auto free = demandNotMovedSince(file, before, on, "on"); !free) return free;
    if (ask == Ask::WhatIsHeld) {
        if (auto may = demandMayMove(file, before, spot, on); !may) return may;
        noteOverruled(file, id, spot, on);
        box = file.find(id);
    }

    const auto left = before.place == BoxPlace::OnHive ? before.hive : std::nullopt;
    const auto movesLeft = left ? lateMovesAt(file, *left, on) : std::vector<BoxMove>{};
    const Landing landing = landingOn(file, spot, level, on);
    // Off first, so that moving within one hive counts levels without the box itself.
    box->place = spot.place;
    box->hive.reset();
    box->level.reset();
    box->stack = spot.stack;
    file.change(*box);
    std::optional<bool> wasUnder;
    if (before.hive && before.place == BoxPlace::OnHive) {
        if (before.level) wasUnder = leaveNest(file, *before.hive, *before.level);
        closeGap(file, *before.hive);
    }
    if (spot.hive) {
        const bool stands = spot.place == BoxPlace::OnHive;
        const Count room = stands ? makeRoom(file, *spot.hive, landing.level) : Count();
        box->hive = spot.hive;
        if (stands) {
            box->level = room;
            enterNest(file, *spot.hive, room, landing.under);
        }
        file.change(*box);
    }
    file.add(BoxMove{{},
                     id,
                     on,
                     before.place,
                     before.hive,
                     before.level,
                     box->place,
                     box->hive,
                     landing.late ? landing.level : box->level,
                     inspection,
                     before.stack,
                     box->stack,
                     wasUnder});
    if (left && anyAfter(movesLeft, on)) followLate(file, *left, movesLeft, on);
    if (landing.late && left != spot.hive) followLate(file, *spot.hive, landing.before, on);
    if (ask == Ask::WhatIsHeld) leaveClosed(file, id, inspection);
    // A peg stands for a box on its way through the honey room; out of it, the number is free.
    const bool inRoom = spot.place == BoxPlace::Cleared || spot.place == BoxPlace::Waiting ||
                        spot.place == BoxPlace::Wet;
    auto peg = inRoom ? std::nullopt : pegOfBox(file, id, on);
    if (peg) {
        peg->off = on;
        file.change(*peg);
    }
    return {};
}

}  // namespace

Result<void> moveBoxTo(Write& file, Id<Box> box, const BoxSpot& spot, Day on,
                       std::optional<Id<Inspection>> inspection) {
    return shiftBox(file, box, spot, on, inspection, Ask::WhatIsHeld);
}

Result<void> putBoxBack(Write& file, Id<Box> box, const BoxSpot& spot, Day on) {
    return shiftBox(file, box, spot, on, std::nullopt, Ask::Nothing);
}

Result<void> forgetBox(Write& file, Id<Box> id) {
    auto box = file.find(id);
    if (!box) return Refusal{Code::NotFound, "box", {}};
    const auto moves = file.where<BoxMove>({is("box", id)});
    const bool touched =
        moves.size() > 1 || file.first<BoxLook>({is("box", id)}) ||
        file.first<Frame>({is("box", id)}) || file.first<BoxCount>({is("box", id)}) ||
        file.first<FrameCheck>({is("box", id)}) || file.first<ExtractionBox>({is("box", id)}) ||
        file.first<PullLine>({is("box", id)}) || file.first<Hold>({is("box", id)}) ||
        file.first<BoxReview>({is("box", id)}) || file.first<FreezerLoad>({is("box", id)}) ||
        file.first<RawWax>({is("box", id)}) || file.first<Peg>({is("box", id)}) ||
        file.first<Finding>({is("box", id)});
    if (touched) return Refusal{Code::MovedOn, "box", {{"name", box->mark}}};
    for (const BoxMove& move : moves) file.remove(move.id);
    const auto hive = box->place == BoxPlace::OnHive ? box->hive : std::nullopt;
    file.remove(id);
    if (hive) {
        if (box->level) leaveNest(file, *hive, *box->level);
        closeGap(file, *hive);
    }
    return {};
}

}  // namespace combwright
