// How many there are of things one can count: frames in a box, queen cells, mites, hives.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A whole number of things.
class Count : public Amount<Count> {
  public:
    constexpr Count() = default;
    constexpr explicit Count(std::int64_t n) { m_count = n; }
    constexpr std::int64_t value() const { return count(); }
};

}  // namespace combwright
