#include "core/catalogue/csv_records.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

using CellsOfRecord = std::vector<std::string>;

std::vector<CellsOfRecord> cellsOf(std::string_view text, char parter = ',') {
    std::vector<CellsOfRecord> rows;
    for (CsvRecord& record : readCsvRecords(text, parter)) {
        EXPECT_FALSE(record.brokenQuotes);
        rows.push_back(std::move(record.cells));
    }
    return rows;
}

// The examples of RFC 4180, section 2, rule by rule.
TEST(CsvRecords, ReadsTheExamplesOfTheStandard) {
    const std::vector<CellsOfRecord> two{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    EXPECT_EQ(cellsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), two);
    EXPECT_EQ(cellsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx"), two);
    EXPECT_EQ(cellsOf("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"), two);
    EXPECT_EQ(cellsOf("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
              (std::vector<CellsOfRecord>{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(cellsOf("\"aaa\",\"b\"\"bb\",\"ccc\""),
              (std::vector<CellsOfRecord>{{"aaa", "b\"bb", "ccc"}}));
    // "Spaces are considered part of a field and should not be ignored."
    EXPECT_EQ(cellsOf(" a , b\r\n"), (std::vector<CellsOfRecord>{{" a ", " b"}}));
}

TEST(CsvRecords, KnowsTheLineARowBeginsOn) {
    const auto records = readCsvRecords("h\n\n\"two\nlines\"\nlast\r\n\r\nend");
    ASSERT_EQ(records.size(), 4u);
    EXPECT_EQ(records[0].line, 1u);
    EXPECT_EQ(records[1].line, 3u);
    EXPECT_EQ(records[2].line, 5u);
    EXPECT_EQ(records[3].line, 7u);
    EXPECT_EQ(records[1].cells, (CellsOfRecord{"two\nlines"}));
}

TEST(CsvRecords, OneRowWithWrongQuotesDoesNotCostTheOthers) {
    const auto records = readCsvRecords("a,b\n1,mid\"quote\n\"open,2\n3,4\n");
    ASSERT_EQ(records.size(), 4u);
    EXPECT_FALSE(records[0].brokenQuotes);
    EXPECT_TRUE(records[1].brokenQuotes);
    EXPECT_EQ(records[1].line, 2u);
    EXPECT_EQ(records[1].cells, (CellsOfRecord{"1,mid\"quote"}));
    EXPECT_TRUE(records[2].brokenQuotes);
    EXPECT_EQ(records[2].line, 3u);
    EXPECT_EQ(records[3].cells, (CellsOfRecord{"3", "4"}));
    EXPECT_EQ(records[3].line, 4u);
}

TEST(CsvRecords, OtherSignsPartCellsToo) {
    EXPECT_EQ(cellsOf("a;b,c\n", ';'), (std::vector<CellsOfRecord>{{"a", "b,c"}}));
    EXPECT_EQ(cellsOf("a\t\tc\n", '\t'), (std::vector<CellsOfRecord>{{"a", "", "c"}}));
    EXPECT_EQ(readCsvRecords("a\nb\nc\n", ',', 2).size(), 2u);
    EXPECT_TRUE(readCsvRecords("\n\r\n").empty());
}

}  // namespace
}  // namespace combwright
