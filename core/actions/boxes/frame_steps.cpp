#include "core/actions/boxes/frame_steps.h"

#include <algorithm>

namespace combwright {
namespace {

/// How much a frame differs from what was counted; 0 for one just like it.
int difference(const CountedFrame& counted, const Frame& frame) {
    return (frame.faults == counted.faults ? 0 : 4) +
           (!counted.comb || frame.comb == counted.comb ? 0 : 2) +
           (!counted.verdict || frame.verdict == counted.verdict ? 0 : 1);
}
constexpr int mostDifferent = 7;

/// Those that were pointed at come first: they are in the box for certain.
std::vector<Frame> pointedAtFirst(std::vector<Frame> frames) {
    std::stable_partition(frames.begin(), frames.end(),
                          [](const Frame& frame) { return frame.position.has_value(); });
    return frames;
}

std::vector<Frame> missingFrames(const Read& file, Id<Box> box) {
    auto missing = file.where<Frame>({is("box", box), is("retired", Retired::Missing)});
    std::stable_sort(missing.begin(), missing.end(), [](const Frame& a, const Frame& b) {
        return a.retiredOn && b.retiredOn && *a.retiredOn > *b.retiredOn;
    });
    return missing;
}

}  // namespace

std::vector<Frame> liveFrames(const Read& file, Id<Box> box) {
    return file.where<Frame>({is("box", box), isUnknown("retired")});
}

void retire(Write& file, Frame& frame, Retired how, Day on) {
    frame.retired = how;
    frame.retiredOn = on;
    file.change(frame);
}

std::vector<MetFrame> meetFrames(Write& file, Id<Box> box, const std::vector<CountedFrame>& counted,
                                 Day on) {
    const std::vector<Frame> there = pointedAtFirst(liveFrames(file, box));
    std::vector<bool> taken(there.size(), false);
    std::vector<std::optional<MetFrame>> met(counted.size());
    for (int unlike = 0; unlike <= mostDifferent; ++unlike)
        for (std::size_t f = 0; f < there.size(); ++f) {
            if (taken[f]) continue;
            for (std::size_t c = 0; c < counted.size(); ++c) {
                if (met[c] || counted[c].kind != there[f].kind ||
                    difference(counted[c], there[f]) != unlike)
                    continue;
                met[c] = MetFrame{counted[c], there[f]};
                taken[f] = true;
                break;
            }
        }
    for (std::size_t f = 0; f < there.size(); ++f) {
        if (taken[f]) continue;
        Frame over = there[f];
        retire(file, over, Retired::Missing, on);
    }
    std::vector<Frame> missing = missingFrames(file, box);
    std::erase_if(missing, [&](const Frame& frame) {
        return std::any_of(there.begin(), there.end(),
                           [&](const Frame& each) { return each.id == frame.id; });
    });
    std::vector<MetFrame> all;
    for (std::size_t c = 0; c < counted.size(); ++c) {
        if (!met[c]) {
            const auto back = std::find_if(missing.begin(), missing.end(), [&](const Frame& frame) {
                return frame.kind == counted[c].kind;
            });
            if (back != missing.end()) {
                Frame frame = *back;
                missing.erase(back);
                frame.retired.reset();
                frame.retiredOn.reset();
                frame.position.reset();  // which of them it is, only the keeper can say again
                file.change(frame);
                met[c] = MetFrame{counted[c], std::move(frame)};
            } else {
                Frame frame;
                frame.kind = counted[c].kind;
                frame.box = box;
                frame.comb = counted[c].comb;
                frame.faults = counted[c].faults;
                file.add(frame);
                met[c] = MetFrame{counted[c], std::move(frame), true};
            }
        }
        all.push_back(*std::move(met[c]));
    }
    return all;
}

}  // namespace combwright
