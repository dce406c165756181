// The Honey page by keyboard: what each bucket lacks told in words, its water read and corrected
// openly, told, warmed with what that costs, weighed, held and let go again.
#include "ui/honey_room/honey_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QHeaderView>

#include "core/model/honey/telling.h"
#include "core/storage/queries/constants.h"
#include "tests/ui/honey_room/vessel_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class HoneyOnItsPage : public test::VesselTest {};

TEST_F(HoneyOnItsPage, SaysWhatEachLacksInWords) {
    ASSERT_EQ(page->table().rowCount(), 5);
    walkTo("B4 of 27-2");
    EXPECT_THAT(row(), HasSubstr("ready"));
    EXPECT_THAT(row(), Not(HasSubstr("not yet")));
    walkTo("B3 of 27-2");
    EXPECT_THAT(row(), HasSubstr("not yet"));
    EXPECT_THAT(row(), HasSubstr("19.4 %"));
    // 13,000 · (19.4 − 18) ÷ 82 = 222 g.
    EXPECT_THAT(row(), HasSubstr("222 g of water must go"));
    EXPECT_THAT(card(), HasSubstr("will ferment"));
    walkTo("B5 of 27-2");
    EXPECT_THAT(row(), HasSubstr("its water is not read"));
    EXPECT_EQ(page->table().currentWords()->cells[0].how, 'e');
    EXPECT_EQ(room->head().big.figure, QStringLiteral("62"));
    EXPECT_EQ(room->head().big.how, 'e') << "one of them is by eye";
    EXPECT_EQ(room->head().actionKey, QStringLiteral("R"));
    EXPECT_EQ(room->sheets().front().id, QStringLiteral("honey-store"));
    EXPECT_FALSE(room->explained().empty());
}

TEST_F(HoneyOnItsPage, AsksOpenlyAboutAReadingThatIsNotRight) {
    walkTo("B5 of 27-2");
    inForm([&](QDialog& form) {
        fill(form, "figure", "18.9");
        EXPECT_THAT(said(form, "says"), HasSubstr("nobody can say how far it is off"));
        fill(form, "temperature", "26");
        EXPECT_THAT(said(form, "says"), HasSubstr("stays as read until you take"));
        fill(form, "instrument", "refractometer");
        fill(form, "calibrated", "2 may");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_R);
    ASSERT_EQ(read().all<WaterReading>().size(), 1U) << session.lastTold().toStdString();
    WaterReading reading = read().all<WaterReading>().front();
    EXPECT_EQ(reading.bucket, bucket("B5").id);
    EXPECT_EQ(reading.calibrated, test::day("2027-05-02"));
    EXPECT_FALSE(reading.corrected) << "never in secret";
    EXPECT_THAT(row(), HasSubstr("18.9 %"));
    EXPECT_THAT(row(), HasSubstr("not corrected"));
    EXPECT_EQ(room->head().actionKey, QStringLiteral("C"));
    key(Qt::Key_C);
    reading = read().all<WaterReading>().front();
    ASSERT_TRUE(reading.corrected) << session.lastTold().toStdString();
    // About 0.09 points a degree.
    EXPECT_NEAR(reading.corrected->percent(), 18.9 - 6 * 0.09, 0.1);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("instead of 18.9 %"));
}

TEST_F(HoneyOnItsPage, TakesTheCorrectedFigureWithTheReading) {
    walkTo("B5 of 27-2");
    inForm([&](QDialog& form) {
        fill(form, "figure", "17.0");
        fill(form, "temperature", "12");
        EXPECT_THAT(said(form, "says"), HasSubstr("reads too dry"));
        choose(form, "keep", QStringLiteral("with the corrected"));
        enter(form);
    });
    key(Qt::Key_R);
    const WaterReading reading = read().all<WaterReading>().front();
    ASSERT_TRUE(reading.corrected);
    EXPECT_GT(reading.corrected->percent(), 17.5);
    EXPECT_EQ(reading.water->percent(), 17.0) << "what was read stays";
}

TEST_F(HoneyOnItsPage, RefusesAReadingThatCannotBe) {
    walkTo("B5 of 27-2");
    for (const char* wrong : {"174", "seventeen"}) {
        inForm([&](QDialog& form) {
            fill(form, "figure", wrong);
            enter(form);
            EXPECT_TRUE(form.isVisible());
            EXPECT_FALSE(reason(form).isEmpty()) << wrong;
            form.reject();
        });
        key(Qt::Key_R);
        EXPECT_TRUE(read().all<WaterReading>().empty()) << wrong;
    }
}

TEST_F(HoneyOnItsPage, SaysWhatWarmingCostsBeforeItIsKept) {
    walkTo("B1 of 27-2");
    inForm([&](QDialog& form) {
        EXPECT_THAT(said(form, "caution"), HasSubstr("burn"));
        fill(form, "temperature", "70");
        fill(form, "hours", "24");
        EXPECT_THAT(said(form, "verdict"), HasSubstr("harsh"));
        EXPECT_THAT(said(form, "verdict"), HasSubstr("mg/kg of HMF"));
        fill(form, "temperature", "40");
        fill(form, "hours", "8");
        EXPECT_THAT(said(form, "verdict"), HasSubstr("gentle"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_W);
    ASSERT_EQ(read().all<HoneyStep>().size(), 1U) << session.lastTold().toStdString();
    EXPECT_EQ(read().all<HoneyStep>().front().minutes, Minutes(480));
    EXPECT_THAT(card(), HasSubstr("warmed"));
    inForm([&](QDialog& form) {
        fill(form, "temperature", "55");
        fill(form, "hours", "10");
        EXPECT_THAT(said(form, "verdict"), HasSubstr("been through before"));
        fill(form, "temperature", "");
        fill(form, "hours", "");
        choose(form, "work", QStringLiteral("skimmed"));
        fill(form, "after", "13.4");
        enter(form);
    });
    key(Qt::Key_W);
    EXPECT_EQ(ledger("B1").offByWork, Mass::grams(200));
}

TEST_F(HoneyOnItsPage, TellsAndWeighsAndBuys) {
    walkTo("B2 of 27-2");
    inForm([&](QDialog& form) {
        fill(form, "colour", "amber");
        fill(form, "pfund", "62");
        fill(form, "taste", "malty");
        fill(form, "place", "cellar");
        choose(form, "lidded", QStringLiteral("on"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_D);
    EXPECT_EQ(bucket("B2").traits.taste, "malty") << session.lastTold().toStdString();
    EXPECT_EQ(bucket("B2").traits.pfund, Length::mm(62));
    EXPECT_EQ(bucket("B2").lidded, true);
    EXPECT_THAT(row(), HasSubstr("malty"));
    EXPECT_THAT(row(), HasSubstr("cellar"));
    inForm([&](QDialog& form) {
        fill(form, "left", "0");
        enter(form);
    });
    key(Qt::Key_L);
    EXPECT_TRUE(ledger("B2").empty);
    EXPECT_EQ(page->table().rowCount(), 4) << "it is empty";
    key(Qt::Key_E);
    EXPECT_EQ(page->table().rowCount(), 5);
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("name"));
        fill(form, "lot", "Heath");
        fill(form, "net", "25");
        fill(form, "supplier", "Dora");
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_N);
    ASSERT_EQ(read().all<Lot>().size(), 1U) << session.lastTold().toStdString();
    EXPECT_EQ(page->current()->view.name, "Heath") << "it is the one chosen";
    EXPECT_THAT(card(), HasSubstr("Dora"));
}

TEST_F(HoneyOnItsPage, HoldsAndLetsGo) {
    walkTo("B4 of 27-2");
    inForm([&](QDialog& form) {
        choose(form, "reason", QStringLiteral("complaint"));
        enter(form);
    });
    key(Qt::Key_H);
    ASSERT_EQ(read().all<Hold>().size(), 1U);
    EXPECT_THAT(row(), HasSubstr("held since"));
    EXPECT_THAT(card(), HasSubstr("Held back"));
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty()) << "not without grounds";
        fill(form, "grounds", "tasted again");
        enter(form);
    });
    key(Qt::Key_U);
    EXPECT_TRUE(read().all<Hold>().front().lifted);
    key(Qt::Key_U);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("not held back"));
}

TEST_F(HoneyOnItsPage, PicksWhoseLimitsItGoesBy) {
    inForm([&](QDialog& form) {
        choose(form, "limits", QStringLiteral("eu"));
        EXPECT_THAT(said(form, "says"), HasSubstr("20.0 %"));
        fill(form, "own_line", "17.5");
        enter(form);
    });
    key(Qt::Key_P);
    ASSERT_EQ(read().all<LabelText>().size(), 1U) << session.lastTold().toStdString();
    EXPECT_EQ(read().all<LabelText>().front().limits, "eu");
    EXPECT_EQ(constantOr(read(), "max_water_percent", {}, clock.today(), 0), 17.5);
    EXPECT_THAT(card(), HasSubstr("Limits of eu"));
}

TEST_F(HoneyOnItsPage, CutsNothingInLargeType) {
    for (const double factor : {1.0, 2.0}) {
        session.setLook(applyLook(*qApp, false, factor));
        window->resize(1280, 800);
        QApplication::processEvents();
        const WordsTable& table = page->table();
        EXPECT_LE(table.horizontalHeader()->length(), table.viewport()->width() + 1) << factor;
        EXPECT_EQ(table.isNarrow(), factor > 1.5);
    }
    session.setLook(applyLook(*qApp, false, 1.0));
}

}  // namespace
}  // namespace combwright
