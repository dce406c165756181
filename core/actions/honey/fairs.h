// A day behind the table: the box is packed in one line, and at night only what came home is typed.
// The rest was sold. No bookkeeping beyond counts, prices and one cash box.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/going_out.h"

namespace combwright {

/// Packs goods for a fair, "40 454 g, 12 skep" (goods_line.h); a fair of that name and day that is
/// not over gets more of them. One costs what is said behind "at", else what stands in the price
/// list. Where no filling is said and only one has any left, it is that one. Refused with TooMany
/// where more is packed than is there, HeldBack where it is held and no reason is given, Closed
/// where that fair is over, Contradiction where it is held before it is packed.
struct PackFair {
    static constexpr std::string_view name = "pack-fair";
    using Answer = Id<Fair>;
    Day on;
    Name fair;
    std::optional<Day> fairDay;  ///< none: the day it is packed
    std::string place;
    std::string goods;
    std::optional<Money> change;  ///< in the cash box in the morning
    std::string reason;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What came home, "9 454 g, 2 broken, 1 given; 3 skep", or in the order they were packed "9, 2
/// broken, 1 given; 3"; a kind not named came home with none. The fair is over then. Refused with
/// TooMany where more came home, broke and was given than was packed, NotFound for what was not
/// packed, Ambiguous where two fillings of a kind were and none is said, Duplicate for what is said
/// twice, WrongType where kinds are not named and there are more or fewer than were packed, Missing
/// for a fair nothing was packed for, OtherAction where it is over, BeforeItBegan before its day.
struct FairHome {
    static constexpr std::string_view name = "fair-home";
    using Answer = Id<Fair>;
    Day on;
    Id<Fair> fair;
    std::string home;
    std::optional<Money> cash;  ///< in the cash box at night
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// No more came home, broke and was given than was packed, whoever writes it; and of a fair that is
/// over everything is counted. Refused with TooMany or Missing, field "home".
Result<void> demandFairLine(const Read& file, const FairLine& line);

}  // namespace combwright
