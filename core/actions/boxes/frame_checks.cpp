#include "core/actions/boxes/frame_checks.h"

#include <algorithm>

#include "core/actions/boxes/box_steps.h"
#include "core/actions/storeroom/frame_picks.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/actions/storeroom/review_line.h"
#include "core/places/storeroom/verdicts.h"

namespace combwright {
namespace {

std::vector<Frame> framesCounted(const Read& file, Id<Box> box) {
    auto frames = file.where<Frame>({is("box", box), isUnknown("retired")});
    std::erase_if(frames, [](const Frame& frame) { return frame.position.has_value(); });
    return frames;
}

std::optional<Frame> frameAt(const Read& file, Id<Box> box, Count position) {
    auto there =
        file.where<Frame>({is("box", box), is("position", position), isUnknown("retired")});
    if (there.empty()) return std::nullopt;
    return std::move(there.front());
}

/// The frame the keeper points at: the one that has the place already, or one of those counted.
Result<Frame> pointedAt(Write& file, const Box& box, Count position, const std::string& faults) {
    const auto kind = file.find(box.kind);
    const auto most = kind ? mostFrames(*kind) : std::nullopt;
    if (position < Count(1) || (most && position > *most))
        return Refusal{Code::OutOfRange,
                       "position",
                       {{"low", "1"}, {"high", most ? std::to_string(most->value()) : "…"}}};
    if (auto there = frameAt(file, box.id, position)) return *std::move(there);
    auto counted = framesCounted(file, box.id);
    if (counted.empty()) {
        const auto placed = file.where<Frame>({is("box", box.id), isUnknown("retired")}).size();
        if (placed == 0) return Refusal{Code::OtherAction, "position", {{"action", "count-box"}}};
        return Refusal{Code::TooMany, "position", {{"most", std::to_string(placed)}}};
    }
    auto meant = std::find_if(counted.begin(), counted.end(),
                              [&](const Frame& frame) { return frame.faults == faults; });
    if (meant == counted.end()) meant = counted.begin();
    meant->position = position;
    file.change(*meant);
    return std::move(*meant);
}

/// What a look at the bench decides of the frames seen, and when.
struct Judged {
    Verdict verdict;
    Day on;
    std::optional<Comb> comb;
    std::string note;
};

/// A look at the bench that is written down late says no more of a frame that was in hand since.
bool inHandSince(const Frame& frame, const std::optional<Judged>& judged) {
    return judged && frame.reviewed && *frame.reviewed > judged->on;
}

/// Puts what was seen on the frame. One that is held by its verdict stays as it was, looked through
/// again, where it would be released without a reason.
void putSeenOn(Frame& frame, const std::optional<std::string>& faults,
               const std::optional<Judged>& judged) {
    if (inHandSince(frame, judged)) return;
    if (judged) {
        frame.reviewed = judged->on;
        if (liftsHold(frame, judged->verdict)) {
            if (!mayLift(frame, judged->verdict, judged->note)) return;
            addNote(frame, judged->note);
        }
        frame.verdict = judged->verdict;
        if (judged->comb) frame.comb = judged->comb;
    }
    if (faults) frame.faults = *faults;
}

/// That many of the counted frames bear the faults, and the verdict where one is given; those that
/// bear the faults already are among them.
Result<void> markCounted(Write& file, const Box& box, Count howMany, const std::string& faults,
                         const std::optional<Judged>& judged) {
    auto counted = framesCounted(file, box.id);
    const auto kind = file.find(box.kind);
    const auto many = static_cast<std::int64_t>(counted.size());
    const auto most = many > 0 ? std::optional(Count(many))
                      : kind   ? mostFrames(*kind)
                               : std::nullopt;
    if (howMany < Count(1))
        return Refusal{Code::OutOfRange,
                       "how_many",
                       {{"low", "1"}, {"high", most ? std::to_string(most->value()) : "…"}}};
    if (most && howMany > *most)
        return Refusal{Code::TooMany, "how_many", {{"most", std::to_string(most->value())}}};
    if (faults.empty() && !judged) return {};
    // First those that bear them, then the faultless, in the order they were counted.
    const auto rank = [&](const Frame& frame) {
        return frame.faults == faults ? 0 : frame.faults.empty() ? 1 : 2;
    };
    std::stable_sort(counted.begin(), counted.end(),
                     [&](const Frame& a, const Frame& b) { return rank(a) < rank(b); });
    std::int64_t left = howMany.value();
    for (Frame& frame : counted) {
        if (left-- == 0) break;
        const Frame before = frame;
        putSeenOn(frame, faults.empty() ? std::nullopt : std::optional(faults), judged);
        if (toRow(frame) != toRow(before)) file.change(frame);
    }
    return {};
}

}  // namespace

const Fields& CheckFrames::fields() {
    static const Fields all =
        describe(field<&CheckFrames::on>("on"), field<&CheckFrames::box>("box"),
                 field<&CheckFrames::frame>("frame"), field<&CheckFrames::position>("position"),
                 field<&CheckFrames::howMany>("how_many"),
                 field<&CheckFrames::occasion>("occasion"), field<&CheckFrames::faults>("faults"),
                 field<&CheckFrames::verdict>("verdict"), field<&CheckFrames::note>("note"));
    return all;
}

Result<Made> CheckFrames::perform(Write& file) const {
    if (frame && box) return Refusal{Code::Contradiction, "frame", {{"other", "box"}}};
    if (!frame && !box) return Refusal{Code::Missing, "box", {}};
    if (frame && position) return Refusal{Code::Contradiction, "position", {{"other", "frame"}}};
    const bool single = frame || position;
    if (single && howMany)
        return Refusal{Code::Contradiction, "how_many", {{"other", frame ? "frame" : "position"}}};
    if (!single && !howMany) return Refusal{Code::Missing, "how_many", {}};
    const Occasion seenAt = occasion.value_or(Occasion::Visit);
    const bool atBench = seenAt == Occasion::WinterReview;
    // "none" takes back what was seen of one frame; left out it stays as it was.
    const bool clean = faults == "none";
    if (clean && !single) return Refusal{Code::Contradiction, "faults", {{"other", "how_many"}}};
    const auto seen = parseFrameSeen(clean ? std::string() : faults);
    if (!seen) return seen.error();
    if (seen->comb && !atBench)
        return Refusal{
            Code::NotAChoice, "faults", {{"value", faults}, {"choices", faultLetters()}}};
    if (verdict && seen->verdict && verdict != seen->verdict)
        return Refusal{Code::Contradiction, "verdict", {{"other", "faults"}}};
    const std::string& letters = seen->faults;
    const auto said = verdict ? verdict : seen->verdict;
    if (letters.empty() && !clean && !said && !seen->comb && note.empty())
        return Refusal{Code::Missing, "verdict", {}};

    auto meant = file.find(frame);
    if (frame && !meant) return Refusal{Code::NotFound, "frame", {}};
    // A counted frame is any of them; which one, only its place can say.
    if (meant && !meant->position) return Refusal{Code::Missing, "position", {}};
    if (meant && meant->retired)
        return Refusal{Code::Closed, "frame", {{"name", "#" + std::to_string(frame->number)}}};
    const auto at = file.find(meant ? meant->box : box);
    if (!meant && !at) return Refusal{Code::NotFound, "box", {}};
    if (at && on < at->since)
        return Refusal{
            Code::BeforeItBegan, "on", {{"name", at->mark}, {"since", isoText(at->since)}}};

    FrameCheck check;
    if (position) {
        auto pointed = pointedAt(file, *at, *position, letters);
        if (!pointed) return pointed.error();
        meant = *std::move(pointed);
    }
    std::optional<Judged> judged;
    if (atBench)
        judged = Judged{
            said.value_or(verdictFor(letters.empty() && meant && !clean ? meant->faults : letters)),
            on, seen->comb, note};
    if (meant) {
        const auto earlier = file.where<FrameCheck>(
            {is("frame", meant->id), is("on_day", on), is("occasion", seenAt)});
        if (!earlier.empty()) check = earlier.back();
        check.frame = meant->id;
        const Frame before = *meant;
        putSeenOn(*meant, letters.empty() && !clean ? std::nullopt : std::optional(letters),
                  judged);
        if (toRow(*meant) != toRow(before)) file.change(*meant);
    } else if (auto marked = markCounted(file, *at, *howMany, letters, judged); !marked) {
        return marked.error();
    }
    if (at && letters.find('Q') != std::string::npos) quarantineSeen(file, at->id, on);
    if (at) check.box = at->id;
    check.on = on;
    check.occasion = seenAt;
    check.howMany = howMany;
    check.faults = letters;
    check.verdict = judged ? judged->verdict : said;
    check.note = note;
    if (check.id)
        file.change(check);
    else
        file.add(check);
    Made made = madeOf(check.id);
    if (check.frame) made.emplace_back(Frame::table, check.frame->number);
    return made;
}

}  // namespace combwright
