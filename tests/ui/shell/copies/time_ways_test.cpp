// Time and copies in the window: the season as it stood beside today's, marked and unwritable; a
// what-if that says so; another copy taken in by keyboard.
#include "ui/shell/copies/time_ways.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPointer>
#include <QPushButton>
#include <QTimer>

#include "core/actions/copies/adopt.h"
#include "core/actions/yard/yards.h"
#include "core/storage/what_if.h"
#include "core/words/paper_mark.h"
#include "tests/support/in_window.h"
#include "ui/shell/copies/history_dialog.h"
#include "ui/shell/copies/merge_dialog.h"
#include "ui/shell/copies/what_if_dialog.h"

namespace combwright {
namespace {

using testing::HasSubstr;

constexpr std::string_view hillScript =
    R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})"
    "\n"
    R"({"do":"add-hive","on":"2027-04-02","yard":"Hill","mark":"H1","boxes":"deep"})";

class InTime : public test::WindowTest {
  protected:
    void TearDown() override {
        if (window) window->time().closeBeside();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        setPaperMark({});
    }
    /// Polls until a dialog of that name is in front, then does something in it.
    template <class Deed>
    void whenShown(const char* name, Deed deed) {
        auto* poll = new QTimer(window.get());
        poll->setInterval(20);
        QObject::connect(poll, &QTimer::timeout, poll, [this, poll, name, deed] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!dialog || dialog->objectName() != QLatin1String(name)) return;
            poll->stop();
            deed(*dialog);
            poll->deleteLater();
        });
        poll->start();
    }
    static QString noticeOf(const QWidget& of) {
        const auto* notice = of.findChild<QLabel*>(QStringLiteral("notice_text"));
        return notice && notice->isVisible() ? notice->text() : QString();
    }
};

TEST_F(InTime, TheSeasonAsItStoodStandsBesideTodays) {
    ASSERT_NO_FATAL_FAILURE(openWindow(hillScript));
    MainWindow* then = window->time().showAsItStood(1, test::day("2027-05-01"));
    ASSERT_TRUE(then);
    EXPECT_THAT(then->windowTitle().toStdString(), HasSubstr("As it stood on Sat 1 May 2027"));
    EXPECT_THAT(noticeOf(*then).toStdString(), HasSubstr("as it was recorded up to the end of"));
    EXPECT_EQ(noticeOf(*window), QString());
    EXPECT_THAT(window->windowTitle().toStdString(), testing::Not(HasSubstr("As it stood")));
    // What is written today changes nothing there.
    ASSERT_TRUE(session.run(AddYard{.on = test::day("2027-06-09"), .yard = test::name("Creek")}));
    EXPECT_EQ(session.read().all<Yard>().size(), 2U);
    // Its prints say so, those of today's do not.
    ASSERT_TRUE(QTest::qWaitForWindowActive(then));
    EXPECT_THAT(paperMark().toStdString(), HasSubstr("As it stood"));
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    EXPECT_EQ(paperMark(), QString());
    // It goes with the window it belongs to.
    const QPointer<MainWindow> held(then);
    window->time().closeBeside();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_FALSE(held);
}

TEST_F(InTime, HistoryIsReadByKeyboardAndOpensAPastDay) {
    ASSERT_NO_FATAL_FAILURE(openWindow(hillScript));
    ASSERT_TRUE(session.season().undo());
    std::string about;
    int days = 0;
    whenShown("history", [&](QDialog& dialog) {
        auto& list = static_cast<HistoryDialog&>(dialog).list();
        days = list.topLevelItemCount();
        // On the newest step; two below it is the first.
        EXPECT_TRUE(QTest::qWaitFor([&] { return QApplication::focusWidget() == &list; }, 3000));
        QTest::keyClick(&list, Qt::Key_Down);
        about = dialog.findChild<QLabel*>(QStringLiteral("history_about"))->text().toStdString();
        QTest::keyClick(&list, Qt::Key_Down);
        auto* then = dialog.findChild<QPushButton*>(QStringLiteral("as_it_stood"));
        then->setFocus();
        QTest::keyClick(then, Qt::Key_Space);
    });
    QTest::keyClick(window.get(), Qt::Key_H, Qt::ControlModifier);
    EXPECT_EQ(days, 1);
    EXPECT_THAT(about, HasSubstr("A hive added"));
    EXPECT_THAT(about, HasSubstr("taken back"));
    MainWindow* then = nullptr;
    for (QWidget* each : QApplication::topLevelWidgets())
        if (auto* other = qobject_cast<MainWindow*>(each); other && other != window.get())
            then = other;
    ASSERT_TRUE(then);
    EXPECT_THAT(then->windowTitle().toStdString(), HasSubstr("As it stood on"));
}

/// The clock of the tests stands still while they write, so days are told apart by moving it.
TEST_F(InTime, TwoDaysAreComparedByKeyboard) {
    ASSERT_NO_FATAL_FAILURE(openWindow(hillScript));
    clock.set("2027-06-12");
    playAll(session.season(), R"({"do":"add-yard","on":"2027-06-12","yard_name":"Creek"})");
    clock.set("2027-06-20");
    playAll(session.season(), R"({"do":"add-yard","on":"2027-06-20","yard_name":"Mill"})");
    std::string atFirst;
    std::string noDay;
    std::string between;
    std::string says;
    whenShown("two_days", [&](QDialog& dialog) {
        const auto* text = dialog.findChild<QPlainTextEdit*>();
        const auto* told = dialog.findChild<QLabel*>(QStringLiteral("days_says"));
        const auto type = [&](const char* words) {
            auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget());
            ASSERT_TRUE(field);
            field->selectAll();
            QTest::keyClicks(field, QString::fromUtf8(words));
        };
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return qobject_cast<QLineEdit*>(QApplication::focusWidget()) != nullptr; },
            3000));
        atFirst = text->toPlainText().toStdString();
        type("soon");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        noDay = told->text().toStdString();
        // The later one first: they are put in order.
        type("15 jun");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        type("2027-06-10");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        between = text->toPlainText().toStdString();
        says = told->text().toStdString();
        QTest::keyClick(&dialog, Qt::Key_Escape);
    });
    whenShown("history", [&](QDialog& dialog) {
        auto* wish = dialog.findChild<QPushButton*>(QStringLiteral("two_days_wish"));
        wish->setFocus();
        QTest::keyClick(wish, Qt::Key_Space);
    });
    QTest::keyClick(window.get(), Qt::Key_H, Qt::ControlModifier);
    EXPECT_THAT(noDay, HasSubstr("soon is no day"));
    EXPECT_THAT(atFirst, testing::Not(HasSubstr("Creek")));
    EXPECT_THAT(between, HasSubstr("Creek"));
    EXPECT_THAT(between, testing::Not(HasSubstr("Mill")));
    EXPECT_THAT(between, testing::Not(HasSubstr("Hill")));
    EXPECT_THAT(says, HasSubstr("From the end of Thu 10 Jun 2027 to the end of Tue 15 Jun 2027"));
    EXPECT_EQ(session.read().all<Yard>().size(), 3U) << "nothing is changed by looking";
}

TEST_F(InTime, AWhatIfSaysSoAndIsAdopted) {
    ASSERT_NO_FATAL_FAILURE(openWindow(hillScript));
    const QString plan = QString::fromStdString(path("plan.combwright"));
    ASSERT_TRUE(session.beginWhatIf(plan, QStringLiteral("a second yard")));
    EXPECT_FALSE(session.beginWhatIf(plan, {})) << "there is one of that name";
    MainWindow* beside = window->time().openBeside(session.beside(plan));
    ASSERT_TRUE(beside);
    EXPECT_THAT(beside->windowTitle().toStdString(), HasSubstr("What-if: a second yard"));
    EXPECT_THAT(noticeOf(*beside).toStdString(), HasSubstr("planned, not done"));
    {
        Season whatIf = Season::open(plan.toStdString(), clock);
        playAll(whatIf, R"({"do":"add-yard","on":"2027-06-20","yard_name":"Creek"})");
    }
    EXPECT_EQ(session.read().all<Yard>().size(), 1U);
    std::string differs;
    whenShown("what_if", [&](QDialog& dialog) {
        differs = dialog.findChild<QPlainTextEdit*>()->toPlainText().toStdString();
        QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("adopt")), Qt::LeftButton);
    });
    window->time().settleWhatIf(plan);
    EXPECT_THAT(differs, HasSubstr("Creek"));
    EXPECT_EQ(session.read().all<Yard>().size(), 2U);
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("Adopted"));
    session.undo();
    EXPECT_EQ(session.read().all<Yard>().size(), 1U);
    whenShown("what_if", [&](QDialog& dialog) {
        QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("drop")), Qt::LeftButton);
    });
    window->time().settleWhatIf(plan);
    EXPECT_FALSE(QFile::exists(plan));
}

TEST_F(InTime, AnotherCopyIsTakenInAfterChoosing) {
    ASSERT_NO_FATAL_FAILURE(openWindow(hillScript));
    const std::string helper = path("helper.combwright");
    ASSERT_TRUE(session.season().copyTo(helper));
    const auto note = [](const char* text) {
        return R"({"do":"amend","on":"2027-06-09","hive":"H1","set":{"note":")" +
               std::string(text) + R"("},"why":"seen"})";
    };
    {
        Season other = Season::open(helper, clock);
        playAll(other, note("cross"));
        playAll(other, R"({"do":"add-yard","on":"2027-06-09","yard_name":"Creek"})");
    }
    playAll(session.season(), note("calm"));
    bool couldAtOnce = true;
    bool couldThen = false;
    whenShown("merge", [&](QDialog& dialog) {
        auto& merge = static_cast<MergeDialog&>(dialog);
        auto* take = dialog.findChild<QPushButton*>(QStringLiteral("merge_take"));
        couldAtOnce = take->isEnabled();
        ASSERT_EQ(merge.questions().rowCount(), 1);
        EXPECT_EQ(merge.questions().item(0, 1)->text(), QStringLiteral("calm"));
        EXPECT_EQ(merge.questions().item(0, 2)->text(), QStringLiteral("cross"));
        dialog.activateWindow();
        (void)QTest::qWaitFor([] { return qobject_cast<QComboBox*>(QApplication::focusWidget()); },
                              2000);
        auto* choice = qobject_cast<QComboBox*>(QApplication::focusWidget());
        EXPECT_TRUE(choice) << "the first choice has the keyboard";
        if (!choice) return dialog.reject();
        QTest::keyClick(choice, Qt::Key_Down);
        QTest::keyClick(choice, Qt::Key_Down);
        QCoreApplication::processEvents();
        couldThen = take->isEnabled();
        take->click();
    });
    window->time().takeInCopy(QString::fromStdString(helper));
    EXPECT_FALSE(couldAtOnce);
    EXPECT_TRUE(couldThen);
    EXPECT_EQ(session.read().all<Yard>().size(), 2U);
    EXPECT_EQ(session.read().first<Hive>({})->note, "cross");
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("taken in as step 4"));
    session.undo();
    EXPECT_EQ(session.read().first<Hive>({})->note, "calm");
    window->time().takeInCopy(QString::fromStdString(path()));
    EXPECT_THAT(session.lastTold().toStdString(), HasSubstr("open here"));
}

}  // namespace
}  // namespace combwright
