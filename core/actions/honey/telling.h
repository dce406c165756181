// What is told on paper: the text of the labels, where a printer puts them, and sheets kept as they
// were printed. A flower on a label is a claim; it stands there on the keeper's own statement only,
// never because somebody tasted it. None of it is legal advice.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/telling.h"

namespace combwright {

/// Sets what stands on labels from a day on; what is not given stays as it was, "-" takes a line
/// away. Refused with Missing "flower_grounds" for a flower without a statement, with NotAChoice
/// for limits or a region no table has, with OutOfRange for months beyond 1 to 120 and for lines
/// over 200 letters, with NothingToDo where it changes nothing.
struct SetLabels {
    static constexpr std::string_view name = "set-labels";
    using Answer = Id<LabelText>;
    Day on;
    std::string producer;
    std::string address;
    std::string origin;
    std::optional<Count> months;
    std::optional<CodeRule> code;
    std::string flower;
    std::string flowerGrounds;
    std::string more;
    std::string limits;
    std::string region;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Says how far a printer is off on a grid of labels, as the calibration page shows it. Refused
/// with NotAChoice for a grid no table has, with OutOfRange beyond 30 mm, with NothingToDo.
struct MoveLabels {
    static constexpr std::string_view name = "move-labels";
    using Answer = Id<LabelOffset>;
    Day on;
    std::string grid;
    std::optional<Number> right;  ///< mm; none: as it is
    std::optional<Number> down;   ///< mm; none: as it is
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Keeps a sheet as it reads now. Refused with Missing without text, with NothingToDo where that
/// day the same was kept of it already.
struct KeepSheet {
    static constexpr std::string_view name = "keep-sheet";
    using Answer = Id<KeptSheet>;
    Day on;
    Name sheet;
    Name subject;
    std::string text;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// As far as paper is ever off: more is another grid.
inline constexpr double mostLabelOffsetMm = 30;
inline constexpr std::size_t longestLabelLine = 200;

}  // namespace combwright
