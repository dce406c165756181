// A visit that does not go by the book: a yard seen twice on a day, a hive looked into on the day
// it was united, the whole visit struck out and brought back, a line put right days later with its
// reason, and the program ended in the middle of a sheet.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/yard/yard_sheet.h"
#include "tests/support/in_yard.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class VisitAgain : public test::InYard {
  protected:
    void SetUp() override {
        InYard::SetUp();
        begin("2027-06-09", test::millLaneBefore());
    }
    std::vector<const char*> lines() const {
        return {test::millLaneLines.begin(), test::millLaneLines.end()};
    }
    YardSheet sheet(const char* on = "2027-06-09") const {
        return yardSheet(read(), *place->yard(), test::day(on));
    }
    YardSheet sheetOfFirstYard() const {
        return yardSheet(read(), openYards(read()).front().id, test::day("2027-06-09"));
    }
};

TEST_F(VisitAgain, TheWholeVisitIsStruckOutAndComesBack) {
    const std::string before = session.season().dump();
    toHive("ML1");
    writeSheet(lines());
    const std::string after = session.season().dump();
    EXPECT_EQ(sheet().supersInStore, 12);
    place->setFocus();
    key(Qt::Key_S);
    key(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(session.season().dump(), after) << "one press asks";
    key(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(sheet().supersInStore, 20);
    EXPECT_EQ(sheet().opened, 0);
    EXPECT_EQ(session.season().dump(), before);
    // The sheet stands there empty, and one goes on in it.
    EXPECT_THAT(label("kept"), HasSubstr("<b>0</b>"));
    ASSERT_NE(line(), nullptr) << "the cursor is still in a line";
    EXPECT_EQ(line()->text(), QString());
    undo();
    EXPECT_EQ(session.season().dump(), after);
    EXPECT_EQ(sheet().supersInStore, 12);
}

TEST_F(VisitAgain, ALinePutRightDaysLaterKeepsTheOldOneAndTheReason) {
    toHive("ML1");
    writeSheet(lines());
    clock.set("2027-06-14");
    toYard();
    toDay("2027-06-09");
    toHive("ML8");
    key(Qt::Key_S);
    auto* why = named<QLineEdit>("why_changed");
    ASSERT_TRUE(why->isVisible());
    // To the reason by Tab, and back into the line by Shift+Tab.
    for (int n = 0; n < 5 && focus() != why; ++n) key(Qt::Key_Tab);
    ASSERT_EQ(focus(), why);
    QTest::keyClicks(why, QStringLiteral("counted again"));
    for (int n = 0; n < 5 && focus()->objectName() != QStringLiteral("line"); ++n)
        key(Qt::Key_Backtab, Qt::ShiftModifier);
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->objectName(), QStringLiteral("line"));
    EXPECT_EQ(line()->text(), QStringLiteral("e b9 s5 +2")) << "ML8 is still the row";
    line()->selectAll();
    QTest::keyClicks(line(), QStringLiteral("e b9 s5 +1"));
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().supersPutOn, 7);
    EXPECT_EQ(sheet().supersInStore, 13);
    key(Qt::Key_Return, Qt::ControlModifier);
    QApplication::processEvents();
    toHive("ML8");
    const std::string story = wholeStory();
    EXPECT_THAT(story, HasSubstr("counted again"));
}

TEST_F(VisitAgain, AHiveIsLookedIntoOnTheDayItWasUnited) {
    toHive("ML3");
    byLetter(Qt::Key_X, Qt::Key_U, [](QDialog& form) {
        choose(form, "into", QStringLiteral("ML4"));
        choose(form, "queen", QStringLiteral("that of the hive"));
        choose(form, "boxes_to", QStringLiteral("go on top"));
        enter(form);
    });
    EXPECT_EQ(stack("ML4"), "D34 M34 D33 M33") << session.lastTold().toStdString();
    toHive("ML1");
    writeSheet(lines());
    EXPECT_EQ(sheet().rows.size(), 12U);
    EXPECT_EQ(sheet().opened, 11);
    toHive("ML3");
    toHive("ML4");
}

TEST_F(VisitAgain, WhatWasTypedComesBackAfterTheProgramEndedInTheMiddle) {
    toHive("ML1");
    key(Qt::Key_S);
    QTest::keyClicks(line(), QStringLiteral("e b7 s3 +1"));
    key(Qt::Key_Return);
    QTest::keyClicks(line(), QStringLiteral("e b8 s3"));
    const QString path = session.path();
    // Gone without the line being left, as by a crash.
    session.close();
    ASSERT_TRUE(session.open(path));
    EXPECT_EQ(sheetOfFirstYard().opened, 1);
    EXPECT_EQ(qobject_cast<YardPlace*>(window->current()), place) << "where the line waits";
    ASSERT_TRUE(place->sheetView().isVisible()) << "the sheet the line waits in";
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->placeholderText(), QStringLiteral("e b8 s3"));
    key(Qt::Key_Right);
    EXPECT_EQ(line()->text(), QStringLiteral("e b8 s3"));
    QTest::keyClicks(line(), QStringLiteral(" +1"));
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().opened, 2);
    EXPECT_EQ(sheet().supersPutOn, 2);
}

TEST_F(VisitAgain, WhatWasTypedInCellsComesBackToo) {
    toHive("ML1");
    key(Qt::Key_S);
    key(Qt::Key_F6);
    key(Qt::Key_Tab);
    QTest::keyClicks(focus(), QStringLiteral("y"));
    const QString path = session.path();
    session.close();
    ASSERT_TRUE(session.open(path));
    ASSERT_TRUE(place->sheetView().isVisible());
    // The table keeps the shape one typed in; else F6 brings it.
    if (!place->sheetView().table().cells()) key(Qt::Key_F6);
    CellsEditor* cells = place->sheetView().table().cells();
    ASSERT_NE(cells, nullptr);
    EXPECT_THAT(cells->findChild<QLabel*>("cells_back")->text().toStdString(),
                HasSubstr("typed before and not kept"));
    EXPECT_EQ(sheet().opened, 0) << "offered, not typed";
    key(Qt::Key_Right);
    cells = place->sheetView().table().cells();
    ASSERT_NE(cells, nullptr);
    EXPECT_EQ(cells->line(), QStringLiteral("e"));
    EXPECT_THAT(cells->findChild<QLabel*>("cells_back")->text().toStdString(), HasSubstr("Eggs."));
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().opened, 1);
}

TEST_F(VisitAgain, AnOfferInCellsIsDroppedByEscape) {
    toHive("ML1");
    key(Qt::Key_S);
    QTest::keyClicks(line(), QStringLiteral("e b7"));
    const QString path = session.path();
    session.close();
    ASSERT_TRUE(session.open(path));
    ASSERT_TRUE(place->sheetView().isVisible());
    key(Qt::Key_F6);
    CellsEditor* cells = place->sheetView().table().cells();
    ASSERT_NE(cells, nullptr);
    key(Qt::Key_Escape);
    EXPECT_EQ(place->sheetView().model().draftOf(1), QString());
    EXPECT_EQ(cells->findChild<QLabel*>("cells_back")->text(), QString());
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().opened, 0);
}

}  // namespace
}  // namespace combwright
