// Amounts are whole numbers of one smallest unit. Honey and wax are kept like money: sums of grams
// close exactly, which sums of floating-point kilograms do not. A bare number is never an amount;
// it becomes one through a named factory (Mass::grams(250)), and crossing from one unit to another
// is always a named function.
#pragma once

#include <cmath>
#include <compare>
#include <cstdint>

namespace combwright {

/// The arithmetic shared by all amounts; Unit is the amount's own class.
template <class Unit>
class Amount {
  public:
    /// From what a file column holds.
    static constexpr Unit ofCount(std::int64_t count) {
        Unit unit;
        unit.m_count = count;
        return unit;
    }
    /// How many of the smallest unit: what a file column holds.
    constexpr std::int64_t count() const { return m_count; }

    constexpr auto operator<=>(const Amount&) const = default;
    friend constexpr Unit operator+(Unit a, Unit b) { return ofCount(a.m_count + b.m_count); }
    friend constexpr Unit operator-(Unit a, Unit b) { return ofCount(a.m_count - b.m_count); }
    friend constexpr Unit operator-(Unit a) { return ofCount(-a.m_count); }
    friend constexpr Unit operator*(Unit a, std::int64_t n) { return ofCount(a.m_count * n); }
    constexpr Unit& operator+=(Unit b) {
        m_count += b.m_count;
        return static_cast<Unit&>(*this);
    }
    constexpr Unit& operator-=(Unit b) {
        m_count -= b.m_count;
        return static_cast<Unit&>(*this);
    }

  protected:
    constexpr Amount() = default;
    std::int64_t m_count = 0;
};

}  // namespace combwright
