// What `cmake --install` puts on a machine, held against the desktop's own validators. They are
// asked for by tests/run; where one is missing the test fails rather than take unchecked for
// checked.
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <QMimeDatabase>
#include <QTemporaryDir>
#include <array>
#include <cstdio>
#include <set>

#include "tests/layout/source_tree.h"

namespace combwright::layout {
namespace {

namespace fs = std::filesystem;

struct Ran {
    int status = -1;
    std::string output;  ///< both streams
};

Ran runInShell(const std::string& command) {
    Ran ran;
    FILE* pipe = popen(("exec 2>&1; " + command).c_str(), "r");
    if (!pipe) return ran;
    std::array<char, 4096> chunk{};
    while (const std::size_t size = std::fread(chunk.data(), 1, chunk.size(), pipe))
        ran.output.append(chunk.data(), size);
    const int status = pclose(pipe);
    ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return ran;
}

std::string quoted(const fs::path& path) { return "'" + path.string() + "'"; }

fs::path toInstall(const char* name) {
    return fs::path(COMBWRIGHT_SOURCE_DIR) / "resources/install" / name;
}

std::string textOf(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void expectAccepted(const std::string& command) {
    const Ran ran = runInShell(command);
    EXPECT_EQ(ran.status, 0) << command << "\n" << ran.output;
}

TEST(Install, TheDesktopEntryIsValid) {
    const Ran ran = runInShell("desktop-file-validate " + quoted(toInstall("combwright.desktop")));
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.output, "");  // hints too
}

TEST(Install, TheMetainfoIsValidAndOfThisVersion) {
    const fs::path metainfo = toInstall("org.combwright.Combwright.metainfo.xml");
    expectAccepted("appstreamcli validate --no-net " + quoted(metainfo));
    // The newest release stands first.
    const std::string text = textOf(metainfo);
    std::smatch match;
    ASSERT_TRUE(std::regex_search(text, match, std::regex("<release version=\"([^\"]*)\"")));
    EXPECT_EQ(match[1], COMBWRIGHT_VERSION);
}

TEST(Install, TheManualPagesAreClean) {
    // From their own folder, where each finds the page the other refers to.
    const fs::path folder = toInstall("combwright.1").parent_path();
    const Ran ran = runInShell("cd " + quoted(folder) +
                               " && mandoc -T lint -W style combwright.1 combwright-cli.1");
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.output, "");
}

/// The words behind two blanks at the beginning of a line: "  play FILE [SCRIPT]  performs …".
std::vector<std::string> listedIn(const std::string& help, const std::string& pattern) {
    std::vector<std::string> words;
    const std::regex listed("^  (" + pattern + ")( .*|$)");
    std::smatch match;
    for (const std::string& line : linesOf(help))
        if (std::regex_match(line, match, listed)) words.push_back(match[1]);
    return words;
}

TEST(Install, TheManualNamesEveryCommandAndOption) {
    const std::string program = quoted(fs::path(COMBWRIGHT_BIN_DIR) / "combwright-cli");
    const Ran help = runInShell(program + " --help");
    ASSERT_EQ(help.status, 0) << help.output;
    const std::string manual = textOf(toInstall("combwright-cli.1"));

    std::set<std::string> commands;
    for (const std::string& word : listedIn(help.output, "[a-z][a-z-]*")) {
        if (word.starts_with("combwright")) continue;
        commands.insert(word);
        const Ran own = runInShell(program + " " + word + " --help");
        ASSERT_EQ(own.status, 0) << own.output;
        for (const std::string& option : listedIn(own.output, "--[a-z-]+"))
            EXPECT_NE(manual.find("Fl " + option.substr(1)), std::string::npos)
                << word << " " << option;
    }
    std::set<std::string> described;
    const std::regex item(R"(^\.It Cm ([\w-]+).*)");
    std::smatch match;
    for (const std::string& line : linesOf(manual))
        if (std::regex_match(line, match, item)) described.insert(match[1]);
    EXPECT_GE(commands.size(), 10u) << help.output;
    EXPECT_EQ(described, commands);
}

TEST(Install, TheManualNamesTheOptionsOfTheWindow) {
    const Ran help = runInShell("QT_QPA_PLATFORM=offscreen " +
                                quoted(fs::path(COMBWRIGHT_BIN_DIR) / "combwright") + " --help");
    ASSERT_EQ(help.status, 0) << help.output;
    const auto all = [](const std::string& text, const char* pattern) {
        const std::regex each(pattern);
        std::set<std::string> found;
        for (std::sregex_iterator at(text.begin(), text.end(), each), end; at != end; ++at)
            found.insert((*at)[1]);
        return found;
    };
    std::set<std::string> options = all(help.output, "\n  (?:-[a-z], )?--([a-z-]+)");
    options.erase("help-all");  // Qt's own options are in Qt's own manual
    EXPECT_GE(options.size(), 5u) << help.output;
    EXPECT_EQ(all(textOf(toInstall("combwright.1")), "\n\\.It Fl -([a-z-]+)"), options);
}

class InstalledTest : public testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(m_folder.isValid());
        const fs::path build = fs::path(COMBWRIGHT_BIN_DIR).parent_path();
        const Ran ran =
            runInShell("cmake --install " + quoted(build) + " --prefix " + quoted(prefix()));
        ASSERT_EQ(ran.status, 0) << ran.output;
    }
    fs::path prefix() const { return m_folder.filePath(QStringLiteral("usr")).toStdString(); }

  private:
    QTemporaryDir m_folder;
};

// One test, for two installs at a time would write one manifest.
TEST_F(InstalledTest, HasWhatADesktopNeedsAndKnowsASeason) {
    std::set<std::string> files;
    for (const auto& entry : fs::recursive_directory_iterator(prefix()))
        if (!entry.is_directory())
            files.insert(fs::relative(entry.path(), prefix()).generic_string());
    const std::set<std::string> expected{
        "bin/combwright",
        "bin/combwright-cli",
        "share/applications/combwright.desktop",
        "share/doc/combwright/LICENSE",
        "share/icons/hicolor/scalable/apps/combwright.svg",
        "share/man/man1/combwright-cli.1",
        "share/man/man1/combwright.1",
        "share/metainfo/org.combwright.Combwright.metainfo.xml",
        "share/mime/packages/combwright.xml",
    };
    EXPECT_EQ(files, expected);
    expectAccepted("appstreamcli validate-tree --no-net " + quoted(prefix().parent_path()));

    // The system's own types stand beside ours, as they do on a machine.
    qputenv("XDG_DATA_HOME", QByteArray::fromStdString((prefix() / "share").string()));
    qputenv("XDG_DATA_DIRS", QByteArray::fromStdString((prefix() / "share").string()));
    const fs::path mime = prefix() / "share/mime";
    fs::copy_file("/usr/share/mime/packages/freedesktop.org.xml",
                  mime / "packages/freedesktop.org.xml");
    const Ran update = runInShell("update-mime-database " + quoted(mime));
    ASSERT_EQ(update.status, 0) << update.output;
    EXPECT_EQ(update.output, "");

    const fs::path season = prefix() / "2027.combwright";
    expectAccepted(quoted(prefix() / "bin/combwright-cli") + " new " + quoted(season));
    fs::copy_file(season, prefix() / "nameless");
    const QMimeDatabase types;
    const auto typeOf = [&](const char* name, QMimeDatabase::MatchMode mode) {
        const QString path = QString::fromStdString((prefix() / name).string());
        return types.mimeTypeForFile(path, mode).name().toStdString();
    };
    EXPECT_EQ(typeOf("2027.combwright", QMimeDatabase::MatchExtension),
              "application/x-combwright-season");
    EXPECT_EQ(typeOf("nameless", QMimeDatabase::MatchContent), "application/x-combwright-season");
    EXPECT_EQ(typeOf("bin/combwright-cli", QMimeDatabase::MatchContent).substr(0, 14),
              "application/x-");
    EXPECT_NE(typeOf("bin/combwright-cli", QMimeDatabase::MatchContent),
              "application/x-combwright-season");
}

}  // namespace
}  // namespace combwright::layout
