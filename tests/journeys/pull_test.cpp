// Planning a pull in the real window by keyboard alone: limits typed, boxes decided, the plan kept
// and taken back, and nothing that cannot be reached or has no name.
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

namespace combwright {
namespace {

class InPull : public test::SeasonTest {
  protected:
    void SetUp() override {
        clock.set(test::pullDay);
        {
            Season season = newSeason();
            playAll(season, test::pullSeason());
        }
        session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
        window = std::make_unique<MainWindow>(session);
        window->resize(1280, 800);
        window->show();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        QTest::keyClick(window.get(), Qt::Key_2, Qt::ControlModifier);
        place = qobject_cast<PullPlace*>(window->current());
        ASSERT_NE(place, nullptr);
        place->settle();
    }
    /// Presses a key where the cursor is.
    void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) const {
        QWidget* there = QApplication::focusWidget();
        ASSERT_NE(there, nullptr) << "the cursor is nowhere";
        QTest::keyClick(there, key, with);
        place->settle();
    }
    /// Walks by Tab to the field of that name and types over what stands there.
    void typeLimit(const char* name, const char* text) const {
        for (int n = 0; n < 60; ++n) {
            QWidget* there = QApplication::focusWidget();
            ASSERT_NE(there, nullptr);
            if (there->objectName() == QLatin1String(name)) break;
            QTest::keyClick(there, Qt::Key_Tab);
        }
        auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_TRUE(field && field->objectName() == QLatin1String(name)) << name;
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
        for (const char* name : {"winter_need", "feed_up_to", "min_capped", "max_water", "carry",
                                 "boxes", "clearer_boards", "next_thing"})
            EXPECT_TRUE(met.count(QLatin1String(name))) << name << " is not reached";
    }

    Session session{clock};
    std::unique_ptr<MainWindow> window;
    PullPlace* place = nullptr;
    QTimer closer;
    int dialogs = 0;
};

TEST_F(InPull, ShowsTheReckoningAtOnce) {
    EXPECT_EQ(place->sheet().taken, 2);
    EXPECT_NEAR(place->sheet().honey.grams, 20160, 1e-6);
    EXPECT_EQ(place->head().big.figure, QStringLiteral("20"));
    EXPECT_EQ(limit("winter_need"), QStringLiteral("16"));
    EXPECT_EQ(limit("min_capped"), QStringLiteral("75"));
    EXPECT_EQ(limit("feed_up_to"), QStringLiteral("0"));
    EXPECT_EQ(limit("boxes"), QString()) << "no limit is no number";
    EXPECT_TRUE(place->board().hasFocus()) << "the arrows work without a click";
    EXPECT_NE(text("follows").find("20 kg"), std::string::npos) << text("follows");
}

TEST_F(InPull, TheAnswerFollowsTheLimitsAsTheyAreTyped) {
    typeLimit("boxes", "1");
    EXPECT_EQ(place->sheet().taken, 1);
    EXPECT_NEAR(place->sheet().honey.grams, 12960, 1e-6);
    EXPECT_EQ(place->head().big.figure, QStringLiteral("13"));
    typeLimit("boxes", "");
    EXPECT_EQ(place->sheet().taken, 2);
    typeLimit("min_capped", "72");
    EXPECT_EQ(place->sheet().taken, 3);
    typeLimit("feed_up_to", "4");
    EXPECT_EQ(place->sheet().taken, 4) << "H2 is fed the four kilograms it lacks";
    EXPECT_NE(text("follows").find("H2 4"), std::string::npos) << text("follows");
    typeLimit("clearer_boards", "1");
    EXPECT_EQ(place->sheet().boardsFor.size(), 1U);
    EXPECT_TRUE(session.read().all<PullPlan>().empty()) << "nothing is kept before the plan is";
}

TEST_F(InPull, ANumberMayHaveACommaButNotTwoMeanings) {
    typeLimit("winter_need", "16,5");
    EXPECT_EQ(place->sheet().limits.winterNeed, Mass::grams(16500));
    EXPECT_EQ(place->sheet().taken, 1) << "C1 can spare nothing then";
    for (const char* typed : {"1.240", "16 kg", "-3"}) {
        typeLimit("winter_need", "16");
        typeLimit("winter_need", typed);
        EXPECT_EQ(limit("winter_need"), QString::fromUtf8(typed)) << "what was typed stays";
        EXPECT_TRUE(session.lastTold().contains(QString::fromUtf8(typed)))
            << session.lastTold().toStdString();
    }
    typeLimit("winter_need", "16");
    EXPECT_EQ(place->sheet().taken, 2);
    typeLimit("min_capped", "101");
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("101")));
    EXPECT_EQ(place->sheet().limits.minCapped, Share::percent(10)) << "the last that can be meant";
}

TEST_F(InPull, ThereAreNoHalfBoxes) {
    typeLimit("boxes", "2,5");
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("2,5")))
        << session.lastTold().toStdString();
    EXPECT_EQ(place->sheet().limits.boxes, Count(2)) << "the last that can be meant";
}

TEST_F(InPull, BoxesAreDecidedByOneKeyAndTakenBackByOne) {
    EXPECT_EQ(current(), "M02") << "the cursor begins at the top of the first hive";
    press(Qt::Key_T);
    EXPECT_EQ(place->sheet().taken, 3);
    EXPECT_TRUE(place->board().current()->forced);
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::Take);
    press(Qt::Key_L);
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::Leave);
    EXPECT_TRUE(place->board().current()->forced);
    press(Qt::Key_K);
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::LookFirst);
    press(Qt::Key_Delete);
    EXPECT_FALSE(place->board().current()->forced);
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::Leave);
    EXPECT_EQ(place->sheet().taken, 2);
    press(Qt::Key_T);
    press(Qt::Key_Down);
    EXPECT_EQ(current(), "M01");
    press(Qt::Key_L);
    EXPECT_EQ(place->sheet().taken, 2) << "M02 and M07";
    press(Qt::Key_Backspace);
    EXPECT_EQ(place->sheet().taken, 3);
}

TEST_F(InPull, WhatADecisionCostsIsSaid) {
    goTo(1, 0);
    ASSERT_EQ(current(), "M03");
    EXPECT_NE(text("chosen_box").find("the hive keeps 30 of the 20 kg"), std::string::npos)
        << text("chosen_box");
    EXPECT_NE(text("chosen_box").find("Take it: 16 kg, and 4 to feed"), std::string::npos)
        << text("chosen_box");
    press(Qt::Key_T);
    EXPECT_NE(text("chosen_box").find("Take it: 16 kg, and 4 to feed"), std::string::npos)
        << "the same said from the other side: " << text("chosen_box");
    EXPECT_NE(text("follows").find("H2 4"), std::string::npos) << text("follows");
}

TEST_F(InPull, TheCursorStaysWithItsBoxWhenYardsChangePlaces) {
    goTo(0, 1);
    ASSERT_EQ(current(), "M01");
    // Without M01 nothing comes from Hill, so Creek is shown first.
    press(Qt::Key_L);
    EXPECT_EQ(place->sheet().yards.front().yard.name.text(), "Creek");
    EXPECT_EQ(current(), "M01") << "the next key must not decide another box";
    press(Qt::Key_Delete);
    EXPECT_EQ(place->sheet().taken, 2);
}

TEST_F(InPull, ThePlanIsKeptByThePrimaryButtonAndTakenBack) {
    press(Qt::Key_T);
    typeLimit("boxes", "3");
    closeDialogs();
    ASSERT_TRUE(nextThing() && nextThing()->isVisible());
    nextThing()->setFocus();
    QTest::keyClick(nextThing(), Qt::Key_Space);
    EXPECT_EQ(dialogs, 1) << "the list is offered for printing";
    const auto plans = session.read().all<PullPlan>();
    ASSERT_EQ(plans.size(), 1U);
    EXPECT_EQ(plans[0].on, test::day(test::pullDay));
    EXPECT_EQ(plans[0].limits.boxes, Count(3));
    EXPECT_EQ(plans[0].limits.winterNeed, Mass::grams(16000));
    const auto lines = session.read().all<PullLine>();
    EXPECT_EQ(lines.size(), 10U);
    int taken = 0;
    int forced = 0;
    for (const PullLine& line : lines) {
        taken += line.verdict == PullVerdict::Take;
        forced += line.forced.value_or(false);
    }
    EXPECT_EQ(taken, place->sheet().taken) << "what was shown is what is kept";
    EXPECT_EQ(taken, 3);
    EXPECT_EQ(forced, 1);
    // The same by script gives the same file.
    auto other = Season::create(path("other.combwright"), clock);
    ASSERT_TRUE(other);
    playAll(*other, scriptOf(session.season()));
    EXPECT_EQ(other->dump(), session.season().dump());

    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(session.read().all<PullPlan>().empty());
    EXPECT_TRUE(session.read().all<PullLine>().empty());
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(session.read().all<PullPlan>().size(), 1U);
}

TEST_F(InPull, TheKeyOnTheButtonDoesWhatTheButtonSays) {
    closeDialogs();
    ASSERT_TRUE(nextThing()->text().contains(place->head().actionKey));
    QTest::keySequence(window.get(), QKeySequence(place->head().actionKey));
    EXPECT_EQ(dialogs, 1);
    EXPECT_EQ(session.read().all<PullPlan>().size(), 1U) << "keep plan and print list";
}

TEST_F(InPull, WithNothingToTakeThereIsNothingToKeep) {
    typeLimit("boxes", "0");
    EXPECT_EQ(place->sheet().taken, 0);
    EXPECT_FALSE(nextThing()->isVisible());
    place->act();
    EXPECT_TRUE(session.read().all<PullPlan>().empty());
}

TEST_F(InPull, DecisionsStayWhileOneLooksElsewhere) {
    press(Qt::Key_T);
    QTest::keyClick(window.get(), Qt::Key_1, Qt::ControlModifier);
    playAll(session.season(),
            R"({"do":"hold-back","on":"2027-07-29","box":"M07","reason":"other"})");
    QTest::keyClick(window.get(), Qt::Key_2, Qt::ControlModifier);
    place->settle();
    EXPECT_EQ(place->sheet().taken, 2) << "M01 and M02; M07 is held since";
}

TEST_F(InPull, EveryControlHasAName) {
    int controls = 0;
    for (QWidget* widget : window->findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
        if (widget->inherits("QScrollArea") || widget->inherits("QStackedWidget")) continue;
        ++controls;
        EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                     widget->property("text").toString().isEmpty())
            << widget->metaObject()->className() << " " << widget->objectName().toStdString();
    }
    EXPECT_GE(controls, 9) << "the board, seven limits and the button at least";
    EXPECT_FALSE(place->board().accessibleDescription().isEmpty());
    const QString first = place->board().accessibleDescription();
    press(Qt::Key_Right);
    EXPECT_NE(place->board().accessibleDescription(), first) << "the cursor's hive is spoken";
}

TEST_F(InPull, TabIsNeverTrapped) { walkRound(Qt::Key_Tab); }

TEST_F(InPull, TabIsNeverTrappedBackwards) { walkRound(Qt::Key_Backtab); }

}  // namespace
}  // namespace combwright
