#include "core/exchange/import/table_read.h"

#include <gtest/gtest.h>

#include <QString>
#include <QStringEncoder>

#include "core/exchange/export.h"

namespace combwright {
namespace {

using ReadCells = std::vector<std::string>;

bool knowsHive(std::string_view heading, const void*) { return heading == "Hive"; }

QByteArray bytesOf(std::string_view text) {
    return {text.data(), static_cast<qsizetype>(text.size())};
}

TableRead tableOf(std::string_view bytes, const TableGiven& given = {}) {
    auto table = readTable(bytesOf(bytes), given, &knowsHive, nullptr);
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
    EXPECT_EQ(little.record(0).cells, (ReadCells{"ü"}));
    const TableRead big = tableOf("\xFE\xFF\0H\0i\0v\0e\0\n\0\xFC\0\n"sv);
    EXPECT_EQ(big.record(0).cells, (ReadCells{"ü"}));

    const TableRead old = tableOf("Hive\nH\xFCgel \x80\x93\n");
    EXPECT_EQ(old.encoding, "windows-1252");
    EXPECT_EQ(old.record(0).cells, (ReadCells{"Hügel €“"}));

    EXPECT_FALSE(readTable("Hive\n\xFC\n", {.encoding = "utf-8"}, &knowsHive, nullptr));
    EXPECT_FALSE(readTable(bytesOf("a\0b"sv), {}, &knowsHive, nullptr));
    EXPECT_FALSE(readTable("", {}, &knowsHive, nullptr));
    EXPECT_FALSE(readTable("\n \n", {}, &knowsHive, nullptr));
}

// Letters are read piece by piece, 64 kB each.
TEST(TableRead, ALongTableIsReadAsAShortOne) {
    constexpr int rows = 20'000;
    QString text = QStringLiteral("Hive,note\n");
    for (int row = 0; row < rows; ++row) text += QStringLiteral("H%1,süß 😀\n").arg(row);
    const auto whole = [&](const QByteArray& bytes, const char* encoding) {
        const auto table = readTable(bytes, {}, &knowsHive, nullptr);
        ASSERT_TRUE(table) << encoding;
        EXPECT_EQ(table->encoding, encoding);
        ASSERT_EQ(table->rows.size(), std::size_t{rows}) << encoding;
        EXPECT_EQ(table->record(rows - 1).cells[0], "H19999") << encoding;
        EXPECT_EQ(table->record(12'345).cells[1].substr(0, 6), "süß ") << encoding;
        EXPECT_EQ(table->record(12'345).line, 12'347U) << encoding;
    };
    whole(text.toUtf8(), "utf-8");
    QStringEncoder little(QStringConverter::Utf16LE, QStringConverter::Flag::WriteBom);
    whole(little(text), "utf-16");
    QStringEncoder big(QStringConverter::Utf16BE, QStringConverter::Flag::WriteBom);
    whole(big(text), "utf-16");
    QString old = text;
    old.remove(QStringLiteral("😀"));
    whole(old.toLatin1(), "windows-1252");
    // One bad byte far behind the first piece.
    QByteArray nearly = old.toUtf8();
    nearly[nearly.size() - 2] = '\xFC';
    const auto guessed = readTable(nearly, {}, &knowsHive, nullptr);
    ASSERT_TRUE(guessed);
    EXPECT_EQ(guessed->encoding, "windows-1252");
}

TEST(TableRead, HeadingsAreFoundWithoutTheRows) {
    const auto heads = readHeadings(bytesOf("Hive;kg\nA;1,240\nB;12,5\n"), {}, &knowsHive, nullptr);
    ASSERT_TRUE(heads);
    EXPECT_EQ(heads->headings, (ReadCells{"Hive", "kg"}));
    EXPECT_EQ(heads->parter, ';');
    EXPECT_TRUE(heads->rows.empty());
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
            EXPECT_EQ(table.record(0).cells[0], text);
        }
    EXPECT_EQ(unguarded("'tis"), "'tis");
    EXPECT_EQ(unguarded("'"), "'");
}

}  // namespace
}  // namespace combwright
