// The extractor in the real window: a frame is taken up and put down by keyboard or mouse and the
// offset follows, loads are spun and printed.
#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <algorithm>

#include "core/places/pages/page_text.h"
#include "tests/support/in_honey_room.h"

namespace combwright {
namespace {

using AtTheExtractor = test::InTheHoneyRoom;

TEST_F(AtTheExtractor, TheLoadsOfEveryOpenRunArePrinted) {
    type("open 27-2 Hill");
    const auto& hill = test::hillBoxes[0];
    ASSERT_NE(hill.box, nullptr);
    type(std::string(hill.box) + " " + kilos(hill.gross));
    openCreek();
    ASSERT_EQ(room->sheets().front().id, QStringLiteral("loads"));
    const QString page = pageText(room->sheets().front().page());
    for (const char* each : {"27-2", "27-3", hill.box, "C2a"})
        EXPECT_TRUE(page.contains(QLatin1String(each))) << each << '\n' << page.toStdString();
    EXPECT_EQ(page.count(QStringLiteral("Lid shut while it turns")), 1);
}

TEST_F(AtTheExtractor, AFrameChangesPlacesByKeyboard) {
    type("open 27-2 Hill");
    type("H1a 21.4");
    type("H5a 17.0");
    LoadView& load = room->loadView();
    ASSERT_TRUE(load.hasLoad());
    const double before = load.load().offset.startG;
    load.setFocus();
    QTest::keyClick(&load, Qt::Key_Space);
    for (int n = 0; n < 4; ++n) QTest::keyClick(&load, Qt::Key_Right);
    const auto planned = load.load().places;
    QTest::keyClick(&load, Qt::Key_Return);
    EXPECT_EQ(load.load().places[0]->entry, planned[4]->entry);
    EXPECT_GE(load.load().offset.startG + 1e-6, before) << "the plan was the best there is";
}

TEST_F(AtTheExtractor, ALoadSpunLeavesItsFramesAndWidensTheRing) {
    openCreek();
    EXPECT_EQ(room->head().action, QStringLiteral("Load 1 spun"));
    EXPECT_TRUE(part<QLabel>("load_ring")->text().contains(QStringLiteral("balance grade")));
    window->current()->act();
    ASSERT_EQ(session.read().all<SpinLoad>().size(), 1U);
    const SpinLoad spun = session.read().all<SpinLoad>()[0];
    EXPECT_EQ(spun.ran, Ran::Smooth);
    EXPECT_TRUE(spun.doubt);
    EXPECT_EQ(room->head().action, QStringLiteral("Load 2 spun"));
    EXPECT_TRUE(part<QLabel>("load_ring")->text().contains(QStringLiteral("ran smooth before")));
    auto* walked = part<QPushButton>("spun_walked");
    walked->setFocus();
    QTest::keyClick(walked, Qt::Key_Space);
    EXPECT_EQ(session.read().all<SpinLoad>().back().ran, Ran::Walked);
    EXPECT_FALSE(room->loadView().hasLoad());
    EXPECT_EQ(room->waiting().boxes().size(), 2U) << "both stand wet now";
}

TEST_F(AtTheExtractor, SwappedFramesAreRingedKeptWhileTypingAndPutBack) {
    openCreek();
    LoadView& load = room->loadView();
    load.setFocus();
    const auto planned = load.load().places;
    QTest::keyClick(&load, Qt::Key_Space);
    EXPECT_EQ(load.held(), 1);
    QTest::keyClick(&load, Qt::Key_Escape);
    EXPECT_FALSE(load.held());
    // The first slot with a frame of the other box.
    int other = 1;
    while (planned[static_cast<std::size_t>(other)]->entry == planned[0]->entry) ++other;
    QTest::keyClick(&load, Qt::Key_Space);
    for (int n = 0; n < other; ++n) QTest::keyClick(&load, Qt::Key_Right);
    QTest::keyClick(&load, Qt::Key_Space);
    EXPECT_TRUE(load.isChanged());
    EXPECT_TRUE(load.accessibleDescription().contains(QStringLiteral("slot 1 is not as planned")));
    const double changed = load.load().offset.startG;
    EXPECT_GT(changed, load.planned().offset.startG);
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("have changed places")))
        << session.lastTold().toStdString();
    type("B1 13.0 17.2");
    EXPECT_TRUE(load.isChanged()) << "weighing a bucket leaves the frames where they are";
    EXPECT_NEAR(load.load().offset.startG, changed, 1e-6);
    load.setFocus();
    QTest::keyClick(&load, Qt::Key_R);
    EXPECT_FALSE(load.isChanged());
}

TEST_F(AtTheExtractor, AnOffsetOverTheRingIsWarnedOfInWords) {
    openCreek();
    LoadView& load = room->loadView();
    SheetLoad uneven = load.load();
    uneven.offset.startG = 50000;
    const auto* start = part<QLabel>("load_text");
    EXPECT_FALSE(start->text().contains(QStringLiteral("over what")));
    load.take(uneven);
    EXPECT_TRUE(start->text().contains(QStringLiteral("over what the grade allows")))
        << start->text().toStdString();
    EXPECT_TRUE(start->text().contains(session.look().tone(Tone::Warn).name()));
}

TEST_F(AtTheExtractor, LoadsAreSaidToBeSpunByKeyOrInTheLine) {
    openCreek();
    room->setFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space, Qt::ControlModifier);
    ASSERT_EQ(session.read().all<SpinLoad>().size(), 1U);
    EXPECT_EQ(session.read().all<SpinLoad>().back().ran, Ran::Smooth);
    session.undo();
    tryLine("Stopped");
    ASSERT_EQ(session.read().all<SpinLoad>().size(), 1U);
    EXPECT_EQ(session.read().all<SpinLoad>().back().ran, Ran::Stopped);
    EXPECT_TRUE(entry()->text().isEmpty());
    tryLine("walked");
    EXPECT_EQ(session.read().all<SpinLoad>().back().ran, Ran::Walked);
}

TEST_F(AtTheExtractor, FramesAreDraggedFromSlotToSlot) {
    openCreek();
    LoadView& load = room->loadView();
    const auto planned = load.load().places;
    const QPoint middle = load.rect().center();
    const int reach = std::min(load.width(), load.height()) / 4;
    // Slot 1 stands above the axle, slot 4 to its right.
    QTest::mousePress(&load, Qt::LeftButton, {}, middle - QPoint(0, reach));
    EXPECT_EQ(load.held(), 1);
    QTest::mouseMove(&load, middle + QPoint(reach, 0));
    QTest::mouseRelease(&load, Qt::LeftButton, {}, middle + QPoint(reach, 0));
    EXPECT_FALSE(load.held());
    EXPECT_EQ(load.load().places[0]->entry, planned[3]->entry);
    EXPECT_EQ(load.load().places[3]->entry, planned[0]->entry);
}

TEST_F(AtTheExtractor, ALoadThatDoesNotBalanceTakesAnEmptyFrameByKey) {
    openCreek();
    playAll(session.season(),
            R"({"do":"spin-load","on":"2027-08-07","run":"27-3","boxes":"C2a 9","ran":"smooth"}
{"do":"spin-load","on":"2027-08-07","run":"27-3","boxes":"C2b 8","ran":"smooth"})");
    LoadView& load = room->loadView();
    ASSERT_EQ(load.load().frames, 1);
    const double before = load.load().offset.largerG();
    EXPECT_TRUE(part<QLabel>("advice")->text().contains(QStringLiteral("does not balance")));
    load.setFocus();
    QTest::keyClick(&load, Qt::Key_A);
    EXPECT_EQ(load.load().frames, 2);
    EXPECT_LT(load.load().offset.largerG(), before);
    window->current()->act();
    EXPECT_EQ(session.read().all<LoadBox>().back().frames, Count(1)) << "the empty one is nobody's";
}

}  // namespace
}  // namespace combwright
