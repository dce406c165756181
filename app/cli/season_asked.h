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

/// The season named first behind the command, for reading only.
Season seasonToRead(const Context& context);

/// The yard named with --yard, as yards were called on the day; none where none was named.
Result<std::optional<Id<Yard>>> yardNamed(const Context& context, const Read& file);

/// The run named with --run, likewise.
Result<std::optional<Id<Extraction>>> runNamed(const Context& context, const Read& file);

}  // namespace combwright::cli
