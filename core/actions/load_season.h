// A whole season out of its one JSON into a new file, equal to the file it was written from.
#pragma once

#include "core/actions/action.h"

namespace combwright {

/// Puts every record of an exported season.json in place, numbers and all. Refused with NotClosed
/// under "season" where something was done in the file already, WrongType for what is no such JSON,
/// UnknownKey for a table or key nobody knows, Duplicate for a number given twice, NotFound for a
/// reference that leads nowhere, and as readRow under "TABLE.KEY".
struct LoadSeason {
    static constexpr std::string_view name = "load-season";
    using Answer = Made;
    Day on;
    std::string fileName;  ///< it came from, for history
    std::string season;    ///< the JSON
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
