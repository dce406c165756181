#include "core/places/yard/followed.h"

#include <algorithm>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/queens.h"

namespace combwright {
namespace {

using WayWhat = WayStep::What;

/// A hive as it was called on a day, with its yard.
void placeOn(const Read& file, std::optional<Id<Hive>> id, Day on, WayStep& step) {
    const auto hive = file.find(id);
    if (!hive) return;
    const Hive then = asItWas(file, *hive, on);
    step.hive = then.mark.text();
    step.yard = nameOf(file, Yard::table, then.yard.number);
}

/// What became of a hive from one day until another, which is no part of it, while the thing stood
/// there: it goes along when the hive is moved or called anew.
void addHiveWay(const Read& file, Id<Hive> hive, Day from, Day to, const std::string& box,
                std::vector<WayStep>& way) {
    for (const HiveMove& move : file.where<HiveMove>({is("hive", hive)})) {
        if (move.on <= from || move.on >= to) continue;
        WayStep step{WayWhat::WithHive, move.on};
        step.box = box;
        step.yard = nameOf(file, Yard::table, move.toYard.number);
        step.hive = move.toMark.text();
        if (move.fromYard != move.toYard) {
            step.fromYard = nameOf(file, Yard::table, move.fromYard.number);
            way.push_back(step);
        }
        if (move.fromMark == move.toMark) continue;
        step.what = WayWhat::Renamed;
        step.fromYard.clear();
        step.fromHive = move.fromMark.text();
        way.push_back(std::move(step));
    }
}

/// A box's moves after one day up to another; the first of all counts as its coming.
void addBoxWay(const Read& file, Id<Box> box, std::optional<Day> after, Day until,
               std::vector<WayStep>& way) {
    const auto moves = file.where<BoxMove>({is("box", box)});
    for (std::size_t i = 0; i < moves.size(); ++i) {
        const BoxMove& move = moves[i];
        if (move.toPlace == BoxPlace::OnHive && move.toHive) {
            const Day gone = i + 1 < moves.size() ? moves[i + 1].on : until + days(1);
            const Day here = after ? std::max(move.on, *after - days(1)) : move.on;
            addHiveWay(file, *move.toHive, here, std::min(gone, until + days(1)),
                       nameOf(file, Box::table, box.number), way);
        }
        if (move.on > until || (after && move.on < *after)) continue;
        // Up or down on its own hive is no way.
        if (move.toPlace == BoxPlace::OnHive && move.fromHive == move.toHive) continue;
        WayStep step{WayWhat::Went, move.on};
        step.box = nameOf(file, Box::table, box.number);
        if (move.toPlace == BoxPlace::OnHive) {
            step.what = WayWhat::Stood;
            placeOn(file, move.toHive, move.on, step);
            step.level = move.toLevel;
        } else {
            step.what = move.fromPlace ? WayWhat::Went : WayWhat::Came;
            step.place = move.toPlace;
            step.stack = move.toStack;
            // Given back to a hive it stands with it.
            placeOn(file, move.toHive, move.on, step);
        }
        if (move.fromHive) step.fromHive = calledOn(file, *move.fromHive, move.on);
        way.push_back(std::move(step));
    }
}

void inDayOrder(std::vector<WayStep>& way) {
    std::stable_sort(way.begin(), way.end(),
                     [](const WayStep& a, const WayStep& b) { return a.on < b.on; });
}

}  // namespace

Followed followBox(const Read& file, Id<Box> id, Day until) {
    Followed followed;
    followed.thing = Followed::Thing::Box;
    const auto box = file.find(id);
    if (!box) return followed;
    followed.name = box->mark;
    if (const auto kind = file.find(box->kind)) followed.kind = kind->name.text();
    addBoxWay(file, id, std::nullopt, until, followed.way);
    inDayOrder(followed.way);
    return followed;
}

Followed followComb(const Read& file, Id<Frame> id, Day until) {
    Followed followed;
    followed.thing = Followed::Thing::Comb;
    const auto frame = file.find(id);
    if (!frame) return followed;
    followed.name = frame->mark;
    if (const auto kind = file.find(frame->kind)) followed.kind = kind->name.text();
    const auto moves = file.where<FrameMove>({is("frame", id)});
    // In which box it hung, from when until when.
    std::optional<Id<Box>> box = moves.empty() ? frame->box : moves.front().fromBox;
    std::optional<Day> from;
    for (const FrameMove& move : moves) {
        if (move.on > until) break;
        if (box) addBoxWay(file, *box, from, move.on, followed.way);
        WayStep step{move.toBox ? WayWhat::InBox : WayWhat::Loose, move.on};
        if (move.toBox) {
            step.box = nameOf(file, Box::table, move.toBox->number);
            const auto into = file.find(*move.toBox);
            for (const BoxMove& each : file.where<BoxMove>({is("box", *move.toBox)}))
                if (into && each.on <= move.on) {
                    step.hive.clear();
                    if (each.toPlace == BoxPlace::OnHive) placeOn(file, each.toHive, move.on, step);
                }
        }
        step.stack = move.toStack;
        followed.way.push_back(std::move(step));
        box = move.toBox;
        // What the box did on the day itself was before the comb came, as far as anybody knows.
        from = move.on + days(1);
    }
    if (box) addBoxWay(file, *box, from, until, followed.way);
    for (const FrameCheck& check : file.where<FrameCheck>({is("frame", id)})) {
        if (check.on > until) continue;
        WayStep step{WayWhat::Checked, check.on};
        step.faults = check.faults;
        step.verdict = check.verdict;
        step.note = check.note;
        followed.way.push_back(std::move(step));
    }
    if (frame->retired && frame->retiredOn && *frame->retiredOn <= until) {
        WayStep step{WayWhat::Retired, *frame->retiredOn};
        step.retired = frame->retired;
        followed.way.push_back(std::move(step));
    }
    inDayOrder(followed.way);
    return followed;
}

Followed followQueen(const Read& file, Id<Queen> id, Day until) {
    Followed followed;
    followed.thing = Followed::Thing::Queen;
    followed.queen = file.find(id);
    if (!followed.queen) return followed;
    followed.name = followed.queen->number;
    followed.colour = colourOf(file, *followed.queen, until);
    followed.mothers = mothersOf(file, *followed.queen);
    followed.daughters = daughtersOf(file, id);
    for (const QueenAt& at : wayOfQueen(file, id, until)) {
        WayStep step{at.from == at.stay.since ? WayWhat::Headed : WayWhat::WithColony, at.from};
        step.hive = at.hive;
        step.yard = at.yard;
        followed.way.push_back(step);
        const Day end = std::min(at.to.value_or(until + days(1)), until + days(1));
        addHiveWay(file, at.stand, at.from, end, {}, followed.way);
        if (!at.to || at.to != at.stay.until) continue;
        WayStep left{WayWhat::Left, *at.to};
        left.hive = at.hive;
        left.yard = at.yard;
        left.left = at.stay.left;
        followed.way.push_back(std::move(left));
    }
    return followed;
}

}  // namespace combwright
