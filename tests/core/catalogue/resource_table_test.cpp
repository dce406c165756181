#include "core/catalogue/resource_table.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace combwright {
namespace {

TEST(ResourceTable, ABlankCellIsNothingNotZero) {
    const ResourceTable table("frame_kinds");
    const auto bar = table.rows().back();
    EXPECT_EQ(bar.text("id"), "KTBH-BAR");
    EXPECT_FALSE(bar.number("comb_area_one_side_dm2"));
    EXPECT_FALSE(bar.length("side_bar_h_mm"));
    EXPECT_EQ(bar.length("top_bar_width_mm"), Length::mm(35));
}

TEST(ResourceTable, MistakesOfTheProgramAreThrown) {
    EXPECT_THROW(ResourceTable("no_such_table"), std::logic_error);
    const ResourceTable table("frame_kinds");
    EXPECT_THROW(table.rows().front().text("no_such_column"), std::logic_error);
    EXPECT_THROW(table.rows().front().number("id"), std::logic_error);
}

}  // namespace
}  // namespace combwright
