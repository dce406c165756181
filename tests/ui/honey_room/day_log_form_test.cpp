// The log of the day typed back from its sheet: Ctrl+L, the fields in the sheet's order by Tab, and
// what is left empty stays unknown.
#include "ui/honey_room/day_log_form.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QTimer>
#include <functional>

#include "core/model/honey/room.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/in_window.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {
namespace {

class DayLog : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-08");
        openWindow(test::hillAndCreekBefore());
        ASSERT_NE(goToPlace<HoneyRoomPlace>(3), nullptr);
    }
    /// Opens the form by its key and does something in it; it must be gone afterwards.
    void inForm(const std::function<void(QDialog&)>& deed) {
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        window->current()->setFocus();
        bool opened = false;
        // The form holds the program until it is closed, so it is looked for from within.
        QTimer look;
        QObject::connect(&look, &QTimer::timeout, [&] {
            auto* form = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!form) return;
            look.stop();
            opened = form->objectName() == QStringLiteral("day_log");
            form->activateWindow();
            if (QTest::qWaitForWindowActive(form))
                deed(*form);
            else
                ADD_FAILURE() << "the form does not get the keyboard";
            if (form->isVisible()) form->reject();
        });
        look.start(5);
        QTest::keyClick(window->focusWidget(), Qt::Key_L, Qt::ControlModifier);
        EXPECT_TRUE(opened) << "Ctrl+L opens the form";
    }
    static void typeOn(QDialog& form, const QString& text) {
        QTest::keyClicks(form.focusWidget(), text);
        QTest::keyClick(form.focusWidget(), Qt::Key_Tab);
    }
    std::optional<RoomDay> log(const char* day) {
        return session.read().first<RoomDay>({is("on_day", test::day(day))});
    }
};

TEST_F(DayLog, IsTypedInTheOrderOfTheSheet) {
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("who"));
        typeOn(form, QStringLiteral("Ann, Ben"));
        typeOn(form, QStringLiteral("2"));
        typeOn(form, QStringLiteral("9:15"));
        typeOn(form, QStringLiteral("y"));  // room cleaned
        typeOn(form, QStringLiteral("y"));  // hands washed
        typeOn(form, {});                   // machine dry: nobody said
        typeOn(form, QStringLiteral("n"));  // knife checked
        typeOn(form, {});
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("ended"));
        typeOn(form, QStringLiteral("1440"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
    });
    const auto kept = log("2027-08-08");
    ASSERT_TRUE(kept);
    EXPECT_EQ(kept->who, "Ann, Ben");
    EXPECT_EQ(kept->hands, Count(2));
    EXPECT_EQ(kept->begun, *parseInstant("2027-08-08T09:15:00Z"));
    EXPECT_EQ(kept->ended, *parseInstant("2027-08-08T14:40:00Z"));
    EXPECT_EQ(kept->roomCleaned, true);
    EXPECT_EQ(kept->handsWashed, true);
    EXPECT_EQ(kept->machineDry, std::nullopt) << "left empty is not known";
    EXPECT_EQ(kept->knifeChecked, false);
    EXPECT_EQ(kept->machineWashed, std::nullopt);
}

TEST_F(DayLog, WhatIsKnownStandsThereAndMoreIsAdded) {
    inForm([](QDialog& form) {
        typeOn(form, QStringLiteral("Ann"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
    });
    inForm([](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("who"))->text(), QStringLiteral("Ann"));
        auto* machine = form.findChild<QComboBox*>(QStringLiteral("machine_washed"));
        machine->setFocus();
        QTest::keyClicks(machine, QStringLiteral("y"));
        QTest::keyClick(machine, Qt::Key_Return);
    });
    const auto kept = log("2027-08-08");
    ASSERT_TRUE(kept);
    EXPECT_EQ(kept->who, "Ann");
    EXPECT_EQ(kept->machineWashed, true);
}

TEST_F(DayLog, ATimeNobodyCanReadIsToldAndNothingIsKept) {
    inForm([](QDialog& form) {
        typeOn(form, QStringLiteral("Ann"));
        typeOn(form, QStringLiteral("2"));
        QTest::keyClicks(form.focusWidget(), QStringLiteral("25:00"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
        EXPECT_TRUE(form.isVisible());
        const auto* reason = form.findChild<QLabel*>(QStringLiteral("reason"));
        EXPECT_TRUE(reason->text().contains(QStringLiteral("25:00")))
            << reason->text().toStdString();
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("begun"));
    });
    EXPECT_FALSE(log("2027-08-08"));
}

TEST_F(DayLog, AnotherDaysLogIsShownWhenItsDayIsTyped) {
    inForm([](QDialog& form) {
        auto* day = form.findChild<QLineEdit*>(QStringLiteral("day"));
        day->setFocus();
        day->selectAll();
        typeOn(form, QStringLiteral("yesterday"));
        typeOn(form, QStringLiteral("Cleo"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
    });
    EXPECT_FALSE(log("2027-08-08"));
    ASSERT_TRUE(log("2027-08-07"));
    EXPECT_EQ(log("2027-08-07")->who, "Cleo");
}

}  // namespace
}  // namespace combwright
