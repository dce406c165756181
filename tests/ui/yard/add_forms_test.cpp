// Hives that come into a yard by keyboard: several alike in one form and one step.
#include "ui/yard/add_forms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/yard/yard_form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class AddForms : public test::YardFormTest {
  protected:
    std::string walk() const {
        std::string marks;
        for (const Hive& each : openHives(read(), *place->yard()))
            marks += (marks.empty() ? "" : " ") + each.mark.text();
        return marks;
    }
};

TEST_F(AddForms, SeveralHivesAlikeInOneStep) {
    const auto before = steps();
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Add a hive"));
        fill(form, "mark", "H5-H7");
        EXPECT_EQ(form.windowTitle(), QStringLiteral("Add 3 hives"));
        EXPECT_THAT(form.findChild<QLabel*>("several")->text().toStdString(),
                    HasSubstr("3 hives alike, H5 to H7"));
        fill(form, "boxes", "deep D51, medium");
        choose(form, "origin", QStringLiteral("overwintered"));
        expectReachable(form);
        enter(form);
    });
    key(Qt::Key_H);
    EXPECT_EQ(walk(), "H1 H2 H3 H4 H5 H6 H7");
    EXPECT_EQ(stack("H7"), "D53 ");
    EXPECT_TRUE(colony("H6"));
    EXPECT_EQ(steps(), before + 1);
    EXPECT_EQ(place->board().currentHive()->mark, QStringLiteral("H5")) << "the first is chosen";
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(walk(), "H1 H2 H3 H4");
}

TEST_F(AddForms, ARowThatCountsDownIsRefusedAndStaysTyped) {
    const auto before = steps();
    inForm([&](QDialog& form) {
        fill(form, "mark", "H7-H5");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("a row of marks"));
        EXPECT_EQ(form.findChild<QLineEdit*>("mark")->text(), QStringLiteral("H7-H5"));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    key(Qt::Key_H);
    EXPECT_EQ(steps(), before);
}

}  // namespace
}  // namespace combwright
