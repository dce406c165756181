// Planning a pull in the real window by keyboard alone: limits typed, boxes decided, the plan kept
// and taken back, and nothing that cannot be reached or has no name.
#include "tests/support/in_pull.h"

namespace combwright {
namespace {

using test::InPull;

TEST_F(InPull, ShowsTheReckoningAtOnce) {
    EXPECT_EQ(place->sheet().taken, 2);
    EXPECT_NEAR(place->sheet().honey.grams, 20160, 1e-6);
    EXPECT_EQ(place->head().big.figure, QStringLiteral("20"));
    EXPECT_EQ(limit("winter_need"), QStringLiteral("16"));
    EXPECT_EQ(limit("min_capped"), QStringLiteral("75"));
    EXPECT_EQ(limit("feed_up_to"), QStringLiteral("0"));
    EXPECT_EQ(limit("boxes"), QString()) << "no limit is no number";
    EXPECT_TRUE(place->board().hasFocus()) << "the arrows work without a click";
    EXPECT_NE(text("follows").find("20&nbsp;kg"), std::string::npos) << text("follows");
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
    EXPECT_NE(text("follows_after").find("H2 4"), std::string::npos) << text("follows");
    typeLimit("clearer_boards", "1");
    EXPECT_EQ(place->sheet().boardsFor.size(), 1U);
    EXPECT_TRUE(session.read().all<PullPlan>().empty()) << "nothing is kept before the plan is";
}

TEST_F(InPull, ANumberMayHaveACommaButNotTwoMeanings) {
    typeLimit("winter_need", "16,5");
    EXPECT_EQ(place->sheet().asked.limits.winterNeed, Mass::grams(16500));
    EXPECT_EQ(place->sheet().taken, 1) << "C1 can spare nothing then";
    for (const char* typed : {"1.240", "16 pots", "-3"}) {
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
    EXPECT_EQ(place->sheet().asked.limits.minCapped, Share::percent(10))
        << "the last that can be meant";
}

TEST_F(InPull, ThereAreNoHalfBoxes) {
    typeLimit("boxes", "2,5");
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("2,5")))
        << session.lastTold().toStdString();
    EXPECT_EQ(place->sheet().asked.limits.boxes, Count(2)) << "the last that can be meant";
}

TEST_F(InPull, CtrlZTakesBackADecisionBeforeADeed) {
    const std::string before = session.season().dump();
    const auto wasVerdict = place->board().current()->verdict;
    press(Qt::Key_K);
    press(Qt::Key_L);
    ASSERT_EQ(place->board().current()->verdict, PullVerdict::Leave);
    const auto back = [this] {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier);
        place->settle();
    };
    back();
    EXPECT_EQ(place->board().current()->verdict, PullVerdict::LookFirst);
    back();
    EXPECT_EQ(place->board().current()->verdict, wasVerdict);
    EXPECT_FALSE(place->board().current()->forced);
    EXPECT_EQ(session.season().dump(), before) << "no deed was taken back yet";
    back();
    EXPECT_NE(session.season().dump(), before);
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
    EXPECT_NE(text("chosen_box").find("keeps 30 and needs 20 kg"), std::string::npos)
        << text("chosen_box");
    const std::string taking = "14 kg more; the hive keeps 16 of the 20 kg it needs, 4 to feed; ";
    EXPECT_NE(text("chosen_box").find(taking), std::string::npos) << text("chosen_box");
    press(Qt::Key_T);
    EXPECT_NE(text("chosen_box").find("14 kg less; the hive keeps 30"), std::string::npos)
        << "the same said from the other side: " << text("chosen_box");
    EXPECT_NE(text("chosen_box").find("keeps 16 of the 20 kg it needs, 4 to feed"),
              std::string::npos);
    EXPECT_NE(text("follows_after").find("H2 4"), std::string::npos) << text("follows_after");
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
    QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
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
    EXPECT_GE(controls, 18) << "the board, twelve fields and the button at least";
    EXPECT_FALSE(place->board().accessibleDescription().isEmpty());
    const QString first = place->board().accessibleDescription();
    press(Qt::Key_Right);
    EXPECT_NE(place->board().accessibleDescription(), first) << "the cursor's hive is spoken";
}

TEST_F(InPull, TabIsNeverTrapped) { walkRound(Qt::Key_Tab); }

TEST_F(InPull, TabIsNeverTrappedBackwards) { walkRound(Qt::Key_Backtab); }

}  // namespace
}  // namespace combwright
