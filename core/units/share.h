// A share of a whole (capped, filled, spare) in ten-thousandths, so that 85 % and 0.853 are both
// exact. WaterContent is a share too, but of the honey's mass, and is a type of its own: water is
// never a filled share by mistake.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A share of a whole, 0 to 1, in ten-thousandths.
class Share : public Amount<Share> {
  public:
    constexpr Share() = default;
    static constexpr Share tenThousandths(std::int64_t n) { return ofCount(n); }
    static constexpr Share percent(std::int64_t p) { return ofCount(p * 100); }
    static Share rounded(double share) { return ofCount(std::llround(share * 10000.0)); }
    constexpr double value() const { return static_cast<double>(count()) / 10000.0; }
};

/// Grams of water in 100 g of honey, in hundredths of a per cent.
class WaterContent : public Amount<WaterContent> {
  public:
    constexpr WaterContent() = default;
    static constexpr WaterContent hundredths(std::int64_t n) { return ofCount(n); }
    static WaterContent roundedPercent(double p) { return ofCount(std::llround(p * 100.0)); }
    constexpr double percent() const { return static_cast<double>(count()) / 100.0; }
};

}  // namespace combwright
