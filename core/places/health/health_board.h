// How the hives of a yard stand in health on a day, a row a hive: what was found, what is in, what
// is held. Nothing in it is a diagnosis; a hive nobody looked at says so.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/season_info.h"
#include "core/places/health/mites.h"
#include "core/places/health/treatments.h"
#include "core/storage/rows.h"

namespace combwright {

struct HealthRow {
    HiveMites mites;                       ///< with the hive
    bool lives = true;                     ///< false: written down as empty
    std::optional<MiteSample> board;       ///< the newest fall on a board
    std::optional<MiteSample> droneBrood;  ///< the newest count of drone cells
    std::optional<MiteSample> uncounted;   ///< the newest wash or roll, where it has no bees
    std::optional<Finding> other;  ///< the newest of another pest or of signs, of the last year
    std::vector<TreatmentLine> running;  ///< in the hive, the first that went in first
    std::optional<SupersBack> supers;    ///< what keeps supers off
    std::vector<Hold> holds;             ///< on its colony
};

struct HealthBoard {
    Yard yard;
    Day on;
    std::vector<HealthRow> rows;           ///< in walking order
    std::vector<MedicineStock> medicines;  ///< of the season file
    std::vector<TreatedBox> treated;       ///< boxes that were on meanwhile
    int lineReached = 0;                   ///< hives at the line or over it by a sample of now
    int sampledLongAgo = 0;                ///< whose newest sample is too old to say how they are
    int notSampled = 0;                    ///< living hives nobody sampled
    int underTreatment = 0;
};
HealthBoard healthBoard(const Read& file, const Yard& yard, Day on);

/// What a treatment meant would come to, before it is written down.
struct TreatOutlook {
    std::optional<double> takes;        ///< of the medicine's unit, all hives together
    std::optional<double> left;         ///< before
    std::optional<double> leftAfter;    ///< below 0: more than is written down
    std::vector<std::string> supersOn;  ///< hives with supers on that day
    std::vector<std::string> hasItIn;   ///< hives in which it is still
};
TreatOutlook treatOutlook(const Read& file, const Medicine& medicine,
                          const std::vector<Hive>& hives, const std::optional<Number>& amount,
                          Day on);

}  // namespace combwright
