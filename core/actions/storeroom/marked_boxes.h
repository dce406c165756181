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

/// Of boxes meant by a list as it was typed those still about: one that is gone, scrapped or burnt
/// is refused with Closed where it is named by itself, and passed over in a row of marks.
Result<std::vector<Id<Box>>> boxesAbout(const Read& file, std::string_view typed,
                                        const std::vector<Id<Box>>& boxes);

/// Refused with Closed where the box is gone, scrapped or burnt: so are the frames in it.
Result<void> demandAbout(const Read& file, Id<Box> box, const std::string& field);

}  // namespace combwright
