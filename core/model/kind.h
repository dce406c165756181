// The kinds of values a record holds and how each is spelt in a file's columns and in JSON.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace combwright {

/// What a column of the file holds: nothing, a whole number or text.
using Value = std::variant<std::monostate, std::int64_t, std::string>;
/// A record's values in the order of its fields.
using Row = std::vector<Value>;

/// What sort of thing a member is. A new kind touches each edge (SQL, JSON, text, editor) once.
enum class Kind {
    Id,
    Reference,
    Text,
    Choice,
    Flag,
    Count,
    Number,
    Frames,
    Mass,
    Length,
    Share,
    Percent,
    Temperature,
    Minutes,
    Money,
    Day,
    Instant,
    Changes,
};

/// How a kind is spelt at the edges: brood + Frames is column brood_tenths and key brood_frames.
struct KindSpelling {
    Kind kind;
    std::string_view word;          ///< as `actions` names it
    std::string_view columnSuffix;  ///< appended to the base name
    std::string_view keySuffix;
    int decimals;  ///< the key's number is the column's divided by ten to this power
    bool isText;   ///< the column holds text, not a whole number
};
const KindSpelling& spelling(Kind kind);

}  // namespace combwright
