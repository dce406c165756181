// Hives named by their marks in one line of text, or all of a yard: what is fed or weighed in one
// round is written down in one line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// The hive, standing on that day. Refused under `field` with NotFound or Closed, under "on" with
/// BeforeItBegan.
Result<Hive> hiveStandingOn(const Read& file, Id<Hive> hive, Day on, const std::string& field);

/// The hive of that mark, or "#12", of that yard where one is given. Refused under `field`.
Result<Hive> hiveMarked(const Read& file, const std::string& mark, std::optional<Id<Yard>> yard,
                        Day on, const std::string& field);

/// "H1, H2": those hives; an empty text: every hive of the yard in which a colony lived that day.
/// Refused under "hives" with Missing where neither is given, Duplicate for one named twice.
Result<std::vector<Hive>> hivesListed(const Read& file, std::string_view text,
                                      std::optional<Id<Yard>> yard, Day on);

/// Whether a colony lived in the hive on that day.
bool livedInOn(const Read& file, Id<Hive> hive, Day on);

}  // namespace combwright
