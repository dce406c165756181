// Money as a price list has it, in the file's own currency. Nobody keeps books with it: it is
// counted in hundredths so that a day's takings add up to the coin.
#pragma once

#include "core/units/amount.h"

namespace combwright {

/// An amount of the file's currency, in hundredths.
class Money : public Amount<Money> {
  public:
    constexpr Money() = default;
    static constexpr Money hundredths(std::int64_t n) { return ofCount(n); }
    constexpr double whole() const { return static_cast<double>(count()) / 100.0; }
};

}  // namespace combwright
