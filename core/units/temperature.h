// Temperatures are tenths of a degree Celsius, as thermometers for honey and rooms read.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A temperature in tenths of a degree Celsius.
class Temperature : public Amount<Temperature> {
  public:
    constexpr Temperature() = default;
    static constexpr Temperature tenths(std::int64_t t) { return ofCount(t); }
    static Temperature roundedCelsius(double c) { return ofCount(std::llround(c * 10.0)); }
    constexpr double celsius() const { return static_cast<double>(count()) / 10.0; }
};

}  // namespace combwright
