// What was counted, weighed and seen of the colonies through a year, as lines one can draw: mites
// by wash and roll with the line they are held against and what was treated, the hive on the scale,
// frames of brood and stores. A line is one colony's, on whatever stand it was: what was found in
// the colony before it does not lead on to it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/visit.h"
#include "core/model/yard/weighing.h"
#include "core/places/health/mites.h"
#include "core/storage/rows.h"

namespace combwright {

/// One colony's points in the order of their days; of a hive where nobody wrote down who lived
/// there, the hive's.
template <class Point>
struct ColonyLine {
    Id<Hive> hive;  ///< the newest point's
    std::optional<Id<Colony>> colony;
    std::string mark;  ///< of the hive on the newest point's day
    std::string yard;  ///< likewise
    int ordinal = 1;   ///< which colony under that mark in the year
    std::vector<Point> points;
};

/// A wash or a roll.
struct MitePoint {
    Day on;
    Id<Hive> hive;
    Id<Finding> finding;
    FindingMethod method = FindingMethod::Wash;
    std::int64_t mites = 0;
    std::int64_t bees = 0;
    MiteRate rate;
    How how = How::Unknown;
    bool over = false;  ///< the line of its yard and day
};

/// From that day on, until the next, mites are acted on at this.
struct MiteLineFrom {
    Day from;
    double per100 = 0;
    MiteLineInForce::From whose = MiteLineInForce::From::Table;
};
/// For all yards, or for one that goes by another.
struct MiteLineThroughYear {
    std::string yard;  ///< empty: all
    std::vector<MiteLineFrom> steps;
};

/// One medicine given in one yard on one day.
struct TreatedSpan {
    Id<Medicine> medicine;
    std::string name;
    std::string yard;
    Day from;
    std::optional<Day> to;  ///< none: in still, or not written down
    std::vector<std::string> hives;
};

struct MitesThroughYear {
    int year = 0;
    Day upTo;                                  ///< the year's last day, or today
    std::vector<ColonyLine<MitePoint>> lines;  ///< the highest rate first
    std::vector<MiteLineThroughYear> limits;
    std::vector<TreatedSpan> treated;  ///< by their first day
    int withoutBees = 0;               ///< washes nobody said the bees of: no rate
    int otherMethods = 0;              ///< boards and drone brood: no rate on bees
};
MitesThroughYear mitesThroughYear(const Read& file, int year, Day today);

/// The whole hive on the scale.
struct WeightPoint {
    Day on;
    Id<Hive> hive;
    Id<HiveWeighing> weighing;
    double grossG = 0;
    How how = How::Unknown;
};
struct WeightsThroughYear {
    int year = 0;
    std::vector<ColonyLine<WeightPoint>> lines;  ///< the most weighed first
    int oneSide = 0;                             ///< weighings of one side alone: no weight
};
WeightsThroughYear weightsThroughYear(const Read& file, int year);

/// Frames at one look; what nobody said is unknown.
struct CombPoint {
    Day on;
    Id<Hive> hive;
    Id<Inspection> inspection;
    std::optional<double> brood;  ///< frames
    How broodHow = How::Unknown;
    std::optional<double> stores;
    How storesHow = How::Unknown;
};
struct CombsThroughYear {
    int year = 0;
    std::vector<ColonyLine<CombPoint>> lines;  ///< the most looked at first
};
CombsThroughYear combsThroughYear(const Read& file, int year);

}  // namespace combwright
