// What a kept plan holds and refuses, and the crop of a year noted for its limits.
#include <gtest/gtest.h>

#include "core/actions/pull/plan.h"
#include "tests/support/pull_planned.h"

namespace combwright {
namespace {

class PlanKept : public test::PullPlanned {
  protected:
    static std::string keeping(const std::string& more = {}, const char* forDay = "2027-08-06") {
        return R"({"do":"keep-plan","on":"2027-07-29","for_day":")" + std::string(forDay) +
               R"(","winter_need_g":16000,"feed_up_to_g":0,"min_capped_share":0.75)" + more + "}";
    }
    std::optional<PullLine> lineOf(const char* mark) const {
        return file().first<PullLine>({is("box", box(mark).id)});
    }
};

TEST_F(PlanKept, HoldsEveryBoxWithWhatWasExpectedOfIt) {
    done(keeping(R"(,"force":"M03 take, M07 leave, M10 look first","note":"with Anna")"));
    const auto plans = file().all<PullPlan>();
    ASSERT_EQ(plans.size(), 1U);
    EXPECT_EQ(plans[0].forDay, test::day("2027-08-06"));
    EXPECT_EQ(plans[0].limits, test::pullLimits());
    EXPECT_EQ(plans[0].note, "with Anna");
    EXPECT_EQ(file().all<PullLine>().size(), 10U);

    const auto first = lineOf("M01");
    EXPECT_EQ(first->verdict, PullVerdict::Take);
    EXPECT_EQ(first->hive, hive("H1"));
    EXPECT_EQ(first->why, "");
    EXPECT_EQ(first->honey->value, Mass::grams(12960));
    EXPECT_EQ(first->honey->how, How::ByEye);
    EXPECT_EQ(first->spread, Mass::grams(1997)) << "√((9 × 216)² + (3 × 151.64)²) = 1996.5";
    EXPECT_FALSE(first->forced);

    EXPECT_EQ(lineOf("M02")->why, "not capped enough");
    EXPECT_EQ(lineOf("M03")->verdict, PullVerdict::Take);
    EXPECT_EQ(lineOf("M03")->forced, true);
    EXPECT_EQ(lineOf("M07")->verdict, PullVerdict::Leave);
    EXPECT_EQ(lineOf("M07")->forced, true);
    EXPECT_EQ(lineOf("M10")->verdict, PullVerdict::LookFirst);
    EXPECT_EQ(lineOf("M06")->verdict, PullVerdict::LookFirst);
    EXPECT_FALSE(lineOf("M06")->honey) << "unknown is not nought";
    EXPECT_FALSE(lineOf("M06")->spread);
}

TEST_F(PlanKept, TheSameLineGivesTheSamePlan) {
    done(keeping(R"(,"yards":"Hill, Creek","force":"M02 take")"));
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(copy);
    playAll(*copy, scriptOf(season));
    EXPECT_EQ(copy->dump(), season.dump());
    ASSERT_TRUE(season.undo());
    EXPECT_TRUE(file().all<PullPlan>().empty());
    EXPECT_TRUE(file().all<PullLine>().empty());
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(copy->dump(), season.dump());
}

TEST_F(PlanKept, OfSomeYardsOnly) {
    done(keeping(R"(,"yards":"Creek")"));
    EXPECT_EQ(file().all<PullLine>().size(), 4U);
    EXPECT_FALSE(lineOf("M01"));
}

TEST_F(PlanKept, GivesTheNextPlanItsLimits) {
    EXPECT_EQ(startingLimits(file(), clock.today()), test::pullLimits()) << "the file's constants";
    done(
        R"({"do":"keep-plan","on":"2027-07-29","for_day":"2027-08-06","winter_need_g":18000,"boxes":5})");
    PlanLimits kept;
    kept.winterNeed = Mass::grams(18000);
    kept.boxes = Count(5);
    EXPECT_EQ(startingLimits(file(), clock.today()), kept);
}

TEST_F(PlanKept, RefusesWhatCannotBeMeant) {
    EXPECT_EQ(outcome(keeping({}, "2027-07-28")), "contradiction for_day");
    EXPECT_EQ(outcome(keeping({}, "2027-07-29")), "kept") << "for today";
    EXPECT_EQ(code(keeping(R"(,"yards":"Hill, Nowhere")")), "not_found");
    EXPECT_EQ(outcome(keeping(R"(,"force":"M01 perhaps")")), "not_a_choice force");
    EXPECT_EQ(outcome(keeping(R"(,"force":"M01")")), "not_a_choice force");
    EXPECT_EQ(outcome(keeping(R"(,"force":"M77 take")")), "not_found force");
    EXPECT_EQ(outcome(keeping(R"(,"force":"#777 take")")), "not_found force");
    EXPECT_EQ(outcome(keeping(R"(,"force":"#x take")")), "not_found force");
    EXPECT_EQ(outcome(keeping(R"(,"boxes":-1)")), "negative boxes");
    EXPECT_EQ(outcome(keeping(R"(,"max_water_percent":174)")), "out_of_range max_water_percent");
}

TEST_F(PlanKept, AYardNobodyKnowsIsSaidOfTheYards) {
    EXPECT_EQ(outcome(keeping(R"(,"yards":"Hill, Nowhere")")), "not_found yards");
}

TEST_F(PlanKept, ADecisionAboutABoxOutsideThePlanIsNotLost) {
    done(R"({"do":"add-boxes","on":"2027-07-01","kind":"medium","first_mark":"S1"})");
    EXPECT_EQ(outcome(keeping(R"(,"force":"S1 take")")), "not_found force") << "it is in no hive";
    EXPECT_EQ(outcome(keeping(R"(,"yards":"Creek","force":"M01 take")")), "not_found force");
    EXPECT_EQ(outcome(keeping(R"(,"force":"M01 take, M01 leave")")), "duplicate force");
}

TEST_F(PlanKept, WhatIsHeldBackNeedsAReason) {
    EXPECT_EQ(outcome(keeping(R"(,"force":"M04 take")")), "missing why_take_held");
    EXPECT_EQ(outcome(keeping(R"x(,"force":"M10 take ()")x")), "missing why_take_held");
    EXPECT_EQ(outcome(keeping(R"(,"force":"M04 leave")")), "kept") << "leaving needs none";
    EXPECT_EQ(outcome(keeping(R"x(,"force":"M04 take (no strip near it, asked), M01 leave")x")),
              "kept");
    const PullPlan last = file().all<PullPlan>().back();
    const auto line = file().first<PullLine>({is("plan", last.id), is("box", box("M04").id)});
    EXPECT_EQ(line->why, "no strip near it, asked") << "a comma within brackets parts nothing";
    EXPECT_EQ(line->forced, true);
    EXPECT_EQ(outcome(keeping(R"(,"force":"M04 take (never closed, M01 leave")")),
              "not_a_choice force");
}

TEST_F(PlanKept, IsFoundAgainUntilItsDayHasPassed) {
    EXPECT_FALSE(keptPull(file(), clock.today()));
    done(keeping(R"x(,"yards":"Hill","force":"M02 take, M04 take (asked)")x"));
    const auto kept = keptPull(file(), test::day("2027-08-06"));
    ASSERT_TRUE(kept);
    EXPECT_EQ(kept->taken, 3);
    EXPECT_NEAR(kept->honeyG, 12960 + 11520 + 13680, 1);
    EXPECT_EQ(kept->asked.limits, test::pullLimits());
    EXPECT_EQ(kept->asked.yards.size(), 1U);
    EXPECT_EQ(kept->asked.forced.at(box("M04").id.number),
              ForcedVerdict(PullVerdict::Take, "asked"));
    EXPECT_FALSE(keptPull(file(), test::day("2027-08-07"))) << "that day has passed";

    const auto again = [&] {
        return reckonPull(
            pullInput(file(), clock.today(), startingQuestion(file(), clock.today())));
    };
    EXPECT_TRUE(asKept(again(), *kept));
    done(
        R"({"do":"look-box","on":"2027-07-29","box":"M01","contents":"9 drawn; 8 capped, 80 % full"})");
    EXPECT_FALSE(asKept(again(), *kept)) << "the answer has moved";
    done(R"({"do":"move-box","on":"2027-07-29","box":"M02","to":"storeroom"})");
    EXPECT_FALSE(keptPull(file(), clock.today())->asked.forced.contains(box("M02").id.number))
        << "a box that is gone is past deciding";
}

TEST_F(PlanKept, AYardMayBeGivenByItsNumber) {
    EXPECT_EQ(outcome(keeping(R"(,"yards":"#2")")), "kept");
    EXPECT_EQ(file().all<PullLine>().size(), 4U);
    EXPECT_EQ(outcome(keeping(R"(,"yards":"#9")")), "not_found yards");
}

class CropNoted : public test::DeedsTest {};

TEST_F(CropNoted, NeedsAMassAndAYearThatCanBe) {
    const auto noting = [](const char* more) {
        return R"({"do":"note-crop","on":"2027-04-15")" + std::string(more) + "}";
    };
    const std::string mass = R"(,"mass_g":21000,"mass_how":"weighed")";
    EXPECT_EQ(outcome(noting(R"(,"year":2026)")), "missing mass_g");
    EXPECT_EQ(outcome(noting((mass + R"(,"year":1899)").c_str())), "out_of_range year");
    EXPECT_EQ(outcome(noting((mass + R"(,"year":2201)").c_str())), "out_of_range year");
    EXPECT_EQ(outcome(noting(R"(,"mass_g":-1,"mass_how":"weighed")")), "negative mass_g");
    EXPECT_EQ(outcome(noting(mass.c_str())), "kept");
    EXPECT_EQ(file().all<CropNote>().back().year, Count(2027)) << "the day's year";
    EXPECT_EQ(outcome(noting((mass + R"(,"year":2026)").c_str())), "kept");
}

}  // namespace
}  // namespace combwright
