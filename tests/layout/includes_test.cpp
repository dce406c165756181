// Which part may know which. One table holds the arrows between folders, one the parts of Qt and
// one the other libraries; every #include of the program is held against them. A folder missing
// here fails too, so that a new one gets its place in the picture of DEVELOPERS.md first.
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QLibraryInfo>
#include <QString>
#include <algorithm>
#include <set>

#include "tests/layout/source_tree.h"

namespace combwright::layout {
namespace {

struct ArrowRow {
    std::string_view
        part;  ///< a folder, or a file without its ending; the longest that fits counts
    std::vector<std::string_view> mayUse;
};

/// A part may always use itself. "ui" stands for each place of the window, a folder each; a place
/// may not use another.
const std::vector<ArrowRow>& arrowTable() {
    static const std::vector<ArrowRow> rows{
        {"core/units", {}},
        {"core/support", {"core/units"}},
        {"core/model", {"core/support", "core/units"}},
        {"core/trade", {"core/support", "core/units"}},
        {"core/catalogue", {"core/support", "core/units", "core/model"}},
        // What the disk did to us is thrown by storage and worded in words.
        {"core/storage/sqlite/storage_error", {}},
        {"core/words",
         {"core/support", "core/units", "core/model", "core/storage/sqlite/storage_error"}},
        {"core/storage",
         {"core/support", "core/units", "core/model", "core/catalogue",
          "core/storage/sqlite/storage_error"}},
        {"core/exchange",
         {"core/support", "core/units", "core/model", "core/catalogue", "core/words",
          "core/storage", "core/storage/sqlite/storage_error"}},
        // Tables in: a row becomes an action, so this stands above both.
        {"core/exchange/import",
         {"core/support", "core/units", "core/model", "core/catalogue", "core/words",
          "core/storage", "core/storage/sqlite/storage_error", "core/actions", "core/exchange",
          "core/places"}},
        {"core/exchange/compute",
         {"core/exchange", "core/support", "core/units", "core/catalogue", "core/trade"}},
        {"core/actions",
         {"core/support", "core/units", "core/model", "core/catalogue", "core/trade", "core/words",
          "core/storage", "core/storage/sqlite/storage_error", "core/exchange", "core/places"}},
        {"core/places",
         {"core/support", "core/units", "core/model", "core/catalogue", "core/trade", "core/words",
          "core/storage"}},
        {"core/places/pages",
         {"core/places", "core/support", "core/units", "core/model", "core/words",
          "core/exchange"}},

        {"ui/look", {}},
        {"ui/drawing", {"ui/look", "core/support", "core/units", "core/words"}},
        {"ui/common",
         {"ui/look", "ui/drawing", "core/support", "core/units", "core/model", "core/words",
          "core/places"}},
        {"ui/print",
         {"ui/look", "ui/drawing", "ui/common", "core/places/pages", "core/support", "core/units",
          "core/words"}},
        // What a place is to the window, and the open file they share.
        {"ui/shell/session",
         {"ui/look", "ui/shell/drafts", "core/actions", "core/places", "core/storage",
          "core/storage/sqlite/storage_error", "core/support", "core/units", "core/model",
          "core/words"}},
        // Lines half typed: whoever shows them holds them there.
        {"ui/shell/drafts", {}},
        {"ui/shell/sheet_drafts", {"ui/shell/drafts"}},
        // The short form for one deed, the same in every place.
        {"ui/shell/small_form",
         {"ui/shell/session", "ui/shell/form_drafts", "ui/look", "core/words"}},
        // What is typed into any form: held until it is kept, and read.
        {"ui/shell/form_drafts", {"ui/shell/session", "ui/shell/sheet_drafts"}},
        {"ui/shell/form_reading",
         {"ui/shell/session", "core/units", "core/model", "core/words", "core/actions"}},
        // What is on heat, in every place: the window's line and the wax bench's own.
        {"ui/shell/heat_line",
         {"ui/shell/session", "ui/look", "core/actions", "core/places", "core/words"}},
        // The words of a place's pages, beside its title.
        {"ui/shell/page_words", {"ui/shell/session", "ui/look", "ui/drawing"}},
        {"ui/shell/place",
         {"ui/shell/session", "ui/drawing", "core/places", "core/places/pages", "core/support",
          "core/units"}},
        {"ui",
         {"ui/look",
          "ui/drawing",
          "ui/common",
          "ui/print",
          "ui/shell/session",
          "ui/shell/place",
          "ui/shell/sheet_drafts",
          "ui/shell/small_form",
          "ui/shell/form_drafts",
          "ui/shell/form_reading",
          "ui/shell/heat_line",
          "ui/shell/page_words",
          "core/support",
          "core/units",
          "core/model",
          "core/catalogue",
          "core/words",
          "core/storage",
          "core/actions",
          "core/places",
          "core/places/pages",
          "core/exchange"}},
        {"ui/shell",
         {"ui",
          "ui/look",
          "ui/drawing",
          "ui/common",
          "ui/print",
          "ui/shell/session",
          "ui/shell/drafts",
          "ui/shell/place",
          "ui/shell/small_form",
          "ui/shell/heat_line",
          "core/support",
          "core/units",
          "core/model",
          "core/words",
          "core/storage",
          "core/storage/sqlite/storage_error",
          "core/actions",
          "core/places",
          "core/places/pages",
          "core/exchange",
          "core/exchange/import"}},

        {"app", {"core/support", "core/units"}},
        // Reads the sources as text.
        {"app/words", {}},
        {"app/cli",
         {"app", "core/support", "core/units", "core/model", "core/catalogue", "core/words",
          "core/storage", "core/storage/sqlite/storage_error", "core/actions", "core/places",
          "core/places/pages", "core/exchange", "core/exchange/compute", "core/exchange/import"}},
        {"app/desktop",
         {"app", "ui", "ui/look", "ui/drawing", "ui/common", "ui/print", "ui/shell",
          "ui/shell/session", "ui/shell/place", "core/support", "core/units", "core/words",
          "core/storage", "core/storage/sqlite/storage_error", "core/actions", "core/places",
          "core/places/pages"}},
    };
    return rows;
}

struct QtRow {
    std::string_view part;
    std::set<std::string> modules;
};

/// Longest that fits counts, as above. QtSql besides, see the test.
const std::vector<QtRow>& qtTable() {
    static const std::set<std::string> window{"QtCore",   "QtConcurrent",   "QtGui", "QtWidgets",
                                              "QtCharts", "QtPrintSupport", "QtSvg"};
    static const std::vector<QtRow> rows{
        {"core/support", {}}, {"core/units", {}},      {"core/model", {}},
        {"core/trade", {}},   {"core", {"QtCore"}},    {"app", {"QtCore"}},
        {"ui", window},       {"app/desktop", window}, {"core/storage", {"QtCore", "QtSql"}},
    };
    return rows;
}

struct LibraryRow {
    std::string_view header;  ///< or the folder it lies in, ending in /
    std::vector<std::string_view> parts;
};

/// Everything that is neither ours, nor Qt's, nor the language's own. Never in a header of ours.
const std::vector<LibraryRow>& libraryTable() {
    static const std::vector<LibraryRow> rows{
        {"sqlite3.h", {"core/storage"}},
        {"glpk.h", {"core/trade/plan"}},
        {"csv.h", {"core/catalogue", "core/exchange"}},
        {"qrencode.h", {"core/exchange"}},
        {"qpdf/", {"ui/print"}},
        {"unistd.h", {"app/desktop"}},
        {"sys/socket.h", {"app/desktop"}},
        {"sys/un.h", {"app/desktop"}},
        {"sys/stat.h", {"app/desktop"}},
        {"poll.h", {"app/desktop"}},
        {"fcntl.h", {"app/desktop"}},
    };
    return rows;
}

bool fits(std::string_view part, std::string_view path) {
    return path.starts_with(part) &&
           (path.size() == part.size() || path[part.size()] == '/' || path[part.size()] == '.');
}

template <class Row>
const Row* rowOf(const std::vector<Row>& table, std::string_view path) {
    const Row* best = nullptr;
    for (const Row& row : table)
        if (fits(row.part, path) && (!best || row.part.size() > best->part.size())) best = &row;
    return best;
}

/// The row's part, but for a place of the window its own folder: "ui/yard".
std::string_view unitOf(const ArrowRow& row, std::string_view path) {
    if (row.part != "ui") return row.part;
    return path.substr(0, path.find('/', row.part.size() + 1));
}

std::string brokenArrows(const SourceFile& file) {
    const ArrowRow* from = rowOf(arrowTable(), file.path);
    if (!from) return complaint(file, 1, "its folder has no row in the table of arrows");
    std::string broken;
    for (const Include& include : includesOf(file)) {
        if (include.angled || include.name.ends_with(".moc")) continue;
        const ArrowRow* to = rowOf(arrowTable(), include.name);
        if (!to) {
            broken +=
                complaint(file, include.line, include.name + " is not under a folder of the table");
            continue;
        }
        const bool own = unitOf(*from, file.path) == unitOf(*to, include.name);
        const bool allowed =
            std::find(from->mayUse.begin(), from->mayUse.end(), to->part) != from->mayUse.end();
        if (!own && !allowed)
            broken += complaint(file, include.line,
                                std::string(from->part) + " may not use " + include.name);
    }
    return broken;
}

const std::vector<std::string>& qtModules() {
    static const std::vector<std::string> modules = [] {
        const QDir headers(QLibraryInfo::path(QLibraryInfo::HeadersPath));
        std::vector<std::string> names;
        for (const QString& name : headers.entryList(QDir::Dirs | QDir::NoDotAndDotDot))
            names.push_back(name.toStdString());
        return names;
    }();
    return modules;
}

/// The modules of Qt that have a header of this name; more than one where one forwards.
std::vector<std::string> modulesWith(const std::string& header) {
    std::vector<std::string> found;
    const QString root = QLibraryInfo::path(QLibraryInfo::HeadersPath);
    for (const std::string& module : qtModules())
        if (QFile::exists(root + QLatin1Char('/') + QString::fromStdString(module + "/" + header)))
            found.push_back(module);
    return found;
}

bool looksLikeQt(const std::string& name) {
    return name.starts_with("Qt") || (name.size() > 1 && name[0] == 'Q' && std::isupper(name[1])) ||
           (name.starts_with("q") && name.ends_with(".h") && !modulesWith(name).empty());
}

std::string wrongQt(const SourceFile& file, const Include& include) {
    if (include.name.find('/') != std::string::npos || include.name.ends_with(".h"))
        return complaint(file, include.line, include.name + ": Qt's headers are named <QThing>");
    const auto& modules = qtModules();
    if (std::find(modules.begin(), modules.end(), include.name) != modules.end())
        return complaint(file, include.line, include.name + " is a whole module; name the header");
    const std::vector<std::string> homes = modulesWith(include.name);
    if (homes.empty())
        return complaint(file, include.line, "no part of Qt has a header " + include.name);
    const QtRow* row = rowOf(qtTable(), file.path);
    for (const std::string& home : homes) {
        const bool sqlInHeader = home == "QtSql" && file.isHeader();
        if (row && row->modules.contains(home) && !sqlInHeader) return {};
    }
    return complaint(file, include.line,
                     include.name + " of " + homes.front() + " does not belong in " +
                         (file.isHeader() ? "this header" : "this folder"));
}

std::string wrongLibrary(const SourceFile& file, const Include& include) {
    for (const LibraryRow& row : libraryTable()) {
        const bool same = row.header.ends_with('/') ? include.name.starts_with(row.header)
                                                    : include.name == row.header;
        if (!same) continue;
        const bool allowed = std::any_of(row.parts.begin(), row.parts.end(),
                                         [&](auto part) { return fits(part, file.path); });
        if (allowed && !file.isHeader()) return {};
        return complaint(file, include.line, include.name + " does not belong here");
    }
    return complaint(file, include.line, include.name + " is of no library in the table");
}

std::string foreignIncludes(const SourceFile& file) {
    std::string wrong;
    for (const Include& include : includesOf(file)) {
        if (!include.angled) continue;
        if (looksLikeQt(include.name))
            wrong += wrongQt(file, include);
        else if (include.name.find_first_of("./") != std::string::npos)
            wrong += wrongLibrary(file, include);
    }
    return wrong;
}

std::string missingIncludes(const SourceFile& file) {
    std::string missing;
    for (const Include& include : includesOf(file))
        if (!include.angled && !include.name.ends_with(".moc") &&
            !std::filesystem::exists(std::filesystem::path(COMBWRIGHT_SOURCE_DIR) / include.name))
            missing += complaint(file, include.line,
                                 include.name + " does not count from the root, or is not there");
    return missing;
}

/// Whether following arrows from `part` leads back to `goal`.
bool leadsTo(const std::vector<ArrowRow>& table, std::string_view part, std::string_view goal,
             std::set<std::string_view>& seen) {
    if (!seen.insert(part).second) return false;
    for (const ArrowRow& row : table)
        if (row.part == part)
            for (const std::string_view next : row.mayUse)
                if (next == goal || leadsTo(table, next, goal, seen)) return true;
    return false;
}

std::string circlesIn(const std::vector<ArrowRow>& table) {
    std::string found;
    for (const ArrowRow& row : table) {
        std::set<std::string_view> seen;
        if (leadsTo(table, row.part, row.part, seen)) found += std::string(row.part) + " ";
    }
    return found;
}

TEST(Arrows, FormNoCircle) {
    EXPECT_EQ(circlesIn(arrowTable()), "");
    EXPECT_EQ(circlesIn({{"a", {"b"}}, {"b", {"c"}}, {"c", {"b"}}, {"d", {"a"}}}), "b c ");
}

TEST(Arrows, NameOnlyRowsOfTheTable) {
    for (const ArrowRow& row : arrowTable())
        for (const std::string_view used : row.mayUse)
            EXPECT_TRUE(std::any_of(arrowTable().begin(), arrowTable().end(),
                                    [&](const ArrowRow& other) { return other.part == used; }))
                << row.part << " to " << used;
}

TEST(Arrows, AreKept) {
    std::string broken;
    for (const SourceFile& file : programSources()) broken += brokenArrows(file);
    EXPECT_EQ(broken, "");
}

TEST(Arrows, IncludesCountFromTheRoot) {
    std::string missing;
    for (const SourceFile& file : filesUnder({"core", "ui", "app", "tests"}))
        if (file.isCpp()) missing += missingIncludes(file);
    EXPECT_EQ(missing, "");
    EXPECT_NE(missingIncludes({"core/units/a.cpp", "#include \"mass.h\"\n"}), "");
}

TEST(Arrows, AWrongOneIsFound) {
    struct Sample {
        const char* path;
        const char* include;
        bool right;
    };
    const Sample samples[] = {
        {"core/units/a.h", "core/units/b.h", true},
        {"core/units/a.h", "core/model/b.h", false},
        {"core/trade/a.cpp", "core/model/b.h", false},
        {"core/trade/plan/a.cpp", "core/trade/b.h", true},
        {"core/storage/a.cpp", "core/words/words.h", false},
        {"core/words/a.cpp", "core/storage/sqlite/storage_error.h", true},
        {"core/words/a.cpp", "core/storage/season.h", false},
        {"core/exchange/a.cpp", "core/trade/b.h", false},
        {"core/exchange/compute/a.cpp", "core/trade/b.h", true},
        {"core/places/a.cpp", "core/places/pages/b.h", false},
        {"core/places/pages/a.cpp", "core/places/b.h", true},
        {"core/actions/a.cpp", "core/places/b.h", true},
        {"ui/yard/a.cpp", "ui/yard/b.h", true},
        {"ui/yard/a.cpp", "ui/pull/b.h", false},
        {"ui/yard/a.cpp", "ui/shell/session.h", true},
        {"ui/yard/a.cpp", "ui/shell/main_window.h", false},
        {"ui/yard/a.cpp", "core/trade/b.h", false},
        {"ui/shell/main_window.cpp", "ui/yard/b.h", true},
        {"ui/shell/place_head.cpp", "ui/yard/b.h", true},  // place_head is not place
        {"ui/shell/place.cpp", "ui/yard/b.h", false},
        {"ui/drawing/a.cpp", "core/storage/season.h", false},
        {"app/cli/a.cpp", "ui/look/b.h", false},
        {"app/cli/a.cpp", "b.h", false},
        {"core/elsewhere/a.cpp", "core/units/b.h", false},
    };
    for (const Sample& each : samples) {
        const SourceFile file{each.path, "#include \"" + std::string(each.include) + "\"\n"};
        EXPECT_EQ(brokenArrows(file).empty(), each.right) << each.path << " to " << each.include;
    }
}

TEST(Libraries, StayWhereTheyBelong) {
    // Without Qt's headers on this machine the test would see nothing wrong.
    ASSERT_EQ(modulesWith("QString"), std::vector<std::string>{"QtCore"});
    ASSERT_EQ(modulesWith("QColor"), std::vector<std::string>{"QtGui"});
    std::string wrong;
    for (const SourceFile& file : programSources()) wrong += foreignIncludes(file);
    EXPECT_EQ(wrong, "");
}

TEST(Libraries, AWrongOneIsFound) {
    struct Sample {
        const char* path;
        const char* include;
        bool right;
    };
    const Sample samples[] = {
        {"core/units/a.h", "<vector>", true},
        {"core/units/a.h", "<QString>", false},
        {"core/model/a.cpp", "<QByteArray>", false},
        {"core/trade/a.cpp", "<QtMath>", false},
        {"core/words/a.h", "<QString>", true},
        {"core/words/a.h", "<qstring.h>", false},
        {"core/words/a.h", "<QtCore/QString>", false},
        {"core/words/a.h", "<QtCore>", false},
        {"core/words/a.h", "<QNothing>", false},
        {"core/words/a.cpp", "<QColor>", false},
        {"core/words/a.cpp", "<QFont>", false},
        {"core/places/pages/a.cpp", "<QPainter>", false},
        {"core/places/a.cpp", "<QWidget>", false},
        {"core/places/a.cpp", "<QSqlQuery>", false},
        {"core/storage/a.cpp", "<QSqlQuery>", true},
        {"core/storage/a.h", "<QSqlQuery>", false},
        {"core/storage/a.cpp", "<QPixmap>", false},
        {"core/storage/a.cpp", "<sqlite3.h>", true},
        {"core/storage/a.h", "<sqlite3.h>", false},
        {"core/trade/plan/a.cpp", "<glpk.h>", true},
        {"core/trade/pull/a.cpp", "<glpk.h>", false},
        {"core/trade/colony/a.cpp", "<boost/math/distributions/beta.hpp>", false},
        {"ui/yard/a.h", "<QWidget>", true},
        {"ui/yard/a.h", "<QChart>", true},
        {"ui/yard/a.cpp", "<QSqlQuery>", false},
        {"ui/yard/a.cpp", "<QNetworkAccessManager>", false},
        {"app/cli/a.cpp", "<QTextStream>", true},
        {"app/cli/a.cpp", "<QGuiApplication>", false},
        {"app/desktop/a.cpp", "<QApplication>", true},
    };
    for (const Sample& each : samples) {
        const SourceFile file{each.path, "#include " + std::string(each.include) + "\n"};
        EXPECT_EQ(foreignIncludes(file).empty(), each.right) << each.path << " " << each.include;
    }
}

}  // namespace
}  // namespace combwright::layout
