// Hives that come into a yard by keyboard: several alike in one form and one step.
#include "ui/yard/add_forms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/words/language.h"
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

TEST_F(AddForms, TakeGermanNamesOfBoxes) {
    const Speaking german(Language::German);
    inForm([&](QDialog& form) {
        fill(form, "mark", "H9");
        fill(form, "boxes", "Schrank D61");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("Schrank"));
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("x (ein Absperrgitter)"));
        fill(form, "boxes", "ganz D61, Absperrgitter, Zander-Flachzarge Z61");
        enter(form);
    });
    key(Qt::Key_H);
    EXPECT_EQ(stack("H9"), "D61 Z61");
    EXPECT_EQ(hive("H9").excluderAbove, Count(1));
}

TEST_F(AddForms, TheUsualSuperIsAnyKindOfTheCatalogue) {
    inForm([&](QDialog& form) {
        fill(form, "usual_super", "Zander");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("Zander flat (two-thirds) box"));
        fill(form, "usual_super", "zander flat");
        fill(form, "why", "flat ones from this year on");
        enter(form);
    });
    key(Qt::Key_U);
    const auto yard = read().find(*place->yard());
    ASSERT_TRUE(yard && yard->usualSuper);
    EXPECT_EQ(read().find(*yard->usualSuper)->code.text(), "ZANDER10-FLAT");
}

}  // namespace
}  // namespace combwright
