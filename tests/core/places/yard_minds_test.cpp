// What a yard sheet asks one to keep in mind of a hive that was not opened: hefting and "come back"
// need no opening, all else is as it was last seen.
#include <gtest/gtest.h>

#include "core/places/yard_sheet.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class YardMinds : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep, x","origin":"swarm"})");
    }
    void line(const char* on, const char* typed) {
        done(R"({"do":"write-line","on":")" + std::string(on) + R"(","hive":"H1","line":")" +
             typed + "\"}");
    }
    /// "light 2027-05-20, come back 2027-05-20"
    std::string minds(const char* on) const {
        std::string text;
        const YardSheet sheet = yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
        for (const Mind& mind : sheet.rows.front().minds)
            text += (text.empty() ? "" : ", ") + word(mind.kind) + " " + isoText(mind.since);
        return text;
    }
    bool takesFeed(const char* on) const {
        const YardSheet sheet = yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
        for (const TakeAlong& each : sheet.takeAlong)
            if (each.what == TakeAlong::What::Feed) return each.hives.front() == "H1";
        return false;
    }

  private:
    static std::string word(MindKind kind) {
        switch (kind) {
            case MindKind::NotOpened:
                return "not opened";
            case MindKind::Light:
                return "light";
            case MindKind::ComeBack:
                return "come back";
            case MindKind::NoEggs:
                return "no eggs";
            default:
                return "other";
        }
    }
};

TEST_F(YardMinds, FirstLineOfAllMayBeThatItWasNotOpened) {
    line("2027-05-20", "x light !");
    EXPECT_EQ(minds("2027-05-20"), "not opened 2027-05-20, light 2027-05-20, come back 2027-05-20");
    EXPECT_EQ(minds("2027-05-27"), "light 2027-05-20, come back 2027-05-20");
}

TEST_F(YardMinds, HeftedFromBehindIsKnownUntilOpenedOrHeftedAgain) {
    line("2027-05-20", "e0 b4");
    line("2027-11-28", "x light");
    EXPECT_EQ(minds("2027-11-28"), "not opened 2027-05-20, no eggs 2027-05-20, light 2027-11-28");
    EXPECT_EQ(minds("2028-01-10"), "no eggs 2027-05-20, light 2027-11-28");
    EXPECT_TRUE(takesFeed("2028-01-10"));
    line("2028-01-15", "x heavy");
    EXPECT_EQ(minds("2028-01-20"), "no eggs 2027-05-20");
    line("2028-02-12", "x light");
    line("2028-04-02", "e b3");
    EXPECT_EQ(minds("2028-04-02"), "");
    EXPECT_EQ(minds("2028-04-09"), "");
    EXPECT_FALSE(takesFeed("2028-04-09"));
}

TEST_F(YardMinds, NotOpenedTwiceKeepsWhatWasSeenLast) {
    line("2027-05-20", "e b4 light");
    line("2027-05-27", "x rain");
    line("2027-06-03", "x rain again !");
    EXPECT_EQ(minds("2027-06-04"), "light 2027-05-20, come back 2027-06-03");
}

}  // namespace
}  // namespace combwright
