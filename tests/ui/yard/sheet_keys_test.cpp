// Escape and the season's own end: what was typed in a line and not kept goes nowhere else.
#include <gtest/gtest.h>

#include <QApplication>
#include <QSignalSpy>

#include "core/actions/yard/sheet.h"
#include "core/places/yard/yard_sheet.h"
#include "core/words/language.h"
#include "core/words/read_back.h"
#include "tests/ui/shell/shell_season.h"
#include "ui/shell/foot_bar.h"

namespace combwright {
namespace {

class SheetKeys : public test::ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        openSeason();
        place->openSheet();
        ASSERT_NE(line(), nullptr);
    }
    void type(const char* text) const { QTest::keyClicks(line(), QLatin1String(text)); }
    YardSheet sheet() const {
        return yardSheet(session.read(), *place->yard(), test::day("2027-06-09"));
    }
};

TEST_F(SheetKeys, EscapeBringsBackWhatWasKept) {
    type("e b7");
    key(Qt::Key_Return);
    key(Qt::Key_Up);
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->text(), QStringLiteral("e b7"));
    line()->end(false);
    type(" s3");
    key(Qt::Key_Escape);
    ASSERT_NE(line(), nullptr) << "one goes on in the line";
    EXPECT_EQ(line()->text(), QStringLiteral("e b7"));
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().rows.front().today->line, "e b7");
    EXPECT_EQ(session.season().history().size(), 4U) << "nothing was written anew";
}

/// "dead" for all is refused with words, and Escape takes line and words away.
TEST_F(SheetKeys, ALineForAllCannotSayThatHivesAreDead) {
    const auto* foot = named<FootBar>("foot");
    ASSERT_NE(foot, nullptr);
    key(Qt::Key_Up);
    ASSERT_EQ(place->sheetView().table().currentIndex().row(), 0);
    type("dead");
    EXPECT_TRUE(place->sheetView().model().saidBack(0).contains(QStringLiteral("by itself")));
    const std::size_t before = session.season().history().size();
    key(Qt::Key_Return);
    EXPECT_TRUE(foot->told().contains(QStringLiteral("by itself"))) << foot->told().toStdString();
    EXPECT_EQ(session.season().history().size(), before);
    place->sheetView().table().setFocus();
    place->sheetView().table().editRow(0);
    key(Qt::Key_Escape);
    EXPECT_TRUE(foot->told().isEmpty()) << foot->told().toStdString();
    key(Qt::Key_Return);
    EXPECT_EQ(session.season().history().size(), before);
}

/// What is said back while it is typed is what is kept then.
TEST_F(SheetKeys, GermanWordsAreSaidBackAsTheyAreKept) {
    const Speaking german(Language::German);
    const auto row = place->sheetView().table().currentIndex().row();
    const SheetModel& model = place->sheetView().model();
    type("Stifte b7 leicht");
    EXPECT_EQ(model.saidBack(row), readBackTyped({}, "e b7 light"));
    key(Qt::Key_Return);
    ASSERT_TRUE(sheet().rows.front().today);
    EXPECT_EQ(sheet().rows.front().today->line, "e b7 light");
}

/// What was refused is told no more once another deed is done, also one that had nothing to change.
TEST_F(SheetKeys, ARefusalIsNotToldBeyondTheNextDeed) {
    const Hive hive = *session.read().first<Hive>({is("mark", std::string("H1"))});
    const Day on = test::day("2027-06-09");
    ASSERT_TRUE(session.run(WriteLine{.on = on, .hive = hive.id, .line = "e b7"}));
    EXPECT_FALSE(session.run(WriteLine{.on = on, .hive = hive.id, .line = "e e0"}));
    EXPECT_FALSE(session.lastTold().isEmpty());
    ASSERT_TRUE(session.run(WriteLine{.on = on, .hive = hive.id, .line = "e b7"}));
    EXPECT_TRUE(session.lastTold().isEmpty()) << session.lastTold().toStdString();
}

TEST_F(SheetKeys, ARowGrowsWithWhatIsReadBackAndShrinksAgain) {
    const SheetTable& table = place->sheetView().table();
    const int row = table.currentIndex().row();
    const int before = table.rowHeight(row);
    const int next = table.rowHeight(row + 1);
    type(
        "e b7 s3 qc0 w4/300 the floor is rotten, a new one next time, and the lid wants paint; the "
        "hive leans to the left, level the stand before the supers go on");
    QApplication::processEvents();
    EXPECT_GT(table.rowHeight(row), before);
    EXPECT_EQ(table.rowHeight(row + 1), next);
    key(Qt::Key_Escape);
    QApplication::processEvents();
    EXPECT_EQ(table.rowHeight(row), before);
}

TEST_F(SheetKeys, AKeptRowReadsTheSheetOnce) {
    QSignalSpy read(&place->sheetView().model(), &SheetModel::sheetChanged);
    type("e b7");
    key(Qt::Key_Return);
    EXPECT_EQ(read.count(), 1);
    EXPECT_EQ(sheet().opened, 1);
    const SheetModel& model = place->sheetView().model();
    EXPECT_EQ(model.index(1, SheetModel::OpenedColumn).data().toString(), QStringLiteral("✓"));
}

TEST_F(SheetKeys, AKeptRowIsAtOnceWhatTheWholeSheetWouldSay) {
    const SheetModel& model = place->sheetView().model();
    for (const char* text : {"e b7 s3 +1", "e0 light", "w14/300 cross"}) {
        type(text);
        key(Qt::Key_Return);
        const YardSheet whole = sheet();
        const YardSheet& shown = model.sheet();
        ASSERT_TRUE(shown.visit) << text;
        EXPECT_EQ(shown.opened, whole.opened);
        EXPECT_EQ(shown.supersPutOn, whole.supersPutOn);
        EXPECT_EQ(shown.supersStanding, whole.supersStanding);
        EXPECT_EQ(shown.supersInStore, whole.supersInStore);
        EXPECT_EQ(shown.brood.has_value(), whole.brood.has_value());
        if (shown.brood && whole.brood) {
            EXPECT_EQ(shown.brood->value, whole.brood->value);
            EXPECT_EQ(shown.brood->n, whole.brood->n);
        }
        ASSERT_EQ(shown.takeAlong.size(), whole.takeAlong.size());
        for (std::size_t i = 0; i < whole.takeAlong.size(); ++i)
            EXPECT_EQ(shown.takeAlong[i].hives, whole.takeAlong[i].hives);
        for (std::size_t i = 0; i < whole.rows.size(); ++i) {
            EXPECT_EQ(shown.rows[i].minds.size(), whole.rows[i].minds.size()) << text << " " << i;
            EXPECT_EQ(shown.rows[i].supersNow, whole.rows[i].supersNow) << text << " " << i;
        }
    }
    EXPECT_EQ(sheet().supersPutOn, 1);
    EXPECT_FALSE(sheet().takeAlong.empty());
}

TEST_F(SheetKeys, ALineThatContradictsItselfStaysTypedAndSaysWhy) {
    type("e b7 b8");
    const SheetModel& model = place->sheetView().model();
    EXPECT_EQ(model.index(1, SheetModel::ReadBackColumn).data().toString(),
              QStringLiteral("The line says b7 and b8; only one can hold. Strike the other."));
    key(Qt::Key_F6);
    EXPECT_FALSE(place->sheetView().table().asCells()) << "a cell has room for one of them";
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().opened, 0);
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->text(), QStringLiteral("e b7 b8"));
    EXPECT_TRUE(session.lastTold().startsWith(
        QStringLiteral("The line says b7 and b8; only one can hold.")))
        << session.lastTold().toStdString();
    key(Qt::Key_Backspace);
    key(Qt::Key_Backspace);
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().opened, 1);
}

TEST_F(SheetKeys, ALineHalfTypedNeverReachesAnotherSeason) {
    makeSeason("other.combwright");
    type("e b7");
    ASSERT_TRUE(session.open(file("other.combwright")));
    EXPECT_EQ(sheet().opened, 0);
    place->openSheet();
    EXPECT_EQ(place->sheetView().model().draftOf(1), QString());
    type("x");
    session.close();
    EXPECT_FALSE(session.hasSeason());
    // It waits in its own season.
    ASSERT_TRUE(session.open(file()));
    place->openSheet();
    EXPECT_EQ(place->sheetView().model().draftOf(1), QStringLiteral("e b7"));
}

TEST_F(SheetKeys, AWholeYardIsWrittenInOneLineAndStruckOutWithTwoPresses) {
    key(Qt::Key_Up);
    type("x rain, 2 cross");
    const SheetModel& model = place->sheetView().model();
    EXPECT_EQ(
        model.index(0, SheetModel::ReadBackColumn).data().toString(),
        QStringLiteral("Every hive not written yet: Not opened. Of the yard: “rain, 2 cross”"));
    key(Qt::Key_Return);
    const int hives = static_cast<int>(sheet().rows.size());
    EXPECT_EQ(sheet().notOpened, hives);
    EXPECT_EQ(sheet().visit->note, "rain, 2 cross");
    const auto press = [this] {
        QTest::keyClick(line(), Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    };
    press();
    EXPECT_EQ(sheet().notOpened, hives) << "one press only asks";
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("again does it")));
    press();
    EXPECT_FALSE(sheet().visit);
    session.undo();
    EXPECT_EQ(sheet().notOpened, hives);
}

TEST_F(SheetKeys, WhyAnEarlierDaysLineIsChangedIsKeptBesideIt) {
    type("e b7");
    key(Qt::Key_Return);
    auto* why = place->findChild<QLineEdit*>(QStringLiteral("why_changed"));
    ASSERT_NE(why, nullptr);
    EXPECT_FALSE(why->isVisible()) << "what is written today needs no reason";
    clock.set("2027-06-20");
    place->openSheet();
    place->sheetView().show(*place->yard(), test::day("2027-06-09"));
    ASSERT_TRUE(why->isVisible());
    QTest::keyClicks(why, QStringLiteral("misread the card"));
    place->sheetView().table().editRow(1);
    QTest::keyClicks(line(), QStringLiteral(" s3"));
    key(Qt::Key_Return);
    const JournalEntry newest = session.season().history().front();
    EXPECT_EQ(newest.info.action, "write-line");
    EXPECT_EQ(newest.info.why, "misread the card");
}

}  // namespace
}  // namespace combwright
