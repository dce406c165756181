#include "core/catalogue/catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "core/catalogue/resource_table.h"
#include "core/trade/honey/density.h"
#include "core/trade/honey/moisture.h"

namespace combwright {
namespace {

TEST(Catalogue, HoldsTheWholeTradeTable) {
    EXPECT_EQ(publishedFrames().size(), 41u);
    EXPECT_EQ(publishedBoxes().size(), 38u);
    EXPECT_EQ(publishedFrames().front().id, "LANG-F-JUMBO");
    EXPECT_EQ(publishedBoxes().front().id, "LANG10-DEEP");
}

TEST(Catalogue, FindsByIdAndOnlyByTheWholeId) {
    for (const PublishedFrame& each : publishedFrames())
        EXPECT_EQ(findPublishedFrame(each.id), &each);
    for (const PublishedBox& each : publishedBoxes()) EXPECT_EQ(findPublishedBox(each.id), &each);
    EXPECT_EQ(findPublishedFrame("LANG-F"), nullptr);
    EXPECT_EQ(findPublishedBox(""), nullptr);
}

TEST(Catalogue, ReadsMeasuresToTheTenthOfAMillimetre) {
    const PublishedFrame* medium = findPublishedFrame("LANG-F-MED");
    ASSERT_NE(medium, nullptr);
    EXPECT_EQ(medium->family, "Langstroth");
    EXPECT_EQ(medium->topBarLength, Length::tenthsOfMm(4826));
    EXPECT_EQ(medium->sideBarHeight, Length::tenthsOfMm(1588));
    EXPECT_EQ(medium->combAreaDm2, 5.58);
    EXPECT_EQ(medium->workerCellsOneSide, Count(2210));

    const PublishedBox* national = findPublishedBox("NAT-SUPER");
    ASSERT_NE(national, nullptr);
    EXPECT_EQ(national->framesNominal, Count(10));
    EXPECT_EQ(national->innerWidth, Length::tenthsOfMm(4223));
    EXPECT_EQ(national->beeSpace, PublishedBeeSpace::Bottom);
    EXPECT_EQ(national->takesFrame, "BS-F-SN1");
}

TEST(Catalogue, BlankIsNotKnown) {
    const PublishedFrame* bar = findPublishedFrame("KTBH-BAR");
    ASSERT_NE(bar, nullptr);
    EXPECT_FALSE(bar->combAreaDm2);
    EXPECT_FALSE(bar->sideBarHeight);
    EXPECT_FALSE(bar->workerCellsOneSide);
    const PublishedBox* german = findPublishedBox("DNM11-BOX");
    ASSERT_NE(german, nullptr);
    EXPECT_FALSE(german->outerLength);
    EXPECT_FALSE(german->restDepth);
    EXPECT_FALSE(german->beeSpace);
    EXPECT_EQ(findPublishedBox("KTBH-28")->beeSpace, PublishedBeeSpace::NoStacking);
}

TEST(Catalogue, EveryFrameIsPossible) {
    std::set<std::string> ids;
    for (const PublishedFrame& each : publishedFrames()) {
        SCOPED_TRACE(each.id);
        EXPECT_TRUE(ids.insert(each.id).second);
        EXPECT_FALSE(each.family.empty() || each.commonName.empty() || each.source.empty());
        ASSERT_TRUE(each.topBarLength && each.topBarWidth && each.topBarThickness);
        ASSERT_TRUE(each.endBarSpacing);
        EXPECT_GE(each.endBarSpacing->mm(), 32.0);  // narrowest and widest printed spacing
        EXPECT_LE(each.endBarSpacing->mm(), 48.0);
        EXPECT_EQ(each.bottomBarLength.has_value(), each.sideBarHeight.has_value());
        if (each.bottomBarLength) {
            EXPECT_LT(*each.bottomBarLength, *each.topBarLength);
            ASSERT_TRUE(each.combInnerWidth && each.combInnerHeight);
            EXPECT_LE(*each.combInnerWidth, *each.bottomBarLength);
            EXPECT_LT(*each.combInnerHeight,
                      *each.sideBarHeight - *each.topBarThickness + Length::tenthsOfMm(1));
        }
    }
}

TEST(Catalogue, CombAreaAndCellsFollowFromTheInnerSize) {
    int checked = 0;
    for (const PublishedFrame& each : publishedFrames()) {
        SCOPED_TRACE(each.id);
        EXPECT_EQ(each.combAreaDm2.has_value(), each.combInnerWidth.has_value());
        if (!each.combAreaDm2) continue;
        ++checked;
        const double area = each.combInnerWidth->mm() * each.combInnerHeight->mm() / 10000.0;
        EXPECT_NEAR(*each.combAreaDm2, area, 0.0051);
        // 396 worker cells of 5.4 mm to a dm²; the area was rounded to 0.01 dm² or not before.
        ASSERT_TRUE(each.workerCellsOneSide);
        EXPECT_NEAR(static_cast<double>(each.workerCellsOneSide->value()), area * 396.0, 3.0);
    }
    EXPECT_EQ(checked, 40);
}

TEST(Catalogue, EveryBoxIsPossibleAndTakesAFrameThatExists) {
    std::set<std::string> ids;
    for (const PublishedBox& each : publishedBoxes()) {
        SCOPED_TRACE(each.id);
        EXPECT_TRUE(ids.insert(each.id).second);
        EXPECT_FALSE(each.family.empty() || each.commonName.empty() || each.source.empty());
        ASSERT_TRUE(each.framesNominal);
        EXPECT_GT(each.framesNominal->value(), 0);
        const PublishedFrame* frame = findPublishedFrame(each.takesFrame);
        ASSERT_NE(frame, nullptr);
        if (each.outerLength && each.innerLength) {
            EXPECT_GT(*each.outerLength, *each.innerLength);
        }
        if (each.outerWidth && each.innerWidth) {
            EXPECT_GT(*each.outerWidth, *each.innerWidth);
        }
        if (each.innerLength && frame->bottomBarLength) {
            EXPECT_GT(*each.innerLength, *frame->bottomBarLength);
        }
        if (each.outerHeight && frame->sideBarHeight) {
            EXPECT_GT(*each.outerHeight, *frame->sideBarHeight);
        }
    }
}

TEST(Catalogue, TheFramesOfABoxFitBesideEachOther) {
    for (const PublishedBox& each : publishedBoxes()) {
        if (!each.innerWidth) continue;
        SCOPED_TRACE(each.id);
        const PublishedFrame* frame = findPublishedFrame(each.takesFrame);
        const double n = static_cast<double>(each.framesNominal->value());
        // Wide spacers (47.6 mm) are for 8 in a super that holds 10 hung closer; and 11 frames of
        // 38 mm are printed for boxes of 419 to 422 mm, which hold them at 35.
        EXPECT_GE(each.innerWidth->mm(), n * std::min(frame->endBarSpacing->mm(), 35.0));
    }
}

TEST(Catalogue, SourcesAreWordedAlikeAndEveryKeyIsExplained) {
    const std::regex key("S[0-9]+b?(?![0-9a-z])");
    auto check = [&](const std::string& id, const std::string& source) {
        SCOPED_TRACE(id);
        EXPECT_TRUE(
            std::regex_search(source, std::regex("printed in|from memory|computed|as [A-Z]")));
        for (auto it = std::sregex_iterator(source.begin(), source.end(), key);
             it != std::sregex_iterator(); ++it)
            EXPECT_NE(findSource(it->str()), nullptr) << it->str();
    };
    for (const PublishedFrame& each : publishedFrames()) check(each.id, each.source);
    for (const PublishedBox& each : publishedBoxes()) check(each.id, each.source);
    std::set<std::string> keys;
    for (const PrintedSource& each : sources()) {
        EXPECT_TRUE(keys.insert(each.key).second) << each.key;
        EXPECT_FALSE(each.title.empty()) << each.key;
    }
}

TEST(Catalogue, TheWidthOfABoxIsLookedUpOrScaled) {
    const PublishedFrame* medium = findPublishedFrame("LANG-F-MED");
    EXPECT_EQ(innerWidthFor(*medium, 10), Length::tenthsOfMm(3746));
    EXPECT_EQ(innerWidthFor(*medium, 8), Length::tenthsOfMm(3111));
    EXPECT_EQ(innerWidthFor(*medium, 5), Length::tenthsOfMm(1873));  // no such box of mediums
    EXPECT_EQ(innerWidthFor(*findPublishedFrame("LANG-F-DEEP"), 5), Length::tenthsOfMm(1905));
    EXPECT_EQ(innerWidthFor(*findPublishedFrame("BS-F-SN4"), 11), Length::mm(385));  // by end bars
    PublishedFrame own;
    own.id = "OWN";
    EXPECT_FALSE(innerWidthFor(own, 10));
}

TEST(Catalogue, TheHoneyTablesShippedAreThoseReckonedWith) {
    const ResourceTable index("refractive_index");
    ASSERT_EQ(index.rows().size(), refractiveIndexTable.size());
    for (std::size_t i = 0; i < refractiveIndexTable.size(); ++i) {
        const auto row = index.rows()[i];
        EXPECT_EQ(row.number("refractive_index_20c"), refractiveIndexTable[i].at) << i;
        EXPECT_EQ(row.number("water_percent"), refractiveIndexTable[i].value) << i;
        EXPECT_FALSE(row.text("source").empty()) << i;
    }
    const ResourceTable density("honey_density");
    ASSERT_EQ(density.rows().size(), honeyDensityTable.size());
    for (std::size_t i = 0; i < honeyDensityTable.size(); ++i) {
        const auto row = density.rows()[i];
        EXPECT_EQ(row.number("water_percent"), honeyDensityTable[i].at) << i;
        EXPECT_EQ(row.number("kg_per_l_20c"), honeyDensityTable[i].value) << i;
        EXPECT_FALSE(row.text("source").empty()) << i;
    }
}

}  // namespace
}  // namespace combwright
