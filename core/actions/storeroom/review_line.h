// One box on the winter bench as one types it: "7 keep, 1 web, 1 broken", and behind a ";" what
// else was seen of it: "web, scraped, wax 70 g, years 24x3 25x5". What cannot be read for certain
// is refused with the words that are known, never guessed: "6,5" is no six and five.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/actions/boxes/box_list.h"

namespace combwright {

/// So many frames alike, with the verdict where one was said.
struct ReviewTally {
    Count frames;
    std::optional<Comb> comb;
    std::string faults;
    std::optional<Verdict> verdict;
    std::string frameKind;  ///< as typed behind "of"; empty for the kind the box takes
    bool operator==(const ReviewTally&) const = default;
};

/// So many combs drawn in one year.
struct CombYear {
    Count year;
    Count combs;
    bool operator==(const CombYear&) const = default;
};

struct ReviewLine {
    std::vector<ReviewTally> tallies;
    std::optional<bool> web, scraped, wantsPaint;
    std::optional<Known<Mass>> scrapings, propolis;
    std::string combYears;  ///< in one spelling: "24x3 25x5"
    std::string wood;
    std::string note;
    std::string counts;  ///< what stands before the remarks, as typed

    Count found() const;
};

/// What a mass without its unit means: in the window the person's small unit; in a script nothing,
/// for a script must mean the same whoever plays it.
enum class BareMass { SmallUnit, Refused };

/// Reads a line of the bench. A part is a number, then words in any order: a comb (drawn, part,
/// foundation, bare, fat), what is seen (a word, or letters: W, WV), a verdict by word or digit
/// (keep … burn, 1 to 8), "of" and another kind of frame. "empty" is a box without frames. Refused
/// with NotAChoice for an unknown word, WrongType for what is no number where one is wanted,
/// Duplicate for a verdict, comb or remark said twice, OutOfRange for more than 100 frames.
Result<ReviewLine> parseReviewLine(std::string_view text, BareMass bare = BareMass::Refused);

/// Reads "24x3 25x5", also '24×3 or 2024x3. Refused with WrongType and Duplicate.
Result<std::vector<CombYear>> parseCombYears(std::string_view text);

/// A verdict by its word, "good" for keep, or its digit 1 to 8.
std::optional<Verdict> verdictNamed(std::string_view word);
/// "keep, scrape, …".
std::string verdictWords();

/// What is seen of one frame, as it is typed at the bench: "W", "web", "W6", "broken 8", "4".
struct FrameSeen {
    std::string faults;
    std::optional<Verdict> verdict;
    std::optional<Comb> comb;
};
Result<FrameSeen> parseFrameSeen(std::string_view text);

}  // namespace combwright
