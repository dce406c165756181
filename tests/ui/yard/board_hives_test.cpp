// The words under a hive of the board: what was done that day, however it was written down.
#include "ui/yard/board_hives.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/yard/yard_sheet.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using ::testing::ElementsAre;

class WordsUnderHives : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M9"}
{"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"M1","count":4})");
    }
    /// The words under the only hive on a day, each at its fullest.
    std::vector<std::string> under(const char* on) const {
        const YardSheet sheet = yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
        std::vector<std::string> words;
        const auto hives = hivesOnBoard(file(), sheet);
        for (const WordsUnder& each : hives.front().words) {
            std::string text;
            for (const TextRun& run : each.ways.front()) text += run.text.toStdString();
            words.push_back(text);
        }
        return words;
    }
};

TEST_F(WordsUnderHives, CountEverySuperPutOnThatDay) {
    done(R"({"do":"move-box","on":"2027-05-10","box":"M1","to":"on hive","hive":"H1"})");
    EXPECT_THAT(under("2027-05-10"), ElementsAre("1 super on today")) << "by hand alone";
    done(R"({"do":"write-line","on":"2027-05-10","hive":"H1","line":"e +1"})");
    EXPECT_THAT(under("2027-05-10"), ElementsAre("2 supers on today")) << "by hand and by a line";
    EXPECT_THAT(under("2027-05-11"), ElementsAre("last seen 10 May"));
    EXPECT_THAT(under("2027-04-01"), ElementsAre("never looked into"))
        << "the boxes it was set up with are not put on";
}

TEST_F(WordsUnderHives, SayFirstWhatMatters) {
    done(R"({"do":"write-line","on":"2027-05-10","hive":"H1","line":"e +1 light w2/300 !"})");
    EXPECT_THAT(under("2027-05-10"), ElementsAre("light: feed", "come back", "and 2 more"))
        << "feeding before a super put on and mites under the line";
    done(R"({"do":"write-line","on":"2027-05-11","hive":"H1","line":"e light w11/300"})");
    const auto words = under("2027-05-12");
    ASSERT_EQ(words.size(), 3U);
    EXPECT_THAT(words[0], ::testing::HasSubstr("mites 11")) << "over the line comes before all";
    EXPECT_EQ(words[1], "light: feed");
}

}  // namespace
}  // namespace combwright
