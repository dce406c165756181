#include "core/places/honey_room/load_sheet.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/places/honey_room/load_frames.h"
#include "core/places/pull/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/runs.h"
#include "core/trade/extractor/machine_ring.h"
#include "core/trade/extractor/unbalance.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {
namespace {

/// What the share filled is worth where nobody judged it. Planning assumption, no source.
constexpr double assumedFilled = 0.85;

/// A box whose tag was lost is of the kind the other boxes of its run are.
std::optional<Id<FrameKind>> usualKind(const std::vector<ExtractionBox>& boxes) {
    for (const ExtractionBox& box : boxes)
        if (box.frameKind) return box.frameKind;
    return std::nullopt;
}

/// Honey in one frame of the box: by what the box lost, else by what it weighs more than an empty
/// one, else by how full it was judged.
double honeyOfFrame(const Read& file, const ExtractionBox& box, const Extraction& run,
                    const std::optional<FrameKind>& kind, double frames, double& share,
                    bool& assumed, Working* working) {
    const double area = combDm2(kind);
    const auto own = kind ? fullFrameGramsOf(file, *kind, run.yard, run.on) : std::nullopt;
    const double full = own.value_or(fullFrameGrams(area));
    const auto judged = box.filled ? box.filled->middle() : std::nullopt;
    share = judged ? *judged / 10000.0 : assumedFilled;
    assumed = !judged;
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
        assumed = false;
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

bool helps(const SheetLoad& before, const SheetLoad& after) {
    return after.offset.largerG() + 1.0 < before.offset.largerG();
}

}  // namespace

double combDm2(const std::optional<FrameKind>& kind) {
    return kind && kind->combWidth && kind->combHeight
               ? kind->combWidth->mm() * kind->combHeight->mm() / 10000.0
               : 5.58;
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
    const double honey = honeyOfFrame(file, box, run, kind, frames, share, frame.assumed, working);
    const double area = combDm2(kind);
    frame.endG = wetFrameGPerDm2 * area;
    note(working, "wet_frame_g", frame.endG, "g", "comb of one side, dm² · 72 g",
         "planning assumption, no source");
    frame.startG = frame.endG + honey;
    const auto full = kind ? fullFrameGramsOf(file, *kind, run.yard, run.on) : std::nullopt;
    const auto estimate =
        frameHoney({full.value_or(fullFrameGrams(area)), share, share, std::nullopt});
    // Honey, wood and comb differ each by itself.
    frame.sdG = std::hypot(estimate ? estimate->ownG : honey * 0.15, wetFrameSdG);
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
        waiting.push_back({*each, box.frameKind, left, box.frames->value()});
        waiting.back().each.radiusMm += further;
    }
    return waiting;
}

std::vector<Extraction> openRuns(const Read& file) {
    auto runs = file.where<Extraction>({isUnknown("closed")});
    std::stable_sort(runs.begin(), runs.end(),
                     [](const Extraction& a, const Extraction& b) { return a.on < b.on; });
    return runs;
}

double LoadSheet::ringG() const { return MachineRing{ranSmoothG, walkedG}.ringG(allowedG); }

namespace {

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
        row.startKnown = load.startOffset.has_value();
        row.endKnown = load.endOffset.has_value();
        row.doubtKnown = load.doubt.has_value();
        row.endDoubtKnown = false;
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
    std::int64_t before = 0;
    for (const Id<Extraction> id : runs) {
        const auto run = file.find(id);
        if (!run) return Refusal{Code::NotFound, "run", {}};
        sheet.runs.push_back(run->name.text());
        const auto done =
            static_cast<std::int64_t>(file.where<SpinLoad>({is("extraction", id)}).size());
        sheet.loadsDone += done;
        if (!run->closed) before += done;
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
        row.number = before + static_cast<std::int64_t>(sheet.loads.size()) + 1;
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
