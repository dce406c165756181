// The day of the pull by keyboard: Enter, Enter, Enter clips a peg to each box as it leaves its
// hive; boards go in and come out by one key; what is off stands over the stack with its peg.
#include "core/actions/honey_room/pegs.h"
#include "core/actions/storeroom/equipment.h"
#include "core/storage/queries/pegs.h"
#include "tests/support/in_pull.h"

namespace combwright {
namespace {

using test::InPull;

class PegsInPull : public InPull {
  protected:
    void keepPlan() {
        goTo(1, 0);
        press(Qt::Key_T);
        closeDialogs();
        place->act();
        closer.stop();
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        goTo(0, 0);
    }
    const Read& read() const { return session.read(); }
    std::string markOfPeg(int number) const {
        const auto peg = pegOn(read(), Count(number), clock.today());
        const auto box = peg ? read().find(peg->box) : std::nullopt;
        return box ? box->mark : std::string("none");
    }
    QLineEdit* number() const { return find<QLineEdit>("peg_number"); }
};

TEST_F(PegsInPull, EnterEnterEnterIsTheWholePull) {
    keepPlan();
    std::vector<std::string> toTake;
    for (const PullYardRow& yard : place->sheet().yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& box : hive.boxes)
                if (box.verdict == PullVerdict::Take) toTake.push_back(box.box.mark);
    ASSERT_GE(toTake.size(), 3U);
    for (int n = 0; n < 20 && current() != toTake[0]; ++n) press(Qt::Key_Down);
    ASSERT_EQ(current(), toTake[0]);
    press(Qt::Key_Return);
    ASSERT_TRUE(number()->hasFocus()) << "Enter asks for the number";
    for (std::size_t n = 0; n < toTake.size(); ++n) {
        EXPECT_EQ(number()->text().toInt(), static_cast<int>(n) + 1) << "the next free one";
        press(Qt::Key_Return);
        EXPECT_EQ(markOfPeg(static_cast<int>(n) + 1), toTake[n]);
    }
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("That was the last to take")))
        << session.lastTold().toStdString();
    EXPECT_EQ(place->sheet().brought, static_cast<int>(toTake.size()));
    EXPECT_EQ(place->sheet().taken, 0);
    EXPECT_TRUE(place->board().hasFocus()) << "the cursor is not left behind";
    for (const std::string& mark : toTake)
        EXPECT_EQ(read().first<Box>({is("mark", mark)})->place, BoxPlace::Waiting);
    EXPECT_TRUE(place->board().accessibleDescription().contains(QStringLiteral("peg 3")))
        << place->board().accessibleDescription().toStdString();
    // The last one was a slip.
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    place->settle();
    EXPECT_EQ(place->sheet().brought, static_cast<int>(toTake.size()) - 1);
}

TEST_F(PegsInPull, AnotherNumberIsTypedAndATakenOneRefused) {
    keepPlan();
    goTo(0, 1);
    ASSERT_EQ(current(), "M01");
    press(Qt::Key_4);
    ASSERT_TRUE(number()->hasFocus());
    EXPECT_EQ(number()->text(), QStringLiteral("4"));
    press(Qt::Key_2);
    press(Qt::Key_Return);
    EXPECT_EQ(markOfPeg(42), "M01");
    press(Qt::Key_Escape);
    goTo(1, 0);
    const std::string next = current();
    press(Qt::Key_Return);
    number()->setText(QStringLiteral("42"));
    press(Qt::Key_Return);
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("Peg 42 is on M01")))
        << session.lastTold().toStdString();
    EXPECT_TRUE(number()->hasFocus()) << "another number can be typed at once";
    number()->setText(QStringLiteral("none"));
    press(Qt::Key_Return);
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("1 to 999")));
    press(Qt::Key_Escape);
    EXPECT_TRUE(place->board().hasFocus());
    EXPECT_EQ(current(), next);
    EXPECT_EQ(read().all<Peg>().size(), 1U);
}

TEST_F(PegsInPull, WhatIsHeldBackGetsNoneByTheWay) {
    goTo(2, 0);
    ASSERT_EQ(current(), "M04");
    press(Qt::Key_Return);
    EXPECT_TRUE(place->board().hasFocus());
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("Held back")))
        << session.lastTold().toStdString();
    EXPECT_TRUE(read().all<Peg>().empty());
}

TEST_F(PegsInPull, BoardsGoInRoundByRoundAndComeOut) {
    EXPECT_FALSE(find<QWidget>("clearer_bar")->isVisible()) << "no plan is kept";
    keepPlan();
    ASSERT_TRUE(find<QWidget>("clearer_bar")->isVisible());
    session.run(CountEquipment{
        .on = clock.today(), .item = EquipmentItem::ClearerBoard, .onHand = Count(1)});
    place->settle();
    EXPECT_NE(text("clearer_words").find("1 board, 0 in, 1 free"), std::string::npos)
        << text("clearer_words");
    place->board().setFocus();
    press(Qt::Key_I);
    ASSERT_EQ(read().all<ClearerBoard>().size(), 1U) << "one board, one hive";
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("out by Sun 1 Aug")))
        << session.lastTold().toStdString();
    press(Qt::Key_I);
    EXPECT_EQ(read().all<ClearerBoard>().size(), 1U) << "none is free";
    // Its three days are over.
    clock.set("2027-08-01");
    place->reload();
    place->settle();
    EXPECT_NE(text("clearer_words").find("out today at the latest"), std::string::npos)
        << text("clearer_words");
    place->board().setFocus();
    press(Qt::Key_O);
    EXPECT_EQ(read().all<ClearerBoard>()[0].off, clock.today());
    goTo(1, 0);
    press(Qt::Key_B);
    ASSERT_EQ(read().all<ClearerBoard>().size(), 2U);
    EXPECT_TRUE(place->board().accessibleDescription().contains(QStringLiteral("board in")))
        << place->board().accessibleDescription().toStdString();
    press(Qt::Key_B);
    EXPECT_TRUE(read().all<ClearerBoard>()[1].off);
    // By the buttons too, from the keyboard.
    tabTo("boards_in");
    press(Qt::Key_Space);
    EXPECT_EQ(read().all<ClearerBoard>().size(), 3U);
}

}  // namespace
}  // namespace combwright
