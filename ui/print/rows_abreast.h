// Narrow tables stand beside themselves on paper: a count of frames by kind fills half a sheet's
// width, and a second half of it saves a sheet.
#pragma once

#include "core/places/pages/page.h"

namespace combwright {

/// Rows that stand beside each other, made one row: downwards first, heads across all.
TableBlock rowsAbreast(const TableBlock& table);

}  // namespace combwright
