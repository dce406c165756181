// What a table from elsewhere may tell of, and which of its columns tell it: each kind with the
// fields it may have, and for each field the words beekeepers head such a column with.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace combwright {

enum class ImportKind { Hives, Boxes, Weights, Visits, CropNotes, Sales };

/// What stands in a column.
enum class CellType { Text, Day, Mass, Number, Count, Money, Flag, Choice };

struct ImportField {
    std::string_view key;  ///< also a heading, and what a map calls it
    CellType type = CellType::Text;
    bool needed = false;
    std::vector<std::string_view> headings;  ///< in small letters, words parted by a blank
    std::span<const std::string_view> choices = {};
};

/// "hives", "boxes", "weights", "visits", "crop-notes", "sales", in the order of the enumeration.
std::span<const std::string_view> importKindWords();
std::optional<ImportKind> importKindNamed(std::string_view word);
std::string_view word(ImportKind kind);

const std::vector<ImportField>& importFields(ImportKind kind);
const ImportField* importField(ImportKind kind, std::string_view key);

/// A heading taken apart: its words in small letters, and the unit it gives ("Weight (lb)").
struct Heading {
    std::string words;
    std::string unit;  ///< "kg", "g", "lb" or empty
};
Heading headingOf(std::string_view text);
/// The field a heading means: by our key, by a word of the list, in English or German whatever is
/// spoken, or by the label we show.
const ImportField* fieldHeaded(ImportKind kind, std::string_view heading);

/// The kind most of the headings speak of; nothing where none is known, or two are even.
std::optional<ImportKind> kindGuessed(const std::vector<std::string>& headings);

}  // namespace combwright
