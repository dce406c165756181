// The honey room of two yards, driven in the real window by the number pad alone.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <string>
#include <vector>

#include "tests/support/hill_and_creek.h"
#include "tests/support/in_window.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright::test {

/// A peg on each box, 1 to 6 on those of Hill, 7 to 11 on those of Creek.
inline std::string clipLines() {
    std::string script;
    int peg = 0;
    const auto clip = [&](const WeighedBox& box) {
        if (!box.box) return;
        script += R"({"do":"clip-peg","on":"2027-08-07","peg":)" + std::to_string(++peg) +
                  R"(,"box":")" + box.box + "\"}\n";
    };
    for (const auto& box : hillBoxes) clip(box);
    for (const auto& box : creekBoxes) clip(box);
    return script;
}

class ByThePad : public WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-07");
        openWindow(hillAndCreekBefore() + clipLines());
        room = goToPlace<HoneyRoomPlace>(3);
        ASSERT_NE(room, nullptr);
        room->spinDesk().setBell([this] { ++rung; });
        room->setFocus();
    }
    /// Keys of the pad; `\n` is its Enter.
    void keys(const std::string& typing) {
        for (const char each : typing) {
            QWidget* at = QApplication::focusWidget();
            ASSERT_NE(at, nullptr);
            // A hand between two keys; what a bouncing key does is tried by itself.
            if (unhurried && (each == '+' || each == '-' || each == '\n'))
                clock.pass(std::chrono::seconds(3));
            if (each == '\n')
                QTest::keyClick(at, Qt::Key_Enter, Qt::KeypadModifier);
            else
                QTest::keyClick(at, each, Qt::KeypadModifier);
        }
    }
    QString readBack() const { return room->entry().readBack().text(); }
    QString asked() const { return askedText(room->entry().pad().ask()); }
    QString line() const { return room->entry().line()->text(); }
    static std::string kilos(int grams) {
        return QString::number(grams / 1000.0, 'f', 1).toStdString();
    }
    void spinAll(int loads) {
        for (int n = 0; n < loads; ++n) {
            keys("\n");
            ASSERT_TRUE(room->spinDesk().turns()) << readBack().toStdString();
            for (int minute = 0; minute < 13; ++minute) {
                clock.pass(std::chrono::minutes(1));
                room->spinDesk().tick();
            }
            keys("+");
            ASSERT_FALSE(room->spinDesk().load()) << readBack().toStdString();
        }
    }
    /// Frames of the load shown that somebody felt.
    int feltFrames() const {
        int many = 0;
        for (const auto& place : room->loadView().load().places)
            if (place && place->heft) ++many;
        return many;
    }
    template <class Record>
    std::vector<Record> all() const {
        return session.read().all<Record>();
    }

    HoneyRoomPlace* room = nullptr;
    int rung = 0;
    bool unhurried = true;
};

}  // namespace combwright::test
