// A pure number the keeper sets (a rate, a factor) in millionths, so that 1.6 typed is 1.6 kept.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A number in millionths; what it counts is said by the name of the constant it belongs to.
class Number : public Amount<Number> {
  public:
    constexpr Number() = default;
    static Number rounded(double number) { return ofCount(std::llround(number * 1e6)); }
    constexpr double value() const { return static_cast<double>(count()) / 1e6; }
};

}  // namespace combwright
