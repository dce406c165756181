// How long work took, to the minute; rates are learnt from these.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// A length of time in whole minutes.
class Minutes : public Amount<Minutes> {
  public:
    constexpr Minutes() = default;
    constexpr explicit Minutes(std::int64_t n) { m_count = n; }
    constexpr std::int64_t value() const { return count(); }
};

}  // namespace combwright
