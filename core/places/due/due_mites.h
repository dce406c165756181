// What mites make due: acting where the line is reached, and sampling again in time.
//
// rule Treat (hive): the newest sample is at or over the line and no medicine went in since;
// `since` and `from` its day, `rate` with its interval, `value` the line, `about` the phase. rule
// SampleAgain (hive): under the line, `from` a month on or when the sample itself would reach the
// line, whichever is first, `by` and `other` that day where it comes within the year; `rate`,
// `value` the line. After a medicine `since` and `other` are the day it was out, `from` and `by`
// the published days after it, `about` its name, no rate. rule Sample (hive): none were found, or
// the sample is old, so nothing says when; `from` a month on, `rate` with its upper end. A board
// whose fall says treat or act now, newer than the sample: Treat, where it lay too short or long
// ago Sample; `perDay`, `about` the verdict, `source` of the table, no rate, no line. Sampling is
// not asked for while a colony is dormant or a medicine is in.
#pragma once

#include <optional>
#include <vector>

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

void addDueMites(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due);

}  // namespace combwright
