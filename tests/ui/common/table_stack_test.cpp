// Tables below each other: each as high as its rows, one without rows only its head; figures of a
// column end on one edge, what a row is called may have a line below.
#include "ui/common/table_stack.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

#include "ui/look/style.h"

namespace combwright {
namespace {

class StackOfTables : public testing::Test {
  protected:
    StackOfTables() {
        for (WordsTable** each : {&upper, &lower}) {
            *each = new WordsTable(look, {"name", "all"}, {{"many", 1, true}, {"words", 2}},
                                   WordsTicks::None, &stack);
            stack.add(*each);
        }
        stack.resize(900, 200);
    }
    static std::vector<WordsRow> rows(int count) {
        std::vector<WordsRow> made;
        for (int i = 1; i <= count; ++i)
            made.push_back({i, QString::number(i), {{"12"}, {"words"}}, "below"});
        return made;
    }

    Look look = applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false);
    TableStack stack{look, nullptr};
    WordsTable* upper = nullptr;
    WordsTable* lower = nullptr;
};

TEST_F(StackOfTables, IsAsHighAsItsRowsAndLeavesOutWhatHasNone) {
    upper->showRows(rows(3));
    lower->showRows(rows(2));
    stack.setHead(upper, "Upper");
    stack.setHead(lower, "Lower");
    stack.show();
    EXPECT_EQ(upper->height(), upper->fullHeight());
    const int both = stack.fullHeight();
    EXPECT_GE(both, upper->fullHeight() + lower->fullHeight());
    lower->showRows({});
    stack.setHead(lower, "Nothing is written down yet.");
    EXPECT_TRUE(lower->isHidden());
    EXPECT_LT(stack.fullHeight(), both);
}

TEST_F(StackOfTables, TabGoesFromOneToTheNextAndTheRowIsInSight) {
    upper->showRows(rows(30));
    lower->showRows(rows(2));
    stack.setHead(upper, {});
    stack.setHead(lower, "Lower");
    stack.show();
    stack.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&stack));
    upper->setFocus();
    QTest::keyClick(upper, Qt::Key_End);
    const QPoint last = upper->viewport()->mapTo(
        stack.viewport(), upper->visualItemRect(upper->item(29, 0)).center());
    EXPECT_TRUE(stack.viewport()->rect().contains(last)) << "the stack scrolled along";
    QTest::keyClick(upper, Qt::Key_Tab);
    EXPECT_TRUE(lower->hasFocus());
}

TEST_F(StackOfTables, FiguresStandAtTheRightAndALineBelowTheName) {
    stack.show();
    QApplication::processEvents();
    upper->showRows(rows(1));
    EXPECT_TRUE(upper->isRight(1));
    EXPECT_FALSE(upper->isRight(0));
    EXPECT_FALSE(upper->isRight(2));
    ASSERT_EQ(upper->wordsOf(0, 0).size(), 2U);
    EXPECT_EQ(upper->wordsOf(0, 0)[1].tone, Tone::Muted);
    stack.resize(300, 200);
    QApplication::processEvents();
    EXPECT_FALSE(upper->isRight(1)) << "in one running line nothing ends on an edge";
}

}  // namespace
}  // namespace combwright
