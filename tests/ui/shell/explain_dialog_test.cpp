// The dialog that says how a figure came about, by keyboard.
#include "ui/shell/explain_dialog.h"

#include <gtest/gtest.h>

#include <QTest>

#include "core/words/units.h"
#include "ui/look/tokens.h"

namespace combwright {
namespace {

std::vector<Explained> twoFigures() {
    Explained honey{QStringLiteral("Honey in M07"), QStringLiteral("12 kg e"), {}};
    note(&honey.working, "full_frame_g", 1600, "g", {}, "own scales");
    note(&honey.working, "left_filled", 0.85, "");
    note(&honey.working, "honey_g", 12240, "g", "frames · filled · full frame");
    Explained jars{QStringLiteral("Jars"), QStringLiteral("26"), {}};
    note(&jars.working, "jars", 26, "", "⌊after loss ÷ net⌋");
    return {honey, jars};
}

TEST(ExplainDialog, ShowsInputsFormulaUnitsAndSourceOfTheChosenFigure) {
    ExplainDialog dialog(nullptr, lookFor(QFont(), false), QStringLiteral("Pull"), twoFigures());
    dialog.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&dialog));
    ASSERT_EQ(dialog.steps().rowCount(), 3);
    EXPECT_EQ(dialog.steps().item(0, 1)->text(), QStringLiteral("1.600 kg"));
    EXPECT_EQ(dialog.steps().item(0, 3)->text(), QStringLiteral("own scales"));
    EXPECT_EQ(dialog.steps().item(2, 2)->text(), QStringLiteral("frames · filled · full frame"));
    QTest::keyClick(&dialog.figures(), Qt::Key_Down);
    ASSERT_EQ(dialog.steps().rowCount(), 1);
    EXPECT_EQ(dialog.steps().item(0, 1)->text(), QStringLiteral("26"));
    QTest::keyClick(&dialog.figures(), Qt::Key_Escape);
    EXPECT_FALSE(dialog.isVisible());
}

TEST(ExplainDialog, IsInTheUnitsThatAreShown) {
    const UnitsWhile us(Units::UsCustomary);
    ExplainDialog dialog(nullptr, lookFor(QFont(), false), QStringLiteral("Pull"), twoFigures());
    EXPECT_EQ(dialog.steps().item(0, 1)->text(), QStringLiteral("3.527 lb"));
}

}  // namespace
}  // namespace combwright
