// Masses are whole grams: a hive scale reads 100 g, a kitchen scale 1 g, and nothing in the yard or
// the honey room is weighed finer. Medicines have a type of their own and never mix with this one.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A mass in whole grams.
class Mass : public Amount<Mass> {
  public:
    constexpr Mass() = default;
    static constexpr Mass grams(std::int64_t g) { return ofCount(g); }
    /// The nearest whole gram; halves away from zero.
    static Mass roundedGrams(double g) { return ofCount(std::llround(g)); }
    constexpr std::int64_t grams() const { return count(); }
    constexpr double kilograms() const { return static_cast<double>(count()) / 1000.0; }
};

}  // namespace combwright
