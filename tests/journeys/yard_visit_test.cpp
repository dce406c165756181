// A yard visit from the clipboard into the file, by keyboard alone, in the real window: the same
// rows as by script, few keys a hive, and nothing typed is lost.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QTest>

#include "core/places/yard/yard_sheet.h"
#include "tests/support/in_window.h"
#include "tests/support/mill_lane.h"
#include "tests/support/open_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class YardVisit : public test::WindowTest {
  protected:
    void SetUp() override {
        openWindow(test::millLaneBefore());
        place = test::openPlace<YardPlace>(*window);
    }
    /// The line under the cursor.
    QLineEdit* line() const { return qobject_cast<QLineEdit*>(QApplication::focusWidget()); }
    void type(const char* text) const {
        ASSERT_NE(line(), nullptr) << "no line under the cursor";
        QTest::keyClicks(line(), QLatin1String(text));
        QTest::keyClick(line(), Qt::Key_Return);
    }
    YardSheet sheet() const {
        return yardSheet(session.read(), *place->yard(), test::day("2027-06-09"));
    }

    YardPlace* place = nullptr;
};

TEST_F(YardVisit, IsWrittenByKeyboardAloneInFewKeys) {
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_S);
    ASSERT_TRUE(place->sheetIsOpen());
    for (const char* text : test::millLaneLines) type(text);
    const int keys = place->sheetView().table().keystrokes();
    RecordProperty("keys_a_hive_times_100", keys * 100 / 12);
    std::printf("keys a hive, on average: %.1f\n", keys / 12.0);
    EXPECT_LE(keys, 15 * 12);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return, Qt::ControlModifier);
    QApplication::processEvents();
    EXPECT_FALSE(place->sheetIsOpen());

    // The same file, played by a script, holds the same.
    auto other = Season::create(path("other.combwright"), clock);
    ASSERT_TRUE(other);
    playAll(*other, test::millLaneBefore());
    playAll(*other, test::millLaneVisit());
    EXPECT_EQ(session.season().dump(), other->dump());
}

TEST_F(YardVisit, GivesWhatFollowsFromIt) {
    playAll(session.season(), test::millLaneVisit());
    const YardSheet now = sheet();
    EXPECT_EQ(now.opened, 11);
    EXPECT_EQ(now.notOpened, 1);
    EXPECT_EQ(now.supersPutOn, 8);
    EXPECT_EQ(now.supersInStore, 12);
    ASSERT_TRUE(now.brood);
    EXPECT_NEAR(now.brood->value, 7.1, 1e-9);
    EXPECT_EQ(now.brood->n, 10);

    const auto mindOf = [&](int hive, MindKind kind) -> const Mind* {
        for (const Mind& mind : now.rows[static_cast<std::size_t>(hive - 1)].minds)
            if (mind.kind == kind) return &mind;
        return nullptr;
    };
    const Mind* young = mindOf(3, MindKind::QueenWait);
    ASSERT_TRUE(young && young->queen);
    EXPECT_EQ(young->queen->emergesTo, test::day("2027-06-17"));
    EXPECT_EQ(young->queen->lookFrom, test::day("2027-07-01"));
    EXPECT_EQ(young->queen->testFrameFrom, test::day("2027-07-08"));
    EXPECT_EQ(young->queen->actBy, test::day("2027-07-15"));
    const Mind* few = mindOf(5, MindKind::Mites);
    ASSERT_TRUE(few);
    EXPECT_NEAR(*few->mitesPer100, 1.33, 0.005);
    const Mind* many = mindOf(9, MindKind::MitesOver);
    ASSERT_TRUE(many);
    EXPECT_NEAR(*many->mitesPer100, 3.67, 0.005);
    EXPECT_TRUE(many->supersOn) << "supers are on: the label decides";
    const Mind* shut = mindOf(7, MindKind::NotOpened);
    ASSERT_TRUE(shut);
    EXPECT_EQ(shut->since, test::day("2027-06-02"));
    EXPECT_TRUE(mindOf(6, MindKind::Light));
    EXPECT_EQ(now.rows[9].today->seen.note, "cross");

    playAll(
        session.season(),
        R"({"do":"write-line","on":"2027-06-09","hive":"ML8","line":"e b9 s5 +1","why":"counted again"})");
    EXPECT_EQ(sheet().supersPutOn, 7);
    EXPECT_EQ(sheet().supersInStore, 13);
    // The old line and the reason stay in the journal.
    const auto history = session.season().history(6);
    EXPECT_EQ(history.front().info.why, "counted again");
    EXPECT_NE(history.back().info.line.find("e b9 s5 +2"), std::string::npos);
}

TEST_F(YardVisit, TakesBackALineByOneKey) {
    place->openSheet();
    type("e b7 s3 +1");
    EXPECT_EQ(sheet().opened, 1);
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(sheet().opened, 0);
    EXPECT_EQ(sheet().supersInStore, 20);
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(sheet().opened, 1);
}

TEST_F(YardVisit, KeepsTheLineStillBeingTypedWhenThePlaceIsLeft) {
    place->openSheet();
    ASSERT_NE(line(), nullptr);
    QTest::keyClicks(line(), QStringLiteral("e b6"));
    window->close();
    EXPECT_EQ(sheet().opened, 1);
}

TEST_F(YardVisit, LeavesABlankLineUnwritten) {
    place->openSheet();
    type("");
    type("x rain");
    EXPECT_EQ(sheet().opened, 0);
    EXPECT_EQ(sheet().notOpened, 1);
    EXPECT_FALSE(sheet().rows[0].today);
}

TEST_F(YardVisit, TabIsNeverTrapped) {
    place->openSheet();
    QWidget* first = QApplication::focusWidget();
    ASSERT_NE(first, nullptr);
    QTest::keyClick(first, Qt::Key_Tab);
    EXPECT_NE(QApplication::focusWidget(), first);
    std::set<QWidget*> met;
    for (int n = 0; n < 60 && QApplication::focusWidget(); ++n) {
        met.insert(QApplication::focusWidget());
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    EXPECT_GT(met.size(), 3U) << "Tab goes round a few widgets only";
}

TEST_F(YardVisit, EveryControlHasAName) {
    for (QWidget* widget : window->findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisibleTo(window.get())) continue;
        if (widget->inherits("QScrollArea") || widget->inherits("QStackedWidget")) continue;
        EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                     widget->property("text").toString().isEmpty())
            << widget->metaObject()->className() << " " << widget->objectName().toStdString();
    }
}

}  // namespace
}  // namespace combwright
