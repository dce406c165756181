#include "core/trade/honey/season_sums.h"

#include <algorithm>

namespace combwright {

double gramsPerHive(double honeyG, int hives, Working* working) {
    note(working, "honey", honeyG, "g");
    note(working, "hives", hives, "");
    const double each = honeyG / hives;
    note(working, "honey_per_hive", each, "g", "honey / hives");
    return each;
}

std::optional<FrameRate> frameRate(const std::vector<FrameYield>& boxes, Working* working) {
    const bool judged = std::any_of(boxes.begin(), boxes.end(), [](const FrameYield& box) {
        return box.frames > 0 && box.filledShare && *box.filledShare > 0;
    });
    FrameRate rate;
    double reckoned = 0;  // frames · rate · fill
    double full = 0;      // frames · fill
    double off = 0;
    for (const FrameYield& box : boxes) {
        if (box.frames <= 0) continue;
        if (judged && (!box.filledShare || *box.filledShare <= 0)) continue;
        const double filled = judged ? *box.filledShare : 1.0;
        const auto frames = static_cast<double>(box.frames);
        reckoned += frames * box.fullFrameG * filled;
        full += frames * filled;
        off += box.offG;
        rate.frames += box.frames;
        ++rate.boxes;
    }
    if (rate.frames == 0) return std::nullopt;
    const auto frames = static_cast<double>(rate.frames);
    rate.reckonedG = reckoned / frames;
    rate.gotG = off / frames;
    rate.rateG = reckoned / full;
    if (judged) rate.filledShare = full / frames;
    rate.fullFrameG = off / full;
    note(working, "frames_weighed", frames, "");
    note(working, "full_frame_g", rate.rateG, "g");
    if (judged) note(working, "mean_filled", full / frames * 100.0, "%", "mean over the frames");
    note(working, "reckoned_per_frame", rate.reckonedG, "g", judged ? "full frame · filled" : "");
    note(working, "off_boxes", off, "g", "sum of full − wet");
    note(working, "got_per_frame", rate.gotG, "g", "off the boxes / frames");
    if (judged) note(working, "full_frame_from_got", rate.fullFrameG, "g", "got a frame / filled");
    return rate;
}

double cappingsShare(double cappingsG, double offBoxesG, Working* working) {
    note(working, "wet_cappings", cappingsG, "g");
    note(working, "off_boxes", offBoxesG, "g", "sum of full − wet");
    const double share = cappingsG / offBoxesG;
    note(working, "cappings_of_honey", share * 100.0, "%", "cappings / off the boxes");
    return share;
}

double minutesPerFrame(double minutes, std::int64_t frames, Working* working) {
    note(working, "uncapping", minutes, "min");
    note(working, "frames_uncapped", static_cast<double>(frames), "");
    const double each = minutes / static_cast<double>(frames);
    note(working, "minutes_per_frame", each, "min", "minutes / frames");
    return each;
}

double minutesPerLoad(double minutes, std::int64_t loads, Working* working) {
    note(working, "spinning", minutes, "min");
    note(working, "loads", static_cast<double>(loads), "");
    const double each = minutes / static_cast<double>(loads);
    note(working, "minutes_per_load", each, "min", "minutes / loads");
    return each;
}

}  // namespace combwright
