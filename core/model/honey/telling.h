// What is told of honey on paper: labels, where a printer puts them, and sheets kept as they were.
#pragma once

#include "core/model/describe.h"

namespace combwright {

/// How a filling gets the code on its jars.
enum class CodeRule { YearRunFilling, BestBefore, Own };
template <>
struct Choices<CodeRule> {
    static constexpr auto words =
        std::to_array<std::string_view>({"year, run, filling", "best-before day", "typed"});
};

/// What stands on the labels from a day on, and which rules the keeper goes by. Nothing here is
/// legal advice.
struct LabelText {
    static constexpr std::string_view table = "label_text";
    Id<LabelText> id;
    Day since;
    std::string producer;
    std::string address;
    std::string origin;           ///< country, and area if wished
    std::optional<Count> months;  ///< best before, from the day of filling
    CodeRule code = CodeRule::YearRunFilling;
    std::string flower;         ///< named on the label
    std::string flowerGrounds;  ///< the keeper's own statement why it may be
    std::string more;           ///< a line of the keeper's own
    std::string limits;         ///< whose limits of water and net mass
    std::string region;         ///< whose list of required words
    static const Fields& fields();
};

/// How far this printer's paper is off a grid of labels.
struct LabelOffset {
    static constexpr std::string_view table = "label_offset";
    Id<LabelOffset> id;
    Name grid;
    Day since;
    Number right;  ///< labels lie that far to the right of where they should, mm
    Number down;   ///< and that far below, mm
    static const Fields& fields();
};

/// A sheet as it was printed on a day, kept so that it can be seen again when the records have
/// moved on.
struct KeptSheet {
    static constexpr std::string_view table = "kept_sheet";
    Id<KeptSheet> id;
    Day on;
    Name sheet;    ///< which
    Name subject;  ///< of what
    std::string text;
    static const Fields& fields();
};

}  // namespace combwright
