// Words behind the program's name: help and version are said where there is no display, a wrong
// word is wrong usage. The program runs in a process of its own, without anything to show on.
#include "app/desktop/given_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QProcess>
#include <QProcessEnvironment>

namespace combwright {
namespace {

using desktop::GivenWords;
using testing::HasSubstr;
using testing::StartsWith;

struct Said {
    int exit = -1;
    std::string out;
    std::string err;
};

Said withoutADisplay(const QStringList& words) {
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* each : {"QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY"})
        environment.remove(QLatin1String(each));
    process.setProcessEnvironment(environment);
    process.start(QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright"), words);
    if (!process.waitForFinished(30'000)) return {};
    return {process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
            process.readAllStandardOutput().toStdString(),
            process.readAllStandardError().toStdString()};
}

TEST(GivenWordsTest, HelpAndVersionNeedNoDisplay) {
    const Said version = withoutADisplay({QStringLiteral("--version")});
    EXPECT_EQ(version.exit, 0) << version.err;
    EXPECT_EQ(version.out, "combwright " COMBWRIGHT_VERSION "\n");
    const Said help = withoutADisplay({QStringLiteral("--help")});
    EXPECT_EQ(help.exit, 0) << help.err;
    EXPECT_THAT(help.out, StartsWith("Usage: combwright [options]"));
    EXPECT_THAT(help.out, HasSubstr("--another-window"));
}

TEST(GivenWordsTest, AWrongWordIsWrongUsage) {
    const Said said = withoutADisplay({QStringLiteral("--nonsense")});
    EXPECT_EQ(said.exit, 2);
    EXPECT_THAT(said.err, HasSubstr("nonsense"));
    EXPECT_TRUE(said.out.empty());
    EXPECT_EQ(withoutADisplay({QStringLiteral("--day")}).exit, 2) << "a word is missing behind it";
}

TEST(GivenWordsTest, WordsOfTheWindowSystemPass) {
    const auto passes = [](const QStringList& words) {
        return !GivenWords().answered(QStringList{QStringLiteral("combwright")} + words);
    };
    EXPECT_TRUE(passes({}));
    EXPECT_TRUE(passes({"-platform", "offscreen", "bees.combwright"}));
    EXPECT_TRUE(passes({"--style=fusion", "-reverse", "--day", "2027-06-09"}));
    EXPECT_FALSE(passes({"-platformless"}));
}

TEST(GivenWordsTest, AreTaken) {
    GivenWords words;
    words.take({"combwright", "--day", "2027-06-09", "bees.combwright"});
    EXPECT_TRUE(words.has("day"));
    EXPECT_FALSE(words.has("print"));
    EXPECT_EQ(words.value("day"), QStringLiteral("2027-06-09"));
    EXPECT_EQ(words.files(), QStringList{"bees.combwright"});
}

}  // namespace
}  // namespace combwright
