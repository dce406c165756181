// A shed in winter and two hands on the keyboard of a form that waits within the call that opened
// it.
#pragma once

#include <QComboBox>
#include <functional>

#include "core/model/frames/frame.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "tests/ui/shell/shell_season.h"

namespace combwright::test {

class FormTest : public ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        clock.set("2028-01-10");
        {
            auto season = Season::create(path("season.combwright"), clock);
            ASSERT_TRUE(season);
            playAll(*season, hillLines);
            playAll(
                *season,
                R"({"do":"add-boxes","on":"2027-10-01","kind":"medium","first_mark":"M11","count":3,"contents":"9 drawn","stack":"1"}
{"do":"add-boxes","on":"2027-10-01","kind":"deep","first_mark":"D11","count":2,"contents":"10 drawn","stack":"2"}
{"do":"review-box","on":"2028-01-09","box":"M11","contents":"6 keep, 1 W, 2 V"}
{"do":"review-box","on":"2028-01-09","box":"M12","contents":"7 keep, 2 P"})");
        }
        ASSERT_TRUE(session.open(file()));
    }
    /// Does something in the form that opens next; the form must be gone afterwards.
    static void inForm(const std::function<void(QDialog&)>& hands) {
        QTimer::singleShot(0, qApp, [hands] {
            auto* form = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(form, nullptr);
            form->activateWindow();
            if (QTest::qWaitForWindowActive(form))
                hands(*form);
            else
                ADD_FAILURE() << "the form does not get the keyboard";
            if (form->isVisible()) {
                ADD_FAILURE() << "the form stays: " << reason(*form).toStdString();
                form->reject();
            }
        });
    }
    /// What is done in the dialog of that name as soon as it has the keyboard: for one that a key
    /// opens, and for one that follows on another.
    static void inDialog(const char* name, const std::function<void(QDialog&)>& hands) {
        auto* timer = new QTimer(qApp);
        QObject::connect(timer, &QTimer::timeout, timer, [timer, name, hands] {
            auto* open = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!open || open->objectName() != QLatin1String(name)) return;
            timer->stop();
            timer->deleteLater();
            open->activateWindow();
            ASSERT_TRUE(QTest::qWaitForWindowActive(open));
            hands(*open);
            if (!open->isVisible()) return;
            ADD_FAILURE() << name << " stays: " << reason(*open).toStdString();
            open->reject();
        });
        timer->start(5);
    }
    static QString reason(const QDialog& form) {
        const auto* words = form.findChild<QLabel*>(QStringLiteral("reason"));
        return words && words->isVisible() ? words->text() : QString();
    }
    /// By Tab to a field, as one without a mouse gets there.
    static QWidget* goTo(QDialog& form, const char* name) {
        for (int n = 0; n < 300; ++n) {
            QWidget* now = form.focusWidget();
            if (now && now->objectName() == QLatin1String(name)) return now;
            QTest::keyClick(now ? now : &form, Qt::Key_Tab);
        }
        ADD_FAILURE() << "Tab does not get to " << name;
        return &form;
    }
    static void choose(QDialog& form, const char* name, const QString& text) {
        auto* box = qobject_cast<QComboBox*>(goTo(form, name));
        ASSERT_NE(box, nullptr) << name;
        QTest::keyClick(box, Qt::Key_Home);
        for (int n = 0; n < box->count() && !box->currentText().startsWith(text); ++n)
            QTest::keyClick(box, Qt::Key_Down);
        ASSERT_TRUE(box->currentText().startsWith(text)) << box->currentText().toStdString();
    }
    static void fill(QDialog& form, const char* name, const char* text) {
        auto* edit = qobject_cast<QLineEdit*>(goTo(form, name));
        ASSERT_NE(edit, nullptr) << name;
        edit->selectAll();
        QTest::keyClick(edit, Qt::Key_Backspace);
        QTest::keyClicks(edit, QString::fromUtf8(text));
    }
    static void enter(QDialog& form) {
        QTest::keyClick(form.focusWidget() ? form.focusWidget() : &form, Qt::Key_Return);
    }
    /// Whether every field can be come to by Tab and has a name to be read out.
    static void expectReachable(QDialog& form) {
        for (QWidget* field : form.findChildren<QWidget*>()) {
            const bool asks = qobject_cast<QLineEdit*>(field) || qobject_cast<QComboBox*>(field);
            if (!asks || !field->isVisible() || !field->isEnabled()) continue;
            if (field->objectName().isEmpty() || field->objectName().startsWith("qt_")) continue;
            EXPECT_FALSE(field->accessibleName().isEmpty()) << field->objectName().toStdString();
            goTo(form, field->objectName().toUtf8().constData());
        }
    }
    const Read& read() const { return session.read(); }
    Box box(const char* mark) const { return *read().first<Box>({is("mark", std::string(mark))}); }
    Hive hive(const char* mark) const {
        return *read().find(Id<Hive>{
            *findNamed(read(), Hive::table, NameQuery{.name = mark, .on = clock.today()})});
    }
    /// Marks on a hive from the floor up.
    std::string stack(const char* mark) const {
        std::string marks;
        for (const Box& each : boxesOn(read(), hive(mark).id))
            marks += (marks.empty() ? "" : " ") + each.mark;
        return marks;
    }
    std::vector<Frame> framesOf(const char* mark) const {
        return read().where<Frame>({is("box", box(mark).id), isUnknown("retired")});
    }
    std::size_t steps() { return session.season().history().size(); }

    const Day today = day("2028-01-10");
};

}  // namespace combwright::test
