#include "core/actions/yard/splits.h"

#include "core/actions/boxes/box_steps.h"
#include "core/actions/storeroom/frame_moves.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/actions/yard/colonies.h"
#include "core/actions/yard/colony_steps.h"
#include "core/actions/yard/sheet.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

Result<Id<Colony>> startOn(Write& file, Id<Hive> stand, Day on, Origin origin,
                           std::optional<Id<Hive>> mother, const std::string& note,
                           const std::string& reason) {
    StartColony start;
    start.on = on;
    start.hive = stand;
    start.origin = origin;
    start.mother = mother;
    start.note = note;
    start.reason = reason;
    return start.perform(file);
}

/// Frames nobody counted cannot be named, yet they were carried: so many of them are known now,
/// though no more than fit.
Result<void> meetUncounted(Write& file, Id<Box> id, Count wanted) {
    const auto box = file.find(id);
    const auto kind = box ? file.find(box->kind) : std::nullopt;
    const auto most = kind ? mostFrames(*kind) : std::nullopt;
    if (!kind || !kind->takes || file.first<BoxCount>({is("box", id)})) return {};
    if (most && wanted > *most)
        return Refusal{Code::TooMany, "frames", {{"most", std::to_string(most->value())}}};
    const auto known = file.where<Frame>({is("box", id), isUnknown("retired")}).size();
    for (auto n = static_cast<std::int64_t>(known); n < wanted.value(); ++n) {
        Frame frame;
        frame.kind = *kind->takes;
        frame.box = id;
        file.add(frame);
    }
    return {};
}

/// So many frames out of a box of the mother into one of the new stand.
Result<void> carryFrames(Write& file, const SplitColony& split, Id<Hive> stand) {
    if (!split.frames) {
        if (split.fromBox) return Refusal{Code::Missing, "frames", {}};
        if (split.toBox) return Refusal{Code::Missing, "frames", {}};
        return {};
    }
    const auto lowest = [&](Id<Hive> hive) -> std::optional<Id<Box>> {
        const auto boxes = boxesOn(file, hive);
        return boxes.empty() ? std::nullopt : std::optional(boxes.front().id);
    };
    MoveFrames carry;
    carry.on = split.on;
    carry.howMany = *split.frames;
    carry.fromBox = split.fromBox ? split.fromBox : lowest(split.hive);
    carry.toBox = split.toBox ? split.toBox : lowest(stand);
    carry.note = split.reason;
    if (!carry.toBox && !split.onto) return Refusal{Code::Missing, "new_boxes", {}};
    if (!carry.toBox)
        return Refusal{Code::Missing, "boxes", {{"hive", file.find(stand)->mark.text()}}};
    if (!carry.fromBox) return Refusal{Code::Missing, "from_box", {}};
    const auto standsOn = [&](Id<Box> id, Id<Hive> hive) {
        const auto box = file.find(id);
        return box && box->place == BoxPlace::OnHive && box->hive == hive;
    };
    if (!standsOn(*carry.fromBox, split.hive))
        return Refusal{Code::Contradiction, "from_box", {{"other", "hive"}}};
    if (!standsOn(*carry.toBox, stand))
        return Refusal{Code::Contradiction, "to_box", {{"other", "onto"}}};
    if (auto met = meetUncounted(file, *carry.fromBox, *split.frames); !met) return met;
    if (auto carried = carry.perform(file); !carried) {
        Refusal refusal = carried.error();
        if (refusal.field == "how_many") refusal.field = "frames";
        if (refusal.field == "note") refusal.field = "reason";
        return refusal;
    }
    return {};
}

/// The queen of one colony goes along with bees to another.
void carryQueen(Write& file, Id<Colony> from, Id<Colony> to, Day on, QueenLeft left) {
    const QueenStay stay = metQueen(file, from, on);
    endQueenStay(file, from, on, left);
    beginQueenStay(file, stay.queen, to, on);
}

}  // namespace

const Fields& SplitColony::fields() {
    static const Fields all = describe(
        field<&SplitColony::on>("on"), field<&SplitColony::hive>("hive"),
        field<&SplitColony::onto>("onto"), field<&SplitColony::yard>("yard"),
        field<&SplitColony::mark>("mark"), field<&SplitColony::newBoxes>("new_boxes"),
        field<&SplitColony::boxes>("boxes"), field<&SplitColony::frames>("frames"),
        field<&SplitColony::fromBox>("from_box"), field<&SplitColony::toBox>("to_box"),
        field<&SplitColony::queenGoes>("queen_goes"), field<&SplitColony::step>("step"),
        field<&SplitColony::notSeenOn>("not_seen_on"), field<&SplitColony::note>("note"),
        field<&SplitColony::reason>("reason"), field<&SplitColony::withBrood>("with_brood"));
    return all;
}

Result<Id<Colony>> SplitColony::perform(Write& file) const {
    const auto mother = livingColony(file, hive, on, "hive");
    if (!mother) return mother.error();
    if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    if (auto wait = demandWait({step, notSeenOn}, on); !wait) return wait.error();
    if (step && !queenGoes) return Refusal{Code::Missing, "queen_goes", {}};
    if (withBrood && !frames) return Refusal{Code::Missing, "frames", {}};
    if (withBrood && *withBrood > *frames)
        return Refusal{Code::TooMany, "with_brood", {{"most", std::to_string(frames->value())}}};
    if (auto by = demandQueenBy(file, mother->colony.id, on); !by) return by.error();
    // A new stand comes into the mother's yard unless another is named.
    const auto home = onto ? yard : std::optional(yard.value_or(mother->hive.yard));
    const auto stand = emptyStand(file, {onto, home, mark, newBoxes}, on, "onto");
    if (!stand) return stand.error();
    if (auto carried = carryBoxes(file, hive, *stand, boxes, on, reason); !carried)
        return carried.error();
    if (auto carried = carryFrames(file, *this, *stand); !carried) return carried.error();
    auto made = startOn(file, *stand, on, Origin::Split, hive, note, reason);
    if (!made) {
        Refusal refusal = made.error();
        if (refusal.field == "hive") refusal.field = "onto";
        return refusal;
    }
    if (queenGoes == true) {
        carryQueen(file, mother->colony.id, *made, on, QueenLeft::Moved);
        endWaits(file, mother->colony.id, on);
    }
    if (step) {
        const bool motherWaits = *queenGoes;
        beginWait(file, motherWaits ? hive : *stand, motherWaits ? mother->colony.id : *made, on,
                  *step, notSeenOn, {});
    }
    if (withBrood) {
        LookInto look{on, *stand, {}};
        look.seen.seen.brood =
            Known<Frames>{Frames::whole(withBrood->value()), std::nullopt, How::Counted};
        if (auto seen = look.perform(file); !seen) return seen.error();
    }
    return *made;
}

const Fields& UniteColonies::fields() {
    static const Fields all = describe(
        field<&UniteColonies::on>("on"), field<&UniteColonies::hive>("hive"),
        field<&UniteColonies::into>("into"), field<&UniteColonies::queenKept>("queen_kept"),
        field<&UniteColonies::boxesTo>("boxes_to"), field<&UniteColonies::stack>("stack"),
        field<&UniteColonies::note>("note"), field<&UniteColonies::reason>("reason"));
    return all;
}

Result<Id<Colony>> UniteColonies::perform(Write& file) const {
    const auto goes = livingColony(file, hive, on, "hive");
    if (!goes) return goes.error();
    const auto host = livingColony(file, into, on, "into");
    if (!host) return host.error();
    if (hive == into) return Refusal{Code::Contradiction, "into", {{"other", "hive"}}};
    for (const auto& colony : {goes->colony.id, host->colony.id})
        if (auto by = demandQueenBy(file, colony, on); !by) return by.error();
    if (queenKept == QueenKept::Other) {
        endQueenStay(file, host->colony.id, on, QueenLeft::Lost);
        carryQueen(file, goes->colony.id, host->colony.id, on, QueenLeft::Moved);
    } else {
        endQueenStay(file, goes->colony.id, on,
                     queenKept == QueenKept::Host ? QueenLeft::Lost : QueenLeft::NotKnown);
    }
    // Bees that got a queen wait for none.
    if (queenKept && *queenKept != QueenKept::NotKnown) endWaits(file, host->colony.id, on);
    EndColony end;
    end.on = on;
    end.hive = hive;
    end.ending = Ending::United;
    end.into = into;
    end.note = note;
    auto ended = end.perform(file);
    if (!ended) return ended.error();
    if (!boxesTo) return *ended;
    const auto onto = *boxesTo == BoxPlace::OnHive ? std::optional(into) : std::nullopt;
    if (auto cleared = clearAway(file, hive, *boxesTo, onto, stack, reason, on); !cleared)
        return cleared.error();
    return *ended;
}

const Fields& Swarmed::fields() {
    static const Fields all =
        describe(field<&Swarmed::on>("on"), field<&Swarmed::hive>("hive"),
                 field<&Swarmed::queenGoes>("queen_goes"), field<&Swarmed::step>("step"),
                 field<&Swarmed::notSeenOn>("not_seen_on"), field<&Swarmed::note>("note"));
    return all;
}

Result<Id<Colony>> Swarmed::perform(Write& file) const {
    const auto colony = livingColony(file, hive, on, "hive");
    if (!colony) return colony.error();
    const QueenStep by = step.value_or(QueenStep::CellSealed);
    if (auto wait = demandWait({by, notSeenOn}, on); !wait) return wait.error();
    if (auto known = demandQueenBy(file, colony->colony.id, on); !known) return known.error();
    if (queenGoes.value_or(true)) {
        metQueen(file, colony->colony.id, on);
        endQueenStay(file, colony->colony.id, on, QueenLeft::Swarmed);
    }
    beginWait(file, hive, colony->colony.id, on, by, notSeenOn, note);
    return colony->colony.id;
}

const Fields& HiveSwarm::fields() {
    static const Fields all =
        describe(field<&HiveSwarm::on>("on"), field<&HiveSwarm::hive>("hive"),
                 field<&HiveSwarm::yard>("yard"), field<&HiveSwarm::mark>("mark"),
                 field<&HiveSwarm::newBoxes>("new_boxes"), field<&HiveSwarm::from>("from_hive"),
                 field<&HiveSwarm::queenGoes>("queen_goes"), field<&HiveSwarm::step>("step"),
                 field<&HiveSwarm::notSeenOn>("not_seen_on"), field<&HiveSwarm::note>("note"),
                 field<&HiveSwarm::reason>("reason"));
    return all;
}

Result<Id<Colony>> HiveSwarm::perform(Write& file) const {
    std::optional<LivingColony> source;
    if (from) {
        const auto living = livingColony(file, *from, on, "from_hive");
        if (!living) return living.error();
        source = *living;
        if (auto known = demandQueenBy(file, source->colony.id, on); !known) return known.error();
    } else if (queenGoes || step) {
        return Refusal{Code::Missing, "from_hive", {}};
    }
    if (auto wait = demandWait({step, notSeenOn}, on); !wait) return wait.error();
    const auto stand = emptyStand(file, {hive, yard, mark, newBoxes}, on, "hive");
    if (!stand) return stand.error();
    auto made = startOn(file, *stand, on, Origin::Swarm, from, note, reason);
    if (!made) {
        Refusal refusal = made.error();
        if (refusal.field == "mother") refusal.field = "from_hive";
        return refusal;
    }
    if (!source) return *made;
    if (queenGoes == true) carryQueen(file, source->colony.id, *made, on, QueenLeft::Swarmed);
    if (step || queenGoes == true)
        beginWait(file, *from, source->colony.id, on, step.value_or(QueenStep::CellSealed),
                  notSeenOn, {});
    return *made;
}

const Fields& MoveColony::fields() {
    static const Fields all =
        describe(field<&MoveColony::on>("on"), field<&MoveColony::hive>("hive"),
                 field<&MoveColony::to>("to_hive"), field<&MoveColony::boxes>("boxes"),
                 field<&MoveColony::note>("note"), field<&MoveColony::reason>("reason"),
                 field<&MoveColony::combs>("combs"));
    return all;
}

Result<Id<Colony>> MoveColony::perform(Write& file) const {
    auto living = livingColony(file, hive, on, "hive");
    if (!living) return living.error();
    if (hive == to) return Refusal{Code::NothingToDo, "to_hive", {}};
    const auto stand = openStand(file, to, on, "to_hive");
    if (!stand) return stand.error();
    if (auto empty = demandEmptyHive(file, *stand, on, "to_hive"); !empty) return empty.error();
    if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    if (auto livable = demandLivable(file, to, on, reason, "to_hive"); !livable)
        return livable.error();
    noteLivedIn(file, to, reason, on);
    if (const auto held = demandLivable(file, to, on, {}, "to_hive"); !held)
        addOverruled(living->colony.note, on, held.error().value("why"), reason);
    file.add(ColonyMove{{}, living->colony.id, on, hive, to, note});
    living->colony.hive = to;
    file.change(living->colony);
    if (auto carried = carryBoxes(file, hive, to, boxes, on, reason); !carried)
        return carried.error();
    if (combs == true)
        if (auto carried = carryCombs(file, hive, to, on, reason); !carried) return carried.error();
    return living->colony.id;
}

}  // namespace combwright
