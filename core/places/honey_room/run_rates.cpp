#include "core/places/honey_room/run_rates.h"

#include <algorithm>

#include "core/places/pull/fill_judged.h"
#include "core/places/pull/full_frame.h"

namespace combwright {
namespace {

/// How full a box was judged: in the honey room, else when it was looked into last.
std::optional<double> judgedFill(const Read& file, const ExtractionBox& box, Day on) {
    auto filled = box.filled;
    if (!filled && box.box) filled = fillLookedAt(file, *box.box, on);
    const auto share = filled ? filled->middle() : std::nullopt;
    return share ? std::optional(*share / 10000.0) : std::nullopt;
}

void takeFrames(const Read& file, const RunBalance& balance, RunRates& rates) {
    if (balance.byEye) return;
    for (const RunBoxLine& line : balance.boxes) {
        if (line.byDifference || !line.offG || !line.box.frames) continue;
        const auto kind = file.find(line.box.frameKind);
        const auto full =
            kind ? fullFrameGramsOf(file, *kind, balance.run.yard, balance.run.on) : std::nullopt;
        if (!full || *full <= 0) continue;
        const std::int64_t frames = line.box.frames->value();
        const auto judged = judgedFill(file, line.box, balance.run.on);
        rates.kinds[kind->id.number] = *kind;
        rates.frames[kind->id.number].push_back({frames, *full, judged, *line.offG});
        if (!judged || frames <= 0) continue;
        rates.fills.push_back(*judged - *line.offG / (static_cast<double>(frames) * *full));
        rates.fillsJudged += *judged;
    }
}

void takeLoads(const Read& file, RunRates& rates) {
    for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", rates.run.id)})) {
        if (load.minutes) rates.spinning.add(static_cast<double>(load.minutes->value()), 1.0);
        if (!load.uncapping) continue;
        std::int64_t frames = 0;
        for (const LoadBox& each : file.where<LoadBox>({is("load", load.id)}))
            frames += each.frames.value();
        if (frames > 0)
            rates.uncapping.add(static_cast<double>(load.uncapping->value()),
                                static_cast<double>(frames));
    }
}

}  // namespace

RunRates runRates(const Read& file, const RunBalance& balance) {
    RunRates rates;
    rates.run = balance.run;
    takeFrames(file, balance, rates);
    takeLoads(file, rates);
    // With a box by difference what left the boxes was made of the cappings themselves.
    if (balance.cappings && balance.outOfBoxesG && *balance.outOfBoxesG > 0 && balance.unaccountedG)
        rates.cappings.add(static_cast<double>(balance.cappings->grams()), *balance.outOfBoxesG);
    return rates;
}

std::vector<RunRates> runRatesUpTo(const Read& file, Day last) {
    std::vector<RunRates> all;
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.on > last) continue;
        if (const auto balance = runBalance(file, run.id)) all.push_back(runRates(file, *balance));
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const RunRates& a, const RunRates& b) { return a.run.on < b.run.on; });
    return all;
}

}  // namespace combwright
