// A past day in the yard says so everywhere, and one key leads back to today.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/yard/yard_form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class PastDay : public test::YardFormTest {
  protected:
    void SetUp() override {
        YardFormTest::SetUp();
        place->choose(*place->yard(), test::day("2027-05-20"));
        place->setFocus();
    }
    std::string under() const { return place->head().under.toStdString(); }
    QPushButton* back() const { return named<QPushButton>("to_today"); }
};

TEST_F(PastDay, IsSaidWhenOneComesBackToTheYardAndROneKeyLeavesIt) {
    key(Qt::Key_1, Qt::ControlModifier);
    ASSERT_NE(window->current(), place);
    key(Qt::Key_2, Qt::ControlModifier);
    ASSERT_EQ(window->current(), place);
    EXPECT_THAT(under(), HasSubstr("as on Thu 20 May 2027"));
    ASSERT_NE(back(), nullptr);
    EXPECT_TRUE(back()->isVisible());
    for (const Qt::Key page : {Qt::Key_V, Qt::Key_F, Qt::Key_Escape}) {
        key(page);
        EXPECT_THAT(under(), HasSubstr("as on Thu 20 May 2027"));
        EXPECT_EQ(place->hints().front().key, QStringLiteral("R"));
    }
    key(Qt::Key_R);
    EXPECT_EQ(place->day(), on);
    EXPECT_FALSE(back()->isVisible());
    EXPECT_THAT(under(), Not(HasSubstr("as on")));
    EXPECT_EQ(focus(), &place->board());
    key(Qt::Key_R);
    EXPECT_EQ(place->day(), on) << "there is nothing to go back from";
}

TEST_F(PastDay, TheButtonLeadsBackToo) {
    back()->setFocus();
    QTest::keyClick(back(), Qt::Key_Space);
    EXPECT_EQ(place->day(), on);
}

/// The head measures its controls as they are now, also while the type grows.
TEST_F(PastDay, TheButtonHasItsRoomInEverySize) {
    const auto* day = named<QLineEdit>("day");
    for (int step = 0; step < 4; ++step) {
        QApplication::processEvents();
        EXPECT_GE(back()->width(), back()->sizeHint().width()) << step;
        EXPECT_GT(back()->geometry().left(), day->geometry().right()) << step;
        EXPECT_LE(back()->geometry().right(), back()->parentWidget()->width()) << step;
        key(Qt::Key_Plus, Qt::ControlModifier);
    }
    session.setLook(applyLook(*qApp, false, 1.0));
    place->openSheet();
    QApplication::processEvents();
    EXPECT_EQ(back()->text(), QStringLiteral("Back to today")) << "R is typed there";
    EXPECT_EQ(back()->width(), back()->sizeHint().width());
}

TEST_F(PastDay, FormsNameItInTheirTitle) {
    const auto titles = [&] {
        QStringList said;
        inDialog("letter_chooser", [&](QDialog& chooser) {
            said << chooser.windowTitle();
            inDialog("small_form", [&](QDialog& form) {
                said << form.windowTitle();
                QTest::keyClick(&form, Qt::Key_Escape);
            });
            letterIn(chooser, Qt::Key_S);
        });
        key(Qt::Key_X);
        return said;
    };
    EXPECT_EQ(titles(), (QStringList{QStringLiteral("H1, Thu 20 May 2027: what happened?"),
                                     QStringLiteral("Split H1, Thu 20 May 2027")}));
    key(Qt::Key_R);
    EXPECT_EQ(titles(),
              (QStringList{QStringLiteral("H1: what happened?"), QStringLiteral("Split H1")}));
}

}  // namespace
}  // namespace combwright
