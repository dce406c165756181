// One visit from the clipboard into the file twice: by the one-line shorthand as it stands on the
// paper, and cell by cell. Both give the same records and the same end of the sheet, to the digit.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <map>

#include "core/places/due/due_list.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/yard/yard_sheet.h"
#include "core/words/shorthand.h"
#include "tests/support/in_window.h"
#include "tests/support/mill_lane.h"
#include "ui/yard/cells_editor.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

/// One hive's line as it stands on the paper, and the same in cells.
struct HiveOnPaper {
    const char* line;
    std::map<SheetCell, const char*> cells;
};

/// The visit of 9 June, word for word.
const std::vector<HiveOnPaper>& juneVisit() {
    using enum SheetCell;
    static const std::vector<HiveOnPaper> paper{
        {"e b7 s4 +S", {{Eggs, "y"}, {Brood, "7"}, {Stores, "4"}, {Boxes, "1"}}},
        {"e b8 s3 +S", {{Eggs, "y"}, {Brood, "8"}, {Stores, "3"}, {Boxes, "+1"}}},
        {"no eggs, queen not seen, 2 sealed QC, left 1",
         {{Eggs, "n"}, {Queen, "n"}, {QueenCells, "2c"}, {CellsLeft, "1"}}},
        {"e b6 s2", {{Eggs, "y"}, {Brood, "6"}, {Stores, "2"}}},
        {"e b8 +S wash 4 mites/300 bees",
         {{Eggs, "y"}, {Brood, "8"}, {Boxes, "1"}, {Wash, "4/300"}}},
        {"e b5 s1 LIGHT", {{Eggs, "y"}, {Brood, "5"}, {Stores, "1"}, {Heft, "light"}}},
        {"rain, not opened", {{Opened, "x"}, {Note, "rain"}}},
        {"e b9 s5 +2S", {{Eggs, "y"}, {Brood, "9"}, {Stores, "5"}, {Boxes, "2"}}},
        {"e b7 +S wash 11/300", {{Eggs, "y"}, {Brood, "7"}, {Boxes, "1"}, {Wash, "11/300"}}},
        {"e b7 s3 +S cross",
         {{Eggs, "y"}, {Brood, "7"}, {Stores, "3"}, {Boxes, "1"}, {Note, "cross"}}},
        {"e b8 s4 +S", {{Eggs, "y"}, {Brood, "8"}, {Stores, "4"}, {Boxes, "1"}}},
        {"e b6", {{Eggs, "y"}, {Brood, "6"}}}};
    return paper;
}

/// Every mark there is, each a way it is typed, in one visit.
const std::vector<HiveOnPaper>& everyMark() {
    using enum SheetCell;
    static const std::vector<HiveOnPaper> paper{
        {"sr6/300 e b~7 s5-7 n8",
         {{Wash, "sr6/300"}, {Eggs, "y"}, {Brood, "~7"}, {Stores, "5-7"}, {Seams, "8"}}},
        {"BIAS b6.5 bd20/5 t3",
         {{Eggs, "y"},
          {OpenBrood, "y"},
          {CappedBrood, "y"},
          {Brood, "6.5"},
          {Board, "20/5"},
          {Temper, "3"}}},
        {"dr6/100 shb2 wm cb0", {{Drones, "6/100"}, {Pests, "shb2 wm cb0"}}},
        {"kg20+21 fo1 qc0", {{Weight, "20+21"}, {Fed, "1 fondant"}, {QueenCells, "0"}}},
        {"kg41,5 f2,5 heavy", {{Weight, "41.5"}, {Fed, "2.5"}, {Heft, "h"}}},
        {"fd1.5 +1 +1d QS", {{Fed, "1.5 dry"}, {Boxes, "+1 +1d"}, {Queen, "y"}}},
        {"lid light !", {{Opened, "lid"}, {Heft, "l"}, {ComeBack, "y"}}},
        {"some brood, some stores, roll 0 mites in 300 bees",
         {{Brood, "~"}, {Stores, "~"}, {Wash, "sr0/300"}}},
        {"e0 l0 c0 q? qc3o left2 -1",
         {{Eggs, "n"},
          {OpenBrood, "n"},
          {CappedBrood, "n"},
          {Queen, "no"},
          {QueenCells, "3o"},
          {CellsLeft, "2"},
          {Boxes, "-1"}}},
        {"b? qc? w7 new lid, cross",
         {{Brood, "?"}, {QueenCells, "?"}, {Wash, "7"}, {Note, "new lid, cross"}}},
        {"b0 s0 board 4 mites in 1 day", {{Brood, "0"}, {Stores, "0"}, {Board, "4/1"}}},
        {"f~ fed in passing", {{Fed, "~"}, {Note, "fed in passing"}}}};
    return paper;
}

class YardTwoWays : public test::WindowTest {
  protected:
    /// What the sheet said at its end, and what became of the file.
    struct Told {
        std::string kept;
        std::string lookAt;
        std::string take;
        std::string due;
        std::string records;  ///< but for the lines as they were typed
        std::vector<SheetLine> lines;
    };
    enum class Way { ByLine, ByCells };

    void begin(const std::string& before) {
        openWindow(before);
        place = open<YardPlace>();
        QTest::keyClick(focus(), Qt::Key_S);
        ASSERT_TRUE(place->sheetIsOpen());
    }
    static void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        ASSERT_NE(focus(), nullptr);
        QTest::keyClick(focus(), key, with);
    }
    static void fillCell(SheetCell cell, const char* text) {
        const QString wanted = QStringLiteral("cell_%1").arg(static_cast<int>(cell));
        for (int n = 0; n < 25 && focus()->objectName() != wanted; ++n) press(Qt::Key_Tab);
        ASSERT_EQ(focus()->objectName(), wanted);
        QTest::keyClicks(focus(), QString::fromUtf8(text));
    }
    std::string label(const char* name) const {
        return place->findChild<QLabel*>(QLatin1String(name))->text().toStdString();
    }
    /// Types the whole visit, closes the sheet and tells what came of it.
    Told typed(const std::vector<HiveOnPaper>& paper, Way way, const std::string& before) {
        session.close();
        window.reset();
        QFile::remove(QString::fromStdString(path()));
        begin(before);
        if (way == Way::ByCells) press(Qt::Key_F6);
        for (const HiveOnPaper& hive : paper) {
            if (way == Way::ByLine) QTest::keyClicks(focus(), QString::fromUtf8(hive.line));
            // In the order of the cells, as Tab goes.
            if (way == Way::ByCells)
                for (const SheetCell cell : sheetCells())
                    if (const auto there = hive.cells.find(cell); there != hive.cells.end())
                        fillCell(cell, there->second);
            press(Qt::Key_Return);
        }
        QApplication::processEvents();
        place->settle();
        Told told{label("kept"), label("look_at"), label("take_along"), {}, {}, {}};
        press(Qt::Key_Return, Qt::ControlModifier);
        QApplication::processEvents();
        EXPECT_FALSE(place->sheetIsOpen()) << session.lastTold().toStdString();
        const DueList list = dueList(session.read(), clock.today());
        for (const DueItem* item : list.items())
            told.due += item->id + " " + dueDoText(*item).toStdString() + " " +
                        dueWhyText(*item).toStdString() + "\n";
        std::istringstream rows(session.season().dump());
        const std::string looks = std::string(Inspection::table) + "|";
        for (std::string row; std::getline(rows, row);)
            if (!row.starts_with(looks)) told.records += row + "\n";
        for (const Inspection& look : session.read().all<Inspection>()) {
            told.lines.push_back(readShorthand(look.line));
            EXPECT_EQ(look.seen, told.lines.back().seen) << look.line;
        }
        return told;
    }
    static void expectSame(const Told& line, const Told& cells) {
        EXPECT_EQ(line.kept, cells.kept);
        EXPECT_EQ(line.lookAt, cells.lookAt);
        EXPECT_EQ(line.take, cells.take);
        EXPECT_EQ(line.due, cells.due);
        EXPECT_EQ(line.records, cells.records);
        ASSERT_EQ(line.lines.size(), cells.lines.size());
        for (std::size_t n = 0; n < line.lines.size(); ++n)
            EXPECT_EQ(line.lines[n], cells.lines[n])
                << writeShorthand(line.lines[n]) << " / " << writeShorthand(cells.lines[n]);
    }

    YardPlace* place = nullptr;
};

TEST_F(YardTwoWays, TheVisitOfJuneGivesTheSameToTheDigit) {
    const Told line = typed(juneVisit(), Way::ByLine, test::millLaneBefore());
    const Told cells = typed(juneVisit(), Way::ByCells, test::millLaneBefore());
    expectSame(line, cells);
    for (const Told& told : {line, cells}) {
        EXPECT_THAT(told.kept, HasSubstr("<b>11</b>"));
        EXPECT_THAT(told.kept, HasSubstr("1 not opened"));
        EXPECT_THAT(told.kept, HasSubstr("<b>8</b>"));
        EXPECT_THAT(told.kept, HasSubstr("12 left in the storeroom"));
        EXPECT_THAT(told.kept, HasSubstr("<b>7.1</b>"));
        EXPECT_THAT(told.kept, HasSubstr("10 of 12 hives"));
        EXPECT_THAT(told.kept, Not(HasSubstr("5.9")));
    }
}

TEST_F(YardTwoWays, EveryMarkGivesTheSame) {
    const std::string before =
        test::millLaneBefore() +
        R"({"do":"add-boxes","on":"2027-05-01","kind":"deep","first_mark":"D60","count":2})"
        "\n";
    const Told line = typed(everyMark(), Way::ByLine, before);
    const Told cells = typed(everyMark(), Way::ByCells, before);
    expectSame(line, cells);
}

}  // namespace
}  // namespace combwright
