#include "core/places/load_sheet.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/places/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/runs.h"
#include "core/trade/extractor/machine_ring.h"
#include "core/trade/extractor/unbalance.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {
namespace {

/// Wood and wet comb of a frame, per dm² of one side, and how far frames differ in it. 400 g for a
/// medium of 5.58 dm². Planning assumption, no source; a keeper's scale knows better.
constexpr double wetFrameGPerDm2 = 72.0;
constexpr double wetFrameSdG = 30.0;
/// What the share filled is worth where nobody judged it. Planning assumption, no source.
constexpr double assumedFilled = 0.85;

/// A box whose tag was lost is of the kind the other boxes of its run are.
std::optional<Id<FrameKind>> usualKind(const std::vector<ExtractionBox>& boxes) {
    for (const ExtractionBox& box : boxes)
        if (box.frameKind) return box.frameKind;
    return std::nullopt;
}

double combDm2(const std::optional<FrameKind>& kind) {
    return kind && kind->combWidth && kind->combHeight
               ? kind->combWidth->mm() * kind->combHeight->mm() / 10000.0
               : 5.58;
}

/// Honey in one frame of the box: by what the box lost, else by what it weighs more than an empty
/// one, else by how full it was judged.
double honeyOfFrame(const Read& file, const ExtractionBox& box, const Extraction& run,
                    const std::optional<FrameKind>& kind, double frames, double& share,
                    Working* working) {
    const double area = combDm2(kind);
    const auto own = kind ? fullFrameGramsOf(file, *kind, run.yard, run.on) : std::nullopt;
    const double full = own.value_or(fullFrameGrams(area));
    const auto judged = box.filled ? box.filled->middle() : std::nullopt;
    share = judged ? *judged / 10000.0 : assumedFilled;
    const auto gross = box.gross ? box.gross->middle() : std::nullopt;
    const auto wet = box.wet ? box.wet->middle() : std::nullopt;
    const auto known = file.find(box.box);
    const auto boxKind = known ? file.find(known->kind) : std::nullopt;
    const auto bare =
        boxKind ? emptyBoxGramsOf(file, *boxKind, run.yard, run.on) : std::optional<double>();
    if (gross && (wet || (bare && *gross > *bare))) {
        note(working, "box_full_g", *gross, "g");
        if (wet)
            note(working, "box_wet_g", *wet, "g");
        else
            note(working, "empty_box_g", *bare, "g", "with its drawn frames");
        note(working, "frames", frames, "");
        const double honey = (*gross - wet.value_or(bare.value_or(0))) / frames;
        share = std::clamp(honey / full, 0.0, 1.0);
        note(working, "honey_g", honey, "g",
             wet ? "(full − wet) ÷ frames" : "(full − an empty box) ÷ frames");
        return honey;
    }
    note(working, "full_frame_g", full, "g", own ? "" : "comb · 333 g/dm²");
    note(working, "filled_share", share, "", judged ? "by eye" : "",
         judged ? "" : "planning assumption, no source");
    note(working, "honey_g", share * full, "g", "full frame · filled share");
    return share * full;
}

RanLike ranLike(Ran ran) {
    switch (ran) {
        case Ran::Smooth:
            return RanLike::Smooth;
        case Ran::Walked:
            return RanLike::Walked;
        case Ran::Stopped:
            break;
    }
    return RanLike::Stopped;
}

/// What the loads of the file say of the machine. Loads without one were in the first, which for
/// most is the only one.
void takeExperience(const Read& file, LoadSheet& sheet, Day on) {
    const auto all = extractors(file, on);
    const auto idOf = [](const Extractor& each) {
        return each.machine ? each.machine->id : Id<Equipment>{};
    };
    const Id<Equipment> first = idOf(all.front());
    std::vector<RingRecord> records;
    for (const SpinLoad& spun : file.all<SpinLoad>()) {
        if (!spun.ran || (!spun.startOffset && !spun.endOffset)) continue;
        if (spun.machine.value_or(first) != idOf(sheet.machine)) continue;
        const auto grams = [](const std::optional<Mass>& mass) {
            return mass ? static_cast<double>(mass->grams()) : 0.0;
        };
        records.push_back(
            {std::max(grams(spun.startOffset) + grams(spun.doubt), grams(spun.endOffset)),
             ranLike(*spun.ran)});
    }
    const MachineRing ring = learnRing(records);
    sheet.ranSmoothG = ring.ranSmoothG;
    sheet.walkedG = ring.walkedG;
    sheet.ringContradicted = ring.contradicted;
}

/// Where the middle of a frame hangs: the radius known is that of the usual frame's middle, and
/// every frame's top bar is at the same rim.
double middleRadius(double usualMm, const std::optional<FrameKind>& usual,
                    const std::optional<FrameKind>& kind) {
    if (!usual || !kind || !usual->height || !kind->height) return usualMm;
    return usualMm + (usual->height->mm() - kind->height->mm()) / 2.0;
}

std::vector<LoadedFrame> standing(const SheetLoad& load, std::vector<LoadFrame>& known) {
    std::vector<LoadedFrame> frames;
    for (const auto& place : load.places) {
        if (!place) continue;
        known.push_back(*place);
        frames.push_back({place->startG, place->endG, place->sdG, place->radiusMm});
    }
    return frames;
}

SheetLoad arranged(const SheetLoad& before, const FrameSlots& places,
                   const std::vector<LoadFrame>& known) {
    SheetLoad after = before;
    after.frames = 0;
    for (std::size_t slot = 0; slot < places.size(); ++slot) {
        after.places[slot] = places[slot] ? std::optional(known[*places[slot]]) : std::nullopt;
        if (after.places[slot]) ++after.frames;
    }
    weighOffsets(after);
    return after;
}

bool helps(const SheetLoad& before, const SheetLoad& after) {
    return after.offset.largerG() + 1.0 < before.offset.largerG();
}

}  // namespace

std::optional<LoadFrame> reckonFrame(const Read& file, const ExtractionBox& box,
                                     const Extraction& run, Working* working) {
    if (!box.frames || box.frames->value() < 1) return std::nullopt;
    const auto frames = static_cast<double>(box.frames->value());
    const auto usual = usualKind(file.where<ExtractionBox>({is("extraction", run.id)}));
    const auto kind = file.find(box.frameKind ? box.frameKind : usual);
    LoadFrame frame;
    frame.box = calledInRun(file, box);
    frame.entry = box.id;
    frame.lot = run.name.text();
    frame.kind = kind ? kind->code.text() : "unknown";
    double share = 0;
    const double honey = honeyOfFrame(file, box, run, kind, frames, share, working);
    const double area = combDm2(kind);
    frame.endG = wetFrameGPerDm2 * area;
    note(working, "wet_frame_g", frame.endG, "g", "comb of one side, dm² · 72 g",
         "planning assumption, no source");
    frame.startG = frame.endG + honey;
    const auto full = kind ? fullFrameGramsOf(file, *kind, run.yard, run.on) : std::nullopt;
    const auto estimate =
        frameHoney({full.value_or(fullFrameGrams(area)), share, share, std::nullopt});
    frame.sdG = std::max(estimate ? estimate->ownG : honey * 0.15, wetFrameSdG);
    note(working, "spread_g", frame.sdG, "g", "of one frame against its neighbours");
    note(working, "frame_g", frame.startG, "g", "honey + wood and wet comb");
    frame.radiusMm =
        middleRadius(extractorMeant(file, {}, run.on).radiusMm, file.find(usual), kind);
    return frame;
}

void weighOffsets(SheetLoad& load) {
    double farthest = 1;
    for (const auto& place : load.places)
        if (place) farthest = std::max(farthest, place->radiusMm);
    const auto offsetAt = [&](auto gramsOf, double& angle) {
        double across = 0;
        double up = 0;
        const auto count = static_cast<double>(load.places.size());
        for (std::size_t slot = 0; slot < load.places.size(); ++slot) {
            if (!load.places[slot]) continue;
            const double turn = 2 * std::numbers::pi * static_cast<double>(slot) / count;
            const double pull =
                gramsOf(*load.places[slot]) * load.places[slot]->radiusMm / farthest;
            across += pull * std::sin(turn);
            up += pull * std::cos(turn);
        }
        angle = std::atan2(across, up) * 180.0 / std::numbers::pi;
        return std::hypot(across, up);
    };
    load.offset.startG =
        offsetAt([](const LoadFrame& frame) { return frame.startG; }, load.startAngle);
    load.offset.endG = offsetAt([](const LoadFrame& frame) { return frame.endG; }, load.endAngle);
    std::vector<LoadedFrame> start;
    std::vector<LoadedFrame> end;
    for (const auto& place : load.places) {
        if (!place) continue;
        start.push_back({place->startG, place->endG, place->sdG, place->radiusMm});
        end.push_back({place->endG, place->endG, wetFrameSdG, place->radiusMm});
    }
    load.doubtG = doubtOf(start).value_or(0);
    load.endDoubtG = doubtOf(end).value_or(0);
}

std::vector<Extraction> openRuns(const Read& file) {
    auto runs = file.where<Extraction>({isUnknown("closed")});
    std::stable_sort(runs.begin(), runs.end(),
                     [](const Extraction& a, const Extraction& b) { return a.on < b.on; });
    return runs;
}

double LoadSheet::ringG() const { return MachineRing{ranSmoothG, walkedG}.ringG(allowedG); }

namespace {

/// A box's frames that wait for the machine.
struct WaitingFrames {
    LoadFrame each;
    std::optional<Id<FrameKind>> kind;
    std::int64_t left = 0;
};

std::vector<WaitingFrames> waitingFrames(const Read& file, const Extraction& run,
                                         const Extractor& machine) {
    std::vector<WaitingFrames> waiting;
    const auto gone = framesOfBoxes(file, run.id);
    const double further = machine.radiusMm - extractorMeant(file, {}, run.on).radiusMm;
    for (const ExtractionBox& box : file.where<ExtractionBox>({is("extraction", run.id)})) {
        const auto each = reckonFrame(file, box, run);
        if (!each) continue;
        std::int64_t left = box.frames->value();
        if (!run.closed) {
            const auto found = gone.find(box.id.number);
            if (found != gone.end()) left = found->second.left(left);
            if (box.wet && box.wet->value) left = 0;
        }
        waiting.push_back({*each, box.frameKind, left});
        waiting.back().each.radiusMm += further;
    }
    return waiting;
}

/// Loads of a run as their frames hung, where that was written down.
void takeSpun(const Read& file, const Extraction& run, LoadSheet& sheet) {
    std::map<std::int64_t, LoadFrame> known;
    for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", run.id)})) {
        const auto hung = file.where<SlotFrame>({is("load", load.id)});
        if (hung.empty()) continue;
        SheetLoad row;
        row.number = load.number.value();
        row.lot = run.name.text();
        row.ran = load.ran;
        std::int64_t slots = sheet.slotCount;
        for (const SlotFrame& each : hung) slots = std::max(slots, each.slot.value());
        row.places.resize(static_cast<std::size_t>(slots));
        for (const SlotFrame& each : hung) {
            LoadFrame frame;
            if (const auto box = file.find(each.box)) {
                if (!known.contains(box->id.number)) {
                    auto reckoned = reckonFrame(file, *box, run);
                    if (!reckoned) reckoned = LoadFrame{.box = calledInRun(file, *box)};
                    known.emplace(box->id.number, *reckoned);
                }
                frame = known.at(box->id.number);
            } else {
                frame.emptied = true;
            }
            frame.heft = each.heft;
            row.places[static_cast<std::size_t>(each.slot.value() - 1)] = frame;
            ++row.frames;
        }
        const auto grams = [](const std::optional<Mass>& mass) {
            return mass ? static_cast<double>(mass->grams()) : 0.0;
        };
        row.offset = {grams(load.startOffset), grams(load.endOffset)};
        row.doubtG = grams(load.doubt);
        sheet.spun.push_back(std::move(row));
    }
}

void takeAllowed(LoadSheet& sheet) {
    const TurningRotor rotor{.radiusMm = sheet.machine.radiusMm,
                             .rpm = sheet.machine.rpm,
                             .rotorKg = sheet.machine.rotorKg,
                             .grade = sheet.machine.grade};
    if (const auto grams = allowedOffsetG(rotor)) sheet.allowedG = *grams;
}

}  // namespace

Result<LoadSheet> loadSheet(const Read& file, const std::vector<Id<Extraction>>& runs, Day on,
                            const LoadRules& allowed) {
    LoadSheet sheet;
    sheet.machine = extractorMeant(file, allowed.machine, on);
    sheet.slotCount = 0;
    takeExperience(file, sheet, on);
    takeAllowed(sheet);
    std::vector<SpinFrame> frames;
    std::vector<LoadFrame> known;
    SpinRules rules;
    rules.openBoxes = std::nullopt;
    rules.mixLots = allowed.mixLots;
    rules.mixKinds = allowed.mixKinds;
    // A few grams more are worth fewer boxes open at a time.
    rules.sameScoreG = 20.0;
    for (const Id<Extraction> id : runs) {
        const auto run = file.find(id);
        if (!run) return Refusal{Code::NotFound, "run", {}};
        sheet.runs.push_back(run->name.text());
        sheet.loadsDone +=
            static_cast<std::int64_t>(file.where<SpinLoad>({is("extraction", id)}).size());
        for (const WaitingFrames& box : waitingFrames(file, *run, sheet.machine)) {
            const auto slots = sheet.machine.slotsFor(file, box.kind);
            if (!slots) {
                if (box.left > 0) sheet.leftOut.push_back({box.each.kind, box.left});
                continue;
            }
            rules.slotsOfKind[box.each.kind] = *slots;
            sheet.slotCount = std::max(sheet.slotCount, *slots);
            for (std::int64_t n = 0; n < box.left; ++n) {
                frames.push_back(
                    {box.each.box,
                     box.each.kind,
                     box.each.lot,
                     {box.each.startG, box.each.endG, box.each.sdG, box.each.radiusMm}});
                known.push_back(box.each);
            }
        }
    }
    if (sheet.slotCount == 0) sheet.slotCount = sheet.machine.usualSlots;
    sheet.slotsOfKind.insert(rules.slotsOfKind.begin(), rules.slotsOfKind.end());
    sheet.framesLeft = static_cast<std::int64_t>(frames.size());
    sheet.severalKinds = rules.slotsOfKind.size() > 1;
    const auto planned = planSpinLoads(frames, rules);
    if (!planned) return planned.error();
    for (const PlannedLoad& load : *planned) {
        SheetLoad row;
        row.number = sheet.loadsDone + static_cast<std::int64_t>(sheet.loads.size()) + 1;
        for (const std::string& lot : load.lots) row.lot += (row.lot.empty() ? "" : " + ") + lot;
        for (const auto& place : load.places) {
            row.places.push_back(place ? std::optional(known[*place]) : std::nullopt);
            if (place) ++row.frames;
        }
        weighOffsets(row);
        sheet.loads.push_back(std::move(row));
    }
    rules.mixLots = true;
    sheet.loadsIfMixed = countSpinLoads(frames, rules);
    for (const Id<Extraction> id : runs)
        if (const auto run = file.find(id)) takeSpun(file, *run, sheet);
    return sheet;
}

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
    std::size_t boxes = 0;
};

/// From every box of the kind that was weighed full and wet, this run's and earlier ones.
Result<KnownHeft> heftOfKind(const Read& file, const LoadFrame& like,
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
    // Of fewer than two boxes: as the box at hand was judged.
    HeftSpread spread{like.startG - like.endG, like.sdG};
    const double within = constantOr(file, "comb_spread_share", {}, on, 0.1);
    if (const auto learned = heftFrom(samples, within, working)) {
        spread = *learned;
        known.boxes = samples.size();
    }
    const double feel = constantOr(file, "heft_doubt_share", {}, on, heftDoubtShare) * spread.meanG;
    const auto classes = heftClasses(spread, feel, working);
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
            const auto heft = heftOfKind(m_file, box->each, box->kind, on, working);
            if (!heft) return heft.error();
            known = m_known.emplace(box->each.kind, *heft).first;
        }
        LoadFrame frame = box->each;
        frame.heft = felt.heft;
        const EmptyFrame empty{frame.endG, wetFrameSdG, frame.radiusMm};
        const LoadedFrame hung = frameOfHeft(thirdOf(felt.heft), known->second.classes, empty);
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

std::optional<LoadAdvice> leaveOneOut(const SheetLoad& load) {
    std::vector<LoadFrame> known;
    const auto frames = standing(load, known);
    const auto advice = adviseLeavingOut(static_cast<std::int64_t>(load.places.size()), frames);
    if (!advice || !*advice) return std::nullopt;
    LoadAdvice found{known[(*advice)->frame].box, arranged(load, (*advice)->balance.places, known)};
    return helps(load, found.after) ? std::optional(found) : std::nullopt;
}

std::optional<LoadAdvice> addAnEmptyFrame(const SheetLoad& load) {
    std::vector<LoadFrame> known;
    const auto frames = standing(load, known);
    if (known.empty()) return std::nullopt;
    LoadFrame bare = known.front();
    bare.box.clear();
    bare.entry = {};
    bare.startG = bare.endG;
    bare.sdG = wetFrameSdG;
    bare.emptied = true;
    known.push_back(bare);
    const auto advice = adviseAddingEmpty(static_cast<std::int64_t>(load.places.size()), frames,
                                          {bare.startG, bare.endG, bare.sdG, bare.radiusMm});
    if (!advice || !*advice) return std::nullopt;
    LoadAdvice found{{}, arranged(load, (*advice)->balance.places, known)};
    return helps(load, found.after) ? std::optional(found) : std::nullopt;
}

}  // namespace combwright
