#include "core/actions/boxes/looks.h"

#include <algorithm>

#include "core/actions/boxes/box_list.h"
#include "core/actions/boxes/box_steps.h"
#include "core/actions/boxes/frame_steps.h"
#include "core/actions/storeroom/frame_carrying.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/catalogue/constants.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

Result<Box> presentBox(const Read& file, Id<Box> id, Day on) {
    auto box = file.find(id);
    if (!box) return Refusal{Code::NotFound, "box", {}};
    if (on < box->since)
        return Refusal{
            Code::BeforeItBegan, "on", {{"name", box->mark}, {"since", isoText(box->since)}}};
    return *std::move(box);
}

/// A hold for the same reason on the same thing that stands, or was not lifted yet on that day.
std::optional<Hold> heldAlready(const Read& file, const Hold& wanted) {
    for (const Hold& each : file.where<Hold>({is("why", wanted.why)}))
        if (each.box == wanted.box && each.colony == wanted.colony &&
            each.bucket == wanted.bucket && each.frame == wanted.frame && each.lot == wanted.lot &&
            each.bottling == wanted.bottling && (!each.lifted || standsOn(each, wanted.since)))
            return each;
    return std::nullopt;
}

/// "full_frame_g LANG-F-MED" is the keeper's own weight of honey in a full frame of a kind,
/// "empty_box_g LANG10-MED" that of a box with empty comb; every other name stands in the
/// catalogue.
bool isConstant(const Read& file, const std::string& name) {
    constexpr std::string_view fullFrame = "full_frame_g ";
    constexpr std::string_view emptyBox = "empty_box_g ";
    if (name.starts_with(fullFrame))
        return file.first<FrameKind>({is("code", name.substr(fullFrame.size()))}).has_value();
    if (name.starts_with(emptyBox))
        return file.first<BoxKind>({is("code", name.substr(emptyBox.size()))}).has_value();
    return findPublishedConstant(name) != nullptr;
}

}  // namespace

Result<void> demandLook(const Read& file, const BoxLook& look) {
    const auto box = file.find(look.box);
    const auto kind = box ? file.find(box->kind) : std::nullopt;
    BoxContents contents;
    contents.capped = look.cappedFrames;
    if (look.frames) contents.tallies.push_back({*look.frames, std::nullopt, {}});
    if (kind)
        if (auto fits = demandFits(*kind, contents); !fits)
            return Refusal{fits.error().code, look.frames ? "frames" : "capped_frames",
                           fits.error().values};
    const auto& capped = look.cappedFrames;
    if (look.frames && capped && capped->value &&
        capped->value->count() > look.frames->value() * 10)
        return Refusal{Code::Contradiction, "capped_frames", {{"other", "frames"}}};
    return {};
}

const Fields& LookBox::fields() {
    static const Fields all =
        describe(field<&LookBox::on>("on"), field<&LookBox::box>("box"),
                 field<&LookBox::contents>("contents"), known<&LookBox::filled>("filled"),
                 field<&LookBox::water>("water"), known<&LookBox::toFork>("to_fork"),
                 field<&LookBox::broodIn>("brood_in"), field<&LookBox::note>("note"));
    return all;
}

Result<Id<BoxLook>> LookBox::perform(Write& file) const {
    const auto present = presentBox(file, box, on);
    if (!present) return present.error();
    const auto read = parseContents(contents);
    if (!read) return read.error();
    if (const auto kind = file.find(present->kind))
        if (auto fits = demandFits(*kind, *read); !fits) return fits.error();
    if (filled && read->filled)
        return Refusal{Code::Contradiction, "filled_share", {{"other", "contents"}}};

    BoxLook look;
    const auto earlier = file.where<BoxLook>({is("box", box), is("on_day", on)});
    if (!earlier.empty()) look = earlier.back();
    look.box = box;
    look.on = on;
    look.frames = read->tallies.empty() ? std::nullopt : std::optional(read->frames());
    look.cappedFrames = read->capped;
    look.filled = filled ? filled : read->filled;
    look.toFork = toFork;
    look.water = water;
    look.broodIn = broodIn;
    look.note = note;
    quarantineCounted(file, box, *read, on);
    if (!look.id) return file.add(look);
    file.change(look);
    return look.id;
}

const Fields& CountBox::fields() {
    static const Fields all =
        describe(field<&CountBox::on>("on"), field<&CountBox::box>("box"),
                 field<&CountBox::contents>("contents"), field<&CountBox::occasion>("occasion"));
    return all;
}

Result<Id<Box>> CountBox::perform(Write& file) const {
    const auto present = presentBox(file, box, on);
    if (!present) return present.error();
    const auto kind = file.find(present->kind);
    const auto read = parseContents(contents);
    if (!read) return read.error();
    if (read->tallies.empty()) return Refusal{Code::Missing, "contents", {}};
    if (kind)
        if (auto fits = demandFits(*kind, *read); !fits) return fits.error();
    if (!kind || !kind->takes)
        return Refusal{Code::UnknownSize, "box", {{"name", kind ? kind->name.text() : ""}}};

    quarantineCounted(file, box, *read, on);
    std::vector<CountedFrame> counted;
    for (const FrameTally& tally : read->tallies) {
        file.add(BoxCount{{},
                          box,
                          on,
                          occasion.value_or(Occasion::Visit),
                          tally.comb,
                          tally.faults,
                          tally.frames,
                          std::nullopt,
                          std::nullopt});
        for (std::int64_t n = 0; n < tally.frames.value(); ++n)
            counted.push_back({*kind->takes, tally.comb, tally.faults, std::nullopt});
    }
    for (MetFrame& met : meetFrames(file, box, counted, on)) {
        Frame& frame = met.frame;
        // A frame known apart from the others is part of the count and keeps what was seen of it.
        if (met.isNew || isKnownApart(file, frame)) continue;
        const Frame before = frame;
        // A count gives no reason: what is held by its verdict stays so.
        if (frame.verdict == Verdict::Hold) continue;
        if (frame.faults != met.counted.faults) frame.verdict.reset();
        frame.comb = met.counted.comb;
        frame.faults = met.counted.faults;
        if (toRow(frame) != toRow(before)) file.change(frame);
    }
    return box;
}

const Fields& HoldBack::fields() {
    static const Fields all =
        describe(field<&HoldBack::on>("on"), field<&HoldBack::reason>("reason"),
                 field<&HoldBack::box>("box"), field<&HoldBack::hive>("hive"),
                 field<&HoldBack::bucket>("bucket"), field<&HoldBack::lot>("lot"),
                 field<&HoldBack::bottling>("bottling"), field<&HoldBack::note>("note"));
    return all;
}

Result<Id<Hold>> HoldBack::perform(Write& file) const {
    const int named = box.has_value() + hive.has_value() + bucket.has_value() + lot.has_value() +
                      bottling.has_value();
    if (named == 0) return Refusal{Code::Missing, "box", {}};
    if (named > 1) return Refusal{Code::Contradiction, "box", {{"other", "hive"}}};
    Hold hold;
    hold.box = box;
    hold.bucket = bucket;
    hold.lot = lot;
    hold.bottling = bottling;
    hold.why = reason;
    hold.since = on;
    hold.note = note;
    if (hive) {
        // Also one that ended: disease is often found in what it left.
        const auto colony = lastColonyIn(file, *hive, on);
        if (!colony)
            return Refusal{
                Code::NotFound,
                "hive",
                {{"name", nameOf(file, Hive::table, hive->number)}, {"lacks", "colony"}}};
        hold.colony = colony->id;
    }
    // It is held once; that it began earlier is put right on the hold there is.
    if (const auto already = heldAlready(file, hold)) {
        const std::string field = box      ? "box"
                                  : hive   ? "hive"
                                  : bucket ? "bucket"
                                  : lot    ? "lot"
                                           : "bottling";
        if (on < already->since) return Refusal{Code::OtherAction, field, {{"action", "amend"}}};
        return Refusal{Code::NothingToDo, field, {}};
    }
    return file.add(hold);
}

const Fields& ReleaseHold::fields() {
    static const Fields all = describe(
        field<&ReleaseHold::on>("on"), field<&ReleaseHold::hold>("hold"),
        field<&ReleaseHold::liftedBy>("lifted_by"), field<&ReleaseHold::grounds>("grounds"));
    return all;
}

Result<Id<Hold>> ReleaseHold::perform(Write& file) const {
    auto present = file.find(hold);
    if (!present) return Refusal{Code::NotFound, "hold", {}};
    if (present->lifted) return Refusal{Code::NothingToDo, "hold", {}};
    if (on < present->since)
        return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(present->since)}}};
    // A state is never lowered without saying who looked and what was found.
    if (keepsApart(*present) && liftedBy.empty()) return Refusal{Code::Missing, "lifted_by", {}};
    if (keepsApart(*present) && grounds.empty()) return Refusal{Code::Missing, "grounds", {}};
    auto lifted = file.where<Hold>({is("because", hold), isUnknown("lifted")});
    lifted.insert(lifted.begin(), *present);
    for (Hold& each : lifted) {
        each.lifted = std::max(on, each.since);
        each.liftedBy = liftedBy;
        each.grounds = grounds;
        file.change(each);
    }
    return hold;
}

const Fields& SetConstant::fields() {
    static const Fields all =
        describe(field<&SetConstant::on>("on"), field<&SetConstant::constant>("constant"),
                 field<&SetConstant::value>("value"), field<&SetConstant::yard>("yard"),
                 field<&SetConstant::source>("source"));
    return all;
}

Result<Id<Constant>> SetConstant::perform(Write& file) const {
    if (!isConstant(file, constant.text()))
        return Refusal{Code::NotFound, "constant", {{"name", constant.text()}}};
    if (value < Number()) return Refusal{Code::Negative, "value", {}};
    return file.add(Constant{{}, constant, yard, on, value, source, {}});
}

const Fields& UnsetConstant::fields() {
    static const Fields all =
        describe(field<&UnsetConstant::on>("on"), field<&UnsetConstant::constant>("constant"),
                 field<&UnsetConstant::yard>("yard"));
    return all;
}

Result<Id<Constant>> UnsetConstant::perform(Write& file) const {
    if (!isConstant(file, constant.text()))
        return Refusal{Code::NotFound, "constant", {{"name", constant.text()}}};
    std::optional<Id<Constant>> ended;
    // Those before it too: else an older one would come back.
    for (Constant& each : file.where<Constant>({is("name", constant.text())})) {
        if (each.yard != yard || each.since > on || (each.until && *each.until <= on)) continue;
        each.until = on;
        file.change(each);
        ended = each.id;
    }
    if (!ended) return Refusal{Code::NothingToDo, "constant", {{"name", constant.text()}}};
    return *ended;
}

}  // namespace combwright
