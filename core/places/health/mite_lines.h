// The line at which mites are acted on, on a day in a yard: the keeper's own before any table, and
// with it always whose it is. Which phase of the year counts is asked likewise.
#pragma once

#include <optional>
#include <string>

#include "core/model/health/tables.h"
#include "core/storage/rows.h"
#include "core/units/season_phase.h"

namespace combwright {

/// The phase in force, and who says when it begins.
struct PhaseInForce {
    SeasonPhase phase = SeasonPhase::Peak;
    bool own = false;  ///< the keeper's own day began it
    std::string edition;
    std::string region;
    std::string source;
};
PhaseInForce phaseOn(const Read& file, std::optional<Id<Yard>> yard, Day on);

struct MiteLineInForce {
    /// From near to far: the yard's own, the keeper's for all, his one line for every phase, a
    /// table's.
    enum class From { OwnOfYard, Own, OwnAllYear, Table };
    double per100 = 0;
    From from = From::Table;
    PhaseInForce phase;
    std::string edition;  ///< of a table
    std::string region;
    std::string source;
    std::optional<Day> since;  ///< of the keeper's own
};
/// Nothing only where the chosen table has no line for the phase.
std::optional<MiteLineInForce> miteLineOn(const Read& file, std::optional<Id<Yard>> yard, Day on);

/// The tables chosen by that day; blank where the keeper chose none.
TableChoice tablesOn(const Read& file, Day on);

/// "own_of_yard", "own", "own_all_year", "table".
std::string_view key(MiteLineInForce::From from);

}  // namespace combwright
