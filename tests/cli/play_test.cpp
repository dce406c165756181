// Lines for play, and the journal they leave: what is kept, what is refused and how a thing is
// named.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>

#include "core/model/yard/visit.h"
#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

const char* const hillAndCreek =
    "# two yards, a hive 3 in each\n"
    "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"Hill\"}\n"
    "\n"
    "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"Creek\"}\n"
    "   \t\n"
    "{\"do\":\"add-hive\",\"on\":\"2027-04-02\",\"yard\":\"Hill\",\"mark\":\"3\","
    "\"boxes\":\"deep D1, x, medium M1\"}\n"
    "{\"do\":\"add-hive\",\"on\":\"2027-04-02\",\"yard\":\"Creek\",\"mark\":\"3\"}\n"
    "{\"do\":\"add-hive\",\"on\":\"2027-04-02\",\"yard\":\"Creek\",\"mark\":\"4\"}";

class Playing : public test::CliTest {
  protected:
    void SetUp() override { makeSeason(); }
    void playHillAndCreek() const {
        const CliAnswer answer = on("play", {}, hillAndCreek);
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
    /// A line on a hive, named as given.
    static std::string lineOn(const std::string& hive, const std::string& marks = "e b7") {
        return R"({"do":"write-line","on":"2027-05-01","hive":)" + hive + R"(,"line":")" + marks +
               "\"}\n";
    }
    /// The hives that have a line, in the order they got it.
    std::vector<std::int64_t> hivesWithALine() const {
        const Season season = Season::open(path(), clock, Database::Mode::ReadOnly);
        std::vector<std::int64_t> hives;
        for (const Inspection& each : season.read().all<Inspection>())
            hives.push_back(each.hive.number);
        return hives;
    }
};

TEST_F(Playing, SaysWhatWasDone) {
    const CliAnswer text = on("play", {}, hillAndCreek);
    EXPECT_EQ(text.exit, cli::Done);
    EXPECT_EQ(text.out, QStringLiteral("5 done.\n"));
    EXPECT_TRUE(text.err.isEmpty());
}

TEST_F(Playing, SaysWhatWasMadeAsOneJsonValue) {
    const CliAnswer answer = on("play", {QStringLiteral("--json")}, hillAndCreek);
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_EQ(answer.out.count(QLatin1Char('\n')), 1);
    EXPECT_EQ(answer.object()[QLatin1String("done")], 5);
    const QJsonArray done = answer.object()[QLatin1String("steps")].toArray();
    ASSERT_EQ(done.size(), 5);
    // Lines count from 1, the ones skipped too.
    EXPECT_EQ(done[0][QLatin1String("line")], 2);
    EXPECT_EQ(done[0][QLatin1String("step")], 1);
    EXPECT_EQ(done[0][QLatin1String("made")], (QJsonObject{{QStringLiteral("yard"), 1}}));
    EXPECT_EQ(done[2][QLatin1String("line")], 6);
    EXPECT_EQ(done[2][QLatin1String("made")], (QJsonObject{{QStringLiteral("hive"), 1}}));
    EXPECT_EQ(done[4][QLatin1String("line")], 8);

    // Several things of one kind come as a list.
    const CliAnswer boxes = on("play", {QStringLiteral("--json")},
                               R"({"do":"add-boxes","on":"2027-04-03","kind":"medium",)"
                               R"("first_mark":"M7","count":3})");
    ASSERT_EQ(boxes.exit, cli::Done) << boxes;
    const QJsonValue made =
        boxes.object()[QLatin1String("steps")].toArray()[0][QLatin1String("made")];
    EXPECT_EQ(made[QLatin1String("box")], (QJsonArray{3, 4, 5}));
}

TEST_F(Playing, ARangeTheWrongWayRoundIsRefusedByARuleThatNamesTheKey) {
    ASSERT_EQ(on("play", {}, R"({"do":"open-run","on":"2027-08-08","name":"27-2"})").exit,
              cli::Done);
    const CliAnswer answer = on(
        "play", {QStringLiteral("--json")},
        R"({"do":"weigh-box","on":"2027-08-08","run":"27-2","known_as":"a","gross_g":21000,"gross_to_g":20000})");
    EXPECT_EQ(answer.exit, cli::Refused) << answer;
    EXPECT_EQ(answer.code(), "contradiction");
    EXPECT_EQ(answer.field(), "gross_to_g");
}

TEST_F(Playing, ReadsAScriptFromAFile) {
    QFile script(file("visit.play"));
    ASSERT_TRUE(script.open(QIODevice::WriteOnly));
    script.write(hillAndCreek);
    script.close();
    EXPECT_EQ(on("play", {script.fileName()}).out, QStringLiteral("5 done.\n"));
    EXPECT_EQ(on("play", {file()}).exit, cli::WrongUsage) << "a season is no script";
}

TEST_F(Playing, ALineThatChangesNothingIsNoStep) {
    const char* const season = R"({"do":"name-season","on":"2027-04-01","season":"Two Yards"})"
                               "\n";
    const CliAnswer answer = on("play", {QStringLiteral("--json")}, std::string(season) + season);
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_EQ(answer.object()[QLatin1String("steps")].toArray()[1][QLatin1String("step")], 0);
    EXPECT_EQ(steps(), 1U);
}

TEST_F(Playing, ADayAheadOfTodayIsKeptAndSaid) {
    playHillAndCreek();
    const std::string script = lineOn("\"4\"") +
                               R"({"do":"write-line","on":"2027-07-09","hive":"4","line":"e"})"
                               "\n"
                               R"({"do":"write-line","on":"2027-06-09","hive":"4","line":"e"})";
    const CliAnswer text = on("play", {}, script);
    EXPECT_EQ(text.exit, cli::Done) << text;
    EXPECT_THAT(text.out.toStdString(), testing::StartsWith("3 done.\n"));
    EXPECT_THAT(text.out.toStdString(),
                HasSubstr("Dated ahead of today, 2027-06-09: 1 of them, line 2."));
    EXPECT_EQ(hivesWithALine().size(), 3U) << "kept all the same";
    ASSERT_EQ(on("undo").exit, cli::Done);
    ASSERT_EQ(on("undo").exit, cli::Done);
    ASSERT_EQ(on("undo").exit, cli::Done);
    const QJsonArray done =
        on("play", {QStringLiteral("--json")}, script).object()[QLatin1String("steps")].toArray();
    ASSERT_EQ(done.size(), 3);
    EXPECT_TRUE(done[0][QLatin1String("ahead")].isUndefined());
    EXPECT_EQ(done[1][QLatin1String("ahead")], true);
    EXPECT_TRUE(done[2][QLatin1String("ahead")].isUndefined()) << "today is not ahead";
    // Said to be a later day, nothing is ahead of it.
    EXPECT_EQ(on("play", {QStringLiteral("--day"), QStringLiteral("2027-07-10")},
                 R"({"do":"write-line","on":"2027-07-10","hive":"4","line":"e"})")
                  .out,
              QStringLiteral("1 done.\n"));
}

TEST_F(Playing, EachStepIsSaidWhenItIsKept) {
    const CliAnswer answer =
        on("play", {QStringLiteral("--each")}, std::string(hillAndCreek) + "\n" + lineOn("\"9\""));
    EXPECT_EQ(answer.exit, cli::Refused);
    EXPECT_EQ(answer.out.toStdString(),
              "Kept step 1.\nKept step 2.\nKept step 3.\nKept step 4.\nKept step 5.\n");
    // With all or nothing none was kept, so none is said.
    const CliAnswer none =
        on("play", {QStringLiteral("--each"), QStringLiteral("--all-or-nothing")},
           lineOn("\"4\"") + lineOn("\"9\""));
    EXPECT_EQ(none.exit, cli::Refused);
    EXPECT_TRUE(none.out.isEmpty()) << none;
    const CliAnswer all = on("play", {QStringLiteral("--each"), QStringLiteral("--all-or-nothing")},
                             lineOn("\"4\"") + lineOn("\"4\"", "e b8"));
    EXPECT_EQ(all.out.toStdString(), "Kept step 6.\nKept step 7.\n2 done.\n");
}

// Refused lines -------------------------------------------------------------------------------

TEST_F(Playing, StopsAtTheFirstRefusedLineAndKeepsTheOnesBefore) {
    playHillAndCreek();
    const std::string script = lineOn("\"4\"") + "\n# a slip\n" + lineOn("\"9\"") + lineOn("\"4\"");
    const CliAnswer text = on("play", {}, script);
    EXPECT_EQ(text.exit, cli::Refused);
    EXPECT_TRUE(text.out.isEmpty());
    EXPECT_EQ(text.err.count(QLatin1Char('\n')), 1) << text;
    EXPECT_THAT(text.err.toStdString(), testing::StartsWith("Line 4: "));
    EXPECT_THAT(text.err.toStdString(), HasSubstr("Kept before it: 1."));
    EXPECT_EQ(steps(), 6U);
    EXPECT_EQ(hivesWithALine(), (std::vector<std::int64_t>{3}));
}

TEST_F(Playing, TellsARefusedLineAsJson) {
    playHillAndCreek();
    const CliAnswer answer =
        on("play", {QStringLiteral("--json")}, lineOn("\"4\"") + lineOn("\"9\""));
    EXPECT_EQ(answer.exit, cli::Refused);
    EXPECT_TRUE(answer.out.isEmpty());
    EXPECT_EQ(answer.err.count(QLatin1Char('\n')), 1);
    EXPECT_EQ(answer.code(), "not_found") << answer;
    EXPECT_EQ(answer.field(), "hive");
    EXPECT_THAT(answer.refused()[QLatin1String("says")].toString().toStdString(), HasSubstr("9"));
    const QJsonObject whole = CliAnswer::json(answer.err).object();
    EXPECT_EQ(whole[QLatin1String("line")], 2);
    EXPECT_EQ(whole[QLatin1String("kept")], 1);
}

TEST_F(Playing, AllOrNothingKeepsNone) {
    playHillAndCreek();
    const std::string before = dump();
    const CliAnswer answer =
        on("play", {QStringLiteral("--all-or-nothing"), QStringLiteral("--json")},
           lineOn("\"4\"") + lineOn("\"9\""));
    EXPECT_EQ(answer.exit, cli::Refused);
    const QJsonObject whole = CliAnswer::json(answer.err).object();
    EXPECT_EQ(whole[QLatin1String("line")], 2);
    EXPECT_EQ(whole[QLatin1String("kept")], 0);
    EXPECT_EQ(dump(), before);
    EXPECT_EQ(steps(), 5U);
    EXPECT_EQ(on("play", {QStringLiteral("--all-or-nothing")}, lineOn("\"4\"")).exit, cli::Done);
    EXPECT_EQ(steps(), 6U);
}

TEST_F(Playing, ALineThatIsNoObjectIsWrongInput) {
    playHillAndCreek();
    for (const char* line : {"{\"do\":", "[1, 2]", "7", "e b7 s3", "{}{}"}) {
        const CliAnswer answer = on("play", {QStringLiteral("--json")},
                                    lineOn("\"4\"", line[0] == '{' ? "e" : "x") + line);
        EXPECT_EQ(answer.exit, cli::WrongUsage) << line << '\n' << answer;
        EXPECT_EQ(CliAnswer::json(answer.err).object()[QLatin1String("line")], 2) << line;
    }
}

TEST_F(Playing, EachSlipHasItsCodeAndField) {
    playHillAndCreek();
    const std::string before = dump();
    struct Slip {
        const char* line;
        const char* code;
        const char* field;
    };
    const Slip slips[] = {
        {R"({"on":"2027-05-01"})", "missing", "do"},
        {R"({"do":"fly"})", "no_such_action", "do"},
        {R"({"do":"add-yard","yard_name":"Mill"})", "missing", "on"},
        {R"({"do":"add-yard","on":"2027-05-01"})", "missing", "yard_name"},
        {R"({"do":"add-yard","on":"2027-02-30","yard_name":"Mill"})", "not_a_day", "on"},
        {R"({"do":"add-yard","on":"2027-05-01","yard_name":"Mill","colour":"red"})", "unknown_key",
         "colour"},
        {R"({"do":"add-yard","on":"2027-05-01","yard_name":7})", "wrong_type", "yard_name"},
        {R"({"do":"add-yard","on":"2027-05-01","yard_name":"Mill","why":7})", "wrong_type", "why"},
        {R"({"do":"add-yard","on":"2027-05-01","yard_name":"Mill","winter_need_g":-1})", "negative",
         "winter_need_g"},
        {R"({"do":"add-yard","on":"2027-05-01","yard_name":"Mill","extract_by":"soon"})",
         "not_a_choice", "extract_by"},
        {R"({"do":"add-yard","on":"2027-05-01","yard_name":"Hill"})", "taken", "yard_name"},
        {R"({"do":"add-hive","on":"2027-05-01","yard":"Hill","mark":"5","boxes":"chest"})",
         "not_found", "boxes"},
        {R"({"do":"close-hive","on":"2027-05-01","hive":{"hive":"3","yard":"Hill"}})", "not_closed",
         "hive"},
        {R"({"do":"write-line","on":"2027-03-01","hive":"4","line":"e"})", "before_it_began", "on"},
        {R"({"do":"undo","step":3})", "unknown_key", "step"},
        {R"({"do":"redo"})", "nothing_to_redo", ""},
    };
    for (const Slip& slip : slips) {
        const CliAnswer answer = on("play", {QStringLiteral("--json")}, slip.line);
        EXPECT_EQ(answer.exit, cli::Refused) << slip.line << '\n' << answer;
        EXPECT_EQ(answer.code(), slip.code) << slip.line;
        EXPECT_EQ(answer.field(), slip.field) << slip.line;
    }
    EXPECT_EQ(dump(), before);
    EXPECT_EQ(steps(), 5U);
}

// How things are named ------------------------------------------------------------------------

TEST_F(Playing, AMarkIsEnoughWhereThereIsOneOfIt) {
    playHillAndCreek();
    EXPECT_EQ(on("play", {}, lineOn("\"4\"")).exit, cli::Done);
    EXPECT_EQ(hivesWithALine(), (std::vector<std::int64_t>{3}));
}

TEST_F(Playing, AMarkOfTwoHivesNeedsMore) {
    playHillAndCreek();
    const CliAnswer bare = on("play", {QStringLiteral("--json")}, lineOn("\"3\""));
    EXPECT_EQ(bare.exit, cli::Refused);
    EXPECT_EQ(bare.code(), "ambiguous") << bare;
    EXPECT_EQ(bare.field(), "hive");
    EXPECT_THAT(bare.refused()[QLatin1String("says")].toString().toStdString(), HasSubstr("2"));

    ASSERT_EQ(on("play", {}, lineOn(R"({"hive":"3","yard":"Creek"})")).exit, cli::Done);
    ASSERT_EQ(on("play", {}, lineOn(R"({"hive":"3","yard":"Hill"})")).exit, cli::Done);
    ASSERT_EQ(on("play", {}, lineOn("\"#3\"")).exit, cli::Done);
    EXPECT_EQ(hivesWithALine(), (std::vector<std::int64_t>{2, 1, 3}));
}

TEST_F(Playing, ANameThatLeadsNowhereIsRefusedUnderItsKey) {
    playHillAndCreek();
    struct Slip {
        const char* hive;
        const char* code;
        const char* field;
    };
    for (const Slip& slip : {
             Slip{R"({"hive":"4","yard":"Hill"})", "not_found", "hive"},
             Slip{R"({"hive":"4","yard":"Lake"})", "not_found", "hive"},
             Slip{R"({"hive":"4","shed":"Hill"})", "unknown_key", "hive.shed"},
             Slip{R"("#99")", "not_found", "hive"},
             Slip{R"("#four")", "wrong_type", "hive"},
             Slip{R"("#0")", "wrong_type", "hive"},
             Slip{R"("@nothing")", "not_found", "hive"},
             Slip{"4", "wrong_type", "hive"},
         }) {
        const CliAnswer answer = on("play", {QStringLiteral("--json")}, lineOn(slip.hive));
        EXPECT_EQ(answer.exit, cli::Refused) << slip.hive;
        EXPECT_EQ(answer.code(), slip.code) << slip.hive << '\n' << answer;
        EXPECT_EQ(answer.field(), slip.field) << slip.hive;
    }
    EXPECT_TRUE(hivesWithALine().empty());
}

TEST_F(Playing, ALineCanNameWhatAnEarlierOneMade) {
    playHillAndCreek();
    const CliAnswer answer =
        on("play", {},
           R"({"do":"add-hive","on":"2027-04-20","yard":"Hill","mark":"5","as":"the new one"})"
           "\n" +
               lineOn("\"@the new one\""));
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_EQ(hivesWithALine(), (std::vector<std::int64_t>{4}));
    // It made a hive and no yard, and is forgotten when the script ends.
    EXPECT_EQ(on("play", {},
                 R"({"do":"add-yard","on":"2027-04-20","yard_name":"Lake","as":"lake"})"
                 "\n" +
                     lineOn("\"@lake\""))
                  .exit,
              cli::Refused);
    EXPECT_EQ(on("play", {}, lineOn("\"@the new one\"")).exit, cli::Refused);
}

TEST_F(Playing, ABoxIsNamedByItsMarkOrByWhereItStands) {
    playHillAndCreek();
    const std::string head = R"({"do":"move-box","on":"2027-05-01","to":"storeroom","box":)";
    ASSERT_EQ(on("play", {}, head + "\"M1\"}").exit, cli::Done);
    // The lowest box of hive 3 at Hill, counted from the floor.
    const CliAnswer lowest =
        on("play", {QStringLiteral("--json")}, head + R"({"hive":"3","yard":"Hill","place":1}})");
    ASSERT_EQ(lowest.exit, cli::Done) << lowest;
    EXPECT_EQ(lowest.object()[QLatin1String("steps")].toArray()[0][QLatin1String("made")],
              (QJsonObject{{QStringLiteral("box"), 1}}));
    EXPECT_EQ(on("play", {}, head + R"({"hive":"3","yard":"Hill","place":1}})").exit, cli::Refused)
        << "none stands there any more";
}

TEST_F(Playing, AsksBackAboutALineThatWasKeptButLooksOdd) {
    const char* script =
        "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"Hill\"}\n"
        "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"HILL\"}\n";
    const auto text = on("play", {}, script);
    EXPECT_EQ(text.exit, cli::Done) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("Line 2, kept: There is a yard Hill already")))
        << text;
    const auto json = on("play", {QStringLiteral("--json")},
                         "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"hiLL\"}\n");
    const auto step = json.object()[QLatin1String("steps")].toArray()[0].toObject();
    EXPECT_EQ(step[QLatin1String("questions")].toArray()[0].toObject()[QLatin1String("code")],
              QStringLiteral("name_alike"))
        << json;
}

TEST_F(Playing, ALineThatIsNoTextOrSaysAKeyTwiceIsRefused) {
    QFile script(file("script.play"));
    ASSERT_TRUE(script.open(QIODevice::WriteOnly));
    script.write(
        "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"Hill\"}\n"
        "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"M\xfchle\"}\n");
    script.close();
    const CliAnswer bytes = on("play", {script.fileName()});
    EXPECT_EQ(bytes.exit, cli::WrongUsage) << bytes;
    EXPECT_TRUE(bytes.err.startsWith(QStringLiteral("Line 2: "))) << bytes;
    EXPECT_TRUE(bytes.err.contains(QStringLiteral("UTF-8"))) << bytes;
    EXPECT_EQ(steps(), 1U);

    const CliAnswer twice =
        on("play", {QStringLiteral("--json")},
           R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek","yard_name":"Brook"})");
    EXPECT_EQ(twice.exit, cli::Refused) << twice;
    EXPECT_EQ(twice.code(), "duplicate");
    EXPECT_EQ(twice.field(), "yard_name");
    EXPECT_EQ(steps(), 1U);
}

}  // namespace
}  // namespace combwright
