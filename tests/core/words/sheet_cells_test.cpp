// Cells and line of the yard sheet are two ways of typing the same.
#include "core/words/sheet_cells.h"

#include <gtest/gtest.h>

#include "core/words/shorthand.h"
#include "core/words/units.h"

namespace combwright {
namespace {

std::string lineWith(const std::string& before, SheetCell cell, const char* typed) {
    const auto line = withCell(readShorthand(before), cell, QString::fromUtf8(typed));
    return line ? writeShorthand(*line) : "refused";
}

TEST(SheetCells, WriteTheLineOneWouldType) {
    EXPECT_EQ(lineWith("", SheetCell::Brood, "7"), "b7");
    EXPECT_EQ(lineWith("b7", SheetCell::Stores, "~3"), "b7 s~3");
    EXPECT_EQ(lineWith("b7", SheetCell::Brood, "5-7"), "b5-7");
    EXPECT_EQ(lineWith("b7", SheetCell::Eggs, "y"), "e b7");
    EXPECT_EQ(lineWith("b7", SheetCell::Eggs, "0"), "e0 b7");
    EXPECT_EQ(lineWith("", SheetCell::Queen, "no"), "q?");
    EXPECT_EQ(lineWith("", SheetCell::QueenCells, "2C"), "qc2c");
    EXPECT_EQ(lineWith("", SheetCell::QueenCells, "0"), "qc0");
    EXPECT_EQ(lineWith("e", SheetCell::Boxes, "1"), "e +1");
    EXPECT_EQ(lineWith("e", SheetCell::Boxes, "-2 +1d"), "e -2 +1d");
    EXPECT_EQ(lineWith("", SheetCell::Wash, "4/300"), "w4/300");
    EXPECT_EQ(lineWith("", SheetCell::Heft, "l"), "light");
    EXPECT_EQ(lineWith("", SheetCell::Opened, "no"), "x");
    EXPECT_EQ(lineWith("b7", SheetCell::ComeBack, "y"), "b7 !");
    EXPECT_EQ(lineWith("b7", SheetCell::Note, "cross  today"), "b7 cross today");
    EXPECT_EQ(lineWith("b7", SheetCell::Note, "cross,"), "b7 cross");
}

TEST(SheetCells, WhatIsSaidOfTheLidStandsWhateverElseIsTyped) {
    EXPECT_EQ(lineWith("o", SheetCell::Boxes, "1"), "o +1");
    EXPECT_EQ(lineWith("x light", SheetCell::Boxes, "1"), "x +1 light");
    EXPECT_EQ(lineWith("+1", SheetCell::Opened, "yes"), "o +1");
    EXPECT_EQ(lineWith("o +1", SheetCell::Opened, ""), "+1");
    EXPECT_EQ(lineWith("e", SheetCell::Boxes, "o"), "refused");
    const auto opened = [](const char* line) {
        return cellText(readShorthand(line), SheetCell::Opened).toStdString();
    };
    EXPECT_EQ(opened("+1"), "") << "nobody said it";
    EXPECT_EQ(opened("o +1"), "o");
    EXPECT_EQ(opened("lid +1"), "lid");
    EXPECT_EQ(cellText(readShorthand("+1"), SheetCell::Boxes), QStringLiteral("+1"));
    EXPECT_EQ(cellText(readShorthand("t3"), SheetCell::Temper), QStringLiteral("3"));
    // Once something is seen inside, it was opened.
    const auto line = withCell(readShorthand("+1 heavy"), SheetCell::Brood, QStringLiteral("5"));
    ASSERT_TRUE(line);
    EXPECT_EQ(line->seen.looked, Looked::Opened);
}

TEST(SheetCells, BlankIsNeitherZeroNorNo) {
    EXPECT_EQ(lineWith("e b7 s3", SheetCell::Brood, " "), "e s3");
    EXPECT_EQ(lineWith("b7", SheetCell::Brood, "0"), "b0");
    EXPECT_EQ(lineWith("x rain", SheetCell::Opened, ""), "rain");
    EXPECT_EQ(lineWith("", SheetCell::Brood, ""), "");
    for (const SheetCell cell : sheetCells()) EXPECT_EQ(cellText(SheetLine{}, cell), QString());
}

TEST(SheetCells, RefuseWhatCannotBeMeantThere) {
    EXPECT_EQ(lineWith("e", SheetCell::Brood, "many"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Brood, "7 8"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Temper, "6"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Boxes, "+0"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Boxes, "+1 rain"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Wash, "4/"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Eggs, "b7"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Heft, "x"), "refused");
    EXPECT_EQ(lineWith("e", SheetCell::Note, "saw b9 there"), "refused")
        << "b9 would be read as brood";
    EXPECT_EQ(lineWith("", SheetCell::Note, "lid loose"), "refused")
        << "it would be read as lid only";
    EXPECT_EQ(lineWith("e", SheetCell::Note, "lid loose"), "e lid loose");
}

TEST(SheetCells, ShowAnyLineAndWriteItBack) {
    for (const char* text :
         {"e b7 s3 +1", "e0 q? qc2c left1", "x rain", "lid heavy", "sr4/300 bd20/5 dr6/100 cb0",
          "kg20+21 shb2 wm", "kg41.5 fo1.5", "fd~2", "f~", "fo?", "e l0 c b6.5 s~2 n5-7 qc? !",
          "w11/300 f2.5 t4 light calm", "-1 +2d", "b? w?", "o +1", "x light", "lid +1", "o", ""}) {
        const SheetLine line = readShorthand(text);
        SheetLine again;
        for (const SheetCell cell : sheetCells()) {
            const auto next = withCell(again, cell, cellText(line, cell));
            ASSERT_TRUE(next) << text << ": " << cellHead(cell).toStdString();
            again = *next;
        }
        EXPECT_EQ(again, line) << text;
    }
}

TEST(SheetCells, FeedIsInTheUnitsShown) {
    EXPECT_EQ(lineWith("", SheetCell::Fed, "2.5"), "f2.5");
    EXPECT_EQ(lineWith("", SheetCell::Fed, "1-2 kg"), "f1-2");
    EXPECT_EQ(lineWith("", SheetCell::Fed, "1 fondant"), "fo1");
    EXPECT_EQ(lineWith("", SheetCell::Fed, "Dry 1.5 kg"), "fd1.5");
    EXPECT_EQ(lineWith("", SheetCell::Fed, "fo1"), "fo1");
    EXPECT_EQ(cellText(readShorthand("fo1"), SheetCell::Fed), QStringLiteral("1 fondant"));
    EXPECT_EQ(lineWith("", SheetCell::Fed, "1 tea"), "refused");
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(lineWith("", SheetCell::Fed, "? fondant"), "fo?");
    EXPECT_EQ(lineWith("", SheetCell::Fed, "5 fondant"), "fo2.268");
    EXPECT_EQ(lineWith("", SheetCell::Fed, "5"), "f2.268");
    EXPECT_EQ(lineWith("", SheetCell::Fed, "2.5 kg"), "f2.5");
    EXPECT_EQ(cellText(readShorthand("f~5lb"), SheetCell::Fed), QStringLiteral("~5"));
    EXPECT_EQ(lineWith("", SheetCell::Fed, "?"), "f?");
}

}  // namespace
}  // namespace combwright
