// What day it is. Asked for, never taken: tests, prints and the command line's --day pass their
// own. How long something takes is asked of another hand, which only ever goes forward: the day and
// the hour may be put right, or jump, in the middle of a spin.
#pragma once

#include <cstdint>

#include "core/units/day.h"

namespace combwright {

class Clock {
  public:
    virtual ~Clock() = default;
    virtual Day today() const = 0;
    virtual Instant now() const = 0;
    /// Milliseconds since a moment of its own, never going back; only differences mean anything,
    /// and only within one run of the program.
    virtual std::int64_t steadyMs() const = 0;
};

}  // namespace combwright
