// Hundreds of random deeds at the freezer and with wet boxes, undone and redone in every order: the
// file agrees with itself after each, and its journal played anew gives it again.
#include <gtest/gtest.h>

#include <map>
#include <random>

#include "core/storage/audit.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class RandomCold {
  public:
    explicit RandomCold(unsigned seed) : m_random(seed) {}
    unsigned pick(unsigned below) { return m_random() % below; }

    std::string line() {
        // Days go on with the deeds, as they do in life.
        m_day += days(pick(2));
        switch (pick(9)) {
            case 0:
            case 1:
                return deed("freeze-frames", R"("boxes":")" + box() + (pick(2) ? " 2" : "") + ", " +
                                                 box() + (pick(2) ? R"(","hours":48)" : "\""));
            case 2:
            case 3:
                return deed("take-out-frozen", R"("round":"#)" + number(9) + "\"");
            case 4:
                return deed("spoil-frozen",
                            R"("boxes":")" + box() + R"(","reason":"left in the sun")");
            case 5:
                return deed("move-box", R"("box":")" + box() + R"(","to":"wet")");
            case 6:
                return deed("send-wets-home", R"("boxes":")" + box() + " H" + number(2) + "\"");
            case 7:
                return deed("take-wets-off",
                            R"("boxes":")" + box() + R"(","stack":"S)" + number(2) + "\"");
            default:
                return deed("hold-back", R"("reason":"other","box":"M6")");
        }
    }

  private:
    std::string deed(const char* what, const std::string& more) const {
        return R"({"do":")" + std::string(what) + R"(","on":")" + isoText(m_day) + "\"," + more +
               "}";
    }
    std::string number(unsigned below) { return std::to_string(pick(below) + 1); }
    std::string box() { return "M" + number(6); }
    std::mt19937 m_random;
    Day m_day = test::day("2027-08-10");
};

class RandomFreezer : public test::SeasonTest {};

TEST_F(RandomFreezer, IsTakenBackAnywhere) {
    Season season = newSeason();
    playAll(season,
            R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep, x","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep, x","origin":"overwintered"}
{"do":"add-boxes","on":"2027-08-01","kind":"medium","first_mark":"M1","count":6,"contents":"6 drawn"}
{"do":"describe-equipment","on":"2027-08-01","item":"freezer","litres":100})");
    RandomCold random(20280110);
    std::vector<std::string> dumps{season.dump()};
    std::size_t at = 0;
    std::map<std::string, int> deeds;
    for (int round = 0; round < 500; ++round) {
        const unsigned what = random.pick(10);
        if (what < 7) {
            const PlayResult result = play(season, random.line());
            if (result.stopped || result.steps.front().step == 0) continue;
            ++deeds[season.history(1).front().info.action];
            dumps.resize(at + 1);
            dumps.push_back(season.dump());
            ++at;
            if (round % 20 == 0) {
                EXPECT_TRUE(audit(season.read()).empty());
            }
        } else if (what < 9) {
            if (at == 0) continue;
            ASSERT_TRUE(season.undo());
            --at;
        } else {
            ASSERT_EQ(season.redo().has_value(), at + 1 < dumps.size());
            if (at + 1 < dumps.size()) ++at;
        }
        ASSERT_TRUE(season.dump() == dumps[at]) << "after round " << round;
    }
    for (const char* action :
         {"freeze-frames", "take-out-frozen", "spoil-frozen", "send-wets-home", "take-wets-off"})
        EXPECT_GT(deeds[action], 5) << action << " was hardly ever kept";
    EXPECT_FALSE(season.read().database().number("SELECT count(*) FROM pragma_foreign_key_check"));
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(copy);
    playAll(*copy, scriptOf(season));
    EXPECT_TRUE(copy->dump() == season.dump());
}

}  // namespace
}  // namespace combwright
