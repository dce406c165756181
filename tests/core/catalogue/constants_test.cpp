#include "core/catalogue/constants.h"

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "core/catalogue/catalogue.h"
#include "core/trade/extractor/heft.h"
#include "core/trade/frames/frame_honey.h"
#include "core/trade/honey/viscosity.h"
#include "core/trade/storeroom/comb_age.h"
#include "core/trade/storeroom/comb_wax.h"
#include "core/trade/storeroom/fit.h"
#include "core/trade/storeroom/freezer.h"
#include "core/trade/storeroom/stack_load.h"

namespace combwright {
namespace {

TEST(PublishedConstants, EachHasOneNameAndSaysWhereItComesFrom) {
    std::set<std::string> names;
    const std::regex name("[a-z][a-z0-9]*(_[a-z0-9]+)*");
    const std::regex key("S[0-9]+b?(?![0-9a-z])");
    for (const PublishedConstant& each : publishedConstants()) {
        SCOPED_TRACE(each.name);
        EXPECT_TRUE(names.insert(each.name).second);
        EXPECT_TRUE(std::regex_match(each.name, name));
        EXPECT_EQ(findPublishedConstant(each.name), &each);
        const bool printed = each.source.starts_with("printed in ");
        const bool computed = each.source.starts_with("computed");
        const bool customary = each.source.starts_with("common practice, no source");
        const bool assumed = each.source.starts_with("planning assumption, no source");
        EXPECT_EQ(printed + computed + customary + assumed, 1) << each.source;
        EXPECT_EQ(each.isAssumption(), assumed);
        for (auto it = std::sregex_iterator(each.source.begin(), each.source.end(), key);
             it != std::sregex_iterator(); ++it)
            EXPECT_NE(findSource(it->str()), nullptr) << it->str();
        if (each.name.ends_with("_share")) {
            EXPECT_GT(each.value, 0.0);
            EXPECT_LT(each.value, 1.0);
            EXPECT_TRUE(each.unit.empty());
        }
        if (each.name.ends_with("_g")) {
            EXPECT_EQ(each.unit, "g");
        }
        if (each.publishedSd) {
            EXPECT_GT(*each.publishedSd, 0.0);
        }
    }
}

TEST(PublishedConstants, TheHoneyOfAFrameStartsFromThem) {
    const HoneyRates rates;
    EXPECT_DOUBLE_EQ(findPublishedConstant("full_frame_honey")->value, rates.fullFrameGPerDm2);
    EXPECT_DOUBLE_EQ(findPublishedConstant("crop_spread_share")->value, rates.cropSpreadShare);
    EXPECT_DOUBLE_EQ(findPublishedConstant("comb_spread_share")->value, rates.combSpreadShare);
    EXPECT_DOUBLE_EQ(findPublishedConstant("fill_by_eye")->value, rates.fillByEye);
    EXPECT_DOUBLE_EQ(findPublishedConstant("bee_space")->value, beeSpaceMm);
    EXPECT_DOUBLE_EQ(findPublishedConstant("honey_density")->value, combHoneyDensity);
    EXPECT_DOUBLE_EQ(findPublishedConstant("comb_fill_factor")->value, combFillFactor);
    // The spread of the published figure is the crop's.
    EXPECT_NEAR(*findPublishedConstant("full_frame_honey")->publishedSd,
                rates.fullFrameGPerDm2 * rates.cropSpreadShare, 0.1);
}

TEST(PublishedConstants, TheStoreroomStartsFromThem) {
    struct Pair {
        const char* name;
        double value;
    };
    const Pair pairs[] = {
        {"bee_space_from", BeeSpaceLimits{}.from},
        {"bee_space_to", BeeSpaceLimits{}.to},
        {"bee_space_usual_to", BeeSpaceLimits{}.usualTo},
        {"lug_thickness", lugThicknessMm},
        {"brood_comb_thickness", FaceLimits{}.broodCombMm},
        {"brood_faces_from", FaceLimits{}.from},
        {"brood_faces_to", FaceLimits{}.to},
        {"freezer_fill_share", freezerFillShare},
        {"freezer_pitch", freezerPitchMm},
        {"cells_per_kg_wax", cellsPerKgWax},
        {"honey_per_wax", HoneyForWax{}.likely},
        {"wax_per_medium_comb_g", waxPerMediumCombG},
        {"wax_per_deep_comb_g", waxPerDeepCombG},
        {"comb_cull_share", combCullShare},
        {"comb_flag_years", static_cast<double>(CombLife{}.flagFrom)},
        {"comb_not_for_sale_years", static_cast<double>(CombLife{}.notForSaleFrom)},
        {"careful_lift_g", LiftLimits{}.carefulG},
        {"carry_g", LiftLimits{}.mostG}};
    for (const Pair& each : pairs) {
        const PublishedConstant* constant = findPublishedConstant(each.name);
        ASSERT_NE(constant, nullptr) << each.name;
        EXPECT_DOUBLE_EQ(constant->value, each.value) << each.name;
    }
    // What the range of rendering comes to for one deep comb.
    const CombsToMelt deep{1, 8.71, 90};
    const Between wax = renderingGrams({&deep, 1});
    EXPECT_DOUBLE_EQ(findPublishedConstant("rendered_least_per_deep_comb_g")->value, wax.low);
    EXPECT_DOUBLE_EQ(findPublishedConstant("rendered_most_per_deep_comb_g")->value, wax.high);
}

TEST(PublishedConstants, TheHoneyRoomStartsFromThem) {
    EXPECT_DOUBLE_EQ(findPublishedConstant("heft_doubt_share")->value, heftDoubtShare);
    // The figure to plan with is for a honey the strainer can be reckoned on from.
    EXPECT_TRUE(honeyViscosity(findPublishedConstant("strain_at_water_percent")->value,
                               findPublishedConstant("strain_at_c")->value));
    // Two loads of twelve frames of 1.36 kg are 33 kg: under the cage, three are not.
    EXPECT_GT(findPublishedConstant("drum_kg")->value, 24 * 1.36);
    EXPECT_LT(findPublishedConstant("drum_kg")->value, 36 * 1.36);
}

TEST(PublishedConstants, PlansHaveTheirDefaults) {
    struct Default {
        const char* name;
        double value;
    };
    const Default defaults[] = {{"uncap_min_per_frame", 1.5},
                                {"spin_min_per_load", 15},
                                {"set_up_min", 45},
                                {"wash_min", 90},
                                {"strain_kg_per_h", 40},
                                {"spare_share", 0.1},
                                {"min_capped_share", 0.8},
                                {"max_water_percent", 18},
                                {"mite_line_per_100", 2},
                                {"look_after_days", 14},
                                {"test_frame_after_days", 21},
                                {"act_after_days", 28},
                                {"balance_grade", 16},
                                {"rotor_kg", 60},
                                {"bucket_g", 13600},
                                {"winter_need_g", 25000}};
    for (const Default& each : defaults) {
        const PublishedConstant* constant = findPublishedConstant(each.name);
        ASSERT_NE(constant, nullptr) << each.name;
        EXPECT_DOUBLE_EQ(constant->value, each.value) << each.name;
    }
    EXPECT_EQ(findPublishedConstant("no_such_constant"), nullptr);
}

}  // namespace
}  // namespace combwright
