#include "core/actions/load_season.h"

#include <gtest/gtest.h>

#include <QFile>

#include "core/actions/demo_season.h"
#include "core/exchange/export.h"
#include "core/storage/audit.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class LoadingSeasons : public test::SeasonTest {
  protected:
    std::string exported(const Season& season) {
        const auto written = exportSeason(season.read(), path("out"));
        EXPECT_TRUE(written);
        QFile file(QString::fromStdString(path("out/season.json")));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll().toStdString();
    }
    Result<Made> load(Season& season, const std::string& json) {
        return perform(season, LoadSeason{clock.today(), "season.json", json});
    }
    std::string refusal(const std::string& json) {
        auto season = Season::create(":memory:", clock);
        const std::string before = season->dump();
        const auto loaded = load(*season, json);
        EXPECT_FALSE(loaded) << json;
        EXPECT_EQ(season->dump(), before);
        return loaded ? std::string()
                      : std::string(key(loaded.error().code)) + ' ' + loaded.error().field;
    }
};

// Every table of the invented season goes out and comes back equal, numbers and all.
TEST_F(LoadingSeasons, TheOneJsonGivesAnEqualFile) {
    auto demo = makeDemoSeason(path(), clock);
    ASSERT_TRUE(demo);
    const std::string json = exported(*demo);
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(copy);
    const std::string empty = copy->dump();
    ASSERT_TRUE(load(*copy, json));
    EXPECT_EQ(copy->dump(), demo->dump());
    EXPECT_EQ(audit(copy->read()).size(), audit(demo->read()).size());
    // Once more would be into a file in which something was done.
    const auto again = load(*copy, json);
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().code, Code::NotClosed);
    ASSERT_TRUE(copy->undo());
    EXPECT_EQ(copy->dump(), empty);
    ASSERT_TRUE(copy->redo());
    EXPECT_EQ(copy->dump(), demo->dump());
    // What is done next is done alike.
    const std::string line = R"({"do":"add-yard","on":"2029-01-01","yard_name":"New"})";
    playAll(*copy, line);
    EXPECT_TRUE(audit(copy->read()).size() == audit(demo->read()).size());
}

TEST_F(LoadingSeasons, TextThatLooksLikeAFormulaComesBackExactly) {
    Season season = newSeason();
    for (const char* first : {"=", "+", "-", "@", "\\t", "\\r", "'"})
        playAll(season, std::string(R"({"do":"note-task","on":"2027-04-01","text":"x )") + first +
                            R"("})" + '\n' +
                            R"({"do":"note-task","on":"2027-04-01","text":"y","who":")" + first +
                            R"(1+1"})");
    const std::string json = exported(season);
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(load(*copy, json));
    EXPECT_EQ(copy->dump(), season.dump());
}

TEST_F(LoadingSeasons, RefusesWhatIsNoSeason) {
    EXPECT_EQ(refusal("nonsense"), "wrong_type season_json");
    EXPECT_EQ(refusal("{}"), "missing season_json");
    EXPECT_EQ(refusal(R"({"wing":[]})"), "unknown_key wing");
    EXPECT_EQ(refusal(R"({"yard":{}})"), "wrong_type yard");
    EXPECT_EQ(refusal(R"({"yard":[7]})"), "wrong_type yard");
    EXPECT_EQ(refusal(R"({"yard":[{"id":"#1","wing":2}]})"), "unknown_key yard.wing");
    const std::string yard = R"({"id":"#1","name":"Hill","walk_order":1,"since":"2027-04-01"})";
    EXPECT_EQ(refusal(R"({"yard":[)" + yard + "," + yard + "]}"), "duplicate yard.id");
    EXPECT_EQ(
        refusal(R"({"yard":[{"id":"#1","name":"Hill","walk_order":1,"since":"2027-02-30"}]})"),
        "not_a_day yard.since");
    EXPECT_EQ(refusal(R"({"hive":[{"id":"#1","yard":"#7","mark":"H1","stand_order":1,)"
                      R"("since":"2027-04-01"}]})"),
              "not_found hive");
}

}  // namespace
}  // namespace combwright
