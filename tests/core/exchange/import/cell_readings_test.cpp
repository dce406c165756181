#include "core/exchange/import/cell_readings.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

using Figure = std::optional<double>;

TEST(NumberInCell, ReadsByEitherSign) {
    struct Case {
        const char* cell;
        Figure point;
        Figure comma;
    };
    const Figure none;
    const Case cases[] = {
        {"12", 12.0, 12.0},
        {"12.5", 12.5, none},
        {"12,5", none, 12.5},
        {"1,240", 1240.0, 1.24},
        {"1.240", 1.24, 1240.0},
        {"1,240.5", 1240.5, none},
        {"1.240,5", none, 1240.5},
        {"1,240,000", 1240000.0, none},
        {"1.240.000", none, 1240000.0},
        {"0,240", none, 0.24},
        {"0.240", 0.24, none},
        {"1 240", 1240.0, 1240.0},
        {"1\xC2\xA0"
         "240,5",
         none, 1240.5},
        {"1'240.5", 1240.5, none},
        {"12,40", none, 12.4},
        {"1,2400", none, 1.24},
        {"-18", -18.0, -18.0},
        {"\xE2\x88\x92"
         "18",
         -18.0, -18.0},
        {".5", 0.5, none},
        {"1,24,000", none, none},
        {"1e3", none, none},
        {"0x10", none, none},
        {"nan", none, none},
        {"", none, none},
        {"12.", none, none},
        {"€ 8.50", 8.5, none},
        {"8,50 €", none, 8.5},
    };
    for (const Case& each : cases) {
        const NumberInCell found = numberInCell(each.cell);
        EXPECT_EQ(found.byPoint, each.point) << each.cell;
        EXPECT_EQ(found.byComma, each.comma) << each.cell;
    }
    EXPECT_TRUE(numberInCell("1,240").isAmbiguous());
    EXPECT_FALSE(numberInCell("12").isAmbiguous());
    EXPECT_EQ(numberInCell("41.2 kg").unit, "kg");
    EXPECT_EQ(numberInCell("41.2 kg").byPoint, 41.2);
}

TEST(DayInCell, ReadsEitherOrder) {
    struct Case {
        const char* cell;
        const char* dayFirst;
        const char* monthFirst;
    };
    const Case cases[] = {
        {"2027-04-03", "2027-04-03", "2027-04-03"},
        {"2027/4/3", "2027-04-03", "2027-04-03"},
        {"3/4/2027", "2027-04-03", "2027-03-04"},
        {"3-4-2027", "2027-04-03", "2027-03-04"},
        {"3.4.2027", "2027-04-03", "2027-04-03"},
        {"23/4/2027", "2027-04-23", ""},
        {"4/23/2027", "", "2027-04-23"},
        {"29/2/2027", "", ""},
        {"2027-02-29", "", ""},
        {"3/4/27", "", ""},
        {"2027-04-03T14:05:00Z", "2027-04-03", "2027-04-03"},
        {"2027-04-03 noon", "", ""},
        {"April", "", ""},
        {"2027", "", ""},
    };
    for (const Case& each : cases) {
        const DayInCell found = dayInCell(each.cell);
        EXPECT_EQ(found.dayFirst ? isoText(*found.dayFirst) : "", each.dayFirst) << each.cell;
        EXPECT_EQ(found.monthFirst ? isoText(*found.monthFirst) : "", each.monthFirst) << each.cell;
    }
    EXPECT_TRUE(dayInCell("3/4/2027").isAmbiguous());
    EXPECT_FALSE(dayInCell("4/4/2027").isAmbiguous());
    EXPECT_TRUE(dayInCell("3/4/27").shortYear);
    EXPECT_EQ(dayInCell("2027-04-03 06:30").minute, 390);
    EXPECT_EQ(dayInCell("4/23/2027 6:30 PM").minute, 18 * 60 + 30);
}

TEST(ColumnSays, OneWayOnlyWhereItsCellsAgree) {
    const auto numbers = [](std::initializer_list<const char*> cells) {
        ColumnSays says;
        for (const char* cell : cells) says.hear(numberInCell(cell));
        return says.decimal();
    };
    EXPECT_EQ(numbers({"1,240", "12,5"}), DecimalSign::Comma);
    EXPECT_EQ(numbers({"1.240", "1,240.5"}), DecimalSign::Point);
    EXPECT_EQ(numbers({"1,240", "7"}), std::nullopt);
    EXPECT_EQ(numbers({"12,5", "12.5", "1,240"}), std::nullopt);
    const auto days = [](std::initializer_list<const char*> cells) {
        ColumnSays says;
        for (const char* cell : cells) says.hear(dayInCell(cell));
        return says.days();
    };
    EXPECT_EQ(days({"3/4/2027", "23/4/2027"}), DayOrder::DayFirst);
    EXPECT_EQ(days({"3/4/2027", "4/23/2027"}), DayOrder::MonthFirst);
    EXPECT_EQ(days({"3/4/2027", "5/6/2027"}), std::nullopt);
    EXPECT_EQ(days({"23/4/2027", "4/23/2027"}), std::nullopt);
}

}  // namespace
}  // namespace combwright
