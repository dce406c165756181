// Lengths are whole tenths of a millimetre: that is how finely the trade tables print hive parts
// (231.8 mm for a deep frame), and 25.4 mm to the inch is then exact.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A length in tenths of a millimetre.
class Length : public Amount<Length> {
  public:
    constexpr Length() = default;
    static constexpr Length tenthsOfMm(std::int64_t t) { return ofCount(t); }
    static constexpr Length mm(std::int64_t mm) { return ofCount(mm * 10); }
    /// The nearest tenth of a millimetre.
    static Length roundedMm(double mm) { return ofCount(std::llround(mm * 10.0)); }
    constexpr double mm() const { return static_cast<double>(count()) / 10.0; }
};

}  // namespace combwright
