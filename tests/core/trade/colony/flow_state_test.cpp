#include "core/trade/colony/flow_state.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

double pounds(double lb) { return lb * 453.59237; }

TEST(FlowState, FollowsTheMeanNetChange) {
    EXPECT_EQ(flowState(pounds(-0.31)), FlowState::Dearth);
    EXPECT_EQ(flowState(pounds(-0.29)), FlowState::Steady);
    EXPECT_EQ(flowState(0), FlowState::Steady);
    EXPECT_EQ(flowState(pounds(0.31)), FlowState::Light);
    EXPECT_EQ(flowState(pounds(1.99)), FlowState::Light);
    EXPECT_EQ(flowState(pounds(2.01)), FlowState::Good);
    // A scale hive that went from 110 to 150 lb in 8 days: 5 lb a day.
    EXPECT_EQ(flowState(pounds((150.0 - 110.0) / 8)), FlowState::Good);
    EXPECT_EQ(flowState(pounds(5.01)), FlowState::Main);
    // 5 to 10 lb lost in the week after the flow.
    EXPECT_EQ(flowState(pounds(-7.5 / 7)), FlowState::Dearth);
    EXPECT_EQ(key(FlowState::Main), "main");
}

}  // namespace
}  // namespace combwright
