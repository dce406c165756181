// Numbers and days as tables from elsewhere write them. A comma may part decimals or thousands and
// "3/4/2027" is two days: what can be read in two ways is told apart by the rest of its column or
// asked, and never guessed.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/units/day.h"

namespace combwright {

enum class DecimalSign { Point, Comma };
enum class DayOrder { DayFirst, MonthFirst };

/// A cell read in each way it can be.
struct NumberInCell {
    std::optional<double> byPoint;
    std::optional<double> byComma;
    std::string unit;  ///< what stands behind it: "kg"; a currency is passed over

    bool isNone() const { return !byPoint && !byComma; }
    bool isAmbiguous() const { return byPoint && byComma && *byPoint != *byComma; }
    std::optional<double> by(DecimalSign sign) const {
        return sign == DecimalSign::Point ? byPoint : byComma;
    }
};
/// Groups of three may be parted by the other sign, a blank or an apostrophe. No exponents.
NumberInCell numberInCell(std::string_view cell);

struct DayInCell {
    std::optional<Day> dayFirst;
    std::optional<Day> monthFirst;
    int minute = -1;         ///< of the day, where a time stands behind it
    bool shortYear = false;  ///< "3.4.27": which century nobody said

    bool isNone() const { return !dayFirst && !monthFirst; }
    bool isAmbiguous() const { return dayFirst && monthFirst && *dayFirst != *monthFirst; }
    std::optional<Day> by(DayOrder order) const {
        return order == DayOrder::DayFirst ? dayFirst : monthFirst;
    }
};
/// Year first in any writing; with points the day stands first; with strokes or dashes either may.
/// The day is the one written: a time zone behind it moves nothing.
DayInCell dayInCell(std::string_view cell);

/// What the cells of one column say of themselves: the one way in which all of them that can be
/// read in one way only are read.
class ColumnSays {
  public:
    void hear(const NumberInCell& cell);
    void hear(const DayInCell& cell);
    /// Nothing where no cell says, or they disagree.
    std::optional<DecimalSign> decimal() const;
    std::optional<DayOrder> days() const;

  private:
    bool m_point = false;
    bool m_comma = false;
    bool m_dayFirst = false;
    bool m_monthFirst = false;
};

/// Without blanks at its ends, the hard ones too.
std::string_view trimmedCell(std::string_view cell);

}  // namespace combwright
