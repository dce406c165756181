// A fair by keyboard: packed with what there is and what went last time, at night only what came
// home typed, sold and takings shown while one types, cash against them, the year below.
#include "ui/honey_room/fair_page.h"

#include "tests/ui/honey_room/goods_in_room.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class FairInRoom : public test::GoodsInRoom {
  protected:
    void open(const std::string& more = {}) {
        page = openRoom<FairPage>(
            GoTo::Page::Fair,
            std::string(test::sixtyJars) +
                R"({"do":"count-goods","on":"2027-09-01","goods_kind":"skep candle","count":20}
)" + more);
        ASSERT_NE(page, nullptr);
    }
    FairPage* page = nullptr;
};

// 40 packed − 9 home − 2 broken − 1 given = 28 sold at 8.50 = 238.00; 12 − 3 = 9 candles at 6 =
// 54.00; together 292.00. 356 − 30 change = 326, that is 34.00 more.
TEST_F(FairInRoom, FortyOutNineHomeTwoBrokenOneGivenAreTwentyEightSold) {
    open();
    EXPECT_EQ(page->head().actionKey, QStringLiteral("P"));
    inForm([&](QDialog& form) {
        fill(form, "fair_name", "Winter market");
        fill(form, "place", "Church hall");
        fill(form, "change", "30");
        EXPECT_THAT(said(form, "note_1"), HasSubstr("60 on the shelf"));
        fill(form, "packed_1", "61");
        EXPECT_THAT(said(form, "caution"), HasSubstr("454 g jar: only 60 stand on the shelf"));
        fill(form, "packed_1", "40");
        fill(form, "packed_3", "12");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_P);
    ASSERT_EQ(read().all<Fair>().size(), 1U);
    ASSERT_TRUE(page->sheet());
    EXPECT_EQ(page->sheet()->packed, 52);
    EXPECT_EQ(page->head().big.figure, QStringLiteral("52"));
    EXPECT_EQ(page->head().actionKey, QStringLiteral("C"));

    inForm([&](QDialog& form) {
        fill(form, "home_0", "9, 2 broken, 1 given");
        EXPECT_EQ(said(form, "sold_0"), "28 sold, 238.00 €");
        EXPECT_THAT(said(form, "sum"), HasSubstr("1 kind is not counted yet"));
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("how many came home"));
        fill(form, "home_1", "13");
        EXPECT_THAT(said(form, "sold_1"), HasSubstr("12"));
        fill(form, "home_1", "3");
        EXPECT_EQ(said(form, "sold_1"), "9 sold, 54.00 €");
        fill(form, "cash", "356");
        EXPECT_THAT(said(form, "sum"), HasSubstr("37 sold, 292.00 €"));
        EXPECT_THAT(said(form, "sum"), HasSubstr("326.00 €"));
        EXPECT_THAT(said(form, "sum"), HasSubstr("34.00 € more than what was sold"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_C);
    ASSERT_TRUE(page->sheet());
    EXPECT_TRUE(page->sheet()->fair.closed);
    EXPECT_EQ(page->sheet()->rows[0].sold, 28);
    EXPECT_EQ(cell(page->box(), 0, 5), "28");
    EXPECT_EQ(cell(page->fairsTable(), 0, 5), "34.00 €");
    EXPECT_EQ(page->head().big.figure, QStringLiteral("37"));
    EXPECT_EQ(cell(page->year(), 0, 1), "28") << "the year's sales, by kind first";
    EXPECT_THAT(page->year().wordsRows().back().cells[5].text.toStdString(), HasSubstr("292.00"));
}

TEST_F(FairInRoom, NextYearBeginsFromWhatRanOut) {
    open(
        R"({"do":"pack-fair","on":"2027-12-10","fair_name":"Advent","goods":"40 454 g, 12 skep at 7","change_money":30}
{"do":"fair-home","on":"2027-12-10","fair":"Advent","home":"0 454 g; 3 skep","cash":400}
)");
    EXPECT_EQ(cell(page->fairsTable(), 0, 3), "49");
    EXPECT_EQ(cell(page->year(), 0, 1), "40") << "in January the year that was";
    key(Qt::Key_Y);
    EXPECT_EQ(page->year().wordsRows().size(), 0U) << "nothing went out in 2028 yet";
    key(Qt::Key_Y);
    EXPECT_EQ(cell(page->year(), 0, 1), "40");
    EXPECT_THAT(plain(page->cardText()), HasSubstr("454 g jar: all 40 sold at Advent"));
    inForm([&](QDialog& form) {
        fill(form, "fair_name", "Advent");
        EXPECT_THAT(said(form, "before"), HasSubstr("Ran out then, so take more: 454 g jar."));
        EXPECT_THAT(said(form, "note_1"),
                    HasSubstr("20 on the shelf; last time 40 packed, 40 sold, ran out"));
        EXPECT_THAT(said(form, "note_3"), HasSubstr("last time 12 packed, 9 sold"));
        fill(form, "packed_1", "20");
        enter(form);
    });
    key(Qt::Key_P);
    ASSERT_EQ(read().all<Fair>().size(), 2U);
    EXPECT_EQ(page->sheet()->fair.on, today) << "the new one is in front";
    EXPECT_EQ(cell(page->box(), 0, 8), "40 packed, 40 sold");
    key(Qt::Key_Down);
    EXPECT_EQ(page->sheet()->sold, 49) << "arrows go to the fair before";
    EXPECT_EQ(page->sheets()[0].page().title, QStringLiteral("Advent"));
}

TEST_F(FairInRoom, WhatIsTypedAtNightIsStillThereTomorrow) {
    open(R"({"do":"pack-fair","on":"2028-01-10","fair_name":"Gate","goods":"10 454 g"}
)");
    inForm([&](QDialog& form) {
        fill(form, "home_0", "4, 1 broken");
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_C);
    EXPECT_FALSE(read().all<Fair>()[0].closed);
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("home_0")->text(), QStringLiteral("4, 1 broken"));
        EXPECT_EQ(said(form, "sold_0"), "5 sold, 42.50 €");
        enter(form);
    });
    key(Qt::Key_C);
    EXPECT_EQ(page->sheet()->sold, 5);
    const std::size_t before = steps();
    key(Qt::Key_C);
    EXPECT_EQ(steps(), before) << "over is over";
}

}  // namespace
}  // namespace combwright
