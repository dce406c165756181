// Honey of full frames and masses of full boxes against what is printed. Prints differ among
// themselves (one shallow box: 30 to 55 lb), so what is asked is that we stand in their middle and
// that our spread is of their size.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <utility>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {
namespace {

constexpr double poundG = 453.59237;

HoneyEstimate fullFrameOf(const char* id) {
    const PublishedFrame* kind = findPublishedFrame(id);
    return *frameHoney({fullFrameGrams(*kind->combAreaDm2), 1.0, 1.0});
}

/// How many spreads of ours a printed mass lies off, printed as it goes.
double spreadsOff(const char* what, double ours, double spread, double printed,
                  const char* source) {
    const double off = (ours - printed) / spread;
    std::printf("%-22s ours %6.0f g ± %5.0f, printed %6.0f (%+5.1f %%, %+.1f spreads), %s\n", what,
                ours, spread, printed, 100 * (ours / printed - 1), off, source);
    return std::abs(off);
}

struct PrintedFrame {
    const char* frame;
    double grams;  ///< the middle where a range is printed
    const char* source;
};

constexpr PrintedFrame printedFrames[] = {
    {"LANG-F-DEEP", 6 * poundG, "S06 6 lb"},
    {"LANG-F-DEEP", 7 * poundG, "S80 6 to 8 lb"},
    {"LANG-F-DEEP", 7 * poundG, "S85b 7 lb"},
    {"LANG-F-DEEP", 3030, "S14 3.03 kg (its comb 9.07 dm2)"},
    {"LANG-F-MED", 4 * poundG, "S06 4 lb"},
    {"LANG-F-MED", 4.25 * poundG, "S80 3.5 to 5 lb"},
    {"LANG-F-MED", 1950, "S14 1.95 kg (its comb 5.82 dm2)"},
    {"LANG-F-SHAL", 3 * poundG, "S06 3 lb"},
    {"LANG-F-SHAL", 1630, "S14 1.63 kg (its comb 4.88 dm2)"},
    {"DADMD-F-BROOD", 3650, "S14 3.65 kg"},
    {"LN-F", 2330, "S14 2.33 kg"},
    {"NORSK-F", 2760, "S14 2.76 kg"},
    {"DADBL-F-BROOD", 3625, "S20 3.5 to 3.75 kg (its comb 11.13 dm2)"}};

TEST(FullFrameReference, PrintedFrames) {
    int within = 0;
    for (const PrintedFrame& each : printedFrames) {
        const HoneyEstimate ours = fullFrameOf(each.frame);
        const double off =
            spreadsOff(each.frame, ours.grams, ours.spreadG(), each.grams, each.source);
        EXPECT_LT(off, 1.0) << each.frame << " " << each.source;
        if (off < 0.6) ++within;
    }
    // Published figures are means, not single frames: most lie well inside one spread.
    EXPECT_GE(within, 11);
}

TEST(FullFrameReference, TheNordicTableByItsOwnAreas) {
    // S14: cm² of one side and kg of honey, rows of one table (all of them 332.6 to 335.1 g/dm²).
    const std::array<std::pair<double, double>, 6> rows = {
        {{9.07, 3030}, {5.82, 1950}, {4.88, 1630}, {10.96, 3650}, {6.99, 2330}, {8.28, 2760}}};
    for (const auto& [area, grams] : rows)
        EXPECT_NEAR(fullFrameGrams(area) / grams, 1.0, 0.007) << area;
}

struct PrintedBox {
    const char* box;
    double tareG;                         ///< box, frames and wax; 0 where honey alone is printed
    std::array<double, 4> poundsPrinted;  ///< 0 = no further print
    const char* source;
};

// Tares: S78 weighed a deep with frames at 13.6875 lb without wax and a medium with wax at 10.25
// lb; 90 g of wax to a deep comb is from memory. Shallow 4.2 kg, eight-frame boxes 5/6: planning
// assumption, no source. Where a range is printed its middle stands here.
constexpr double deepTareG = 13.6875 * poundG + 900;
constexpr double mediumTareG = 10.25 * poundG;
constexpr double shallowTareG = 4200;
constexpr PrintedBox printedBoxes[] = {
    {"LANG10-DEEP", deepTareG, {80, 85, 85, 70}, "S43 S77 S80 S38"},
    {"LANG10-MED", mediumTareG, {50, 60, 55, 45}, "S43 S77 S18 S80"},
    {"LANG10-SHAL", shallowTareG, {40, 55, 35, 30}, "S43 S77 S18 S24"},
    {"LANG8-DEEP", deepTareG * 5 / 6, {64, 70, 0, 0}, "S43 S77"},
    {"LANG8-MED", mediumTareG * 5 / 6, {50, 0, 0, 0}, "S77"},
    {"LANG8-SHAL", shallowTareG * 5 / 6, {45, 0, 0, 0}, "S77"},
    {"LANG5-NUC", 4200, {47.5, 15000 / poundG, 0, 0}, "S86b S81"},
    {"LANG10-DEEP", 0, {65, 0, 0, 0}, "honey alone, 60 to 70 lb, common practice"},
    {"LANG10-MED", 0, {37.5, 0, 0, 0}, "honey alone, 35 to 40 lb, common practice"},
    {"LANG10-SHAL", 0, {27.5, 0, 0, 0}, "honey alone, 25 to 30 lb, common practice"},
    {"NAT-SUPER", 0, {27.5, 0, 0, 0}, "honey alone, 25 to 30 lb, from memory"},
    {"LN10-BOX", 0, {20000 / poundG, 0, 0, 0}, "honey alone, S57"},
    {"ZANDER10-FLAT", 0, {15000 / poundG, 0, 0, 0}, "S56, contradicts its comb area"}};

TEST(FullFrameReference, PrintedBoxes) {
    std::vector<double> sharesOff;
    std::size_t withinOne = 0;
    std::size_t withinTwo = 0;
    for (const PrintedBox& each : printedBoxes) {
        const PublishedBox* kind = findPublishedBox(each.box);
        const HoneyEstimate honey =
            alike(fullFrameOf(kind->takesFrame.c_str()), kind->framesNominal->value());
        const double ours = honey.grams + each.tareG;
        for (const double pounds : each.poundsPrinted) {
            if (pounds == 0.0) continue;
            const double printed = pounds * poundG;
            const double off = spreadsOff(each.box, ours, honey.spreadG(), printed, each.source);
            sharesOff.push_back(ours / printed - 1.0);
            withinOne += off <= 1.0;
            withinTwo += off <= 2.0;
            EXPECT_LT(off, 2.6) << each.box << " " << pounds;
        }
    }
    const std::size_t prints = sharesOff.size();
    std::sort(sharesOff.begin(), sharesOff.end());
    const double median = (sharesOff[(prints - 1) / 2] + sharesOff[prints / 2]) / 2.0;
    std::printf("%zu of %zu prints within one spread, %zu within two; median %+.1f %%\n", withinOne,
                prints, withinTwo, 100 * median);
    // A normal law would ask for 16 and 23 of 24; copied and rounded weights of boxes scatter more.
    EXPECT_EQ(prints, 24u);
    EXPECT_GE(withinOne, 14u);
    EXPECT_GE(withinTwo, 21u);
    EXPECT_LT(std::abs(median), 0.05);
}

TEST(FullFrameReference, TheWeighedSetAgreesToAPercent) {
    // The two boxes whose tare was weighed as well: 80 lb (S43) and 50 lb (S43).
    const double deep = alike(fullFrameOf("LANG-F-DEEP"), 10).grams + deepTareG;
    const double medium = alike(fullFrameOf("LANG-F-MED"), 10).grams + mediumTareG;
    EXPECT_NEAR(deep / (80 * poundG), 1.0, 0.01);
    EXPECT_NEAR(medium / (50 * poundG), 1.0, 0.03);
}

TEST(FullFrameReference, CombThicknessOfNineAndEight) {
    // Computed in print for 14 3/4 in inside and 3/8 in of bee space; spare room 25.4 mm: S02 S40.
    EXPECT_NEAR(combThicknessMm(374.65, 10), 26.988, 0.001);
    EXPECT_NEAR(combThicknessMm(374.65, 9), 31.044, 0.001);
    EXPECT_NEAR(combThicknessMm(374.65, 8), 36.116, 0.001);
    // A keeper's page with 14 11/16 in: a frame gains 15.06 % with nine, 33.88 % with eight.
    const double width = 14.6875 * 25.4;
    for (const auto& [frames, gain] : {std::pair{9, 0.1506}, std::pair{8, 0.3388}}) {
        const auto frame = frameHoney({1000.0, 1.0, 1.0, BoxSpacing{width, frames, 10}});
        EXPECT_NEAR(frame->grams / 1000.0 - 1.0, gain, 0.0005) << frames;
    }
}

TEST(FullFrameReference, MeasuredCombs) {
    // A 25 mm comb holds the printed 333 g/dm², a 36 mm one 481 (computed).
    EXPECT_NEAR(fullFrameGramsAtThickness(1.0, 25.0), 334, 0.5);
    EXPECT_NEAR(fullFrameGramsAtThickness(1.0, 36.0), 481, 0.6);
}

TEST(FullFrameReference, CropsDifferByTheSpreadWeTake) {
    // S93: three crops, comb thickness in mm and mass of a comb in g.
    const std::array<std::pair<double, double>, 3> crops = {
        {{39.1, 1707}, {37.9, 1641}, {35.7, 1157}}};
    double sum = 0;
    double squares = 0;
    for (const auto& [thickness, grams] : crops) {
        sum += grams / thickness;
        squares += (grams / thickness) * (grams / thickness);
    }
    const double mean = sum / 3;
    const double deviation = std::sqrt((squares - 3 * mean * mean) / 2);
    std::printf("three crops differ by %.1f %% per mm of comb\n", 100 * deviation / mean);
    EXPECT_NEAR(deviation / mean, HoneyRates{}.cropSpreadShare, 0.02);
}

}  // namespace
}  // namespace combwright
