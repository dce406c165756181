#include "core/exchange/import/table_read.h"

#include <gtest/gtest.h>

#include "core/exchange/export.h"

namespace combwright {
namespace {

using ReadCells = std::vector<std::string>;

bool knowsHive(std::string_view heading, const void*) { return heading == "Hive"; }

TableRead tableOf(std::string_view bytes, const TableGiven& given = {}) {
    auto table = readTable(bytes, given, &knowsHive, nullptr);
    EXPECT_TRUE(table);
    return table ? *std::move(table) : TableRead{};
}

TEST(TableRead, FindsOutHowLettersAreWritten) {
    EXPECT_EQ(tableOf("Hive,g\nHügel,1\n").encoding, "utf-8");
    const TableRead marked = tableOf("\xEF\xBB\xBFHive,g\nA,1\n");
    EXPECT_EQ(marked.encoding, "utf-8");
    EXPECT_EQ(marked.headings, (ReadCells{"Hive", "g"}));

    using namespace std::string_view_literals;
    const TableRead little = tableOf("\xFF\xFEH\0i\0v\0e\0\n\0\xFC\0\n\0"sv);
    EXPECT_EQ(little.encoding, "utf-16");
    ASSERT_EQ(little.rows.size(), 1u);
    EXPECT_EQ(little.rows[0].cells, (ReadCells{"ü"}));
    const TableRead big = tableOf("\xFE\xFF\0H\0i\0v\0e\0\n\0\xFC\0\n"sv);
    EXPECT_EQ(big.rows[0].cells, (ReadCells{"ü"}));

    const TableRead old = tableOf("Hive\nH\xFCgel \x80\x93\n");
    EXPECT_EQ(old.encoding, "windows-1252");
    EXPECT_EQ(old.rows[0].cells, (ReadCells{"Hügel €“"}));

    EXPECT_FALSE(readTable("Hive\n\xFC\n", {.encoding = "utf-8"}, &knowsHive, nullptr));
    EXPECT_FALSE(readTable("a\0b"sv, {}, &knowsHive, nullptr));
    EXPECT_FALSE(readTable("", {}, &knowsHive, nullptr));
    EXPECT_FALSE(readTable("\n \n", {}, &knowsHive, nullptr));
}

TEST(TableRead, FindsOutWhatPartsCells) {
    EXPECT_EQ(tableOf("Hive,kg\nA,1\n").parter, ',');
    EXPECT_EQ(tableOf("Hive;kg\nA;1,240\nB;12,5\n").parter, ';');
    EXPECT_EQ(tableOf("Hive\tkg\nA\t1,5\n").parter, '\t');
    EXPECT_EQ(tableOf("Hive|kg\nA|1\n").parter, '|');
    EXPECT_EQ(tableOf("A;1,5\nB;2,5\n").parter, ';');
    EXPECT_EQ(tableOf("Hive\nA\n").parter, ',');
    EXPECT_EQ(tableOf("Hive;kg\nA;1\n", {.parter = ','}).headings, (ReadCells{"Hive;kg"}));
}

TEST(TableRead, FindsOutWhetherTheFirstRowAreHeadings) {
    EXPECT_TRUE(tableOf("Hive 1,Hive\nA,1\n").header);
    EXPECT_TRUE(tableOf("stand,weight\nA,1\n").header);
    const TableRead bare = tableOf("H1,41.2\nH2,39\n");
    EXPECT_FALSE(bare.header);
    EXPECT_EQ(bare.headings, (ReadCells{"column 1", "column 2"}));
    EXPECT_EQ(bare.rows.size(), 2u);
    EXPECT_EQ(bare.rows[0].line, 1u);
    EXPECT_TRUE(tableOf("H1,41.2\nH2,39\n", {.header = true}).header);
    EXPECT_EQ(tableOf("Hive,\nA,1\n,\n").headings, (ReadCells{"Hive", "column 2"}));
    EXPECT_EQ(tableOf("Hive,\nA,1\n,\n").rows.size(), 1u);
}

// CWE-1236: each sign a spreadsheet begins a formula with, out and in again.
TEST(TableRead, WhatAnExportGuardedComesBackExactly) {
    for (const char sign : {'=', '+', '-', '@', '\t', '\r', '\''})
        for (const std::string rest : {"", "1+1", "cmd|'/C calc'!A0", ",\"x\"\nnext"}) {
            const std::string text = sign + rest;
            const std::string cell = csvCell(text);
            EXPECT_NE(cell.front(), sign == '\'' ? '=' : sign) << text;
            const TableRead table = tableOf("Hive,n\n" + cell + ",1\n", {.parter = ','});
            ASSERT_EQ(table.rows.size(), 1u) << text;
            EXPECT_EQ(table.rows[0].cells[0], text);
        }
    EXPECT_EQ(unguarded("'tis"), "'tis");
    EXPECT_EQ(unguarded("'"), "'");
}

}  // namespace
}  // namespace combwright
