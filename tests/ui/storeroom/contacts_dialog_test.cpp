// What moved in or out of a hive under suspicion, at the window by keyboard.
#include "ui/storeroom/contacts_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/storeroom/form_hands.h"
#include "ui/storeroom/storeroom_place.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class Contacts : public test::FormTest {
  protected:
    void suspect() {
        playAll(session.season(),
                R"({"do":"move-box","on":"2028-01-03","box":"M11","to":"on hive","hive":"H1"}
{"do":"move-box","on":"2028-01-05","box":"M11","to":"storeroom","stack":"1"}
{"do":"hold-back","on":"2028-01-09","hive":"H1","reason":"suspected disease"})");
    }
};

TEST_F(Contacts, AreListedAndHeldInOneStep) {
    suspect();
    inForm([&](QDialog& form) {
        const auto* moved = form.findChild<QTableWidget*>(QStringLiteral("moved"));
        EXPECT_THAT(form.findChild<QComboBox*>(QStringLiteral("hive"))->currentText().toStdString(),
                    HasSubstr("H1, Hill: disease suspected"));
        EXPECT_TRUE(form.findChild<QLabel*>(QStringLiteral("caution"))->isVisible());
        EXPECT_THAT(form.findChild<QLabel*>(QStringLiteral("since"))->text().toStdString(),
                    HasSubstr("Disease is suspected since"));
        ASSERT_GE(moved->rowCount(), 1);
        bool box = false;
        for (int n = 0; n < moved->rowCount(); ++n)
            box = box || moved->item(n, 2)->text().contains(QStringLiteral("box M11"));
        EXPECT_TRUE(box);
        QTest::keyClick(goTo(form, "hold_all"), Qt::Key_Space);
        for (int n = 0; n < moved->rowCount(); ++n) {
            if (!moved->item(n, 2)->text().startsWith(QStringLiteral("box"))) continue;
            EXPECT_EQ(moved->item(n, 4)->text(), QStringLiteral("held"));
        }
        goTo(form, "print");
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    showContacts(window.get(), session, today, {});
    EXPECT_FALSE(read().where<Hold>({is("box", box("M11").id)}).empty());
}

TEST_F(Contacts, TheKeyIsThereWhereDiseaseIsSuspected) {
    window->goTo(5);
    auto* button = window->findChild<QPushButton*>(QStringLiteral("open_contacts"));
    ASSERT_NE(button, nullptr);
    EXPECT_TRUE(button->isHidden()) << "nothing is suspected";
    suspect();
    window->goTo(5);
    EXPECT_FALSE(button->isHidden());
    bool opened = false;
    inForm([&](QDialog& form) {
        opened = form.objectName() == QStringLiteral("contacts");
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Space);
    EXPECT_TRUE(opened);
}

TEST_F(Contacts, WithoutSuspicionItSaysSo) {
    showContacts(window.get(), session, today, {});
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("No hive is under suspicion"));
}

}  // namespace
}  // namespace combwright
