// Amending a run and what went through it: a closed run is revised, says so, and must still share
// out.
#include <gtest/gtest.h>

#include "core/places/honey_room/run_balance.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/harvest_summary_page.h"
#include "tests/support/amendments.h"
#include "tests/support/hill_and_creek.h"

namespace combwright {
namespace {

class AmendedRun : public test::Amended {
  protected:
    void SetUp() override {
        done(test::hillAndCreekBefore());
        done(test::runScript("27-2", "Hill", "2027-08-01", test::hillBoxes, 91500, 11000));
    }
    static std::string run(const std::string& set) { return amend(R"("run":"27-2")", set); }
    static std::string weighed(const char* box, const std::string& set) {
        return amend(
            R"("extraction_box":{"extraction_box":")" + std::string(box) + R"(","run":"27-2"})",
            set);
    }
    RunBalance balance() const { return *runBalance(file(), {1}); }
    Mass sum() const {
        Mass all;
        for (const RunShare& share : balance().shares) all += share.mass;
        return all;
    }
    QString summary() const {
        return pageText(harvestSummaryPage(file(), seasonYield(file(), 2027), clock.today()));
    }
};

TEST_F(AmendedRun, ABucketOfAClosedRunRevisesIt) {
    EXPECT_FALSE(balance().revised);
    EXPECT_FALSE(summary().contains(QStringLiteral("revised")));
    done(amend(R"("bucket":{"bucket":"all","run":"27-2"})", R"("net_g":92000)"));
    EXPECT_TRUE(balance().revised);
    EXPECT_EQ(sum(), Mass::grams(92000));
    EXPECT_TRUE(summary().contains(QStringLiteral("revised")));
    Mass atClosing;
    for (const ClosingShare& share : file().all<ClosingShare>()) atClosing += share.mass;
    EXPECT_EQ(atClosing, Mass::grams(91500)) << "the figures at closing stay";
    ASSERT_TRUE(season.undo());
    EXPECT_FALSE(balance().revised);
    ASSERT_TRUE(season.redo());
    expectReplays();
    expectClean();
}

TEST_F(AmendedRun, ABoxWeightRevisesAndKeepsItsRules) {
    EXPECT_EQ(outcome(weighed("H1a", R"("gross_g":22400)")), "kept");
    EXPECT_TRUE(balance().revised);
    EXPECT_EQ(sum(), Mass::grams(91500)) << "shared out anew, to the gram";
    EXPECT_EQ(outcome(weighed("H1a", R"("gross_g":60001)")), "out_of_range set.gross_g");
    EXPECT_EQ(outcome(weighed("H1a", R"("wet_g":22401)")), "contradiction set.wet_g");
    EXPECT_EQ(outcome(weighed("H1a", R"("hive":"H2")")), "contradiction set.hive")
        << "the box stood on H1";
    EXPECT_EQ(outcome(weighed("tag lost", R"("hive":"H2")")), "other_action set.hive");
    EXPECT_EQ(refusalValue(weighed("tag lost", R"("hive":"H2")"), "action"), "name-lost-box");
    EXPECT_EQ(outcome(weighed("H1a", R"("box":"H2a")")), "fixed set.box");
    EXPECT_EQ(outcome(weighed("H1a", R"("frames":8)")), "kept");
    EXPECT_EQ(outcome(weighed("tag lost", R"("known_as":"")")), "missing set.known_as")
        << "then nothing would be known of it";
    EXPECT_EQ(outcome(weighed("tag lost", R"("known_as":"red lid")")), "kept");
    expectReplays();
}

TEST_F(AmendedRun, AClosedRunMustStillShareOut) {
    EXPECT_EQ(outcome(weighed("H1a", R"("gross_g":null)")), "kept") << "one is found by difference";
    EXPECT_EQ(outcome(weighed("H1b", R"("gross_g":null)")), "second_unknown set.gross_g");
    EXPECT_EQ(outcome(weighed("H1b", R"("frame_kind":"10-frame medium")")),
              "not_found set.frame_kind")
        << "frames are no boxes";
    EXPECT_EQ(outcome(weighed("H1b", R"("frame_kind":"LANG-F-MED")")), "kept");
}

TEST_F(AmendedRun, KeepsNameAndDaysInOrder) {
    done(R"({"do":"open-run","on":"2027-08-05","name":"27-3"})");
    EXPECT_EQ(outcome(run(R"("name":"27-3")")), "taken set.name");
    EXPECT_EQ(outcome(run(R"("name":"27-2a")")), "kept");
    EXPECT_EQ(outcome(amend(R"("run":"27-3")", R"("closed":"2027-08-06")")),
              "other_action set.closed");
    const auto again = [](const std::string& set) { return amend(R"("run":"27-2a")", set); };
    EXPECT_EQ(outcome(again(R"("closed":null)")), "fixed set.closed");
    EXPECT_EQ(outcome(again(R"("closed":"2027-07-31")")), "contradiction set.closed");
    EXPECT_EQ(outcome(again(R"("on_day":"2027-08-02")")), "contradiction set.on_day");
    EXPECT_EQ(outcome(again(R"("on_day":"2027-08-02","closed":"2027-08-03")")), "kept");
    EXPECT_EQ(outcome(again(R"("on_day":"2027-02-30")")), "not_a_day set.on_day");
    EXPECT_EQ(outcome(again(R"("cappings_g":11500,"room_c":24.5,"damp_share":0.5)")), "kept");
    EXPECT_EQ(outcome(again(R"("cappings_g":1000001)")), "out_of_range set.cappings_g");
    EXPECT_EQ(outcome(again(R"("scrapings_g":1000001)")), "out_of_range set.scrapings_g");
    EXPECT_EQ(
        outcome(R"({"do":"weigh-cappings","on":"2027-08-05","run":"27-3","scrapings_g":1000001})"),
        "out_of_range scrapings_g")
        << "the same rule when it is weighed first";
    EXPECT_EQ(outcome(again(R"("yard":"Creek","note":"a note")")), "kept");
    EXPECT_EQ(file().all<Extraction>().front().yard, file().all<Yard>().back().id);
    EXPECT_EQ(outcome(again(R"("yard":"Lake")")), "not_found set.yard");
    EXPECT_EQ(outcome(again(R"("yard":"#9")")), "not_found set.yard");
    EXPECT_EQ(outcome(again(R"("begun":"2027-08-01T10:00:00Z","ended":"2027-08-01T09:00:00Z")")),
              "contradiction set.ended");
    expectReplays();
}

TEST_F(AmendedRun, ALoadBelongsAfterItsRunsDay) {
    done(
        R"({"do":"spin-load","on":"2027-08-01","run":"27-2","boxes":"H1a 9","spun_min":15,"rpm":280})");
    const auto load = [](const std::string& set) { return amend(R"("spin_load":"#1")", set); };
    EXPECT_EQ(outcome(load(R"("spun_min":18,"ran":"walked","rpm":null)")), "kept");
    EXPECT_EQ(only<SpinLoad>().minutes, Minutes(18));
    EXPECT_FALSE(only<SpinLoad>().rpm);
    EXPECT_EQ(outcome(load(R"("on_day":"2027-07-31")")), "before_it_began set.on_day");
    EXPECT_EQ(outcome(load(R"("number":2)")), "fixed set.number");
    EXPECT_EQ(outcome(run(R"("on_day":"2027-08-02","closed":"2027-08-02")")),
              "contradiction set.on_day")
        << "a load was spun before";
}

TEST_F(AmendedRun, ACropStaysACrop) {
    done(R"({"do":"note-crop","on":"2027-01-02","year":2025,"yard":"Hill","mass_g":30000})");
    const auto crop = [](const std::string& set) { return amend(R"("crop_note":"#1")", set); };
    EXPECT_EQ(outcome(crop(R"("mass_g":33000,"yard":null,"hive":"H1")")), "kept");
    EXPECT_FALSE(only<CropNote>().yard);
    EXPECT_EQ(only<CropNote>().hive, hive("H1"));
    EXPECT_EQ(outcome(crop(R"("mass_g":null)")), "missing set.mass_g");
    EXPECT_EQ(outcome(crop(R"("year":1899)")), "out_of_range set.year");
    EXPECT_EQ(outcome(crop(R"("year":null)")), "missing set.year");
}

TEST_F(AmendedRun, APlanKeepsTheLimitsItWasMadeWith) {
    done(R"({"do":"keep-plan","on":"2027-07-20","for_day":"2027-07-24","winter_need_g":15000})");
    const auto plan = [](const std::string& set) { return amend(R"("pull_plan":"#1")", set); };
    EXPECT_EQ(outcome(plan(R"("winter_need_g":16000)")), "other_action set.winter_need_g");
    EXPECT_EQ(outcome(plan(R"("for_day":"2027-07-19")")), "contradiction set.for_day");
    EXPECT_EQ(outcome(plan(R"("for_day":"2027-07-25","note":"rain")")), "kept");
    EXPECT_EQ(only<PullPlan>().limits.winterNeed, Mass::grams(15000));
}

}  // namespace
}  // namespace combwright
