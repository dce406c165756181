// What commands about a season begin with: the file opened for reading, and the part of it that is
// meant.
#pragma once

#include <optional>

#include "app/cli/command.h"
#include "core/model/honey/extraction.h"
#include "core/model/yard/yard.h"
#include "core/storage/season.h"
#include "core/support/result.h"

namespace combwright::cli {

/// The season named first behind the command, for reading only. What is a copy of a past day or a
/// what-if is said to be one: in text at once, in pages on each.
Season seasonToRead(const Context& context);
/// The same to be written.
Season seasonToWrite(const Context& context);

/// The yard named with --yard, as yards were called on the day; none where none was named.
Result<std::optional<Id<Yard>>> yardNamed(const Context& context, const Read& file);

/// The run named with --run, likewise.
Result<std::optional<Id<Extraction>>> runNamed(const Context& context, const Read& file);

}  // namespace combwright::cli
