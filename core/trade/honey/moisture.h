// How much water is in the honey, from what a refractometer shows. It decides whether a bucket
// keeps, may be sold or must be blended, so the published table is the law here and the closed
// formula only its check (tests/reference). An instrument that corrects temperature by itself is
// read with 20 °C.
#pragma once

#include <array>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/honey/published_table.h"

namespace combwright {

/// Water in honey, and the refractive index it was read from.
struct Moisture {
    double waterPercent;  ///< g of water in 100 g of honey, 13.0 to 25.0
    double index20;       ///< refractive index at 20 °C, sodium D line
};

/// The index at 20 °C against water in per cent: Chataway 1932, Wedmore 1955, adopted as AOAC
/// 969.38 and IHC method 1. Printed alike in two sources (36 rows in both, all 61 in one).
inline constexpr std::array<TablePoint, 61> refractiveIndexTable{{
    {1.5044, 13.0}, {1.5038, 13.2}, {1.5033, 13.4}, {1.5028, 13.6}, {1.5023, 13.8}, {1.5018, 14.0},
    {1.5012, 14.2}, {1.5007, 14.4}, {1.5002, 14.6}, {1.4997, 14.8}, {1.4992, 15.0}, {1.4987, 15.2},
    {1.4982, 15.4}, {1.4976, 15.6}, {1.4971, 15.8}, {1.4966, 16.0}, {1.4961, 16.2}, {1.4956, 16.4},
    {1.4951, 16.6}, {1.4946, 16.8}, {1.4940, 17.0}, {1.4935, 17.2}, {1.4930, 17.4}, {1.4925, 17.6},
    {1.4920, 17.8}, {1.4915, 18.0}, {1.4910, 18.2}, {1.4905, 18.4}, {1.4900, 18.6}, {1.4895, 18.8},
    {1.4890, 19.0}, {1.4885, 19.2}, {1.4880, 19.4}, {1.4875, 19.6}, {1.4870, 19.8}, {1.4865, 20.0},
    {1.4860, 20.2}, {1.4855, 20.4}, {1.4850, 20.6}, {1.4845, 20.8}, {1.4840, 21.0}, {1.4835, 21.2},
    {1.4830, 21.4}, {1.4825, 21.6}, {1.4820, 21.8}, {1.4815, 22.0}, {1.4810, 22.2}, {1.4805, 22.4},
    {1.4800, 22.6}, {1.4795, 22.8}, {1.4790, 23.0}, {1.4785, 23.2}, {1.4780, 23.4}, {1.4775, 23.6},
    {1.4770, 23.8}, {1.4765, 24.0}, {1.4760, 24.2}, {1.4755, 24.4}, {1.4750, 24.6}, {1.4745, 24.8},
    {1.4740, 25.0},
}};

/// What a reading loses per degree above 20 °C. Printed in one source; AOAC 969.38.
inline constexpr double indexPerDegree = 0.00023;

/// The Brix scale's own ends within which brixToIndex holds.
inline constexpr double lowestBrix = 65.0;
inline constexpr double highestBrix = 85.0;

/// The index at 20 °C of a Brix reading. The scale is that of sucrose (ICUMSA 1974; the five points
/// 65, 70 … 85 from memory), so 100 − Brix is not the water of honey. Valid from 65 to 85.
double brixToIndex(double brix);
/// The Brix reading of an index at 20 °C: the inverse of brixToIndex.
double indexToBrix(double index20);

/// The water of honey whose refractometer shows `index` at that temperature in °C. Refused
/// (out of range, field "refractive_index") where the index corrected to 20 °C leaves the table,
/// 1.4740 to 1.5044; "low" and "high" are then the readings possible at that temperature.
Result<Moisture> moistureFromIndex(double index, double temperatureC, Working* working = nullptr);

/// The same from a Brix reading: it becomes its index first and is corrected the same way. Refused
/// (field "brix") where the reading leaves 65 to 85 or its corrected index leaves the table: at 20
/// °C about 73.4 to 85.
Result<Moisture> moistureFromBrix(double brix, double temperatureC, Working* working = nullptr);

/// The index at 20 °C of honey with that much water, 13.0 to 25.0 %; refused outside (field
/// "water_percent").
Result<double> indexForWater(double waterPercent);

}  // namespace combwright
