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

std::optional<double> emptyBoxGramsOf(const Read& file, const BoxKind& kind,
                                      std::optional<Id<Yard>> yard, Day on) {
    const std::string& code = kind.code.text();
    if (const auto own = constantInForce(file, "empty_box_g " + code, yard, on)) return own->value;
    const char* published = code == "LANG10-MED"    ? "empty_medium_g"
                            : code == "LANG10-DEEP" ? "empty_deep_g"
                                                    : nullptr;
    if (!published) return std::nullopt;
    const auto found = constantInForce(file, published, yard, on);
    return found ? std::optional(found->value) : std::nullopt;
}

}  // namespace combwright
