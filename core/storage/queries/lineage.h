// What parts two copies of one season, or two days of one: which rows their later steps touched.
// The journals know, so nothing else of the files need be read.
#pragma once

#include <map>
#include <set>
#include <string>

#include "core/storage/rows.h"

namespace combwright {

/// Numbers of rows by their table.
using RowSet = std::map<std::string, std::set<std::int64_t>, std::less<>>;

/// Rows that the steps behind `after` up to `upTo` touched: added, changed or removed, once or to
/// and fro.
RowSet rowsTouched(const Read& file, std::int64_t after, std::int64_t upTo);
/// Those that were not there before these steps; some may be gone again.
RowSet rowsAdded(const Read& file, std::int64_t after, std::int64_t upTo);

/// The newest step that both journals have; 0 where they are not of one season.
std::int64_t lastCommonStep(const Read& one, const Read& other);

/// A record's row as the file holds it; nothing where it is not there.
std::optional<Row> recordRow(const Read& file, std::string_view table, std::int64_t id);

}  // namespace combwright
