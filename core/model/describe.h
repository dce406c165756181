// One description of a record serves everything mechanical: SQL, the journal, JSON, CSV, item
// models, default forms and history. A struct says once what its members are called; from a
// member's type follows its kind, whether it may be absent, what it refers to and which words a
// choice has. Code that thinks (trade, actions, places) sees only the struct.
//
//     struct Look { std::optional<bool> eggs; std::optional<Known<Frames>> brood; static const
//     Fields& fields(); }; const Fields& Look::fields() {
//         static const Fields all = describe(field<&Look::eggs>("eggs"),
//         known<&Look::brood>("brood")); return all;
//     }
//
// gives the columns eggs, brood_tenths, brood_to_tenths, brood_how and the keys eggs, brood_frames,
// brood_to_frames, brood_how.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/model/codec.h"
#include "core/model/kind.h"

namespace combwright {

/// Which third of a reading a field is; Whole for fields that are no reading.
enum class ReadingPart { Whole, Value, To, How };

struct FieldInfo {
    std::string name;  ///< base name, without the suffix of its kind
    Kind kind = Kind::Text;
    bool optional = false;  ///< may be unknown (NULL)
    ReadingPart part = ReadingPart::Whole;
    std::string_view refersTo = {};  ///< table name, for references
    std::span<const std::string_view> choices = {};
    std::size_t offset = 0;
    Value (*get)(const void* member) = nullptr;
    /// False where the value is of the wrong type, not a choice or out of range.
    bool (*set)(void* member, const Value& value) = nullptr;

    std::string column() const;
    std::string key() const;
    Value valueIn(const void* record) const {
        return get(static_cast<const char*>(record) + offset);
    }
    bool setIn(void* record, const Value& value) const {
        return set(static_cast<char*>(record) + offset, value);
    }
};

/// The fields of a record in order, with the number of struct members they describe.
struct Fields {
    std::vector<FieldInfo> list;
    std::size_t members = 0;

    auto begin() const { return list.begin(); }
    auto end() const { return list.end(); }
    std::size_t size() const { return list.size(); }
    const FieldInfo& operator[](std::size_t i) const { return list[i]; }
    /// The field whose base name that is and which is no part of a reading but its value.
    const FieldInfo* find(std::string_view name) const;
    const FieldInfo* findKey(std::string_view key) const;
};

namespace detail {

template <class T>
struct OptionalOf {
    using Inner = T;
    static constexpr bool optional = false;
};
template <class T>
struct OptionalOf<std::optional<T>> {
    using Inner = T;
    static constexpr bool optional = true;
};

template <class T>
struct MemberOf;
template <class Owner, class T>
struct MemberOf<T Owner::*> {
    using owner = Owner;
    using type = T;
};

template <auto Member>
std::size_t offsetOf() {
    using Owner = typename MemberOf<decltype(Member)>::owner;
    static const Owner sample{};
    return static_cast<std::size_t>(reinterpret_cast<const char*>(&(sample.*Member)) -
                                    reinterpret_cast<const char*>(&sample));
}

template <class T>
Value packMember(const void* member) {
    const T& held = *static_cast<const T*>(member);
    if constexpr (OptionalOf<T>::optional)
        return held ? Codec<typename OptionalOf<T>::Inner>::pack(*held) : Value{};
    else
        return Codec<T>::pack(held);
}

template <class T>
bool unpackMember(void* member, const Value& value) {
    T& held = *static_cast<T*>(member);
    using Inner = typename OptionalOf<T>::Inner;
    const bool absent = std::holds_alternative<std::monostate>(value);
    if constexpr (OptionalOf<T>::optional) {
        if (absent) {
            held.reset();
            return true;
        }
    } else if (absent) {
        if constexpr (Codec<Inner>::absentIsEmpty) {
            held = Inner();
            return true;
        }
        return false;
    }
    auto read = Codec<Inner>::unpack(value);
    if (!read) return false;
    held = *std::move(read);
    return true;
}

template <class T>
FieldInfo fieldOf(std::string_view name, std::size_t offset) {
    using Inner = typename OptionalOf<T>::Inner;
    FieldInfo info;
    info.name = std::string(name);
    info.kind = Codec<Inner>::kind;
    info.optional = OptionalOf<T>::optional || Codec<Inner>::absentIsEmpty;
    if constexpr (requires { Codec<Inner>::refersTo(); }) info.refersTo = Codec<Inner>::refersTo();
    if constexpr (requires { Codec<Inner>::choices(); }) info.choices = Codec<Inner>::choices();
    info.offset = offset;
    info.get = &packMember<T>;
    info.set = &unpackMember<T>;
    return info;
}

}  // namespace detail

/// Describes one member by its base name.
template <auto Member>
Fields field(std::string_view name) {
    using T = typename detail::MemberOf<decltype(Member)>::type;
    return {{detail::fieldOf<T>(name, detail::offsetOf<Member>())}, 1};
}

/// Describes a record's own number; the member is an Id of the record itself.
template <auto Member>
Fields ownId() {
    Fields fields = field<Member>("id");
    fields.list.front().kind = Kind::Id;
    fields.list.front().refersTo = {};
    return fields;
}

/// Describes a reading, std::optional<Known<T>>, as its three columns. Set in the order value, to,
/// how: a reading with a figure needs a how; without figure and how there is no reading.
template <auto Member>
Fields known(std::string_view name) {
    using Optional = typename detail::MemberOf<decltype(Member)>::type;
    using Reading = typename detail::OptionalOf<Optional>::Inner;
    using T = typename decltype(Reading::value)::value_type;
    static_assert(detail::OptionalOf<Optional>::optional, "a reading may always be absent");

    const std::size_t offset = detail::offsetOf<Member>();
    FieldInfo value = detail::fieldOf<std::optional<T>>(name, offset);
    FieldInfo to = value;
    FieldInfo how = detail::fieldOf<std::optional<How>>(name, offset);
    value.part = ReadingPart::Value;
    to.part = ReadingPart::To;
    how.part = ReadingPart::How;

    value.get = [](const void* member) {
        const auto& held = *static_cast<const Optional*>(member);
        return held && held->value ? Codec<T>::pack(*held->value) : Value{};
    };
    to.get = [](const void* member) {
        const auto& held = *static_cast<const Optional*>(member);
        return held && held->to ? Codec<T>::pack(*held->to) : Value{};
    };
    how.get = [](const void* member) {
        const auto& held = *static_cast<const Optional*>(member);
        return held ? Codec<How>::pack(held->how) : Value{};
    };
    value.set = [](void* member, const Value& given) {
        auto& held = *static_cast<Optional*>(member);
        held.reset();
        if (std::holds_alternative<std::monostate>(given)) return true;
        const auto read = Codec<T>::unpack(given);
        if (!read) return false;
        held = Reading{*read, std::nullopt, How::Unknown};
        return true;
    };
    to.set = [](void* member, const Value& given) {
        auto& held = *static_cast<Optional*>(member);
        if (std::holds_alternative<std::monostate>(given)) return true;
        const auto read = Codec<T>::unpack(given);
        if (!read || !held || !held->value || *read < *held->value) return false;
        held->to = *read;
        return true;
    };
    how.set = [](void* member, const Value& given) {
        auto& held = *static_cast<Optional*>(member);
        if (std::holds_alternative<std::monostate>(given)) return !held;
        const auto read = Codec<How>::unpack(given);
        if (!read) return false;
        if (!held) held = Reading{};
        held->how = *read;
        return true;
    };
    return {{value, to, how}, 1};
}

/// Embeds the fields of a member that is a described struct itself.
template <auto Member>
Fields part() {
    using T = typename detail::MemberOf<decltype(Member)>::type;
    Fields fields = T::fields();
    for (FieldInfo& info : fields.list) info.offset += detail::offsetOf<Member>();
    fields.members = 1;
    return fields;
}

template <class... Parts>
Fields describe(Parts... parts) {
    Fields all;
    (
        [&](Fields& each) {
            all.list.insert(all.list.end(), each.list.begin(), each.list.end());
            all.members += each.members;
        }(parts),
        ...);
    return all;
}

template <class T>
Row toRow(const T& described) {
    Row row;
    row.reserve(T::fields().size());
    for (const FieldInfo& info : T::fields()) row.push_back(info.valueIn(&described));
    return row;
}

/// Nothing where a value does not fit its field: a file written by somebody else.
template <class T>
std::optional<T> fromRow(const Row& row) {
    T described{};
    const Fields& fields = T::fields();
    if (row.size() != fields.size()) return std::nullopt;
    for (std::size_t i = 0; i < row.size(); ++i)
        if (!fields[i].setIn(&described, row[i])) return std::nullopt;
    return described;
}

}  // namespace combwright
