#include "core/trade/honey/moisture.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace combwright {
namespace {

constexpr double moistureTableC = 20.0;
// A reading typed as the table prints it must not fall outside through binary rounding.
constexpr double indexRounding = 1e-9;
constexpr const char* moistureTableSource = "Chataway 1932, Wedmore 1955 (AOAC 969.38)";
constexpr const char* indexCorrectionSource = "AOAC 969.38";

// RI20(B) = a + b·(B − 80) + c·(B − 80)², fitted to five points of the sucrose scale.
constexpr double brixMiddle = 80.0;
constexpr double brixA = 1.49071;
constexpr double brixB = 0.002611;
constexpr double brixC = 0.0000086;

constexpr double lowestIndex() { return refractiveIndexTable.back().at; }
constexpr double highestIndex() { return refractiveIndexTable.front().at; }

double indexCorrection(double temperatureC) {
    return indexPerDegree * (temperatureC - moistureTableC);
}

bool inIndexTable(double index20) {
    return index20 >= lowestIndex() - indexRounding && index20 <= highestIndex() + indexRounding;
}

// Limits are shown as finely as instruments read and rounded inwards, so that both are accepted.
double moistureLimitUp(double limit, double steps) {
    return std::ceil(limit * steps - 1e-6) / steps;
}
double moistureLimitDown(double limit, double steps) {
    return std::floor(limit * steps + 1e-6) / steps;
}

Moisture moistureAt20(double index, double temperatureC, Working* working) {
    const double index20 = index + indexCorrection(temperatureC);
    note(working, "temperature_c", temperatureC, "°C");
    note(working, "refractive_index_20c", index20, "", "RI + 0.00023 · (t − 20)",
         indexCorrectionSource);
    const double water = interpolate(refractiveIndexTable, index20);
    note(working, "water_percent", water, "%", "linear(table, RI20)", moistureTableSource);
    return {water, index20};
}

}  // namespace

double brixToIndex(double brix) {
    const double x = brix - brixMiddle;
    return brixA + brixB * x + brixC * x * x;
}

double indexToBrix(double index20) {
    const double root = std::sqrt(brixB * brixB + 4.0 * brixC * (index20 - brixA));
    return brixMiddle + (root - brixB) / (2.0 * brixC);
}

Result<Moisture> moistureFromIndex(double index, double temperatureC, Working* working) {
    const double correction = indexCorrection(temperatureC);
    if (!inIndexTable(index + correction))
        return outOfRange("refractive_index", index,
                          moistureLimitUp(lowestIndex() - correction, 1e4),
                          moistureLimitDown(highestIndex() - correction, 1e4));
    note(working, "refractive_index", index, "");
    return moistureAt20(index, temperatureC, working);
}

Result<Moisture> moistureFromBrix(double brix, double temperatureC, Working* working) {
    const double correction = indexCorrection(temperatureC);
    const double index = brixToIndex(brix);
    if (brix < lowestBrix || brix > highestBrix || !inIndexTable(index + correction)) {
        // Far from any room the correction alone leaves the scale: the scale's own ends are named.
        const double low = std::max(lowestIndex() - correction, brixToIndex(lowestBrix));
        const double high = std::min(highestIndex() - correction, brixToIndex(highestBrix));
        if (low > high) return outOfRange("brix", brix, lowestBrix, highestBrix);
        return outOfRange("brix", brix, moistureLimitUp(indexToBrix(low), 1e2),
                          moistureLimitDown(indexToBrix(high), 1e2));
    }
    note(working, "brix", brix, "°Bx");
    note(working, "refractive_index", index, "",
         "1.49071 + 0.002611 · (B − 80) + 0.0000086 · (B − 80)²",
         "ICUMSA 1974, from memory; fitted");
    return moistureAt20(index, temperatureC, working);
}

Result<double> indexForWater(double waterPercent) {
    const double driest = refractiveIndexTable.front().value;
    const double wettest = refractiveIndexTable.back().value;
    if (!(waterPercent >= driest && waterPercent <= wettest))
        return outOfRange("water_percent", waterPercent, driest, wettest);
    std::array<TablePoint, refractiveIndexTable.size()> byWater{};
    std::transform(refractiveIndexTable.begin(), refractiveIndexTable.end(), byWater.begin(),
                   [](const TablePoint& row) {
                       return TablePoint{row.value, row.at};
                   });
    return interpolate(byWater, waterPercent);
}

}  // namespace combwright
