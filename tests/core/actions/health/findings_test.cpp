// Findings and the keeper's own lines and days: what is kept, what is refused, what is quarantined.
#include "core/actions/health/findings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/health/tables.h"
#include "core/places/health/contact_trace.h"
#include "core/places/health/mite_lines.h"
#include "core/places/questions/questions.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using ::testing::Contains;
using ::testing::IsEmpty;

class Found : public test::DeedsTest {
  protected:
    void SetUp() override {
        season.onChange([this](const Change& change) {
            for (const Question& question : questionsAfter(season.read(), change, clock.today())) {
                asked.emplace_back(key(question.asked));
                said += question.says;
            }
        });
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"})");
        asked.clear();
    }
    static std::string finding(const char* more, const char* on = "2027-06-09") {
        return R"({"do":"record-finding","on":")" + std::string(on) + R"(","hive":"H1")" + more +
               "}";
    }
    double line(const char* on, const char* yard = "Hill") const {
        const auto found =
            findNamed(file(), Yard::table, NameQuery{.name = yard, .on = test::day(on)});
        return miteLineOn(file(), Id<Yard>{*found}, test::day(on))->per100;
    }
    std::vector<std::string> asked;
    QString said;
};

TEST_F(Found, BadInputIsRefusedAndChangesNothing) {
    const std::vector<std::pair<std::string, std::string>> table{
        {finding(R"(,"what":"varroa","method":"wash","mites":301,"bees":300)"), "too_many mites"},
        {finding(R"(,"what":"varroa","method":"wash","mites":-1,"bees":300)"), "negative mites"},
        {finding(R"(,"what":"varroa","method":"wash","mites":0,"bees":0)"), "out_of_range bees"},
        {finding(R"(,"what":"varroa","method":"wash")"), "missing mites"},
        {finding(R"(,"what":"wax moth","method":"seen")"), "missing level"},
        {finding(R"(,"what":"varroa","method":"board","mites":20,"days_on_board":0)"),
         "out_of_range days_on_board"},
        {finding(R"(,"what":"varroa","method":"wash","mites":2,"days_on_board":5)"),
         "contradiction days_on_board"},
        {finding(R"(,"what":"varroa","method":"drone brood","mites":20,"cells":10)"),
         "too_many mites"},
        {finding(R"(,"what":"varroa","method":"wash","mites":2,"cells":10)"),
         "contradiction cells"},
        {finding(R"(,"what":"bears","method":"seen","level":"few")"), "not_a_choice what"},
        {finding(R"(,"what":"varroa","method":"wash","mites":2)", "2027-03-01"),
         "before_it_began on"},
        {R"({"do":"set-mite-line","on":"2027-06-01","phase":"peak","per_100":0})",
         "out_of_range per_100"},
        {R"({"do":"set-mite-line","on":"2027-06-01","phase":"peak","per_100":101})",
         "out_of_range per_100"},
        {R"({"do":"set-mite-line","on":"2027-06-01","phase":"summer","per_100":2})",
         "not_a_choice phase"},
        {R"({"do":"set-phase-day","on":"2027-06-01","phase":"peak","month":2,"day_of_month":30})",
         "not_a_day day_of_month"},
        {R"({"do":"set-phase-day","on":"2027-06-01","phase":"peak","month":-1,"day_of_month":3})",
         "negative month"},
        {R"({"do":"set-phase-day","on":"2027-06-01","phase":"peak","month":13,"day_of_month":3})",
         "not_a_day day_of_month"},
        {R"({"do":"choose-tables","on":"2027-06-01"})", "missing lines_edition"},
        {R"({"do":"choose-tables","on":"2027-06-01","lines_edition":"newest"})",
         "not_found lines_edition"},
        {R"({"do":"choose-tables","on":"2027-06-01","lines_edition":"usual","lines_region":"US"})",
         "not_found lines_region"},
        {R"({"do":"choose-tables","on":"2027-06-01","medicines_region":"Mars"})",
         "not_found medicines_region"},
    };
    for (const auto& [line, refused] : table) EXPECT_EQ(outcome(line), refused) << line;
    EXPECT_THAT(file().all<Finding>(), IsEmpty());
}

TEST_F(Found, SuspectedBroodDiseaseQuarantinesAndSaysToReport) {
    EXPECT_EQ(outcome(finding(
                  R"(,"what":"brood disease suspected","method":"seen","ropes":true,"box":"D1")")),
              "kept");
    EXPECT_THAT(asked, Contains("trace_contacts"));
    EXPECT_TRUE(said.contains(QStringLiteral("inspector"))) << said.toStdString();
    EXPECT_EQ(suspectedHives(file(), test::day("2027-06-09")).size(), 1U);
    const std::size_t holds = file().all<Hold>().size();
    EXPECT_EQ(holds, 2U) << "colony and box";
    // Found again it is held already; nothing to say is enough to suspect.
    done(finding(R"(,"what":"brood disease suspected","method":"seen")", "2027-06-10"));
    EXPECT_EQ(file().all<Hold>().size(), holds);
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(suspectedHives(file(), test::day("2027-06-09")), IsEmpty());
    // The same signs under another name are asked about, and hold nothing.
    asked.clear();
    done(finding(R"(,"what":"other","method":"seen","scale_sticks":true)"));
    EXPECT_THAT(asked, testing::ElementsAre("signs_to_report"));
    EXPECT_THAT(file().all<Hold>(), IsEmpty());
}

TEST_F(Found, ACountMistypedIsAmended) {
    done(finding(R"(,"what":"varroa","method":"wash","mites":4,"bees":300)"));
    const auto amend = [&](const char* set) {
        return outcome(
            R"({"do":"amend","on":"2027-06-10","finding":{"finding":"2027-06-09","hive":"H1"},"set":)" +
            std::string(set) + R"(,"why":"miscounted"})");
    };
    EXPECT_EQ(amend(R"({"mites":400})"), "too_many set.mites");
    EXPECT_EQ(amend(R"({"what":"other"})"), "fixed set.what");
    EXPECT_EQ(amend(R"({"on_day":"2027-03-01"})"), "before_it_began set.on_day");
    EXPECT_EQ(amend(R"({"mites":6})"), "kept");
    EXPECT_EQ(file().all<Finding>().front().mites->value, Count(6));
}

TEST_F(Found, TheNearestLineOfTheKeeperCounts) {
    // The usual table: 3 at the peak, 2 while colonies shrink.
    EXPECT_DOUBLE_EQ(line("2027-06-09"), 3);
    EXPECT_DOUBLE_EQ(line("2027-08-10"), 2);
    EXPECT_DOUBLE_EQ(line("2027-12-10"), 1);
    done(R"({"do":"choose-tables","on":"2027-06-01","lines_edition":"kept low"})");
    EXPECT_DOUBLE_EQ(line("2027-05-31"), 3);
    EXPECT_DOUBLE_EQ(line("2027-06-09"), 2);
    done(R"({"do":"set-constant","on":"2027-06-01","constant":"mite_line_per_100","value":2.5})");
    EXPECT_DOUBLE_EQ(line("2027-06-09"), 2.5);
    done(R"({"do":"set-mite-line","on":"2027-06-01","phase":"peak","per_100":1.5})");
    EXPECT_DOUBLE_EQ(line("2027-06-09"), 1.5);
    EXPECT_DOUBLE_EQ(line("2027-08-10"), 2.5);
    done(R"({"do":"set-mite-line","on":"2027-06-01","phase":"peak","per_100":4,"yard":"Creek"})");
    EXPECT_DOUBLE_EQ(line("2027-06-09"), 1.5);
    EXPECT_DOUBLE_EQ(line("2027-06-09", "Creek"), 4);
    const auto amended = outcome(
        R"({"do":"amend","on":"2027-06-10","mite_line":"#1","set":{"per_100":0},"why":"x"})");
    EXPECT_EQ(amended, "out_of_range set.per_100");
}

TEST_F(Found, AnOwnDayBeginsThePhase) {
    EXPECT_EQ(phaseOn(file(), {}, test::day("2027-07-20")).phase, SeasonPhase::Peak);
    done(
        R"({"do":"set-phase-day","on":"2027-01-01","phase":"decrease","month":7,"day_of_month":15,"source":"lime ends"})");
    const PhaseInForce own = phaseOn(file(), {}, test::day("2027-07-20"));
    EXPECT_EQ(own.phase, SeasonPhase::Decrease);
    EXPECT_TRUE(own.own);
    EXPECT_EQ(own.source, "lime ends");
    EXPECT_EQ(
        outcome(
            R"({"do":"set-phase-day","on":"2027-01-01","phase":"peak","month":7,"day_of_month":15})"),
        "contradiction day_of_month");
    EXPECT_EQ(phaseOn(file(), {}, test::day("2026-07-20")).phase, SeasonPhase::Peak)
        << "not in force yet";
}

}  // namespace
}  // namespace combwright
