// What day it is. Asked for, never taken: tests, prints and the command line's --day pass their
// own.
#pragma once

#include "core/units/day.h"

namespace combwright {

class Clock {
  public:
    virtual ~Clock() = default;
    virtual Day today() const = 0;
    virtual Instant now() const = 0;
};

}  // namespace combwright
