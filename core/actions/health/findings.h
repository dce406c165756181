// Pests and signs of disease as they were met: how they were looked for, what was counted, and how
// each number was known. A finding is never a diagnosis.
#pragma once

#include "core/actions/action.h"
#include "core/model/yard/visit.h"

namespace combwright {

/// What holds for a finding, also where it is amended. Refused with TooMany where more mites were
/// found than bees, or drone cells, were looked at; OutOfRange where none was looked at or the
/// board lay no day; Negative; Missing where nothing was counted, graded or ticked.
Result<void> demandFinding(const Finding& finding);

/// A pest that was looked for or met. Where brood disease is suspected the colony is quarantined
/// from that day, and the box too where it is named: report it, move nothing. Refused as
/// demandFinding, and with BeforeItBegan or Closed where the hive did not stand.
struct RecordFinding {
    static constexpr std::string_view name = "record-finding";
    using Answer = Id<Finding>;
    Day on;
    Id<Hive> hive;
    Pest what = Pest::Varroa;
    FindingMethod method = FindingMethod::Seen;
    std::optional<Known<Count>> mites;
    std::optional<Known<Count>> bees;
    std::optional<Count> daysOnBoard;
    std::optional<Known<Count>> cells;
    std::optional<Level> level;
    std::optional<Id<Box>> box;
    FieldSigns signs;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
