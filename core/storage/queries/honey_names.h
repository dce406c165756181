// What honey after the gate is called: a lot by its name, a filling by the code on its jars, a kind
// of goods by its name, a fair by its name and day.
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

/// What the row is called; nothing where it is none of these, or gone.
std::optional<std::string> honeyNameOf(const Read& file, std::string_view table, std::int64_t id);

}  // namespace combwright
