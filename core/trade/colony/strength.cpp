#include "core/trade/colony/strength.h"

#include <string>
#include <string_view>
#include <utility>

#include "core/trade/honey/published_table.h"

namespace combwright {

Result<ColonyStrength> beesOnFrames(double framesOfBees, const BeesPerFrame& perFrame,
                                    Working* working) {
    if (!(framesOfBees >= 0)) return Refusal{Code::Negative, "frames_of_bees", {}};
    if (!(perFrame.from >= 0 && perFrame.from <= perFrame.usual && perFrame.usual <= perFrame.to))
        return outOfRange("bees_per_frame", perFrame.usual, perFrame.from, perFrame.to);
    const ColonyStrength strength{framesOfBees * perFrame.usual, framesOfBees * perFrame.from,
                                  framesOfBees * perFrame.to};
    note(working, "frames_of_bees", framesOfBees, "");
    note(working, "bees_per_frame", perFrame.usual, "", {},
         "common practice; 1080 to 3000 on a deep frame are printed");
    note(working, "bees_about", strength.bees, "", "frames · bees a frame");
    return strength;
}

ColonyStrength operator+(const ColonyStrength& a, const ColonyStrength& b) {
    return {a.bees + b.bees, a.from + b.from, a.to + b.to};
}

Result<CombContents> contentsByEighths(const CombEighths& eighths, double sideDm2) {
    constexpr double largestSide = 30;
    constexpr double sideOfTheMethod = 8;
    const std::pair<std::string_view, double> given[] = {{"bees", eighths.bees},
                                                         {"capped_workers", eighths.cappedWorkers},
                                                         {"capped_drones", eighths.cappedDrones},
                                                         {"food", eighths.food}};
    for (const auto& [name, count] : given)
        if (!(count >= 0)) return Refusal{Code::Negative, std::string(name), {}};
    if (!(sideDm2 > 0 && sideDm2 <= largestSide))
        return outOfRange("side_dm2", sideDm2, 0, largestSide);
    const double size = sideDm2 / sideOfTheMethod;
    return CombContents{
        eighths.bees * beesPerEighth * size, eighths.cappedWorkers * workerCellsPerEighth * size,
        eighths.cappedDrones * droneCellsPerEighth * size, eighths.food * foodPerEighth_g * size};
}

double beesEmerging(double cappedCells, double survival) { return cappedCells * survival; }
double eggsPerDay(double workerCells, double daysInState) { return workerCells / daysInState; }

}  // namespace combwright
