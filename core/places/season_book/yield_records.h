// What a figure of the season book is made of: the runs, in them the boxes full and wet, and the
// share that came of it; and what was noted from paper.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/season_book/yield_by.h"

namespace combwright {

/// Whose records: a hive's; a yard's, of it those without a hive; a run's; a colony's or a queen's;
/// with nothing set the year's, of it those without yard and hive.
struct RecordsOf {
    std::optional<Id<Hive>> hive = std::nullopt;
    std::optional<Id<Yard>> yard = std::nullopt;
    std::optional<Id<Extraction>> run = std::nullopt;
    bool withoutHive = false;
    std::optional<Id<Colony>> colony = std::nullopt;
    std::optional<Id<Queen>> queen = std::nullopt;
    /// Of hives where nobody wrote down the colony, or the queen.
    std::optional<YieldBy> nobody = std::nullopt;
    bool anyYard = false;  ///< of those without a hive, whatever the yard
    bool operator==(const RecordsOf&) const = default;
};

/// What one run says of it.
struct RunRecord {
    Id<Extraction> run;
    std::string name;
    std::string yard;
    Day on;
    std::vector<RunBoxLine> boxes;  ///< those that count here
    double offG = 0;                ///< full less wet of these
    std::optional<double> allOffG;  ///< of all boxes of the run
    Mass share;                     ///< of the buckets, for these
    How how = How::Unknown;
    std::optional<Mass> atClosing;  ///< where the share is another now
    Mass buckets;
    How bucketsHow = How::Unknown;
    std::optional<Mass> cappings;
    std::optional<double> unaccountedG;
    bool byEye = false;
};

struct PaperRecord {
    std::string of;  ///< the hive or yard; empty for the whole year
    Mass mass;
    How how = How::Unknown;
    std::string note;
    bool counted = true;  ///< false where runs or nearer notes say something
};

struct YieldRecords {
    RecordsOf of;
    std::string name;  ///< the hive's, yard's or run's
    int year = 0;
    std::vector<RunRecord> runs;
    std::vector<PaperRecord> paper;
    bool empty() const { return runs.empty() && paper.empty(); }
};

YieldRecords recordsBehind(const Read& file, const SeasonYield& season, const RecordsOf& of);

}  // namespace combwright
