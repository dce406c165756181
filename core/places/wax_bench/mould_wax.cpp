#include "core/places/wax_bench/mould_wax.h"

#include <algorithm>

#include "core/trade/wax/candle_mass.h"

namespace combwright {

double mouldMm(const std::optional<Length>& length) {
    return length ? static_cast<double>(length->count()) / 10.0 : 0.0;
}

std::optional<double> volumeBySize(const Mould& mould) {
    double ml = 0;
    if (mould.shape == MouldShape::Cylinder)
        ml = cylinderMl(mouldMm(mould.diameter), mouldMm(mould.height));
    else if (mould.shape == MouldShape::Taper && mould.tip)
        ml = taperMl(mouldMm(mould.diameter), mouldMm(mould.tip), mouldMm(mould.height));
    return ml > 0 ? std::optional(ml) : std::nullopt;
}

VolumeAgainstSize volumeAgainstSize(const Mould& mould) {
    const auto size = volumeBySize(mould);
    if (!mould.volume || !size || mould.volume->value() <= 0) return VolumeAgainstSize::Alike;
    const double more = std::max(mould.volume->value() / *size, *size / mould.volume->value());
    if (more > volumesCannotBoth) return VolumeAgainstSize::Impossible;
    return more > volumesDiffer ? VolumeAgainstSize::Differs : VolumeAgainstSize::Alike;
}

std::int64_t piecesOf(const Pour& pour) {
    const auto many = [](const std::optional<Count>& count) { return count ? count->value() : 0; };
    return pour.good.value() + many(pour.failed) + many(pour.seconds);
}

std::optional<Mass> neededFor(const Mould& mould, std::int64_t pieces) {
    if (mould.oneWeighs) return Mass::grams(mould.oneWeighs->grams() * pieces);
    const auto ml = mould.volume ? std::optional(mould.volume->value()) : volumeBySize(mould);
    if (!ml || *ml <= 0) return std::nullopt;
    const auto one = candleMass(*ml);
    if (!one) return std::nullopt;
    return Mass::roundedGrams(one->massG * static_cast<double>(pieces));
}

}  // namespace combwright
