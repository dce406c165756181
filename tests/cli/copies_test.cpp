// Time and copies from the command line: the file as it stood, history in words, what differs,
// what-ifs and another copy taken in.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;
using testing::Not;

class CopiesCommands : public test::CliTest {
  protected:
    void SetUp() override {
        makeSeason();
        play(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})"
             "\n"
             R"({"do":"add-hive","on":"2027-04-02","yard":"Hill","mark":"ML1","boxes":"deep"})"
             "\n"
             R"({"do":"open-run","on":"2027-06-01","name":"27-1"})"
             "\n"
             R"({"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B4","net_g":12000})");
    }
    void play(std::string_view script, const char* name = "season.combwright") {
        const CliAnswer played = cli({QStringLiteral("play"), file(name)}, script);
        ASSERT_EQ(played.exit, cli::Done) << played;
    }
    static std::string amended(int grams) {
        return R"({"do":"amend","on":"2027-06-10","bucket":{"bucket":"B4","run":"27-1"},)"
               R"("set":{"net_g":)" +
               std::to_string(grams) + R"(},"why":"scale read twice"})";
    }
    CliAnswer with(const char* command, const char* other, const QStringList& more = {}) const {
        return on(command, QStringList{file(other)} + more);
    }
    static QString json() { return QStringLiteral("--json"); }
};

TEST_F(CopiesCommands, AsItStoodIsReadByEveryCommandAndWrittenByNone) {
    clock.set("2027-06-10");
    play(amended(12500));
    const CliAnswer made =
        on("as-it-stood", {QStringLiteral("2027-06-09"), file("then.combwright"), json()});
    ASSERT_EQ(made.exit, cli::Done) << made;
    EXPECT_EQ(made.object()[QLatin1String("step")], 4);
    const CliAnswer honey = cli({QStringLiteral("honey"), file("then.combwright")});
    EXPECT_EQ(honey.exit, cli::Done) << honey;
    EXPECT_THAT(honey.out.toStdString(), HasSubstr("as it was recorded up to the end of"));
    EXPECT_THAT(honey.out.toStdString(), HasSubstr("As it stood on Wed 9 Jun 2027"));
    EXPECT_EQ(cli({QStringLiteral("check"), file("then.combwright")}).exit, cli::Done);
    const CliAnswer written = cli({QStringLiteral("play"), file("then.combwright"), json()},
                                  R"({"do":"add-yard","on":"2027-06-10","yard_name":"Creek"})");
    EXPECT_EQ(written.exit, cli::Refused);
    EXPECT_EQ(written.code(), "read_only") << written;
    EXPECT_EQ(steps("then.combwright"), 4U);
    // By the step, and what is wrong usage.
    EXPECT_EQ(on("as-it-stood", {file("one.combwright"), QStringLiteral("--step=1")}).exit,
              cli::Done);
    EXPECT_EQ(steps("one.combwright"), 1U);
    EXPECT_EQ(on("as-it-stood", {file("two.combwright")}).exit, cli::WrongUsage);
    EXPECT_EQ(on("as-it-stood", {QStringLiteral("june"), file("two.combwright")}).exit,
              cli::WrongUsage);
    EXPECT_EQ(
        on("as-it-stood", {file("one.combwright"), QStringLiteral("--step=1"), json()}).code(),
        "path_taken");
    EXPECT_EQ(
        on("as-it-stood", {file("two.combwright"), QStringLiteral("--step=99"), json()}).code(),
        "not_found");
}

TEST_F(CopiesCommands, HistoryInWordsTellsWhatWhyAndWhatChanged) {
    clock.set("2027-06-12");
    play(amended(12500));
    play(R"({"do":"add-yard","on":"2027-06-11","yard_name":"Creek"})");
    ASSERT_EQ(on("undo").exit, cli::Done);
    const std::string text = on("history", {QStringLiteral("--words")}).out.toStdString();
    EXPECT_THAT(text, HasSubstr("Wed 9 Jun 2027"));
    EXPECT_THAT(text, HasSubstr("Sat 12 Jun 2027"));
    EXPECT_THAT(text, HasSubstr("taken back"));
    const auto list = on("history", {QStringLiteral("--words"), json()}).array();
    ASSERT_EQ(list.size(), 7);
    const auto says = [&](int i) {
        return list[i].toObject()[QLatin1String("says")].toString().toStdString();
    };
    EXPECT_EQ(says(0), "Taken back: a yard added, step 6.");
    EXPECT_THAT(says(1), HasSubstr("Creek"));
    EXPECT_EQ(list[1][QLatin1String("taken_back")], true);
    EXPECT_THAT(says(2), HasSubstr("A record amended, for Thu 10 Jun 2027"));
    EXPECT_EQ(list[2][QLatin1String("why")], QStringLiteral("scale read twice"));
    EXPECT_EQ(list[2][QLatin1String("changes")].toArray()[0],
              QStringLiteral("bucket B4, honey in it: 12 kg, then 12.5 kg"));
    EXPECT_THAT(says(3), HasSubstr("run 27-1"));
    EXPECT_THAT(says(5), HasSubstr("yard Hill"));
    EXPECT_EQ(on("history", {QStringLiteral("--words"), QStringLiteral("--script")}).exit,
              cli::WrongUsage);
}

TEST_F(CopiesCommands, DifferencesOfTwoDaysAndOfTwoCopies) {
    ASSERT_EQ(on("backup", {file("helper.combwright")}).exit, cli::Done);
    clock.set("2027-06-12");
    play(amended(12500));
    play(R"({"do":"add-hive","on":"2027-06-12","yard":"Hill","mark":"ML2","boxes":"deep"})");
    const QStringList days{QStringLiteral("--from=2027-06-09"), QStringLiteral("--to=2027-06-12")};
    const CliAnswer text = on("differences", days);
    ASSERT_EQ(text.exit, cli::Done) << text;
    for (const char* part : {"B4", "12 kg", "12.5 kg", "ML2", "changed: 1"})
        EXPECT_THAT(text.out.toStdString(), HasSubstr(part));
    const auto records =
        on("differences", days + QStringList{json()}).object()[QLatin1String("records")].toArray();
    bool found = false;
    for (const auto& record : records) {
        if (record[QLatin1String("record")] != QStringLiteral("bucket")) continue;
        found = true;
        EXPECT_EQ(record[QLatin1String("kind")], QStringLiteral("changed"));
        EXPECT_EQ(record[QLatin1String("values")][0][QLatin1String("was")], 12000);
        EXPECT_EQ(record[QLatin1String("values")][0][QLatin1String("is")], 12500);
    }
    EXPECT_TRUE(found);
    EXPECT_THAT(on("differences", {QStringLiteral("--from=2027-06-12")}).out.toStdString(),
                HasSubstr("Nothing differs."));

    play(R"({"do":"add-hive","on":"2027-06-12","yard":"Hill","mark":"ML9","boxes":"deep"})",
         "helper.combwright");
    const CliAnswer copies = with("differences", "helper.combwright", {json()});
    ASSERT_EQ(copies.exit, cli::Done) << copies;
    QStringList hives;
    for (const auto& record : copies.object()[QLatin1String("records")].toArray())
        if (record[QLatin1String("record")] == QStringLiteral("hive"))
            hives << record[QLatin1String("kind")].toString() + QLatin1Char(' ') +
                         record[QLatin1String("name")].toString();
    EXPECT_EQ(hives, (QStringList{QStringLiteral("gone ML2"), QStringLiteral("added ML9")}));
    ASSERT_EQ(cli({QStringLiteral("new"), file("other.combwright")}).exit, cli::Done);
    EXPECT_EQ(with("differences", "other.combwright", {json()}).code(), "not_of_this");
    EXPECT_EQ(on("differences").exit, cli::WrongUsage);
}

TEST_F(CopiesCommands, AWhatIfSaysSoIsAdoptedAndDropped) {
    ASSERT_EQ(with("what-if", "plan.combwright", {QStringLiteral("--name=two more")}).exit,
              cli::Done);
    play(R"({"do":"add-hive","on":"2027-06-20","yard":"Hill","mark":"ML2","boxes":"deep"})",
         "plan.combwright");
    for (const char* command : {"colonies", "stores", "due"}) {
        const CliAnswer said = cli({QLatin1String(command), file("plan.combwright")});
        EXPECT_THAT(said.out.toStdString(), HasSubstr("planned, not done")) << command;
    }
    EXPECT_THAT(cli({QStringLiteral("colonies"), file("plan.combwright")}).out.toStdString(),
                HasSubstr("What-if: two more"));
    EXPECT_THAT(on("colonies").out.toStdString(), Not(HasSubstr("What-if")));
    // Its script has nothing else in it.
    const CliAnswer script =
        cli({QStringLiteral("history"), file("plan.combwright"), QStringLiteral("--script")});
    EXPECT_TRUE(script.out.startsWith(QLatin1Char('{'))) << script;

    const CliAnswer tried = with("adopt", "plan.combwright", {QStringLiteral("--dry-run")});
    EXPECT_EQ(tried.exit, cli::Done) << tried;
    EXPECT_EQ(steps(), 4U);
    const CliAnswer adopted = with("adopt", "plan.combwright", {json()});
    ASSERT_EQ(adopted.exit, cli::Done) << adopted;
    EXPECT_EQ(adopted.object()[QLatin1String("steps")].toArray().size(), 1);
    EXPECT_EQ(dump(), dump("plan.combwright"));
    // A second time the hive is there already.
    const CliAnswer again = with("adopt", "plan.combwright", {json()});
    EXPECT_EQ(again.exit, cli::Refused);
    EXPECT_EQ(again.object()[QLatin1String("conflicts")][0][QLatin1String("kind")],
              QStringLiteral("refused"));
    EXPECT_EQ(steps(), 5U);
    EXPECT_EQ(cli({QStringLiteral("drop-what-if"), file(), json()}).code(), "not_found");
    EXPECT_EQ(cli({QStringLiteral("drop-what-if"), file("plan.combwright")}).exit, cli::Done);
    EXPECT_FALSE(QFile::exists(file("plan.combwright")));
    EXPECT_TRUE(QFile::exists(file()));
}

TEST_F(CopiesCommands, MergeShowsAsksAndTakesIn) {
    ASSERT_EQ(on("backup", {file("helper.combwright")}).exit, cli::Done);
    play(amended(12500));
    play(amended(12700), "helper.combwright");
    play(R"({"do":"add-hive","on":"2027-06-12","yard":"Hill","mark":"ML9","boxes":"deep"})",
         "helper.combwright");
    const std::string before = dump();
    const CliAnswer shown = with("merge", "helper.combwright", {QStringLiteral("--dry-run")});
    ASSERT_EQ(shown.exit, cli::Done) << shown;
    for (const char* part :
         {"B4", "12.5 kg", "12.7 kg", "To be chosen: 1", "bucket/1/net", "Nothing was changed."})
        EXPECT_THAT(shown.out.toStdString(), HasSubstr(part));
    const CliAnswer open = with("merge", "helper.combwright", {json()});
    EXPECT_EQ(open.exit, cli::Refused);
    EXPECT_EQ(open.object()[QLatin1String("open")], 1);
    EXPECT_EQ(open.object()[QLatin1String("step")], QJsonValue());
    const QJsonObject asked = open.object()[QLatin1String("questions")].toArray()[0].toObject();
    EXPECT_EQ(asked[QLatin1String("key")], QStringLiteral("bucket/1/net"));
    EXPECT_EQ(asked[QLatin1String("choices")].toArray().size(), 2);
    EXPECT_EQ(dump(), before);

    QFile answers(file("answers.json"));
    ASSERT_TRUE(answers.open(QIODevice::WriteOnly));
    answers.write(R"({"bucket/1/net":"theirs"})");
    answers.close();
    const QStringList given{QStringLiteral("--answers"), answers.fileName()};
    const CliAnswer taken = with("merge", "helper.combwright", given + QStringList{json()});
    ASSERT_EQ(taken.exit, cli::Done) << taken;
    EXPECT_EQ(taken.object()[QLatin1String("step")], 6);
    EXPECT_EQ(taken.object()[QLatin1String("open")], 0);
    EXPECT_EQ(on("check").exit, cli::Done);
    EXPECT_THAT(dump(), HasSubstr("12700"));
    EXPECT_THAT(dump(), HasSubstr("ML9"));
    const std::string words = on("history", {QStringLiteral("--words")}).out.toStdString();
    EXPECT_THAT(words, HasSubstr("Another copy taken in"));
    EXPECT_THAT(words, HasSubstr("helper.combwright"));
    ASSERT_EQ(on("undo").exit, cli::Done);
    EXPECT_EQ(dump(), before);

    ASSERT_TRUE(answers.open(QIODevice::WriteOnly | QIODevice::Truncate));
    answers.write(R"({"bucket/1/net":"mine"})");
    answers.close();
    EXPECT_EQ(with("merge", "helper.combwright", given + QStringList{json()}).code(),
              "not_a_choice");
}

}  // namespace
}  // namespace combwright
