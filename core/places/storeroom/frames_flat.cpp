#include "core/places/storeroom/frames_flat.h"

#include <algorithm>
#include <cmath>

namespace combwright {
namespace {

/// Fullest comb first, so that what is shared out goes where honey can be.
int combRank(const std::optional<Comb>& comb) {
    if (!comb) return 3;
    switch (*comb) {
        case Comb::Drawn:
            return 0;
        case Comb::DrawnFat:
            return 1;
        case Comb::PartDrawn:
            return 2;
        case Comb::Foundation:
            return 4;
        case Comb::Bare:
            return 5;
    }
    return 5;
}

bool holdsHoney(const FlatFrame& frame) { return combRank(frame.comb) < 4; }

bool hasOwnFill(const FlatFrame& frame) { return frame.filledA || frame.filledB; }

double ownFill(const FlatFrame& frame) {
    const double a = frame.filledA ? *frame.filledA : *frame.filledB;
    return (a + frame.filledB.value_or(a)) / 2;
}

FlatFrame asFlat(const Frame& frame) {
    FlatFrame flat;
    if (frame.position) flat.place = frame.position->value();
    flat.comb = frame.comb;
    if (frame.filledA) flat.filledA = frame.filledA->value();
    if (frame.filledB) flat.filledB = frame.filledB->value();
    if (frame.capped) flat.capped = frame.capped->value();
    flat.wet = frame.wet.value_or(false);
    flat.faults = frame.faults;
    return flat;
}

void fillAlike(FlatFrame& frame, double share, std::optional<double> capped) {
    frame.filledA = frame.filledB = std::clamp(share, 0.0, 1.0);
    frame.capped = capped;
    if (!frame.comb) frame.comb = Comb::Drawn;  // what holds honey was drawn
}

/// The look's honey and capping, in frames, shared out among frames that have none of their own.
void shareOut(std::vector<FlatFrame*>& open, std::optional<double> filled,
              std::optional<double> capped) {
    const auto frames = static_cast<double>(open.size());
    if (open.empty() || (!filled && !capped)) return;
    if (filled) filled = std::clamp(*filled, 0.0, frames);
    if (!capped) {
        for (FlatFrame* frame : open) fillAlike(*frame, *filled / frames, std::nullopt);
        return;
    }
    double full = std::clamp(*capped, 0.0, frames);
    if (filled) full = std::min(full, *filled);
    const double rest = filled ? *filled - full : 0;
    const double room = frames - full;
    for (std::size_t i = 0; i < open.size(); ++i) {
        const double own = std::clamp(full - static_cast<double>(i), 0.0, 1.0);
        const double more = room > 0 ? rest * (1 - own) / room : 0;
        if (filled || own > 0) fillAlike(*open[i], own + more, own);
    }
}

}  // namespace

std::vector<FlatFrame> framesFlat(const std::vector<Frame>& frames,
                                  const std::optional<BoxLook>& look, std::int64_t count) {
    std::vector<FlatFrame> flat;
    for (const Frame& frame : frames) flat.push_back(asFlat(frame));
    while (static_cast<std::int64_t>(flat.size()) < count) flat.emplace_back();
    std::stable_sort(flat.begin(), flat.end(), [](const FlatFrame& a, const FlatFrame& b) {
        if (a.place && b.place) return *a.place < *b.place;
        if (a.place || b.place) return a.place.has_value();
        if (a.faults.empty() != b.faults.empty()) return a.faults.empty();
        return combRank(a.comb) < combRank(b.comb);
    });
    if (!look) return flat;
    auto filled = look->filled ? look->filled->middle() : std::nullopt;
    auto capped = look->cappedFrames ? look->cappedFrames->middle() : std::nullopt;
    if (filled) filled = *filled / 10000.0 * static_cast<double>(flat.size());
    if (capped) capped = *capped / 10.0;
    std::vector<FlatFrame*> open;
    for (FlatFrame& frame : flat) {
        if (hasOwnFill(frame)) {
            if (filled) filled = *filled - ownFill(frame);
            if (capped) capped = *capped - frame.capped.value_or(0);
        } else if (holdsHoney(frame)) {
            open.push_back(&frame);
        }
    }
    shareOut(open, filled, capped);
    return flat;
}

}  // namespace combwright
