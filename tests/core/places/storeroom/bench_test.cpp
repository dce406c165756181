// A box on the bench, an evening's sum, and which boxes wait.
#include "core/places/storeroom/bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/storeroom/verdicts.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class OnTheBench : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-31");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 9 drawn"}
{"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M2","contents":"9 drawn","stack":"north"}
{"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M10","contents":"9 drawn","stack":"north"}
{"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M1","contents":"9 drawn","stack":"south"})");
    }
    BenchBox bench(const char* mark, const char* on = "2028-01-31") const {
        return *benchBox(file(), box(mark).id, test::day(on));
    }
    std::string waiting(const char* on = "2028-01-31") const {
        std::string marks;
        for (const BenchWaiting& each : boxesWaiting(file(), test::day(on)))
            marks += (marks.empty() ? "" : " ") + each.box.mark + (each.changedSince ? "!" : "");
        return marks;
    }
};

TEST_F(OnTheBench, BoxesWaitInShelfOrderUntilLookedThrough) {
    EXPECT_EQ(waiting(), "M2 M10 M1") << "not the one on the hive";
    done(review("M2", "9 keep"));
    EXPECT_EQ(waiting(), "M10 M1");
    EXPECT_EQ(waiting("2027-11-17"), "M2 M10 M1") << "the day before it waited still";
    done(R"({"do":"look-box","on":"2027-12-20","box":"M2","contents":"9 drawn"})");
    EXPECT_EQ(waiting(), "M2! M10 M1");
    EXPECT_EQ(bench("M2").changes(), QStringLiteral("looked into on 20 Dec"));
}

TEST_F(OnTheBench, ABoxSaysWhatChangedSinceItsLook) {
    done(review("M2", "9 keep"));
    EXPECT_FALSE(bench("M2").changedSince());
    done(R"({"do":"move-box","on":"2027-12-01","box":"M2","to":"on hive","hive":"H1"})");
    done(R"({"do":"move-box","on":"2027-12-09","box":"M2","to":"storeroom","stack":"south"})");
    done(R"({"do":"count-box","on":"2027-12-10","box":"M2","contents":"8 drawn"})");
    EXPECT_EQ(bench("M2").changes().toStdString(),
              "moved on 1 Dec (on hive), moved on 9 Dec (storeroom), counted on 10 Dec");
    EXPECT_FALSE(bench("M2", "2027-11-30").changedSince()) << "it had not happened yet";
}

TEST_F(OnTheBench, FramesLieFlatWithTheirWhy) {
    done(
        R"({"do":"check-frames","on":"2027-11-18","box":"M2","position":2,"occasion":"winter review","faults":"W8","note":"chewed bars"})");
    done(
        R"({"do":"check-frames","on":"2027-11-18","box":"M2","how_many":2,"occasion":"winter review","faults":"broken"})");
    EXPECT_EQ(frames("M2"), "6 drawn, 2 drawn V repair, 1 drawn W burn at 2");
    const BenchBox box = bench("M2");
    ASSERT_EQ(box.frames.size(), 9U);
    for (std::size_t i = 0; i < 9; ++i) EXPECT_EQ(box.frames[i].slot, static_cast<int>(i) + 1);
    EXPECT_TRUE(box.frames[1].pointedAt);
    EXPECT_TRUE(box.frames[1].overruled);
    EXPECT_EQ(box.frames[1].usual, Verdict::Refit);
    EXPECT_EQ(box.frames[1].why, QStringLiteral("burn: web of moth; usually refit"));
    EXPECT_EQ(box.frames[0].why, QStringLiteral("repair: broken wood, the wood is broken"));
    EXPECT_EQ(box.frames[0].use, FrameUse::Repairable);
    EXPECT_EQ(box.frames[8].why, QString());
    EXPECT_FALSE(box.last);
    EXPECT_EQ(box.expected, Count(9));
    EXPECT_FALSE(box.difference);
    EXPECT_FALSE(benchBox(file(), Id<Box>{99}, test::day("2028-01-01")));
}

TEST_F(OnTheBench, AnEveningEndsWithItsSumAndWhereEachPartWent) {
    done(review("M2", "6 keep, 1 web, 1 broken, 1 pollen", "2027-11-18",
                R"(,"scrapings_g":70,"propolis_g":12)"));
    done(review("M10", "6 keep, 1 web, 1 D", "2027-11-18",
                R"(,"scrapings_g":55,"scrapings_how":"by eye","wants_paint":true)"));
    const EveningSum sum = eveningSum(file(), test::day("2027-11-18"));
    EXPECT_EQ(sum.boxes, 2);
    EXPECT_EQ(sum.found, Count(17));
    EXPECT_EQ(sum.expected, Count(18));
    EXPECT_EQ(sum.missing, 1);
    EXPECT_EQ(sum.kept, 12);
    EXPECT_EQ(sum.boxesWaiting, 1);
    std::vector<std::string> said;
    for (const EveningPart& part : sum.parts)
        said.push_back(part.says.toStdString() + " -> " + part.gone.toStdString());
    ASSERT_EQ(said.size(), 7U);
    EXPECT_EQ(said[0], "scrapings: 125 g -> raw wax that waits for the pot");
    EXPECT_EQ(sum.parts[0].how, How::ByEye) << "no better known than its weakest part";
    EXPECT_EQ(said[1], "propolis: 12 g -> kept with the looks");
    EXPECT_THAT(said[2], testing::StartsWith("to refit: 2 medium frames"));
    EXPECT_THAT(said[2], testing::EndsWith("combs to the pot, about 120 g of wax"));
    EXPECT_THAT(said[3], testing::StartsWith("to repair: 1 medium frame"));
    EXPECT_THAT(said[4], testing::EndsWith("-> on the freezer list"));
    EXPECT_THAT(said[5], testing::StartsWith("held back: 1 medium frame"));
    EXPECT_EQ(said[6], "boxes that want paint: 1 -> on the work list");
    EXPECT_THAT(sum.text().toStdString(),
                testing::StartsWith("2 boxes looked through, 17 frames found of 18 expected, 1 "
                                    "missing\nto keep as they are: 12\n"));
    EXPECT_EQ(eveningSum(file(), test::day("2027-11-19")).boxes, 0);
    EXPECT_TRUE(eveningSum(file(), test::day("2027-11-19")).parts.empty());
}

TEST(Verdicts, FollowFromTheGravestFault) {
    EXPECT_EQ(verdictFor(""), Verdict::Keep);
    EXPECT_EQ(verdictFor("O"), Verdict::Keep);
    EXPECT_EQ(verdictFor("VW"), Verdict::Refit);
    EXPECT_EQ(verdictFor("WD"), Verdict::Hold);
    EXPECT_EQ(verdictFor("LP"), Verdict::Scrape);
    EXPECT_GT(gravityOf(Verdict::Hold), gravityOf(Verdict::Burn));
    EXPECT_EQ(faultsOfWood("WVP"), "VP");
    for (const Fault& fault : faults())
        EXPECT_FALSE(whyUsual(std::string(1, fault.letter)).isEmpty()) << fault.word;
}

}  // namespace
}  // namespace combwright
