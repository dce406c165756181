// What lies in the shed, what was counted of it and what is planned are amended as everything else:
// the old value and the reason stay, and the rules are those of the actions that recorded it.
#include <gtest/gtest.h>

#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/season_plan.h"
#include "core/places/storeroom/needs.h"
#include "tests/support/amendments.h"

namespace combwright {
namespace {

class AmendedStore : public test::Amended {
  protected:
    void SetUp() override {
        done(R"(
{"do":"count-equipment","on":"2027-03-01","item":"excluder","on_hand":20,"lent":2}
{"do":"count-equipment","on":"2027-10-01","item":"excluder","on_hand":18,"lent":2,"why_fewer":"two bent"}
{"do":"count-equipment","on":"2027-10-01","item":"feeder","name":"tray","on_hand":7}
{"do":"count-equipment","on":"2027-10-01","item":"feeder","name":"frame","on_hand":3}
{"do":"describe-equipment","on":"2027-03-01","item":"freezer","name":"chest","litres":300}
{"do":"describe-equipment","on":"2027-03-01","item":"freezer","name":"chest","frame_kind":"LANG-F-MED","holds":80}
{"do":"describe-equipment","on":"2027-03-01","item":"freezer","name":"chest","frame_kind":"LANG-F-DEEP","holds":50}
{"do":"plan-season","on":"2027-12-01","year":2028,"colonies":12,"splits":3,"items":"floor 1 1, excluder 1 0 10 %"})");
    }
    static std::string count(const std::string& set, const char* day = "2027-10-01") {
        return amend(R"("equipment_count":{"equipment":"excluder","equipment_count":")" +
                         std::string(day) + "\"}",
                     set);
    }
    static std::string thing(const char* name, const std::string& set) {
        return amend(R"("equipment":")" + std::string(name) + '"', set);
    }
    static std::string plan(const std::string& set) {
        return amend(R"("season_plan":"2028")", set, "2027-12-05");
    }
    Equipment excluders() const {
        return *file().first<Equipment>({is("item", EquipmentItem::Excluder)});
    }
};

TEST_F(AmendedStore, AStockTakePutRightSaysWhatIsThereNow) {
    EXPECT_EQ(outcome(count(R"("on_hand":19)")), "kept");
    EXPECT_EQ(excluders().onHand, Count(19));
    EXPECT_EQ(outcome(count(R"("lent":3)")), "kept");
    EXPECT_EQ(excluders().lent, Count(3));
    EXPECT_EQ(outcome(count(R"("on_hand":21)", "2027-03-01")), "kept");
    EXPECT_EQ(excluders().onHand, Count(19)) << "an older count says nothing of today";
    EXPECT_EQ(outcome(count(R"("on_hand":-1)")), "negative set.on_hand");
    EXPECT_EQ(outcome(count(R"("on_hand":100001)")), "out_of_range set.on_hand");
    EXPECT_EQ(outcome(count(R"("on_hand":17,"why_fewer":"")")), "missing set.why_fewer")
        << "a count that falls says why";
    EXPECT_EQ(outcome(count(R"("equipment":"#2")")), "fixed set.equipment");
    EXPECT_EQ(outcome(count(R"("on_day":"2027-03-01")")), "taken set.on_day");
    EXPECT_EQ(outcome(count(R"("on_day":"2027-02-01")")), "kept");
    EXPECT_EQ(excluders().onHand, Count(21)) << "the count of March is the newest now";
    EXPECT_EQ(excluders().since, test::day("2027-02-01"));
    expectClean();
    expectReplays();
}

TEST_F(AmendedStore, SheetsTakenSinceTheCountStayTaken) {
    done(R"(
{"do":"add-boxes","on":"2027-10-01","kind":"medium","first_mark":"M1","contents":"9 drawn"}
{"do":"count-equipment","on":"2027-10-01","item":"foundation","frame_kind":"LANG-F-MED","on_hand":50}
{"do":"review-box","on":"2027-11-01","box":"M1","contents":"5 keep, 4 refit"}
{"do":"work-frames","on":"2027-11-02","work":"refitted"})");
    const auto sheets = [&] {
        return file().first<Equipment>({is("item", EquipmentItem::Foundation)})->onHand;
    };
    ASSERT_EQ(sheets(), Count(46));
    const std::string put =
        amend(R"("equipment_count":{"equipment":"foundation","equipment_count":"2027-10-01"})",
              R"("on_hand":60)");
    EXPECT_EQ(outcome(put), "kept");
    EXPECT_EQ(sheets(), Count(56));
    expectReplays();
}

TEST_F(AmendedStore, AThingIsCalledAndMeasuredAnew) {
    EXPECT_EQ(outcome(thing("tray", R"("name":"4 l tray","litres":4)")), "kept");
    EXPECT_EQ(outcome(thing("4 l tray", R"("name":"frame")")), "taken set.name");
    EXPECT_EQ(outcome(thing("4 l tray", R"("rpm":300)")), "contradiction set.rpm");
    EXPECT_EQ(outcome(thing("4 l tray", R"("on_hand":9)")), "other_action set.on_hand");
    EXPECT_EQ(refusalValue(thing("4 l tray", R"("on_hand":9)"), "action"), "count-equipment");
    EXPECT_EQ(outcome(thing("4 l tray", R"("item":"floor")")), "fixed set.item");
    EXPECT_EQ(outcome(thing("4 l tray", R"("since":"2027-10-02")")), "contradiction set.since");
    EXPECT_EQ(outcome(thing("chest", R"("litres":0)")), "out_of_range set.litres");
    EXPECT_EQ(outcome(thing("chest", R"("name":"big chest","litres":310,"note":"in the barn")")),
              "kept");
    const auto rows = file().where<Equipment>({is("item", EquipmentItem::Freezer)});
    ASSERT_EQ(rows.size(), 2U);
    for (const Equipment& row : rows) EXPECT_EQ(row.name, "big chest") << "all rows of one machine";
    EXPECT_EQ(outcome(thing("big chest", R"("frame_kind":"LANG-F-DEEP")")), "taken set.frame_kind")
        << "its other row says that already";
    expectClean();
    expectReplays();
}

TEST_F(AmendedStore, APlanIsPutRightWithoutWritingItAnew) {
    EXPECT_EQ(outcome(plan(R"("colonies":14,"note":"two bought")")), "kept");
    const auto now = *file().first<SeasonPlan>({is("year", Count(2028))});
    EXPECT_EQ(now.colonies, Count(14));
    EXPECT_EQ(now.splits, Count(3));
    EXPECT_EQ(outcome(plan(R"("colonies":20000)")), "out_of_range set.colonies");
    EXPECT_EQ(outcome(plan(R"("supers_per_colony":2)")), "missing set.super_kind");
    EXPECT_EQ(outcome(plan(R"("year":1000)")), "out_of_range set.year");
    done(R"({"do":"plan-season","on":"2027-12-02","year":2029,"colonies":12})");
    EXPECT_EQ(outcome(plan(R"("year":2029)")), "taken set.year");
    const auto item = [](const std::string& set) { return amend(R"("plan_item":"#1")", set); };
    EXPECT_EQ(outcome(item(R"("per_colony":1.5,"pack":5)")), "kept");
    EXPECT_EQ(file().all<PlanItem>().front().pack, Count(5));
    EXPECT_EQ(outcome(item(R"("per_colony":null,"per_split":null)")), "missing set.per_colony");
    EXPECT_EQ(outcome(item(R"("per_colony":101)")), "out_of_range set.per_colony");
    EXPECT_EQ(outcome(item(R"("pack":0)")), "out_of_range set.pack");
    EXPECT_EQ(outcome(item(R"("item":"lid")")), "fixed set.item");
    EXPECT_EQ(outcome(R"({"do":"amend","on":"2027-12-05","season_plan":"2028",)"
                      R"("set":{"splits":4}})"),
              "missing why");
    expectClean();
    expectReplays();
}

TEST_F(AmendedStore, TheOldValueAndTheReasonStay) {
    done(count(R"("on_hand":19)"));
    const auto last = season.history().front();
    EXPECT_EQ(last.info.why, "misread");
    EXPECT_NE(last.info.line.find("\"on_hand\":19"), std::string::npos);
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(excluders().onHand, Count(18));
}

}  // namespace
}  // namespace combwright
