// What the tests of the window's shell share: a season in a folder of its own, the real window on
// it, and the keyboard.
#pragma once

#include <QApplication>
#include <QDialog>
#include <QFile>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QTimer>

#include "tests/support/open_place.h"
#include "tests/support/support.h"
#include "ui/look/style.h"
#include "ui/shell/main_window.h"
#include "ui/shell/start/recent_seasons.h"
#include "ui/yard/yard_place.h"

namespace combwright::test {

inline constexpr const char* hillLines =
    R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
)";

class ShellTest : public SeasonTest {
  protected:
    void SetUp() override {
        session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
        RecentSeasons().clear();  // what other tests of this program opened
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    QString file(const char* name = "season.combwright") const {
        return QString::fromStdString(path(name));
    }
    /// A season of two hives, closed again.
    void makeSeason(const char* name = "season.combwright") const {
        auto season = Season::create(path(name), clock);
        ASSERT_TRUE(season);
        playAll(*season, hillLines);
    }
    void openSeason() {
        makeSeason();
        ASSERT_TRUE(session.open(file()));
        place = test::openPlace<YardPlace>(*window);
    }
    QByteArray bytes(const QString& of) const {
        QFile in(of);
        EXPECT_TRUE(in.open(QIODevice::ReadOnly));
        return in.readAll();
    }
    QWidget* focus() const { return QApplication::focusWidget(); }
    QLineEdit* line() const { return qobject_cast<QLineEdit*>(focus()); }
    void key(Qt::Key pressed, Qt::KeyboardModifiers with = Qt::NoModifier) const {
        comeBack();
        QTest::keyClick(focus() ? focus() : window.get(), pressed, with);
    }
    /// Without a desktop nobody gives the window the keyboard back when a dialog goes.
    void comeBack() const {
        if (QApplication::activeWindow()) return;
        window->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    template <class Widget>
    Widget* named(const char* name, const QWidget* in = nullptr) const {
        return (in ? in : window.get())->template findChild<Widget*>(QLatin1String(name));
    }
    QDialog* dialog(const char* name) const {
        for (QWidget* widget : QApplication::topLevelWidgets())
            if (widget->isVisible() && widget->objectName() == QLatin1String(name))
                return qobject_cast<QDialog*>(widget);
        return nullptr;
    }
    /// Types a path into the next file dialog and presses Enter there; asked again and again, for
    /// the dialog waits within the call that opens it.
    void answerFileDialog(const QString& with) {
        auto* timer = new QTimer(window.get());
        QObject::connect(timer, &QTimer::timeout, timer, [this, timer, with] {
            auto* asking = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
            if (!asking) return;
            auto* name = asking->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
            if (!name) return;
            timer->stop();
            timer->deleteLater();
            ++fileDialogs;
            name->setFocus();
            // Not letter by letter: Qt's list of what might be meant would open over the dialog.
            name->setText(with);
            QTest::keyClick(name, with.isEmpty() ? Qt::Key_Escape : Qt::Key_Return);
        });
        timer->start(10);
    }

    Session session{clock};
    std::unique_ptr<MainWindow> window;
    YardPlace* place = nullptr;
    int fileDialogs = 0;
};

}  // namespace combwright::test
