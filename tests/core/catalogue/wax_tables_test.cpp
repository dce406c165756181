// The tables of wax and candles are what the arithmetic reckons with, row for row.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/catalogue/constants.h"
#include "core/catalogue/resource_table.h"
#include "core/trade/wax/candle_mass.h"
#include "core/trade/wax/candle_time.h"
#include "core/trade/wax/wax_heat.h"
#include "core/trade/wax/wax_yield.h"
#include "core/trade/wax/wick.h"

namespace combwright {
namespace {

void expectWaxSource(const std::string& source) {
    const bool printed = source.starts_with("printed in ");
    const bool customary = source.starts_with("common practice, no source");
    const bool remembered = source.starts_with("from memory");
    const bool computed = source.starts_with("computed");
    EXPECT_EQ(printed + customary + remembered + computed, 1) << source;
}

TEST(WaxTables, YieldsAreThoseReckonedWith) {
    const ResourceTable table("wax_yields");
    const auto rows = table.rows();
    ASSERT_EQ(rows.size(), std::size(allWaxMaterials));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        SCOPED_TRACE(rows[i].text("material"));
        expectWaxSource(rows[i].text("source"));
        EXPECT_EQ(rows[i].text("material"), key(allWaxMaterials[i]));
        const auto range = publishedWaxYield(allWaxMaterials[i]);
        ASSERT_EQ(range.has_value(), rows[i].number("low_share").has_value());
        if (!range) continue;
        EXPECT_DOUBLE_EQ(range->low, *rows[i].number("low_share"));
        EXPECT_DOUBLE_EQ(range->likely, *rows[i].number("likely_share"));
        EXPECT_DOUBLE_EQ(range->high, *rows[i].number("high_share"));
    }
}

TEST(WaxTables, WicksAreThoseGuessed) {
    const ResourceTable table("wicks");
    double reached = 0;
    for (const ResourceRow& row : table.rows()) {
        SCOPED_TRACE(row.text("source"));
        expectWaxSource(row.text("source"));
        const double from = *row.number("from_mm");
        EXPECT_DOUBLE_EQ(from, reached);
        reached = row.number("to_mm").value_or(500);
        for (const double mm : {from + 0.01, (from + reached) / 2, reached - 0.01}) {
            const auto guess = wickGuess(mm);
            ASSERT_TRUE(guess);
            EXPECT_EQ(guess->thinnest, row.text("thinnest"));
            EXPECT_EQ(guess->thickest, row.text("thickest"));
            EXPECT_EQ(guess->orThicker, !row.number("to_mm"));
        }
    }
    EXPECT_DOUBLE_EQ(reached, 500);
    EXPECT_EQ(wickGuess(76.2)->thinnest, "#3");
}

TEST(WaxTables, TimesAreThoseReckonedWith) {
    const ResourceTable table("candle_times");
    double reached = 0;
    for (const ResourceRow& row : table.rows()) {
        SCOPED_TRACE(row.text("size"));
        expectWaxSource(row.text("set_source"));
        expectWaxSource(row.text("burn_source"));
        const double from = *row.number("from_mm");
        EXPECT_DOUBLE_EQ(from, reached);
        reached = row.number("to_mm").value_or(500);
        for (const double mm : {std::max(from, 0.1), (from + reached) / 2, reached - 0.01}) {
            EXPECT_EQ(key(*candleSize(mm)), row.text("size"));
            EXPECT_DOUBLE_EQ(setHours(mm)->low, *row.number("set_low_h"));
            EXPECT_DOUBLE_EQ(setHours(mm)->high, *row.number("set_high_h"));
            EXPECT_DOUBLE_EQ(burnGPerHour(mm)->low, *row.number("burn_low_g_per_h"));
            EXPECT_DOUBLE_EQ(burnGPerHour(mm)->likely, *row.number("burn_g_per_h"));
            EXPECT_DOUBLE_EQ(burnGPerHour(mm)->high, *row.number("burn_high_g_per_h"));
        }
    }
    EXPECT_DOUBLE_EQ(reached, 500);
}

TEST(WaxTables, FiguresAreThoseReckonedWith) {
    const ResourceTable table("wax_figures");
    const auto figure = [&](std::string_view name) {
        for (const ResourceRow& row : table.rows())
            if (row.text("name") == name) return row;
        ADD_FAILURE() << name;
        return table.rows().front();
    };
    for (const ResourceRow& row : table.rows()) expectWaxSource(row.text("source"));
    EXPECT_DOUBLE_EQ(*figure("solid_density").number("likely"), solidWaxGPerMl);
    EXPECT_DOUBLE_EQ(*figure("liquid_density").number("likely"), liquidWaxGPerMl);
    // Both ends of the ranges are taken, a little beyond is not.
    for (const char* end : {"low", "high"}) {
        const double solid = *figure("solid_density").number(end);
        const double liquid = *figure("liquid_density").number(end);
        EXPECT_TRUE(candleMass(100, {solid, liquid}));
        const double beyond = end[0] == 'l' ? -0.001 : 0.001;
        EXPECT_FALSE(candleMass(100, {solid + beyond, liquid}));
        EXPECT_FALSE(candleMass(100, {solid, liquid + beyond}));
    }
    EXPECT_DOUBLE_EQ(*figure("melts").number("low"), waxMeltsFromC);
    EXPECT_DOUBLE_EQ(*figure("melts").number("high"), waxMeltedC);
    EXPECT_DOUBLE_EQ(*figure("pour").number("low"), waxPourFromC);
    EXPECT_DOUBLE_EQ(*figure("pour").number("high"), waxPourToC);
    EXPECT_DOUBLE_EQ(*figure("enough").number("high"), waxEnoughToC);
    EXPECT_DOUBLE_EQ(*figure("discolours").number("low"), waxAlarmC);
    EXPECT_DOUBLE_EQ(*figure("specific_heat").number("low"), WaxWarming{}.specificKjPerKgK.low);
    EXPECT_DOUBLE_EQ(*figure("specific_heat").number("high"), WaxWarming{}.specificKjPerKgK.high);
    EXPECT_DOUBLE_EQ(*figure("latent_heat").number("likely"), WaxWarming{}.latentKjPerKg);
    EXPECT_DOUBLE_EQ(*figure("wax_per_100_honey").number("low"), cappingsOfCrop(100)->waxG.low);
    EXPECT_DOUBLE_EQ(*figure("wax_per_100_honey").number("likely"),
                     cappingsOfCrop(100)->waxG.likely);
    EXPECT_DOUBLE_EQ(*figure("wax_per_100_honey").number("high"), cappingsOfCrop(100)->waxG.high);
    EXPECT_DOUBLE_EQ(*figure("honey_in_fresh_cappings").number("likely"),
                     cappingsOfCrop(100)->honeyG);
    EXPECT_DOUBLE_EQ(*figure("propolis_per_colony").number("low"), propolisG(1)->low);
    EXPECT_DOUBLE_EQ(*figure("propolis_per_colony").number("likely"), propolisG(1)->likely);
    EXPECT_DOUBLE_EQ(*figure("propolis_per_colony").number("high"), propolisG(1)->high);
}

TEST(WaxTables, TheBenchStartsFromTheConstants) {
    EXPECT_DOUBLE_EQ(findPublishedConstant("wax_solid_g_per_ml")->value, solidWaxGPerMl);
    EXPECT_DOUBLE_EQ(findPublishedConstant("wax_liquid_g_per_ml")->value, liquidWaxGPerMl);
    EXPECT_DOUBLE_EQ(findPublishedConstant("wax_alarm_c")->value, waxAlarmC);
    EXPECT_DOUBLE_EQ(findPublishedConstant("wax_stop_c")->value, waxStopC);
    EXPECT_DOUBLE_EQ(findPublishedConstant("cappings_wax_share")->value * 100,
                     cappingsOfCrop(100)->waxG.likely);
    EXPECT_DOUBLE_EQ(findPublishedConstant("cappings_honey_share")->value * 100,
                     cappingsOfCrop(100)->honeyG);
    EXPECT_DOUBLE_EQ(findPublishedConstant("candle_spare_share")->value, 0.08);
}

}  // namespace
}  // namespace combwright
