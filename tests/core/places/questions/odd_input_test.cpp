// What keepers really type, one row each: kept, kept and asked about, or refused with a reason.
// Nothing is stored wrong in silence, and what is refused leaves no trace.
#include <gtest/gtest.h>

#include "core/places/questions/questions.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

struct OddInput {
    const char* what;      ///< what happened in the yard or the honey room
    const char* before;    ///< lines kept first, parted by line ends
    std::string line;      ///< what is typed then
    const char* answered;  ///< "kept", or the refusal's code and field
    const char* asked;     ///< the questions raised, in their order; empty for none
};

std::ostream& operator<<(std::ostream& out, const OddInput& input) { return out << input.what; }

class OddInputs : public test::DeedsTest, public testing::WithParamInterface<OddInput> {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2, x, medium M2 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H9","boxes":"deep D9"}
{"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"S1","count":4,"stack":"shelf"}
{"do":"open-run","on":"2027-06-01","name":"27-1","yard":"Hill"})");
    }
};

TEST_P(OddInputs, AreKeptOrAskedAboutOrRefusedWithAReason) {
    const OddInput& input = GetParam();
    done(input.before);
    std::string asked;
    season.onChange([&](const Change& change) {
        for (const Question& question : questionsAfter(season.read(), change, clock.today()))
            asked += (asked.empty() ? "" : " ") + std::string(key(question.asked));
    });
    EXPECT_EQ(outcome(input.line), input.answered) << told(input.line).toStdString();
    EXPECT_EQ(asked, input.asked);
    expectClean();
}

std::string look(const char* line, const char* on = "2027-06-01", const char* hive = "H1") {
    return R"({"do":"write-line","on":")" + std::string(on) + R"(","hive":")" + hive +
           R"(","line":")" + line + "\"}";
}
std::string weigh(const char* what) {
    return R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1",)" + std::string(what) +
           "}";
}
std::string bucket(const char* what) {
    return R"({"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B1",)" +
           std::string(what) + "}";
}

INSTANTIATE_TEST_SUITE_P(
    Keepers, OddInputs,
    testing::Values(
        OddInput{"moisture typed as 174", "", bucket(R"("net_g":13000,"water_percent":174)"),
                 "out_of_range water_percent", ""},
        OddInput{"12 % water", "", bucket(R"("net_g":13000,"water_percent":12)"), "kept",
                 "water_unusual"},
        OddInput{"26 % water", "", bucket(R"("net_g":13000,"water_percent":26)"), "kept",
                 "water_unusual"},
        OddInput{"wet heavier than gross", "", weigh(R"("gross_g":14000,"wet_g":15000)"),
                 "contradiction wet_g", ""},
        OddInput{"45 in a field of kilograms", "", weigh(R"("gross_g":45000)"), "kept",
                 "box_too_heavy"},
        OddInput{"a bucket heavier than it can hold", "", bucket(R"("net_g":27000)"), "kept",
                 "bucket_too_heavy"},
        OddInput{"11 frames in a box for ten", "",
                 R"({"do":"count-box","on":"2027-06-01","box":"M1","contents":"11 drawn"})", "kept",
                 ""},
        OddInput{"half frames", "", look("b6.5 s2,5"), "kept", ""},
        OddInput{"half answers", "", look("some brood ~6 s5-7 n?"), "kept", ""},
        OddInput{"a visit next month", "", look("e b7", "2028-01-15"), "kept", "not_come_yet"},
        OddInput{"the same yard twice in a day",
                 R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b7"})", look("e b6"),
                 "kept", ""},
        OddInput{"a visit before an older one",
                 R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b7"})",
                 look("e b6", "2027-05-11"), "kept", ""},
        OddInput{"29 February", "", look("light", "2028-02-29"), "kept", "not_come_yet"},
        OddInput{"30 February", "", look("light", "2027-02-30"), "not_a_day on", ""},
        OddInput{"across the year's end",
                 R"({"do":"write-line","on":"2027-04-30","hive":"H1","line":"light"})",
                 look("light", "2027-05-01"), "kept", ""},
        OddInput{"a day before the hive stood there", "", look("e", "2026-12-31"),
                 "before_it_began on", ""},
        OddInput{
            "a hive looked into on the day it was united",
            R"({"do":"end-colony","on":"2027-06-01","hive":"H2","ending":"united","into":"H1"})",
            look("q? e0 weak", "2027-06-01", "H2"), "kept", ""},
        OddInput{
            "the same mark painted on two boxes", "",
            R"({"do":"add-boxes","on":"2027-06-01","kind":"medium","first_mark":"M1","count":1})",
            "taken first_mark", ""},
        OddInput{
            "a mark used again after a dead-out",
            R"({"do":"close-hive","on":"2027-05-01","hive":"H2","ending":"sold","boxes_to":"storeroom"})",
            R"({"do":"add-hive","on":"2027-06-01","yard":"Hill","mark":"H2","boxes":"deep","origin":"swarm"})",
            "kept", ""},
        OddInput{"a swarm from nobody knows where", "",
                 R"({"do":"start-colony","on":"2027-06-01","hive":"H9","origin":"swarm"})", "kept",
                 ""},
        OddInput{"no mites found", "", look("w0/300"), "kept", ""},
        OddInput{"mites, but no count of bees", "", look("w7"), "kept", "bees_not_said"},
        OddInput{"mites and bees exchanged", "", look("w300/4"), "kept", "more_mites_than_bees"},
        OddInput{"a super on a hive whose bees are dead",
                 R"({"do":"end-colony","on":"2027-05-01","hive":"H2","ending":"queenless"})",
                 look("+1", "2027-06-01", "H2"), "kept", "nobody_lives"},
        OddInput{"two marks that cannot both hold", "", look("e b7 e0"), "contradiction line", ""},
        OddInput{"a hive called 007", "",
                 R"({"do":"add-hive","on":"2027-06-01","yard":"Hill","mark":"007","boxes":"deep"})",
                 "kept", ""},
        OddInput{"a name with quotes", "",
                 R"({"do":"add-yard","on":"2027-06-01","yard_name":"Dave's \"top\" field"})",
                 "kept", ""},
        OddInput{"a name in other letters", "",
                 R"({"do":"add-yard","on":"2027-06-01","yard_name":"Пчельник 山"})", "kept", ""},
        OddInput{"a note of four thousand characters", "", look(std::string(4000, 'x').c_str()),
                 "kept", ""},
        OddInput{"a decimal comma", "", look("b6,5 f2,5"), "kept", "fed_under_supers"},
        OddInput{"45 kg of sugar at once", "", look("f45"), "kept", "much_fed fed_under_supers"},
        OddInput{"off more supers than stand there", "", look("-3"), "too_many line", ""},
        OddInput{"a wet sample of a box", "",
                 R"({"do":"look-box","on":"2027-06-01","box":"M1","water_percent":26})", "kept",
                 "water_unusual"}));

}  // namespace
}  // namespace combwright
