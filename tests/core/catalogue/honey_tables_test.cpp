#include "core/catalogue/honey_tables.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "core/catalogue/constants.h"
#include "core/catalogue/resource_table.h"
#include "core/trade/honey/best_before.h"
#include "core/trade/honey/colour_class.h"
#include "core/trade/honey/container_fill.h"
#include "core/trade/honey/equilibrium.h"
#include "core/trade/honey/ferment_risk.h"
#include "core/trade/honey/heat_damage.h"
#include "core/trade/honey/settling.h"

namespace combwright {
namespace {

void expectHoneySource(const std::string& source) {
    const bool printed = source.starts_with("printed in ");
    const bool customary = source.starts_with("common practice, no source");
    const bool remembered = source.starts_with("from memory");
    const bool computed = source.starts_with("computed");
    EXPECT_EQ(printed + customary + remembered + computed, 1) << source;
}

TEST(HoneyTables, EachLimitIsOneAndSaysWhereFrom) {
    std::set<std::string> met;
    const std::set<std::string> bindings{"law", "guidance", "label", "voluntary"};
    for (const PublishedHoneyLimit& each : publishedHoneyLimits()) {
        SCOPED_TRACE(each.profile + " " + each.honey + " " + each.quantity);
        expectHoneySource(each.source);
        EXPECT_FALSE(each.profile.empty() || each.edition.empty() || each.honey.empty());
        EXPECT_TRUE(bindings.contains(each.binding)) << each.binding;
        // One end, never both, never none.
        EXPECT_NE(each.atMost.has_value(), each.atLeast.has_value());
        EXPECT_TRUE(
            met.insert(each.profile + "|" + each.honey + "|" + each.grade + "|" + each.quantity)
                .second);
        if (each.quantity == "water_percent") {
            EXPECT_GE(each.atMost.value_or(0), 18);
            EXPECT_LE(each.atMost.value_or(99), 25);
        }
    }
    const auto profiles = honeyLimitProfiles();
    EXPECT_EQ(std::set<std::string>(profiles.begin(), profiles.end()).size(), profiles.size());
    ASSERT_GE(profiles.size(), 6U);
    for (const std::string& name : profiles) EXPECT_FALSE(honeyLimitsOf(name).empty()) << name;
    EXPECT_TRUE(honeyLimitsOf("nobody's").empty());
}

TEST(HoneyTables, TolerancesFollowOneAnother) {
    std::set<std::string> regions;
    const PublishedNetTolerance* before = nullptr;
    for (const PublishedNetTolerance& each : publishedNetTolerances()) {
        expectHoneySource(each.source);
        EXPECT_LT(each.fromG, each.toG);
        EXPECT_FALSE(each.deficitG && each.deficitPercent);
        if (before && before->region == each.region) {
            EXPECT_EQ(before->toG, each.fromG);
        }
        if (each.region == "US") {
            EXPECT_FALSE(each.deficitG || each.deficitPercent);
        }
        regions.insert(each.region);
        before = &each;
    }
    EXPECT_EQ(regions.size(), 2U);
}

TEST(HoneyTables, WordsOfALabel) {
    std::set<std::string> met;
    for (const PublishedLabelWord& each : publishedLabelWords()) {
        expectHoneySource(each.source);
        EXPECT_TRUE(met.insert(each.region + "|" + each.what).second) << each.what;
        EXPECT_TRUE(each.says.ends_with(".")) << each.says;
        // Everything but the caution depends on the place.
        EXPECT_NE(each.source.find(each.what == "infant_caution" ? "printed" : "check local rules"),
                  std::string::npos)
            << each.source;
    }
    for (const char* region : {"US", "EU", "UK"}) {
        std::set<std::string> here;
        for (const PublishedLabelWord& each : labelWordsFor(region)) here.insert(each.what);
        for (const char* what : {"infant_caution", "honey", "name_and_address", "net_mass",
                                 "origin", "best_before", "lot"})
            EXPECT_TRUE(here.contains(what)) << region << " " << what;
    }
    // Figure heights are the EU's and the UK's, ingredients a word for the US.
    for (const PublishedLabelWord& each : labelWordsFor("US"))
        EXPECT_NE(each.what, "figure_height");
}

TEST(HoneyTables, EverySheetFitsItsPaperAndIsCentred) {
    std::set<std::string> papers;
    for (const PublishedLabelGrid& grid : publishedLabelGrids()) {
        SCOPED_TRACE(grid.id);
        expectHoneySource(grid.source);
        EXPECT_EQ(findLabelGrid(grid.id), &grid);
        const auto paper = paperSize(grid.paper);
        ASSERT_TRUE(paper);
        papers.insert(grid.paper);
        EXPECT_GE(grid.columns, 1);
        EXPECT_GE(grid.rows, 1);
        EXPECT_GE(grid.pitchXMm, grid.cellWidthMm);
        EXPECT_GE(grid.pitchYMm, grid.cellHeightMm);
        if (grid.round) {
            EXPECT_EQ(grid.cellWidthMm, grid.cellHeightMm);
        }
        const double right = grid.leftMm + (grid.columns - 1) * grid.pitchXMm + grid.cellWidthMm;
        const double bottom = grid.topMm + (grid.rows - 1) * grid.pitchYMm + grid.cellHeightMm;
        EXPECT_GE(grid.leftMm, 0);
        EXPECT_GE(grid.topMm, 0);
        EXPECT_NEAR(right + grid.leftMm, paper->widthMm, 0.01);
        EXPECT_NEAR(bottom + grid.topMm, paper->heightMm, 0.01);
    }
    EXPECT_EQ(papers, (std::set<std::string>{"A4", "Letter"}));
    EXPECT_EQ(findLabelGrid("a4-3x7")->columns, 3);
    EXPECT_EQ(findLabelGrid("a4-99x99"), nullptr);
    EXPECT_FALSE(paperSize("A5"));
}

TEST(HoneyTables, JarsHoldWhatTheySay) {
    for (const PublishedJarSize& each : publishedJarSizes()) {
        SCOPED_TRACE(each.id);
        expectHoneySource(each.source);
        EXPECT_EQ(findJarSize(each.id), &each);
        EXPECT_NEAR(*massHeld(each.volumeMl, 18, 20), each.netG, 0.001 * each.netG + 0.5);
    }
    EXPECT_EQ(findJarSize("thimble"), nullptr);
}

// The tables the trade reckons with and those shown with their sources are the same.
TEST(HoneyTables, TheTradeReckonsWithThem) {
    const ResourceTable colours("colour_classes");
    const auto colourCells = colours.rows();
    ASSERT_EQ(colourCells.size(), colourRows().size());
    for (std::size_t i = 0; i < colourCells.size(); ++i) {
        EXPECT_EQ(colourCells[i].text("class"), colourRows()[i].name);
        EXPECT_EQ(colourCells[i].number("to_pfund_mm"), colourRows()[i].toPfundMm);
        EXPECT_EQ(colourCells[i].number("to_optical_density"), colourRows()[i].toDensity);
        expectHoneySource(colourCells[i].text("source"));
    }

    const ResourceTable heat("heat_damage");
    const auto heated = heat.rows();
    ASSERT_EQ(heated.size(), heatRows().size());
    for (std::size_t i = 0; i < heated.size(); ++i) {
        EXPECT_EQ(heated[i].number("temperature_c"), heatRows()[i].temperatureC);
        EXPECT_EQ(heated[i].number("hmf_low_h"), heatRows()[i].hmfLowH);
        EXPECT_EQ(heated[i].number("hmf_high_h"), heatRows()[i].hmfHighH);
        EXPECT_EQ(heated[i].number("diastase_half_life_h"), heatRows()[i].diastaseHalfLifeH);
        EXPECT_EQ(heated[i].number("invertase_half_life_h"), heatRows()[i].invertaseHalfLifeH);
        expectHoneySource(heated[i].text("source"));
    }

    std::size_t martin = 0;
    std::size_t white = 0;
    const ResourceTable air("equilibrium");
    for (const ResourceRow& row : air.rows()) {
        expectHoneySource(row.text("source"));
        const TablePoint& point = row.text("series") == "martin" ? martinEquilibrium[martin++]
                                                                 : whiteEquilibrium[white++];
        EXPECT_EQ(row.number("relative_humidity_percent"), point.at);
        EXPECT_EQ(row.number("water_percent"), point.value);
    }
    EXPECT_EQ(martin, martinEquilibrium.size());
    EXPECT_EQ(white, whiteEquilibrium.size());

    const ResourceTable ferment("fermentation");
    const auto fermented = ferment.rows();
    ASSERT_EQ(fermented.size(), fermentRows.size() + 1);
    EXPECT_EQ(fermented[0].number("limit_yeast_per_g"), std::nullopt);
    EXPECT_NEAR(*fermented[0].number("to_water_percent") + 0.1, keepsBelowPercent, 1e-9);
    for (std::size_t i = 0; i < fermentRows.size(); ++i) {
        EXPECT_EQ(fermented[i + 1].number("to_water_percent"), fermentRows[i].toPercent);
        EXPECT_EQ(fermented[i + 1].number("limit_yeast_per_g"), fermentRows[i].limitYeastPerG);
    }
}

TEST(HoneyTables, ConstantsTheTradeStartsFrom) {
    struct Pair {
        const char* name;
        double value;
    };
    const HeatLines lines;
    for (const Pair& each :
         {Pair{"settling_plan_factor", settlingPlanFactor},
          Pair{"damp_air_percent", dampAirPercent}, Pair{"heat_gentle_hmf", lines.gentleHmf},
          Pair{"heat_gentle_invertase_share", lines.gentleInvertaseShare},
          Pair{"heat_noticeable_hmf", lines.noticeableHmf},
          Pair{"heat_noticeable_invertase_share", lines.noticeableInvertaseShare},
          Pair{"best_before_months", usualKeepMonthsTo}}) {
        const PublishedConstant* constant = findPublishedConstant(each.name);
        ASSERT_NE(constant, nullptr) << each.name;
        EXPECT_EQ(constant->value, each.value) << each.name;
    }
}

}  // namespace
}  // namespace combwright
