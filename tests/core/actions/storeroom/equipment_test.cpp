// Counting and describing what lies in the shed, and planning a season: what is refused, what is
// kept, and that a plan of a year is one.
#include "core/actions/storeroom/equipment.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

#include "core/actions/storeroom/season_plan.h"
#include "core/places/storeroom/freezer.h"
#include "core/places/storeroom/stock.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class EquipmentDeeds : public test::DeedsTest {
  protected:
    static std::string floors(const char* on, int onHand, const std::string& more = {}) {
        return R"({"do":"count-equipment","on":")" + std::string(on) +
               R"(","item":"floor","on_hand":)" + std::to_string(onHand) + more + "}";
    }
    static std::string described(const std::string& more) {
        return R"({"do":"describe-equipment","on":"2027-10-01",)" + more + "}";
    }
    static std::string planned(const std::string& more) {
        return R"({"do":"plan-season","on":"2027-10-01","year":2028)" + more + "}";
    }
    /// What was refused must have left no trace.
    Refusal refused(const std::string& line) {
        const std::string before = season.dump();
        const PlayResult result = play(season, line);
        EXPECT_EQ(season.dump(), before) << "refused, yet something was kept: " << line;
        if (result.stopped) return result.stopped->refusal;
        ADD_FAILURE() << "kept: " << line;
        return {Code::NothingToUndo, "kept"};
    }
    EquipmentStock floorStock() const {
        return stockOn(file(), clock.today()).of(EquipmentItem::Floor);
    }
    std::string typedAgain() const { return planItemsText(file().all<PlanItem>()); }
};

TEST_F(EquipmentDeeds, WhatNobodyCountedIsNotCounted) {
    EXPECT_FALSE(floorStock().onHand);
    EXPECT_FALSE(floorStock().wholly);
    done(floors("2027-04-05", 0));
    EXPECT_EQ(floorStock().onHand, 0) << "looked, and there was none";
    EXPECT_FALSE(floorStock().lent);
    EXPECT_EQ(floorStock().counted, test::day("2027-04-05"));
    done(described(R"("item":"bucket","capacity_g":13600)"));
    EXPECT_EQ(outcome(described(R"("item":"extractor","name":"drum","capacity_g":42000)")), "kept")
        << "what the drum takes below the cage";
    EXPECT_FALSE(stockOn(file(), clock.today()).of(EquipmentItem::Bucket).onHand);
    done(described(R"("item":"freezer","name":"chest","litres":200,"coldest_c":-19.5)"));
    EXPECT_EQ(stockOn(file(), clock.today()).of(EquipmentItem::Freezer).onHand, 1);
}

TEST_F(EquipmentDeeds, AsksWhyOnlyWhereThereAreFewer) {
    done(floors("2027-04-05", 12, R"(,"lent":2)"));
    EXPECT_EQ(refused(floors("2027-10-05", 11, R"(,"lent":2)")).code, Code::Missing);
    EXPECT_EQ(refused(floors("2027-10-05", 11, R"(,"lent":2)")).field, "why_fewer");
    EXPECT_EQ(floorStock().onHand, 12) << "a refusal leaves the count";
    done(floors("2027-10-05", 14));  // those lent came home
    done(floors("2027-12-05", 9, R"(,"why_fewer":"five rotten")"));
    EXPECT_EQ(floorStock().onHand, 9);
}

TEST_F(EquipmentDeeds, SecondCountOfADayReplacesTheFirst) {
    done(floors("2027-04-05", 50));
    done(floors("2027-04-05", 5));  // a slip of the pen: no reason asked
    EXPECT_EQ(file().all<EquipmentCount>().size(), 1U);
    EXPECT_EQ(floorStock().onHand, 5);
    EXPECT_EQ(refused(floors("2027-04-05", 5)).code, Code::NothingToDo);
    done(floors("2026-10-05", 4));  // found on an old sheet
    EXPECT_EQ(floorStock().onHand, 5) << "the newest count stands";
}

TEST_F(EquipmentDeeds, RefusesWhatCannotBe) {
    EXPECT_EQ(refused(floors("2027-04-05", -1)).code, Code::Negative);
    EXPECT_EQ(
        refused(R"({"do":"count-equipment","on":"2027-04-05","item":"flor","on_hand":1})").code,
        Code::NotAChoice);
    EXPECT_EQ(
        refused(R"({"do":"count-equipment","on":"2027-04-05","item":"foundation","on_hand":9})")
            .field,
        "frame_kind");
    EXPECT_EQ(refused(described(R"("item":"freezer","litres":0)")).code, Code::OutOfRange);
    EXPECT_EQ(refused(described(R"("item":"extractor","radius_mm":0)")).code, Code::OutOfRange);
    EXPECT_EQ(refused(described(R"("item":"floor","litres":9)")).code, Code::Contradiction);
    EXPECT_TRUE(file().all<Equipment>().empty());
}

TEST_F(EquipmentDeeds, OnePlanAYear) {
    done(planned(R"(,"splits":4,"super_kind":"medium","supers_per_colony":3,)"
                 R"("items":"floors 1 1, clearer board 0,25 pack 2, excluder 1 0 10 %")"));
    EXPECT_EQ(typedAgain(), "floor 1 1, clearer board 0.25 pack 2, excluder 1 0 10 %");
    EXPECT_EQ(
        refused(planned(R"(,"splits":4,"super_kind":"medium","supers_per_colony":3,"items":")" +
                        typedAgain() + '"'))
            .code,
        Code::NothingToDo)
        << "as it is typed again it says the same";
    done(planned(R"(,"items":"lid 1")"));
    EXPECT_EQ(file().all<SeasonPlan>().size(), 1U);
    EXPECT_EQ(typedAgain(), "lid 1");
    EXPECT_FALSE(file().all<SeasonPlan>().front().splits) << "the later one takes its place";
}

TEST_F(EquipmentDeeds, PlanRefusesWhatCannotBe) {
    EXPECT_EQ(refused(planned(R"(,"frame_pack":0)")).code, Code::OutOfRange);
    EXPECT_EQ(refused(planned(R"(,"supers_per_colony":3)")).field, "super_kind");
    EXPECT_EQ(refused(planned(R"(,"brood_kind":"deep")")).field, "brood_per_split");
    EXPECT_EQ(refused(planned(R"(,"items":"flor 1")")).code, Code::NotAChoice);
    EXPECT_EQ(refused(planned(R"(,"items":"floor one")")).code, Code::NotAChoice);
    EXPECT_EQ(refused(planned(R"(,"items":"floor")")).code, Code::Missing);
    EXPECT_EQ(refused(planned(R"(,"items":"floor 1 1 1")")).code, Code::WrongType);
    EXPECT_EQ(refused(planned(R"(,"items":"floor 1, floors 2")")).code, Code::Duplicate);
    EXPECT_EQ(refused(planned(R"(,"items":"floor 1 1 pack 0")")).code, Code::OutOfRange);
    EXPECT_TRUE(file().all<SeasonPlan>().empty());
}

TEST_F(EquipmentDeeds, RandomDeedsUndoneAndRedoneLeaveEqualDumps) {
    std::mt19937 random(20280106);
    const auto pick = [&random](unsigned below) { return random() % below; };
    const auto number = [&](unsigned below) { return std::to_string(pick(below)); };
    const auto line = [&] {
        const std::string on = isoText(test::day("2027-04-01") + days(pick(200)));
        switch (pick(4)) {
            case 0:
                return R"({"do":"describe-equipment","on":")" + on +
                       R"(","item":"freezer","litres":)" + number(4) + "}";
            case 1:
                return R"({"do":"plan-season","on":")" + on + R"(","year":2028,"splits":)" +
                       number(9) + R"(,"items":"floor 1 )" + number(3) +
                       (pick(2) ? R"(, lid 1 1"})" : R"(, excluder 1 0 10 %"})");
            default:
                return R"({"do":"count-equipment","on":")" + on + R"(","item":")" +
                       (pick(2) ? "floor" : "lid") + R"(","on_hand":)" + number(30) +
                       (pick(2) ? R"(,"why_fewer":"some rotten"})" : "}");
        }
    };
    std::vector<std::string> dumps{season.dump()};
    std::size_t at = 0;
    std::map<std::string, int> deeds;
    for (int round = 0; round < 300; ++round) {
        const unsigned what = pick(5);
        if (what < 3) {
            const std::string before = season.dump();
            const PlayResult result = play(season, line());
            if (result.stopped) {
                ASSERT_EQ(season.dump(), before) << "refused, yet something was kept";
                continue;
            }
            ++deeds[season.history(1).front().info.action];
            dumps.resize(++at);
            dumps.push_back(season.dump());
        } else if (what == 3 && at > 0) {
            ASSERT_TRUE(season.undo());
            ASSERT_EQ(season.dump(), dumps[--at]);
        } else if (what == 4 && at + 1 < dumps.size()) {
            ASSERT_TRUE(season.redo());
            ASSERT_EQ(season.dump(), dumps[++at]);
        }
        for (const EquipmentStock& each : stockOn(file(), clock.today()).equipment)
            ASSERT_TRUE(!each.onHand || *each.onHand >= 0);
        ASSERT_LE(file().all<SeasonPlan>().size(), 1U);
    }
    for (const char* action : {"count-equipment", "describe-equipment", "plan-season"})
        EXPECT_GT(deeds[action], 5) << action << " was hardly ever kept";
    EXPECT_TRUE(audit(file()).empty());
}

TEST_F(EquipmentDeeds, WhatWasNotSaidOfStaysAsItWas) {
    done(floors("2027-04-05", 12, R"(,"in_repair":3,"lent":2)"));
    done(floors("2027-10-05", 13));
    EXPECT_EQ(floorStock().inRepair, 3);
    EXPECT_EQ(floorStock().lent, 2);
    EXPECT_EQ(file().all<EquipmentCount>().back().lent, Count(2));
    EXPECT_EQ(refused(floors("2027-12-05", 13, R"(,"in_repair":0)")).field, "why_fewer");
    done(floors("2027-12-05", 16, R"(,"in_repair":0)"));
    EXPECT_EQ(floorStock().inRepair, 0);
    EXPECT_EQ(refused(floors("2027-12-05", 100'001)).code, Code::OutOfRange);
    EXPECT_EQ(refused(floors("2027-12-05", 100'001)).field, "on_hand");
    done(floors("2027-12-06", 1, R"(,"lent":50)"));
    EXPECT_EQ(floorStock().lent, 50) << "what is lent is not on hand";
}

TEST_F(EquipmentDeeds, AFreezerThatTakesTwoKindsIsOneFreezer) {
    const Day later = test::day("2027-10-10");
    const auto chest = [](const std::string& more) {
        return described(R"("item":"freezer","name":"chest",)" + more);
    };
    done(chest(R"("litres":140,"coldest_c":-21)"));
    done(chest(R"("frame_kind":"LANG-F-MED","holds":16)"));
    done(chest(R"("frame_kind":"LANG-F-DEEP","holds":10)"));
    done(chest(R"("frame_kind":"LANG-F-DEEP","litres":150)"));
    EXPECT_EQ(refused(chest(R"("frame_kind":"LANG-F-MED","holds":16)")).code, Code::NothingToDo);
    const EquipmentStock stock = stockOn(file(), later).of(EquipmentItem::Freezer);
    EXPECT_EQ(stock.onHand, 1);
    ASSERT_EQ(stock.kinds.size(), 1U);
    EXPECT_TRUE(stock.wholly);
    EXPECT_EQ(stock.kinds.front().litres, Count(150));
    const FreezerLane lane = freezerLane(file(), later);
    ASSERT_EQ(lane.freezers.size(), 1U);
    const auto holds = [&](const char* code) {
        const auto kind = file().first<FrameKind>({is("code", *Name::of(code))});
        return freezerRoom(file(), lane.freezers.front(), *kind, later)->holds;
    };
    EXPECT_EQ(holds("LANG-F-MED"), 16);
    EXPECT_EQ(holds("LANG-F-DEEP"), 10);
    done(
        R"({"do":"add-boxes","on":"2027-10-02","kind":"deep","first_mark":"D1","contents":"10 drawn"})");
    done(R"({"do":"freeze-frames","on":"2027-10-03","freezer":"chest","boxes":"D1 4"})");
    done(R"({"do":"freeze-frames","on":"2027-10-03","boxes":"D1 4"})");
    done(described(R"("item":"freezer","name":"upright","litres":90)"));
    EXPECT_EQ(stockOn(file(), later).of(EquipmentItem::Freezer).onHand, 2);
    EXPECT_EQ(freezerLane(file(), later).freezers.size(), 2U);
}

TEST_F(EquipmentDeeds, ADrumWithOtherSlotsForAnotherFrameIsOneDrum) {
    done(described(R"("item":"extractor","frame_kind":"LANG-F-MED","holds":9,"radius_mm":225)"));
    done(described(R"("item":"extractor","frame_kind":"LANG-F-DEEP","holds":4,"radius_mm":210)"));
    done(described(R"("item":"extractor","rpm":280)"));
    done(R"({"do":"count-equipment","on":"2027-10-02","item":"extractor","on_hand":1})");
    const EquipmentStock stock = stockOn(file(), clock.today()).of(EquipmentItem::Extractor);
    EXPECT_EQ(stock.onHand, 1);
    ASSERT_EQ(stock.kinds.size(), 1U);
    EXPECT_EQ(stock.kinds.front().radius, Length::mm(225));
    EXPECT_EQ(stock.kinds.front().rpm, Count(280));
    const auto rows = file().all<Equipment>();
    ASSERT_EQ(rows.size(), 2U);
    EXPECT_EQ(rows[1].holds, Count(4));
    EXPECT_EQ(rows[1].radius, Length::mm(210));
}

}  // namespace
}  // namespace combwright
