// How a mark of the charts through the year came about: what was counted, lifted or written down
// that day, and what was reckoned from it.
#pragma once

#include <optional>
#include <vector>

#include "core/model/yard/visit.h"
#include "core/model/yard/weighing.h"
#include "core/places/explain/explained.h"
#include "core/storage/rows.h"

namespace combwright {

/// The record a mark stands for; one is set at most.
struct MarkRecord {
    std::optional<Id<Finding>> finding = {};
    std::optional<Id<HiveWeighing>> weighing = {};
    std::optional<Id<Inspection>> look = {};  ///< brood and stores both
};

/// Empty where the record is gone or says no figure.
std::vector<Explained> explainMark(const Read& file, const MarkRecord& mark);

}  // namespace combwright
