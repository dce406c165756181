// Boxes named by their marks in one line of text, as one calls them out in the storeroom.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// The parts of a text between commas, without blanks around them; empty ones left out.
std::vector<std::string> listedParts(std::string_view text);
/// The words of a part.
std::vector<std::string> wordsOf(std::string_view part);
/// Words from one to before another, a blank between two.
std::string joinedWords(const std::vector<std::string>& words, std::size_t from, std::size_t to);

/// The box still about with that mark, or "#12". Refused, under "boxes", with NotFound, Ambiguous,
/// or Closed where it is gone.
Result<Box> markedBox(const Read& file, const std::string& mark, Day on);

/// All boxes of a text. Refused as above, with Missing where none is named and Duplicate for one
/// named twice.
Result<std::vector<Box>> markedBoxes(const Read& file, std::string_view text, Day on);

}  // namespace combwright
