// What an amendment says: some fields of a record and what they should have been. A field left out
// stays, one given as nothing becomes unknown; that is why it is no struct of optionals.
#pragma once

#include <optional>
#include <string>

#include "core/model/codec.h"

namespace combwright {

/// {"net_g":12500,"water_percent":null} on one line, keys as in JSON; core/exchange reads and
/// writes it.
struct Changes {
    std::string json;
    bool operator==(const Changes&) const = default;
};

template <>
struct Codec<Changes> {
    static constexpr Kind kind = Kind::Changes;
    static constexpr bool absentIsEmpty = false;
    static Value pack(const Changes& changes) { return changes.json; }
    static std::optional<Changes> unpack(const Value& value) {
        const auto* text = std::get_if<std::string>(&value);
        if (!text || text->empty()) return std::nullopt;
        return Changes{*text};
    }
};

}  // namespace combwright
