#include "core/words/labels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <string_view>
#include <vector>

#include "core/actions/action.h"

namespace combwright {
namespace {

std::vector<std::string_view> keysOf(std::span<const Label> labels) {
    std::vector<std::string_view> keys;
    for (const Label& label : labels) keys.emplace_back(label.key);
    return keys;
}

/// The first that does not come behind the one before it: out of order, or there twice.
std::string_view outOfOrder(const std::vector<std::string_view>& keys) {
    const auto wrong = std::adjacent_find(keys.begin(), keys.end(), std::greater_equal<>());
    return wrong == keys.end() ? std::string_view() : wrong[1];
}

TEST(Labels, StandInAlphabeticalOrderAndOnce) {
    EXPECT_EQ(outOfOrder(keysOf(actionLabels())), "");
    EXPECT_EQ(outOfOrder(keysOf(fieldLabels())), "");
    EXPECT_EQ(outOfOrder(keysOf(fieldLabelsFromN())), "");
    EXPECT_LT(std::string_view(fieldLabels().back().key),
              std::string_view(fieldLabelsFromN().front().key));
    EXPECT_EQ(outOfOrder({"bucket", "box"}), "box");
    EXPECT_EQ(outOfOrder({"box", "box"}), "box");
}

TEST(Labels, OfActionsAreInTheirTable) {
    std::vector<std::string_view> actions;
    for (const ActionType& type : actionTypes()) actions.push_back(type.name);
    std::sort(actions.begin(), actions.end());
    EXPECT_EQ(keysOf(actionLabels()), actions);
}

}  // namespace
}  // namespace combwright
