// The promises every command keeps: help, exit codes, one line of text or one JSON value, and the
// lists that scripts rely on.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <set>

#include "app/cli/command.h"
#include "core/storage/migrations.h"
#include "core/support/version.h"
#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

class CommandLine : public test::CliTest {};

TEST_F(CommandLine, HelpNamesEveryCommand) {
    for (const char* word : {"--help", "help"}) {
        const CliAnswer answer = cli({QLatin1String(word)});
        EXPECT_EQ(answer.exit, cli::Done);
        for (const cli::Command& command : cli::commands()) {
            EXPECT_THAT(answer.out.toStdString(),
                        HasSubstr("\n  " + std::string(command.name) + " " + command.usage));
            EXPECT_THAT(answer.out.toStdString(), HasSubstr(command.help));
        }
        EXPECT_TRUE(answer.err.isEmpty());
    }
}

TEST_F(CommandLine, EveryCommandSaysWhatItDoes) {
    ASSERT_GE(cli::commands().size(), 10U);
    for (const cli::Command& command : cli::commands()) {
        const CliAnswer answer = cli({QLatin1String(command.name), QStringLiteral("--help")});
        EXPECT_EQ(answer.exit, cli::Done) << command.name;
        EXPECT_THAT(answer.out.toStdString(), HasSubstr(command.help));
        for (const cli::Option& option : command.options) {
            EXPECT_THAT(answer.out.toStdString(), HasSubstr("--" + std::string(option.name)));
            EXPECT_THAT(answer.out.toStdString(), HasSubstr(option.help));
        }
        for (const char* common : {"--json", "--day", "--help"})
            EXPECT_THAT(answer.out.toStdString(), HasSubstr(common)) << command.name;
    }
}

TEST_F(CommandLine, VersionNamesProgramFileAndContract) {
    const CliAnswer answer = cli({QStringLiteral("--version")});
    EXPECT_EQ(answer.exit, cli::Done);
    EXPECT_EQ(answer.out.toStdString(),
              "combwright-cli " + std::string(programVersion) + ", file schema " +
                  std::to_string(migrations().back().step) + ", contract 1\n");
}

TEST_F(CommandLine, WrongUsageIsExitTwoAndOneLine) {
    const QString season = file();
    makeSeason();
    const std::string before = dump();
    struct Slip {
        QStringList words;
        const char* says;
    };
    const Slip slips[] = {
        {{QStringLiteral("sing")}, "There is no command sing"},
        {{QStringLiteral("--loud")}, "There is no command --loud"},
        {{QStringLiteral("new")}, "combwright-cli new FILE"},
        {{QStringLiteral("new"), season, season}, "combwright-cli new FILE"},
        {{QStringLiteral("codes"), season}, "combwright-cli codes"},
        {{QStringLiteral("undo"), season, QStringLiteral("--all-or-nothing")},
         "no option --all-or-nothing"},
        {{QStringLiteral("undo"), season, QStringLiteral("--step")}, "--step needs N"},
        {{QStringLiteral("undo"), season, QStringLiteral("--step=last")}, "--step needs a number"},
        {{QStringLiteral("history"), season, QStringLiteral("--script=yes")},
         "--script takes no value"},
        {{QStringLiteral("history"), season, QStringLiteral("--day"), QStringLiteral("2027-02-29")},
         "--day 2027-02-29 is no day"},
        {{QStringLiteral("play"), season, file("nowhere.play")}, "cannot be read"},
        {{QStringLiteral("play"), season, QStringLiteral("--each"), QStringLiteral("--json")},
         "--json answers once"},
        {{QStringLiteral("backup"), season}, "either DEST or --into DIR"},
        {{QStringLiteral("backup"), season, file("b"), QStringLiteral("--into"), file("c")},
         "either DEST or --into DIR"},
    };
    for (const Slip& slip : slips) {
        const std::string typed = slip.words.join(QLatin1Char(' ')).toStdString();
        const CliAnswer answer = cli(slip.words);
        EXPECT_EQ(answer.exit, cli::WrongUsage) << typed;
        EXPECT_THAT(answer.err.toStdString(), HasSubstr(slip.says)) << typed;
        EXPECT_EQ(answer.err.count(QLatin1Char('\n')), 1) << typed << '\n' << answer;
        EXPECT_TRUE(answer.out.isEmpty()) << typed;
    }
    EXPECT_EQ(dump(), before);
    EXPECT_FALSE(QFile::exists(file("b")));
    EXPECT_FALSE(QFile::exists(file("c")));
}

TEST_F(CommandLine, WithoutACommandItHelpsAndFails) {
    const CliAnswer answer = cli({});
    EXPECT_EQ(answer.exit, cli::WrongUsage);
    EXPECT_TRUE(answer.out.isEmpty());
    EXPECT_THAT(answer.err.toStdString(), HasSubstr("COMMAND [FILE]"));
}

TEST_F(CommandLine, WrongUsageSpeaksJsonWhenAsked) {
    const CliAnswer answer =
        cli({QStringLiteral("undo"), QStringLiteral("--json"), QStringLiteral("--far")});
    EXPECT_EQ(answer.exit, cli::WrongUsage);
    EXPECT_EQ(answer.code(), "wrong_usage") << answer;
    EXPECT_FALSE(answer.refused().value(QLatin1String("says")).toString().isEmpty());
}

TEST_F(CommandLine, ACommandNobodyKnowsIsRefusedAsJsonToo) {
    for (const QStringList& words :
         {QStringList{QStringLiteral("sing"), QStringLiteral("--json")},
          QStringList{QStringLiteral("--json"), QStringLiteral("sing")}}) {
        const CliAnswer answer = cli(words);
        EXPECT_EQ(answer.exit, cli::WrongUsage);
        EXPECT_TRUE(answer.out.isEmpty());
        EXPECT_EQ(answer.code(), "wrong_usage") << answer;
        EXPECT_THAT(answer.refused()[QLatin1String("says")].toString().toStdString(),
                    HasSubstr("There is no command " + words[0].toStdString()));
    }
    const CliAnswer path =
        cli({QStringLiteral("sing"), QStringLiteral("--"), QStringLiteral("--json")});
    EXPECT_TRUE(path.refused().isEmpty()) << "behind two dashes it is a path";
}

TEST_F(CommandLine, BehindTwoDashesEverythingIsAPath) {
    const CliAnswer answer =
        cli({QStringLiteral("check"), QStringLiteral("--"), QStringLiteral("--json")});
    EXPECT_EQ(answer.exit, cli::FileTrouble);
    EXPECT_THAT(answer.err.toStdString(), HasSubstr("--json")) << "taken for a path, not an option";
}

TEST_F(CommandLine, CodesListsEveryReason) {
    const CliAnswer answer = cli({QStringLiteral("codes"), QStringLiteral("--json")});
    EXPECT_EQ(answer.exit, cli::Done);
    std::vector<std::string> listed;
    for (const QJsonValue& each : answer.array()) listed.push_back(each.toString().toStdString());
    for (const Code code : allCodes())
        EXPECT_THAT(listed, testing::Contains(std::string(key(code))));
    EXPECT_THAT(listed,
                testing::IsSupersetOf({"missing", "ambiguous", "path_taken", "no_such_action",
                                       "nothing_to_undo", "not_that_step"}));

    // As text: the same, one a line.
    std::string lines;
    for (const std::string& each : listed) lines += each + '\n';
    EXPECT_EQ(cli({QStringLiteral("codes")}).out.toStdString(), lines);
}

TEST_F(CommandLine, ActionsAreAsPromised) {
    const QString golden =
        QStringLiteral(COMBWRIGHT_SOURCE_DIR "/tests/fixtures/golden/actions.json");
    QFile kept(golden);
    ASSERT_TRUE(kept.open(QIODevice::ReadOnly)) << golden.toStdString();
    const CliAnswer answer = cli({QStringLiteral("actions"), QStringLiteral("--json")});
    EXPECT_EQ(answer.exit, cli::Done);
    EXPECT_TRUE(answer.out.toUtf8() == kept.readAll())
        << "The actions are not those written down. Fields may be added, never changed or taken "
           "away. If that is all that happened, accept it from the root of the tree:\n"
           "    build/ci/bin/combwright-cli actions --json > tests/fixtures/golden/actions.json\n";
}

TEST_F(CommandLine, ActionsSayWhichNeedAReason) {
    std::vector<std::string> needing;
    for (const QJsonValue& action :
         cli({QStringLiteral("actions"), QStringLiteral("--json")}).array())
        for (const QJsonValue& field : action[QLatin1String("fields")].toArray())
            if (field[QLatin1String("key")] == QStringLiteral("why") &&
                !field[QLatin1String("optional")].toBool())
                needing.push_back(action[QLatin1String("do")].toString().toStdString());
    EXPECT_THAT(needing, testing::ElementsAre("unset-constant", "amend"));
}

TEST_F(CommandLine, ActionsListWhatAHistoryIsWrittenIn) {
    ASSERT_EQ(on("new").exit, cli::Done);
    ASSERT_EQ(on("play", {},
                 "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"Hill\"}\n"
                 "{\"do\":\"undo\"}\n{\"do\":\"redo\"}\n")
                  .exit,
              cli::Done);
    std::set<QString> listed;
    for (const QJsonValue& action :
         cli({QStringLiteral("actions"), QStringLiteral("--json")}).array())
        listed.insert(action[QLatin1String("do")].toString());
    const QStringList script = on("history", {QStringLiteral("--script")})
                                   .out.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    ASSERT_EQ(script.size(), 3);
    for (const QString& line : script)
        EXPECT_TRUE(
            listed.contains(CliAnswer::json(line).object().value(QLatin1String("do")).toString()))
            << line.toStdString();
}

TEST_F(CommandLine, ActionsListEveryFieldAsTextToo) {
    const QString text = cli({QStringLiteral("actions")}).out;
    std::size_t fields = 0;
    for (const QJsonValue& action :
         cli({QStringLiteral("actions"), QStringLiteral("--json")}).array()) {
        EXPECT_TRUE(text.contains(action[QLatin1String("do")].toString() + QLatin1Char('\n')));
        for (const QJsonValue& field : action[QLatin1String("fields")].toArray()) {
            ++fields;
            EXPECT_TRUE(text.contains(QLatin1String("\n  ") +
                                      field[QLatin1String("key")].toString() + QLatin1Char(' ')));
        }
    }
    EXPECT_GT(fields, 40U);
}

}  // namespace
}  // namespace combwright
