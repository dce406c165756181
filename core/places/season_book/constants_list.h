// Every rate, limit and day the program reckons with, as it is in force on a day: the published
// one with its source, edition and region, and the keeper's own where it overrules. What is in this
// list is set with set-constant, set-mite-line and set-phase-day, and nowhere else.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/storage/rows.h"

namespace combwright {

/// A figure of the keeper's own.
struct OwnFigure {
    std::string value;  ///< as `ConstantRow::value`
    std::optional<Day> since;
    std::optional<Id<Yard>> yard;  ///< only for that yard
    std::string source;            ///< his reason
};

struct ConstantRow {
    std::string
        key;  ///< "bucket_g", "mite_line peak", "phase_from peak", "wait_days amitraz strips"
    std::string
        value;  ///< published: digits with a point, for a day of the year "05-15"; empty: none
    std::string unit;     ///< empty for a share or a pure number
    std::string source;   ///< who published it
    std::string edition;  ///< of a table, with its region
    std::string region;
    std::optional<OwnFigure> own;  ///< counts instead
};

/// Of one yard, or what counts for all. The tables are those chosen by that day.
std::vector<ConstantRow> constantsOn(const Read& file, std::optional<Id<Yard>> yard, Day on);

}  // namespace combwright
