// Comb jars and other small things bees build in, as they stand on a day: how far they are, what is
// to be done next, and what follows the comb to its label. Comb that hung in a hive while a
// medicine was in, or while the hive was quarantined, carries that with it as a box would.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/wax/hive_goods.h"
#include "core/places/health/treatments.h"
#include "core/storage/queries/holds.h"
#include "core/storage/rows.h"

namespace combwright {

/// Bees build such a piece in two to four weeks of a good flow: reckoned backwards with the slower.
/// Planning assumption, no source.
inline constexpr int combBuildDays = 28;
/// So often one looks, while it is on. Common practice, no source.
inline constexpr int combLookDays = 7;

/// With every piece built, those are enough that are filled and capped: the last at the edge seldom
/// fills, and the others grow dark meanwhile. Planning assumption, no source.
inline constexpr double combFilledShare = 0.8;

/// How far a project is.
enum class ProjectStage { Written, StarterIn, OnHive, OffHive, Lidded };

struct CombProject {
    HiveProject project;
    ProjectStage stage = ProjectStage::Written;
    std::string hive;                ///< as it is called; empty: not said
    std::string goods;               ///< as what it is sold; empty: not said
    std::vector<ProjectLook> looks;  ///< up to the day, by day
    std::optional<Day> nextLook;     ///< while it is on: a week after the last
    bool built = false;              ///< the last look found them ready to come off
    std::optional<Day> onLatest;     ///< to be on by, for the day it is wanted
    /// In the hive while the comb was there, other than what its label lets stay beside supers.
    std::vector<TreatmentLine> treated;
    std::optional<Hold> quarantine;  ///< that stands on its hive
    bool forSale() const { return treated.empty() && !quarantine; }
};
CombProject combProject(const Read& file, const HiveProject& project, Day on);
/// Lidded comb sold as a kind that hung in its hive while a medicine was in.
std::vector<CombProject> treatedComb(const Read& file, Id<GoodsKind> kind, Day on);
/// Lidded comb sold as a kind whose hive is quarantined, by a hold within a year of the lid.
std::vector<CombProject> quarantinedComb(const Read& file, Id<GoodsKind> kind, Day on);
/// Those not lidded yet, and those of the year, in the order they were written down.
std::vector<CombProject> combProjects(const Read& file, Day on);

}  // namespace combwright
