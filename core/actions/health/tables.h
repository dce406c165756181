// Which lines and days the keeper goes by: his own, or which of the published tables. Country,
// weather and edition differ, so none of it is code.
#pragma once

#include "core/actions/action.h"
#include "core/model/health/tables.h"

namespace combwright {

/// What holds for a line, also where it is amended: OutOfRange unless above 0 and up to 100.
Result<void> demandMiteLine(const MiteLine& line);

/// The keeper's own line for a phase, from that day on, for all or for one yard. Refused as
/// demandMiteLine.
struct SetMiteLine {
    static constexpr std::string_view name = "set-mite-line";
    using Answer = Id<MiteLine>;
    Day on;
    SeasonPhase phase = SeasonPhase::Peak;
    Number per100;
    std::optional<Id<Yard>> yard;
    std::string source;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What holds for a phase's day, also where it is amended: NotADay where no year has it,
/// Contradiction where another phase of the keeper's own begins on it.
Result<void> demandPhaseDay(const Read& file, const PhaseDay& phaseDay);

/// The keeper's own day of the year on which a phase begins. Refused as demandPhaseDay.
struct SetPhaseDay {
    static constexpr std::string_view name = "set-phase-day";
    using Answer = Id<PhaseDay>;
    Day on;
    SeasonPhase phase = SeasonPhase::Peak;
    Count month;
    Count dayOfMonth;
    std::optional<Id<Yard>> yard;
    std::string source;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Which published tables count from that day on; what is left out stays as it was chosen before.
/// Refused with Missing where nothing is chosen, NotFound for a table or region there is none of,
/// with those there are.
struct ChooseTables {
    static constexpr std::string_view name = "choose-tables";
    using Answer = Id<TableChoice>;
    Day on;
    std::string lines;
    std::string linesRegion;
    std::string phasesRegion;
    std::string medicinesRegion;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
