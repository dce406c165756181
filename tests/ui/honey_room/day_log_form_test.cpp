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
#include "tests/support/open_place.h"
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
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("room"));
        typeOn(form, {});                   // how warm
        typeOn(form, {});                   // how damp
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

class DayLogOfARun : public DayLog {
  protected:
    void SetUp() override {
        clock.set("2027-08-08");
        openWindow(test::hillAndCreekBefore() +
                   R"({"do":"open-run","on":"2027-08-08","name":"27-2","yard":"Hill"})");
        room = test::openPlace<HoneyRoomPlace>(*window);
        ASSERT_NE(room, nullptr);
    }
    void TearDown() override { session.setUnits(Units::Metric); }
    static void typeIn(QDialog& form, const char* name, const QString& text) {
        auto* field = form.findChild<QLineEdit*>(QLatin1String(name));
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, text);
    }
    Extraction run() { return session.read().all<Extraction>().front(); }
    HoneyRoomPlace* room = nullptr;
};

TEST_F(DayLogOfARun, HowWarmAndDampTheRoomIsGoesToItsRunAndIsShown) {
    inForm([](QDialog& form) {
        typeIn(form, "room", QStringLiteral("27.5"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Plus, Qt::KeypadModifier);
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("damp")) << "by the pad too";
        QTest::keyClicks(form.focusWidget(), QStringLiteral("62"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
    });
    EXPECT_EQ(run().room, Temperature::tenths(275));
    EXPECT_EQ(run().damp, Share::percent(62));
    EXPECT_TRUE(room->head().under.contains(QStringLiteral("27.5 °C, 62 % damp")))
        << room->head().under.toStdString();
    inForm([](QDialog& form) {
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("room"))->text(),
                  QStringLiteral("27.5"));
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("damp"))->text(), QStringLiteral("62"));
        typeIn(form, "damp", QStringLiteral("0.62"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
        EXPECT_TRUE(form.isVisible()) << "per cent are meant";
        typeIn(form, "damp", QStringLiteral("58 %"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
    });
    EXPECT_EQ(run().damp, Share::percent(58));
    EXPECT_EQ(run().room, Temperature::tenths(275)) << "what was not typed anew stays";
    session.undo();
    EXPECT_EQ(run().damp, Share::percent(62));
    session.undo();
    EXPECT_FALSE(run().room || run().damp) << "one step with the log";
}

TEST_F(DayLogOfARun, DegreesAreThosePeopleRead) {
    session.setUnits(Units::UsCustomary);
    inForm([](QDialog& form) {
        typeIn(form, "room", QStringLiteral("80.6"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
    });
    EXPECT_EQ(run().room, Temperature::tenths(270));
}

TEST_F(DayLogOfARun, OnADayWithoutARunItIsSaidWhyNotAndNothingIsKept) {
    inForm([](QDialog& form) {
        typeIn(form, "day", QStringLiteral("2027-08-01"));
        typeIn(form, "who", QStringLiteral("Ann"));
        typeIn(form, "damp", QStringLiteral("62"));
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
        EXPECT_TRUE(form.isVisible());
        const auto* reason = form.findChild<QLabel*>(QStringLiteral("reason"));
        EXPECT_TRUE(reason->text().contains(QStringLiteral("no run was there")))
            << reason->text().toStdString();
    });
    EXPECT_FALSE(log("2027-08-01"));
    EXPECT_FALSE(run().damp);
}

}  // namespace
}  // namespace combwright
