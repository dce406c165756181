// Jars by keyboard: filled with what it takes shown first, weighed, counted, out of the door, a
// complaint that holds the honey, kinds, prices and packing.
#include "ui/honey_room/jars_page.h"

#include "core/storage/queries/vessel_holds.h"
#include "tests/ui/honey_room/goods_in_room.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class JarsInRoom : public test::GoodsInRoom {
  protected:
    void open(const std::string& more = {}) {
        page = openRoom<JarsPage>(GoTo::Page::Jars, more);
        ASSERT_NE(page, nullptr);
    }
    std::string know(std::size_t row = 0) const { return cell(page->fillingsTable(), row, 5); }
    JarsPage* page = nullptr;
};

// 29 × 454 + 3 × 227 = 13,166 + 681 = 13,847; with 120 lost 13,967; 14,100 − 13,967 = 133. Lids 100
// − 32 = 68, jars 200 − 29 = 171.
TEST_F(JarsInRoom, FillingShowsWhatItTakesBeforeItIsKept) {
    open();
    inForm([&](QDialog& form) {
        choose(form, "honey", QStringLiteral("B1"));
        fill(form, "jars", "29x454 g, 3x227 g");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("13.847 kg in jars"));
        EXPECT_THAT(said(form, "outlook"), HasSubstr("253 g stay in it"));
        fill(form, "lost", "120 g");
        const std::string outlook = said(form, "outlook");
        EXPECT_THAT(outlook, HasSubstr("120 g lost: 13.967 kg out of B1"));
        EXPECT_THAT(outlook, HasSubstr("133 g stay in it"));
        EXPECT_THAT(outlook, HasSubstr("Empty 454 g jar: 171 are left"));
        EXPECT_THAT(outlook, HasSubstr("Lids 63 mm: 68 are left"));
        EXPECT_THAT(outlook, HasSubstr("lot L27-1-1"));
        EXPECT_THAT(outlook, HasSubstr("10 Jan 2030")) << "24 months by the keeper's rule";
        EXPECT_THAT(said(form, "caution"), Not(HasSubstr("Not ready")));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_F);
    ASSERT_EQ(read().all<Bottling>().size(), 1U);
    EXPECT_EQ(read().all<Bottling>()[0].code.text(), "L27-1-1");
    EXPECT_EQ(cell(page->fillingsTable(), 0, 0), "L27-1-1");
    EXPECT_EQ(cell(page->fillingsTable(), 0, 4), "29\n3");
    EXPECT_EQ(cell(page->shelf(), 0, 1), "29");
    EXPECT_EQ(cell(page->shelf(), 0, 3), "171 jars, 68 lids");
    EXPECT_THAT(plain(page->cardText()), HasSubstr("120 g of it not in jars"));
    comeBack();
    EXPECT_EQ(focus(), &page->shelf()) << "the keys go on where they were";
}

TEST_F(JarsInRoom, ALineAKindIsTheSameAndHoneyThatIsNotReadyIsQuestioned) {
    open();
    inForm([&](QDialog& form) {
        choose(form, "honey", QStringLiteral("B2"));
        EXPECT_THAT(said(form, "caution"), HasSubstr("Not ready, B2"));
        EXPECT_THAT(said(form, "caution"), HasSubstr("of water must go"));
        fill(form, "jars_1", "31");
        EXPECT_THAT(said(form, "caution"), HasSubstr("174 g more than is written down"))
            << "31 × 454 = 14,074 of 13,900";
        enter(form);
        EXPECT_TRUE(form.isVisible()) << "more than there is stays typed";
        fill(form, "jars_1", "150");
        EXPECT_THAT(said(form, "caution"), HasSubstr("Lids 63 mm: 50 too few"));
        fill(form, "jars_1", "30");
        fill(form, "jars_2", "1");
        fill(form, "code", "AUTUMN-1");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("lot AUTUMN-1"));
        enter(form);
    });
    key(Qt::Key_F);
    ASSERT_EQ(read().all<BottledJars>().size(), 2U);
    EXPECT_EQ(read().all<BottledJars>()[0].count, Count(30));
    EXPECT_EQ(read().all<Bottling>()[0].code.text(), "AUTUMN-1");
}

// Of 454 g a jar may lack 3 % = 13.62, rounded up 13.7 g (76/211/EEC); 440 lacks 14.
TEST_F(JarsInRoom, ASampleIsHeldAgainstTheLabel) {
    open(test::sixtyJars);
    inForm([&](QDialog& form) {
        fill(form, "weighed", "456, 440, 452");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("3 weighed, mean 449.3 g, lightest 440 g"));
        EXPECT_THAT(said(form, "outlook"), HasSubstr("the mean is short of the label"));
        EXPECT_THAT(said(form, "outlook"), HasSubstr("lacks more than the 13.7 g it may"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_W);
    EXPECT_EQ(read().all<BottledJars>()[0].weighed, Count(3));
    EXPECT_THAT(know(), HasSubstr("454 g jar: mean too light"));
    EXPECT_THAT(plain(page->cardText()), HasSubstr("lightest 440 g"));
}

TEST_F(JarsInRoom, OutOfTheDoorNeverBelowNothing) {
    open(test::sixtyJars);
    inForm([&](QDialog& form) {
        fill(form, "goods", "12 454 g");
        EXPECT_THAT(said(form, "outlook"), HasSubstr("48 on the shelf then"));
        EXPECT_THAT(said(form, "outlook"), HasSubstr("Takings 102.00 €"));
        fill(form, "place", "gate");
        expectReachable(form);
        fill(form, "goods", "61 454 g");
        EXPECT_THAT(said(form, "caution"), HasSubstr("1 more than stand on the shelf"));
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty());
        fill(form, "goods", "12 454 g");
        enter(form);
    });
    key(Qt::Key_O);
    ASSERT_EQ(read().all<GoingOut>().size(), 1U);
    EXPECT_EQ(read().all<GoingOut>()[0].each, Money::hundredths(850));
    EXPECT_EQ(cell(page->shelf(), 0, 1), "48");
    EXPECT_THAT(plain(page->cardText()), HasSubstr("sold 12 × 454 g jar, gate"));
    inForm([&](QDialog& form) {
        choose(form, "how", QStringLiteral("given"));
        EXPECT_TRUE(form.findChild<QLineEdit*>("price")->isHidden());
        fill(form, "out_1", "2");
        enter(form);
    });
    key(Qt::Key_O);
    EXPECT_EQ(cell(page->shelf(), 0, 1), "46");
    inForm([&](QDialog& form) {
        fill(form, "shelf_1", "45");
        fill(form, "reason", "one cracked");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_C);
    EXPECT_EQ(cell(page->shelf(), 0, 1), "45");
}

// 14,100 − 5,000 = 9,100; 14.2 kg are 100 g too much.
TEST_F(JarsInRoom, HoneyGoesInBulkByItsMass) {
    open();
    inForm([&](QDialog& form) {
        choose(form, "honey", QStringLiteral("B1"));
        fill(form, "mass", "14.2");
        EXPECT_THAT(said(form, "caution"), HasSubstr("100 g more than is written down"));
        fill(form, "mass", "5");
        EXPECT_EQ(said(form, "outlook"), "9.100 kg stay in B1 of 27-1.");
        fill(form, "price", "40");
        fill(form, "buyer", "bakery");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_U);
    ASSERT_EQ(read().all<GoingOut>().size(), 1U);
    EXPECT_EQ(read().all<GoingOut>()[0].each, Money::hundredths(4'000));
    EXPECT_EQ(vesselLedger(read(), vesselOf(read().all<GoingOut>()[0]), today).left,
              Mass::grams(9'100));
}

TEST_F(JarsInRoom, AComplaintHoldsTheHoneyAndAHeldJarIsQuestioned) {
    open(test::sixtyJars);
    inForm([&](QDialog& form) {
        choose(form, "filling", QStringLiteral("L27-1-1"));
        fill(form, "what", "bubbles under the lid");
        fill(form, "who", "Ann");
        choose(form, "then", QStringLiteral("that is all"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_K);
    ASSERT_EQ(read().all<Complaint>().size(), 1U);
    const auto holds = read().all<Hold>();
    ASSERT_EQ(holds.size(), 1U);
    EXPECT_EQ(holds[0].why, HoldWhy::Complaint);
    EXPECT_TRUE(holds[0].bucket) << "the honey, not only the jars";
    EXPECT_THAT(know(), HasSubstr("held since"));
    EXPECT_THAT(plain(page->cardText()), HasSubstr("bubbles under the lid, Ann. Open."));
    EXPECT_THAT(page->head().under.toStdString(), HasSubstr("1 filling held back"));

    inForm([&](QDialog& form) {
        fill(form, "goods", "1 454 g");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("held"));
        fill(form, "reason_held", "for the laboratory");
        enter(form);
    });
    key(Qt::Key_O);
    EXPECT_EQ(read().all<GoingOut>().size(), 1U);

    inForm([&](QDialog& form) {
        fill(form, "became", "froth from filling");
        enter(form);
    });
    key(Qt::Key_X);
    EXPECT_TRUE(read().all<Complaint>()[0].closed);
    EXPECT_THAT(plain(page->cardText()), HasSubstr("froth from filling"));
}

TEST_F(JarsInRoom, AFillingIsHeldAndReleasedByOneKey) {
    open(test::sixtyJars);
    inForm([&](QDialog& form) {
        fill(form, "note", "a lid stands up");
        enter(form);
    });
    key(Qt::Key_H);
    ASSERT_EQ(read().all<Hold>().size(), 1U);
    EXPECT_TRUE(read().all<Hold>()[0].bottling);
    EXPECT_THAT(know(), HasSubstr("held since"));
    inForm([&](QDialog& form) {
        fill(form, "grounds", "a dent, three others sound");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_H);
    EXPECT_TRUE(read().all<Hold>()[0].lifted);
    EXPECT_THAT(know(), Not(HasSubstr("held")));
}

TEST_F(JarsInRoom, KindsPricesAndPackingAreWrittenDown) {
    open();
    inForm([&](QDialog& form) {
        fill(form, "name", "pillar candle");
        choose(form, "what", QStringLiteral("candle"));
        EXPECT_TRUE(form.findChild<QLineEdit*>("lid")->isHidden());
        fill(form, "price", "9,5");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_N);
    ASSERT_EQ(page->shelf().wordsRows().size(), 4U);
    EXPECT_EQ(cell(page->shelf(), 3, 2), "9.50 €");
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>("price_1")->text(), QStringLiteral("8.50"));
        fill(form, "price_1", "9");
        fill(form, "price_4", "much");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("is no amount of money"));
        fill(form, "price_4", "9.50");
        enter(form);
    });
    key(Qt::Key_P);
    EXPECT_EQ(cell(page->shelf(), 0, 2), "9.00 €");
    EXPECT_EQ(cell(page->shelf(), 3, 2), "9.50 €");
    inForm([&](QDialog& form) {
        choose(form, "what", QStringLiteral("empty 227"));
        fill(form, "bought", "50");
        enter(form);
    });
    key(Qt::Key_B);
    EXPECT_EQ(cell(page->shelf(), 1, 3), "50 jars, 100 lids");
}

TEST_F(JarsInRoom, WhatIsEmptySaysWhatToDo) {
    page = openRoom<JarsPage>(GoTo::Page::Jars);
    ASSERT_NE(page, nullptr);
    EXPECT_THAT(plain(page->cardText()), HasSubstr("babies"));
    EXPECT_FALSE(named<QPushButton>("jars_page_t", page)->isEnabled()) << "nothing to trace yet";
    EXPECT_FALSE(page->filling());
    EXPECT_EQ(page->sheets().front().page().title, QStringLiteral("Jars and goods"));
}

}  // namespace
}  // namespace combwright
