// A day behind the table, from the box packed to the cash counted: what was sold is what was packed
// and neither came home nor broke nor was given. Cash is held against takings; what ran out is
// where the next year's wishes begin.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/going_out.h"
#include "core/storage/rows.h"
#include "core/support/working.h"

namespace combwright {

struct FairRow {
    FairLine line;
    GoodsKind kind;
    std::string code;                  ///< of its filling; empty: not known, or no jar
    std::optional<std::int64_t> sold;  ///< none: nobody counted what came home
    std::optional<Money> takings;      ///< none: not counted, or no price
    bool ranOut = false;               ///< none came home, and some was sold
    /// Of the kind, at the fair of that name before.
    std::optional<std::int64_t> packedBefore;
    std::optional<std::int64_t> soldBefore;
};

struct FairSheet {
    Fair fair;
    std::vector<FairRow> rows;
    std::optional<Fair> before;  ///< the fair of that name before this one, that is over
    std::int64_t packed = 0;
    std::int64_t sold = 0;
    Money takings;                    ///< of what had a price
    std::int64_t unpriced = 0;        ///< sold, and nobody said for how much
    int notCounted = 0;               ///< kinds of which nobody said what came home
    std::optional<Money> earned;      ///< cash at night less change in the morning
    std::optional<Money> difference;  ///< earned less takings; none where one is not known
    std::string currency;
};

/// Of lines that are perhaps not kept yet. Adds how sold, takings and difference came about; none
/// of them while a line is not counted.
FairSheet fairSheetOf(const Read& file, const Fair& fair, const std::vector<FairLine>& lines,
                      Working* working = nullptr);
/// As it is kept.
FairSheet fairSheet(const Read& file, const Fair& fair, Working* working = nullptr);
/// Fairs by that day or packed for later, the newest first.
std::vector<Fair> fairs(const Read& file);

/// The one that is not over, else the newest.
std::optional<Fair> fairToShow(const Read& file);

/// What ran out: the fewest there might be next time is more than that.
struct Wish {
    GoodsKind kind;
    std::int64_t packed = 0;
    std::int64_t sold = 0;
    Fair fair;
};
/// Kinds that ran out at fairs of a year, the latest fair first.
std::vector<Wish> wishes(const Read& file, int year, Day until);

}  // namespace combwright
