// What things of the wax bench are called: batches, blocks, moulds and small projects by their
// names; a pour by its mould, the newest up to the day; a wish by the candle, the next wanted.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/storage/queries/names.h"

namespace combwright {

/// Whether rows of that table are named here.
bool isWaxNamed(std::string_view table);
/// The rows of that name.
std::vector<std::int64_t> waxNamed(const Read& file, std::string_view table,
                                   const NameQuery& query);
/// What the row is called; nothing where it is none of these, or gone.
std::optional<std::string> waxNameOf(const Read& file, std::string_view table, std::int64_t id);

}  // namespace combwright
