// A value, or the refusal that stands in its place. The names are those of std::expected, so that
// the standard's own type can take over when the compiler has it.
#pragma once

#include <cassert>
#include <utility>
#include <variant>

#include "core/support/refusal.h"

namespace combwright {

template <class T>
class [[nodiscard]] Result {
  public:
    using value_type = T;

    Result(T value) : m_held(std::in_place_index<0>, std::move(value)) {}
    Result(Refusal refusal) : m_held(std::in_place_index<1>, std::move(refusal)) {}

    bool has_value() const { return m_held.index() == 0; }
    explicit operator bool() const { return has_value(); }

    T& value() & {
        assert(has_value());
        return std::get<0>(m_held);
    }
    const T& value() const& {
        assert(has_value());
        return std::get<0>(m_held);
    }
    T&& value() && {
        assert(has_value());
        return std::get<0>(std::move(m_held));
    }
    T& operator*() & { return value(); }
    const T& operator*() const& { return value(); }
    T&& operator*() && { return std::move(*this).value(); }
    T* operator->() { return &value(); }
    const T* operator->() const { return &value(); }

    const Refusal& error() const {
        assert(!has_value());
        return std::get<1>(m_held);
    }

  private:
    std::variant<T, Refusal> m_held;
};

template <>
class [[nodiscard]] Result<void> {
  public:
    using value_type = void;

    Result() = default;
    Result(Refusal refusal) : m_held(std::move(refusal)) {}

    bool has_value() const { return m_held.index() == 0; }
    explicit operator bool() const { return has_value(); }
    const Refusal& error() const {
        assert(!has_value());
        return std::get<1>(m_held);
    }

  private:
    std::variant<std::monostate, Refusal> m_held;
};

}  // namespace combwright
