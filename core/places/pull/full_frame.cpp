#include "core/places/pull/full_frame.h"

#include "core/storage/queries/constants.h"
#include "core/trade/frames/empty_box.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {
namespace {

/// Area of all combs of a box, one side each.
std::optional<double> combDm2Of(const Read& file, const BoxKind& kind) {
    const auto frame = file.find(kind.takes);
    if (!frame || !frame->combWidth || !frame->combHeight || !kind.framesNominal)
        return std::nullopt;
    return frame->combWidth->mm() * frame->combHeight->mm() / 10000.0 *
           static_cast<double>(kind.framesNominal->value());
}

}  // namespace

std::optional<double> fullFrameGramsOf(const Read& file, const FrameKind& kind,
                                       std::optional<Id<Yard>> yard, Day on) {
    if (const auto own = constantInForce(file, "full_frame_g " + kind.code.text(), yard, on))
        return own->value;
    if (!kind.combWidth || !kind.combHeight) return std::nullopt;
    return fullFrameGrams(kind.combWidth->mm() * kind.combHeight->mm() / 10000.0);
}

std::optional<double> emptyBoxGramsOf(const Read& file, const BoxKind& kind,
                                      std::optional<Id<Yard>> yard, Day on, Working* working) {
    const std::string& code = kind.code.text();
    const auto known = [&](const std::string& name) -> std::optional<double> {
        const auto found = constantInForce(file, name, yard, on);
        if (!found) return std::nullopt;
        note(working, "empty_box_g", found->value, "g", {}, constantSource(*found));
        return found->value;
    };
    if (const auto own = known("empty_box_g " + code)) return own;
    if (code == "LANG10-MED") return known("empty_medium_g");
    if (code == "LANG10-DEEP") return known("empty_deep_g");
    const auto medium = constantInForce(file, "empty_medium_g", yard, on);
    const auto mediumKind = file.first<BoxKind>({is("code", std::string("LANG10-MED"))});
    const auto mediumComb = mediumKind ? combDm2Of(file, *mediumKind) : std::nullopt;
    const auto comb = combDm2Of(file, kind);
    if (!medium || !mediumComb || !comb) return std::nullopt;
    return emptyBoxGramsByComb(medium->value, *mediumComb, *comb, working);
}

}  // namespace combwright
