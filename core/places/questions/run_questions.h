// What is asked back about a box that comes into a run: frames it cannot hold, or another yard's;
// and about a load of another lot than the drum still holds, before it is begun and when it is
// written down.
#pragma once

#include <optional>

#include "core/model/honey/room.h"
#include "core/places/questions/questions.h"

namespace combwright {

/// The questions one row of a step raises about the boxes of a run.
std::vector<Question> runQuestions(const Read& file, const RowChange& row);

/// To be asked before a load of that run is begun in that machine, or in the first: the drum still
/// holds honey of another lot. Nothing where the drum was run empty (open-gate with run_empty), or
/// where the two have met in it already; that stays in gateMinder until it is run empty.
std::optional<Question> lotChangeQuestion(const Read& file, Id<Extraction> next, Day on,
                                          const std::optional<Id<Equipment>>& machine = {});

}  // namespace combwright
