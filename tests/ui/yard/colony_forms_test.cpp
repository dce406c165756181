// What happens to colonies, told by the forms behind X, by keyboard.
#include "ui/yard/colony_forms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/yard/yard_form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class ColonyForms : public test::YardFormTest {};

TEST_F(ColonyForms, SplitOntoANewStand) {
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("stand"));
        EXPECT_FALSE(shows(form, "new_boxes")) << "asked only of a new stand";
        EXPECT_FALSE(shows(form, "step")) << "asked only where the queen is known";
        EXPECT_FALSE(shows(form, "reason_held")) << "nothing is held";
        fill(form, "stand", "H9");
        fill(form, "new_boxes", "deep D40");
        fill(form, "boxes", "M1");
        choose(form, "queen", QStringLiteral("goes along"));
        choose(form, "step", QStringLiteral("its own eggs"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToSplit(window.get(), session, hive("H1"), on));
    const auto part = colony("H9");
    ASSERT_TRUE(part);
    EXPECT_EQ(part->origin, Origin::Split);
    EXPECT_EQ(part->mother, colony("H1")->id);
    EXPECT_EQ(stack("H9"), "D40 M1");
    EXPECT_EQ(stack("H1"), "D1");
    EXPECT_TRUE(queenOf("H9"));
    EXPECT_FALSE(queenOf("H1"));
    ASSERT_TRUE(wait("H1"));
    EXPECT_EQ(wait("H1")->step, QueenStep::QueenLost);
}

TEST_F(ColonyForms, ANucleusMovesWithItsCombsIntoAHiveOfItsOwn) {
    playAll(
        session.season(),
        R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"N1","boxes":"nuc NB1 5","origin":"nucleus"})");
    const auto combsIn = [&](const char* mark) {
        return read().where<Frame>({is("box", box(mark).id)}).size();
    };
    inForm([&](QDialog& form) {
        choose(form, "to_hive", QStringLiteral("H4"));
        EXPECT_FALSE(shows(form, "combs")) << "no box stands there: its own go along";
        choose(form, "to_hive", QStringLiteral("H3"));
        EXPECT_TRUE(shows(form, "combs"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToMoveColony(window.get(), session, hive("N1"), on));
    EXPECT_EQ(combsIn("D3"), 5U);
    EXPECT_EQ(combsIn("NB1"), 0U);
    EXPECT_TRUE(colony("H3"));
}

TEST_F(ColonyForms, ARefusedSplitStaysTypedAndGoesOntoAnEmptyHive) {
    const auto before = steps();
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("Which stand?"));
        fill(form, "stand", "H2");
        fill(form, "frames", "some");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("\"some\" is no whole number"));
        fill(form, "frames", "");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("H2")) << "a colony lives there";
        fill(form, "stand", "X1, Nowhere");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("No yard is called \"Nowhere\""));
        EXPECT_EQ(steps(), before);
        fill(form, "stand", "h3");
        enter(form);
    });
    EXPECT_TRUE(askToSplit(window.get(), session, hive("H1"), on));
    ASSERT_TRUE(colony("H3"));
    EXPECT_FALSE(wait("H1")) << "nobody said that anything is waited for";
}

TEST_F(ColonyForms, FourFramesIntoANewDeepInOneForm) {
    inForm([&](QDialog& form) {
        fill(form, "stand", "H9");
        EXPECT_FALSE(shows(form, "with_brood")) << "asked where frames are carried";
        fill(form, "frames", "4");
        EXPECT_TRUE(shows(form, "with_brood"));
        fill(form, "with_brood", "3");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("The frames need a box"));
        fill(form, "new_boxes", "deep");
        choose(form, "queen", QStringLiteral("goes along"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToSplit(window.get(), session, hive("H2"), on));
    ASSERT_TRUE(colony("H9"));
    EXPECT_TRUE(queenOf("H9"));
    const auto standing = boxesOn(read(), hive("H9").id);
    ASSERT_EQ(standing.size(), 1U);
    EXPECT_EQ(read().where<Frame>({is("box", standing.front().id)}).size(), 4U);
}

TEST_F(ColonyForms, Unite) {
    inForm([&](QDialog& form) {
        choose(form, "into", QStringLiteral("H1"));
        choose(form, "queen", QStringLiteral("that of the hive"));
        EXPECT_FALSE(shows(form, "stack"));
        choose(form, "boxes_to", QStringLiteral("go to the storeroom"));
        fill(form, "stack", "north wall");
        expectReachable(form);
        enter(form);
    });
    const auto gone = colony("H2");
    EXPECT_TRUE(askToUnite(window.get(), session, hive("H2"), on));
    EXPECT_FALSE(colony("H2"));
    EXPECT_EQ(read().find(gone->id)->unitedInto, colony("H1")->id);
    EXPECT_EQ(box("D2").place, BoxPlace::Storeroom);
    EXPECT_EQ(box("D2").stack, "north wall");
}

TEST_F(ColonyForms, ASwarmOfOursIsHived) {
    inForm([&](QDialog& form) {
        const auto* from = form.findChild<QComboBox*>(QStringLiteral("from_hive"));
        EXPECT_EQ(from->currentText(), QStringLiteral("H1")) << "the hive one is at";
        fill(form, "stand", "H3");
        choose(form, "queen", QStringLiteral("came with it"));
        choose(form, "step", QStringLiteral("a capped"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToHiveSwarm(window.get(), session, hive("H1"), on));
    ASSERT_TRUE(colony("H3"));
    EXPECT_EQ(colony("H3")->origin, Origin::Swarm);
    EXPECT_TRUE(queenOf("H3"));
    ASSERT_TRUE(wait("H1"));
    EXPECT_EQ(wait("H1")->step, QueenStep::CellSealed);
}

TEST_F(ColonyForms, AStrangeSwarmGoesIntoTheEmptyHiveOneIsAt) {
    inForm([&](QDialog& form) {
        const auto* stand = form.findChild<QLineEdit*>(QStringLiteral("stand"));
        EXPECT_EQ(stand->text(), QStringLiteral("H3"));
        EXPECT_FALSE(shows(form, "queen")) << "of a hive of ours only";
        enter(form);
    });
    EXPECT_TRUE(askToHiveSwarm(window.get(), session, hive("H3"), on));
    ASSERT_TRUE(colony("H3"));
    EXPECT_EQ(colony("H3")->origin, Origin::Swarm);
    EXPECT_FALSE(colony("H3")->mother);
}

TEST_F(ColonyForms, Swarmed) {
    inForm([&](QDialog& form) {
        choose(form, "step", QStringLiteral("an open"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askSwarmed(window.get(), session, hive("H1"), on));
    ASSERT_TRUE(wait("H1"));
    EXPECT_EQ(wait("H1")->step, QueenStep::CellOpen);
    EXPECT_TRUE(colony("H1")) << "it lives on";
}

TEST_F(ColonyForms, AColonyMovesOntoAnotherStand) {
    inForm([&](QDialog& form) {
        choose(form, "to_hive", QStringLiteral("H4"));
        EXPECT_EQ(form.findChild<QLineEdit*>(QStringLiteral("boxes"))->text(),
                  QStringLiteral("all"))
            << "no box stands there";
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToMoveColony(window.get(), session, hive("H1"), on));
    EXPECT_FALSE(colony("H1"));
    EXPECT_TRUE(colony("H4"));
    EXPECT_EQ(stack("H4"), "D1 M1");
}

TEST_F(ColonyForms, AColonyBegins) {
    inForm([&](QDialog& form) {
        EXPECT_FALSE(shows(form, "mother"));
        choose(form, "origin", QStringLiteral("a split"));
        choose(form, "mother", QStringLiteral("C1, Creek"));
        fill(form, "note", "from the lane");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToStartColony(window.get(), session, hive("H3"), on));
    ASSERT_TRUE(colony("H3"));
    EXPECT_EQ(colony("H3")->origin, Origin::Split);
    EXPECT_EQ(colony("H3")->mother, colony("C1")->id);
    EXPECT_EQ(colony("H3")->note, "from the lane");
}

TEST_F(ColonyForms, AColonyEnds) {
    const auto gone = colony("H2");
    inForm([&](QDialog& form) {
        EXPECT_FALSE(shows(form, "into"));
        choose(form, "ending", QStringLiteral("united"));
        EXPECT_TRUE(shows(form, "into"));
        choose(form, "ending", QStringLiteral("winter loss"));
        bool cautioned = false;
        for (const QLabel* words : form.findChildren<QLabel*>())
            cautioned = cautioned ||
                        (words->isVisible() && words->text().contains(QStringLiteral("held back")));
        EXPECT_TRUE(cautioned) << "a dead-out: its combs are held";
        fill(form, "note", "empty in the morning");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToEndColony(window.get(), session, hive("H2"), on));
    EXPECT_FALSE(colony("H2"));
    EXPECT_EQ(read().find(gone->id)->ending, Ending::WinterLoss);
    EXPECT_EQ(stack("H2"), "D2") << "stand and boxes stay";
}

TEST_F(ColonyForms, AMarkIsPaintedOver) {
    inForm([&](QDialog& form) {
        fill(form, "mark", "H1");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("H1")) << "another hive bears it";
        fill(form, "mark", "H7");
        enter(form);
    });
    const auto id = hive("H2").id;
    EXPECT_TRUE(askToRelabel(window.get(), session, hive("H2"), on));
    EXPECT_EQ(read().find(id)->mark.text(), "H7");
}

TEST_F(ColonyForms, AreChosenByLetter) {
    inDialog("letter_chooser", [&](QDialog& chooser) {
        letterIn(chooser, Qt::Key_B);
        EXPECT_TRUE(chooser.isVisible()) << "a colony lives there: none can begin";
        EXPECT_THAT(reason(chooser).toStdString(), HasSubstr("a colony lives there"));
        letterIn(chooser, Qt::Key_P);
    });
    inDialog("small_form", [&](QDialog& form) {
        fill(form, "mark", "H8");
        enter(form);
    });
    key(Qt::Key_X);
    EXPECT_EQ(place->board().currentHive()->mark, QStringLiteral("H8"));
    inDialog("letter_chooser",
             [&](QDialog& chooser) { QTest::keyClick(&chooser, Qt::Key_Escape); });
    const auto before = steps();
    key(Qt::Key_X);
    EXPECT_EQ(steps(), before);
}

TEST_F(ColonyForms, AreChosenByArrowsToo) {
    place->board().choose(hive("H3").id);
    inDialog("letter_chooser", [&](QDialog& chooser) {
        // Where nobody lives the first that can be done is a swarm.
        QTest::keyClick(chooser.focusWidget(), Qt::Key_Return);
    });
    inDialog("small_form", [&](QDialog& form) { enter(form); });
    key(Qt::Key_X);
    ASSERT_TRUE(colony("H3"));
    EXPECT_EQ(colony("H3")->origin, Origin::Swarm);
}

}  // namespace
}  // namespace combwright
