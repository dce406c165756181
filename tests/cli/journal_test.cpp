// History, undo and redo from the command line, and the script that makes the same file anew.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

class JournalCommands : public test::CliTest {
  protected:
    void SetUp() override {
        makeSeason();
        const CliAnswer played =
            on("play", {},
               R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})"
               "\n"
               R"({"do":"add-hive","on":"2027-04-02","yard":"Hill","mark":"1"})"
               "\n"
               R"({"do":"write-line","on":"2027-05-01","hive":"1","line":"e","why":"looked twice",)"
               R"("sheet":"evening"})");
        ASSERT_EQ(played.exit, cli::Done) << played;
    }
};

TEST_F(JournalCommands, HistoryIsNewestFirst) {
    ASSERT_EQ(on("undo").exit, cli::Done);
    const CliAnswer answer = on("history", {QStringLiteral("--json")});
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    const QJsonArray list = answer.array();
    ASSERT_EQ(list.size(), 4);
    for (int i = 0; i < 4; ++i) EXPECT_EQ(list[i][QLatin1String("step")], 4 - i);
    EXPECT_EQ(list[0][QLatin1String("kind")], QStringLiteral("undo"));
    EXPECT_EQ(list[0][QLatin1String("of")], 3);
    EXPECT_EQ(list[0][QLatin1String("line")], QJsonValue());
    const QJsonObject taken = list[1].toObject();
    EXPECT_EQ(taken[QLatin1String("kind")], QStringLiteral("do"));
    EXPECT_EQ(taken[QLatin1String("action")], QStringLiteral("write-line"));
    EXPECT_EQ(taken[QLatin1String("at")], QStringLiteral("2027-06-09T14:00:00Z"));
    EXPECT_EQ(taken[QLatin1String("why")], QStringLiteral("looked twice"));
    EXPECT_EQ(taken[QLatin1String("sheet")], QStringLiteral("evening"));
    EXPECT_EQ(taken[QLatin1String("stands")], false);
    EXPECT_EQ(taken[QLatin1String("of")], QJsonValue());
    EXPECT_EQ(list[3][QLatin1String("stands")], true);
    EXPECT_EQ(list[3][QLatin1String("line")],
              QStringLiteral(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})"));
}

TEST_F(JournalCommands, HistoryAsTextTellsTheSame) {
    ASSERT_EQ(on("undo").exit, cli::Done);
    const QStringList lines = on("history").out.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    ASSERT_EQ(lines.size(), 4);
    EXPECT_THAT(lines[0].toStdString(), HasSubstr("undo  write-line (step 3)"));
    EXPECT_THAT(lines[1].toStdString(), HasSubstr("taken back"));
    EXPECT_THAT(lines[1].toStdString(), HasSubstr("because: looked twice"));
    EXPECT_THAT(lines[3].toStdString(), HasSubstr("do  add-yard"));
}

TEST_F(JournalCommands, HistoryTellsWhatAnAmendmentChanged) {
    const char* const script =
        R"({"do":"open-run","on":"2027-08-01","name":"27-1"})"
        "\n"
        R"({"do":"fill-bucket","on":"2027-08-01","run":"27-1","mark":"B4","net_g":12000,"water_percent":17.4})"
        "\n"
        R"({"do":"amend","on":"2027-11-20","bucket":{"bucket":"B4","run":"27-1"},)"
        R"("set":{"net_g":12500,"water_percent":null},"why":"scale read twice"})";
    ASSERT_EQ(on("play", {}, script).exit, cli::Done);
    const QString text = on("history").out;
    EXPECT_THAT(text.toStdString(), HasSubstr("amend  because: scale read twice"));
    EXPECT_THAT(text.toStdString(), HasSubstr("bucket B4  net_g  12000 -> 12500\n"));
    EXPECT_THAT(text.toStdString(), HasSubstr("bucket B4  water_percent  17.4 -> null\n"));
    const QJsonArray list = on("history", {QStringLiteral("--json")}).array();
    const QJsonArray changed = list[0][QLatin1String("changed")].toArray();
    ASSERT_EQ(changed.size(), 2);
    EXPECT_EQ(changed[0].toObject(),
              (QJsonObject{{QStringLiteral("record"), QStringLiteral("bucket")},
                           {QStringLiteral("id"), 1},
                           {QStringLiteral("field"), QStringLiteral("net_g")},
                           {QStringLiteral("was"), 12000},
                           {QStringLiteral("is"), 12500}}));
    EXPECT_EQ(changed[1][QLatin1String("was")], 17.4);
    EXPECT_EQ(changed[1][QLatin1String("is")], QJsonValue());
    EXPECT_TRUE(list[1][QLatin1String("changed")].isUndefined());
    // Taken back, the journal still says what it had changed.
    ASSERT_EQ(on("undo").exit, cli::Done);
    EXPECT_THAT(on("history").out.toStdString(), HasSubstr("12000 -> 12500"));
}

TEST_F(JournalCommands, UndoAndRedoWalkTheJournal) {
    const std::string full = dump();
    const CliAnswer undone = on("undo", {QStringLiteral("--json")});
    ASSERT_EQ(undone.exit, cli::Done) << undone;
    EXPECT_EQ(undone.object()[QLatin1String("step")], 4);
    // The line and the visit it had begun.
    EXPECT_EQ(undone.object()[QLatin1String("rows")], 2);
    EXPECT_NE(dump(), full);
    EXPECT_EQ(on("redo").out, QStringLiteral("Done, step 5.\n"));
    EXPECT_EQ(dump(), full);
}

TEST_F(JournalCommands, UndoOnlyTheStepThatWasMeant) {
    const std::string full = dump();
    const CliAnswer wrong =
        on("undo", {QStringLiteral("--step"), QStringLiteral("2"), QStringLiteral("--json")});
    EXPECT_EQ(wrong.exit, cli::Refused);
    EXPECT_EQ(wrong.code(), "not_that_step") << wrong;
    EXPECT_EQ(dump(), full);
    EXPECT_EQ(on("undo", {QStringLiteral("--step=3")}).exit, cli::Done);
    EXPECT_EQ(on("undo", {QStringLiteral("--step=2")}).exit, cli::Done);
}

TEST_F(JournalCommands, NothingToUndoOrRedoIsRefused) {
    const CliAnswer redo = on("redo", {QStringLiteral("--json")});
    EXPECT_EQ(redo.exit, cli::Refused);
    EXPECT_EQ(redo.code(), "nothing_to_redo") << redo;
    for (int i = 0; i < 3; ++i) ASSERT_EQ(on("undo").exit, cli::Done);
    const CliAnswer undo = on("undo", {QStringLiteral("--json")});
    EXPECT_EQ(undo.exit, cli::Refused);
    EXPECT_EQ(undo.code(), "nothing_to_undo") << undo;
    EXPECT_TRUE(undo.out.isEmpty());
    const CliAnswer text = on("undo");
    EXPECT_EQ(text.err.count(QLatin1Char('\n')), 1);
    EXPECT_THAT(text.err.toStdString(), HasSubstr("Nothing was changed."));
}

TEST_F(JournalCommands, AScriptMakesTheSameFileAnew) {
    for (const std::string& part : {test::millLaneBefore(), test::millLaneVisit()}) {
        const CliAnswer played = on("play", {}, part);
        ASSERT_EQ(played.exit, cli::Done) << played;
    }
    for (const char* command : {"undo", "undo", "undo", "redo"})
        ASSERT_EQ(on(command).exit, cli::Done);
    const CliAnswer changed =
        on("play", {},
           R"({"do":"write-line","on":"2027-06-09","hive":"ML8","line":"e b9 s5 +1"})"
           "\n"
           R"({"do":"close-hive","on":"2027-06-10","hive":{"hive":"1","yard":"Hill"}})"
           "\n"
           R"({"do":"undo"})");
    ASSERT_EQ(changed.exit, cli::Done) << changed;

    const CliAnswer script = on("history", {QStringLiteral("--script")});
    ASSERT_EQ(script.exit, cli::Done);
    EXPECT_EQ(script.out.count(QLatin1Char('\n')), static_cast<qsizetype>(steps()));
    ASSERT_EQ(cli({QStringLiteral("new"), file("anew.combwright")}).exit, cli::Done);
    const CliAnswer replayed =
        cli({QStringLiteral("play"), file("anew.combwright")}, script.out.toStdString());
    ASSERT_EQ(replayed.exit, cli::Done) << replayed;
    EXPECT_EQ(dump("anew.combwright"), dump());
    EXPECT_EQ(steps("anew.combwright"), steps());
    // And both can be taken back as far as the first: 3 + 26 + 12 lines, two taken back for good,
    // one written anew.
    Season first = Season::open(path(), clock);
    Season second = Season::open(path("anew.combwright"), clock);
    std::size_t back = 0;
    while (first.undo()) {
        ASSERT_TRUE(second.undo());
        ASSERT_EQ(second.dump(), first.dump());
        ++back;
    }
    EXPECT_FALSE(second.undo());
    EXPECT_EQ(back, 40U);
}

}  // namespace
}  // namespace combwright
