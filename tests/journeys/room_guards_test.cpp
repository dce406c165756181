// The honey room with sticky hands: what a key that bounces leaves alone, what is asked before two
// lots run together, whose frame was set aside, and that all of the room is reached by keys in
// large type too.
#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>
#include <QTimer>

#include "core/storage/queries/pegs.h"
#include "core/storage/queries/runs.h"
#include "tests/support/by_the_pad.h"

namespace combwright {
namespace {

class WithStickyHands : public test::ByThePad {
  protected:
    /// One box of Hill spun, one of Creek weighed: its load waits, and the drum holds Hill's honey.
    void twoLots() {
        keys("1\n21.4\n");
        spinAll(1);
        keys("7\n20.0\n");
        ASSERT_TRUE(room->loadView().hasLoad());
        ASSERT_EQ(all<Extraction>().size(), 2U);
        ASSERT_EQ(room->run(), all<Extraction>()[1].id);
    }
    void bounce(const char* key) {
        unhurried = false;
        keys(key);
        unhurried = true;
    }
    bool turns() const { return room->spinDesk().turns(); }
    QScrollArea& scroll() const {
        return *room->findChild<QScrollArea*>(QStringLiteral("room_scroll"));
    }
    template <class Widget>
    Widget* part(const char* name) const {
        return room->findChild<Widget*>(QLatin1String(name));
    }
};

TEST_F(WithStickyHands, AnotherLotIsAskedAboutBeforeItsLoadTurns) {
    twoLots();
    keys("\n");
    EXPECT_FALSE(turns()) << "asked before the clock starts";
    EXPECT_TRUE(asked().contains(QStringLiteral("still holds honey of Hill")))
        << asked().toStdString();
    bounce("\n");
    EXPECT_FALSE(turns()) << "the same stroke decides nothing";
    EXPECT_FALSE(asked().isEmpty());
    keys("\n");
    EXPECT_TRUE(turns()) << readBack().toStdString();
    EXPECT_TRUE(asked().isEmpty()) << "nothing is asked while it spins";
    EXPECT_TRUE(all<GateOpening>().empty());
}

TEST_F(WithStickyHands, TheGateRunEmptyAnswersIt) {
    twoLots();
    keys("\n");
    ASSERT_FALSE(asked().isEmpty());
    keys("/\n");
    ASSERT_EQ(all<GateOpening>().size(), 1U);
    EXPECT_EQ(all<GateOpening>().front().extraction, all<Extraction>()[0].id) << "of Hill";
    EXPECT_TRUE(all<GateOpening>().front().runEmpty.value_or(false));
    keys("\n");
    EXPECT_TRUE(turns()) << readBack().toStdString();
}

TEST_F(WithStickyHands, ALoadWrittenDownWithoutTheClockIsAskedAboutToo) {
    twoLots();
    keys("+");
    EXPECT_EQ(all<SpinLoad>().size(), 1U);
    ASSERT_FALSE(asked().isEmpty());
    bounce("+");
    EXPECT_EQ(all<SpinLoad>().size(), 1U);
    ASSERT_FALSE(asked().isEmpty());
    keys("+");
    EXPECT_EQ(all<SpinLoad>().size(), 2U);
    // By letters and by Ctrl+Space likewise.
    keys(".");
    ASSERT_EQ(all<SpinLoad>().size(), 1U) << readBack().toStdString();
    const auto byCtrl = [&] {
        clock.pass(std::chrono::seconds(3));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space, Qt::ControlModifier);
    };
    byCtrl();
    EXPECT_EQ(all<SpinLoad>().size(), 1U);
    ASSERT_FALSE(asked().isEmpty());
    byCtrl();
    EXPECT_EQ(all<SpinLoad>().size(), 2U);
    EXPECT_TRUE(asked().isEmpty()) << asked().toStdString();
}

TEST_F(WithStickyHands, AQuestionLeftIsAskedAgain) {
    twoLots();
    keys("\n");
    ASSERT_FALSE(asked().isEmpty());
    keys(".");
    EXPECT_TRUE(asked().isEmpty());
    keys("\n");
    EXPECT_FALSE(turns());
    EXPECT_FALSE(asked().isEmpty());
}

TEST_F(WithStickyHands, ABouncingPlusClosesNoDay) {
    keys("1\n21.4\n");
    spinAll(1);
    keys("/1\n13.0\n\n+");
    ASSERT_TRUE(asked().startsWith(QStringLiteral("Close the day?"))) << asked().toStdString();
    bounce("+");
    EXPECT_FALSE(all<Extraction>().front().closed);
    EXPECT_TRUE(asked().startsWith(QStringLiteral("Close the day?"))) << "it is asked still";
    keys("+");
    EXPECT_TRUE(all<Extraction>().front().closed) << readBack().toStdString();
}

TEST_F(WithStickyHands, ABouncingMinusDoesNotStopTheLoad) {
    keys("1\n21.4\n\n");
    clock.pass(std::chrono::minutes(5));
    keys("-");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    bounce("-");
    ASSERT_EQ(all<SpinLoad>().size(), 1U);
    EXPECT_EQ(all<SpinLoad>().front().ran, Ran::Walked) << readBack().toStdString();
    keys("-");
    EXPECT_EQ(all<SpinLoad>().front().ran, Ran::Stopped) << "a second one meant so";
}

TEST_F(WithStickyHands, CtrlSpaceAndTheStarBounceNeither) {
    keys("1\n21.4\n2\n19.8\n");
    clock.pass(std::chrono::seconds(3));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space, Qt::ControlModifier);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space, Qt::ControlModifier);
    EXPECT_EQ(all<SpinLoad>().size(), 1U);
    EXPECT_TRUE(readBack().contains(QStringLiteral("twice"))) << readBack().toStdString();
    keys("**");
    EXPECT_EQ(all<SetAside>().size(), 1U);
    clock.pass(std::chrono::seconds(1));
    keys("*");
    EXPECT_EQ(all<SetAside>().size(), 2U) << "frames are set aside one by one";
}

TEST_F(WithStickyHands, WhoseFrameWasSetAsideIsAskedWhereTheLoadHasSeveralBoxes) {
    keys("1\n21.4\n2\n19.8\n*");
    ASSERT_EQ(all<SetAside>().size(), 1U) << "kept at once";
    EXPECT_FALSE(all<SetAside>().front().box);
    const PadAsk which = room->entry().pad().ask();
    ASSERT_EQ(which.what, PadAsk::What::AsideBox);
    EXPECT_TRUE(answersText(which).contains(QStringLiteral("1 H1a  2 H1b")))
        << answersText(which).toStdString();
    keys("9\n");
    EXPECT_FALSE(all<SetAside>().front().box) << "no box of the load is on peg 9";
    QTest::keyClick(room->entry().line(), Qt::Key_Backspace);
    keys("2\n");
    ASSERT_TRUE(all<SetAside>().front().box);
    EXPECT_EQ(all<SetAside>().front().box, all<ExtractionBox>()[1].id);
    EXPECT_TRUE(readBack().contains(QStringLiteral("H1b"))) << readBack().toStdString();
    EXPECT_EQ(room->entry().pad().ask().what, PadAsk::What::AsideWhy);
    keys("2\n");
    EXPECT_EQ(all<SetAside>().front().why, AsideWhy::Broke);
    EXPECT_EQ(all<SetAside>().front().box, all<ExtractionBox>()[1].id);
    keys(".");
    EXPECT_TRUE(all<SetAside>().empty()) << "one entry, taken back whole";
}

TEST_F(WithStickyHands, NobodyIsAskedWhoseFrameItIsWhileALoadTurns) {
    keys("1\n21.4\n2\n19.8\n\n");
    ASSERT_TRUE(turns());
    keys("*");
    EXPECT_EQ(all<SetAside>().size(), 1U);
    EXPECT_TRUE(asked().isEmpty());
    clock.pass(std::chrono::minutes(13));
    room->spinDesk().tick();
    keys("+");
    EXPECT_EQ(room->entry().pad().ask().what, PadAsk::What::AsideBox);
    keys("\n");
    EXPECT_FALSE(all<SetAside>().front().box) << "Enter alone: unknown";
}

TEST_F(WithStickyHands, TheWaterOfATagIsTypedBehindTheWeight) {
    keys("1\n21.4/17.2\n");
    ASSERT_EQ(all<BoxLook>().size(), 1U) << readBack().toStdString();
    EXPECT_EQ(all<BoxLook>().front().water, WaterContent::hundredths(1720));
    EXPECT_TRUE(readBack().contains(QStringLiteral("water 17.2 %"))) << readBack().toStdString();
    keys(".");
    EXPECT_TRUE(all<BoxLook>().empty() && all<ExtractionBox>().empty()) << "taken back together";
    keys("1\n21.4\n");
    QTest::keyClicks(room->entry().line(), QStringLiteral("H1a water 16.8"));
    QTest::keyClick(room->entry().line(), Qt::Key_Return);
    ASSERT_EQ(all<BoxLook>().size(), 1U) << readBack().toStdString();
    EXPECT_EQ(all<BoxLook>().front().water, WaterContent::hundredths(1680));
    QTest::keyClicks(room->entry().line(), QStringLiteral("H1a water 16.4"));
    QTest::keyClick(room->entry().line(), Qt::Key_Return);
    EXPECT_EQ(all<BoxLook>().front().water, WaterContent::hundredths(1640)) << "read once more";
    QTest::keyClicks(room->entry().line(), QStringLiteral("H1a water 16.8"));
    QTest::keyClick(room->entry().line(), Qt::Key_Return);
    QTest::keyClicks(room->entry().line(), QStringLiteral("H1b 19.8 17.0 %"));
    QTest::keyClick(room->entry().line(), Qt::Key_Return);
    EXPECT_EQ(all<BoxLook>().size(), 2U);
    ASSERT_EQ(all<ExtractionBox>().size(), 2U);
    const auto& boxes = room->waiting().boxes();
    ASSERT_TRUE(boxes.front().look && boxes.front().look->water);
    EXPECT_TRUE(spoken(boxes.front()).contains(QStringLiteral("water 16.8 %")));
}

TEST_F(WithStickyHands, TheHeadSaysTheDayAndWhatTheRoomIsLike) {
    QTest::keyClicks(room->entry().line(), QStringLiteral("open 27-1 Hill"));
    QTest::keyClick(room->entry().line(), Qt::Key_Return);
    EXPECT_EQ(room->head().under, QStringLiteral("Sat 7 Aug 2027"));
    playAll(
        session.season(),
        R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Creek","room_c":27,"damp_share":0.54})");
    room->reload();
    keys("000\n");
    EXPECT_EQ(room->head().under, QStringLiteral("Sat 7 Aug 2027 · 27.0 °C, 54 % damp"));
    clock.set("2027-08-08");
    room->reload();
    EXPECT_EQ(room->head().under,
              QStringLiteral("Sun 8 Aug 2027 · open since Sat 7 Aug · 27.0 °C, 54 % damp"));
}

TEST_F(WithStickyHands, AWetBoxShowsThePegItCameOff) {
    keys("1\n21.4\n");
    spinAll(1);
    keys("1\n5.2\n");
    const RoomBox& wet = room->waiting().boxes().back();
    ASSERT_TRUE(wet.wet);
    EXPECT_FALSE(wet.peg);
    EXPECT_EQ(wet.pegWas, 1);
    EXPECT_TRUE(spoken(wet).contains(QStringLiteral("was on peg 1"))) << spoken(wet).toStdString();
}

TEST_F(WithStickyHands, NoWordIsCutInLargeType) {
    keys("1\n21.4/17.2\n2\n19.8\n3\n22.1\n");
    for (const double size : {1.0, 1.15, 1.3, 1.5, 2.0}) {
        setTextSize(size);
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
        EXPECT_LE(window->width(), 1280) << size;
        for (QWidget* each :
             std::initializer_list<QWidget*>{&room->waiting(), &room->buckets(), &room->loadView()})
            EXPECT_GE(each->width(), each->minimumSizeHint().width())
                << size << " " << each->objectName().toStdString();
    }
    setTextSize(1.0);
}

TEST_F(WithStickyHands, InLargeTypeTheRoomMovesWithTheKeys) {
    keys("1\n21.4\n2\n19.8\n");
    setTextSize(2.0);
    QCoreApplication::sendPostedEvents();
    QCoreApplication::processEvents();
    room->setFocus();
    QScrollBar& bar = *scroll().verticalScrollBar();
    ASSERT_GT(bar.maximum(), 0) << "it does not fit";
    bar.setValue(0);
    QTest::keyClick(focus(), Qt::Key_PageDown);
    EXPECT_GT(bar.value(), 0);
    for (int page = 0; page < 20; ++page) QTest::keyClick(focus(), Qt::Key_PageDown);
    EXPECT_EQ(bar.value(), bar.maximum());
    for (int page = 0; page < 20; ++page) QTest::keyClick(focus(), Qt::Key_PageUp);
    EXPECT_EQ(bar.value(), 0);
    // Tab goes through all of the room, and what has the cursor is in sight.
    for (QWidget* each :
         std::initializer_list<QWidget*>{&room->waiting(), &room->loadView(), &room->buckets()}) {
        bar.setValue(each == &room->waiting() ? bar.maximum() : 0);
        int tabs = 0;
        while (focus() != each && ++tabs < 60) QTest::keyClick(focus(), Qt::Key_Tab);
        ASSERT_EQ(focus(), each) << each->objectName().toStdString();
        EXPECT_FALSE(each->visibleRegion().isEmpty()) << each->objectName().toStdString();
    }
    // Round the drum: the slot at its foot is seen too.
    int tabs = 0;
    while (focus() != &room->loadView() && ++tabs < 60) QTest::keyClick(focus(), Qt::Key_Tab);
    for (int slot = 1; slot < 7; ++slot) QTest::keyClick(focus(), Qt::Key_Right);
    const QPoint foot(room->loadView().width() / 2, room->loadView().height() * 4 / 5);
    EXPECT_TRUE(room->loadView().visibleRegion().contains(foot));
    // The clock brings the load into sight.
    room->setFocus();
    bar.setValue(bar.maximum());
    clock.pass(std::chrono::seconds(3));
    keys("\n");
    ASSERT_TRUE(turns()) << readBack().toStdString();
    EXPECT_FALSE(room->loadView().visibleRegion().isEmpty());
    // What the gate asks for stands first.
    const auto* gate = part<QLabel>("gate");
    bar.setValue(0);
    EXPECT_TRUE(gate->isVisible() && !gate->visibleRegion().isEmpty())
        << gate->text().toStdString();
    setTextSize(1.0);
}

TEST_F(WithStickyHands, TheLogOfTheDayIsFilledInByThePad) {
    bool opened = false;
    QTimer::singleShot(0, window.get(), [&] {
        QWidget* form = QApplication::activeModalWidget();
        ASSERT_NE(form, nullptr);
        opened = form->objectName() == QLatin1String("day_log");
        const auto pad = [&](Qt::Key key) {
            QTest::keyClick(form->focusWidget(), key, Qt::KeypadModifier);
        };
        pad(Qt::Key_Plus);
        QTest::keyClicks(form->focusWidget(), QStringLiteral("2"), Qt::KeypadModifier);
        pad(Qt::Key_Plus);
        QTest::keyClicks(form->focusWidget(), QStringLiteral("9.15"), Qt::KeypadModifier);
        // How warm and damp the room is: left empty.
        for (int n = 0; n < 3; ++n) pad(Qt::Key_Plus);
        pad(Qt::Key_1);
        pad(Qt::Key_Plus);
        pad(Qt::Key_2);
        pad(Qt::Key_Minus);
        EXPECT_EQ(qobject_cast<QComboBox*>(form->focusWidget())->currentIndex(), 1);
        pad(Qt::Key_Enter);
        if (form->isVisible()) form->close();
    });
    keys("0000\n");
    EXPECT_TRUE(opened);
    ASSERT_EQ(all<RoomDay>().size(), 1U) << readBack().toStdString();
    EXPECT_EQ(all<RoomDay>().front().hands, Count(2));
    EXPECT_TRUE(all<RoomDay>().front().begun);
    EXPECT_EQ(all<RoomDay>().front().roomCleaned, true);
    EXPECT_EQ(all<RoomDay>().front().handsWashed, false);
}

TEST_F(WithStickyHands, HelpStandsInShortGroupsAndBeginsWithWhatCanHurt) {
    const QString help = room->help();
    for (const char* head : {"Safety", "Boxes, by the number pad", "Extractor and gate", "Buckets",
                             "The day", "By letters"})
        EXPECT_TRUE(help.contains(QStringLiteral("<b>") + QLatin1String(head))) << head;
    EXPECT_LT(help.indexOf(QStringLiteral("hands out until it stands")),
              help.indexOf(QStringLiteral("Boxes, by the number pad")));
    EXPECT_TRUE(help.contains(QStringLiteral("infants")));
    QString described;
    QTimer::singleShot(0, window.get(), [&] {
        auto* dialog = QApplication::activeModalWidget();
        ASSERT_NE(dialog, nullptr);
        described =
            dialog->findChild<QScrollArea*>(QStringLiteral("help_scroll"))->accessibleDescription();
        dialog->close();
    });
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_F1);
    EXPECT_TRUE(described.contains(QStringLiteral("infants")));
    EXPECT_FALSE(described.contains(QLatin1Char('<'))) << "read out as words";
}

}  // namespace
}  // namespace combwright
