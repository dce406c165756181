#include "tests/layout/source_tree.h"

#include <gtest/gtest.h>

namespace combwright::layout {
namespace {

TEST(SourceTree, PartsCodeFromCommentsAndLiterals) {
    const SourceFile file{"core/a.cpp",
                          "int a = 1'000; // \"no\"\n"
                          "/* 'x'\n \"no\" */ f(\"one \\\" two\", '\"');\n"
                          "auto raw = R\"sql(a \" b\n)sql\"; g(\"last\");\n"};
    const SplitSource parts = split(file);
    EXPECT_EQ(parts.code, "int a = 1'000; \n\n f(\"\", '');\nauto raw = \"\"\n; g(\"\");\n");
    ASSERT_EQ(parts.literals.size(), 3u);
    EXPECT_EQ(parts.literals[0].text, "one \\\" two");
    EXPECT_EQ(parts.literals[0].line, 3u);
    EXPECT_EQ(parts.literals[1].text, "a \" b\n");
    EXPECT_EQ(parts.literals[2].text, "last");
    EXPECT_EQ(parts.literals[2].line, 5u);
}

TEST(SourceTree, ReadsIncludes) {
    const auto found =
        includesOf({"core/a.cpp", "#include \"core/a.h\"\n\n  #  include <vector>\n"});
    ASSERT_EQ(found.size(), 2u);
    EXPECT_EQ(found[0].name, "core/a.h");
    EXPECT_FALSE(found[0].angled);
    EXPECT_EQ(found[1].name, "vector");
    EXPECT_TRUE(found[1].angled);
    EXPECT_EQ(found[1].line, 3u);
}

TEST(SourceTree, FindsTheProgram) {
    const auto files = programSources();
    EXPECT_GT(files.size(), 100u);
    const auto isHere = [&](const char* path) {
        return std::any_of(files.begin(), files.end(), [&](const SourceFile& file) {
            return file.path == path && !file.text.empty();
        });
    };
    EXPECT_TRUE(isHere("core/support/result.h"));
    EXPECT_TRUE(isHere("app/cli/main.cpp"));
    EXPECT_TRUE(isHere("ui/look/tokens.cpp"));
}

}  // namespace
}  // namespace combwright::layout
