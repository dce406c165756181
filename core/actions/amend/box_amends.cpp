#include <algorithm>

#include "core/actions/amend/amend_rules.h"
#include "core/actions/amend/coming.h"
#include "core/actions/boxes/box_steps.h"
#include "core/actions/boxes/looks.h"
#include "core/model/season_info.h"
#include "core/storage/queries/holds.h"

namespace combwright {
namespace {

/// A kind misread: the frames counted in the box are then of the kind that box takes.
Result<void> changeKind(Write& file, const Box& after) {
    const auto kind = file.find(after.kind);
    auto frames = file.where<Frame>({is("box", after.id), isUnknown("retired")});
    const bool pointedAt = std::any_of(frames.begin(), frames.end(), [](const Frame& frame) {
        return frame.position.has_value();
    });
    if (pointedAt) return against("kind", "frame");
    if (file.first<ExtractionBox>({is("box", after.id)})) return against("kind", "extraction_box");
    if (frames.empty()) return {};
    if (!kind->takes) return against("kind", "frames");
    const auto most = mostFrames(*kind);
    if (most && static_cast<std::int64_t>(frames.size()) > most->value())
        return Refusal{Code::TooMany, "kind", {{"most", std::to_string(most->value())}}};
    for (Frame& frame : frames) {
        frame.kind = *kind->takes;
        file.change(frame);
    }
    return {};
}

Result<void> settleBox(Write& file, const Box& before, Box& after) {
    if (!after.mark.empty()) {
        const auto mark = Name::of(after.mark);
        if (!mark) return Refusal{Code::WrongType, "mark", {{"wanted", "a mark"}}};
        after.mark = mark->text();
    }
    const bool named = after.mark != before.mark || (inUse(after) && !inUse(before));
    if (named && inUse(after) && markTaken(file, after.mark, after.id))
        return Refusal{Code::Taken, "mark", {{"name", after.mark}}};
    if (!inUse(after) && after.place == BoxPlace::OnHive) return against("condition", "place");
    if (after.kind != before.kind)
        if (auto changed = changeKind(file, after); !changed) return changed;
    if (after.since != before.since) {
        const auto coming = file.first<BoxMove>({is("box", after.id)});
        const auto hive = coming ? file.find(coming->toHive) : std::nullopt;
        if (hive && after.since < hive->since)
            return Refusal{Code::BeforeItBegan,
                           "since",
                           {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
        return moveComing(file, after.id, before.since, after.since, "since");
    }
    return {};
}

Result<void> settleLook(Write& file, const BoxLook& before, BoxLook& after) {
    if (after.on != before.on) {
        const auto box = file.find(after.box);
        if (after.on < box->since)
            return Refusal{Code::BeforeItBegan,
                           "on_day",
                           {{"name", box->mark}, {"since", isoText(box->since)}}};
        if (file.first<BoxLook>({is("box", after.box), is("on_day", after.on)}))
            return Refusal{Code::Taken, "on_day", {{"name", isoText(after.on)}}};
    }
    return demandLook(file, after);
}

Result<void> tidy(std::string& faults) {
    const auto letters = tidyFaults(faults);
    if (!letters)
        return Refusal{
            Code::NotAChoice, "faults", {{"value", faults}, {"choices", faultLetters()}}};
    faults = *letters;
    return {};
}

/// Only a frame the keeper pointed at has values of its own; the others are counted.
Result<void> settleFrame(Write& file, const Frame& before, Frame& after) {
    if (!before.position) return Refusal{Code::OtherAction, {}, {{"action", "check-frames"}}};
    if (!after.position) return Refusal{Code::Fixed, "position", {}};
    if (auto ok = tidy(after.faults); !ok) return ok;
    const auto box = file.find(after.box);
    const auto kind = box ? file.find(box->kind) : std::nullopt;
    const auto most = kind ? mostFrames(*kind) : std::nullopt;
    if (*after.position < Count(1) || (most && *after.position > *most))
        return Refusal{Code::OutOfRange,
                       "position",
                       {{"low", "1"}, {"high", most ? std::to_string(most->value()) : "…"}}};
    if (after.position != before.position && after.box)
        for (const Frame& each : file.where<Frame>({is("box", *after.box), isUnknown("retired")}))
            if (each.id != after.id && each.position == after.position)
                return Refusal{
                    Code::Taken, "position", {{"name", std::to_string(after.position->value())}}};
    return {};
}

Result<void> settleCheck(Write& file, const FrameCheck& before, FrameCheck& after) {
    if (auto ok = tidy(after.faults); !ok) return ok;
    if (after.faults.empty() && !after.verdict && after.note.empty())
        return Refusal{Code::Missing, "verdict", {}};
    if (after.howMany != before.howMany) {
        if (after.frame) return against("how_many", "frame");
        if (!after.howMany || *after.howMany < Count(1))
            return Refusal{Code::OutOfRange, "how_many", {{"low", "1"}, {"high", "…"}}};
        const auto box = file.find(after.box);
        const auto kind = box ? file.find(box->kind) : std::nullopt;
        const auto most = kind ? mostFrames(*kind) : std::nullopt;
        if (most && *after.howMany > *most)
            return Refusal{Code::TooMany, "how_many", {{"most", std::to_string(most->value())}}};
    }
    const auto box = file.find(after.box);
    if (box && after.on < box->since)
        return Refusal{
            Code::BeforeItBegan, "on_day", {{"name", box->mark}, {"since", isoText(box->since)}}};
    if (!after.frame || after.faults == before.faults) return {};
    // The frame bears what was seen of it last.
    auto frame = file.find(*after.frame);
    if (frame->faults != before.faults) return {};
    frame->faults = after.faults;
    file.change(*frame);
    return {};
}

Result<void> settleHold(Write&, const Hold& before, Hold& after) {
    // A suspicion is never lowered by writing over it: it is released, on grounds.
    if (keepsApart(before) && after.why != before.why)
        return Refusal{Code::OtherAction, "why", {{"action", "release-hold"}}};
    if (keepsApart(before) && !before.grounds.empty() && after.grounds.empty())
        return Refusal{Code::Missing, "grounds", {}};
    if (keepsApart(before) && !before.liftedBy.empty() && after.liftedBy.empty())
        return Refusal{Code::Missing, "lifted_by", {}};
    if (!before.lifted && after.lifted)
        return Refusal{Code::OtherAction, "lifted", {{"action", "release-hold"}}};
    if (before.lifted && !after.lifted)
        return Refusal{Code::OtherAction, "lifted", {{"action", "hold-back"}}};
    if (!after.lifted && !after.liftedBy.empty()) return against("lifted_by", "lifted");
    if (!after.lifted && !after.grounds.empty()) return against("grounds", "lifted");
    if (after.lifted && *after.lifted < after.since)
        return after.lifted == before.lifted ? against("since", "lifted")
                                             : against("lifted", "since");
    return {};
}

}  // namespace

std::vector<AmendType> boxAmends() {
    return {
        amends<Box>({{"place", "move-box"},
                     {"hive", "move-box"},
                     {"level", "move-box"},
                     {"stack", "move-box"}},
                    &settleBox),
        amends<BoxLook>({{"box", ""}, {"inspection", ""}}, &settleLook),
        amends<Frame>(
            {{"kind", ""}, {"box", ""}, {"frozen", ""}, {"retired", ""}, {"retired_on", ""}},
            &settleFrame),
        amends<FrameCheck>({{"frame", ""}, {"box", ""}}, &settleCheck),
        amends<Hold>({{"colony", ""},
                      {"box", ""},
                      {"frame", ""},
                      {"bucket", ""},
                      {"lot", ""},
                      {"bottling", ""},
                      {"because", ""}},
                     &settleHold),
    };
}

}  // namespace combwright
