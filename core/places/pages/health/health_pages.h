// What one pins up or shows of health: the mites of a yard, what medicines are in and what is left,
// the medicine record and the list an inspector asks for.
#pragma once

#include "core/places/health/mites.h"
#include "core/places/health/treatments.h"
#include "core/places/pages/page.h"

namespace combwright {

/// Sample, line, where it stands and what follows, hive by hive.
Page mitesPage(const Read& file, const std::vector<HiveMites>& hives, Day on);
/// Packs and what is left, what is in which hive, when supers may go back, boxes that were on.
/// `warmthC` is the warmth of the day asked about.
Page treatmentsPage(const Read& file, std::optional<Id<Yard>> yard, Day on,
                    std::optional<double> warmthC = std::nullopt);

/// What a lot inherits: the treatments of the hives its boxes stood on, and its boxes that were on.
Page lotTreatmentsPage(const Read& file, Id<Extraction> run);

/// As bought, given by colony and disposed of, since the keeping period before that day.
Page medicineRecordPage(const Read& file, Day on);
/// Yards with their registration, hives, colonies, findings, what is held, and treatments of the
/// last year.
Page inspectorPage(const Read& file, Day on);

}  // namespace combwright
