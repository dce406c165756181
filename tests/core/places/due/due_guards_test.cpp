// What is due never says against a label or a quarantine, nor opens what must stay shut.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/due/due_list.h"
#include "core/places/health/treatments.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/pull/pull_sheet.h"
#include "core/places/yard/kit_list.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// Three hives that want a box on 2 June; strips whose label wants supers off and 14 days to wait.
class DueGuards : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-10-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2 10 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H3","boxes":"deep D3 10 drawn, x","origin":"overwintered"}
{"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"M1","count":2}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","quantity":10,"unit":"strips","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14}
{"do":"write-line","on":"2027-06-01","hive":"H1","line":"b5 s3"}
{"do":"write-line","on":"2027-06-01","hive":"H2","line":"b5 s3"}
{"do":"write-line","on":"2027-06-01","hive":"H3","line":"b5 s3"})");
    }
    std::vector<DueItem> due(const char* mark, const char* on) const {
        std::vector<DueItem> items;
        for (const DueItem* item : list(on).items())
            if (item->hive == hive(mark)) items.push_back(*item);
        return items;
    }
    const DueList& list(const char* on) const { return m_list = dueList(file(), day(on)); }
    std::vector<std::string> does(const char* mark, const char* on) const {
        std::vector<std::string> all;
        for (const DueItem& item : due(mark, on)) all.push_back(dueDoText(item).toStdString());
        return all;
    }
    std::vector<std::string> whys(const char* mark, const char* on) const {
        std::vector<std::string> all;
        for (const DueItem& item : due(mark, on)) all.push_back(dueWhyText(item).toStdString());
        return all;
    }
    std::vector<std::string> kitHives(const char* item, const char* on) const {
        for (const KitLine& each : kitList(file(), Id<Yard>{1}, day(on)).lines)
            if (each.item == item) return each.hives;
        return {};
    }
    QString medicines(const char* on) const {
        return pageText(treatmentsPage(file(), {}, day(on), {}));
    }

  private:
    mutable DueList m_list;
};

TEST_F(DueGuards, NoBoxIsAskedForWhereTheLabelSaysOff) {
    EXPECT_THAT(does("H1", "2027-06-02"), Contains("give a box"));
    EXPECT_THAT(kitHives("super", "2027-06-02"), Contains("H1"));
    done(R"({"do":"treat","on":"2027-06-02","medicine":"Strips","hives":"H1","amount":2})");
    EXPECT_THAT(does("H1", "2027-06-02"), Not(Contains("give a box")));
    EXPECT_THAT(kitHives("super", "2027-06-02"), testing::ElementsAre("H2", "H3"));
    // Out, it waits; after the label's days it may have one again.
    done(R"({"do":"take-out-medicine","on":"2027-06-03","hives":"H1"})");
    EXPECT_THAT(does("H1", "2027-06-16"), Not(Contains("give a box")));
    EXPECT_THAT(does("H1", "2027-06-17"), Contains("give a box"));
}

TEST_F(DueGuards, AHiveUnderSuspicionIsLeftAndReported) {
    done(
        R"({"do":"hold-back","on":"2027-06-02","reason":"suspected disease","hive":"H2"}
{"do":"hold-back","on":"2027-06-02","reason":"contact","hive":"H3"})");
    EXPECT_THAT(does("H2", "2027-06-09"), testing::ElementsAre("leave it as it is: report"));
    EXPECT_THAT(whys("H2", "2027-06-09"),
                testing::ElementsAre(HasSubstr("call your apiary inspector")));
    const auto contact = does("H3", "2027-06-09");
    EXPECT_THAT(contact, Contains("leave it as it is: in contact with disease"));
    EXPECT_THAT(contact, Contains("look for swarm cells"));
    EXPECT_THAT(contact, Not(Contains("give a box")));
    EXPECT_THAT(kitHives("super", "2027-06-09"), testing::ElementsAre("H1"));
    // Nobody can quiet it; lifted, it is gone.
    done(R"({"do":"quiet-rule","on":"2027-06-02","rule":"look","yard":"Hill","reason":"not now"})");
    EXPECT_THAT(does("H2", "2027-06-09"), Contains("leave it as it is: report"));
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(does("H2", "2027-06-09"), Contains("look for swarm cells"));
}

TEST_F(DueGuards, ASuperOnTooEarlyIsSaidUntilItIsAnswered) {
    done(R"({"do":"treat","on":"2027-06-02","medicine":"Strips","hives":"H1","amount":2}
{"do":"take-out-medicine","on":"2027-06-20","hives":"H1"}
{"do":"move-box","on":"2027-06-25","box":"M1","to":"on hive","hive":"H1"})");
    const auto first = "M1 went on Fri 25 Jun, before Sun 4 Jul, the first day after Strips";
    for (const char* on : {"2027-06-25", "2027-07-20", "2027-09-20"}) {
        EXPECT_THAT(whys("H1", on), Contains(HasSubstr(first))) << on;
        EXPECT_TRUE(medicines(on).contains(QStringLiteral("M1 went on H1"))) << on;
    }
    EXPECT_THAT(whys("H1", "2027-06-24"), Not(Contains(HasSubstr("M1"))));
    PullAsked asked;
    asked.yards = {Id<Yard>{1}};
    asked.forDay = day("2027-07-20");
    asked.limits = startingLimits(file(), day("2027-07-20"));
    const PullInput pull = pullInput(file(), day("2027-07-20"), asked);
    ASSERT_FALSE(pull.yards.empty());
    ASSERT_EQ(pull.yards[0].hives[0].boxes.size(), 1U);
    EXPECT_TRUE(pull.yards[0].hives[0].boxes[0].refused());
    // Held back, or off the hive, it is answered.
    done(R"({"do":"hold-back","on":"2027-07-20","reason":"treated while on","box":"M1"})");
    EXPECT_THAT(whys("H1", "2027-07-20"), Not(Contains(HasSubstr("M1"))));
    ASSERT_TRUE(season.undo());
    done(R"({"do":"move-box","on":"2027-07-20","box":"M1","to":"waiting"})");
    EXPECT_THAT(whys("H1", "2027-07-20"), Not(Contains(HasSubstr("M1"))));
    // One put on when supers might go on again was never too early.
    done(R"({"do":"move-box","on":"2027-07-21","box":"M2","to":"on hive","hive":"H1"})");
    EXPECT_THAT(supersTooEarly(file(), hive("H1"), day("2027-07-21")), IsEmpty());
}

TEST_F(DueGuards, WhatSupersWaitForIsSaidBeforeAndAfterItIsOut) {
    done(R"({"do":"treat","on":"2027-06-02","medicine":"Strips","hives":"H1","amount":2})");
    EXPECT_TRUE(medicines("2027-06-10").contains(QStringLiteral("28 Jul 2027 at the earliest")))
        << medicines("2027-06-10").toStdString();
    done(R"({"do":"take-out-medicine","on":"2027-06-20","hives":"H1"})");
    EXPECT_TRUE(medicines("2027-06-21").contains(QStringLiteral("supers from Sun 4 Jul 2027")));
    EXPECT_EQ(waitingTreatments(file(), {}, day("2027-07-03")).size(), 1U);
    EXPECT_THAT(waitingTreatments(file(), {}, day("2027-07-04")), IsEmpty());
}

TEST_F(DueGuards, AHiveLeftShutIsNotOpenedForAnythingElse) {
    done(
        R"({"do":"record-finding","on":"2027-06-01","hive":"H1","what":"varroa","method":"wash","mites":1,"bees":300}
{"do":"write-line","on":"2027-06-10","hive":"H1","line":"qc2c left1 b5 s3"})");
    std::optional<Day> shut;
    for (const DueItem& item : due("H1", "2027-06-11"))
        if (item.leaveShut) shut = std::max(shut.value_or(item.from), item.from);
    ASSERT_TRUE(shut);
    int samples = 0;
    for (const DueItem& item : due("H1", "2027-06-11")) {
        if (item.rule != DueRule::SampleAgain && item.rule != DueRule::Sample) continue;
        ++samples;
        EXPECT_GE(item.from, *shut) << item.id;
        EXPECT_LT(item.since + days(30), *shut) << "else it would have been later anyway";
    }
    EXPECT_EQ(samples, 1);
}

TEST_F(DueGuards, TheKitListTakesWhatAllThatIsDueTakes) {
    done(
        R"({"do":"record-finding","on":"2027-04-20","hive":"H1","what":"varroa","method":"wash","mites":1,"bees":300})");
    EXPECT_THAT(kitHives("wash jar", "2027-06-02"), testing::ElementsAre("H1"));
    for (const DueTrip& trip : list("2027-06-02").trips) {
        if (trip.group != DueGroup::Today || !trip.isTrip()) continue;
        for (const DueKit& each : trip.take)
            EXPECT_THAT(kitHives(each.item.c_str(), "2027-06-02"), Not(IsEmpty())) << each.item;
    }
    done(
        R"({"do":"quiet-rule","on":"2027-06-01","rule":"sample again","hive":"H1","reason":"not now"})");
    EXPECT_THAT(kitHives("wash jar", "2027-06-02"), IsEmpty());
}

}  // namespace
}  // namespace combwright
