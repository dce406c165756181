// Two hands on the keyboard of a form that waits within the call that opened it. A key is pressed,
// the form opens, its fields are filled one after the other by Tab, Enter keeps it.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QTimer>
#include <functional>
#include <utility>
#include <vector>

namespace combwright::test {

class FormKeys {
  public:
    /// Fields by name, what is typed there, or chosen where they offer a choice.
    using Fields = std::vector<std::pair<const char*, const char*>>;

    /// Presses the key where the window has the keyboard; in the form that opens fills the fields
    /// and presses Enter. The form must be gone afterwards.
    static void fill(QWidget& window, Qt::Key key, const Fields& fields) {
        open(window, key, [&fields](QDialog& form) {
            for (const auto& [name, text] : fields) answer(form, name, text);
            QTest::keyClick(form.focusWidget() ? form.focusWidget() : &form, Qt::Key_Return);
        });
    }
    /// What was refused stands in the form, which is then left by Esc.
    static QString refused(QWidget& window, Qt::Key key, const Fields& fields) {
        QString said;
        open(window, key, [&](QDialog& form) {
            for (const auto& [name, text] : fields) answer(form, name, text);
            QTest::keyClick(form.focusWidget() ? form.focusWidget() : &form, Qt::Key_Return);
            const auto* reason = form.findChild<QLabel*>(QStringLiteral("reason"));
            if (form.isVisible() && reason && reason->isVisible()) said = reason->text();
            if (form.isVisible()) form.reject();
        });
        return said;
    }
    static void open(QWidget& window, Qt::Key key, const std::function<void(QDialog&)>& hands) {
        bool met = false;
        int looks = 0;
        QTimer poll;
        poll.setInterval(5);
        QObject::connect(&poll, &QTimer::timeout, qApp, [&] {
            auto* form = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!form && ++looks < 400) return;
            poll.stop();
            if (!form) return;
            met = true;
            form->activateWindow();
            if (QTest::qWaitForWindowActive(form))
                hands(*form);
            else
                ADD_FAILURE() << "the form does not get the keyboard";
            if (!form->isVisible()) return;
            const auto* reason = form->findChild<QLabel*>(QStringLiteral("reason"));
            ADD_FAILURE() << "the form stays: "
                          << (reason ? reason->text().toStdString() : std::string());
            form->reject();
        });
        poll.start();
        window.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
        QWidget* focus = QApplication::focusWidget();
        QTest::keyClick(focus ? focus : &window, key);
        EXPECT_TRUE(met) << "no form opened at key " << key;
        window.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }
    /// By Tab to a field, as one without a mouse gets there.
    static QWidget* goTo(QDialog& form, const char* name) {
        for (int n = 0; n < 200; ++n) {
            QWidget* now = form.focusWidget();
            if (now && now->objectName() == QLatin1String(name)) return now;
            QTest::keyClick(now ? now : &form, Qt::Key_Tab);
        }
        ADD_FAILURE() << "Tab does not get to " << name;
        return &form;
    }
    static void answer(QDialog& form, const char* name, const char* text) {
        QWidget* field = goTo(form, name);
        if (auto* box = qobject_cast<QComboBox*>(field)) {
            QTest::keyClick(box, Qt::Key_Home);
            for (int n = 0;
                 n < box->count() && !box->currentText().startsWith(QString::fromUtf8(text)); ++n)
                QTest::keyClick(box, Qt::Key_Down);
            EXPECT_TRUE(box->currentText().startsWith(QString::fromUtf8(text)))
                << name << ": " << box->currentText().toStdString();
            return;
        }
        auto* edit = qobject_cast<QLineEdit*>(field);
        ASSERT_NE(edit, nullptr) << name;
        edit->selectAll();
        QTest::keyClick(edit, Qt::Key_Backspace);
        QTest::keyClicks(edit, QString::fromUtf8(text));
    }
};

}  // namespace combwright::test
