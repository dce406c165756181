// Numbers as they are typed on both sides of the decimal comma; what could mean two things is not
// guessed.
#include "core/words/figures.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(TypedNumbers, AreReadWithPointOrComma) {
    const struct {
        const char* typed;
        double meant;
    } rows[] = {
        {"0", 0},
        {"7", 7},
        {"174", 174},
        {"17.4", 17.4},
        {"17,4", 17.4},
        {"  17,4 ", 17.4},
        {"1240", 1240},
        {"1.24", 1.24},
        {"1.2400", 1.24},
        {"0.240", 0.24},
        {"0,240", 0.24},
        {"1240.5", 1240.5},
        {"1234.567", 1234.567},
        {"007", 7},
        {"999999999", 999999999},
    };
    for (const auto& row : rows) {
        const auto number = typedNumber(QString::fromUtf8(row.typed));
        ASSERT_TRUE(number) << row.typed;
        EXPECT_DOUBLE_EQ(*number, row.meant) << row.typed;
    }
}

TEST(TypedNumbers, ThatAreNoneOrCouldBeTwoAreRefused) {
    for (const char* typed :
         {"1.240", "1,240",   "12.400",     "999,999",   "1.000", "",        " ",
          "x",     "17,4 kg", "17 4",       "-3",        "−3",    "+3",      "1e3",
          ".5",    ",5",      "5.",         "5,",        "1.2.3", "1,234.5", "1'240",
          "nan",   "inf",     "9999999999", "1.2345678", "½",     "١٧",      "0x10"})
        EXPECT_FALSE(typedNumber(QString::fromUtf8(typed))) << typed;
}

TEST(Kilograms, AreAsFineAsTheyAreKnown) {
    const struct {
        double grams;
        How how;
        const char* shown;
    } rows[] = {
        {12345, How::Weighed, "12.3"}, {12345, How::ByDifference, "12.3"},
        {12345, How::ByEye, "12"},     {12345, How::Assumed, "12"},
        {12345, How::Unknown, "12"},   {0, How::Weighed, "0.0"},
        {0, How::ByEye, "0"},          {10650, How::Weighed, "10.6"},
        {10750, How::Weighed, "10.8"}, {10651, How::Weighed, "10.7"},
        {12500, How::ByEye, "12"},     {13500, How::ByEye, "14"},
        {499, How::ByEye, "0"},
    };
    for (const auto& row : rows)
        EXPECT_EQ(kilogramsText(row.grams, row.how).toStdString(), row.shown) << row.grams << " g";
}

}  // namespace
}  // namespace combwright
