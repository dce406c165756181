// Comb jars carry what their hive went through, on their page and on the bench.
#include "core/places/storeroom/comb_projects.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/pages/page_text.h"
#include "core/places/pages/wax_bench/wax_pages.h"
#include "core/places/pages/wax_bench/wax_words.h"
#include "core/places/pages/yard/yard_story_text.h"
#include "core/places/yard/yard_story.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;
using testing::HasSubstr;
using testing::Not;

class CombProjects : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x","origin":"overwintered"}
{"do":"add-goods","on":"2027-05-01","name":"comb jar","what":"comb honey","price":14}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","quantity":10,"unit":"strips","supers":"off","wait_days":14}
{"do":"buy-medicine","on":"2027-04-01","name":"Acid","quantity":10,"unit":"ml","supers":"may stay"}
{"do":"start-project","on":"2027-05-01","name":"Jars","pieces":8,"hive":"H1","goods_kind":"comb jar"}
{"do":"work-project","on":"2027-06-01","project":"Jars","project_work":"put on"})");
    }
    CombProject jars(const char* on) const {
        const auto all = combProjects(file(), day(on));
        EXPECT_EQ(all.size(), 1U);
        return all.empty() ? CombProject{} : all.front();
    }
    std::string story(const char* on) const {
        std::string told;
        for (const StoryEntry& entry : hiveStory(file(), hive("H1"), day(on)))
            told += storySentence(entry).toStdString() + "\n";
        return told;
    }
    std::string page(const char* on) const {
        return pageText(combJarsPage(file(), day(on))).simplified().toStdString();
    }
};

TEST_F(CombProjects, StandInTheStoryOfTheirHive) {
    EXPECT_THAT(story("2027-06-02"), HasSubstr("Jars put on: 8 comb jars."));
    EXPECT_THAT(story("2027-05-30"), Not(HasSubstr("Jars")));
    done(R"({"do":"work-project","on":"2027-06-20","project":"Jars","project_work":"taken off"})");
    EXPECT_THAT(story("2027-06-21"), HasSubstr("Jars taken off."));
}

TEST_F(CombProjects, InfantCautionStandsOnTheirPage) {
    EXPECT_EQ(jars("2027-06-02").stage, ProjectStage::OnHive);
    EXPECT_EQ(jars("2027-06-02").goods, "comb jar");
    EXPECT_TRUE(jars("2027-06-02").forSale());
    EXPECT_THAT(page("2027-06-02"), HasSubstr("12 months"));
    EXPECT_THAT(page("2027-06-02"), Not(HasSubstr("treated while on")));
}

TEST_F(CombProjects, TreatedWhileOnFollowsThem) {
    done(R"({"do":"treat","on":"2027-06-10","hives":"H1","medicine":"Acid"})");
    EXPECT_TRUE(jars("2027-06-11").forSale()) << "its label lets supers stay";
    done(R"({"do":"treat","on":"2027-06-12","hives":"H1","medicine":"Strips"})");
    EXPECT_TRUE(jars("2027-06-11").forSale()) << "the day before";
    const CombProject comb = jars("2027-06-12");
    ASSERT_EQ(comb.treated.size(), 1U);
    EXPECT_FALSE(comb.forSale());
    EXPECT_THAT(projectCareText(comb).toStdString(), HasSubstr("Strips"));
    EXPECT_THAT(page("2027-06-12"), HasSubstr("treated while on"));
    EXPECT_THAT(pageText(waxBenchPage(file(), waxBench(file(), day("2027-06-12"))))
                    .simplified()
                    .toStdString(),
                HasSubstr("treated while on"));
}

// All built and most of them filled: the last at the edge seldom fills.
TEST_F(CombProjects, BuiltAndMostlyFilledTheyComeOff) {
    const auto look = [this](const char* on, const char* seen) {
        done(R"({"do":"look-at-project","on":")" + std::string(on) + R"(","project":"Jars",)" +
             seen + "}");
    };
    look("2027-06-08", R"("built":8,"filled_pieces":6)");
    EXPECT_FALSE(jars("2027-06-09").built) << "6 of 8 is below four fifths";
    look("2027-06-15", R"("built":7,"filled_pieces":7)");
    EXPECT_FALSE(jars("2027-06-16").built) << "one is not built";
    look("2027-06-17", R"("built":8,"filled_pieces":7)");
    EXPECT_TRUE(jars("2027-06-18").built);
}

TEST_F(CombProjects, WhatWentInAfterTheyCameOffDoesNot) {
    done(R"({"do":"work-project","on":"2027-06-20","project":"Jars","project_work":"taken off"}
{"do":"treat","on":"2027-06-25","hives":"H1","medicine":"Strips"})");
    EXPECT_TRUE(jars("2027-07-01").forSale());
}

TEST_F(CombProjects, QuarantineOfTheirHiveHoldsThem) {
    done(R"({"do":"work-project","on":"2027-06-20","project":"Jars","project_work":"taken off"}
{"do":"hold-back","on":"2027-06-22","hive":"H1","reason":"suspected disease"})");
    const CombProject comb = jars("2027-06-22");
    ASSERT_TRUE(comb.quarantine);
    EXPECT_FALSE(comb.forSale());
    EXPECT_THAT(page("2027-06-22"), HasSubstr("quarantined"));
}

}  // namespace
}  // namespace combwright
