// A season of the test's own in the real window, walked by keyboard.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <memory>
#include <string_view>

#include "tests/support/open_place.h"
#include "tests/support/support.h"
#include "ui/look/style.h"
#include "ui/shell/main_window.h"

namespace combwright::test {

class WindowTest : public SeasonTest {
  protected:
    /// Plays the script into a new season and opens it in a window of 1280 by 800.
    void openWindow(std::string_view script) {
        {
            Season season = newSeason();
            playAll(season, script);
        }
        setTextSize(1.0);
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    void setTextSize(double factor) {
        session.setLook(
            applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false, factor));
    }
    /// Ctrl and the number of the place, from 0; what came to the front.
    template <class InFront>
    InFront* goToPlace(int index) {
        QTest::keyClick(window.get(), static_cast<Qt::Key>(Qt::Key_1 + index), Qt::ControlModifier);
        return qobject_cast<InFront*>(window->current());
    }
    /// The place of that kind, brought to the front.
    template <class InFront>
    InFront* open() {
        return openPlace<InFront>(*window);
    }
    static QWidget* focus() { return QApplication::focusWidget(); }

    Session session{clock};
    std::unique_ptr<MainWindow> window;
};

}  // namespace combwright::test
