// How tables of the same headings were read the last time: what each column is, and how its numbers
// and days are written. It belongs to the person: a scale writes the same table every week.
#pragma once

#include <optional>

#include "core/exchange/import/import_plan.h"

namespace combwright {

/// What was answered for a table of that kind and these headings; nothing where none was kept.
std::optional<ImportMap> rememberedImport(ImportKind kind, const std::vector<PlannedColumn>& as);
/// Keeps it for the next time, of the tables seen last.
void rememberImport(ImportKind kind, const std::vector<PlannedColumn>& as, const ImportMap& map);

}  // namespace combwright
