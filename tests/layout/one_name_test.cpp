// One name, one type. Two structs of one name in one namespace build without a word, and the
// linker takes one's functions for both: it shows only when the program runs, if at all. What
// stands in a nameless namespace or in another type is nobody else's and does not count.
#include <gtest/gtest.h>

#include <map>
#include <optional>

#include "tests/layout/source_tree.h"

namespace combwright::layout {
namespace {

struct DefinedType {
    std::string name;  ///< with its namespaces: "combwright::Hive"
    std::size_t line = 0;
};

/// Reads code far enough to tell which types are defined at the level of a namespace.
class TypeFinder {
  public:
    explicit TypeFinder(const std::string& code) : m_code(withoutDirectives(code)) {}

    std::vector<DefinedType> find() {
        for (m_at = 0; m_at < m_code.size(); ++m_at) {
            const char c = m_code[m_at];
            if (c == '{')
                open();
            else if (c == '}')
                close();
            else if (c == ';')
                begin();
        }
        return std::move(m_found);
    }

  private:
    /// What a brace opened: a namespace by its name, empty for a nameless one; nothing for others.
    using Level = std::optional<std::string>;

    static std::string withoutDirectives(const std::string& code) {
        static const std::regex directive(R"(^\s*#.*)");
        std::string kept;
        for (const std::string& line : linesOf(code))
            kept += std::regex_match(line, directive) ? "\n" : line + "\n";
        return kept;
    }

    void begin() { m_begun = m_at + 1; }

    /// What was said since the last brace or semicolon decides what this brace opens.
    void open() {
        const std::string said = m_code.substr(m_begun, m_at - m_begun);
        static const std::regex space(R"(\s*(?:inline\s+)?namespace\b\s*([\w:]*)\s*)");
        // A name followed by < is a special case of a template, which is defined elsewhere.
        static const std::regex type(
            R"([^()]*?\b(?:struct|class|union|enum(?:\s+(?:class|struct))?)\s+(?:\[\[\w+\]\]\s*)?(\w+)(?:\s+final)?\s*(?::[^:][\s\S]*)?)");
        std::smatch match;
        if (std::regex_match(said, match, space)) {
            m_levels.push_back(match[1].str());
        } else {
            if (const Level in = within(); in && std::regex_match(said, match, type))
                m_found.push_back({*in + match[1].str(), lineOf(match.position(1))});
            m_levels.push_back(std::nullopt);
        }
        begin();
    }

    void close() {
        if (!m_levels.empty()) m_levels.pop_back();
        begin();
    }

    /// The namespaces one is in, "combwright::"; nothing in a type, a function or a nameless one.
    Level within() const {
        std::string all;
        for (const Level& level : m_levels) {
            if (!level || level->empty()) return std::nullopt;
            all += *level + "::";
        }
        return all;
    }

    std::size_t lineOf(std::ptrdiff_t inSaid) const {
        const auto end = m_code.begin() + static_cast<std::ptrdiff_t>(m_begun) + inSaid;
        return 1 + static_cast<std::size_t>(std::count(m_code.begin(), end, '\n'));
    }

    std::string m_code;
    std::size_t m_at = 0;
    std::size_t m_begun = 0;
    std::vector<Level> m_levels;
    std::vector<DefinedType> m_found;
};

std::vector<DefinedType> typesIn(const SourceFile& file) {
    return TypeFinder(split(file).code).find();
}

/// Complains of every type of a name that another of these files defines too.
std::string definedTwice(const std::vector<SourceFile>& files) {
    std::map<std::string, std::string> first;
    std::string twice;
    for (const SourceFile& file : files) {
        if (!file.isCpp()) continue;
        for (const DefinedType& type : typesIn(file)) {
            const auto [at, isNew] =
                first.emplace(type.name, file.path + ":" + std::to_string(type.line));
            if (!isNew)
                twice += complaint(file, type.line, type.name + " is defined in " + at->second);
        }
    }
    return twice;
}

TEST(OneName, NamesOneType) { EXPECT_EQ(definedTwice(programSources()), ""); }

/// A helper of the tests is linked with the program; each test file keeps its own to itself.
TEST(OneName, NamesOneTypeInTheTestsToo) {
    EXPECT_EQ(definedTwice(filesUnder({"core", "ui", "app", "tests"})), "");
}

TEST(OneName, FindsWhatTheTreeIsMadeOf) {
    std::size_t found = 0;
    bool hive = false;
    bool how = false;
    bool window = false;
    for (const SourceFile& file : programSources())
        for (const DefinedType& type : typesIn(file)) {
            ++found;
            hive =
                hive || (type.name == "combwright::Hive" && file.path == "core/model/yard/yard.h");
            how = how || type.name == "combwright::How";
            window = window || type.name == "combwright::MainWindow";
        }
    EXPECT_GT(found, 500u);
    EXPECT_TRUE(hive && how && window);
}

TEST(OneName, AClashIsFound) {
    const SourceFile one{
        "core/places/a.h",
        "// Why.\n#pragma once\nnamespace combwright {\nstruct Row { int a; };\n}"};
    const auto clash = [&](const std::string& other) {
        return definedTwice({one, {"core/places/b.h", other}});
    };
    EXPECT_EQ(clash("namespace combwright {\n\nstruct Row {\n};\n}"),
              "core/places/b.h:3: combwright::Row is defined in core/places/a.h:4\n");
    const char* const clashes[] = {
        "namespace combwright { class Row final : public QObject { Q_OBJECT }; }",
        "namespace combwright { class Row : public std::vector<int> {}; }",
        "namespace combwright { enum class Row { One }; }",
        "namespace combwright { enum Row : std::uint8_t { One }; }",
        "namespace combwright { template <class T> struct Row { T a; }; }",
        "namespace combwright { template <class T = int> struct Row { T a; }; }",
        "namespace combwright { int f() { return 1; } struct Row {}; }",
        "namespace combwright { namespace detail { struct A {}; } struct Row {}; }",
        "namespace combwright { namespace { struct A {}; } struct Row {}; }",
        "namespace combwright { const int a[] = {1, 2}; struct Row {} row; }",
    };
    for (const char* each : clashes) EXPECT_NE(clash(each), "") << each;
    const char* const harmless[] = {
        "namespace combwright { namespace { struct Row {}; } }",
        "namespace combwright { namespace detail { struct Row {}; } }",
        "namespace combwright::test { struct Row {}; }",
        "namespace combwright { struct Table { struct Row {}; }; }",
        "namespace combwright { void f() { struct Row {}; } }",
        "namespace combwright { struct Row; enum class Rows { Row }; }",
        "namespace combwright { struct Row rowOf(struct Row row) { return row; } }",
        "namespace combwright { template <> struct Choices<Row> { }; }",
        "namespace combwright { // struct Row {};\n }",
        "namespace combwright { auto text = \"struct Row {\"; }",
    };
    for (const char* each : harmless) EXPECT_EQ(clash(each), "") << each;
}

}  // namespace
}  // namespace combwright::layout
