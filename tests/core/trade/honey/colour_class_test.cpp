#include "core/trade/honey/colour_class.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(ColourClass, EachEndBelongsToTheLighterClass) {
    for (const ColourRow& row : colourRows()) {
        if (!row.toPfundMm) continue;
        EXPECT_EQ(*colourClass(*row.toPfundMm), row.name);
        EXPECT_NE(*colourClass(std::nextafter(*row.toPfundMm, 1e9)), row.name);
        EXPECT_EQ(*colourClassOfDensity(*row.toDensity), row.name);
        EXPECT_NE(*colourClassOfDensity(std::nextafter(*row.toDensity, 1e9)), row.name);
    }
    EXPECT_EQ(*colourClass(0), "Water White");
    EXPECT_EQ(*colourClass(140), "Dark Amber");
}

TEST(ColourClass, Refusals) {
    EXPECT_EQ(colourClass(-0.1).error().code, Code::Negative);
    EXPECT_EQ(colourClass(std::nan("")).error().field, "pfund_mm");
    EXPECT_EQ(colourClassOfDensity(-1).error().field, "optical_density");
    EXPECT_EQ(pfundOfAbsorbance(0.1).error().field, "absorbance");
    EXPECT_NEAR(*pfundOfAbsorbance(0.2), 35.578, 1e-9);
}

}  // namespace
}  // namespace combwright
