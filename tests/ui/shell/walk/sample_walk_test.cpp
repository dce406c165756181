// The walk through a first year, by keyboard alone: each step at its place and day, back again,
// left at any of them; a season of the keeper's own stays byte for byte what it was.
#include "ui/shell/walk/sample_walk.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/actions/yard/yards.h"
#include "tests/ui/shell/shell_season.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/pull/pull_place.h"
#include "ui/shell/copies/time_ways.h"
#include "ui/shell/find/find_deeds.h"
#include "ui/storeroom/storeroom_place.h"
#include "ui/wax_bench/wax_bench_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class Walk : public test::ShellTest {
  protected:
    SampleWalk& walk() const { return window->walk(); }
    void beginAtTheStartPage() const {
        auto* door = named<QPushButton>("walk_year");
        ASSERT_NE(door, nullptr);
        door->setFocus();
        key(Qt::Key_Space);
        ASSERT_TRUE(walk().isOn()) << session.lastTold().toStdString();
    }
    std::string title() const { return named<QLabel>("walk_title")->text().toStdString(); }
    std::string says() const { return named<QLabel>("walk_says")->text().toStdString(); }
    /// Alt and an arrow, from wherever the keyboard is.
    void turn(Qt::Key to) const { key(to, Qt::AltModifier); }
};

TEST_F(Walk, LeadsThroughTheYearAndBackByKeyboard) {
    beginAtTheStartPage();
    const auto steps = walkSteps();
    ASSERT_GE(steps.size(), 10U);
    ASSERT_LE(steps.size(), 12U);
    const auto standsAt = [&](std::size_t n) {
        const WalkStep& step = steps[n];
        EXPECT_EQ(walk().step(), static_cast<int>(n));
        EXPECT_TRUE(walk().isVisible());
        EXPECT_THAT(title(), HasSubstr(step.title.toStdString()));
        EXPECT_EQ(says(), step.says.toStdString());
        ASSERT_NE(window->current(), nullptr);
        EXPECT_EQ(window->current()->metaObject(), step.place) << title();
        EXPECT_EQ(session.clock().today(), demoDay(step.until)) << title();
        EXPECT_TRUE(session.isSample());
        EXPECT_THAT(window->windowTitle().toStdString(), HasSubstr("Sample season"));
        EXPECT_THAT(walk().accessibleName().toStdString(), HasSubstr(step.title.toStdString()));
        EXPECT_THAT(walk().accessibleName().toStdString(), HasSubstr(step.says.toStdString()));
        // The keyboard is in the place, where one is to try something.
        EXPECT_TRUE(focus() && window->current()->isAncestorOf(focus())) << title();
        EXPECT_EQ(window->size(), QSize(1280, 800)) << title();
    };
    standsAt(0);
    turn(Qt::Key_Left);
    standsAt(0);
    for (std::size_t n = 1; n < steps.size(); ++n) {
        turn(Qt::Key_Right);
        standsAt(n);
    }
    turn(Qt::Key_Right);
    standsAt(steps.size() - 1);
    for (std::size_t n = steps.size() - 1; n > 0; --n) {
        turn(Qt::Key_Left);
        standsAt(n - 1);
    }
}

TEST_F(Walk, GoesToThePageItSpeaksOf) {
    beginAtTheStartPage();
    turn(Qt::Key_Right);
    auto* yard = qobject_cast<YardPlace*>(window->current());
    ASSERT_NE(yard, nullptr);
    EXPECT_TRUE(yard->sheetIsOpen());
    EXPECT_EQ(window->current()->head().under.toStdString().find("12 hives"), 0U)
        << "Mill Lane, where the visit was";
    turn(Qt::Key_Right);
    EXPECT_FALSE(yard->sheetIsOpen());
    EXPECT_EQ(yard->head().title.toStdString(), "Health");
}

TEST_F(Walk, WhatItSaysToTryCanBeDone) {
    beginAtTheStartPage();
    const auto newest = [&] { return session.season().nextUndo()->seq; };
    const auto goTo = [&](const QMetaObject& kind) {
        while (window->current()->metaObject() != &kind && walk().step() + 1 < walk().count())
            turn(Qt::Key_Right);
    };
    goTo(PullPlace::staticMetaObject);
    window->current()->settle();
    const QString before = window->current()->head().big.figure;
    ASSERT_FALSE(before.isEmpty());
    key(Qt::Key_L);
    window->current()->settle();
    EXPECT_NE(window->current()->head().big.figure, before) << "one box less comes off";
    key(Qt::Key_Delete);
    window->current()->settle();
    EXPECT_EQ(window->current()->head().big.figure, before);
    goTo(HoneyRoomPlace::staticMetaObject);
    EXPECT_THAT(window->current()->head().actionKey.toStdString(), HasSubstr("+"));
    goTo(WaxBenchPlace::staticMetaObject);
    ASSERT_TRUE(line()) << "the cursor stands in a field";
    EXPECT_THAT(says(), HasSubstr("type 7 there"));
    line()->selectAll();
    QTest::keyClicks(line(), QStringLiteral("7"));
    EXPECT_TRUE(named<QLabel>("what_if")->isVisible());
    key(Qt::Key_Escape);
    EXPECT_FALSE(named<QLabel>("what_if")->isVisible());
    goTo(StoreroomPlace::staticMetaObject);
    EXPECT_THAT(says(), HasSubstr("on M06 type 7 keep, 2 burn"));
    const std::int64_t step = newest();
    QTest::keyClicks(focus(), QStringLiteral("7 keep, 2 burn"));
    key(Qt::Key_Return);
    EXPECT_GT(newest(), step) << session.lastTold().toStdString();
}

TEST_F(Walk, WhatWasTriedStaysWithinAPartAndGoesWithIt) {
    beginAtTheStartPage();
    ASSERT_TRUE(session.run(AddYard{.on = session.clock().today(), .yard = test::name("Tried")}));
    turn(Qt::Key_Right);
    const auto tried = [&] {
        const auto all = session.read().all<Yard>();
        return std::any_of(all.begin(), all.end(),
                           [](const Yard& yard) { return yard.name.text() == "Tried"; });
    };
    EXPECT_TRUE(tried()) << "the same part of the year goes on";
    turn(Qt::Key_Right);
    turn(Qt::Key_Right);
    EXPECT_FALSE(tried()) << "the next part is as it is told";
}

TEST_F(Walk, CanBeLeftAtAnyStepAndTheSampleStays) {
    beginAtTheStartPage();
    turn(Qt::Key_Right);
    auto* leave = named<QPushButton>("walk_leave");
    leave->setFocus();
    key(Qt::Key_Return);
    EXPECT_FALSE(walk().isOn());
    EXPECT_FALSE(walk().isVisible());
    EXPECT_TRUE(session.isSample());
    EXPECT_TRUE(focus() && window->current()->isAncestorOf(focus()));
    const Place* at = window->current();
    turn(Qt::Key_Right);
    EXPECT_EQ(window->current(), at) << "its keys are nobody's then";
    // Begun anew it is at its first step; closing the season ends it too.
    walk().begin();
    EXPECT_EQ(walk().step(), 0);
    EXPECT_TRUE(walk().isVisible());
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_FALSE(session.hasSeason());
    EXPECT_FALSE(walk().isVisible());
    EXPECT_EQ(window->files().recent().list().size(), 0U) << "it remembers nothing";
}

TEST_F(Walk, IsFoundByItsNameAndItsStepsOnlyWhileItGoesOn) {
    const auto found = [&](const char* one, const char* other) {
        return FindDeeds(*window, session).deeds({one, other}, 9).size();
    };
    EXPECT_EQ(found("walk", "year"), 1U);
    EXPECT_EQ(found("step", "walk"), 0U);
    beginAtTheStartPage();
    turn(Qt::Key_Right);
    EXPECT_EQ(found("step", "walk"), 2U);
    walk().leave();
    EXPECT_EQ(found("step", "walk"), 0U);
    EXPECT_EQ(found("walk", "year"), 1U);
}

TEST_F(Walk, AllOfItsWordsAreSeenInLargeType) {
    session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false, 2.0));
    beginAtTheStartPage();
    for (int n = 1; n < walk().count(); ++n) {
        for (int round = 0; round < 4; ++round) QCoreApplication::processEvents();
        for (const char* name : {"walk_title", "walk_says"}) {
            const auto* label = named<QLabel>(name);
            EXPECT_GE(label->height(), label->heightForWidth(label->width())) << title();
        }
        EXPECT_LT(walk().height(), 300) << title() << " leaves no room to try anything";
        turn(Qt::Key_Right);
    }
    session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false, 1.0));
}

TEST_F(Walk, FromHelpItHasAWindowBesideTheKeepersSeason) {
    openSeason();
    const QByteArray before = bytes(file());
    bool asked = false;
    QTimer::singleShot(0, window.get(), [&] {
        auto* help = dialog("help");
        ASSERT_NE(help, nullptr);
        auto* button = named<QPushButton>("help_walk", help);
        ASSERT_NE(button, nullptr);
        button->setFocus();
        asked = true;
        QTest::keyClick(button, Qt::Key_Space);
    });
    key(Qt::Key_F1);
    ASSERT_TRUE(asked);
    MainWindow* beside = nullptr;
    for (QWidget* each : QApplication::topLevelWidgets())
        if (auto* other = qobject_cast<MainWindow*>(each); other && other != window.get())
            beside = other;
    ASSERT_NE(beside, nullptr);
    EXPECT_TRUE(beside->walk().isOn());
    EXPECT_THAT(beside->windowTitle().toStdString(), HasSubstr("Sample season"));
    EXPECT_FALSE(walk().isOn());
    EXPECT_EQ(session.path(), file());
    auto* next = beside->findChild<QPushButton*>(QStringLiteral("walk_next"));
    while (next->isEnabled()) next->click();
    EXPECT_EQ(beside->walk().step(), beside->walk().count() - 1);
    EXPECT_EQ(bytes(file()), before) << "the keeper's own file was not touched";
    window->time().closeBeside();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_EQ(session.path(), file());
    EXPECT_EQ(bytes(file()), before);
}

}  // namespace
}  // namespace combwright
