// Mites of a hive: what its samples said, how little that is, the line they are held against, and
// when it may be crossed. One answer for the yard sheet, Today, the print and the command line. A
// sample speaks for the colony it was taken of, and only until a medicine went in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/health/medicine.h"
#include "core/model/yard/visit.h"
#include "core/places/explain/explained.h"
#include "core/places/health/mite_lines.h"
#include "core/storage/rows.h"
#include "core/trade/colony/board_fall.h"
#include "core/trade/colony/mite_forecast.h"
#include "core/trade/colony/mite_rate.h"

namespace combwright {

/// One finding of mites and what can be said from it.
struct MiteSample {
    Finding finding;
    /// Of a wash or a roll: mites on 100 bees. The ends of a range are taken in. None where nobody
    /// said how many bees: a usual sample is no count.
    std::optional<MiteRate> rate;
    std::int64_t bees = 0;              ///< reckoned with
    How how = How::Unknown;             ///< the weaker of mites and bees
    double recovery = 1;                ///< share of the mites the method finds
    std::optional<MiteRate> corrected;  ///< beside the rate, where the recovery is under 1
    /// Of a board: a day. Never turned into a rate on bees.
    std::optional<double> perDay;
    std::optional<FallVerdict> verdict;  ///< none: the table has none for that month
    bool shortBoard = false;             ///< lay too few days to say much
    std::string fallSource;
    /// Of drone brood: cells with mites in 100 cells.
    std::optional<MiteRate> cellShare;
};
MiteSample sampleOf(const Read& file, const Finding& finding);

/// So long what was over the line is to be acted on; after that, or a winter, it is sampled anew.
/// Common practice, no source.
constexpr int miteFindingStandsDays = 180;

struct HiveMites {
    enum class Standing { NoSample, Under, At, Over };
    Hive hive;
    Yard yard;
    std::vector<MiteSample> samples;      ///< of the colony that lives there, newest first
    std::optional<MiteSample> sample;     ///< the newest with a rate
    std::optional<MiteLineInForce> line;  ///< on the day asked
    /// What `standing` is told by: the line of now, of an old sample that of the sample's day.
    std::optional<MiteLineInForce> standsBy;
    Standing standing = Standing::NoSample;
    bool undecided = false;  ///< the line lies within the sample's interval
    bool old = false;        ///< two times as old as one samples: it says little of now
    double doublingDays = 30;
    /// When the mites reach the line if they double so; nothing where a medicine went in since.
    std::optional<MiteForecastSpan> forecast;
    std::optional<Treatment>
        treatedSince;  ///< the newest that went in on the sample's day or later
    /// The newest board whose fall says treat or act now, where it is newer than the sample and no
    /// medicine went in on its day or later.
    std::optional<MiteSample> board;
    bool boardOld = false;             ///< as `old`
    std::vector<MiteSample> alsoSeen;  ///< the newest board and drone brood beside the sample
    std::vector<Finding> otherPests;   ///< the newest of each within a year, newest first
    std::string medicine;              ///< its name
    bool medicineIn = false;           ///< it is in still
};

/// A wash or a roll of mites in nobody knows how many bees: the bees are asked for.
bool lacksItsBees(const Finding& finding);

/// The hive as of a day. Nothing where there is no such hive.
std::optional<HiveMites> mitesOf(const Read& file, Id<Hive> hive, Day on);
/// Every hive that stood that day, of one yard or all, in walking order.
std::vector<HiveMites> mites(const Read& file, std::optional<Id<Yard>> yard, Day on);

/// "no_sample", "under", "at", "over".
std::string_view key(HiveMites::Standing standing);

/// How the rate of one sample comes about; wants one that has a rate.
Explained explainSample(const QString& hive, const MiteSample& sample);
/// How rate, line and forecast of each come about.
std::vector<Explained> explainMites(const Read& file, const std::vector<HiveMites>& hives, Day on);

}  // namespace combwright
