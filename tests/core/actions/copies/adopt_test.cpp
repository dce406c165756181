// A what-if adopted: ordinary steps in the season, every rule asked again, and nothing at all where
// one of them does not go.
#include "core/actions/copies/adopt.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/honey/extraction.h"
#include "core/model/yard/visit.h"
#include "core/model/yard/yard.h"
#include "core/storage/audit.h"
#include "core/storage/what_if.h"
#include "tests/support/season_content.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class WhatIfAdopted : public test::SeasonTest {
  protected:
    void plan(std::string_view script) {
        season = std::make_unique<Season>(newSeason());
        playAll(*season,
                R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"})"
                "\n"
                R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep"})"
                "\n"
                R"({"do":"open-run","on":"2027-06-01","name":"R1"})"
                "\n"
                R"({"do":"fill-bucket","on":"2027-06-01","run":"R1","mark":"B1","net_g":12000})");
        ASSERT_TRUE(
            beginWhatIf(season->read().database(), path("plan.combwright"), "more", clock.today()));
        whatIf = std::make_unique<Season>(Season::open(path("plan.combwright"), clock));
        playAll(*whatIf, script);
    }
    std::unique_ptr<Season> season;
    std::unique_ptr<Season> whatIf;
};

TEST_F(WhatIfAdopted, BecomesOrdinarySteps) {
    plan(R"({"do":"add-hive","on":"2027-06-10","yard":"Hill","mark":"H2","boxes":"deep"})"
         "\n"
         R"({"do":"write-line","on":"2027-06-20","hive":"#2","line":"e"})"
         "\n"
         R"({"do":"add-yard","on":"2027-06-10","yard_name":"Wrong"})");
    ASSERT_TRUE(whatIf->undo());
    const auto tried = adoptWhatIf(*season, *whatIf, AdoptHow::Try);
    ASSERT_TRUE(tried);
    EXPECT_TRUE(tried->conflicts.empty());
    EXPECT_TRUE(tried->steps.empty());
    EXPECT_EQ(season->history().size(), 4U);

    const auto adopted = adoptWhatIf(*season, *whatIf, AdoptHow::Keep);
    ASSERT_TRUE(adopted);
    EXPECT_THAT(adopted->steps, testing::ElementsAre(5, 6));
    EXPECT_EQ(season->history(1).front().info.action, "write-line");
    EXPECT_EQ(test::contentOf(season->read()), test::contentOf(whatIf->read()));
    EXPECT_TRUE(audit(season->read()).empty());
    ASSERT_TRUE(season->undo());
    ASSERT_TRUE(season->undo());
    EXPECT_EQ(season->history().size(), 8U);
}

TEST_F(WhatIfAdopted, CallsWhatItMadeByItsNumberInTheSeason) {
    plan(R"({"do":"add-hive","on":"2027-06-10","yard":"Hill","mark":"P1","boxes":"deep"})"
         "\n"
         R"({"do":"write-line","on":"2027-06-20","hive":"#2","line":"e"})");
    // Meanwhile the season has a hive of that number.
    playAll(*season,
            R"({"do":"add-hive","on":"2027-06-08","yard":"Hill","mark":"H2","boxes":"deep"})");
    const auto adopted = adoptWhatIf(*season, *whatIf, AdoptHow::Keep);
    ASSERT_TRUE(adopted);
    for (const AdoptConflict& each : adopted->conflicts)
        ADD_FAILURE() << conflictText(season->read(), each).toStdString();
    const auto lines = season->read().all<Inspection>();
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(season->read().find(lines.front().hive)->mark.text(), "P1");
}

TEST_F(WhatIfAdopted, ListsWhatDoesNotGoAndChangesNothing) {
    plan(R"({"do":"add-hive","on":"2027-06-10","yard":"Hill","mark":"H2","boxes":"deep"})"
         "\n"
         R"({"do":"amend","on":"2027-06-10","bucket":{"bucket":"B1","run":"R1"},)"
         R"("set":{"net_g":12500},"why":"planned"})"
         "\n"
         R"({"do":"add-yard","on":"2027-06-10","yard_name":"Creek"})");
    playAll(*season,
            R"({"do":"add-hive","on":"2027-06-08","yard":"Hill","mark":"H2","boxes":"deep"})"
            "\n"
            R"({"do":"amend","on":"2027-06-09","bucket":{"bucket":"B1","run":"R1"},)"
            R"("set":{"net_g":12700},"why":"weighed again"})");
    const std::string before = season->dump();
    const auto adopted = adoptWhatIf(*season, *whatIf, AdoptHow::Keep);
    ASSERT_TRUE(adopted);
    ASSERT_EQ(adopted->conflicts.size(), 2U);
    EXPECT_EQ(adopted->conflicts[0].kind, AdoptConflict::Kind::Refused);
    EXPECT_EQ(adopted->conflicts[0].refusal.code, Code::Taken);
    EXPECT_EQ(adopted->conflicts[1].kind, AdoptConflict::Kind::ChangedSince);
    EXPECT_EQ(adopted->conflicts[1].field, "net_g");
    EXPECT_THAT(conflictText(season->read(), adopted->conflicts[1]).toStdString(), HasSubstr("B1"));
    EXPECT_TRUE(adopted->steps.empty());
    EXPECT_EQ(season->dump(), before);
    EXPECT_EQ(season->history().size(), 6U);
}

TEST_F(WhatIfAdopted, IsOfThisSeasonAndAWhatIf) {
    plan("");
    EXPECT_EQ(adoptWhatIf(*season, *season, AdoptHow::Keep).error().code, Code::NotFound);
    auto other = Season::create(path("other.combwright"), clock);
    ASSERT_TRUE(other);
    playAll(*other, R"({"do":"add-yard","on":"2027-04-02","yard_name":"Else"})");
    EXPECT_EQ(adoptWhatIf(*other, *whatIf, AdoptHow::Keep).error().code, Code::NotOfThis);
}

}  // namespace
}  // namespace combwright
