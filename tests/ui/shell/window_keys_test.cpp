// Keys that belong to the whole window reach it from wherever one is: Ctrl+Z from a field nobody
// typed in, Enter on a button; and a place behind the one in front leaves its head alone.
#include <gtest/gtest.h>

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include "tests/support/in_window.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class WindowKeys : public test::WindowTest {
  protected:
    void SetUp() override {
        openWindow(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2, x, medium M2"})");
        m_yard = open<YardPlace>();
        ASSERT_NE(m_yard, nullptr);
    }
    YardPlace& yard() { return *m_yard; }

  private:
    YardPlace* m_yard = nullptr;
};

TEST_F(WindowKeys, TakeBackALineFromTheEmptyFieldBelowIt) {
    yard().openSheet();
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("e b6"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    ASSERT_EQ(session.read().all<Inspection>().size(), 1U);
    ASSERT_NE(qobject_cast<QLineEdit*>(QApplication::focusWidget()), nullptr);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(session.read().all<Inspection>().empty());
    // In a field one has typed in, the key is the field's.
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("e"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(session.season().nextUndo()->info.action == "add-hive");
}

TEST_F(WindowKeys, EnterPressesTheButtonOneIsAt) {
    auto* button = window->findChild<QPushButton*>(QStringLiteral("next_thing"));
    ASSERT_NE(button, nullptr);
    button->setFocus();
    EXPECT_FALSE(yard().sheetIsOpen());
    QTest::keyClick(button, Qt::Key_Return);
    EXPECT_TRUE(yard().sheetIsOpen());
}

TEST_F(WindowKeys, APlaceBehindLeavesTheHeadAlone) {
    auto* yards = window->findChild<QComboBox*>(QStringLiteral("yard"));
    ASSERT_NE(yards, nullptr);
    EXPECT_TRUE(yards->isVisible());
    window->goTo(2);
    EXPECT_FALSE(yards->isVisible());
    session.undo();
    EXPECT_FALSE(yards->isVisible());
}

TEST_F(WindowKeys, WhatWasToldIsForgottenInAnotherPlace) {
    session.tell(QStringLiteral("a slip"), true);
    window->goTo(2);
    window->goTo(0);
    EXPECT_EQ(window->findChild<FootBar*>()->told(), QString());
}

}  // namespace
}  // namespace combwright
