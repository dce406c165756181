// When a box is wanted, when to look for swarm cells, and what counts as opened.
#include "core/places/yard/growth.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/due/due_growth.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/yard/kit_list_page.h"
#include "core/places/yard/kit_list.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class GrowingHives : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-06-20");
        done(R"({"do":"add-yard","on":"2026-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H2","boxes":"8-frame deep D2 8 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H3","boxes":"deep D3 10 drawn, x, medium M3 10 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H4","boxes":"deep D4 10 drawn, x"})");
    }
    void writes(const char* on, const char* hive, const char* line) {
        done(R"({"do":"write-line","on":")" + std::string(on) + R"(","hive":")" + hive +
             R"(","line":")" + line + "\"}");
    }
    Growth yard(const char* on) const { return growth(file(), Id<Yard>{1}, test::day(on)); }
    HiveGrowth of(const char* mark, const char* on) const {
        for (const HiveGrowth& each : yard(on).hives)
            if (each.hive.mark.text() == mark) return each;
        return {};
    }
    std::vector<DueItem> due(const char* mark, const char* on) const {
        std::vector<DueItem> items;
        addDueGrowth(file(), test::day(on), std::nullopt, items);
        std::erase_if(items, [&](const DueItem& each) { return each.hive != hive(mark); });
        return items;
    }
};

TEST(FramesForBox, SevenOfTenAndSixOfEight) {
    EXPECT_EQ(framesForBox(10, 0.7), 7);
    EXPECT_EQ(framesForBox(8, 0.7), 6);
    EXPECT_EQ(framesForBox(9, 0.7), 7);
    EXPECT_EQ(framesForBox(20, 0.7), 14);
    EXPECT_EQ(framesForBox(10, 0.5), 5);
}

TEST_F(GrowingHives, ABoxIsWantedAtSevenOfTenAndSixOfEight) {
    writes("2027-06-01", "H1", "b4 s2");
    EXPECT_FALSE(of("H1", "2027-06-02").addBox);
    writes("2027-06-03", "H1", "b5 s2");
    ASSERT_TRUE(of("H1", "2027-06-04").addBox);
    EXPECT_EQ(of("H1", "2027-06-04").addBox->by, AddBoxBy::NestFilled);
    EXPECT_EQ(of("H1", "2027-06-04").addBox->from, 7);
    EXPECT_FALSE(of("H1", "2027-07-20").addBox) << "too long ago";
    writes("2027-06-03", "H2", "b4 s1.5");
    EXPECT_FALSE(of("H2", "2027-06-04").addBox);
    writes("2027-06-04", "H2", "b4 s2");
    ASSERT_TRUE(of("H2", "2027-06-04").addBox);
    EXPECT_EQ(of("H2", "2027-06-04").addBox->from, 6);
    // Put on, it is no longer asked for.
    done(R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M9","count":1}
{"do":"move-box","on":"2027-06-05","box":"M9","to":"on hive","hive":"H1"})");
    EXPECT_FALSE(of("H1", "2027-06-05").addBox);
    EXPECT_EQ(of("H1", "2027-06-05").supersNotSeen, 1);
    ASSERT_TRUE(season.undo());
    EXPECT_TRUE(of("H1", "2027-06-05").addBox);
}

TEST_F(GrowingHives, ByBeesBetweenTheFramesToo) {
    done(R"({"do":"look-into","on":"2027-06-01","hive":"H1","looked":"opened","seams_frames":8})");
    ASSERT_TRUE(of("H1", "2027-06-02").addBox);
    EXPECT_EQ(of("H1", "2027-06-02").addBox->by, AddBoxBy::NestCovered);
    EXPECT_EQ(of("H1", "2027-06-02").addBox->have, 8);
}

TEST_F(GrowingHives, ASuperSevenFilledAsksForTheNext) {
    EXPECT_EQ(of("H3", "2027-06-01").supersNotSeen, 1);
    EXPECT_FALSE(of("H3", "2027-06-01").roomFrames) << "nobody looked";
    done(R"({"do":"look-box","on":"2027-06-01","box":"M3","filled_share":0.6})");
    EXPECT_FALSE(of("H3", "2027-06-02").addBox);
    EXPECT_DOUBLE_EQ(*of("H3", "2027-06-02").roomFrames, 4);
    done(R"({"do":"look-box","on":"2027-06-05","box":"M3","filled_share":0.7})");
    ASSERT_TRUE(of("H3", "2027-06-06").addBox);
    EXPECT_EQ(of("H3", "2027-06-06").addBox->by, AddBoxBy::SupersFilled);
    EXPECT_FALSE(of("H3", "2027-08-01").addBox) << "they shrink by then";
    const auto items = due("H3", "2027-06-06");
    const auto box = std::find_if(items.begin(), items.end(),
                                  [](const DueItem& each) { return each.rule == DueRule::AddBox; });
    ASSERT_NE(box, items.end());
    EXPECT_EQ(box->count, 7);
    EXPECT_EQ(box->value, 7);
    EXPECT_EQ(box->take.front().item, "super");
}

TEST_F(GrowingHives, InTheSwarmWeeksEverySevenToNineDays) {
    writes("2027-05-01", "H1", "e b5");
    auto row = of("H1", "2027-05-04");
    EXPECT_EQ(row.daysSince, 3);
    EXPECT_EQ(row.swarmFrom, test::day("2027-05-08"));
    EXPECT_EQ(row.swarmBy, test::day("2027-05-10"));
    auto items = due("H1", "2027-05-04");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Swarm);
    EXPECT_EQ(items[0].from, test::day("2027-05-08"));
    EXPECT_EQ(items[0].by, test::day("2027-05-10"));
    EXPECT_EQ(items[0].id, "swarm-h1-2027-05-01");
    // Not opened since the autumn before: from the first of the weeks on.
    EXPECT_EQ(of("H2", "2027-04-10").swarmFrom, test::day("2027-04-01"));
    EXPECT_EQ(of("H2", "2027-04-10").swarmBy, test::day("2027-04-03"));
    EXPECT_TRUE(due("H4", "2027-05-04").empty()) << "nobody lives there";
    // After them every two to three weeks, after the summer no more.
    writes("2027-08-01", "H1", "e b5");
    EXPECT_FALSE(of("H1", "2027-08-04").swarmFrom);
    items = due("H1", "2027-08-04");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Look);
    EXPECT_EQ(items[0].from, test::day("2027-08-15"));
    EXPECT_EQ(items[0].by, test::day("2027-08-22"));
    EXPECT_TRUE(due("H1", "2027-11-04").empty());
}

TEST_F(GrowingHives, PassedByIsNotOpened) {
    writes("2027-05-01", "H1", "e b5");
    writes("2027-05-09", "H1", "x rain");
    const auto row = of("H1", "2027-05-10");
    EXPECT_EQ(row.opened, test::day("2027-05-01"));
    EXPECT_EQ(row.daysSince, 9);
    EXPECT_EQ(row.passedBy, test::day("2027-05-09"));
    const Growth all = yard("2027-05-10");
    EXPECT_EQ(all.living, 3);
    EXPECT_EQ(all.neverOpened, 2);
    EXPECT_EQ(all.passedBy, 1);
    EXPECT_FALSE(of("H2", "2027-05-10").daysSince);
}

TEST_F(GrowingHives, AYoungQueenKeepsTheHiveShut) {
    writes("2027-06-01", "H1", "qc2c left1 ! b5 s3");
    const auto row = of("H1", "2027-06-02");
    ASSERT_TRUE(row.shutUntil);
    ASSERT_TRUE(row.lookFrom);
    EXPECT_GT(*row.swarmFrom, *row.shutUntil);
    for (const DueItem& each : due("H1", "2027-06-02")) {
        EXPECT_GT(each.from, *row.shutUntil) << each.id;
        if (each.by) {
            EXPECT_GE(*each.by, each.from) << each.id;
        }
    }
    EXPECT_EQ(yard("2027-06-02").shut, 1);
    const KitList kit = kitList(file(), Id<Yard>{1}, test::day("2027-06-02"));
    ASSERT_EQ(kit.shut.size(), 1U);
    EXPECT_EQ(kit.shut[0].hive, "H1");
    for (const KitLine& each : kit.lines)
        EXPECT_THAT(each.hives, testing::Not(testing::Contains("H1"))) << each.item;
}

TEST_F(GrowingHives, ComeBackUntilItWasOpened) {
    writes("2027-06-01", "H1", "e !");
    auto items = due("H1", "2027-06-02");
    EXPECT_EQ(std::count_if(items.begin(), items.end(),
                            [](const DueItem& each) { return each.rule == DueRule::ComeBack; }),
              1);
    writes("2027-06-04", "H1", "e");
    items = due("H1", "2027-06-05");
    EXPECT_EQ(std::count_if(items.begin(), items.end(),
                            [](const DueItem& each) { return each.rule == DueRule::ComeBack; }),
              0);
}

TEST_F(GrowingHives, TheKitListSumsEachThingOnce) {
    done(R"({"do":"put-in-truck","on":"2027-04-01","items":"smoker, 2 hive tool"}
{"do":"buy-feed","on":"2027-04-01","packs":2,"pack_g":10000})");
    writes("2027-06-01", "H1", "light w9/300 b5 s2");
    writes("2027-06-01", "H2", "light");
    KitList kit = kitList(file(), Id<Yard>{1}, test::day("2027-06-02"));
    const auto line = [&](const char* item) {
        for (const KitLine& each : kit.lines)
            if (each.item == item) return each;
        return KitLine{.item = "none", .count = 0};
    };
    EXPECT_EQ(line("feeder").count, 2) << "asked for by the sheet and by what is due, once a hive";
    EXPECT_THAT(line("feeder").hives, testing::ElementsAre("H1", "H2"));
    EXPECT_EQ(line("feed").count, 2);
    EXPECT_EQ(line("wash jar").count, 1);
    EXPECT_EQ(line("super").count, 1);
    ASSERT_EQ(kit.always.size(), 2U);
    const QString text = pageText(kitListPage(file(), kit));
    for (const char* part : {"2 feeders", "1 super", "smoker", "2 hive tool", "wash jar", "H1 H2"})
        EXPECT_TRUE(text.contains(QLatin1String(part))) << part << "\n" << text.toStdString();
    // Taken off the truck, it stands on the list no more.
    done(R"({"do":"take-off-truck","on":"2027-06-02","items":"smoker"})");
    kit = kitList(file(), Id<Yard>{1}, test::day("2027-06-02"));
    EXPECT_EQ(kit.always.size(), 1U);
    kit = kitList(file(), Id<Yard>{1}, test::day("2027-06-01"));
    EXPECT_EQ(kit.always.size(), 2U);
}

}  // namespace
}  // namespace combwright
