// Wet boxes given back and taken off again, by keyboard.
#include "ui/storeroom/wets_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/shell/shell_season.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class WetsDialogTest : public test::ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        clock.set("2027-08-04");
        {
            auto season = Season::create(path("season.combwright"), clock);
            ASSERT_TRUE(season);
            playAll(*season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep A1, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep A2, x, medium M2 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H3","boxes":"deep A3","origin":"overwintered"}
{"do":"move-box","on":"2027-08-03","box":"M1","to":"wet"}
{"do":"move-box","on":"2027-08-03","box":"M2","to":"wet"})");
        }
        ASSERT_TRUE(session.open(file()));
    }
    void open(Day on) {
        dialog = std::make_unique<WetsDialog>(session, on);
        dialog->show();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    void press(Qt::Key pressed, Qt::KeyboardModifiers with = Qt::NoModifier) const {
        QTest::keyClick(dialog->focusWidget(), pressed, with);
    }
    std::string at() const { return dialog->focusWidget()->accessibleName().toStdString(); }
    std::string reason() const {
        return dialog->findChild<QLabel*>(QStringLiteral("reason"))->text().toStdString();
    }
    Box box(const char* mark) const {
        return *session.read().first<Box>({is("mark", std::string(mark))});
    }

    std::unique_ptr<WetsDialog> dialog;
    const Day today = test::day("2027-08-04");
};

TEST_F(WetsDialogTest, GivesTheTickedBackInOneStepAndTakesThemOff) {
    open(today);
    EXPECT_EQ(at(), "Give M1 back");
    EXPECT_THAT(dialog->findChild<QLabel*>(QStringLiteral("caution"))->text().toStdString(),
                testing::AllOf(HasSubstr("dusk"), HasSubstr("Entrances small")));
    const auto steps = session.season().history().size();
    press(Qt::Key_Tab);
    EXPECT_EQ(at(), "Hive for M1");
    press(Qt::Key_Return);
    EXPECT_EQ(at(), "Hive for M2");
    dynamic_cast<QLineEdit*>(dialog->focusWidget())->selectAll();
    QTest::keyClicks(dialog->focusWidget(), QStringLiteral("H9"));
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_THAT(reason(), HasSubstr("H9"));
    EXPECT_EQ(box("M1").place, BoxPlace::Wet) << "all or none";
    press(Qt::Key_Backspace);
    QTest::keyClicks(dialog->focusWidget(), QStringLiteral("3"));
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(box("M1").place, BoxPlace::GivenBack);
    EXPECT_EQ(session.read().find(box("M2").hive)->mark.text(), "H3") << "as it was changed";
    EXPECT_EQ(session.season().history().size(), steps + 1);
    EXPECT_EQ(at(), "Take M1 off");

    open(test::day("2027-08-08"));
    EXPECT_EQ(at(), "Take M1 off");
    press(Qt::Key_Tab);
    press(Qt::Key_Space);
    press(Qt::Key_Return);
    EXPECT_EQ(at(), "The stack they go to");
    QTest::keyClicks(dialog->focusWidget(), QStringLiteral("7"));
    press(Qt::Key_Return);
    EXPECT_EQ(box("M1").place, BoxPlace::Storeroom);
    EXPECT_EQ(box("M1").stack, "7");
    EXPECT_EQ(box("M2").place, BoxPlace::GivenBack) << "it was unticked";
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(WetsDialogTest, UntickedStayAndPrintIsAsked) {
    open(today);
    int asked = 0;
    QObject::connect(dialog.get(), &WetsDialog::printAsked, dialog.get(), [&] { ++asked; });
    press(Qt::Key_Space);
    press(Qt::Key_Return);
    EXPECT_EQ(at(), "Give M2 back");
    press(Qt::Key_Space);
    press(Qt::Key_Return);
    EXPECT_EQ(dialog->focusWidget()->objectName(), QStringLiteral("give_back"));
    press(Qt::Key_Space);
    EXPECT_THAT(reason(), HasSubstr("No box is ticked"));
    EXPECT_EQ(box("M1").place, BoxPlace::Wet);
    press(Qt::Key_Tab, Qt::ShiftModifier);
    EXPECT_EQ(dialog->focusWidget()->objectName(), QStringLiteral("print"));
    press(Qt::Key_Space);
    EXPECT_EQ(asked, 1);
}

}  // namespace
}  // namespace combwright
