// A day in the honey room by the number pad alone: two lots weighed, spun by the clock, filled into
// buckets and closed, with no other key; what is taken back, what the clock does when the hour
// jumps, and what a slip leaves alone.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>
#include <QTimer>
#include <algorithm>

#include "core/storage/queries/runs.h"
#include "tests/support/by_the_pad.h"
#include "tests/support/hill_and_creek.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {
namespace {

using std::chrono::minutes;
using std::chrono::seconds;
using test::ByThePad;

TEST_F(ByThePad, TwoLotsFromTheFirstBoxToTheClosedDay) {
    int peg = 0;
    for (const auto& box : test::hillBoxes)
        keys(box.box ? std::to_string(++peg) + "\n" + kilos(box.gross) + "\n"
                     : "0\n" + kilos(box.gross) + "\n9\n");
    ASSERT_EQ(all<Extraction>().size(), 1U) << "the first box opened its yard's lot";
    ASSERT_EQ(all<ExtractionBox>().size(), 7U) << readBack().toStdString();
    spinAll(6);
    ASSERT_EQ(all<SpinLoad>().size(), 6U);
    EXPECT_EQ(all<SpinLoad>().front().minutes, Minutes(13));
    EXPECT_EQ(all<SpinLoad>().front().ran, Ran::Smooth);
    EXPECT_TRUE(all<SpinLoad>().front().begun);
    EXPECT_FALSE(room->loadView().hasLoad());
    peg = 0;
    for (const auto& box : test::hillBoxes)
        keys((box.box ? std::to_string(++peg) : std::string("0")) + "\n" + kilos(box.wet) + "\n");
    for (int n = 1; n <= 6; ++n) keys("/" + std::to_string(n) + "\n13.0\n17.2\n");
    keys("/7\n13.5\n17.4\n/0\n11\n/\n");
    EXPECT_TRUE(all<GateOpening>().back().runEmpty.value_or(false));
    const auto hill = *room->run();
    keys("+");
    EXPECT_TRUE(asked().contains(QStringLiteral("91.5 kg in the buckets")))
        << asked().toStdString();
    EXPECT_TRUE(asked().contains(QStringLiteral("0.6 kg missing"))) << asked().toStdString();
    keys("+");
    const auto balance = runBalance(session.read(), hill);
    ASSERT_TRUE(balance);
    EXPECT_TRUE(balance->run.closed) << readBack().toStdString();
    ASSERT_EQ(balance->shares.size(), 5U);
    EXPECT_EQ(balance->shares[0].mass, Mass::grams(27512));
    EXPECT_EQ(balance->shares[1].mass, Mass::grams(14910));
    EXPECT_EQ(balance->shares[2].mass, Mass::grams(25648));
    EXPECT_EQ(balance->shares[3].mass, Mass::grams(10650));
    EXPECT_EQ(balance->shares[4].mass, Mass::grams(12780));

    peg = 6;
    for (const auto& box : test::creekBoxes)
        keys(std::to_string(++peg) + "\n" + (box.gross ? kilos(box.gross) : std::string()) + "\n");
    ASSERT_EQ(all<Extraction>().size(), 2U);
    const auto creek = *room->run();
    EXPECT_NE(creek, hill) << "the lot that just opened is shown";
    spinAll(4);
    peg = 6;
    for (const auto& box : test::creekBoxes)
        keys(std::to_string(++peg) + "\n" + kilos(box.wet) + "\n");
    for (int n = 1; n <= 5; ++n) keys("/" + std::to_string(n) + "\n13.0\n\n");
    keys("/6\n1.0\n17.3\n/0\n8\n++");
    const auto second = runBalance(session.read(), creek);
    ASSERT_TRUE(second);
    EXPECT_TRUE(second->run.closed) << readBack().toStdString();
    ASSERT_EQ(second->shares.size(), 3U);
    EXPECT_NEAR(static_cast<double>(second->shares[0].mass.grams()), 13300, 50);
    EXPECT_NEAR(static_cast<double>(second->shares[1].mass.grams()), 28100, 50);
    EXPECT_NEAR(static_cast<double>(second->shares[2].mass.grams()), 24600, 50);
    EXPECT_EQ(second->shares[2].how, How::ByDifference);
}

TEST_F(ByThePad, WhatWasTypedIsReadBackLarge) {
    keys("1\n");
    EXPECT_EQ(asked(), QStringLiteral("H1a on peg 1 full, kg"));
    EXPECT_EQ(room->findChild<QLabel*>(QStringLiteral("entry_for"))->text(), asked());
    keys("19.8\n");
    EXPECT_TRUE(readBack().startsWith(QStringLiteral("H1a on peg 1, 19.8 kg full")))
        << readBack().toStdString();
    EXPECT_TRUE(readBack().contains(QStringLiteral("is open"))) << "and the lot that opened";
    keys("1\n21.4\n");
    EXPECT_EQ(readBack(), QStringLiteral("H1a on peg 1, 21.4 kg full; was 19.8"));
    keys("/3\n13.0\n17.2\n");
    EXPECT_TRUE(readBack().contains(QStringLiteral("Bucket 3"))) << readBack().toStdString();
    EXPECT_TRUE(readBack().contains(QStringLiteral("17.2"))) << readBack().toStdString();
}

TEST_F(ByThePad, OneKeyTakesTheLastEntryBackWhole) {
    keys("1\n21.4\n/3\n13.0\n17.2\n");
    ASSERT_EQ(all<Bucket>().size(), 1U);
    keys(".");
    EXPECT_TRUE(all<Bucket>().empty()) << "its honey and its water are one entry";
    EXPECT_TRUE(readBack().contains(QStringLiteral("Taken back: Bucket 3")))
        << readBack().toStdString();
    keys(".");
    EXPECT_TRUE(all<ExtractionBox>().empty());
    EXPECT_TRUE(all<Extraction>().empty()) << "the lot it opened goes with it";
    keys("1\n21.4\n");
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Backspace);
    EXPECT_TRUE(all<ExtractionBox>().empty());
    // What was done elsewhere is not taken back by a knuckle.
    playAll(session.season(), R"({"do":"add-yard","on":"2027-08-07","yard_name":"Mill Lane"})");
    keys(".");
    EXPECT_EQ(all<Yard>().size(), 3U);
    EXPECT_TRUE(readBack().contains(QStringLiteral("not entered here")))
        << readBack().toStdString();
}

TEST_F(ByThePad, ALoadTakenBackTurnsOnWithTheTimeLeft) {
    playAll(session.season(),
            R"({"do":"set-constant","on":"2027-08-07","constant":"spin_min_per_load","value":13})");
    keys("1\n21.4\n2\n19.8\n//333333222222\n\n");
    clock.pass(minutes(12));
    keys("+");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    clock.pass(seconds(20));
    keys(".");
    EXPECT_TRUE(all<SpinLoad>().empty());
    EXPECT_TRUE(room->spinDesk().turns());
    EXPECT_EQ(room->head().big.figure.left(3), QStringLiteral("00:"));
    EXPECT_TRUE(room->head().bigNote.contains(QStringLiteral("nearly done")));
    EXPECT_EQ(feltFrames(), 12) << "drawn as it turns";
    keys(".");
    EXPECT_FALSE(room->spinDesk().load()) << "once more, and it is simply not spun";
    EXPECT_EQ(feltFrames(), 12) << "and its frames are as they felt";
    // Without a clock there is none to come back.
    keys("+");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    EXPECT_EQ(feltFrames(), 0);
    keys(".");
    EXPECT_FALSE(room->spinDesk().load());
    EXPECT_TRUE(all<SpinLoad>().empty());
    EXPECT_EQ(feltFrames(), 12);
    EXPECT_TRUE(room->loadView().hasLoad());
}

TEST_F(ByThePad, ALoadQuietedStandsAgainAndIsLetGoByOneMorePoint) {
    keys("1\n21.4\n2\n19.8\n\n");
    clock.pass(minutes(20));
    keys("\n+.");
    EXPECT_TRUE(room->spinDesk().stands()) << "as it was";
    keys(".");
    EXPECT_FALSE(room->spinDesk().load());
    EXPECT_TRUE(all<SpinLoad>().empty());
    EXPECT_EQ(all<ExtractionBox>().size(), 2U);
}

TEST_F(ByThePad, AWalkedLoadIsStoppedAfterAll) {
    keys("1\n21.4\n2\n19.8\n\n");
    clock.pass(minutes(12));
    keys("-");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    EXPECT_EQ(all<SpinLoad>().front().ran, Ran::Walked);
    keys("-");
    ASSERT_EQ(all<SpinLoad>().size(), 1U) << "stopped after all, the same load";
    EXPECT_EQ(all<SpinLoad>().front().ran, Ran::Stopped);
    keys("\n.");
    EXPECT_FALSE(room->spinDesk().turns()) << "a clock just started is taken back too";
}

TEST_F(ByThePad, TheClockCountsDownSoftThenLoudWhateverTheHourDoes) {
    playAll(session.season(),
            R"({"do":"set-constant","on":"2027-08-07","constant":"spin_min_per_load","value":13})");
    keys("1\n21.4\n2\n19.8\n\n");
    EXPECT_EQ(room->head().big.figure, QStringLiteral("13:00"));
    EXPECT_EQ(room->head().bigSize, TextSize::Clock);
    const auto wait = [&](seconds time) {
        for (seconds gone{0}; gone < time; gone += seconds(30)) {
            clock.pass(seconds(30));
            room->spinDesk().tick();
        }
    };
    wait(minutes(5));
    clock.jump(minutes(60));
    room->spinDesk().tick();
    EXPECT_EQ(room->head().big.figure, QStringLiteral("08:00"))
        << "summer time ended, the drum did not";
    clock.jump(-minutes(180));
    wait(minutes(6));
    EXPECT_EQ(room->head().big.figure, QStringLiteral("02:00"));
    EXPECT_EQ(rung, 0);
    wait(minutes(1));
    EXPECT_EQ(rung, 1) << "softly, once";
    EXPECT_EQ(room->head().bigTone, Tone::Warn);
    EXPECT_TRUE(room->head().bigNote.contains(QStringLiteral("nearly done")));
    wait(minutes(2));
    EXPECT_GT(rung, 2) << "loudly, until it is quieted";
    EXPECT_EQ(room->head().bigTone, Tone::Bad);
    EXPECT_EQ(room->head().big.figure, QStringLiteral("+01:00"));
    keys("\n");
    const int quiet = rung;
    EXPECT_FALSE(room->spinDesk().turns());
    room->spinDesk().tick();
    EXPECT_EQ(rung, quiet);
    EXPECT_TRUE(all<SpinLoad>().empty()) << "how it ran is not said yet";
    keys("+");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    EXPECT_EQ(all<SpinLoad>().front().minutes, Minutes(14));
}

TEST_F(ByThePad, TheBellIsSwitchedOffAndTheClockStillShows) {
    keys("1\n21.4\n2\n19.8\n\n");
    room->spinDesk().setBellOn(false);
    for (int n = 0; n < 60; ++n) {
        clock.pass(seconds(30));
        room->spinDesk().tick();
    }
    EXPECT_EQ(rung, 0);
    EXPECT_EQ(room->head().bigTone, Tone::Bad);
    room->spinDesk().setBellOn(true);
}

TEST_F(ByThePad, AClosedProgramFindsItsSpinAgain) {
    keys("1\n21.4\n2\n19.8\n\n");
    clock.pass(minutes(4));
    session.drafts().flush();
    const QString file = session.path();
    window.reset();
    session.close();
    clock.pass(minutes(2));
    ASSERT_TRUE(session.open(file));
    window = std::make_unique<MainWindow>(session);
    window->resize(1280, 800);
    window->show();
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    room = goToPlace<HoneyRoomPlace>(3);
    ASSERT_TRUE(room->spinDesk().turns());
    EXPECT_EQ(room->head().big.figure, QStringLiteral("09:00"));
    room->setFocus();
    keys("+");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    EXPECT_EQ(all<SpinLoad>().front().minutes, Minutes(6));
}

TEST_F(ByThePad, NothingIsAskedWhileALoadSpins) {
    keys("1\n21.4\n2\n19.8\n\n");
    keys("*");
    ASSERT_EQ(all<SetAside>().size(), 1U);
    EXPECT_TRUE(asked().isEmpty()) << asked().toStdString();
    clock.pass(minutes(12));
    keys("+");
    EXPECT_TRUE(asked().contains(QStringLiteral("of which box"))) << asked().toStdString();
    keys("\n");
    EXPECT_TRUE(asked().contains(QStringLiteral("why")))
        << "now it stands: " << asked().toStdString();
    keys("1\n");
    EXPECT_EQ(all<SetAside>().front().why, AsideWhy::NotEmpty);
    keys(".");
    EXPECT_EQ(all<SetAside>().size(), 1U) << readBack().toStdString();
}

TEST_F(ByThePad, TheDayEmptiesThePileBeforeItCloses) {
    keys("1\n21.4\n*2\n");
    ASSERT_EQ(all<SetAside>().size(), 1U);
    EXPECT_EQ(all<SetAside>().front().why, AsideWhy::Broke);
    EXPECT_TRUE(
        room->findChild<QLabel*>(QStringLiteral("pile"))->text().contains(QStringLiteral("broke")));
    keys("+1\n5.2\n/1\n13.0\n\n+");
    EXPECT_TRUE(asked().contains(QStringLiteral("what became of it"))) << asked().toStdString();
    keys("4\n");
    EXPECT_EQ(all<SetAside>().front().became, AsideBecame::Melted);
    keys("+");
    EXPECT_TRUE(asked().contains(QStringLiteral("Close the day"))) << asked().toStdString();
    keys("\n");
    EXPECT_FALSE(session.read().find(*room->run())->closed) << "Enter leaves it open";
    keys("++");
    EXPECT_TRUE(all<Extraction>().front().closed) << readBack().toStdString();
}

TEST_F(ByThePad, AFrameOfNoBoxIsReadBackWithItsSubjectAndSettledOnce) {
    keys("0\n19.5\n9\n1\n21.4\n2\n19.8\n");
    keys("*\n3\n");
    ASSERT_EQ(all<SetAside>().size(), 1U);
    EXPECT_FALSE(all<SetAside>().front().box);
    EXPECT_TRUE(readBack().startsWith(QStringLiteral("One frame of "))) << readBack().toStdString();
    EXPECT_TRUE(readBack().contains(QStringLiteral(" set aside: brood")))
        << readBack().toStdString();
    EXPECT_TRUE(readBack().contains(QStringLiteral("a box nobody knows")));
    PadAsk settle;
    settle.what = PadAsk::What::Settle;
    settle.row = all<SetAside>().front().id.number;
    settle.about = QStringLiteral("1 frame: what became of it?");
    room->entry().pad().askLater(settle);
    room->entry().pad().askLater(settle);
    room->entry().pad().askLater(settle);
    keys("4\n");
    EXPECT_EQ(all<SetAside>().front().became, AsideBecame::Melted);
    EXPECT_EQ(readBack(), QStringLiteral("1 frame: melted")) << readBack().toStdString();
    EXPECT_TRUE(asked().isEmpty()) << "settled: " << asked().toStdString();
}

TEST_F(ByThePad, AWetWeightBeforeItsFramesAreSpunTakesNoneOutOfTheLoads) {
    keys("1\n21.4\n2\n19.8\n1\n5.2\n");
    EXPECT_TRUE(asked().contains(QStringLiteral("9 frames of H1a on peg 1 are not spun")))
        << asked().toStdString();
    EXPECT_FALSE(all<ExtractionBox>().front().wet);
    keys("\n");
    EXPECT_EQ(all<ExtractionBox>().front().wet->value, Mass::grams(5200)) << "said again";
}

TEST_F(ByThePad, FramesByFeelFillTheExtractorAsTheyAreTyped) {
    keys("1\n21.4\n2\n19.8\n");
    const auto felt = [this] { return feltFrames(); };
    keys("//3");
    EXPECT_EQ(felt(), 1);
    keys("21");
    EXPECT_EQ(felt(), 3);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Backspace);
    EXPECT_EQ(felt(), 2) << "a letter is taken off again";
    keys("1");
    // The letters themselves do as well.
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("hml"));
    keys("321321");
    EXPECT_EQ(felt(), 12);
    keys("3");
    EXPECT_EQ(line(), QStringLiteral("//321hml321321")) << "thirteen frames in twelve slots";
    EXPECT_TRUE(readBack().contains(QStringLiteral("up to 12"))) << readBack().toStdString();
    keys("\n");
    EXPECT_TRUE(room->loadView().accessibleDescription().contains(QStringLiteral("12 frames")));
    const auto* hefts = room->findChild<QLabel*>(QStringLiteral("hefts"));
    EXPECT_TRUE(hefts->text().contains(QStringLiteral("heavy"))) << hefts->text().toStdString();
    EXPECT_GT(room->loadView().load().doubtG, 0.0);
    keys("\n");
    clock.pass(minutes(12));
    keys("+");
    const auto hung = all<SlotFrame>();
    ASSERT_EQ(hung.size(), 12U) << readBack().toStdString();
    EXPECT_EQ(std::count_if(hung.begin(), hung.end(),
                            [](const SlotFrame& each) { return each.heft == FrameHeft::Heavy; }),
              4);
}

TEST_F(ByThePad, WhatIsFeltWhileALoadSpinsIsTheNextOne) {
    keys("1\n21.4\n2\n19.8\n3\n22.1\n//333333222222\n\n//111\n");
    EXPECT_TRUE(readBack().contains(QStringLiteral("laid out when load 1")))
        << readBack().toStdString();
    EXPECT_TRUE(room->spinDesk().turns());
    clock.pass(minutes(12));
    keys("+");
    ASSERT_EQ(all<SlotFrame>().size(), 12U);
    int light = 0;
    for (const auto& place : room->loadView().load().places)
        if (place && place->heft == FrameHeft::Light) ++light;
    EXPECT_EQ(light, 3);
    keys("//\n");
    for (const auto& place : room->loadView().load().places)
        EXPECT_FALSE(place && place->heft) << "an empty line forgets them";
}

TEST_F(ByThePad, AFrameOfTheSlotChosenIsSetAside) {
    keys("1\n21.4\n2\n19.8\n");
    LoadView& load = room->loadView();
    load.setFocus();
    const auto box = load.load().places[0]->entry;
    QTest::keyClick(&load, Qt::Key_Asterisk);
    ASSERT_EQ(all<SetAside>().size(), 1U);
    EXPECT_EQ(all<SetAside>().front().box, box);
    EXPECT_EQ(QApplication::focusWidget(), room->entry().line()) << "the digit that says why";
}

TEST_F(ByThePad, ABoxOnAPegNobodyClippedHasALineOfItsOwn) {
    keys("1\n21.4\n77\n");
    EXPECT_TRUE(asked().contains(QStringLiteral("77"))) << asked().toStdString();
    keys("18.0\n");
    EXPECT_EQ(all<ExtractionBox>().size(), 1U) << "it may be a slip: asked first";
    EXPECT_TRUE(asked().contains(QStringLiteral("No box carries peg 77"))) << asked().toStdString();
    keys("\n");
    ASSERT_EQ(all<ExtractionBox>().size(), 2U) << readBack().toStdString();
    EXPECT_FALSE(all<ExtractionBox>().back().box);
    EXPECT_TRUE(asked().contains(QStringLiteral("how many frames"))) << asked().toStdString();
    keys("9\n");
    ASSERT_EQ(all<ExtractionBox>().size(), 2U) << readBack().toStdString();
    EXPECT_EQ(all<ExtractionBox>().back().frames, Count(9));
    EXPECT_TRUE(readBack().contains(QStringLiteral("peg 77"))) << readBack().toStdString();
    keys(".");
    EXPECT_EQ(all<ExtractionBox>().size(), 1U);
    EXPECT_EQ(all<Peg>().size(), 11U) << "and its peg is free again";
}

TEST_F(ByThePad, SlipsChangeNothing) {
    keys("1\n21.4\n");
    const std::string before = session.season().dump();
    keys("1\n30\n.\n");
    EXPECT_TRUE(line().isEmpty());
    keys("2\n1.240\n");
    EXPECT_TRUE(readBack().contains(QStringLiteral("no weight"))) << readBack().toStdString();
    EXPECT_EQ(line(), QStringLiteral("1.240")) << "what was typed stays";
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    keys(".\n/0\n5000\n");
    EXPECT_EQ(session.season().dump(), before) << readBack().toStdString();
}

TEST_F(ByThePad, NumLockOffStillTypesDigits) {
    QWidget* at = QApplication::focusWidget();
    const auto off = [&](Qt::Key key) { QTest::keyClick(at, key, Qt::KeypadModifier); };
    off(Qt::Key_End);  // 1
    keys("\n");
    EXPECT_EQ(asked(), QStringLiteral("H1a on peg 1 full, kg"));
    off(Qt::Key_Down);    // 2
    off(Qt::Key_End);     // 1
    off(Qt::Key_Delete);  // .
    off(Qt::Key_Left);    // 4
    keys("\n");
    ASSERT_EQ(all<ExtractionBox>().size(), 1U) << readBack().toStdString();
    EXPECT_EQ(all<ExtractionBox>().front().gross->value, Mass::grams(21400));
}

TEST_F(ByThePad, CautionsAreSeenOnceADayAndTheHeaviestBoxIsNamed) {
    auto* caution = room->findChild<QLabel*>(QStringLiteral("caution"));
    keys("1\n23.6\n");
    for (const char* each : {"knife away from fingers", "hands out until it stands", "sockets dry",
                             "children", "over 23 kg", "H1a, 23.6 kg"})
        EXPECT_TRUE(caution->text().contains(QLatin1String(each))) << each;
    keys("00\n");
    EXPECT_FALSE(caution->isVisible());
    clock.set("2027-08-08");
    room->reload();
    EXPECT_TRUE(caution->isVisible());
}

TEST_F(ByThePad, TheWindowsKeysWorkWhileTheCursorIsInTheLine) {
    const auto ctrl = [](Qt::Key key) {
        QTest::keyClick(QApplication::focusWidget(), key, Qt::ControlModifier);
    };
    keys("1\n21.4\n2\n19.8\n77");
    ctrl(Qt::Key_Z);
    EXPECT_TRUE(line().isEmpty()) << "what is typed goes first";
    EXPECT_EQ(all<ExtractionBox>().size(), 2U);
    ctrl(Qt::Key_Z);
    EXPECT_EQ(all<ExtractionBox>().size(), 1U);
    ctrl(Qt::Key_U);
    EXPECT_EQ(shownUnits(), Units::UsCustomary);
    ctrl(Qt::Key_U);
    EXPECT_EQ(shownUnits(), Units::Metric);
    bool explained = false;
    QTimer::singleShot(0, window.get(), [&] {
        if (QWidget* dialog = QApplication::activeModalWidget()) {
            explained = true;
            dialog->close();
        }
    });
    ctrl(Qt::Key_E);
    EXPECT_TRUE(explained);
}

TEST_F(ByThePad, ADayJustClosedIsOpenedAgainByCtrlZ) {
    keys("1\n21.4\n+1\n5.2\n/1\n13.0\n\n++");
    ASSERT_TRUE(all<Extraction>().front().closed) << readBack().toStdString();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(all<Extraction>().front().closed);
    keys("/2\n12.0\n\n");
    EXPECT_EQ(all<Bucket>().size(), 2U) << "and the place shows it open";
}

TEST_F(ByThePad, ALongQuestionInLargeTypeLeavesTheWindowAsWideAsItWas) {
    setTextSize(2.0);
    keys("1\n21.4\n2\n19.8\n*");
    ASSERT_FALSE(asked().isEmpty());
    QCoreApplication::sendPostedEvents();
    EXPECT_EQ(window->width(), 1280);
    EXPECT_LE(window->minimumSizeHint().width(), 1280);
    setTextSize(1.0);
}

TEST_F(ByThePad, HelpInLargeTypeScrollsByKeys) {
    setTextSize(2.0);
    bool scrolled = false;
    QTimer::singleShot(0, window.get(), [&] {
        auto* dialog = QApplication::activeModalWidget();
        ASSERT_NE(dialog, nullptr);
        auto* scroll = dialog->findChild<QScrollArea*>(QStringLiteral("help_scroll"));
        EXPECT_LE(dialog->height(), dialog->screen()->availableSize().height());
        QCoreApplication::processEvents();
        QTest::keyClick(dialog->focusWidget(), Qt::Key_PageDown);
        scrolled = scroll->verticalScrollBar()->value() > 0;
        dialog->close();
    });
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F1);
    EXPECT_TRUE(scrolled);
    setTextSize(1.0);
}

TEST_F(ByThePad, ABouncingKeySpinsNoSecondLoad) {
    keys("1\n21.4\n2\n19.8\n");
    unhurried = false;
    keys("\n");
    EXPECT_FALSE(room->spinDesk().turns()) << "the Enter that kept the weight came twice";
    unhurried = true;
    keys("\n+");
    EXPECT_TRUE(all<SpinLoad>().empty());
    EXPECT_TRUE(readBack().contains(QStringLiteral("after 3 s: spun?")))
        << readBack().toStdString();
    clock.pass(minutes(12));
    keys("+");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    ASSERT_TRUE(room->loadView().hasLoad());
    unhurried = false;
    keys("+");
    EXPECT_EQ(all<SpinLoad>().size(), 1U);
    EXPECT_TRUE(readBack().contains(QStringLiteral("twice"))) << readBack().toStdString();
}

}  // namespace
}  // namespace combwright
