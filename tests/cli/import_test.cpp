// Tables in and the whole season back, by the command line.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>

#include "core/actions/demo_season.h"
#include "tests/cli/run_cli.h"

namespace combwright::test {
namespace {

using testing::HasSubstr;

class Imports : public CliTest {
  protected:
    void SetUp() override {
        makeSeason();
        const auto played = on("play", {}, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
)");
        ASSERT_EQ(played.exit, cli::Done) << played;
    }
    QString write(const char* name, std::string_view text) const {
        QFile out(file(name));
        EXPECT_TRUE(out.open(QIODevice::WriteOnly));
        out.write(text.data(), static_cast<qint64>(text.size()));
        return file(name);
    }
    /// An invented table of the tests, as an old spreadsheet writes it.
    QString fixture(const char* name) const {
        QFile in(QStringLiteral(COMBWRIGHT_SOURCE_DIR "/tests/fixtures/import/") +
                 QLatin1String(name));
        EXPECT_TRUE(in.open(QIODevice::ReadOnly));
        return write(name, QString::fromUtf8(in.readAll()).toLatin1().toStdString());
    }
    std::string saved(const char* name) const {
        QFile in(file(name));
        EXPECT_TRUE(in.open(QIODevice::ReadOnly)) << name;
        return in.readAll().toStdString();
    }
    CliAnswer import(const QStringList& words) const { return on("import", words); }
};

TEST_F(Imports, AScaleIsLookedAtAskedAboutAndTakenIn) {
    const QString table = fixture("scale.csv");
    const std::string before = dump();
    const auto looked = import({"weights", table, "--dry-run", "--json"});
    EXPECT_EQ(looked.exit, cli::Refused) << looked;
    const QJsonObject plan = looked.object();
    EXPECT_EQ(plan.value("encoding").toString(), "windows-1252");
    EXPECT_EQ(plan.value("delimiter").toString(), ";");
    const QJsonArray questions = plan.value("questions").toArray();
    ASSERT_EQ(questions.size(), 1) << looked;
    EXPECT_EQ(questions[0].toObject().value("ask").toString(), "dates");
    const QString half = write("half.json", R"({"dates":"day first"})");
    const auto more = import({"weights", table, "--dry-run", "--map", half, "--json"});
    EXPECT_EQ(more.exit, cli::Refused) << more;
    EXPECT_EQ(more.object().value("questions").toArray()[0].toObject().value("ask").toString(),
              "of_day");
    EXPECT_EQ(plan.value("rows").toArray()[0].toObject().value("line").toInt(), 2);
    EXPECT_FALSE(plan.value("kept").toBool());
    EXPECT_EQ(dump(), before);

    const QString map = write("map.json", R"({"dates":"day first","of_day":"last"})");
    const auto kept = import({"weights", table, "--map", map, "--json"});
    EXPECT_EQ(kept.exit, cli::Done) << kept;
    EXPECT_TRUE(kept.object().value("kept").toBool());
    EXPECT_EQ(kept.object().value("step").toInt(), 4);
    EXPECT_EQ(kept.object().value("counts").toObject().value("left_out").toInt(), 1);
    EXPECT_EQ(on("check").exit, cli::Done);

    const std::string after = dump();
    const auto again = import({"weights", table, "--map", map, "--json"});
    EXPECT_EQ(again.exit, cli::Done) << again;
    EXPECT_TRUE(again.object().value("step").isNull());
    EXPECT_EQ(again.object().value("counts").toObject().value("already_there").toInt(), 3);
    EXPECT_EQ(dump(), after);

    EXPECT_EQ(on("undo", {"--step", "4"}).exit, cli::Done);
    EXPECT_EQ(dump(), before);
}

TEST_F(Imports, RefusedRowsAreSavedWithLineFieldAndReason) {
    const QString table =
        write("t.csv", "Hive,Date,Weight kg\nH1,2027-06-01,41\nH9,2027-06-01,38\n");
    const std::string before = dump();
    const auto all = import({"weights", table});
    EXPECT_EQ(all.exit, cli::Refused);
    EXPECT_THAT(all.out.toStdString(), HasSubstr("Line 3: refused: "));
    EXPECT_EQ(dump(), before);
    const auto some = import({"weights", table, "--rejects", file("rejects.csv")});
    EXPECT_EQ(some.exit, cli::Done) << some;
    EXPECT_THAT(saved("rejects.csv"),
                HasSubstr("Hive,Date,Weight kg,line,field,reason\r\nH9,2027-06-01,38,3,hive,"));
    EXPECT_NE(dump(), before);
    // What is there is not written over.
    const QString other = write("u.csv", "Hive,Date,Weight kg\nH9,2027-06-02,38\n");
    const auto taken = import({"weights", other, "--rejects", file("rejects.csv"), "--json"});
    EXPECT_EQ(taken.code(), "path_taken");
}

TEST_F(Imports, WrongWordsAreToldAsSuch) {
    const QString table = write("t.csv", "Hive,Date,Weight kg\nH1,2027-06-01,41\n");
    EXPECT_EQ(import({"wings", table}).exit, cli::WrongUsage);
    EXPECT_EQ(import({"weights", file("none.csv")}).exit, cli::WrongUsage);
    EXPECT_EQ(import({"weights", table, "--map", file("none.json")}).exit, cli::WrongUsage);
    EXPECT_EQ(import({"weights", table, "--dry-run", "--rejects", file("r.csv")}).exit,
              cli::WrongUsage);
    const QString map = write("m.json", R"({"decimals":"comma"})");
    EXPECT_EQ(import({"weights", table, "--map", map, "--json"}).code(), "unknown_key");
    EXPECT_EQ(import({"weights", write("e.csv", ""), "--json"}).code(), "missing");
}

TEST_F(Imports, AWholeSeasonGoesOutAndComesBackEqual) {
    ASSERT_TRUE(makeDemoSeason(path("demo.combwright"), clock));
    ASSERT_EQ(cli({"export", file("demo.combwright"), file("out")}).exit, cli::Done);
    const QString json = file("out/season.json");
    ASSERT_EQ(cli({"new", file("a.combwright"), "--from", json}).exit, cli::Done);
    EXPECT_EQ(dump("a.combwright"), dump("demo.combwright"));
    ASSERT_EQ(cli({"new", file("b.combwright")}).exit, cli::Done);
    const auto read = cli({"import", file("b.combwright"), "season", json});
    EXPECT_EQ(read.exit, cli::Done) << read;
    EXPECT_EQ(dump("b.combwright"), dump("demo.combwright"));
    // Out again, the JSON is the same byte for byte.
    ASSERT_EQ(cli({"export", file("b.combwright"), file("again")}).exit, cli::Done);
    EXPECT_EQ(saved("again/season.json"), saved("out/season.json"));

    EXPECT_EQ(cli({"import", file(), "season", json, "--json"}).code(), "not_closed");
    const QString bad = write("bad.json", R"({"yard":[{"id":"#1"}]})");
    EXPECT_EQ(cli({"new", file("c.combwright"), "--from", bad, "--json"}).code(), "missing");
    EXPECT_FALSE(QFile::exists(file("c.combwright")));
}

}  // namespace
}  // namespace combwright::test
