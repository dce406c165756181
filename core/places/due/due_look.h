// INTERIM, to be removed with due_look.cpp once due_queens, due_mites, due_stores and due_growth
// are gathered: what the yard sheet's minds say of each hive, so that the due list lives until
// then.
//
// Look (a cell was left): `leaveShut`, `from` the first day to look, `other` the last shut day.
// Treat (over the line): `value` mites per 100. Feed (hefted light). ComeBack (the keeper said so).
#pragma once

#include <vector>

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

void addDueLooks(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due);

}  // namespace combwright
