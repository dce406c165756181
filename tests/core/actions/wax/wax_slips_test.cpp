// Slips at the wax bench that cannot be: a mass above what there is, a time of another day, a mould
// of two volumes. They are refused, and a file that has one all the same is told by its audit.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/model/wax/hive_goods.h"
#include "core/storage/audit.h"
#include "core/storage/queries/goods_shelf.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class WaxSlips : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x","origin":"overwintered"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"add-goods","on":"2027-05-01","name":"skep","what":"candle","net_g":45}
{"do":"add-goods","on":"2027-05-01","name":"comb jar","what":"comb honey","price":14}
{"do":"gather-wax","on":"2027-08-09","name":"A","source":"cappings","state":"drained","runs":"27-1","raw_g":3400}
{"do":"cast-block","on":"2027-11-02","name":"L1","shade":"light","mass_g":2000}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47}
{"do":"start-project","on":"2027-05-20","name":"June jars","pieces":10,"goods_kind":"comb jar","hive":"H1"})");
    }
    std::string worked(const std::string& rest) {
        return outcome(R"({"do":"work-wax","on":"2027-11-03","batch":"A",)" + rest + "}");
    }
    std::string poured(const std::string& rest) {
        return outcome(R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps",)" + rest + "}");
    }
    std::string mould(const std::string& rest) {
        return outcome(R"({"do":"add-mould","on":"2027-10-01","name":"M","cavities":2,)" + rest +
                       "}");
    }
    std::string comb(const char* on, const std::string& rest) {
        return outcome(R"({"do":"work-project","on":")" + std::string(on) +
                       R"(","project":"June jars",)" + rest + "}");
    }
    std::string amended(const std::string& what) {
        return outcome(R"({"do":"amend","on":"2027-12-01",)" + what + R"(,"why":"misread"})");
    }
    std::int64_t jars() const {
        const auto id = findNamed(file(), GoodsKind::table,
                                  NameQuery{.name = "comb jar", .on = day("2027-12-20")});
        return goodsShelf(file(), *file().find(Id<GoodsKind>{*id}), day("2027-12-20")).left;
    }
};

TEST_F(WaxSlips, NoStepHasMoreOfABatchThanThereIs) {
    EXPECT_EQ(worked(R"("work":"dripped","came_out_g":13500)"), "too_many came_out_g");
    EXPECT_EQ(worked(R"("work":"melted","put_in_g":9000)"), "too_many put_in_g");
    EXPECT_EQ(worked(R"("work":"melted","put_in_g":3700)"), "kept") << "another pair of scales";
    EXPECT_EQ(amended(R"("wax_step":"#1","set":{"put_in_g":9000})"), "too_many set.put_in_g");
    EXPECT_EQ(amended(R"("wax_batch":"A","set":{"raw_g":2000})"), "too_many set.raw_g");
    expectClean();
}

// 3,400 g washed weigh 5,200 g with their water; what is strained then may weigh as much.
TEST_F(WaxSlips, WaterOfWashingCounts) {
    EXPECT_EQ(worked(R"("work":"washed","put_in_g":3400,"came_out_g":5200)"), "kept");
    EXPECT_EQ(worked(R"("work":"melted","put_in_g":5200,"came_out_g":1500)"), "kept");
    EXPECT_EQ(worked(R"("work":"strained","put_in_g":5800)"), "too_many put_in_g");
    EXPECT_EQ(amended(R"("wax_step":"#1","set":{"came_out_g":3000})"), "too_many set.put_in_g")
        << "then 5,200 g could not have been melted";
    expectClean();
}

TEST_F(WaxSlips, NoMoreComesBackThanWasPoured) {
    EXPECT_EQ(poured(R"("good":3,"failed":1,"blocks":"L1 180 g","returned_g":500)"),
              "too_many returned_g");
    EXPECT_EQ(poured(R"("good":3,"failed":1,"blocks":"L1 180 g","returned_g":60)"), "kept");
    EXPECT_EQ(amended(R"("pour":"#1","set":{"returned_g":500})"), "too_many set.returned_g");
    EXPECT_EQ(amended(R"("wax_use":"#1","set":{"mass_g":50})"), "too_many set.mass_g");
    expectClean();
}

TEST_F(WaxSlips, AmendingKeepsTheCavities) {
    ASSERT_EQ(poured(R"("good":4,"blocks":"L1")"), "kept");
    EXPECT_EQ(amended(R"("pour":"#1","set":{"good":50})"), "too_many set.good");
    EXPECT_EQ(amended(R"("pour":"#1","set":{"good":3,"failed":1})"), "kept");
    // Filled twice by what was written down first, it was filled twice.
    ASSERT_EQ(poured(R"("good":7,"cycles":2,"blocks":"L1")"), "kept");
    EXPECT_EQ(amended(R"("pour":"#2","set":{"good":8})"), "kept");
    EXPECT_EQ(amended(R"("pour":"#2","set":{"good":9})"), "too_many set.good");
}

// 20 × 60 mm hold 18.8 ml.
TEST_F(WaxSlips, AVolumeGoesWithItsSize) {
    EXPECT_EQ(mould(R"("volume_ml":400,"shape":"cylinder","diameter_mm":20,"height_mm":60)"),
              "contradiction volume_ml");
    EXPECT_EQ(mould(R"("volume_ml":8,"shape":"cylinder","diameter_mm":20,"height_mm":60)"),
              "contradiction volume_ml");
    EXPECT_EQ(mould(R"("volume_ml":20,"shape":"cylinder","diameter_mm":20,"height_mm":60)"),
              "kept");
    EXPECT_EQ(amended(R"("mould":"M","set":{"volume_ml":400})"), "contradiction set.volume_ml");
}

TEST_F(WaxSlips, AMouldNobodyKnowsTheVolumeOfIsNotPouredByReckoning) {
    ASSERT_EQ(mould(R"("goods_kind":"skep")"), "kept");
    const char* const reckoned =
        R"({"do":"pour-candles","on":"2027-11-15","mould":"M","good":2,"blocks":"L1"})";
    EXPECT_EQ(outcome(reckoned), "missing volume_ml");
    EXPECT_TRUE(told(reckoned).contains("water")) << told(reckoned).toStdString();
    EXPECT_EQ(
        outcome(
            R"({"do":"pour-candles","on":"2027-11-15","mould":"M","good":2,"blocks":"L1 90 g"})"),
        "kept");
}

TEST_F(WaxSlips, TimesAreOfTheirDay) {
    const auto heat = [this](const char* begun) {
        return outcome(R"({"do":"heat-on","on":"2027-11-03","what_heated":"pot","begun":")" +
                       std::string(begun) + R"("})");
    };
    EXPECT_EQ(heat("2027-11-05T14:00:00Z"), "out_of_range begun");
    EXPECT_EQ(heat("2027-11-04T00:30:00Z"), "kept") << "an evening in America";
    EXPECT_EQ(outcome(R"({"do":"heat-off","on":"2027-11-04","off_at":"2027-11-09T15:00:00Z"})"),
              "out_of_range off_at");
    EXPECT_EQ(amended(R"("heat_session":"pot","set":{"begun":"2027-11-09T14:00:00Z"})"),
              "out_of_range set.begun");
    EXPECT_EQ(poured(R"("good":4,"blocks":"L1","poured_at":"2027-11-25T18:00:00Z")"),
              "out_of_range poured_at");
    EXPECT_EQ(poured(R"("good":4,"blocks":"L1","poured_at":"2027-11-15T18:00:00Z")"), "kept");
    EXPECT_EQ(amended(R"("pour":"#1","set":{"poured_at":"2027-11-25T18:00:00Z"})"),
              "out_of_range set.poured_at");
    expectClean();
}

TEST_F(WaxSlips, WhatWaxIsOfDoesNotContradictItself) {
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-01","name":"O","source":"old comb","runs":"27-1","raw_g":900})"),
        "contradiction runs");
    EXPECT_EQ(amended(R"("wax_batch":"A","set":{"source":"old comb"})"),
              "contradiction set.source");
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-01","name":"O","source":"cappings","runs":"27-1","raw_g":900,"kept":"frozen","kept_since":"2027-10-01"})"),
        "contradiction kept_since");
    EXPECT_EQ(
        outcome(
            R"({"do":"cast-block","on":"2027-11-03","name":"L2","batch":"A","supplier":"Smith","shade":"light","mass_g":500})"),
        "contradiction supplier");
    EXPECT_EQ(
        outcome(
            R"({"do":"cast-block","on":"2027-11-03","name":"L2","batch":"A","shade":"light","mass_g":500})"),
        "kept");
    EXPECT_EQ(amended(R"("wax_block":"L2","set":{"supplier":"Smith"})"),
              "contradiction set.supplier");
    expectClean();
}

TEST_F(WaxSlips, ACandleBurnsNoMoreThanItWeighs) {
    EXPECT_EQ(
        outcome(
            R"({"do":"test-burn","on":"2027-11-21","mould":"Skeps","wick":"#1","burnt_g":900,"verdict":"burns well"})"),
        "too_many burnt_g");
    EXPECT_EQ(
        outcome(
            R"({"do":"test-burn","on":"2027-11-21","mould":"Skeps","wick":"#1","burnt_g":45,"verdict":"burns well"})"),
        "kept");
    EXPECT_EQ(amended(R"("burn_test":"#1","set":{"burnt_g":900})"), "too_many set.burnt_g");
}

TEST_F(WaxSlips, CombIsLiddedAfterItIsOffAndOffAfterItWasOn) {
    EXPECT_EQ(comb("2027-06-28", R"("project_work":"taken off")"), "missing put_on");
    EXPECT_EQ(comb("2027-06-01", R"("project_work":"put on")"), "kept");
    EXPECT_EQ(comb("2027-06-28", R"("project_work":"lidded","good":9)"), "missing taken_off");
    EXPECT_EQ(comb("2027-06-28", R"("project_work":"taken off")"), "kept");
    EXPECT_EQ(comb("2027-06-29", R"("project_work":"lidded")"), "kept");
    EXPECT_EQ(jars(), 0) << "nobody said how many are good";
    EXPECT_EQ(amended(R"("hive_project":"June jars","set":{"taken_off":null})"),
              "missing set.taken_off");
    expectClean();
}

TEST_F(WaxSlips, WhatWasWeighedAfterTheLidIsToldByASecondLine) {
    ASSERT_EQ(comb("2027-06-01", R"("project_work":"put on")"), "kept");
    ASSERT_EQ(comb("2027-06-28", R"("project_work":"taken off")"), "kept");
    ASSERT_EQ(comb("2027-06-29", R"("project_work":"lidded")"), "kept");
    EXPECT_EQ(comb("2027-06-28", R"("project_work":"lidded","good":9)"), "before_it_began on");
    EXPECT_EQ(comb("2027-07-02", R"("project_work":"lidded","good":9,"net_g":3150)"), "kept");
    EXPECT_EQ(comb("2027-07-03", R"("project_work":"lidded","code":"C27-1")"), "kept");
    const HiveProject project = *file().first<HiveProject>({});
    EXPECT_EQ(project.lidded, day("2027-06-29")) << "its day stays";
    EXPECT_EQ(project.good, Count(9));
    EXPECT_EQ(project.code, "C27-1");
    EXPECT_EQ(jars(), 9);
    EXPECT_EQ(comb("2027-07-04", R"("project_work":"lidded","good":8)"),
              "nothing_to_do project_work")
        << "what was said is put right by amending";
}

// No deed can write these; a file that came from elsewhere may hold them.
TEST_F(WaxSlips, TheCheckFindsWhatCannotBe) {
    ASSERT_EQ(worked(R"("work":"melted","put_in_g":3400)"), "kept");
    ASSERT_EQ(poured(R"("good":4,"blocks":"L1 180 g")"), "kept");
    ASSERT_EQ(outcome(R"({"do":"heat-on","on":"2027-11-03","what_heated":"pot",)"
                      R"("begun":"2027-11-03T14:00:00Z"})"),
              "kept");
    ASSERT_EQ(comb("2027-06-01", R"("project_work":"put on")"), "kept");
    const auto found = [this](const char* sql) {
        {
            const Database other =
                Database::open(season.read().database().path(), Database::Mode::ReadWrite);
            other.run(sql);
        }
        std::string all;
        for (const AuditFinding& each : audit(file())) all += each.about + ": " + each.says + "\n";
        return all;
    };
    using testing::HasSubstr;
    EXPECT_THAT(found("UPDATE wax_step SET put_in_g = 9000"), HasSubstr("wax batch A: a step"));
    EXPECT_THAT(found("UPDATE wax_batch SET source = 'old comb'"), HasSubstr("cappings of a run"));
    EXPECT_THAT(found("UPDATE pour SET returned_g = 500, returned_how = 'weighed'"),
                HasSubstr("pour #1: more wax came back"));
    EXPECT_THAT(found("UPDATE pour SET poured_at = '2027-11-25T18:00:00Z'"),
                HasSubstr("pour #1: it was poured on another day"));
    EXPECT_THAT(found("UPDATE heat_session SET begun = '2027-11-09T14:00:00Z'"),
                HasSubstr("heat of pot: it was heated on another day"));
    EXPECT_THAT(found("UPDATE wax_block SET batch_id = 1, supplier = 'Smith'"),
                HasSubstr("block L1: it was cast of a batch, and bought"));
    EXPECT_THAT(found("UPDATE hive_project SET lidded_on = '2027-07-01'"),
                HasSubstr("comb June jars: a step that comes before is missing"));
}

}  // namespace
}  // namespace combwright
