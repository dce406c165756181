// Hundreds of random deeds in a storeroom, undone and redone in every order: no frame is ever lost,
// the file agrees with itself, and its journal played anew gives it again.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <random>

#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class RandomWinter {
  public:
    explicit RandomWinter(unsigned seed) : m_random(seed) {}

    unsigned pick(unsigned below) { return m_random() % below; }

    std::string line() {
        const std::string on = isoText(test::day("2027-11-01") + days(pick(60)));
        switch (pick(12)) {
            case 0:
            case 1:
            case 2:
                return review(on);
            case 3:
                return deed("judge-frames", on,
                            R"("boxes":)" + boxes() + R"(,"verdict":")" + verdict() +
                                R"(","note":"again")");
            case 4:
                return deed("work-frames", on,
                            R"("work":")" + work() + R"(","boxes":)" + boxes() + R"(,"how_many":)" +
                                number(3) + R"(,"note":"done")");
            case 5:
                return deed(
                    "add-frames", on,
                    R"("frame_kind":"LANG-F-MED","count":)" + number(3) +
                        (pick(2) ? R"(,"comb":"bare","stack":"shelf")" : R"(,"box":)" + box()));
            case 6:
                return deed("move-frames", on,
                            R"("how_many":)" + number(2) + R"(,"note":"room","from_box":)" + box() +
                                (pick(2) ? R"(,"to_box":)" + box() : R"(,"to_stack":"shelf")"));
            case 7:
                return deed("count-box", on,
                            R"("contents":")" + number(4) + R"( drawn, 1 W","box":)" + box());
            case 8:
                return pick(4) ? deed("mend-boxes", on, R"("wants_paint":true,"boxes":)" + boxes())
                               : deed("hold-back", on, R"("reason":"other","box":)" + box());
            case 9:
                return check(on);
            case 10:
                return amended();
            default:
                return deed("count-equipment", on,
                            R"("item":"foundation","frame_kind":"LANG-F-MED","on_hand":)" +
                                number(40) + R"(,"why_fewer":"used")");
        }
    }

  private:
    static std::string deed(const char* what, const std::string& on, const std::string& more) {
        return R"({"do":")" + std::string(what) + R"(","on":")" + on + "\"," + more + "}";
    }
    std::string number(unsigned below) { return std::to_string(pick(below) + 1); }
    std::string box() { return "\"M" + number(6) + "\""; }
    std::string boxes() {
        if (pick(3) == 0) return "\"all\"";
        return pick(2) ? box() : "\"M" + number(3) + "-M" + std::to_string(4 + pick(3)) + "\"";
    }
    std::string verdict() {
        static const char* const all[] = {"keep", "repair", "refit", "melt", "hold", "burn"};
        return all[pick(6)];
    }
    std::string work() {
        static const char* const all[] = {"repaired", "refitted", "scraped",
                                          "melted",   "burnt",    "sold"};
        return all[pick(6)];
    }
    std::string review(const std::string& on) {
        static const char* const seen[] = {"3 keep, 1 web",     "2 drawn, 1 V8, 1 W; years 25x1",
                                           "1 old 6, 1 D",      "empty",
                                           "4 keep of shallow", "2 keep, 1 P, 1 foundation"};
        return deed("review-box", on,
                    R"("contents":")" + std::string(seen[pick(6)]) + R"(","scrapings_g":)" +
                        number(90) + R"(,"box":)" + box());
    }
    std::string check(const std::string& on) {
        return deed("check-frames", on,
                    R"("occasion":"winter review","faults":")" + std::string(pick(2) ? "W6" : "v") +
                        (pick(2) ? R"(","position":)" : R"(","how_many":)") + number(3) +
                        R"(,"box":)" + box());
    }
    /// A day or a number put right that something else may hang on by then.
    std::string amended() {
        const std::string day = isoText(test::day("2027-11-01") + days(pick(60)));
        switch (pick(3)) {
            case 0:
                return amendment("box_review", 40,
                                 R"("on_day":")" + day + R"(","scrapings_g":)" + number(90));
            case 1:
                return amendment("frame_check", 30, R"("how_many":)" + number(4));
            default:
                return amendment("equipment_count", 9,
                                 R"("on_day":")" + day + R"(","on_hand":)" + number(40) +
                                     R"(,"why_fewer":"misread")");
        }
    }
    std::string amendment(const char* record, unsigned below, const std::string& set) {
        return deed("amend", "2028-01-10",
                    '"' + std::string(record) + R"(":"#)" + number(below) +
                        R"(","why":"misread","set":{)" + set + "}");
    }
    std::mt19937 m_random;
};

class RandomBench : public test::BenchTest {};

TEST_F(RandomBench, LosesNoFrameAndIsTakenBackAnywhere) {
    done(
        R"({"do":"add-boxes","on":"2027-08-01","kind":"medium","first_mark":"M1","count":6,"contents":"4 drawn"})");
    RandomWinter random(20271118);
    std::vector<std::string> dumps{season.dump()};
    std::size_t at = 0;
    std::map<std::string, int> deeds;
    for (int round = 0; round < 700; ++round) {
        const unsigned what = random.pick(10);
        if (what < 7) {
            const PlayResult result = play(season, random.line());
            if (result.stopped || result.steps.front().step == 0) continue;
            ++deeds[season.history(1).front().info.action];
            dumps.resize(at + 1);
            dumps.push_back(season.dump());
            ++at;
            ASSERT_TRUE(frameLedger(file()).conserved());
            if (round % 20 == 0) expectClean();
        } else if (what < 9) {
            if (at == 0) continue;  // the boxes themselves stay
            ASSERT_TRUE(season.undo());
            --at;
        } else {
            ASSERT_EQ(season.redo().has_value(), at + 1 < dumps.size());
            if (at + 1 < dumps.size()) ++at;
        }
        ASSERT_TRUE(season.dump() == dumps[at]) << "after round " << round;
    }
    for (const char* action :
         {"review-box", "judge-frames", "work-frames", "add-frames", "move-frames", "count-box",
          "check-frames", "count-equipment", "amend"})
        EXPECT_GT(deeds[action], 5) << action << " was hardly ever kept";
    expectClean();
    EXPECT_FALSE(file().database().number("SELECT count(*) FROM pragma_foreign_key_check"));
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(copy);
    playAll(*copy, scriptOf(season));
    EXPECT_TRUE(copy->dump() == season.dump());
}

}  // namespace
}  // namespace combwright
