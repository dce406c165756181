#include "core/actions/storeroom/frame_work.h"

#include <algorithm>
#include <map>

#include "core/actions/boxes/frame_steps.h"
#include "core/actions/storeroom/frame_picks.h"
#include "core/actions/storeroom/marked_boxes.h"
#include "core/actions/storeroom/review_line.h"
#include "core/model/storeroom/equipment.h"
#include "core/places/storeroom/verdicts.h"
#include "core/places/wax_bench/comb_wax.h"

namespace combwright {
namespace {

bool isDrawnComb(const Frame& frame) {
    return !frame.comb || (*frame.comb != Comb::Bare && *frame.comb != Comb::Foundation);
}

/// One that is held among the frames named, whatever verdict or work was asked for.
std::optional<Frame> firstHeld(const Read& file, const HeldThings& held, FramesWanted wanted) {
    wanted.also = [&](const Frame& frame) { return isHeld(held, frame); };
    const auto frames = framesWanted(file, wanted);
    return frames.empty() ? std::nullopt : std::optional(frames.front());
}

std::vector<Id<Frame>> idsOfFrames(const std::vector<Frame>& frames) {
    std::vector<Id<Frame>> ids;
    for (const Frame& frame : frames) ids.push_back(frame.id);
    return ids;
}

/// Combs that go into the pot together, by kind.
class Pot {
  public:
    void add(const Frame& frame) {
        if (!isDrawnComb(frame)) return;
        Share& share = m_byKind[frame.kind.number];
        if (share.combs++ == 0)
            share.box = frame.box;
        else if (share.box != frame.box)
            share.box.reset();
    }
    std::size_t kinds() const { return m_byKind.size(); }

    void keep(Write& file, Day on, const std::optional<Known<Mass>>& weighed,
              const std::string& note) const {
        for (const auto& [number, share] : m_byKind) {
            RawWax wax;
            wax.on = on;
            wax.source = RawWaxSource::OldComb;
            wax.box = share.box;
            wax.frameKind = Id<FrameKind>{number};
            wax.combs = Count(share.combs);
            wax.note = note;
            wax.clean = weighed;
            const auto kind = file.find(*wax.frameKind);
            const auto each = kind ? combWaxGrams(file, *kind, on) : std::nullopt;
            if (!wax.clean && each)
                wax.clean = Known<Mass>{
                    Mass::roundedGrams(*each * static_cast<double>(share.combs)), {}, How::Assumed};
            file.add(wax);
        }
    }

  private:
    struct Share {
        std::int64_t combs = 0;
        std::optional<Id<Box>> box;
    };
    std::map<std::int64_t, Share> m_byKind;
};

/// Sheets of foundation for so many frames of a kind, as far as any are counted; never below none.
void takeSheets(Write& file, Id<FrameKind> kind, std::int64_t wanted) {
    for (Equipment& sheets :
         file.where<Equipment>({is("item", EquipmentItem::Foundation), is("frame_kind", kind)})) {
        if (!sheets.onHand) continue;  // described, never counted
        const std::int64_t taken = std::min(wanted, sheets.onHand->value());
        if (taken == 0) continue;
        *sheets.onHand -= Count(taken);
        file.change(sheets);
        wanted -= taken;
    }
}

/// Whether the verdicts plan that work for the frame.
bool isPlanned(FrameWork work, const Frame& frame) {
    switch (work) {
        case FrameWork::Repaired:
            return frame.verdict == Verdict::Repair;
        case FrameWork::Refitted:
            return frame.verdict == Verdict::Refit;
        case FrameWork::Scraped:
            return frame.verdict == Verdict::Scrape;
        case FrameWork::Melted:
            return (frame.verdict == Verdict::Refit && frame.comb != Comb::Bare) ||
                   frame.verdict == Verdict::Melt;
        case FrameWork::Burnt:
            return frame.verdict == Verdict::Burn;
        case FrameWork::Sold:
            return frame.verdict != Verdict::Hold;
    }
    return false;
}

/// It was in hand on that day: a look of an earlier day, written down later, says no more of it.
void hadInHand(Frame& frame, Day on) { frame.reviewed = std::max(frame.reviewed.value_or(on), on); }

std::string withoutFaults(const std::string& faults, std::string_view gone) {
    std::string left;
    for (const char letter : faults)
        if (gone.find(letter) == std::string_view::npos) left += letter;
    return left;
}

}  // namespace

void takeCombOut(Frame& frame) {
    frame.comb = Comb::Bare;
    frame.faults = faultsOfWood(frame.faults);
    frame.drawnYear.reset();
    frame.wet.reset();
    frame.filledA.reset();
    frame.filledB.reset();
    frame.capped.reset();
    frame.frozen.reset();
}

const Fields& JudgeFrames::fields() {
    static const Fields all = describe(
        field<&JudgeFrames::on>("on"), field<&JudgeFrames::boxes>("boxes"),
        field<&JudgeFrames::frameKind>("frame_kind"), field<&JudgeFrames::seen>("seen"),
        field<&JudgeFrames::from>("from_verdict"), field<&JudgeFrames::howMany>("how_many"),
        field<&JudgeFrames::verdict>("verdict"), field<&JudgeFrames::note>("note"));
    return all;
}

Result<std::vector<Id<Frame>>> JudgeFrames::perform(Write& file) const {
    auto in = boxesNamed(file, boxes);
    if (!in) return in.error();
    const auto about = boxesAbout(file, boxes, in->boxes);
    if (!about) return about.error();
    in->boxes = *about;
    const auto letters = parseFrameSeen(seen);
    if (!letters) return Refusal{letters.error().code, "seen", letters.error().values};
    FramesWanted wanted{.in = *in, .kind = frameKind, .comb = letters->comb};
    wanted.seen = letters->faults;
    wanted.also = [this](const Frame& frame) {
        return (!from || frame.verdict == from) && frame.verdict != verdict;
    };
    const HeldThings held = heldThings(file, on);
    auto waiting = framesWanted(file, wanted);
    if (waiting.empty() && in->byName && verdict != Verdict::Hold)
        if (const auto frame = firstHeld(file, held, wanted); frame && frame->verdict != verdict)
            return heldBack(file, held, *frame, "note");
    auto meant = firstOf(std::move(waiting), howMany);
    if (!meant) return meant.error();
    for (Frame& frame : *meant) {
        if (isHeld(held, frame) && verdict != Verdict::Hold) {
            if (frame.faults.find('Q') != std::string::npos && verdict != Verdict::Burn)
                return heldBack(file, held, frame, "verdict");
            if (note.empty()) return heldBack(file, held, frame, "note");
        }
        frame.verdict = verdict;
        hadInHand(frame, on);
        addNote(frame, note);
        file.change(frame);
    }
    return idsOfFrames(*meant);
}

const Fields& WorkFrames::fields() {
    static const Fields all =
        describe(field<&WorkFrames::on>("on"), field<&WorkFrames::work>("work"),
                 field<&WorkFrames::box>("box"), field<&WorkFrames::boxes>("boxes"),
                 field<&WorkFrames::frameKind>("frame_kind"),
                 field<&WorkFrames::howMany>("how_many"), field<&WorkFrames::comb>("comb"),
                 known<&WorkFrames::clean>("clean"), field<&WorkFrames::note>("note"));
    return all;
}

Result<std::vector<Id<Frame>>> WorkFrames::perform(Write& file) const {
    if (box && !boxes.empty()) return Refusal{Code::Contradiction, "boxes", {{"other", "box"}}};
    const bool leaves = work == FrameWork::Melted || work == FrameWork::Burnt ||
                        work == FrameWork::Sold || work == FrameWork::Scraped;
    if (comb && leaves) return Refusal{Code::Contradiction, "comb", {{"other", "work"}}};
    if (clean && work != FrameWork::Melted)
        return Refusal{Code::Contradiction, "clean_g", {{"other", "work"}}};
    if (work == FrameWork::Sold && !box && boxes.empty() && !howMany)
        return Refusal{Code::Missing, "how_many", {}};
    if (box)
        if (auto about = demandAbout(file, *box, "box"); !about) return about.error();
    auto in = box ? Result<NamedBoxes>(NamedBoxes{{*box}, false, true}) : boxesNamed(file, boxes);
    if (!in) return in.error();
    const auto about = boxesAbout(file, boxes, in->boxes);
    if (!about) return about.error();
    in->boxes = *about;
    const HeldThings held = heldThings(file, on);
    FramesWanted wanted{.in = *in, .kind = frameKind};
    wanted.also = [&](const Frame& frame) { return isPlanned(work, frame); };
    auto planned = framesWanted(file, wanted);
    if (!in->byName) {
        // Of all, only what is free: what is held is never taken by the way.
        const auto first = std::find_if(planned.begin(), planned.end(),
                                        [&](const Frame& frame) { return held.holds(frame); });
        const auto onlyHeld = first != planned.end() ? std::optional(*first) : std::nullopt;
        std::erase_if(planned, [&](const Frame& frame) { return held.holds(frame); });
        if (planned.empty() && onlyHeld) return heldBack(file, held, *onlyHeld, "boxes");
    } else if (planned.empty()) {
        if (const auto frame = firstHeld(file, held, wanted))
            if (frame->verdict == Verdict::Hold) {
                Refusal refusal = heldBack(file, held, *frame, box ? "box" : "boxes");
                refusal.values.emplace_back("verdict", "hold");
                return refusal;
            }
    }
    // Of those to be melted, frames that go altogether come first.
    if (work == FrameWork::Melted)
        std::stable_partition(planned.begin(), planned.end(),
                              [](const Frame& frame) { return frame.verdict == Verdict::Melt; });
    auto meant = firstOf(std::move(planned), howMany);
    if (!meant) return meant.error();

    Pot pot;
    std::map<std::int64_t, std::int64_t> sheets;
    for (Frame& frame : *meant) {
        if (held.holds(frame)) {
            const bool burning = work == FrameWork::Burnt;
            if (diseaseHeld(held, frame) && !burning) return heldBack(file, held, frame, "work");
            if (note.empty()) return heldBack(file, held, frame, "note");
            addNote(frame, note);
        }
        switch (work) {
            case FrameWork::Repaired:
                frame.faults = withoutFaults(frame.faults, "V");
                if (!comb) takeCombOut(frame);
                if (comb) frame.comb = comb;
                frame.verdict = verdictFor(frame.faults);
                break;
            case FrameWork::Refitted:
                if (isDrawnComb(frame)) pot.add(frame);
                takeCombOut(frame);
                frame.faults.clear();
                frame.comb = comb.value_or(Comb::Foundation);
                if (frame.comb == Comb::Foundation) ++sheets[frame.kind.number];
                frame.verdict = Verdict::Keep;
                break;
            case FrameWork::Scraped:
                frame.faults = withoutFaults(frame.faults, "PX");
                frame.verdict = verdictFor(frame.faults);
                break;
            case FrameWork::Melted:
                pot.add(frame);
                if (frame.verdict == Verdict::Melt) {
                    retire(file, frame, Retired::Melted, on);
                    continue;
                }
                takeCombOut(frame);
                break;
            case FrameWork::Burnt:
                retire(file, frame, Retired::Burnt, on);
                continue;
            case FrameWork::Sold:
                retire(file, frame, Retired::Sold, on);
                continue;
        }
        hadInHand(frame, on);
        file.change(frame);
    }
    if (clean && pot.kinds() > 1)
        return Refusal{Code::Contradiction, "clean_g", {{"other", "frame_kind"}}};
    if (clean && pot.kinds() == 0) return Refusal{Code::NothingToDo, "clean_g", {}};
    pot.keep(file, on, clean, note);
    for (const auto& [kind, wantedSheets] : sheets)
        takeSheets(file, Id<FrameKind>{kind}, wantedSheets);
    return idsOfFrames(*meant);
}

}  // namespace combwright
