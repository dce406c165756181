// A load typed frame by frame as each comes off the fork.
#include <algorithm>
#include <cmath>
#include <map>

#include "core/places/honey_room/load_frames.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

HeftThird thirdOf(FrameHeft heft) {
    switch (heft) {
        case FrameHeft::Heavy:
            return HeftThird::Heavy;
        case FrameHeft::Middling:
            break;
        case FrameHeft::Light:
            return HeftThird::Light;
    }
    return HeftThird::Middling;
}

/// What is known of frames of a kind before they are lifted.
struct KnownHeft {
    HeftClasses classes;
    HeftSpread atHand;
    std::optional<HeftSpread> learned;  ///< from boxes weighed; none of fewer than two
    double feelG = 0;
    std::size_t boxes = 0;
};

/// The honey of a frame before it is lifted. Its spread is that of a frame in a judged load, so
/// that letters and a load nobody felt are told with the same doubt where a letter says nothing.
HeftSpread beforeLifted(const LoadFrame& frame, const std::optional<HeftSpread>& learned) {
    if (frame.assumed && learned) return *learned;
    const double own = frame.sdG * frame.sdG - wetFrameSdG * wetFrameSdG;
    return {frame.startG - frame.endG, std::sqrt(std::max(0.0, own))};
}

/// From every box of the kind that was weighed full and wet, this run's and earlier ones, and from
/// the boxes of the runs that are spun.
Result<KnownHeft> heftOfKind(const Read& file, const std::vector<WaitingFrames>& boxes,
                             const std::optional<Id<FrameKind>>& kind, Day on, Working* working) {
    std::vector<HeftSample> samples;
    for (const ExtractionBox& box : file.all<ExtractionBox>()) {
        if (box.frameKind != kind || !box.frames || box.frames->value() < 1) continue;
        const auto gross = box.gross ? box.gross->middle() : std::nullopt;
        const auto wet = box.wet ? box.wet->middle() : std::nullopt;
        const auto run = file.find(box.extraction);
        if (!gross || !wet || *gross <= *wet || !run || run->on > on) continue;
        samples.push_back({(*gross - *wet) / static_cast<double>(box.frames->value()),
                           static_cast<std::size_t>(box.frames->value())});
    }
    KnownHeft known;
    const double within = constantOr(file, "comb_spread_share", {}, on, 0.1);
    known.learned = heftFrom(samples, within, working);
    if (known.learned) known.boxes = samples.size();
    std::vector<HeftPart> parts;
    for (const WaitingFrames& box : boxes)
        if (box.kind == kind)
            parts.push_back(
                {beforeLifted(box.each, known.learned), static_cast<double>(box.frames)});
    known.atHand = heftTogether(parts).value_or(HeftSpread{});
    known.feelG = constantOr(file, "heft_doubt_share", {}, on, heftDoubtShare) * known.atHand.meanG;
    const auto classes = heftClasses(known.atHand, known.feelG, working);
    if (!classes) return classes.error();
    known.classes = *classes;
    return known;
}

class FeltTyping {
  public:
    FeltTyping(const Read& file, Extractor machine) : m_file(file), m_machine(std::move(machine)) {}

    Result<void> wait(Id<Extraction> id) {
        const auto run = m_file.find(id);
        if (!run) return Refusal{Code::NotFound, "run", {}};
        for (WaitingFrames& box : waitingFrames(m_file, *run, m_machine))
            m_waiting.push_back(std::move(box));
        return {};
    }

    /// The frame typed as the n-th, with the masses of its class.
    Result<LoadFrame> frame(const FeltFrame& felt, std::size_t n, Day on, Working* working,
                            FeltLoad& answer) {
        const std::string field = "felt[" + std::to_string(n) + "]";
        if (felt.emptied) {
            LoadFrame bare = m_last;
            bare.box.clear();
            bare.entry = {};
            bare.endG = m_last.endG > 0 ? m_last.endG : wetFrameGPerDm2 * combDm2(std::nullopt);
            bare.startG = bare.endG;
            bare.sdG = wetFrameSdG;
            if (bare.radiusMm <= 0) bare.radiusMm = m_machine.radiusMm;
            bare.emptied = true;
            bare.heft.reset();
            return bare;
        }
        WaitingFrames* const box = meant(felt);
        if (!box) return Refusal{felt.box ? Code::NotFound : Code::TooMany, field, {{"most", "0"}}};
        if (box->left < 1)
            return Refusal{Code::TooMany, field, {{"frames_of", box->each.box}, {"most", "0"}}};
        const auto slots = m_machine.slotsFor(m_file, box->kind);
        if (!slots) return Refusal{Code::UnknownSize, field, {{"name", box->each.kind}}};
        if (m_slots && *m_slots != *slots)
            return Refusal{Code::Contradiction,
                           field,
                           {{"kind", m_last.kind},
                            {"slots", std::to_string(*m_slots)},
                            {"other_kind", box->each.kind},
                            {"other_slots", std::to_string(*slots)}}};
        m_slots = slots;
        --box->left;
        m_at = static_cast<std::size_t>(box - m_waiting.data());
        auto known = m_known.find(box->each.kind);
        if (known == m_known.end()) {
            const auto heft = heftOfKind(m_file, m_waiting, box->kind, on, working);
            if (!heft) return heft.error();
            known = m_known.emplace(box->each.kind, *heft).first;
        }
        LoadFrame frame = box->each;
        frame.heft = felt.heft;
        const EmptyFrame empty{frame.endG, wetFrameSdG, frame.radiusMm};
        const auto inBox =
            heftInBox(thirdOf(felt.heft), beforeLifted(box->each, known->second.learned),
                      known->second.atHand, known->second.feelG);
        if (!inBox) return inBox.error();
        const LoadedFrame hung = frameFelt(*inBox, empty);
        frame.startG = hung.startG;
        frame.sdG = hung.sdG.value_or(frame.sdG);
        answer.classes = known->second.classes;
        answer.boxes = known->second.boxes;
        answer.endG = frame.endG;
        m_last = frame;
        return frame;
    }

    std::int64_t slots() const { return m_slots.value_or(m_machine.usualSlots); }

  private:
    WaitingFrames* meant(const FeltFrame& felt) {
        if (felt.box) {
            for (WaitingFrames& each : m_waiting)
                if (each.each.entry == *felt.box) return &each;
            return nullptr;
        }
        for (std::size_t n = m_at; n < m_waiting.size(); ++n)
            if (m_waiting[n].left > 0) return &m_waiting[n];
        for (WaitingFrames& each : m_waiting)
            if (each.left > 0) return &each;
        return nullptr;
    }

    const Read& m_file;
    Extractor m_machine;
    std::vector<WaitingFrames> m_waiting;
    std::map<std::string, KnownHeft> m_known;
    std::optional<std::int64_t> m_slots;
    LoadFrame m_last;
    std::size_t m_at = 0;
};

Result<FeltLoad> feltAs(const Read& file, const std::vector<Id<Extraction>>& runs,
                        const std::vector<FeltFrame>& felt, Day on, const LoadRules& allowed,
                        bool atOnce, Working* working) {
    FeltLoad answer;
    FeltTyping typing(file, extractorMeant(file, allowed.machine, on));
    for (const Id<Extraction> id : runs) {
        if (auto there = typing.wait(id); !there) return there.error();
        const auto run = file.find(id);
        answer.load.number +=
            static_cast<std::int64_t>(file.where<SpinLoad>({is("extraction", id)}).size());
        answer.load.lot += (answer.load.lot.empty() ? "" : " + ") + run->name.text();
    }
    std::vector<LoadFrame> known;
    std::vector<LoadedFrame> frames;
    for (std::size_t n = 0; n < felt.size(); ++n) {
        const auto frame = typing.frame(felt[n], n, on, working, answer);
        if (!frame) return frame.error();
        known.push_back(*frame);
        frames.push_back({frame->startG, frame->endG, frame->sdG, frame->radiusMm});
    }
    const std::int64_t slots = typing.slots();
    if (static_cast<std::int64_t>(felt.size()) > slots)
        return Refusal{Code::TooMany,
                       "felt",
                       {{"slots_of", extractorMeant(file, allowed.machine, on).name()},
                        {"found", std::to_string(felt.size())},
                        {"most", std::to_string(slots)}}};
    const auto balance = atOnce ? balanceAtOnce(slots, frames)
                                : balanceLoad(slots, frames, thoroughRingWork(), working);
    if (!balance) return balance.error();
    answer.load.places.resize(static_cast<std::size_t>(slots));
    answer.load = arranged(answer.load, balance->places, known);
    answer.load.proven = balance->proven;
    return answer;
}

}  // namespace

Result<FeltLoad> feltLoad(const Read& file, const std::vector<Id<Extraction>>& runs,
                          const std::vector<FeltFrame>& felt, Day on, const LoadRules& allowed,
                          Working* working) {
    return feltAs(file, runs, felt, on, allowed, false, working);
}

Result<FeltLoad> feltLoadAtOnce(const Read& file, const std::vector<Id<Extraction>>& runs,
                                const std::vector<FeltFrame>& felt, Day on,
                                const LoadRules& allowed) {
    return feltAs(file, runs, felt, on, allowed, true, nullptr);
}

}  // namespace combwright
