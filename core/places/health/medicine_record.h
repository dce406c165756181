// What an inspector asks for: medicines as bought, given and disposed of over the years they are to
// be accounted for, also of colonies long dead or sold; and what stands where, what was met and
// what is held.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/places/health/mites.h"
#include "core/places/health/treatments.h"

namespace combwright {

struct RecordLine {
    TreatmentLine line;
    std::optional<Colony> colony;
};

struct MedicineEntry {
    MedicineStock stock;
    std::vector<RecordLine> given;  ///< by day and hive
    std::vector<MedicineDisposal> disposed;
};

struct MedicineRecord {
    Day from;
    double years = 5;  ///< it is to be kept
    std::string yearsSource;
    std::vector<MedicineEntry> medicines;  ///< bought, given or disposed of since `from`
};
MedicineRecord medicineRecord(const Read& file, Day on);

struct InspectedHive {
    Hive hive;
    std::optional<Colony> colony;  ///< living there that day
    std::optional<Day> opened;     ///< last
    std::vector<Hold> holds;       ///< on the colony
};
struct InspectedYard {
    Yard yard;
    std::vector<InspectedHive> hives;
};
struct InspectedFinding {
    Finding finding;
    MiteSample sample;
    std::string hive;
    std::string yard;
};
struct InspectorList {
    Day from;  ///< of findings and treatments: a year before
    std::vector<InspectedYard> yards;
    std::vector<InspectedFinding> findings;
    std::vector<std::pair<std::string, Hold>> held;  ///< boxes, frames and buckets, with their name
    std::vector<RecordLine> given;
};
InspectorList inspectorList(const Read& file, Day on);

}  // namespace combwright
