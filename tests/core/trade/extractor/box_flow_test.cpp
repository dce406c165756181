#include "core/trade/extractor/box_flow.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace combwright {
namespace {

constexpr auto wholeLoads = OpenBoxCount::WholeLoads;
constexpr auto frameByFrame = OpenBoxCount::FrameByFrame;

/// Loads of four places from boxes named by letters, a dot for an empty place; frames are numbered
/// as they stand.
struct FlowCase {
    explicit FlowCase(const std::vector<std::string>& letters,
                      std::vector<BoxFlow::Box> boxes = std::vector<BoxFlow::Box>(6),
                      std::size_t standing = 0)
        : flow({}, {}, 0) {
        std::vector<std::size_t> boxOf;
        for (const std::string& load : letters) {
            loads.emplace_back();
            for (const char box : load) {
                if (box == '.') {
                    loads.back().push_back(std::nullopt);
                    continue;
                }
                loads.back().emplace_back(boxOf.size());
                boxOf.push_back(static_cast<std::size_t>(box - 'a'));
            }
        }
        std::size_t met = 0;
        for (const std::size_t box : boxOf) met = std::max(met, box + 1);
        boxes.resize(met);
        flow = BoxFlow(std::move(boxes), std::move(boxOf), standing);
    }
    BoxFlow flow;
    std::vector<SpinPlaces> loads;
};

TEST(BoxFlow, BoxAfterBoxIsOneAtATimeFrameByFrame) {
    const FlowCase day({"aaab", "bbcc", "cdd."});
    EXPECT_EQ(day.flow.peak(day.loads, frameByFrame), 1U);
    EXPECT_EQ(day.flow.peak(day.loads, wholeLoads), 2U);
    EXPECT_EQ(day.flow.spread(day.loads), 1U + 2U + 2U + 1U);
}

TEST(BoxFlow, ABoxLeftOpenCountsInEveryLoadItWaitsThrough) {
    const FlowCase day({"aaab", "cccc", "bbb."});
    EXPECT_EQ(day.flow.peak(day.loads, wholeLoads), 2U);
    EXPECT_EQ(day.flow.peak(day.loads, frameByFrame), 2U);
    EXPECT_EQ(day.flow.spread(day.loads), 1U + 3U + 1U);
}

TEST(BoxFlow, SeveralBoxesBegunInOneLoad) {
    const FlowCase day({"abcd", "abcd"});
    EXPECT_EQ(day.flow.peak(day.loads, wholeLoads), 4U);
    EXPECT_EQ(day.flow.peak(day.loads, frameByFrame), 4U);
    const FlowCase small({"abcd"});
    EXPECT_EQ(small.flow.peak(small.loads, wholeLoads), 4U);
    EXPECT_EQ(small.flow.peak(small.loads, frameByFrame), 1U);
}

TEST(BoxFlow, BoxesOfOtherGroups) {
    const std::vector<BoxFlow::Box> boxes{{true, false}, {false, true}};
    const FlowCase day({"aab.", "bb.."}, boxes, 1);
    EXPECT_EQ(day.flow.peak(day.loads, wholeLoads), 2U + 1U);
    EXPECT_EQ(day.flow.peak(day.loads, frameByFrame), 1U + 1U);
    const FlowCase badly({"bbb.", "aab."}, boxes, 1);
    EXPECT_EQ(badly.flow.peak(badly.loads, frameByFrame), 2U + 1U);
}

TEST(BoxFlow, NothingIsOpenWithoutFrames) {
    const FlowCase day({"...."});
    EXPECT_EQ(day.flow.peak(day.loads, wholeLoads), 0U);
    EXPECT_EQ(day.flow.peak(day.loads, frameByFrame), 0U);
    EXPECT_EQ(day.flow.spread(day.loads), 0U);
}

}  // namespace
}  // namespace combwright
