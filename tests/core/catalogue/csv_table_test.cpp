#include "core/catalogue/csv_table.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

using Cells = std::vector<std::string>;

TEST(CsvTable, ReadsAHeaderAndItsRows) {
    const auto table = readCsv("id,name\nA,first\nB,second\n");
    ASSERT_TRUE(table);
    EXPECT_EQ(table->header, (Cells{"id", "name"}));
    ASSERT_EQ(table->rows.size(), 2u);
    EXPECT_EQ(table->rows[1], (Cells{"B", "second"}));
    EXPECT_EQ(table->column("name"), 1u);
    EXPECT_FALSE(table->column("Name"));
}

TEST(CsvTable, ReadsWhatSpreadsheetsWrite) {
    struct Case {
        const char* text;
        Cells row;
    };
    const Case cases[] = {{"a,b\r\n1,2\r\n", {"1", "2"}},
                          {"a,b\n1,2", {"1", "2"}},
                          {"a,b\n\"x, y\",2\n", {"x, y", "2"}},
                          {"a,b\n\"two\nlines\",2\n", {"two\nlines", "2"}},
                          {"a,b\n\"she said \"\"no\"\"\",2\n", {"she said \"no\"", "2"}},
                          {"a,b\n,\n", {"", ""}},
                          {"\xEF\xBB\xBF"
                           "a,b\n1,2\n",
                           {"1", "2"}},
                          {"a,b\n\n1,2\n\n", {"1", "2"}},
                          {"a,b\n×,ø\n", {"×", "ø"}}};
    for (const Case& each : cases) {
        const auto table = readCsv(each.text);
        ASSERT_TRUE(table) << each.text;
        EXPECT_EQ(table->header, (Cells{"a", "b"})) << each.text;
        ASSERT_EQ(table->rows.size(), 1u) << each.text;
        EXPECT_EQ(table->rows[0], each.row) << each.text;
    }
}

TEST(CsvTable, AHeaderAloneHasNoRows) {
    const auto table = readCsv("a,b\n");
    ASSERT_TRUE(table);
    EXPECT_TRUE(table->rows.empty());
}

TEST(CsvTable, RefusesWhatIsNoTable) {
    struct Case {
        const char* text;
        Code code;
        const char* field;
    };
    const Case cases[] = {{"", Code::Missing, "header"},
                          {"\n\n", Code::Missing, "header"},
                          {"a,b\n1,2\n1,2,3\n", Code::WrongType, "row 2"},
                          {"a,b\n1\n", Code::WrongType, "row 1"},
                          {"a,b\n1,2\n\"open,2\n", Code::WrongType, "row 2"},
                          {"a,b\n1,mid\"quote\n", Code::WrongType, "row 1"}};
    for (const Case& each : cases) {
        const auto table = readCsv(each.text);
        ASSERT_FALSE(table) << each.text;
        EXPECT_EQ(table.error().code, each.code) << each.text;
        EXPECT_EQ(table.error().field, each.field) << each.text;
    }
}

}  // namespace
}  // namespace combwright
