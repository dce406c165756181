#include "core/places/storeroom/frame_use.h"

namespace combwright {

FrameUse useOf(const Frame& frame, bool held) {
    if (held || frame.verdict == Verdict::Hold) return FrameUse::Held;
    if (frame.retired || frame.verdict == Verdict::Melt || frame.verdict == Verdict::Burn)
        return FrameUse::Lost;
    if (frame.verdict == Verdict::Repair) return FrameUse::Repairable;
    if (frame.verdict == Verdict::Refit) return FrameUse::Bare;
    if (!frame.comb) return FrameUse::Unknown;
    switch (*frame.comb) {
        case Comb::Bare:
            return FrameUse::Bare;
        case Comb::Foundation:
            return FrameUse::Foundation;
        case Comb::PartDrawn:
        case Comb::Drawn:
        case Comb::DrawnFat:
            return FrameUse::Drawn;
    }
    return FrameUse::Unknown;
}

}  // namespace combwright
