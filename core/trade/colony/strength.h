// How many bees, and how many more to come. Nobody counts them: one judges how far the combs are
// covered, and a covered comb is anything from a thousand to three thousand bees in print. So each
// answer is "about" and carries its range; the same figure is used a whole season through, because
// one hive against another is safer than any absolute number.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Bees on a frame covered on both sides.
struct BeesPerFrame {
    double usual = 0;
    double from = 0;  ///< the least that is printed
    double to = 0;    ///< the most
};

/// 2200 on a deep frame; 540 to 1500 a side are printed. Constants bees_per_deep_frame …
inline constexpr BeesPerFrame beesPerDeepFrame{2200, 1080, 3000};
/// 1400 on a medium frame; its range in the proportion of the deep one's.
inline constexpr BeesPerFrame beesPerMediumFrame{1400, 1400 * 1080.0 / 2200, 1400 * 3000.0 / 2200};

/// About how many bees, and between which figures in print.
struct ColonyStrength {
    double bees = 0;
    double from = 0;
    double to = 0;
};

/// From frames covered with bees on both sides, half a frame counting half. Refused: Negative
/// "frames_of_bees"; OutOfRange "bees_per_frame" where its three numbers are not in rising order
/// from 0.
Result<ColonyStrength> beesOnFrames(double framesOfBees, const BeesPerFrame& perFrame,
                                    Working* working = nullptr);

/// A colony judged box by box: strengths add up, and so do their ranges.
ColonyStrength operator+(const ColonyStrength& a, const ColonyStrength& b);

// By eighths of a comb side (Liebefeld: Imdorf and others 1987), for a comb whose side is 8 dm².
inline constexpr double beesPerEighth = 125;
inline constexpr double workerCellsPerEighth = 400;
inline constexpr double droneCellsPerEighth = 230;
inline constexpr double foodPerEighth_g = 125;

struct CombEighths {
    double bees = 0;
    double cappedWorkers = 0;
    double cappedDrones = 0;
    double food = 0;
};
struct CombContents {
    double bees = 0;
    double workerCells = 0;
    double droneCells = 0;
    double food_g = 0;
};
/// `sideDm2` is the area of one side of the comb; eighths of a larger comb hold more. Eighths of
/// both sides added up. Refused: Negative "bees", "capped_workers", "capped_drones", "food";
/// OutOfRange "side_dm2" (above 0, to 30).
Result<CombContents> contentsByEighths(const CombEighths& eighths, double sideDm2 = 8);

/// Bees that come out of so many capped cells; `survival` is a share, 0.9 usual.
double beesEmerging(double cappedCells, double survival = 0.9);
/// Eggs a day that keep up so many worker cells, by the days a cell is in that state: 12 for capped
/// cells, 21 for all brood.
double eggsPerDay(double workerCells, double daysInState);

}  // namespace combwright
