// How each type of value is stored: one codec for each type, giving its kind and the way into and
// out of a column. A codec refuses what cannot be meant; the trade's own limits live in the
// actions.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <type_traits>

#include "core/model/kind.h"
#include "core/support/id.h"
#include "core/units/count.h"
#include "core/units/day.h"
#include "core/units/frames.h"
#include "core/units/known.h"
#include "core/units/length.h"
#include "core/units/mass.h"
#include "core/units/minutes.h"
#include "core/units/money.h"
#include "core/units/number.h"
#include "core/units/share.h"
#include "core/units/temperature.h"

namespace combwright {

/// Text that must say something: a mark, a name. Never empty, never with blanks at its ends.
class Name {
  public:
    Name() = default;
    /// Nothing for text that is empty, longer than 200 bytes or holds control characters.
    static std::optional<Name> of(std::string_view text);
    const std::string& text() const { return m_text; }
    bool operator==(const Name&) const = default;

  private:
    std::string m_text;
};

/// The words of an enumeration, in its order; specialised beside each enumeration.
template <class Enum>
struct Choices;

template <class T>
struct Codec;

template <class Unit, Kind kindOfUnit, std::int64_t low, std::int64_t high>
struct AmountCodec {
    static constexpr Kind kind = kindOfUnit;
    static constexpr bool absentIsEmpty = false;
    static Value pack(const Unit& unit) { return unit.count(); }
    static std::optional<Unit> unpack(const Value& value) {
        const auto* number = std::get_if<std::int64_t>(&value);
        if (!number || *number < low || *number > high) return std::nullopt;
        return Unit::ofCount(*number);
    }
};

constexpr std::int64_t billion = 1'000'000'000;
template <>
struct Codec<Count> : AmountCodec<Count, Kind::Count, 0, billion> {};
template <>
struct Codec<Number> : AmountCodec<Number, Kind::Number, -billion * billion, billion * billion> {};
template <>
struct Codec<Frames> : AmountCodec<Frames, Kind::Frames, 0, 10'000> {};
template <>
struct Codec<Mass> : AmountCodec<Mass, Kind::Mass, 0, billion> {};
template <>
struct Codec<Length> : AmountCodec<Length, Kind::Length, 0, 1'000'000> {};
template <>
struct Codec<Share> : AmountCodec<Share, Kind::Share, 0, 10'000> {};
template <>
struct Codec<WaterContent> : AmountCodec<WaterContent, Kind::Percent, 0, 10'000> {};
template <>
struct Codec<Temperature> : AmountCodec<Temperature, Kind::Temperature, -1'000, 3'000> {};
template <>
struct Codec<Minutes> : AmountCodec<Minutes, Kind::Minutes, 0, 1'000'000> {};
template <>
struct Codec<Money> : AmountCodec<Money, Kind::Money, 0, billion> {};

template <class Record>
struct Codec<Id<Record>> {
    static constexpr Kind kind = Kind::Reference;
    static constexpr bool absentIsEmpty = false;
    static std::string_view refersTo() { return Record::table; }
    static Value pack(const Id<Record>& id) { return id.number; }
    static std::optional<Id<Record>> unpack(const Value& value) {
        const auto* number = std::get_if<std::int64_t>(&value);
        if (!number || *number < 0) return std::nullopt;
        return Id<Record>{*number};
    }
};

/// A note: empty means none was written and is stored as NULL.
template <>
struct Codec<std::string> {
    static constexpr Kind kind = Kind::Text;
    static constexpr bool absentIsEmpty = true;
    static Value pack(const std::string& text) { return text.empty() ? Value{} : Value{text}; }
    static std::optional<std::string> unpack(const Value& value);
};

template <>
struct Codec<Name> {
    static constexpr Kind kind = Kind::Text;
    static constexpr bool absentIsEmpty = false;
    static Value pack(const Name& name) { return name.text(); }
    static std::optional<Name> unpack(const Value& value);
};

template <>
struct Codec<bool> {
    static constexpr Kind kind = Kind::Flag;
    static constexpr bool absentIsEmpty = false;
    static Value pack(bool flag) { return std::int64_t{flag}; }
    static std::optional<bool> unpack(const Value& value);
};

template <>
struct Codec<Day> {
    static constexpr Kind kind = Kind::Day;
    static constexpr bool absentIsEmpty = false;
    static Value pack(const Day& day) { return isoText(day); }
    static std::optional<Day> unpack(const Value& value);
};

template <>
struct Codec<Instant> {
    static constexpr Kind kind = Kind::Instant;
    static constexpr bool absentIsEmpty = false;
    static Value pack(const Instant& instant) { return isoText(instant); }
    static std::optional<Instant> unpack(const Value& value);
};

template <class Enum>
requires std::is_enum_v<Enum>
struct Codec<Enum> {
    static constexpr Kind kind = Kind::Choice;
    static constexpr bool absentIsEmpty = false;
    static std::span<const std::string_view> choices() { return Choices<Enum>::words; }
    static Value pack(Enum choice) {
        return std::string(Choices<Enum>::words[static_cast<std::size_t>(choice)]);
    }
    static std::optional<Enum> unpack(const Value& value) {
        const auto* text = std::get_if<std::string>(&value);
        if (!text) return std::nullopt;
        for (std::size_t i = 0; i < Choices<Enum>::words.size(); ++i)
            if (Choices<Enum>::words[i] == *text) return static_cast<Enum>(i);
        return std::nullopt;
    }
};

template <>
struct Choices<How> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"weighed", "counted", "by eye", "by difference", "assumed", "unknown"});
};

/// The word of a choice as it stands in the file and in JSON.
template <class Enum>
requires std::is_enum_v<Enum>
constexpr std::string_view word(Enum choice) {
    return Choices<Enum>::words[static_cast<std::size_t>(choice)];
}

}  // namespace combwright
