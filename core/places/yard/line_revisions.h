// Lines of the yard sheet that were written anew: what they said before and why they were changed,
// for the story; and whether the new line leaves out what the first said, for the question.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/places/questions/questions.h"
#include "core/storage/rows.h"

namespace combwright {

/// What a line said before it was written anew.
struct LineWas {
    std::string line;  ///< as it was typed
    std::string why;   ///< it was written anew; empty where nobody said
};

/// By the number of the inspection, oldest first; what was taken back is not among them.
std::map<std::int64_t, std::vector<LineWas>> linesWrittenAnew(const Read& file, Id<Hive> hive);

/// Of a line that was written in that step in the place of another: asked where the first said
/// something that the new one does not, or moved, fed or weighed other things.
std::vector<Question> lineQuestions(const Read& file, const RowChange& row, std::int64_t step);

}  // namespace combwright
