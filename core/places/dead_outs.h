// Colonies found dead: what was answered of each, what it looks like, what may become of its combs
// and what to do today. Never a diagnosis: that is the inspector's and the laboratory's.
#pragma once

#include <string_view>
#include <vector>

#include "core/model/season_info.h"
#include "core/model/storeroom/dead_out.h"
#include "core/storage/rows.h"

namespace combwright {

/// All answers of a colony up to a day as one: the newest that was given to each question. Its day
/// is that of the newest answer; without any it is blank.
DeadOut answersOf(const Read& file, Id<Colony> colony, Day on);
/// Brood that ropes, dried down, sank or lies twisted: call the inspector, move nothing.
bool looksLikeDisease(const DeadOut& said);
/// Scale and ropiness were both looked for and not found, and nothing else looks like disease.
bool foulbroodRuledOut(const DeadOut& said);
/// The colony that ended in a hive last and left combs to be explained.
std::optional<Colony> lastDeadIn(const Read& file, Id<Hive> hive);

}  // namespace combwright
