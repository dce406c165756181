// Trace, labels and leaf from the command line: both ways in grams, what is refused, and a sheet
// kept that reads as it did.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"
#include "tests/support/honey_lots.h"

namespace combwright {
namespace {

using test::CliAnswer;

/// The honey of tests/support/honey_lots.h, asked for through the program.
class TraceByCommand : public test::HoneyLotsTest {
  protected:
    CliAnswer on(const char* command, const QStringList& more = {}) const {
        QString given;
        CliAnswer answer;
        QTextStream in(&given, QIODevice::ReadOnly);
        QTextStream out(&answer.out, QIODevice::WriteOnly);
        QTextStream err(&answer.err, QIODevice::WriteOnly);
        answer.exit = cli::run(QStringList{QLatin1String(command), test::qt(path())} + more,
                               {in, out, err}, clock);
        out.flush();
        err.flush();
        return answer;
    }
};

TEST_F(TraceByCommand, ACodeLeadsToHivesAndPeople) {
    const CliAnswer answer = on("trace", {"--code", "L27-1", "--json"});
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    const QJsonObject back = answer.object()["back"].toObject();
    EXPECT_EQ(back["mass_g"].toInteger(), 13620);
    const QJsonObject hill = back["runs"].toArray()[0].toObject();
    EXPECT_EQ(hill["run"].toString(), QStringLiteral("27-2"));
    EXPECT_EQ(hill["hives"].toArray()[0].toObject()["mass_g"].toInteger(), 6452);
    const QJsonArray creek = back["runs"].toArray()[1].toObject()["hives"].toArray();
    EXPECT_TRUE(creek[1].toObject()["hive"].isNull()) << "nobody knows";
    EXPECT_EQ(creek[1].toObject()["mass_g"].toInteger(), 2509);
    const QJsonObject filling =
        answer.object()["forward"].toObject()["fillings"].toArray()[0].toObject();
    EXPECT_EQ(filling["jars"].toArray()[0].toObject()["left"].toInteger(), 9);
    EXPECT_EQ(filling["out"].toArray()[0].toObject()["buyer"].toString(), QStringLiteral("Ann"));
    EXPECT_FALSE(answer.object()["not_known"].toArray().isEmpty());
}

TEST_F(TraceByCommand, EveryThingThatCanBeAskedForIsFound) {
    const auto done = [&](const QStringList& of) {
        const CliAnswer answer = on("trace", of);
        EXPECT_EQ(answer.exit, cli::Done) << answer;
        return answer.out;
    };
    EXPECT_TRUE(done({"--lot", "Winter mix"}).contains(QStringLiteral("bought in from Dora")));
    EXPECT_TRUE(done({"--bucket", "B1", "--run", "27-2"}).contains(QStringLiteral("Ann")));
    EXPECT_TRUE(done({"--run", "27-2"}).contains(QStringLiteral("Summer blend")));
    EXPECT_TRUE(done({"--hive", "H2"}).contains(QStringLiteral("L27-1")));
    EXPECT_TRUE(done({"--box", "H2a"}).contains(QStringLiteral("L27-1")));
    EXPECT_TRUE(
        done({"--treatment", "2027-06-01", "--hive", "H1"}).contains(QStringLiteral("L27-1")));
    EXPECT_EQ(on("trace", {"--lot", "Nothing"}).exit, cli::Refused);
    EXPECT_EQ(on("trace").exit, cli::WrongUsage);
    EXPECT_EQ(on("trace", {"--lot", "Winter mix", "--box", "H2a"}).exit, cli::WrongUsage);
}

TEST_F(TraceByCommand, AKeptSheetIsPrintedAsItRead) {
    done(R"({"do":"keep-sheet","on":"2027-10-10","what_sheet":"trace","subject":"Summer blend",)"
         R"("as_it_read":"as it was in October"})");
    const CliAnswer answer = on("trace", {"--lot", "Summer blend", "--kept"});
    EXPECT_TRUE(answer.out.contains(QStringLiteral("as it was in October"))) << answer;
    EXPECT_TRUE(on("trace", {"--lot", "Winter mix", "--kept"})
                    .out.contains(QStringLiteral("No sheet of it was kept.")));
}

TEST_F(TraceByCommand, LabelsSayWhereTheyLieAndWhatLacks) {
    const CliAnswer answer = on("labels", {"--code", "L27-1", "--start", "20", "--json"});
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_EQ(answer.object()["labels"].toArray().size(), 30);
    EXPECT_EQ(answer.object()["sheets"].toInt(), 3) << "2 + 21 + 7";
    EXPECT_EQ(answer.object()["reminders"].toArray()[0].toObject()["what"].toString(),
              QStringLiteral("infant_caution"));
    EXPECT_TRUE(on("labels").out.contains(QStringLiteral("30 × Honey, 454 g")));
    EXPECT_EQ(on("labels", {"--grid", "b5", "--json"}).code(), "not_a_choice");
    EXPECT_EQ(on("labels", {"--start", "99999999999", "--json"}).code(), "out_of_range");
    EXPECT_EQ(on("labels", {"--start", "one", "--json"}).code(), "wrong_type");
}

TEST_F(TraceByCommand, ALeafLeavesOutWhatTheKeeperLeavesOut) {
    EXPECT_TRUE(on("leaf").out.contains(QStringLiteral("Hill and Creek")));
    const CliAnswer answer = on("leaf", {"--without", "place", "--with", "medicines"});
    EXPECT_FALSE(answer.out.contains(QStringLiteral("Hill and Creek")));
    EXPECT_TRUE(answer.out.contains(QStringLiteral("Strips")));
    EXPECT_EQ(on("leaf", {"--without", "truth", "--json"}).code(), "not_a_choice");
    EXPECT_TRUE(on("leaf", {"--json"}).object()["water_percent"].isNull());
}

}  // namespace
}  // namespace combwright
