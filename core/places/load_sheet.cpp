#include "core/places/load_sheet.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/places/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
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

struct BoxFrames {
    std::string mark;
    std::string kind;
    std::int64_t frames = 0;
    LoadFrame each;
};

/// A box whose tag was lost is of the kind the other boxes of its run are.
std::optional<Id<FrameKind>> usualKind(const std::vector<ExtractionBox>& boxes) {
    for (const ExtractionBox& box : boxes)
        if (box.frameKind) return box.frameKind;
    return std::nullopt;
}

std::optional<BoxFrames> framesOf(const Read& file, const ExtractionBox& box, const Extraction& run,
                                  const std::optional<Id<FrameKind>>& usual) {
    const auto kind = file.find(box.frameKind ? box.frameKind : usual);
    BoxFrames frames;
    const auto known = file.find(box.box);
    frames.mark = known && !known->mark.empty() ? known->mark
                  : box.knownAs.empty()         ? "#" + std::to_string(box.id.number)
                                                : box.knownAs;
    frames.kind = kind ? kind->code.text() : "unknown";
    frames.frames = box.frames ? box.frames->value() : 0;
    if (frames.frames == 0) return std::nullopt;
    const double area = kind && kind->combWidth && kind->combHeight
                            ? kind->combWidth->mm() * kind->combHeight->mm() / 10000.0
                            : 5.58;
    const auto full = kind ? fullFrameGramsOf(file, *kind, run.yard, run.on) : std::nullopt;
    const auto filled = box.filled ? box.filled->middle() : std::nullopt;
    const double share = filled ? *filled / 10000.0 : assumedFilled;
    double honey = share * full.value_or(fullFrameGrams(area));
    const auto gross = box.gross ? box.gross->middle() : std::nullopt;
    const auto wet = box.wet ? box.wet->middle() : std::nullopt;
    if (gross && wet) honey = (*gross - *wet) / static_cast<double>(frames.frames);
    const auto estimate =
        frameHoney({full.value_or(fullFrameGrams(area)), share, share, std::nullopt});
    const double own = estimate ? estimate->ownG : honey * 0.15;
    frames.each = {frames.mark, wetFrameGPerDm2 * area + honey, wetFrameGPerDm2 * area,
                   std::max(own, wetFrameSdG)};
    return frames;
}

}  // namespace

void weighOffsets(SheetLoad& load) {
    const auto offsetAt = [&](auto gramsOf, double& angle) {
        double across = 0;
        double up = 0;
        const auto count = static_cast<double>(load.places.size());
        for (std::size_t slot = 0; slot < load.places.size(); ++slot) {
            if (!load.places[slot]) continue;
            const double turn = 2 * std::numbers::pi * static_cast<double>(slot) / count;
            across += gramsOf(*load.places[slot]) * std::sin(turn);
            up += gramsOf(*load.places[slot]) * std::cos(turn);
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
        start.push_back({place->startG, place->endG, place->sdG, std::nullopt});
        end.push_back({place->endG, place->endG, wetFrameSdG, std::nullopt});
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

Result<LoadSheet> loadSheet(const Read& file, const std::vector<Id<Extraction>>& runs, Day on) {
    LoadSheet sheet;
    sheet.slotCount = static_cast<std::int64_t>(constantOr(file, "extractor_slots", {}, on, 12));
    std::vector<SpinFrame> frames;
    std::vector<LoadFrame> known;
    SpinRules rules;
    rules.openBoxes = std::nullopt;
    // A few grams more are worth fewer boxes open at a time.
    rules.sameScoreG = 20.0;
    for (const Id<Extraction> id : runs) {
        const auto run = file.find(id);
        if (!run) return Refusal{Code::NotFound, "run", {}};
        sheet.runs.push_back(run->name.text());
        const auto boxes = file.where<ExtractionBox>({is("extraction", id)});
        for (const ExtractionBox& box : boxes) {
            const auto boxFrames = framesOf(file, box, *run, usualKind(boxes));
            if (!boxFrames) continue;
            rules.slotsOfKind[boxFrames->kind] = sheet.slotCount;
            for (std::int64_t n = 0; n < boxFrames->frames; ++n) {
                const LoadFrame& each = boxFrames->each;
                frames.push_back({each.box,
                                  boxFrames->kind,
                                  run->name.text(),
                                  {each.startG, each.endG, each.sdG, std::nullopt}});
                known.push_back(each);
            }
        }
    }
    const auto planned = planSpinLoads(frames, rules);
    if (!planned) return planned.error();
    for (const PlannedLoad& load : *planned) {
        SheetLoad row;
        row.lot = load.lots.empty() ? std::string() : load.lots.front();
        for (const auto& place : load.places) {
            if (!place) {
                row.places.emplace_back();
                continue;
            }
            row.places.emplace_back(known[*place]);
            ++row.frames;
        }
        weighOffsets(row);
        sheet.loads.push_back(std::move(row));
    }
    rules.mixLots = true;
    sheet.loadsIfMixed = countSpinLoads(frames, rules);
    const TurningRotor rotor{.radiusMm = constantOr(file, "extractor_radius_mm", {}, on, 300),
                             .rpm = constantOr(file, "spin_rpm", {}, on, 300),
                             .rotorKg = constantOr(file, "rotor_kg", {}, on, 60),
                             .grade = constantOr(file, "balance_grade", {}, on, 16)};
    if (const auto allowed = allowedOffsetG(rotor)) sheet.allowedG = *allowed;
    return sheet;
}

}  // namespace combwright
