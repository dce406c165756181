#include "core/places/wax_bench/comb_wax.h"

#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

std::optional<double> combArea(const FrameKind& kind) {
    if (!kind.combWidth || !kind.combHeight) return std::nullopt;
    return kind.combWidth->mm() * kind.combHeight->mm();
}

std::optional<double> areaOfCode(const Read& file, const char* code) {
    const auto kind = file.first<FrameKind>({is("code", std::string(code))});
    return kind ? combArea(*kind) : std::nullopt;
}

}  // namespace

std::optional<double> combWaxGrams(const Read& file, const FrameKind& kind, Day on) {
    const auto medium = constantInForce(file, "wax_per_medium_comb_g", {}, on);
    const auto deep = constantInForce(file, "wax_per_deep_comb_g", {}, on);
    const auto mediumArea = areaOfCode(file, "LANG-F-MED");
    const auto deepArea = areaOfCode(file, "LANG-F-DEEP");
    const auto area = combArea(kind);
    if (!medium || !deep || !mediumArea || !deepArea || !area) return std::nullopt;
    // The two figures are of two areas; a comb nearer to the one goes by that.
    const double middle = (*mediumArea + *deepArea) / 2.0;
    return *area < middle ? medium->value * *area / *mediumArea : deep->value * *area / *deepArea;
}

}  // namespace combwright
