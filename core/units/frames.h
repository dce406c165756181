// Keepers speak of "six and a half frames of brood": frames of brood, bees and stores are tenths of
// a frame. How many wooden frames a box holds is a Count.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A number of frames in tenths.
class Frames : public Amount<Frames> {
  public:
    constexpr Frames() = default;
    static constexpr Frames whole(std::int64_t n) { return ofCount(n * 10); }
    static constexpr Frames tenths(std::int64_t n) { return ofCount(n); }
    static Frames rounded(double frames) { return ofCount(std::llround(frames * 10.0)); }
    constexpr double value() const { return static_cast<double>(count()) / 10.0; }
};

}  // namespace combwright
