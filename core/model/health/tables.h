// The keeper's own lines and days, and which of the published tables he goes by. Whatever he leaves
// alone comes from the table, with its edition, region and source.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"
#include "core/units/season_phase.h"

namespace combwright {

template <>
struct Choices<SeasonPhase> {
    static constexpr auto words = seasonPhaseKeys;
};

/// The keeper's own line for mites in a phase, instead of the table's.
struct MiteLine {
    static constexpr std::string_view table = "mite_line";
    Id<MiteLine> id;
    SeasonPhase phase = SeasonPhase::Peak;
    std::optional<Id<Yard>> yard;  ///< only for that yard
    Day since;
    Number per100;  ///< mites on 100 bees at which to act
    std::string source;
    static const Fields& fields();
};

/// The keeper's own day of the year on which a phase begins.
struct PhaseDay {
    static constexpr std::string_view table = "phase_day";
    Id<PhaseDay> id;
    SeasonPhase phase = SeasonPhase::Peak;
    std::optional<Id<Yard>> yard;  ///< only for that yard
    Day since;                     ///< in force from then on
    Count month;                   ///< 1 to 12
    Count dayOfMonth;              ///< 1 to 31
    std::string source;
    static const Fields& fields();
};

/// Which published table counts: of mite lines, phases or medicines' days.
struct TableChoice {
    static constexpr std::string_view table = "table_choice";
    Id<TableChoice> id;
    Day since;
    std::string lines;
    std::string linesRegion;
    std::string phasesRegion;
    std::string medicinesRegion;
    static const Fields& fields();
};

}  // namespace combwright
