// The yard sheet filled in cells by keyboard: the same line as typed, blanks stay blank, and what
// cannot be meant is told and stays typed.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QTest>

#include "core/places/yard/yard_sheet.h"
#include "tests/support/in_window.h"
#include "tests/support/mill_lane.h"
#include "tests/support/open_place.h"
#include "ui/yard/cells_editor.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class YardCells : public test::WindowTest {
  protected:
    void SetUp() override {
        openWindow(test::millLaneBefore());
        place = test::openPlace<YardPlace>(*window);
        place->openSheet();
    }
    static void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QTest::keyClick(focus(), key, with);
    }
    /// Goes to a cell of the row by Tab alone and types there.
    void fill(SheetCell cell, const char* text) {
        const QString wanted = QStringLiteral("cell_%1").arg(static_cast<int>(cell));
        for (int n = 0; n < 20 && focus()->objectName() != wanted; ++n) press(Qt::Key_Tab);
        ASSERT_EQ(focus()->objectName(), wanted);
        QTest::keyClicks(focus(), QString::fromUtf8(text));
    }
    std::string lineOf(int hive) const {
        const auto sheet = yardSheet(session.read(), *place->yard(), test::day("2027-06-09"));
        const auto& today = sheet.rows[static_cast<std::size_t>(hive - 1)].today;
        return today ? today->line : "blank";
    }

    YardPlace* place = nullptr;
};

TEST_F(YardCells, WriteTheSameLineAndGoOnToTheNextHive) {
    press(Qt::Key_F6);
    ASSERT_TRUE(place->sheetView().table().cells());
    fill(SheetCell::Eggs, "y");
    fill(SheetCell::Brood, "7");
    fill(SheetCell::Stores, "3");
    fill(SheetCell::Boxes, "1");
    const int keys = place->sheetView().table().keystrokes();
    EXPECT_GE(keys, 4 + 5) << "keys in cells are counted as those in the line";
    press(Qt::Key_Return);
    EXPECT_EQ(lineOf(1), "e b7 s3 +1");
    EXPECT_EQ(lineOf(2), "blank");
    // The next hive is in cells too.
    EXPECT_TRUE(focus()->accessibleName().startsWith(QStringLiteral("ML2")));
    fill(SheetCell::Note, "cross");
    press(Qt::Key_Return, Qt::ShiftModifier);
    EXPECT_EQ(lineOf(2), "cross");
    EXPECT_TRUE(focus()->accessibleName().startsWith(QStringLiteral("ML1")));
}

TEST_F(YardCells, AreTheSameLineInEitherShape) {
    QTest::keyClicks(focus(), QStringLiteral("e b7, s~3 cross"));
    press(Qt::Key_F6);
    const CellsEditor* cells = place->sheetView().table().cells();
    ASSERT_TRUE(cells);
    const auto cell = [&](SheetCell which) {
        return cells->findChild<QLineEdit*>(QStringLiteral("cell_%1").arg(static_cast<int>(which)))
            ->text();
    };
    EXPECT_EQ(cell(SheetCell::Brood), QStringLiteral("7"));
    EXPECT_EQ(cell(SheetCell::Stores), QStringLiteral("~3"));
    EXPECT_EQ(cell(SheetCell::Note), QStringLiteral("cross"));
    EXPECT_EQ(cell(SheetCell::Temper), QString()) << "blank is blank";
    press(Qt::Key_F6);
    auto* line = qobject_cast<QLineEdit*>(focus());
    ASSERT_TRUE(line);
    EXPECT_EQ(line->objectName(), QStringLiteral("line"));
    EXPECT_EQ(line->text(), QStringLiteral("e b7, s~3 cross"))
        << "what was not touched stays as it was typed";
    press(Qt::Key_Return);
    EXPECT_EQ(lineOf(1), "e b7, s~3 cross");
}

TEST_F(YardCells, KeepWhatCannotBeMeantAndSayWhy) {
    press(Qt::Key_F6);
    fill(SheetCell::Brood, "7");
    fill(SheetCell::Temper, "9");
    press(Qt::Key_Return);
    EXPECT_EQ(lineOf(1), "blank") << "the hive is not left while a cell says nothing sensible";
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("9")));
    EXPECT_TRUE(focus()->accessibleName().startsWith(QStringLiteral("ML1")));
    auto* bad = qobject_cast<QLineEdit*>(focus());
    ASSERT_TRUE(bad);
    EXPECT_EQ(bad->text(), QStringLiteral("9"));
    press(Qt::Key_Return, Qt::ControlModifier);
    QApplication::processEvents();
    EXPECT_TRUE(place->sheetIsOpen());
    press(Qt::Key_Backspace);
    QTest::keyClicks(focus(), QStringLiteral("2"));
    press(Qt::Key_Return);
    EXPECT_EQ(lineOf(1), "b7 t2");
}

TEST_F(YardCells, EscapeBringsBackWhatWasKept) {
    press(Qt::Key_F6);
    fill(SheetCell::Brood, "7");
    press(Qt::Key_Return);
    press(Qt::Key_Return, Qt::ShiftModifier);
    fill(SheetCell::Brood, "9");
    fill(SheetCell::Temper, "99");
    press(Qt::Key_Escape);
    press(Qt::Key_Return);
    EXPECT_EQ(lineOf(1), "b7");
}

TEST_F(YardCells, TabLeavesTheTableAfterTheLastCell) {
    press(Qt::Key_F6);
    fill(SheetCell::Note, "rain");
    press(Qt::Key_Tab);
    EXPECT_FALSE(place->sheetView().table().isAncestorOf(focus()));
    EXPECT_EQ(lineOf(1), "rain");
}

TEST_F(YardCells, NeverTrapTabOnABadCell) {
    press(Qt::Key_F6);
    fill(SheetCell::Temper, "99");
    fill(SheetCell::Note, "rain");
    press(Qt::Key_Tab);
    EXPECT_FALSE(place->sheetView().table().isAncestorOf(focus()));
    place->sheetView().table().setFocus();
    auto* bad = qobject_cast<QLineEdit*>(focus());
    ASSERT_TRUE(bad);
    EXPECT_EQ(bad->text(), QStringLiteral("99")) << "and its text is still there";
}

TEST_F(YardCells, TheLineForAllHasCellsToo) {
    press(Qt::Key_Up);
    press(Qt::Key_F6);
    fill(SheetCell::Eggs, "y");
    press(Qt::Key_Return);
    const auto visit = visitOn(session.read(), *place->yard(), test::day("2027-06-09"));
    ASSERT_TRUE(visit);
    EXPECT_EQ(visit->all, "e");
}

}  // namespace
}  // namespace combwright
