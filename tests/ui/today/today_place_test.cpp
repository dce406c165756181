// Today by keyboard: walking and opening the trips, ticking off, quieting with a reason and hearing
// again, carrying on what was left half done, and the calendar.
#include "ui/today/today_place.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QTimer>

#include "core/actions/yard/tasks.h"
#include "core/places/due/due_list.h"
#include "core/places/pages/due/due_words.h"
#include "tests/support/five_buckets.h"
#include "tests/support/in_window.h"
#include "tests/support/mill_lane.h"
#include "ui/honey_room/honey_page.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/shell/small_form.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class TodayInWindow : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-06-17");
        openWindow(test::millLaneBefore() + test::millLaneVisit() + R"(
{"do":"write-line","on":"2027-06-16","hive":"ML1","line":"e"}
{"do":"note-task","on":"2027-06-09","text":"order foundation","due":"2027-06-12"}
{"do":"note-task","on":"2027-06-09","text":"mend the lid","hive":"ML5"}
{"do":"note-task","on":"2027-06-09","text":"level the stand","hive":"ML7"}
{"do":"note-task","on":"2027-06-09","text":"read the scale","hive":"ML7"})");
        today = qobject_cast<TodayPlace*>(window->current());
        ASSERT_NE(today, nullptr) << "the program opens on Today";
    }
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) const {
        ASSERT_NE(focus(), nullptr);
        QTest::keyClick(focus(), key, with);
    }
    /// Walks to the line that begins so.
    void walkTo(const char* text) {
        press(Qt::Key_Home);
        for (std::size_t n = 0; n < today->due().lines().size(); ++n) {
            const QString said = lineText();
            if (said.startsWith(QLatin1String(text)) ||
                said.contains(QLatin1String(". ") + QLatin1String(text)))
                return;
            press(Qt::Key_Down);
        }
        FAIL() << "no line says " << text;
    }
    QString lineText() const { return today->due().accessibleDescription(); }
    /// Fills the next small form by its fields' names and presses Enter there.
    void answerForm(std::vector<std::pair<const char*, const char*>> fields) {
        auto* timer = new QTimer(window.get());
        QObject::connect(timer, &QTimer::timeout, timer, [this, timer, fields] {
            auto* form = qobject_cast<SmallForm*>(QApplication::activeModalWidget());
            if (!form) return;
            timer->stop();
            timer->deleteLater();
            ++forms;
            for (const auto& [name, text] : fields) {
                auto* edit = form->findChild<QLineEdit*>(QLatin1String(name));
                ASSERT_NE(edit, nullptr) << name;
                edit->setFocus();
                QTest::keyClicks(edit, QString::fromUtf8(text));
            }
            QTest::keyClick(form->focusWidget(), Qt::Key_Return);
            // What was refused keeps it open; a test must not wait for ever.
            if (form->isVisible()) form->reject();
        });
        timer->start(10);
    }
    /// Without a desktop nobody gives the window the keyboard back when a dialog goes.
    void comeBack() {
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        today->setFocus();
    }

    TodayPlace* today = nullptr;
    int forms = 0;
};

/// A closed run in August, its buckets not all read: nothing else is due.
class HoneyDueInWindow : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-20");
        openWindow(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})"
                   "\n" +
                   test::fiveBuckets() +
                   R"({"do":"close-run","on":"2027-08-08","run":"27-2"})"
                   "\n");
    }
};

TEST_F(TodayInWindow, SaysWhatIsDueAndTicksANoteOff) {
    EXPECT_EQ(focus(), &today->due());
    EXPECT_EQ(today->head().big.figure.toInt(), today->due().list().today());
    EXPECT_EQ(today->due().list().late(), 1);
    EXPECT_EQ(today->head().bigNote, QStringLiteral("due today,\none of them late"));
    walkTo("order foundation");
    EXPECT_EQ(today->head().action, QStringLiteral("Tick off"));
    press(Qt::Key_Return);
    EXPECT_EQ(session.read().find(Id<Task>{1})->done, clock.today());
    EXPECT_EQ(today->due().list().late(), 0);
    EXPECT_EQ(today->head().bigNote, QStringLiteral("due today"));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(today->due().list().late(), 1) << "and comes back";
}

TEST_F(TodayInWindow, TripsOpenAndCloseAndLeadToTheHive) {
    walkTo("Mill Lane: ");
    const auto lines = [&] { return today->due().lines().size(); };
    press(Qt::Key_Left);
    const std::size_t closed = lines();
    press(Qt::Key_Right);
    const std::size_t opened = lines();
    EXPECT_GT(opened, closed);
    walkTo("ML5");
    press(Qt::Key_Left);
    EXPECT_TRUE(lineText().contains(QStringLiteral("Mill Lane: "))) << "back to its trip";
    press(Qt::Key_Left);
    EXPECT_EQ(lines(), closed);
    press(Qt::Key_Right);
    walkTo("ML7");
    press(Qt::Key_Return);
    auto* yard = qobject_cast<YardPlace*>(window->current());
    ASSERT_NE(yard, nullptr);
    ASSERT_NE(yard->board().currentHive(), nullptr);
    EXPECT_EQ(yard->board().currentHive()->mark, QStringLiteral("ML7"));
    EXPECT_EQ(yard->day(), clock.today());
}

TEST_F(TodayInWindow, ARuleIsQuietedWithAReasonAndHeardAgain) {
    walkTo("Mill Lane: ");
    press(Qt::Key_Right);
    walkTo("ML5");
    answerForm({{"reason", "sold next week"}, {"until", "+10"}});
    press(Qt::Key_Q);
    EXPECT_EQ(forms, 1);
    ASSERT_EQ(session.read().all<Quiet>().size(), 1U);
    const Quiet quiet = session.read().all<Quiet>().front();
    EXPECT_EQ(quiet.reason.text(), "sold next week");
    EXPECT_EQ(quiet.until, test::day("2027-06-27"));
    EXPECT_TRUE(quiet.hive);
    comeBack();
    ASSERT_GE(today->due().list().quieted.size(), 1U);
    press(Qt::Key_End);
    EXPECT_TRUE(lineText().contains(QStringLiteral("quieted")));
    press(Qt::Key_Return);
    press(Qt::Key_End);
    EXPECT_TRUE(lineText().contains(QStringLiteral("sold next week")));
    press(Qt::Key_Return);
    EXPECT_EQ(session.read().all<Quiet>().front().until, test::day("2027-06-16"));
    EXPECT_TRUE(today->due().list().quieted.empty());
}

TEST_F(TodayInWindow, WithoutAReasonNothingIsQuieted) {
    walkTo("order foundation");
    answerForm({});
    press(Qt::Key_Q);
    EXPECT_EQ(forms, 1);
    EXPECT_TRUE(session.read().all<Quiet>().empty());
}

TEST_F(TodayInWindow, ANoteIsWrittenDown) {
    answerForm({{"text", "paint the new supers"}, {"due", "30 jun"}, {"hive", "ML2"}});
    press(Qt::Key_N);
    EXPECT_EQ(forms, 1);
    ASSERT_EQ(session.read().all<Task>().size(), 5U) << session.lastTold().toStdString();
    const Task task = session.read().all<Task>().back();
    EXPECT_EQ(task.text.text(), "paint the new supers");
    EXPECT_EQ(task.due, test::day("2027-06-30"));
    ASSERT_TRUE(task.hive);
    EXPECT_EQ(session.read().find(*task.hive)->mark.text(), "ML2");
}

TEST_F(TodayInWindow, WhatWasLeftHalfDoneIsCarriedOn) {
    press(Qt::Key_Tab);
    ASSERT_EQ(focus(), &today->half());
    ASSERT_NE(today->half().current(), nullptr);
    EXPECT_EQ(today->half().current()->what, HalfDone::What::Visit);
    EXPECT_TRUE(
        today->half().accessibleDescription().contains(QStringLiteral("1 of 12 hives written")));
    press(Qt::Key_Return);
    auto* yard = qobject_cast<YardPlace*>(window->current());
    ASSERT_NE(yard, nullptr);
    EXPECT_TRUE(yard->sheetIsOpen());
    EXPECT_EQ(yard->day(), test::day("2027-06-16"));
}

/// A line that was typed and not kept waits at the head of the list, and Enter goes into it.
TEST_F(TodayInWindow, ALineTypedAndNotKeptIsLeftHalfDone) {
    const Hive hive = *session.read().first<Hive>({is("mark", std::string("ML4"))});
    const QString sheet = QStringLiteral("yard-sheet %1 2027-06-16").arg(hive.yard.number);
    const QString row = QStringLiteral("hive %1").arg(hive.id.number);
    session.drafts().hold(sheet, row, QStringLiteral("e b4 half"));
    today->reload();
    press(Qt::Key_Tab);
    ASSERT_EQ(focus(), &today->half());
    press(Qt::Key_Home);
    const QString said = today->half().accessibleDescription();
    EXPECT_TRUE(said.contains(QStringLiteral("Yard sheet, Mill Lane, Wed 16 Jun")))
        << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("1 line typed and not kept. of ML4. Go there")))
        << said.toStdString();
    press(Qt::Key_Return);
    auto* yard = qobject_cast<YardPlace*>(window->current());
    ASSERT_NE(yard, nullptr);
    ASSERT_TRUE(yard->sheetIsOpen());
    EXPECT_EQ(yard->day(), test::day("2027-06-16"));
    const int at = yard->sheetView().table().currentIndex().row();
    EXPECT_EQ(yard->sheetView().model().draftOf(at), QStringLiteral("e b4 half"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(session.drafts().of(sheet).empty());
    today->reload();
    for (const HalfDone& each : today->half().list()) EXPECT_NE(each.what, HalfDone::What::Typed);
}

TEST_F(TodayInWindow, CountsAnewWhatIsDueWheneverSomethingWasWritten) {
    const int before = today->waiting();
    EXPECT_EQ(before, dueList(session.read(), clock.today()).today());
    window->goTo(1);
    session.run(NoteTask{.on = clock.today(), .text = *Name::of("call"), .due = clock.today()});
    EXPECT_EQ(today->waiting(), before + 1);
    session.undo();
    EXPECT_EQ(today->waiting(), before);
    clock.set("2027-06-30");
    EXPECT_EQ(today->waiting(), dueList(session.read(), clock.today()).today()) << "another day";
    session.close();
    EXPECT_EQ(today->waiting(), 0);
}

TEST_F(TodayInWindow, GoesIntoACalendar) {
    const QString out = QString::fromStdString(path("due.ics"));
    EXPECT_TRUE(today->writeCalendarTo(out));
    QFile file(out);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().contains("UID:task-1@combwright\r\n"));
    EXPECT_FALSE(today->writeCalendarTo(QStringLiteral("/nowhere/due.ics")));
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("cannot be written")));
}

TEST_F(TodayInWindow, FitsLargeTypeAndPrints) {
    for (const double factor : {1.0, 1.3, 2.0}) {
        setTextSize(factor);
        today->reload();
        QApplication::processEvents();
        EXPECT_LE(today->due().width(), today->width()) << factor;
        EXPECT_GE(today->due().height(), today->due().heightForWidth(today->due().width()))
            << factor << ": nothing of the list is cut";
        EXPECT_GE(today->half().height(), today->half().heightForWidth(today->half().width()))
            << factor;
    }
    setTextSize(1.0);
    const auto sheets = today->sheets();
    ASSERT_FALSE(sheets.empty());
    EXPECT_EQ(sheets.front().id, QStringLiteral("due"));
    EXPECT_FALSE(sheets.front().page().blocks.empty());
}

class EmptyToday : public test::WindowTest {};

TEST_F(EmptyToday, SaysWhatToDoFirst) {
    openWindow("");
    auto* today = qobject_cast<TodayPlace*>(window->current());
    ASSERT_NE(today, nullptr);
    auto* begin = today->findChild<QPushButton*>(QStringLiteral("begin"));
    ASSERT_NE(begin, nullptr);
    EXPECT_EQ(focus(), begin);
    QTest::keyClick(begin, Qt::Key_Return);
    EXPECT_NE(qobject_cast<YardPlace*>(window->current()), nullptr);
}

TEST_F(TodayInWindow, ALineLeadsToThePageAndTheHiveItIsAbout) {
    const auto ruleOf = [&](const DueLine& line) {
        const DueTrip& trip = today->due().list().trips[line.trip];
        const auto& row = trip.hives[line.what == DueLine::What::Hive ? line.row : 0];
        return std::pair{row.items.front().rule, QString::fromStdString(row.mark)};
    };
    // Walks to a hive whose first work is of that kind, and presses Enter there.
    const auto follow = [&](DueRule rule) {
        comeBack();
        press(Qt::Key_1, Qt::ControlModifier);
        today->due().setFocus();
        for (std::size_t n = 0; n < today->due().lines().size(); ++n) {
            today->due().choose(static_cast<int>(n));
            const DueLine* line = today->due().current();
            if (line->what == DueLine::What::Trip) press(Qt::Key_Right);
        }
        press(Qt::Key_Home);
        for (std::size_t n = 0; n < today->due().lines().size(); ++n) {
            const DueLine* line = today->due().current();
            const bool ofHive = line->what == DueLine::What::Hive ||
                                (line->what == DueLine::What::Trip &&
                                 today->due().list().trips[line->trip].items() == 1);
            if (ofHive && ruleOf(*line).first == rule) {
                const QString mark = ruleOf(*line).second;
                press(Qt::Key_Return);
                return mark;
            }
            press(Qt::Key_Down);
        }
        ADD_FAILURE() << "nothing of rule " << static_cast<int>(rule);
        return QString();
    };
    QString mark = follow(DueRule::Treat);
    auto* yard = qobject_cast<YardPlace*>(window->current());
    ASSERT_NE(yard, nullptr);
    EXPECT_EQ(yard->head().title, QStringLiteral("Health"));
    EXPECT_EQ(focus(), &yard->health().table());
    ASSERT_NE(yard->health().table().current(), nullptr);
    EXPECT_EQ(yard->health().table().current()->mark, mark);

    mark = follow(DueRule::Feed);
    EXPECT_EQ(yard->head().title, QStringLiteral("Stores"));
    ASSERT_NE(yard->storesPage().table().current(), nullptr);
    EXPECT_EQ(yard->storesPage().table().current()->mark, mark);
    EXPECT_EQ(mark, QStringLiteral("ML6")) << "hefted light";
    EXPECT_EQ(focus(), &yard->storesPage().table());

    mark = follow(DueRule::Queen);
    ASSERT_NE(yard->board().currentHive(), nullptr);
    EXPECT_EQ(yard->board().currentHive()->mark, mark);
    EXPECT_TRUE(yard->boardPage().card().isOpen()) << "what is waited for, and her story";
    press(Qt::Key_Escape);
    EXPECT_EQ(focus(), &yard->board());
}

TEST_F(TodayInWindow, OpensWhereSomethingHalfTypedWaits) {
    session.drafts().hold(QStringLiteral("yard-sheet 1 2027-06-17"), QStringLiteral("1"),
                          QStringLiteral("e b7"));
    const QString file = session.path();
    session.close();
    ASSERT_TRUE(session.open(file));
    EXPECT_NE(qobject_cast<YardPlace*>(window->current()), nullptr);
    session.drafts().drop(QStringLiteral("yard-sheet 1 2027-06-17"), QStringLiteral("1"));
}

TEST_F(TodayInWindow, OpensTheYardAndDayALineWasTypedFor) {
    playAll(session.season(), R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Creek","mark":"C1","boxes":"deep D9","origin":"nucleus"})");
    const Hive hive = *session.read().first<Hive>({is("mark", std::string("C1"))});
    const QString sheet = QStringLiteral("yard-sheet %1 2027-06-16").arg(hive.yard.number);
    const QString row = QStringLiteral("hive %1").arg(hive.id.number);
    session.drafts().hold(sheet, row, QStringLiteral("e b4 half"));
    const QString file = session.path();
    session.close();
    ASSERT_TRUE(session.open(file));
    auto* yard = qobject_cast<YardPlace*>(window->current());
    ASSERT_NE(yard, nullptr);
    EXPECT_EQ(yard->yard(), hive.yard) << "its own yard, not the first";
    EXPECT_EQ(yard->day(), test::day("2027-06-16"));
    ASSERT_TRUE(yard->sheetIsOpen());
    EXPECT_EQ(yard->sheetView().model().draftOf(1), QStringLiteral("e b4 half"));
    press(Qt::Key_Right);
    EXPECT_EQ(yard->sheetView().model().lineOf(1), QStringLiteral("e b4 half"));
    session.drafts().drop(sheet, row);
    yard->sheetView().model().discard(1);
}

TEST_F(HoneyDueInWindow, AHoneyLineOpensTheHoneyItIsAbout) {
    auto* today = qobject_cast<TodayPlace*>(window->current());
    ASSERT_NE(today, nullptr);
    ASSERT_FALSE(today->due().lines().empty());
    QTest::keyClick(focus(), Qt::Key_Home);
    QTest::keyClick(focus(), Qt::Key_Return);
    auto* room = qobject_cast<HoneyRoomPlace*>(window->current());
    ASSERT_NE(room, nullptr) << today->due().accessibleDescription().toStdString();
    EXPECT_NE(qobject_cast<HoneyPage*>(room->page()), nullptr);
}

}  // namespace
}  // namespace combwright
