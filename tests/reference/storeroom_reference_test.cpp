// The storeroom against what is printed and what was worked by hand: bee space (B1 to B15), spacing
// of combs, killing cold, room in a freezer, and the kit of two winters. The source of each check
// stands beside it; "hand-worked" are the two winters, reckoned on paper.
#include <gtest/gtest.h>

#include <cmath>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/resource_table.h"
#include "core/trade/storeroom/cold.h"
#include "core/trade/storeroom/fit.h"
#include "core/trade/storeroom/frame_needs.h"
#include "core/trade/storeroom/freezer.h"
#include "core/trade/storeroom/kit_needs.h"

namespace combwright {
namespace {

constexpr double inchMm = 25.4;

BoxMeasures boxOf(double heightMm) {
    BoxMeasures box;
    box.height = heightMm;
    return box;
}

FrameMeasures frameOf(double heightMm) {
    FrameMeasures frame;
    frame.height = heightMm;
    return frame;
}

struct StackCheck {
    const char* check;
    double boxMm;
    double frameMm;
    double gapMm;
    GapVerdict verdict;
};

constexpr double deepBox = 9.625 * inchMm;
constexpr double deepFrame = 9.125 * inchMm;
constexpr double mediumBox = 6.625 * inchMm;
constexpr double mediumFrame = 6.25 * inchMm;
constexpr double shallowFrame = 5.375 * inchMm;
constexpr double nationalDeepFrame = 8.5 * inchMm;

const StackCheck stackChecks[] = {
    {"B1 S03", deepBox, deepFrame, 12.70, GapVerdict::WideButUsual},
    {"B2 S41", 9.59375 * inchMm, deepFrame, 11.91, GapVerdict::WideButUsual},
    {"B3", 9.5 * inchMm, deepFrame, 9.525, GapVerdict::Passage},
    {"B4", mediumBox, mediumFrame, 9.525, GapVerdict::Passage},
    {"B5", 5.6875 * inchMm, shallowFrame, 7.94, GapVerdict::Passage},
    {"B5 5 3/4", 5.75 * inchMm, shallowFrame, 9.525, GapVerdict::Passage},
    {"B5 5 5/8", 5.625 * inchMm, shallowFrame, 6.35, GapVerdict::Passage},
    {"B5 5 7/8", 5.875 * inchMm, shallowFrame, 12.70, GapVerdict::WideButUsual},
    {"B6", mediumBox, shallowFrame, 31.75, GapVerdict::BurrComb},
    {"B7", deepBox, mediumFrame, 85.725, GapVerdict::BurrComb},
    {"B8", deepBox, shallowFrame, 107.95, GapVerdict::BurrComb},
    {"B10", 8.875 * inchMm, nationalDeepFrame, 9.525, GapVerdict::Passage},
    {"B11", 8.875 * inchMm, 5.5 * inchMm, 85.725, GapVerdict::BurrComb},
    {"B12", 12.5 * inchMm, nationalDeepFrame, 101.6, GapVerdict::BurrComb},
    {"B12 with its frame", 12.5 * inchMm, 12 * inchMm, 12.70, GapVerdict::WideButUsual},
    {"B12 in 12 3/8 in", 12.375 * inchMm, 12 * inchMm, 9.525, GapVerdict::Passage},
    {"B13", 10.5 * inchMm, 10 * inchMm, 12.70, GapVerdict::WideButUsual}};

// Computed from the printed heights (S03 S41 S04 and those of each box); that bees build below a
// short frame is printed in S75.
TEST(BeeSpaceReference, BoxOverBox) {
    for (const StackCheck& each : stackChecks) {
        SCOPED_TRACE(each.check);
        const auto fit = fitFrame(boxOf(each.boxMm), frameOf(each.frameMm));
        ASSERT_TRUE(fit);
        ASSERT_TRUE(fit->gapMm);
        EXPECT_NEAR(*fit->gapMm, each.gapMm, 0.005);
        EXPECT_EQ(fit->verdict, each.verdict);
        EXPECT_FALSE(fit->misfit);
    }
}

TEST(BeeSpaceReference, B9ADeepFrameDoesNotFitAMediumBox) {
    const auto fit = fitFrame(boxOf(mediumBox), frameOf(deepFrame));  // −63.5 mm: S03, computed
    ASSERT_TRUE(fit);
    EXPECT_EQ(fit->verdict, GapVerdict::DoesNotFit);
    EXPECT_EQ(fit->misfit, Misfit::TooTall);
    EXPECT_FALSE(fit->gapMm);
    EXPECT_NEAR(mediumBox - deepFrame, -63.5, 1e-9);
}

TEST(BeeSpaceReference, B14AndB15TheEnds) {
    struct Ends {
        const char* check;
        double innerLengthMm, frameWidthMm, gapMm;
    };
    // B14: inside S02 S40, frame 17 5/8 in; B15: inside S07, frame S05.
    for (const Ends& each :
         {Ends{"B14", 466.7, 447.7, 9.5}, Ends{"B14 narrower", 465.1, 447.7, 8.7},
          Ends{"B15", 371.5, 355.6, 7.95}}) {
        SCOPED_TRACE(each.check);
        BoxMeasures box = boxOf(deepBox);
        box.innerLength = each.innerLengthMm;
        FrameMeasures frame = frameOf(deepFrame);
        frame.bottomBarLength = each.frameWidthMm;
        const auto fit = fitFrame(box, frame);
        ASSERT_TRUE(fit && fit->endGapMm);
        EXPECT_NEAR(*fit->endGapMm, each.gapMm, 0.051);
        EXPECT_EQ(fit->endVerdict, GapVerdict::Passage);
    }
}

TEST(BeeSpaceReference, TheCatalogueAgreesToItsRounding) {
    struct Pair {
        const char *box, *frame;
        double gapMm;
    };
    // The same pairs from the catalogue, whose mm are rounded to 0.1 and in some families to whole
    // ones: about 0.3 mm off. Sources: those of its rows.
    for (const Pair& each :
         {Pair{"LANG10-DEEP", "LANG-F-DEEP", 12.70}, Pair{"LANG10-MED", "LANG-F-MED", 9.525},
          Pair{"LANG10-SHAL", "LANG-F-SHAL", 7.94}, Pair{"LANG10-MED", "LANG-F-SHAL", 31.75},
          Pair{"LANG10-DEEP", "LANG-F-MED", 85.725}, Pair{"NAT-BROOD", "BS-F-DN4", 9.53},
          Pair{"NAT-BROOD", "BS-F-SN1", 85.725}, Pair{"NAT-14x12", "BS-F-14x12", 12.70},
          Pair{"COMM-BROOD", "COMM-F-16x10", 12.70}}) {
        const auto* box = findPublishedBox(each.box);
        const auto* frame = findPublishedFrame(each.frame);
        ASSERT_TRUE(box && frame);
        EXPECT_NEAR(box->outerHeight->mm() - frame->sideBarHeight->mm(), each.gapMm, 0.33)
            << each.box << " " << each.frame;
    }
}

TEST(BeeSpaceReference, TopAndBottomBeeSpaceDoNotMix) {
    // S24: bottom space over top space can leave 3/4 in, the other way round none to speak of.
    BoxMeasures top = boxOf(deepBox);
    top.beeSpace = BeeSpaceAt::Top;
    top.restDepth = 0.625 * inchMm;
    BoxMeasures bottom = boxOf(deepBox);
    bottom.beeSpace = BeeSpaceAt::Bottom;
    const auto wide = fitFrame(bottom, frameOf(deepFrame), top);
    ASSERT_TRUE(wide);
    EXPECT_NEAR(*wide->gapMm, 0.75 * inchMm, 1e-9);
    EXPECT_EQ(wide->verdict, GapVerdict::BurrComb);
    BoxMeasures tight = top;
    tight.height = 9.5 * inchMm;
    const auto glued = fitFrame(tight, frameOf(deepFrame), bottom);
    ASSERT_TRUE(glued);
    EXPECT_NEAR(*glued->gapMm, 3.175, 1e-9);
    EXPECT_EQ(glued->verdict, GapVerdict::Propolis);
    // S42 S45: rest 5/8 in less a lug of 3/8 in leaves 6.35 mm.
    EXPECT_NEAR(0.625 * inchMm - lugThicknessMm, 6.35, 1e-9);
}

TEST(SpacingReference, TenNineAndEightFrames) {
    struct Row {
        std::int64_t frames;
        double pitch, thickness, total, thickness8, total8;
    };
    const double width = 14.75 * inchMm;  // S02 S40
    // Printed as the eleven spaces that become ten: S73; the figures are computed.
    for (const Row& row : {Row{10, 37.465, 26.988, 269.875, 28.665, 286.65},
                           Row{9, 41.628, 31.044, 279.400, 32.739, 294.65},
                           Row{8, 46.831, 36.116, 288.925, 37.831, 302.65}}) {
        const auto wide = spreadEvenly(width, row.frames);
        EXPECT_NEAR(wide.combThicknessMm, row.thickness, 0.0006);
        EXPECT_NEAR(wide.totalCombMm, row.total, 0.0006);
        // The table gives W / n; the wall takes one bee space of it.
        EXPECT_NEAR(width / static_cast<double>(row.frames), row.pitch, 0.0006);
        EXPECT_NEAR(wide.pitchMm, wide.combThicknessMm + 9.525, 1e-9);
        const auto narrow = spreadEvenly(width, row.frames, 8.0);
        EXPECT_NEAR(narrow.combThicknessMm, row.thickness8, 0.0006);
        EXPECT_NEAR(narrow.totalCombMm, row.total8, 0.006);
    }
    const double nine = spreadEvenly(width, 9).totalCombMm - spreadEvenly(width, 10).totalCombMm;
    const double eight = spreadEvenly(width, 8).totalCombMm - spreadEvenly(width, 10).totalCombMm;
    EXPECT_NEAR(nine, 9.525, 1e-9);
    EXPECT_NEAR(eight, 2 * 9.525, 1e-9);
}

TEST(SpacingReference, WidthToSpare) {
    EXPECT_NEAR(spareWidthMm(14.75 * inchMm, 10, 1.375 * inchMm), 25.4, 1e-9);  // S02 S40
    EXPECT_NEAR(spareWidthMm(12.25 * inchMm, 8, 1.375 * inchMm), 31.75, 1e-9);  // computed, S44
    BoxMeasures box = boxOf(deepBox);
    box.innerWidth = 12.25 * inchMm;
    FrameMeasures frame = frameOf(deepFrame);
    frame.spacing = 1.375 * inchMm;
    const auto fit = fitFrame(box, frame, {}, 8);
    ASSERT_TRUE(fit && fit->sideGapMm);
    EXPECT_NEAR(*fit->sideGapMm, 15.875, 1e-9);  // 15.9 each side
}

TEST(SpacingReference, FacesOfBroodCombs) {
    // S70 22.2 mm at 35 mm; S72 prints 23 mm at 32 mm and 9 mm between.
    const auto hoffman = gapBetweenFaces(35, 22.2);
    EXPECT_NEAR(hoffman.gapMm, 12.8, 1e-9);
    EXPECT_EQ(hoffman.verdict, FaceVerdict::BackToBack);
    EXPECT_NEAR(gapBetweenFaces(32, 23).gapMm, 9.0, 1e-9);
    EXPECT_EQ(gapBetweenFaces(32, 23).verdict, FaceVerdict::BackToBack);
    EXPECT_EQ(gapBetweenFaces(30, 22.2).verdict, FaceVerdict::TooTight);
    EXPECT_EQ(gapBetweenFaces(42, 22.2).verdict, FaceVerdict::Fattened);
    // A frame left out of a brood nest: 70 mm from comb to comb, and a comb is built there.
    EXPECT_EQ(gapBetweenFaces(70, 22.2).verdict, FaceVerdict::CombBetween);
}

TEST(ColdReference, ThePrintedChecks) {
    // COLOSS BEEBOOK 5.8.1 and S119; time in the core of the comb.
    EXPECT_TRUE(*releasable(5, -6.7));
    EXPECT_FALSE(*releasable(2.5, -12.2));
    EXPECT_TRUE(*releasable(2, -15));
    const auto zero = releasable(24, -1);
    ASSERT_FALSE(zero);
    EXPECT_EQ(zero.error().code, Code::OutOfRange);
    EXPECT_FALSE(*releasableByHeat(79.0 / 60, 46.1));
    EXPECT_TRUE(*releasableByHeat(80.0 / 60, 46.1));
    EXPECT_TRUE(*releasableByHeat(40.0 / 60, 48.9));
    EXPECT_FALSE(releasableByHeat(40, 45));
    EXPECT_FALSE(releasableByHeat(1, 50));
}

TEST(ColdReference, RowsAreThoseOfTheTradeTable) {
    // Each row of the table names its source.
    const ResourceTable table("moth_kill");
    std::size_t cold = 0;
    std::size_t heat = 0;
    for (const ResourceRow& row : table.rows()) {
        const bool byCold = row.text("by") == "cold";
        const auto rows = byCold ? coldKillRows() : heatKillRows();
        std::size_t& at = byCold ? cold : heat;
        ASSERT_LT(at, rows.size());
        EXPECT_NEAR(rows[at].temperatureC, *row.number("temperature_c"), 0.02);
        EXPECT_NEAR(rows[at].hours, *row.number("hours"), 0.001);
        EXPECT_NEAR((*row.number("printed_f") - 32) / 1.8, *row.number("temperature_c"), 0.3);
        EXPECT_FALSE(row.text("source").empty());
        ++at;
    }
    EXPECT_EQ(cold, coldKillRows().size());
    EXPECT_EQ(heat, heatKillRows().size());
}

TEST(ColdReference, BetweenTwoRowsTheWarmerRowsTime) {
    // COLOSS BEEBOOK prints −7, −12 and −15; −6.7 and 20 °F are the first row too.
    for (const auto& [temperature, hours] :
         {std::pair{-6.7, 4.5}, std::pair{(20 - 32) / 1.8, 4.5}, std::pair{-7.0, 4.5},
          std::pair{-11.9, 4.5}, std::pair{-12.0, 3.0}, std::pair{-12.2, 3.0},
          std::pair{-14.9, 3.0}, std::pair{-15.0, 2.0}, std::pair{-18.0, 2.0},
          std::pair{-40.0, 2.0}})
        EXPECT_DOUBLE_EQ(*coldKillHours(temperature), hours) << temperature;
    for (const double warm : {-6.6, -6.0, -1.0, 0.0, 4.0})
        EXPECT_EQ(coldKillHours(warm).error().field, "temperature_c") << warm;
    EXPECT_FALSE(coldKillHours(std::nan("")));
}

TEST(ColdReference, TheCoreLagsBehind) {
    // Computed, no page found: one frame about 2.1 and 2.9 h, a packed box about 66 and 87 h.
    EXPECT_NEAR(*coreLagHours(CombPack::SingleFrames, -12), 2.1, 0.05);
    EXPECT_NEAR(*coreLagHours(CombPack::SingleFrames, -15), 2.9, 0.05);
    EXPECT_NEAR(*coreLagHours(CombPack::PackedBox, -12), 66, 1);
    EXPECT_NEAR(*coreLagHours(CombPack::PackedBox, -15), 87, 1);
    EXPECT_FALSE(coreLagHours(CombPack::PackedBox, -18));
    EXPECT_DOUBLE_EQ(*coreLagHours(CombPack::PackedBox, -12, -18, -13), 0);
    const auto packed = freezerStay(CombPack::PackedBox);
    ASSERT_TRUE(packed);
    // 48 h are not enough for a packed box, 72 h are: S120 to S122 advise 24 to 48 h for combs.
    EXPECT_GT(packed->hours(), 48);
    EXPECT_LT(packed->hours(), 72);
    EXPECT_LT(freezerStay(CombPack::SingleFrames)->hours(), 24);
    EXPECT_FALSE(freezerStay(CombPack::SingleFrames, -6));
}

TEST(FreezerReference, F1AndF2LitresOfABox) {
    struct Row {
        const char* box;
        double outside, inside;
    };
    // Computed from the printed sides of the catalogue (S01 S02 S37 to S40).
    for (const Row& row : {Row{"LANG10-DEEP", 50.95, 42.75}, Row{"LANG10-MED", 35.07, 29.43},
                           Row{"LANG10-SHAL", 30.11, 25.27}}) {
        const auto* box = findPublishedBox(row.box);
        EXPECT_NEAR(
            boxLitres(box->outerLength->mm(), box->outerWidth->mm(), box->outerHeight->mm()),
            row.outside, 0.01);
        EXPECT_NEAR(
            boxLitres(box->innerLength->mm(), box->innerWidth->mm(), box->outerHeight->mm()),
            row.inside, 0.01);
    }
}

TEST(FreezerReference, F3AndF4WhatAFreezerHolds) {
    // Computed; how full it gets is a planning assumption, no source.
    const double deep = frameLitres(19 * inchMm, deepFrame);
    const double medium = frameLitres(19 * inchMm, mediumFrame);
    EXPECT_NEAR(deep, 4.25, 0.005);
    EXPECT_NEAR(medium, 2.91, 0.005);
    EXPECT_EQ(*freezerHolds(200, deep), 30);
    EXPECT_EQ(*freezerHolds(200, medium), 44);
    EXPECT_EQ(*freezerHolds(200, 35.07), 3);
    EXPECT_EQ(*freezerHolds(200, 50.95), 2);
    EXPECT_EQ(*freezerHolds(425, deep), 64);
    EXPECT_EQ(*freezerHolds(425, 35.07), 7);
    EXPECT_FALSE(freezerHolds(0, deep));
    EXPECT_FALSE(freezerHolds(200, deep, 1.5));
}

const std::vector<FreezerBatch> winterBatches = {{"deep", 24, 10}, {"medium", 40, 16}};

TEST(WinterReference, RoundsOfAFreezer) {
    // Hand-worked: 16 mediums or 10 deeps, 48 h, brood comb first, from 10 January 2028.
    const auto rounds = planFreezer(winterBatches, 48, *makeDay(2028, 1, 10), false);
    ASSERT_TRUE(rounds);
    ASSERT_EQ(rounds->size(), 6u);
    const std::int64_t counts[] = {10, 10, 4, 16, 16, 8};
    for (std::size_t i = 0; i < 6; ++i) {
        ASSERT_EQ((*rounds)[i].frames.size(), 1u);
        EXPECT_EQ((*rounds)[i].frames[0].kind, i < 3 ? "deep" : "medium");
        EXPECT_EQ((*rounds)[i].frames[0].count, counts[i]);
    }
    EXPECT_EQ(rounds->back().out, *makeDay(2028, 1, 22));
    const auto waiting = stillWaiting(*rounds, 4);
    ASSERT_EQ(waiting.size(), 1u);
    EXPECT_EQ(waiting[0].kind, "medium");
    EXPECT_EQ(waiting[0].count, 24);
}

TEST(WinterReference, SharedRoundsSaveOne) {
    const auto rounds = planFreezer(winterBatches, 48, *makeDay(2028, 1, 10), true);
    ASSERT_TRUE(rounds);
    ASSERT_EQ(rounds->size(), 5u);  // hand-worked
    EXPECT_EQ(rounds->back().out, *makeDay(2028, 1, 20));
    ASSERT_EQ((*rounds)[2].frames.size(), 2u);
    EXPECT_EQ((*rounds)[2].frames[0].count, 4);
    EXPECT_EQ((*rounds)[2].frames[1].count, 9);  // six tenths of sixteen
}

TEST(WinterReference, FramesOfNextYear) {
    // Hand-worked: 22 mediums of 9; 166 kept and 2 granulated are drawn, 18 bare, 5 to mend.
    const auto answer = frameNeeds(198, {168, 0, 18, 5});
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->usable, 191);
    EXPECT_EQ(answer->buyFrames, 7);
    EXPECT_EQ(answer->foundationSheets, 30);
}

TEST(SpringReference, TheAprilStockTake) {
    // Hand-worked: 12 colonies, 4 splits.
    const auto supers = kitNeeds(12, 4, {3, 0, 0.1, 33, 2});
    ASSERT_TRUE(supers);
    EXPECT_EQ(supers->need, 40);
    EXPECT_EQ(supers->missing, 7);
    EXPECT_EQ(supers->missingAfterRepair, 5);
    EXPECT_EQ(kitNeeds(12, 4, {0, 1, 0, 4, 0})->missing, 0);  // deeps
    EXPECT_EQ(kitNeeds(12, 4, {0, 1, 0, 2, 0})->missing, 2);  // floors, lids
    // Without the record of what was looked for nothing of the dead-outs is usable.
    EXPECT_EQ(kitNeeds(12, 4, {0, 1, 0, 0, 0})->missing, 4);
    EXPECT_EQ(frameNeeds(40, {})->buyFrames, 40);

    const auto mediums = frameNeeds(360, {262, 31, 24, 0});
    EXPECT_EQ(mediums->usable, 317);
    EXPECT_EQ(mediums->buyFrames, 43);
    EXPECT_EQ(mediums->foundationSheets, 67);
    EXPECT_EQ(packsFor(43, 10), 5);
    EXPECT_EQ(packsFor(67, 10), 7);
    const auto deeps = frameNeeds(40, {22, 0, 11, 0});
    EXPECT_EQ(deeps->usable, 33);
    EXPECT_EQ(deeps->buyFrames, 7);
    EXPECT_EQ(deeps->foundationSheets, 18);
}

TEST(KitReference, RatiosPerColony) {
    EXPECT_EQ(kitNeeds(19, 0, {2.5, 0, 0, 0, 0})->need, 48);   // R1, S144
    EXPECT_EQ(kitNeeds(50, 0, {1, 0, 0.1, 0, 0})->need, 55);   // R2, common practice, no source
    EXPECT_EQ(kitNeeds(50, 0, {0.25, 0, 0, 0, 0})->need, 13);  // R3, common practice, no source
}

}  // namespace
}  // namespace combwright
