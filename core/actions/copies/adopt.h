// A what-if adopted: what was planned in it is done in the season, deed by deed as it was typed, so
// that every rule is asked again and the journal shows ordinary steps. All of them or none.
#pragma once

#include <QString>
#include <cstdint>
#include <string>
#include <vector>

#include "core/actions/action.h"

namespace combwright {

/// A step of the what-if that does not go with what was done since.
struct AdoptConflict {
    std::int64_t step = 0;  ///< of the what-if
    std::string action;
    /// Refused: `refusal` says why. OtherRecords: it would touch others than it did there.
    /// ChangedSince: `table`, `id` and `field` were changed in the season since.
    enum class Kind { Refused, OtherRecords, ChangedSince } kind = Kind::Refused;
    Refusal refusal{Code::NothingToDo, {}, {}};
    std::string table = {};
    std::int64_t id = 0;
    std::string field = {};
};

struct Adopted {
    std::vector<std::int64_t> steps;  ///< made in the season, oldest first; none with a conflict
    std::vector<AdoptConflict> conflicts;
};

enum class AdoptHow { Try, Keep };

/// Refused with NotFound where the file is no what-if, with NotOfThis where it is one of another
/// season or the season was taken back behind the parting. With conflicts, and to try, nothing is
/// changed. Throws StorageError.
Result<Adopted> adoptWhatIf(Season& season, const Season& whatIf, AdoptHow how);

/// Why a step does not go, and what to do.
QString conflictText(const Read& season, const AdoptConflict& conflict);

}  // namespace combwright
