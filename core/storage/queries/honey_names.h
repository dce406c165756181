// What honey after the gate is called: a lot by its name, a filling by the code on its jars, a kind
// of goods by its name, a fair by its name and day; and what was written down of it by the day it
// is of and the honey it is of.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/storage/queries/names.h"

namespace combwright {

/// Whether rows of that table are named here.
bool isHoneyNamed(std::string_view table);

/// The rows of that name. A fair held each year under one name is the newest up to the day, or the
/// first after it.
std::vector<std::int64_t> honeyNamed(const Read& file, std::string_view table,
                                     const NameQuery& query);

/// Whether rows of that table are called by the honey they are of.
bool isOfHoney(std::string_view table);

/// A reading, something done or what was left, of the query's bucket or lot, by its day (none: the
/// query's), something done also by what it was; a part of the query's lot by what went in; jars of
/// the query's filling by their kind; a complaint by its day or its words; what went out by its
/// day, with its filling, bucket or lot where that is not enough. Refused with NotFound, NotADay
/// and Missing where the honey is not said, under the table's name.
Result<std::vector<std::int64_t>> ofHoneyNamed(const Read& file, std::string_view table,
                                               const NameQuery& query);

/// What the row is called; nothing where it is none of these, or gone.
std::optional<std::string> honeyNameOf(const Read& file, std::string_view table, std::int64_t id);

}  // namespace combwright
