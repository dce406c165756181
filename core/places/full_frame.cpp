#include "core/places/full_frame.h"

#include "core/storage/queries/constants.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {

std::optional<double> fullFrameGramsOf(const Read& file, const FrameKind& kind,
                                       std::optional<Id<Yard>> yard, Day on) {
    if (const auto own = constantInForce(file, "full_frame_g " + kind.code.text(), yard, on))
        return own->value;
    if (!kind.combWidth || !kind.combHeight) return std::nullopt;
    return fullFrameGrams(kind.combWidth->mm() * kind.combHeight->mm() / 10000.0);
}

}  // namespace combwright
