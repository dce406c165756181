// The queen of a hive, told by the forms behind Q, by keyboard, and what the card and the foot of
// the board make of it.
#include "ui/yard/queen_forms.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/ui/yard/yard_form_hands.h"
#include "ui/yard/follow_dialog.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class QueenForms : public test::YardFormTest {
  protected:
    void put(const char* number) {
        inForm([number](QDialog& form) {
            fill(form, "reared", "2026");
            fill(form, "number", number);
            enter(form);
        });
        ASSERT_TRUE(askToPutQueen(window.get(), session, hive("H1"), day("2027-05-01")));
    }
    static Day day(const char* text) { return test::day(text); }
    std::string card() const {
        std::string all;
        for (const QLabel* words : place->boardPage().card().findChildren<QLabel*>())
            if (!words->isHidden()) all += words->text().toStdString() + "\n";
        return all;
    }
    bool bandIsShown() const { return named<QWidget>("queen_wait")->isVisible(); }
    std::string foot() const {
        for (const LedgerFigure& each : place->boardPage().totals().figures())
            if (each.name == QStringLiteral("colonies"))
                return (each.figure.figure + QLatin1Char(' ') + each.words).trimmed().toStdString();
        return {};
    }
};

TEST_F(QueenForms, PutIn) {
    inForm([&](QDialog& form) {
        EXPECT_EQ(form.focusWidget()->objectName(), QStringLiteral("reared"));
        EXPECT_FALSE(shows(form, "left_how")) << "nobody wrote one down before";
        fill(form, "reared", "next");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("\"next\" is no whole number"));
        fill(form, "reared", "2025");
        bool said = false;
        for (const QLabel* words : form.findChildren<QLabel*>())
            said = said ||
                   (words->text().endsWith(QStringLiteral("Queens of 2025 are marked blue.")) &&
                    words->text().contains(QStringLiteral("<img")));
        EXPECT_TRUE(said) << "her colour by its word, and as the dot she wears";
        choose(form, "origin", QStringLiteral("bought"));
        choose(form, "marked", QStringLiteral("marked"));
        fill(form, "number", "42");
        choose(form, "clipped", QStringLiteral("clipped"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToPutQueen(window.get(), session, hive("H1"), on));
    const auto queen = queenOf("H1");
    ASSERT_TRUE(queen);
    EXPECT_EQ(queen->reared, Count(2025));
    EXPECT_EQ(queen->from, QueenFrom::Bought);
    EXPECT_EQ(queen->number, "42");
    EXPECT_EQ(queen->clipped, true);
    EXPECT_THAT(card(), HasSubstr("Queen 42 of 2025, blue, marked, clipped; here since"));
    EXPECT_THAT(card(), HasSubstr("Colony since Sat 10 Apr 2027, overwintered."));
}

TEST_F(QueenForms, ADaughterTakesThePlaceOfHerMother) {
    put("7");
    inForm([&](QDialog& form) {
        fill(form, "reared", "2027");
        choose(form, "mother", QStringLiteral("queen 7 of 2026, in H1"));
        choose(form, "left_how", QStringLiteral("was superseded"));
        enter(form);
    });
    const auto mother = queenOf("H1");
    EXPECT_TRUE(askToPutQueen(window.get(), session, hive("H1"), on));
    EXPECT_EQ(queenOf("H1")->mother, mother->id);
    EXPECT_EQ(read().where<QueenStay>({is("queen", mother->id)}).front().left,
              QueenLeft::Superseded);
    EXPECT_THAT(card(), HasSubstr("daughter of 7 of 2026"));
    EXPECT_THAT(card(), HasSubstr("yellow by her year")) << "nobody said that she is marked";
}

TEST_F(QueenForms, Marked) {
    inForm([&](QDialog& form) {
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty()) << "nothing was said of her";
        choose(form, "marked", QStringLiteral("marked"));
        fill(form, "colour", "orange");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToMarkQueen(window.get(), session, hive("H1"), on));
    EXPECT_EQ(queenOf("H1")->colour, "orange");
    EXPECT_EQ(queenOf("H1")->marked, true);
    EXPECT_THAT(card(), HasSubstr("Queen, year not known, orange, marked"));
}

TEST_F(QueenForms, LostMakesQueenless) {
    EXPECT_EQ(foot(), "2");
    inForm([&](QDialog& form) {
        choose(form, "left_how", QStringLiteral("was lost"));
        fill(form, "note", "balled");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToLoseQueen(window.get(), session, hive("H1"), on));
    EXPECT_FALSE(queenOf("H1"));
    EXPECT_EQ(foot(), "2 (1 queenless)");
    EXPECT_THAT(card(), HasSubstr("The queen was lost on Wed 9 Jun 2027."));
    EXPECT_FALSE(bandIsShown());
}

TEST_F(QueenForms, TakenToAnotherHive) {
    put("7");
    const auto queen = queenOf("H1");
    inForm([&](QDialog& form) {
        choose(form, "to_hive", QStringLiteral("C1, Creek"));
        choose(form, "step", QStringLiteral("its own eggs"));
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToMoveQueen(window.get(), session, hive("H1"), on));
    EXPECT_EQ(queenOf("C1")->id, queen->id);
    EXPECT_EQ(wait("H1")->step, QueenStep::QueenLost);
}

TEST_F(QueenForms, AWaitIsDrawnAndEnds) {
    EXPECT_FALSE(bandIsShown());
    inForm([&](QDialog& form) {
        choose(form, "step", QStringLiteral("a larva"));
        fill(form, "not_seen_on", "soon");
        enter(form);
        EXPECT_THAT(reason(form).toStdString(), HasSubstr("\"soon\" is no day"));
        fill(form, "not_seen_on", "8 jun");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askToWaitForQueen(window.get(), session, hive("H1"), on));
    ASSERT_TRUE(wait("H1"));
    EXPECT_EQ(wait("H1")->step, QueenStep::LarvaMoved);
    EXPECT_EQ(wait("H1")->notSeenOn, day("2027-06-08"));
    EXPECT_TRUE(bandIsShown()) << "no look left a cell: the record alone begins the wait";
    EXPECT_EQ(foot(), "2 (1 waiting)");
    inForm([&](QDialog& form) {
        fill(form, "note", "she lays");
        enter(form);
    });
    EXPECT_TRUE(askToEndQueenWait(window.get(), session, hive("H1"), on));
    EXPECT_EQ(wait("H1")->over, on);
    EXPECT_FALSE(bandIsShown());
    EXPECT_EQ(foot(), "2");
}

TEST_F(QueenForms, AYearsOwnColour) {
    inForm([&](QDialog& form) {
        fill(form, "digit", "5");
        enter(form);
        EXPECT_FALSE(reason(form).isEmpty());
        fill(form, "colour", "violet");
        expectReachable(form);
        enter(form);
    });
    EXPECT_TRUE(askForQueenColour(window.get(), session, on));
    EXPECT_EQ(read().all<QueenColour>().front().colour.text(), "violet");
}

TEST_F(QueenForms, AreChosenByLetter) {
    inDialog("letter_chooser", [&](QDialog& chooser) {
        letterIn(chooser, Qt::Key_O);
        EXPECT_THAT(reason(chooser).toStdString(), HasSubstr("nothing is waited for"));
        letterIn(chooser, Qt::Key_W);
    });
    inDialog("small_form", [&](QDialog& form) { enter(form); });
    key(Qt::Key_Q);
    EXPECT_EQ(wait("H1")->step, QueenStep::CellSealed);
}

TEST_F(QueenForms, AQueenAndABoxAreFollowed) {
    put("7");
    inDialog("follow_dialog", [&](QDialog& open) {
        auto& dialog = dynamic_cast<FollowDialog&>(open);
        EXPECT_THAT(dialog.told().toStdString(), HasSubstr("Heads the colony of H1 in Hill."));
        QTest::keyClick(open.focusWidget(), Qt::Key_Down);
        EXPECT_THAT(dialog.told().toStdString(), HasSubstr("Box M1"));
        EXPECT_THAT(dialog.told().toStdString(), HasSubstr("Onto H1 in Hill"));
        EXPECT_THAT(dialog.told().toStdString(), Not(HasSubstr("Heads")));
        QTest::keyClick(&open, Qt::Key_Escape);
    });
    key(Qt::Key_J);
    key(Qt::Key_Up);
    inDialog("follow_dialog", [&](QDialog& open) {
        EXPECT_THAT(dynamic_cast<FollowDialog&>(open).told().toStdString(), HasSubstr("Box D1"))
            << "the box one is on";
        QTest::keyClick(&open, Qt::Key_Escape);
    });
    key(Qt::Key_J);
}

TEST_F(QueenForms, APastDayShowsWhoStoodThereUnderWhichMark) {
    const auto marks = [this] {
        std::string all;
        for (const HiveOnBoard& each : place->board().hives()) all += each.mark.toStdString() + " ";
        return all;
    };
    const auto lines =
        R"({"do":"relabel-hive","on":"2027-06-01","hive":"H2","mark":"H7"}
{"do":"end-colony","on":"2027-06-02","hive":"H1","ending":"sold"}
{"do":"close-hive","on":"2027-06-03","hive":"H4"})";
    playAll(session.season(), lines);
    EXPECT_EQ(marks(), "H1 H7 H3 ");
    EXPECT_EQ(foot(), "1");
    auto* day = named<QLineEdit>("day");
    day->setFocus();
    day->selectAll();
    QTest::keyClicks(day, QStringLiteral("1 may"));
    QTest::keyClick(day, Qt::Key_Return);
    EXPECT_EQ(marks(), "H1 H2 H3 H4 ");
    EXPECT_EQ(foot(), "2");
    EXPECT_THAT(place->head().under.toStdString(), HasSubstr("as on "));
    EXPECT_THAT(card(), HasSubstr("overwintered")) << "the colony that lived there then";
    EXPECT_THAT(card(), Not(HasSubstr("Jun"))) << "nothing that came later";
}

TEST_F(QueenForms, HelpNamesTheKeys) {
    const std::string help = place->help().toStdString();
    for (const char* each : {"X S", "X U", "X P", "X B", "Q P", "Q W", "Q O"})
        EXPECT_THAT(help, HasSubstr(std::string("<b>") + each));
}

TEST_F(QueenForms, AMarkedQueenShowsHerDotBesideTheWord) {
    const auto marked = [&](const char* choice) {
        inForm([choice](QDialog& form) {
            choose(form, "marked", QString::fromLatin1(choice));
            fill(form, "reared", "2026");
            enter(form);
        });
        ASSERT_TRUE(askToMarkQueen(window.get(), session, hive("H1"), day("2027-05-02")));
        place->reload();
        place->board().choose(hive("H1").id);
    };
    marked("not marked");
    EXPECT_THAT(card(), testing::Not(HasSubstr("<img"))) << "her year's colour is on no queen";
    marked("marked");
    EXPECT_THAT(card(), HasSubstr("<img"));
    EXPECT_THAT(card(), HasSubstr("white, marked"));
    inForm([](QDialog& form) {
        QString said;
        for (const QLabel* words : form.findChildren<QLabel*>()) said += words->text();
        EXPECT_TRUE(said.contains(QStringLiteral("<img")));
        EXPECT_TRUE(said.contains(QStringLiteral("white, marked")));
        QTest::keyClick(&form, Qt::Key_Escape);
    });
    askToMarkQueen(window.get(), session, hive("H1"), on);

    key(Qt::Key_S);
    ASSERT_TRUE(place->sheetIsOpen());
    const auto& model = place->sheetView().model();
    const auto cell = model.index(1, SheetModel::HiveColumn);
    EXPECT_EQ(cell.data(SheetModel::queenColourRole).toString(), QStringLiteral("white"));
    EXPECT_THAT(cell.data(Qt::AccessibleTextRole).toString().toStdString(),
                HasSubstr("queen marked white"));
    EXPECT_TRUE(model.index(2, SheetModel::HiveColumn)
                    .data(SheetModel::queenColourRole)
                    .toString()
                    .isEmpty());
}

}  // namespace
}  // namespace combwright
