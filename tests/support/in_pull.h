// The Pull place in the real window, walked by keyboard.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QTimer>
#include <set>

#include "tests/support/pull_season.h"
#include "tests/support/support.h"
#include "ui/look/style.h"
#include "ui/pull/pull_place.h"
#include "ui/shell/main_window.h"

namespace combwright::test {

class InPull : public SeasonTest {
  protected:
    void SetUp() override {
        clock.set(pullDay);
        {
            Season season = newSeason();
            playAll(season, pullSeason());
        }
        openWindow();
    }
    void TearDown() override {
        window.reset();
        setTextSize(1.0);
    }
    void setTextSize(double factor) {
        session.setLook(
            applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false, factor));
    }
    /// A window on the file as it lies on the disk, with the place open.
    void openWindow() {
        window.reset();
        setTextSize(1.0);
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
        place = qobject_cast<PullPlace*>(window->current());
        ASSERT_NE(place, nullptr);
        place->settle();
    }
    template <class Widget>
    Widget* find(const char* name) const {
        return place->findChild<Widget*>(QLatin1String(name));
    }
    /// Presses a key where the cursor is.
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) const {
        QWidget* there = QApplication::focusWidget();
        ASSERT_NE(there, nullptr) << "the cursor is nowhere";
        QTest::keyClick(there, key, with);
        place->settle();
    }
    /// Walks by Tab to the control of that name.
    void tabTo(const char* name) const {
        for (int n = 0; n < 60; ++n) {
            QWidget* there = QApplication::focusWidget();
            ASSERT_NE(there, nullptr);
            if (there->objectName() == QLatin1String(name)) break;
            QTest::keyClick(there, Qt::Key_Tab);
        }
        ASSERT_EQ(QApplication::focusWidget()->objectName(), QLatin1String(name));
    }
    /// The same, and types over what stands there.
    void typeLimit(const char* name, const char* text) const {
        tabTo(name);
        auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_NE(field, nullptr) << name;
        field->selectAll();
        if (*text)
            QTest::keyClicks(field, QString::fromUtf8(text));
        else
            QTest::keyClick(field, Qt::Key_Delete);
        place->settle();
    }
    QString limit(const char* name) const {
        return place->findChild<QLineEdit*>(QLatin1String(name))->text();
    }
    /// Walks to a box by the arrows: hives to the right, boxes downwards.
    void goTo(int hive, int box) const {
        place->board().setFocus();
        for (int n = 0; n < 20; ++n) press(Qt::Key_Left);
        for (int n = 0; n < 5; ++n) press(Qt::Key_Up);
        for (int n = 0; n < hive; ++n) press(Qt::Key_Right);
        for (int n = 0; n < box; ++n) press(Qt::Key_Down);
    }
    std::string current() const {
        const PullBoxRow* box = place->board().current();
        return box ? box->box.mark : "none";
    }
    std::string text(const char* label) const {
        return place->findChild<QLabel*>(QLatin1String(label))->text().toStdString();
    }
    QPushButton* nextThing() const {
        return window->findChild<QPushButton*>(QStringLiteral("next_thing"));
    }
    /// Closes whatever dialog opens next, so that the test is not held up by it; counts them.
    void closeDialogs() {
        closer.setInterval(20);
        QObject::connect(&closer, &QTimer::timeout, window.get(), [this] {
            if (auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget())) {
                ++dialogs;
                dialog->reject();
            }
        });
        closer.start();
    }

    /// From the board by Tab, or Shift+Tab, to every control and home again.
    void walkRound(Qt::Key key) const {
        place->board().setFocus();
        std::set<QString> met;
        bool home = false;
        for (int n = 0; n < 60 && !home; ++n) {
            press(key);
            met.insert(QApplication::focusWidget()->objectName());
            home = place->board().hasFocus();
        }
        EXPECT_TRUE(home);
        for (const char* name :
             {"winter_need", "feed_up_to", "min_capped", "max_water", "carry", "boxes", "frames",
              "clearer_boards", "full_frame", "extractor_slots", "bucket", "spare_buckets",
              "yard_1", "yard_2", "for_day", "next_thing"})
            EXPECT_TRUE(met.count(QLatin1String(name))) << name << " is not reached";
    }

    Session session{clock};
    std::unique_ptr<MainWindow> window;
    PullPlace* place = nullptr;
    QTimer closer;
    int dialogs = 0;
};

}  // namespace combwright::test
