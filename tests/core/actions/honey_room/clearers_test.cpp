// Clearer boards go in and come out, one in a hive at a time.
#include "core/actions/honey_room/clearers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/storage/audit.h"
#include "core/storage/queries/pegs.h"
#include "core/words/words.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class BoardsUnderSupers : public test::SeasonTest {
  protected:
    Season season = [this] {
        Season made = newSeason();
        playAll(made, test::hillAndCreekBefore());
        return made;
    }();
    std::optional<Refusal> refused(const std::string& line) {
        const PlayResult result = play(season, line);
        return result.stopped ? std::optional(result.stopped->refusal) : std::nullopt;
    }
    std::optional<ClearerBoard> in(const char* on) const {
        return boardIn(season.read(), Id<Hive>{2}, test::day(on));
    }
};

TEST_F(BoardsUnderSupers, OneGoesInAndComesOut) {
    playAll(season, R"({"do":"put-clearer","on":"2027-08-04","hive":"H2"})");
    EXPECT_FALSE(in("2027-08-03"));
    EXPECT_TRUE(in("2027-08-04"));
    const auto twice = refused(R"({"do":"put-clearer","on":"2027-08-05","hive":"H2"})");
    ASSERT_TRUE(twice);
    EXPECT_EQ(twice->code, Code::Taken);
    EXPECT_TRUE(sentence(*twice).contains(QStringLiteral("H2"))) << sentence(*twice).toStdString();
    playAll(season, R"({"do":"take-clearer","on":"2027-08-06","hive":"H2"})");
    EXPECT_FALSE(in("2027-08-06"));
    EXPECT_EQ(refused(R"({"do":"take-clearer","on":"2027-08-06","hive":"H2"})")->code,
              Code::NotFound);
    // A second round in the same hive the same evening.
    playAll(season, R"({"do":"put-clearer","on":"2027-08-06","hive":"H2"})");
    EXPECT_TRUE(in("2027-08-06"));
    EXPECT_THAT(audit(season.read()), testing::IsEmpty());
    ASSERT_TRUE(season.undo());
    EXPECT_FALSE(in("2027-08-06"));
}

TEST_F(BoardsUnderSupers, OnlyWhereTheHiveStandsFree) {
    EXPECT_EQ(refused(R"({"do":"put-clearer","on":"2027-03-04","hive":"H2"})")->code,
              Code::BeforeItBegan);
    playAll(season,
            R"({"do":"hold-back","on":"2027-08-01","hive":"H3","reason":"suspected disease"})");
    EXPECT_EQ(refused(R"({"do":"put-clearer","on":"2027-08-04","hive":"H3"})")->code,
              Code::HeldBack);
}

TEST_F(BoardsUnderSupers, ADayMistypedIsAmended) {
    playAll(season, R"({"do":"put-clearer","on":"2027-08-04","hive":"H2"}
{"do":"amend","on":"2027-08-04","clearer_board":{"hive":"H2"},"set":{"on_day":"2027-08-03"},"why":"it was Tuesday"})");
    EXPECT_TRUE(in("2027-08-03"));
    EXPECT_EQ(
        refused(
            R"({"do":"amend","on":"2027-08-04","clearer_board":{"hive":"H2"},"set":{"off_day":"2027-08-01"},"why":"x"})")
            ->code,
        Code::Contradiction);
    EXPECT_EQ(
        refused(
            R"({"do":"amend","on":"2027-08-04","clearer_board":{"hive":"H2"},"set":{"hive":"H1"},"why":"x"})")
            ->code,
        Code::Fixed);
}

}  // namespace
}  // namespace combwright
