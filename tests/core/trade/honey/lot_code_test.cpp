#include "core/trade/honey/lot_code.h"

#include <gtest/gtest.h>

#include <set>

namespace combwright {
namespace {

TEST(LotCode, YearRunAndFilling) {
    EXPECT_EQ(*lotCode({}, {2027, 4, 2, {}}), "L27-4-2");
    EXPECT_EQ(*lotCode({LotCodeRule::From::YearRunFilling, "", false, '/'}, {2027, 12, 1, {}}),
              "2027/12/1");
}

TEST(LotCode, TheBestBeforeDay) {
    const LotCodeRule rule{LotCodeRule::From::BestBeforeDay, "L", true, '.'};
    EXPECT_EQ(*lotCode(rule, {0, 0, 0, parseDay("2029-03-15")}), "L2029.03.15");
    EXPECT_EQ(lotCode(rule, {2027, 4, 2, {}}).error(), (Refusal{Code::Missing, "best_before"}));
}

TEST(LotCode, UnequalPartsHaveUnequalCodes) {
    std::set<std::string> codes;
    for (int year = 2020; year < 2030; ++year)
        for (int run = 1; run <= 25; ++run)
            for (int filling = 1; filling <= 12; ++filling)
                EXPECT_TRUE(codes.insert(*lotCode({}, {year, run, filling, {}})).second);
}

TEST(LotCode, Refusals) {
    EXPECT_EQ(lotCode({}, {27, 4, 2, {}}).error().field, "year");
    EXPECT_EQ(lotCode({}, {2027, 0, 2, {}}).error().field, "run");
    EXPECT_EQ(lotCode({}, {2027, 1, 0, {}}).error().field, "filling");
    LotCodeRule rule;
    rule.prefix = "L ";
    EXPECT_EQ(lotCode(rule, {2027, 1, 1, {}}).error().field, "prefix");
    rule.prefix = "TOOLONGBYONE";
    EXPECT_EQ(lotCode(rule, {2027, 1, 1, {}}).error().code, Code::NotAChoice);
    rule = {};
    rule.separator = '1';
    EXPECT_EQ(lotCode(rule, {2027, 1, 1, {}}).error().field, "separator");
}

}  // namespace
}  // namespace combwright
