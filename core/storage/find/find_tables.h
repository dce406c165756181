// What of a season is found by words: which records, what each is called by, which of its own words
// count and of what it is. Made from the descriptions of the records, so that a new note is found
// without a line here; only a new record needs one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace combwright {

/// What sort of thing was found, in the order they are shown.
enum class FindKind { Hive, Queen, Box, Visit, Health, Honey, Goods, Wax, Storeroom, Note };
inline constexpr int findKinds = 10;

/// One record that is found.
struct FindTable {
    std::string_view table;
    FindKind kind = FindKind::Note;
    std::string_view mark;      ///< the field it is called by; may be empty
    std::string_view day;       ///< its own day
    std::string_view dayOf;     ///< else the reference whose day it is of
    bool onlyWhenSaid = false;  ///< not without a mark or a word of its own: bare frames, looks
};

/// In a fixed order: the number of each is part of what the cache holds.
const std::vector<FindTable>& findTables();
/// Its number in that list; -1 where it is not found by words.
int findTableNumber(std::string_view table);

/// The question whose columns are id, mark, own words (a line each), the marks of what it is of,
/// its own sort and its choices, and the day. `how` stands behind it: " WHERE t.id = ?".
std::string findQuestion(const FindTable& of, std::string_view how);

/// A reference to a record whose mark or day is part of what is found here.
struct FindReference {
    int from = 0;  ///< the table that refers
    std::string column;
};
/// Who must be read again where the mark or the day of a row of that table became another.
const std::vector<FindReference>& findReferences(int table);

/// Changes with everything above: a cache made by another description is not used.
const std::string& findFormat();

}  // namespace combwright
