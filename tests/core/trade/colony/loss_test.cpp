#include "core/trade/colony/loss.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(ColonyLossTest, OneYardHasOneRate) {
    const auto loss = colonyLoss({{3, 12}});
    ASSERT_TRUE(loss);
    EXPECT_DOUBLE_EQ(loss->totalShare, 0.25);
    EXPECT_DOUBLE_EQ(loss->meanShare, 0.25);
    EXPECT_DOUBLE_EQ(colonyLoss({{0, 7}, {0, 5}})->totalShare, 0);
    EXPECT_DOUBLE_EQ(colonyLoss({{7, 7}, {5, 5}})->meanShare, 1);
}

TEST(ColonyLossTest, TheLargeYardDecidesTheTotalNotTheMean) {
    const auto loss = colonyLoss({{4, 4}, {0, 96}});
    ASSERT_TRUE(loss);
    EXPECT_DOUBLE_EQ(loss->totalShare, 0.04);
    EXPECT_DOUBLE_EQ(loss->meanShare, 0.5);
}

TEST(ColonyLossTest, Refuses) {
    struct Slip {
        std::vector<YardLoss> yards;
        Code code;
        const char* field;
    };
    for (const Slip& slip : {Slip{{}, Code::Missing, "yards"},
                             Slip{{{1, 4}, {0, 0}}, Code::OutOfRange, "yards[1].at_risk"},
                             Slip{{{0, -4}}, Code::OutOfRange, "yards[0].at_risk"},
                             Slip{{{0, 1'000'001}}, Code::OutOfRange, "yards[0].at_risk"},
                             Slip{{{-1, 4}}, Code::Negative, "yards[0].dead"},
                             Slip{{{1, 4}, {1, 4}, {5, 4}}, Code::TooMany, "yards[2].dead"}}) {
        const auto loss = colonyLoss(slip.yards);
        ASSERT_FALSE(loss) << slip.field;
        EXPECT_EQ(loss.error().code, slip.code) << slip.field;
        EXPECT_EQ(loss.error().field, slip.field);
    }
}

}  // namespace
}  // namespace combwright
