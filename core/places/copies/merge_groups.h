// Which values of a record are said together: the three of a reading, where a box stands. Put
// together one by one they would say what nobody wrote.
#pragma once

#include <string>
#include <vector>

#include "core/model/records.h"

namespace combwright {

struct MergeGroup {
    std::vector<std::size_t> fields;  ///< by their place in the row; the first names the group
    /// Counted among others, so they follow from what else stands there and are never asked about:
    /// a place in walking order, a level, a place in a box.
    std::vector<std::size_t> counted = {};
};
/// Every field but the record's own number, in one group each.
std::vector<MergeGroup> mergeGroups(const RecordType& type);

/// What two records have in common that are the same thing written down twice: a name with what it
/// belongs to, else the things and days they are of. Nothing where only equal rows can be the same.
std::optional<std::vector<Value>> sameKey(const RecordType& type, const Row& row);

/// The row without what a copy numbers for itself, to compare by.
std::string rowContent(const RecordType& type, const Row& row);

/// What is moved, the field that says where it is, and the table in which its moves are written
/// down, each under the thing's own name.
struct MovesOf {
    std::string_view thing;
    std::string_view place;
    std::string_view moves;
};
/// Nothing for what is not moved, or is no table of moves.
const MovesOf* movesOf(std::string_view thing);
const MovesOf* thingMovedBy(std::string_view moves);

}  // namespace combwright
