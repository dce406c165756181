// The honey room in the real window, on the worked example the morning it is spun.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <QTimer>
#include <functional>
#include <string>
#include <vector>

#include "tests/support/hill_and_creek.h"
#include "tests/support/in_window.h"
#include "ui/honey_room/close_day_form.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright::test {

class InTheHoneyRoom : public WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-07");
        openWindow(hillAndCreekBefore());
        room = goToPlace<HoneyRoomPlace>(3);
        ASSERT_NE(room, nullptr);
    }
    void type(const std::string& line) const {
        room->setFocus();
        auto* entry = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_NE(entry, nullptr) << "the entry line has the cursor";
        QTest::keyClicks(entry, QString::fromStdString(line));
        QTest::keyClick(entry, Qt::Key_Return);
        EXPECT_TRUE(entry->text().isEmpty()) << line << ": " << session.lastTold().toStdString();
    }
    /// Does something in the form that opens next; the form must be gone afterwards.
    static void inDialog(const std::function<void(CloseDayForm&)>& deed) {
        QTimer::singleShot(0, [deed] {
            auto* form = qobject_cast<CloseDayForm*>(QApplication::activeModalWidget());
            ASSERT_NE(form, nullptr);
            form->activateWindow();
            if (QTest::qWaitForWindowActive(form))
                deed(*form);
            else
                ADD_FAILURE() << "the form does not get the keyboard";
            if (form->isVisible()) {
                ADD_FAILURE() << "the form stays: " << form->outlook().text.toStdString();
                form->reject();
            }
        });
    }
    template <class Widget>
    Widget* part(const char* name) const {
        auto* found = room->findChild<Widget*>(QLatin1String(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    QLineEdit* entry() const { return part<QLineEdit>("entry"); }
    /// Types and presses Enter whatever comes of it.
    void tryLine(const std::string& line) const {
        entry()->clear();
        QTest::keyClicks(entry(), QString::fromStdString(line));
        QTest::keyClick(entry(), Qt::Key_Return);
    }
    void openCreek() {
        type("open 27-3 Creek");
        type("C2a 23.6");
        type("C2b 18.9");
    }
    std::vector<ExtractionBox> entries() const { return session.read().all<ExtractionBox>(); }

    static std::string kilos(int grams) {
        return QString::number(grams / 1000.0, 'f', 1).toStdString();
    }

    HoneyRoomPlace* room = nullptr;
};

}  // namespace combwright::test
