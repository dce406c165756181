// A load taken back turns on; what happens when it is done again, and how frames of no box are
// called, by the number pad alone.
#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

#include "tests/support/hill_and_creek.h"
#include "tests/support/in_window.h"
#include "tests/support/open_place.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {
namespace {

class LoadDoneAgain : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-07");
        openWindow(test::hillAndCreekBefore() +
                   R"({"do":"clip-peg","on":"2027-08-07","peg":1,"box":"H1a"}
{"do":"clip-peg","on":"2027-08-07","peg":2,"box":"H1b"}
)");
        room = test::openPlace<HoneyRoomPlace>(*window);
        ASSERT_NE(room, nullptr);
        room->setFocus();
        keys("1\n21.4\n2\n19.8\n");
    }
    void keys(const std::string& typing) {
        for (const char each : typing) {
            QWidget* at = QApplication::focusWidget();
            ASSERT_NE(at, nullptr);
            clock.pass(std::chrono::seconds(3));
            if (each == '\n')
                QTest::keyClick(at, Qt::Key_Enter, Qt::KeypadModifier);
            else
                QTest::keyClick(at, each, Qt::KeypadModifier);
        }
    }
    HoneyRoomPlace* room = nullptr;
};

TEST_F(LoadDoneAgain, WhatIsWrittenDownDoesNotTurn) {
    keys("\n");
    ASSERT_TRUE(room->spinDesk().turns());
    clock.pass(std::chrono::minutes(12));
    keys("-.");
    ASSERT_TRUE(session.read().all<SpinLoad>().empty());
    ASSERT_TRUE(room->spinDesk().turns()) << "taken back it turns on";
    session.redo();
    ASSERT_EQ(session.read().all<SpinLoad>().size(), 1U);
    EXPECT_FALSE(room->spinDesk().load()) << "else + would write it a second time";
    keys(".");
    EXPECT_TRUE(session.read().all<SpinLoad>().empty());
    EXPECT_TRUE(room->spinDesk().turns()) << "and once more it turns on";
}

TEST_F(LoadDoneAgain, AFrameOfNoBoxIsOfABoxNobodyKnows) {
    keys("*");
    ASSERT_EQ(session.read().all<SetAside>().size(), 1U);
    ASSERT_FALSE(session.read().all<SetAside>().front().box) << "two boxes hang in the load";
    EXPECT_TRUE(
        room->entry().readBack().text().contains(QStringLiteral("1 frame of a box nobody knows")))
        << room->entry().readBack().text().toStdString();
}

}  // namespace
}  // namespace combwright
