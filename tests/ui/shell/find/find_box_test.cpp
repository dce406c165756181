// Ctrl+K by keyboard: what is typed is found, Enter goes there, Escape leaves everything as it was,
// half-typed line and all; and whatever the window can do is found in it.
#include "ui/shell/find/find_box.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QMenu>
#include <QPushButton>

#include "tests/ui/shell/shell_season.h"
#include "ui/common/words_table.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/shell/find/finder.h"
#include "ui/storeroom/storeroom_place.h"
#include "ui/wax_bench/wax_bench_place.h"

namespace combwright {
namespace {

class FindBoxTest : public test::ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        openSeason();
        ASSERT_NE(place, nullptr);
    }
    FindBox* box() const { return window->finder().box(); }
    void open() const {
        key(Qt::Key_K, Qt::ControlModifier);
        ASSERT_NE(box(), nullptr);
        window->finder().keeper().settle();
    }
    void type(const char* text) const {
        auto* typed = box()->findChild<QLineEdit*>(QStringLiteral("find_typed"));
        QTest::keyClicks(typed, QString::fromUtf8(text));
    }
    void press(Qt::Key pressed, Qt::KeyboardModifiers with = Qt::NoModifier) const {
        QTest::keyClick(box()->findChild<QLineEdit*>(QStringLiteral("find_typed")), pressed, with);
        QApplication::processEvents();
        QApplication::processEvents();
    }
    QString current() const {
        const FindLine* line = box() ? box()->current() : nullptr;
        return line ? line->title : QString();
    }
    QStringList titles() const {
        QStringList all;
        for (const FindLine& line : box()->lines())
            if (!line.isHead()) all << line.title;
        return all;
    }
};

TEST_F(FindBoxTest, GoesToTheHiveThatIsCalledSo) {
    window->goTo(0);
    open();
    type("h2");
    EXPECT_EQ(current(), QStringLiteral("H2"));
    press(Qt::Key_Return);
    EXPECT_EQ(box(), nullptr);
    EXPECT_EQ(window->current(), place);
    EXPECT_TRUE(session.lastTold().startsWith(QStringLiteral("H2")))
        << session.lastTold().toStdString();
    // Where one was sent last stands first the next time.
    open();
    EXPECT_EQ(current(), QStringLiteral("H2"));
}

TEST_F(FindBoxTest, LeavesWithEscapeWhereThePlaceHasAnEscapeOfItsOwn) {
    window->goTo(6);  // the season book
    Place* there = window->current();
    open();
    type("h2");
    press(Qt::Key_Escape);
    EXPECT_EQ(box(), nullptr);
    EXPECT_EQ(window->current(), there);
}

constexpr const char* honeyLines =
    R"({"do":"open-run","on":"2027-05-20","name":"R1"}
{"do":"fill-bucket","on":"2027-05-20","run":"R1","mark":"B1","net_g":12000,"water_percent":17}
{"do":"fill-bucket","on":"2027-05-20","run":"R1","mark":"B2","net_g":11000,"water_percent":17}
{"do":"fill-bucket","on":"2027-05-20","run":"R1","mark":"B3","net_g":10000,"water_percent":17}
{"do":"fill-bucket","on":"2027-05-20","run":"R1","mark":"B4","net_g":1000,"water_percent":17}
{"do":"blend-honey","on":"2027-05-25","name":"Summer","parts":"B1 all, B2 all"}
{"do":"add-goods","on":"2027-05-25","name":"454 g","what":"jar of honey","net_g":454,"price":6}
{"do":"add-goods","on":"2027-05-25","name":"wax wrap","what":"other","price":6}
{"do":"count-goods","on":"2027-05-25","goods_kind":"wax wrap","count":20}
{"do":"fill-jars","on":"2027-05-26","lot":"Summer","jars":"10x454 g","code":"LS1"}
{"do":"fill-jars","on":"2027-05-27","bucket":{"bucket":"B3","run":"R1"},"jars":"4x454 g","code":"LB3"}
{"do":"go-out","on":"2027-05-28","goods":"3 454 g","bottling":"LS1","buyer":"Zacharias"}
{"do":"go-out","on":"2027-05-29","goods":"2 wax wrap","buyer":"Quendolin"}
{"do":"go-out","on":"2027-05-30","bucket":{"bucket":"B4","run":"R1"},"mass_g":1000,"buyer":"Xaver"}
{"do":"gather-wax","on":"2027-05-20","name":"May cappings","source":"cappings","raw_g":900}
{"do":"gather-wax","on":"2027-05-21","name":"Late cappings","source":"cappings","raw_g":800})";

/// Each goes to its own row, which has the keyboard and is in sight.
TEST_F(FindBoxTest, GoesToTheRowOfWhatWasFound) {
    playAll(session.season(), honeyLines);
    session.lookAgain();
    QApplication::processEvents();
    auto* room = test::openPlace<HoneyRoomPlace>(*window);
    auto* bench = test::openPlace<WaxBenchPlace>(*window);
    const auto find = [this](const char* typed) {
        window->goTo(0);
        open();
        type(typed);
        press(Qt::Key_Return);
        comeBack();
        QTest::qWait(20);
    };
    /// The words at the head of the row the keyboard is on.
    const auto at = [this]() -> std::string {
        const auto* table = qobject_cast<WordsTable*>(focus());
        if (!table || !table->currentWords()) return {};
        const QModelIndex row = table->currentIndex();
        EXPECT_TRUE(table->viewport()->visibleRegion().intersects(table->visualRect(row)))
            << table->objectName().toStdString();
        return table->currentWords()->mark.toStdString();
    };
    find("b3");
    EXPECT_EQ(window->current(), room);
    EXPECT_EQ(at(), "B3 of R1");
    find("summer");
    EXPECT_EQ(at(), "Summer");
    // Emptied, it is shown among those that were.
    find("b4");
    EXPECT_EQ(at(), "B4 of R1");
    find("ls1");
    EXPECT_EQ(at(), "LS1");
    find("lb3");
    EXPECT_EQ(at(), "LB3");
    // Sold out of a filling, off the shelf, in bulk.
    find("zacharias");
    EXPECT_EQ(at(), "LS1");
    find("quendolin");
    EXPECT_EQ(at(), "wax wrap");
    find("xaver");
    EXPECT_EQ(at(), "B4 of R1");
    for (const char* batch : {"May cappings", "Late cappings"}) {
        find(batch);
        EXPECT_EQ(window->current(), bench);
        EXPECT_EQ(focus(), &bench->flow());
        const auto band = static_cast<std::size_t>(bench->flow().current());
        EXPECT_TRUE(bench->flow().bands()[band].name.contains(QString::fromUtf8(batch)))
            << bench->flow().bands()[band].name.toStdString();
    }
}

TEST_F(FindBoxTest, EscapeLeavesTheHalfTypedLineAsItWas) {
    place->openSheet();
    auto* field = line();
    ASSERT_NE(field, nullptr);
    QTest::keyClicks(field, QStringLiteral("e b6 hal"));
    const auto steps = session.season().history().size();
    open();
    EXPECT_NE(focus(), field);
    type("h2");
    press(Qt::Key_Down);
    press(Qt::Key_Escape);
    EXPECT_EQ(box(), nullptr);
    ASSERT_EQ(focus(), field);
    EXPECT_EQ(field->text(), QStringLiteral("e b6 hal"));
    EXPECT_EQ(field->cursorPosition(), 8);
    EXPECT_EQ(session.season().history().size(), steps) << "nothing was kept";
    // And it is typed on where it was left.
    QTest::keyClicks(focus(), QStringLiteral("f"));
    EXPECT_EQ(field->text(), QStringLiteral("e b6 half"));
}

TEST_F(FindBoxTest, ArrowsGoFromLineToLineAndTabFromGroupToGroup) {
    open();
    type("h");
    const FindLines lines = box()->lines();
    ASSERT_GT(lines.size(), 6U);
    ASSERT_TRUE(lines[0].isHead());
    EXPECT_EQ(current(), lines[1].title);
    press(Qt::Key_Up);
    EXPECT_EQ(current(), lines[1].title) << "the first stays";
    std::vector<QString> firsts;
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        if (lines[i].isHead()) firsts.push_back(lines[i + 1].title);
    ASSERT_GT(firsts.size(), 1U);
    for (std::size_t i = 1; i < firsts.size(); ++i) {
        press(Qt::Key_Tab);
        EXPECT_EQ(current(), firsts[i]);
    }
    press(Qt::Key_Tab);
    EXPECT_EQ(current(), firsts[0]) << "round";
    press(Qt::Key_Backtab);
    EXPECT_EQ(current(), firsts.back());
    std::size_t seen = 0;
    for (int i = 0; i < 100; ++i) press(Qt::Key_Up);
    for (const FindLine& line : lines) {
        if (line.isHead()) continue;
        EXPECT_EQ(current(), line.title);
        press(Qt::Key_Down);
        ++seen;
    }
    EXPECT_GT(seen, 4U);
}

TEST_F(FindBoxTest, SaysWhatCanBeAskedAndWhenThereIsNothing) {
    open();
    auto* note = box()->findChild<QLabel*>(QStringLiteral("find_note"));
    ASSERT_NE(note, nullptr);
    EXPECT_TRUE(note->isVisible());
    EXPECT_TRUE(note->text().contains(QStringLiteral("last tuesday")));
    type("zzzz");
    EXPECT_TRUE(titles().isEmpty());
    EXPECT_TRUE(note->isVisible());
    press(Qt::Key_Return);
    EXPECT_NE(box(), nullptr) << "there is nowhere to go";
    auto* typed = box()->findChild<QLineEdit*>(QStringLiteral("find_typed"));
    EXPECT_FALSE(typed->accessibleName().isEmpty());
    EXPECT_EQ(typed->accessibleDescription(), note->text());
    typed->clear();
    type("h1");
    EXPECT_TRUE(typed->accessibleDescription().startsWith(QStringLiteral("H1, hive")));
    press(Qt::Key_Escape);
}

TEST_F(FindBoxTest, GoesToADay) {
    window->goTo(0);
    open();
    type("2027-05-02");
    ASSERT_FALSE(titles().isEmpty());
    EXPECT_EQ(current(), QStringLiteral("Hill"));
    press(Qt::Key_Return);
    EXPECT_EQ(window->current(), place);
    EXPECT_TRUE(place->head().under.contains(QStringLiteral("2027")) ||
                place->findChild<QLineEdit*>()->text().contains(QStringLiteral("2 May")));
    EXPECT_EQ(place->hints().front().what, QStringLiteral("back to today"));
}

TEST_F(FindBoxTest, GoesToAPageAndToWhatCanBeDoneThere) {
    open();
    type("jars");
    EXPECT_TRUE(titles().contains(QStringLiteral("Jars")));
    EXPECT_EQ(current(), QStringLiteral("Jars"));
    press(Qt::Key_Return);
    auto* room = qobject_cast<HoneyRoomPlace*>(window->current());
    ASSERT_NE(room, nullptr);
    EXPECT_NE(room->hints().front().key, QString());
    open();
    type("pounds");
    ASSERT_EQ(current(), QStringLiteral("Pounds or kilograms"));
    const Units before = shownUnits();
    press(Qt::Key_Return);
    EXPECT_NE(shownUnits(), before);
    session.setUnits(before);
}

TEST_F(FindBoxTest, FindsWhatWasJustKept) {
    open();
    type("freshly");
    EXPECT_TRUE(titles().isEmpty());
    press(Qt::Key_Escape);
    ASSERT_TRUE(session.together([](Season& season) -> Result<void> {
        playAll(season,
                R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e \"freshly kept\""})");
        return {};
    }));
    open();
    type("freshly");
    EXPECT_EQ(titles(), QStringList{QStringLiteral("H1")});
    press(Qt::Key_Escape);
    session.undo();
    open();
    type("freshly");
    EXPECT_TRUE(titles().isEmpty());
    press(Qt::Key_Escape);
}

TEST_F(FindBoxTest, FindsEveryActionOfTheWindow) {
    window->finder().keeper().settle();
    int asked = 0;
    for (const QAction* action : window->findChildren<QAction*>()) {
        QString title = action->text();
        if (title.isEmpty() || action->isSeparator() || action->menu()) continue;
        title.remove(QLatin1Char('&'));
        title = title.section(QStringLiteral("  "), 0, 0);
        bool there = false;
        const FindLines found = window->finder().linesFor(title);
        for (const FindLine& line : found) there = there || line.title == title;
        // What cannot be done now is not offered.
        const bool barred = window->actions().contains(action) && !action->isEnabled();
        EXPECT_EQ(there, !barred) << title.toStdString();
        ++asked;
    }
    EXPECT_GT(asked, 40);
}

TEST_F(FindBoxTest, FindsEveryPlaceAndItsHelp) {
    for (const Place* each : window->places()) {
        const FindLines found = window->finder().linesFor(each->railWord());
        bool there = false;
        for (const FindLine& line : found) there = there || line.title == each->railWord();
        EXPECT_TRUE(there) << each->railWord().toStdString();
    }
    const FindLines help = window->finder().linesFor(QStringLiteral("infants"));
    ASSERT_FALSE(help.empty());
    EXPECT_EQ(help.front().title, QStringLiteral("Help"));
}

TEST_F(FindBoxTest, IsClosedWithTheSeason) {
    open();
    session.close();
    QApplication::processEvents();
    EXPECT_TRUE(!box() || !box()->isVisible());
    key(Qt::Key_K, Qt::ControlModifier);
    EXPECT_TRUE(!box() || !box()->isVisible()) << "nothing to find without a season";
}

}  // namespace
}  // namespace combwright
