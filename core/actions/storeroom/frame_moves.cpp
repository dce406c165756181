#include "core/actions/storeroom/frame_moves.h"

#include <algorithm>

#include "core/actions/boxes/box_steps.h"
#include "core/actions/boxes/frame_steps.h"
#include "core/actions/storeroom/frame_carrying.h"
#include "core/actions/storeroom/frame_picks.h"
#include "core/actions/storeroom/marked_boxes.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/actions/storeroom/review_line.h"
#include "core/model/season_info.h"

namespace combwright {
namespace {

constexpr std::int64_t mostAtOnce = 1000;

/// A box that takes so many more frames on that day.
Result<void> demandRoom(const Read& file, Id<Box> id, std::int64_t more, Day on,
                        const std::string& field) {
    const auto box = file.find(id);
    if (!box) return Refusal{Code::NotFound, field, {}};
    if (!inUse(*box)) return Refusal{Code::Closed, field, {{"name", box->mark}}};
    if (on < box->since)
        return Refusal{
            Code::BeforeItBegan, "on", {{"name", box->mark}, {"since", isoText(box->since)}}};
    const auto kind = file.find(box->kind);
    const auto most = kind ? mostFrames(*kind) : std::nullopt;
    if (!most) return {};
    const auto room = most->value() - static_cast<std::int64_t>(liveFrames(file, id).size());
    if (more > room)
        return Refusal{Code::TooMany,
                       field == "box" ? "count" : "how_many",
                       {{"most", std::to_string(std::max<std::int64_t>(room, 0))}}};
    return {};
}

}  // namespace

const Fields& AddFrames::fields() {
    static const Fields all =
        describe(field<&AddFrames::on>("on"), field<&AddFrames::frameKind>("frame_kind"),
                 field<&AddFrames::count>("count"), field<&AddFrames::comb>("comb"),
                 field<&AddFrames::drawnYear>("drawn_year"), field<&AddFrames::stack>("stack"),
                 field<&AddFrames::box>("box"), field<&AddFrames::note>("note"));
    return all;
}

Result<std::vector<Id<Frame>>> AddFrames::perform(Write& file) const {
    if (count < Count(1) || count > Count(mostAtOnce))
        return Refusal{
            Code::OutOfRange, "count", {{"low", "1"}, {"high", std::to_string(mostAtOnce)}}};
    if (box && !stack.empty()) return Refusal{Code::Contradiction, "stack", {{"other", "box"}}};
    if (!file.find(frameKind)) return Refusal{Code::NotFound, "frame_kind", {}};
    const bool undrawn = comb == Comb::Bare || comb == Comb::Foundation;
    if (drawnYear && undrawn)
        return Refusal{Code::Contradiction, "drawn_year", {{"other", "comb"}}};
    if (drawnYear && (drawnYear->value() < 1900 || drawnYear->value() > yearOf(on)))
        return Refusal{
            Code::OutOfRange, "drawn_year", {{"low", "1900"}, {"high", isoText(on).substr(0, 4)}}};
    if (box)
        if (auto room = demandRoom(file, *box, count.value(), on, "box"); !room)
            return room.error();
    if (box)
        if (auto takes = demandTakesIn(file, *file.find(*box), on, note, "box"); !takes)
            return takes.error();
    if (box) {
        const auto kind = file.find(file.find(*box)->kind);
        const bool usual = kind && kind->takes == frameKind;
        file.add(BoxCount{{},
                          *box,
                          on,
                          Occasion::Added,
                          comb,
                          {},
                          count,
                          std::nullopt,
                          usual ? std::nullopt : std::optional(frameKind)});
    }
    std::vector<Id<Frame>> made;
    for (std::int64_t n = 0; n < count.value(); ++n) {
        Frame frame;
        frame.kind = frameKind;
        frame.box = box;
        frame.comb = comb;
        frame.drawnYear = drawnYear;
        frame.stack = stack;
        frame.note = note;
        made.push_back(file.add(frame));
    }
    return made;
}

const Fields& MoveFrames::fields() {
    static const Fields all =
        describe(field<&MoveFrames::on>("on"), field<&MoveFrames::howMany>("how_many"),
                 field<&MoveFrames::frameKind>("frame_kind"), field<&MoveFrames::comb>("comb"),
                 field<&MoveFrames::seen>("seen"), field<&MoveFrames::fromBox>("from_box"),
                 field<&MoveFrames::fromStack>("from_stack"), field<&MoveFrames::toBox>("to_box"),
                 field<&MoveFrames::toStack>("to_stack"), field<&MoveFrames::note>("note"));
    return all;
}

Result<std::vector<Id<Frame>>> MoveFrames::perform(Write& file) const {
    if (fromBox && !fromStack.empty())
        return Refusal{Code::Contradiction, "from_stack", {{"other", "from_box"}}};
    if (toBox && !toStack.empty())
        return Refusal{Code::Contradiction, "to_stack", {{"other", "to_box"}}};
    if (!toBox && toStack.empty()) return Refusal{Code::Missing, "to_box", {}};
    if (fromBox)
        if (auto about = demandAbout(file, *fromBox, "from_box"); !about) return about.error();
    if (fromBox && fromBox == toBox) return Refusal{Code::NothingToDo, "to_box", {}};
    const auto letters = parseFrameSeen(seen);
    if (!letters) return Refusal{letters.error().code, "seen", letters.error().values};
    FramesWanted wanted{
        .in = fromBox ? NamedBoxes{{*fromBox}, false, true} : NamedBoxes{{}, true, true},
        .kind = frameKind,
        .comb = comb ? comb : letters->comb};
    wanted.seen = letters->faults;
    if (!fromStack.empty()) wanted.stack = fromStack;
    wanted.also = [&](const Frame& frame) { return toBox || fromBox || frame.stack != toStack; };
    const HeldThings held = heldThings(file, on);
    // Of frames alike those that are free are meant.
    auto all = framesWanted(file, wanted);
    std::stable_partition(all.begin(), all.end(),
                          [&](const Frame& frame) { return !isHeld(held, frame); });
    auto meant = firstOf(std::move(all), howMany);
    if (!meant) return meant.error();
    if (toBox)
        if (auto room = demandRoom(file, *toBox, howMany.value(), on, "to_box"); !room)
            return room.error();
    for (const Frame& frame : *meant)
        if (diseaseHeld(held, frame)) return heldBack(file, held, frame, "from_box");
    const bool heldThere =
        toBox && !demandTakesIn(file, *file.find(*toBox), on, std::string(), "to_box");
    if (heldThere)
        if (auto takes = demandTakesIn(file, *file.find(*toBox), on, note, "to_box"); !takes)
            return takes.error();
    for (Frame& frame : *meant) {
        if (isHeld(held, frame) && note.empty()) return heldBack(file, held, frame, "note");
        if (isHeld(held, frame) || heldThere) addNote(frame, note);
        // What its box is held for goes with it: the move is written down.
        moveFrameTo(file, frame, toBox, toStack, on);
    }
    std::vector<Id<Frame>> moved;
    for (const Frame& frame : *meant) moved.push_back(frame.id);
    return moved;
}

const Fields& MendBoxes::fields() {
    static const Fields all = describe(
        field<&MendBoxes::on>("on"), field<&MendBoxes::boxes>("boxes"),
        field<&MendBoxes::condition>("condition"), field<&MendBoxes::wantsPaint>("wants_paint"));
    return all;
}

Result<std::vector<Id<Box>>> MendBoxes::perform(Write& file) const {
    if (boxes.empty()) return Refusal{Code::Missing, "boxes", {}};
    const auto named = boxesNamed(file, boxes);
    if (!named) return named.error();
    if (condition == BoxCondition::Scrapped || condition == BoxCondition::Burnt)
        return Refusal{Code::OtherAction, "condition", {{"action", "amend"}}};
    std::vector<Id<Box>> mended;
    for (const Id<Box> id : named->boxes) {
        auto box = file.find(id);
        if (!inUse(*box)) return Refusal{Code::Closed, "boxes", {{"name", box->mark}}};
        const Box before = *box;
        if (condition || !wantsPaint) box->condition = condition.value_or(BoxCondition::Sound);
        if (wantsPaint) box->wantsPaint = wantsPaint;
        if (toRow(*box) == toRow(before)) continue;
        file.change(*box);
        mended.push_back(id);
    }
    if (mended.empty()) return Refusal{Code::NothingToDo, "boxes", {}};
    return mended;
}

}  // namespace combwright
