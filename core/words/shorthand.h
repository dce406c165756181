// The shorthand of the yard sheet: the short marks keepers write on lids and cards. Every mark is a
// row of one table; a word that is no mark is the note and never an error.
//
//     e b7 s3 qc0 +1 w4/300 cross   ->  eggs, 7 of brood, 3 of stores, no queen cells, one super
//     on,
//                                       a wash of 4 mites in 300 bees, the note "cross"
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/yard/sheet_line.h"
#include "core/words/units.h"

namespace combwright {

/// How far a hive was opened by what was done and seen, where the line does not say it: seen
/// inside, or a deep taken off, is opened; a super, a deep on top, feed, beetles or a temper take
/// the lid off; a weight, a board under it or a heft need not even that. Nothing at all, or a note
/// alone, is a hive that was opened and in which nothing was counted. Common practice, no source.
Looked plainlyLooked(const SheetLine& line);

/// Reads a line. Where none of "x", "lid" and "o" is in it, it is opened as plainlyLooked says.
/// Later marks overrule earlier ones; words that are no marks become the note, in
/// their order. A mark with a number that cannot be (b99999) is taken for a word.
SheetLine readShorthand(std::string_view line);

/// The line for all, then the hive's own: the own marks overrule, the notes stand one after the
/// other. A hive whose own line marks it not opened or lid only takes nothing from the line for
/// all.
SheetLine readShorthand(std::string_view all, std::string_view own);

/// A line said of a whole yard that was visited while its hives stayed shut: "all supered, 3
/// light".
struct YardLine {
    SheetLine each;    ///< what every hive gets: not opened, or lid only
    std::string note;  ///< of the yard: words, and what is said of some only ("3 light")
};
/// Nothing where the line does not begin with "all", "x" or "lid": then it is for the hives opened.
std::optional<YardLine> readYardLine(std::string_view line);

/// Two marks of one line that cannot both hold, as they were typed.
struct TwoMarks {
    std::string one;
    std::string two;
    bool operator==(const TwoMarks&) const = default;
};

/// The first two marks of a line that give the same thing two values: "b7 b8", "e e0", "light
/// heavy". The same value twice is no contradiction. A line with one is not kept.
std::optional<TwoMarks> contradictionIn(std::string_view line);

/// The shortest line that says the same: readShorthand(writeShorthand(x)) == x. "x", "lid" or "o"
/// is in it where that was said, or is not as plainlyLooked has it.
std::string writeShorthand(const SheetLine& line);

/// One mark for the help under the sheet and on paper: what is typed and the key of its word.
struct ShorthandMark {
    std::string_view typed;
    std::string_view meaning;
};
/// With masses in the units shown.
std::vector<ShorthandMark> shorthandMarks(Units shown);

}  // namespace combwright
