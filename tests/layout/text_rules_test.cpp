// What may stand in a file, beyond what it may include: SQL only in storage, colours only in the
// look, the time only from outside, no file too long to read, no promise left in a comment.
#include <gtest/gtest.h>

#include <functional>

#include "tests/layout/source_tree.h"

namespace combwright::layout {
namespace {

/// Complains of every literal in which the pattern is found.
std::string literalsLike(const SourceFile& file, const std::regex& pattern,
                         const std::string& what) {
    std::string wrong;
    for (const Literal& literal : split(file).literals)
        if (std::regex_search(literal.text, pattern))
            wrong += complaint(file, literal.line, what + ": \"" + literal.text + "\"");
    return wrong;
}

/// Complains of every line of code (no comment, no literal) in which the pattern is found.
std::string codeLike(const SourceFile& file, const std::regex& pattern, const std::string& what) {
    std::string wrong;
    const std::vector<std::string> lines = linesOf(split(file).code);
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (std::regex_search(lines[i], pattern)) wrong += complaint(file, i + 1, what);
    return wrong;
}

std::string strayStatements(const SourceFile& file) {
    if (!file.isCpp() || file.isUnder("core/storage")) return {};
    // In capitals, as we write them, or in a shape no sentence has.
    static const std::regex capitals(
        R"(\b(SELECT|INSERT|UPDATE|DELETE FROM|PRAGMA|CREATE TABLE|ALTER TABLE|DROP TABLE|VACUUM|BEGIN IMMEDIATE|COMMIT|ROLLBACK)\b)");
    static const std::regex shapes(
        R"(\b(insert\s+(or\s+\w+\s+)?into\s|delete\s+from\s+\w|update\s+\w+\s+set\s|pragma\s+\w))",
        std::regex::icase);
    return literalsLike(file, capitals, "SQL outside core/storage") +
           literalsLike(file, shapes, "SQL outside core/storage") +
           codeLike(file, std::regex(R"(\bQSql\w+)"), "Qt's SQL outside core/storage");
}

std::string strayColours(const SourceFile& file) {
    if (!file.isCpp() || file.isUnder("ui/look")) return {};
    static const std::regex hexadecimal(R"(#([0-9A-Fa-f]{6}|[0-9A-Fa-f]{8})\b)");
    static const std::regex made(
        R"(\b(QColor\s*(\w+\s*)?[({]\s*(QStringLiteral\(|QLatin1String\()?["0-9]|qRgba?\s*\(\s*["0-9]|QColor::from\w+\s*\(\s*["0-9]))");
    static const std::regex named(
        R"(\bQt::(white|black|red|darkRed|green|darkGreen|blue|darkBlue|cyan|darkCyan|magenta|darkMagenta|yellow|darkYellow|gray|darkGray|lightGray)\b)");
    const char* what = "a colour outside ui/look";
    return literalsLike(file, hexadecimal, what) + codeLike(file, made, what) +
           codeLike(file, named, what);
}

std::string strayClocks(const SourceFile& file) {
    if (!file.isCpp() || file.isUnder("app")) return {};
    static const std::regex clocks(
        R"(\b(system_clock\s*::\s*now|currentDate(Time)?(Utc)?\s*\(|std::time\s*\(|gettimeofday|localtime))");
    return codeLike(file, clocks, "the time is passed in as a Clock");
}

std::string tooLong(const SourceFile& file) {
    static const std::regex counted(R"(.*(\.(h|cpp|sql|sh|cmake)|CMakeLists\.txt|/run)$)");
    if (!std::regex_match(file.path, counted)) return {};
    const std::size_t lines = linesOf(file.text).size();
    return lines < 600 ? std::string() : complaint(file, lines, "600 lines or more; part it");
}

std::string leftForLater(const SourceFile& file) {
    // Put together here, for this file is read too.
    static const std::regex marks(
        "\\b(TO"
        "DO|FIX"
        "ME|X"
        "XX)\\b");
    std::string found;
    const std::vector<std::string> lines = linesOf(file.text);
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (std::regex_search(lines[i], marks))
            found += complaint(file, i + 1, "left for later; do it or write it down elsewhere");
    return found;
}

std::string badlyOpened(const SourceFile& file) {
    if (!file.isHeader()) return {};
    std::string wrong;
    if (!file.text.starts_with("// ")) wrong += complaint(file, 1, "a header opens with its why");
    if (file.text.find("#pragma once\n") == std::string::npos)
        wrong += complaint(file, 1, "no #pragma once");
    return wrong;
}

std::string withoutSource(const SourceFile& file) {
    if (!file.path.ends_with("_reference_test.cpp")) return {};
    static const std::regex source(R"(\bsources?\b|\bno source\b|\bfrom memory\b|\bS\d\d[a-z]?\b)",
                                   std::regex::icase);
    return std::regex_search(file.text, source) ? std::string()
                                                : complaint(file, 1, "names no source");
}

using Rule = std::function<std::string(const SourceFile&)>;

std::string allComplaints(const Rule& rule) {
    std::string all;
    for (const SourceFile& file : filesUnder({"core", "ui", "app", "tests"}))
        if (!file.path.ends_with(".png")) all += rule(file);
    return all;
}

/// The program only: a test may spell out a statement or a colour.
std::string programComplaints(const Rule& rule) {
    std::string all;
    for (const SourceFile& file : programSources()) all += rule(file);
    return all;
}

TEST(TextRules, SqlIsOnlyInStorage) { EXPECT_EQ(programComplaints(strayStatements), ""); }
TEST(TextRules, ColoursAreOnlyInTheLook) { EXPECT_EQ(programComplaints(strayColours), ""); }
TEST(TextRules, TheTimeIsPassedIn) { EXPECT_EQ(programComplaints(strayClocks), ""); }
TEST(TextRules, FilesCanBeRead) { EXPECT_EQ(allComplaints(tooLong), ""); }
TEST(TextRules, HeadersOpenWithTheirWhy) { EXPECT_EQ(allComplaints(badlyOpened), ""); }

TEST(TextRules, NothingIsLeftForLater) {
    std::string all = allComplaints(leftForLater);
    for (const SourceFile& file : filesUnder({"resources", "demo"}))
        if (!file.isUnder("demo/out") && !file.isUnder("resources/pictures"))
            all += leftForLater(file);
    EXPECT_EQ(all, "");
}

TEST(TextRules, EveryReferenceNamesItsSource) {
    const auto files = filesUnder({"tests/reference"});
    EXPECT_FALSE(files.empty());
    std::string all;
    for (const SourceFile& file : files) all += withoutSource(file);
    EXPECT_EQ(all, "");
}

TEST(TextRules, AWrongFileIsFound) {
    struct Sample {
        Rule rule;
        const char* path;
        std::string text;
        bool right;
    };
    const Sample samples[] = {
        {strayStatements, "core/places/a.cpp", "f(\"SELECT id FROM hive\");", false},
        {strayStatements, "core/places/a.cpp", "f(\"delete from hive\");", false},
        {strayStatements, "core/places/a.cpp", "f(R\"(\npragma user_version)\");", false},
        {strayStatements, "ui/yard/a.cpp", "QSqlQuery query;", false},
        {strayStatements, "core/storage/a.cpp", "f(\"SELECT id FROM hive\");", true},
        {strayStatements, "ui/yard/a.cpp", "f(\"Select a hive from the list\");", true},
        {strayStatements, "ui/yard/a.cpp", "// SELECT would be wrong here", true},
        {strayColours, "ui/yard/a.cpp", "f(\"#D98E04\");", false},
        {strayColours, "ui/yard/a.cpp", "QColor(217, 142, 4);", false},
        {strayColours, "ui/yard/a.cpp", "const QColor honey{0xd98e04};", false},
        {strayColours, "ui/yard/a.cpp", "QColor honey(\"orange\");", false},
        {strayColours, "ui/yard/a.cpp", "QColor(QStringLiteral(\"orange\"));", false},
        {strayColours, "ui/yard/a.cpp", "QColor::fromRgb(1, 2, 3);", false},
        {strayColours, "ui/yard/a.cpp", "pen(Qt::darkRed);", false},
        {strayColours, "ui/look/a.cpp", "QColor(\"#D98E04\");", true},
        {strayColours, "ui/yard/a.cpp", "QColor mixed(Paint paint); pen(Qt::transparent);", true},
        {strayColours, "ui/yard/a.cpp", "f(\"#12\");  // #D98E04", true},
        {strayClocks, "core/places/a.cpp", "QDate::currentDate();", false},
        {strayClocks, "ui/yard/a.cpp", "std::chrono::system_clock::now();", false},
        {strayClocks, "app/a.h", "std::chrono::system_clock::now();", true},
        {tooLong, "core/a.cpp", std::string(600, '\n'), false},
        {tooLong, "core/a.cpp", std::string(599, '\n'), true},
        {tooLong, "core/CMakeLists.txt", std::string(600, '\n'), false},
        {tooLong, "tests/fixtures/a.csv", std::string(600, '\n'), true},
        {leftForLater, "core/a.cpp", std::string("// TO") + "DO later", false},
        {leftForLater, "core/a.cpp", "// METHODO, todos", true},
        {badlyOpened, "core/a.h", "#pragma once\n", false},
        {badlyOpened, "core/a.h", "// Why.\nint a;\n", false},
        {badlyOpened, "core/a.h", "// Why.\n#pragma once\n", true},
        {withoutSource, "tests/reference/a_reference_test.cpp", "EXPECT_EQ(1, 1);", false},
        {withoutSource, "tests/reference/a_reference_test.cpp", "// Common practice, no source.",
         true},
        {withoutSource, "tests/reference/a_reference_test.cpp", "// S93 prints it.", true},
    };
    for (const Sample& each : samples)
        EXPECT_EQ(each.rule({each.path, each.text}).empty(), each.right)
            << each.path << ": " << each.text.substr(0, 80);
}

}  // namespace
}  // namespace combwright::layout
