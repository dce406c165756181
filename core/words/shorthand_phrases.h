// Words keepers say for marks of the yard sheet, "not opened", "no eggs", "wash 11/300": each is a
// row of one table and stands for marks, so that a phrase means exactly what its marks mean.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace combwright {

/// Keepers write marks in capitals too ("LIGHT", "+1S"); only the letters of marks are folded, the
/// note keeps its own.
std::string folded(std::string_view word);

/// A comma after a mark parts it from the next, as on paper.
std::string_view withoutComma(std::string_view word);

/// Words of a line that stand for marks.
struct Phrase {
    std::size_t words = 0;  ///< how many; 0 where there is no phrase
    std::vector<std::string> marks;
};
/// The phrase that begins at a word. Its marks may turn out to be none ("wash it"): then it is no
/// phrase.
Phrase phraseAt(const std::vector<std::string_view>& words, std::size_t at);

}  // namespace combwright
