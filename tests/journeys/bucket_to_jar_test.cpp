// From five buckets to the people who ate them: two lots, jars, a fair, a complaint, a hold that
// travels, and a tag that turns up in November. All numbers are invented and reckoned by hand;
// after every line each vessel's honey is accounted for to the gram.
//
//   off the boxes  H1 22 kg, H2 18 kg, a box whose tag was lost 10 kg  -> 44, 36 and 20 of 100
//   buckets        B1 10,000 g 17.0 %   B2 10,000 g 17.4 %   B3 10,000 g 18.8 %
//                  B4 10,000 g 17.2 %   B5  9,000 g 17.1 %            = 49,000 g, 1,000 g missing
//   Hill summer    B1 9,960 (40 skimmed) + B2 10,000 + B3 4,000       = 23,960 g, 23,900 weighed
//   Hill late      B3 6,000 + B4 10,000                               = 16,000 g
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <map>

#include "core/places/goods/sales.h"
#include "core/places/honey/water_in_use.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/trace/trace_page.h"
#include "core/places/season_book/season_yield.h"
#include "core/places/trace/trace.h"
#include "core/storage/queries/goods_shelf.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class BucketToJar : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-01");
        lines(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep, x, medium H1a 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep, x, medium H2a 9 drawn","origin":"overwintered"}
{"do":"open-run","on":"2027-08-07","name":"27-1","yard":"Hill","room_c":30,"damp_share":0.5}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","box":"H1a","gross_g":27000,"wet_g":5000}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","box":"H2a","gross_g":23000,"wet_g":5000}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","known_as":"tag lost","gross_g":15000,"wet_g":5000}
{"do":"weigh-cappings","on":"2027-08-07","run":"27-1","cappings_g":0}
{"do":"fill-bucket","on":"2027-08-07","run":"27-1","mark":"B1","net_g":10000,"water_percent":17.0}
{"do":"fill-bucket","on":"2027-08-07","run":"27-1","mark":"B2","net_g":10000,"water_percent":17.4}
{"do":"fill-bucket","on":"2027-08-07","run":"27-1","mark":"B3","net_g":10000,"water_percent":18.8}
{"do":"fill-bucket","on":"2027-08-07","run":"27-1","mark":"B4","net_g":10000,"water_percent":17.2}
{"do":"fill-bucket","on":"2027-08-07","run":"27-1","mark":"B5","net_g":9000,"water_percent":17.1}
{"do":"close-run","on":"2027-08-07","run":"27-1"}
{"do":"add-goods","on":"2027-08-08","name":"454 g jar","net_g":454,"price":8.5}
{"do":"add-goods","on":"2027-08-08","name":"227 g jar","net_g":227,"price":5}
{"do":"work-honey","on":"2027-08-20","bucket":{"bucket":"B1","run":"27-1"},"work":"skimmed","after_g":9960}
{"do":"blend-honey","on":"2027-08-21","name":"Hill summer","parts":"B1 all, B2 all, B3 4 kg","net_g":23900}
{"do":"blend-honey","on":"2027-08-21","name":"Hill late","parts":"B3 all, B4 all"}
{"do":"fill-jars","on":"2027-09-01","lot":"Hill summer","jars":"50x454 g","lost_honey_g":110}
{"do":"weigh-left","on":"2027-09-01","lot":"Hill summer","left_over_g":1080}
{"do":"fill-jars","on":"2027-09-02","lot":"Hill late","jars":"20x454 g, 20x227 g","drawn_g":13700}
{"do":"go-out","on":"2027-09-03","bucket":{"bucket":"B5","run":"27-1"},"mass_g":2000,"price":22,"buyer":"the baker"}
{"do":"weigh-left","on":"2027-09-20","bucket":{"bucket":"B5","run":"27-1"},"left_over_g":6950}
{"do":"go-out","on":"2027-09-20","goods":"6 454 g of LB27-1-1","buyer":"Ann"}
{"do":"go-out","on":"2027-09-21","went":"given","goods":"2 454 g of LB27-1-1"}
{"do":"pack-fair","on":"2027-10-02","fair_name":"Harvest fair","fair_day":"2027-10-03","place":"market","goods":"40 454 g of LB27-1-1","change_money":30}
{"do":"fair-home","on":"2027-10-03","fair":"Harvest fair","home":"9, 2 broken, 1 given","cash":268}
)");
    }
    /// One by one; after each every vessel is accounted for and the file agrees with itself.
    void lines(const std::string& script) {
        for (std::size_t from = 0; from < script.size();) {
            const std::size_t end = std::min(script.find('\n', from), script.size());
            const std::string line = script.substr(from, end - from);
            from = end + 1;
            if (line.empty()) continue;
            done(line);
            closes(line);
        }
    }
    void closes(const std::string& after) const {
        Mass into, left, jars, gone;
        for (const Vessel& vessel : allVessels(file())) {
            const VesselLedger l = vesselLedger(file(), vessel, lastOfAllDays);
            const Mass out = l.intoLots + l.intoJars + l.lostInFilling + l.inBulk + l.offByWork +
                             l.missing + l.left.value_or(Mass{});
            EXPECT_EQ(l.in, out) << nameOf(file(), vessel) << " after " << after;
            if (vessel.bucket) into += l.in.value_or(Mass{});
            left += l.left.value_or(Mass{});
            jars += l.intoJars;
            gone += l.lostInFilling + l.inBulk + l.offByWork + l.missing;
            if (vessel.lot) {
                Mass poured;
                for (const VesselPart& part : partsOf(file(), *vessel.lot)) poured += part.mass;
                gone += poured - *l.in;
            }
        }
        EXPECT_EQ(into, left + jars + gone) << "what came from the gate, after " << after;
        expectClean();
    }
    Vessel lot(const char* name) const {
        return {std::nullopt, Id<Lot>{*findNamed(file(), Lot::table,
                                                 NameQuery{.name = name, .on = clock.today()})}};
    }
    Vessel bucket(const char* mark) const {
        return {Id<Bucket>{*findNamed(file(), Bucket::table,
                                      NameQuery{.name = mark, .run = "27-1", .on = clock.today()})},
                std::nullopt};
    }
    Id<Bottling> filling(const char* code) const {
        return {*findNamed(file(), Bottling::table, NameQuery{.name = code, .on = clock.today()})};
    }
    VesselLedger ledger(const Vessel& vessel) const {
        return vesselLedger(file(), vessel, clock.today());
    }
    bool isHeld(const char* code, const char* on) const {
        return !holdsOn(file(), filling(code), test::day(on)).empty();
    }
    /// Jars of a filling on the shelf.
    std::int64_t jarsLeft(const char* code, const char* kind) const {
        for (const GoodsShelf& shelf : goodsShelves(file(), clock.today()))
            for (const FillingLeft& each : shelf.fillings)
                if (shelf.kind.name.text() == kind && each.bottling == filling(code)) {
                    EXPECT_EQ(each.least, each.most);
                    return each.least;
                }
        return -1;
    }
    Trace traced(const TraceOf& of, const char* on) const {
        const auto found = trace(file(), of, test::day(on));
        EXPECT_TRUE(found);
        return found.value_or(Trace{});
    }
    /// Grams by hive behind it; "" are boxes whose hive nobody knew.
    static std::map<std::string, std::int64_t> hives(const Trace& all) {
        std::map<std::string, std::int64_t> grams;
        for (const TraceRun& run : all.back->runs)
            for (const TraceHive& each : run.hives)
                if (each.mass != Mass{}) grams[each.mark] += each.mass->grams();
        return grams;
    }
    std::string sheet(Trace all) const {
        // That it was kept is the one thing that could not stand on it.
        all.kept.clear();
        return pageText(tracePage(file(), all)).toStdString();
    }
    /// Hives by what they gave in the year, the best first.
    std::string ranks() const {
        std::vector<std::pair<std::int64_t, std::string>> all;
        for (const YardYield& yard : seasonYield(file(), 2027).yards)
            for (const HiveYield& each : yard.hives)
                if (each.mass) all.emplace_back(-each.mass->grams(), each.mark);
        std::sort(all.begin(), all.end());
        std::string text;
        for (const auto& [grams, mark] : all) text += mark + " " + std::to_string(-grams) + "; ";
        return text;
    }
};

TEST_F(BucketToJar, EveryGramOfTheTwoLotsIsSomewhere) {
    const VesselLedger b1 = ledger(bucket("B1"));
    EXPECT_EQ(b1.offByWork, Mass::grams(40));
    EXPECT_EQ(b1.intoLots, Mass::grams(9960));
    EXPECT_TRUE(b1.empty);
    const VesselLedger b3 = ledger(bucket("B3"));
    EXPECT_EQ(b3.intoLots, Mass::grams(10000)) << "4,000 to Hill summer, the rest to Hill late";
    const VesselLedger summer = ledger(lot("Hill summer"));
    EXPECT_EQ(summer.in, Mass::grams(23900));
    EXPECT_EQ(summer.intoJars, Mass::grams(50 * 454));
    EXPECT_EQ(summer.lostInFilling, Mass::grams(110));
    EXPECT_EQ(summer.missing, Mass::grams(23900 - 22700 - 110 - 1080));
    EXPECT_EQ(summer.left, Mass::grams(1080));
    const VesselLedger late = ledger(lot("Hill late"));
    EXPECT_EQ(late.in, Mass::grams(16000));
    EXPECT_EQ(late.intoJars, Mass::grams(20 * 454 + 20 * 227));  // 13,620
    EXPECT_EQ(late.lostInFilling, Mass::grams(13700 - 13620));
    EXPECT_EQ(late.left, Mass::grams(2300));
    const VesselLedger b5 = ledger(bucket("B5"));
    EXPECT_EQ(b5.inBulk, Mass::grams(2000));
    EXPECT_EQ(b5.missing, Mass::grams(9000 - 2000 - 6950));
    // (9,960 x 17.0 + 10,000 x 17.4 + 4,000 x 18.8) / 23,960
    const auto summerWater = waterInUse(file(), lot("Hill summer"), clock.today());
    ASSERT_TRUE(summerWater);
    EXPECT_NEAR(summerWater->percent, 418520.0 / 23960, 1e-9);
    EXPECT_EQ(summerWater->from, WaterFrom::Parts);
    // (6,000 x 18.8 + 10,000 x 17.2) / 16,000
    EXPECT_NEAR(waterInUse(file(), lot("Hill late"), clock.today())->percent, 17.8, 1e-9);
}

TEST_F(BucketToJar, FortyOutNineHomeTwoBrokenOneGivenAreTwentyEightSold) {
    const Sales year = sales(file(), 2027, clock.today());
    ASSERT_EQ(year.fairs.size(), 1U);
    EXPECT_EQ(year.fairs.front().sold, 28);
    EXPECT_EQ(year.fairs.front().takings, Money::hundredths(28 * 850));
    EXPECT_EQ(year.fairs.front().difference, Money::hundredths(0)) << "268 less 30 is 238";
    EXPECT_EQ(year.all.sold, 6 + 28);
    EXPECT_EQ(year.all.given, 2 + 1);
    EXPECT_EQ(year.all.broken, 2);
    EXPECT_EQ(jarsLeft("LB27-1-1", "454 g jar"), 50 - 6 - 2 - 31);
    EXPECT_EQ(jarsLeft("LB27-2-1", "454 g jar"), 20);
    EXPECT_EQ(jarsLeft("LB27-2-1", "227 g jar"), 20);
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-12-01","goods":"12 454 g of LB27-1-1"})"),
              "too_many goods")
        << "eleven are left";
}

TEST_F(BucketToJar, AComplaintHoldsTheLotAndWhatWasFilledFromIt) {
    lines(
        R"({"do":"note-complaint","on":"2027-10-30","bottling":"LB27-1-1","what":"bubbles","who":"Ann"}
{"do":"hold-back","on":"2027-10-30","lot":"Hill summer","reason":"complaint"}
)");
    EXPECT_TRUE(isHeld("LB27-1-1", "2027-10-30"));
    EXPECT_FALSE(isHeld("LB27-2-1", "2027-10-30"))
        << "Hill late has B3 too, and is not asked about";
    const std::string sell = R"({"do":"go-out","on":"2027-11-01","goods":"1 454 g of LB27-1-1")";
    EXPECT_EQ(outcome(sell + "}"), "held_back goods");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-11-01","goods":"1 454 g of LB27-2-1"})"),
              "kept");
    lines(sell + R"(,"went":"kept","reason":"opened to look"})" + "\n");
    const Trace asked = traced({.bottling = filling("LB27-1-1")}, "2027-11-01");
    ASSERT_EQ(asked.holds.size(), 1U);
    EXPECT_EQ(asked.holds.front().name, "Hill summer");
    ASSERT_EQ(asked.forward.fillings.size(), 1U);
    EXPECT_EQ(asked.forward.fillings.front().complaints.size(), 1U);
    lines(R"({"do":"close-complaint","on":"2027-11-03","complaint":"2027-10-30","became":"air"}
{"do":"release-hold","on":"2027-11-03","hold":{"lot":"Hill summer"},"lifted_by":"Jo","grounds":"read and tasted"}
)");
    EXPECT_FALSE(isHeld("LB27-1-1", "2027-11-03"));
    EXPECT_TRUE(isHeld("LB27-1-1", "2027-11-02")) << "as it was the day before";
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-11-03","goods":"1 454 g of LB27-1-1"})"),
              "kept");
}

TEST_F(BucketToJar, AHoldTravelsDownToEveryJarAndUpFromNone) {
    // On the bucket both lots drew from: both fillings, and nothing upstream of it or beside it.
    lines(
        R"({"do":"hold-back","on":"2027-10-10","bucket":{"bucket":"B3","run":"27-1"},"reason":"wet honey"}
)");
    EXPECT_TRUE(isHeld("LB27-1-1", "2027-10-10"));
    EXPECT_TRUE(isHeld("LB27-2-1", "2027-10-10"));
    EXPECT_TRUE(holdsOn(file(), bucket("B1"), test::day("2027-10-10")).empty());
    lines(
        R"({"do":"release-hold","on":"2027-10-12","hold":{"bucket":"B3","run":"27-1"},"lifted_by":"Jo","grounds":"both lots read dry"}
)");
    EXPECT_FALSE(isHeld("LB27-1-1", "2027-10-12"));
    // A disease suspected in October on a hive holds what it gave in July, and its jars. From the
    // jar the way back leads to the hive that is held.
    lines(R"({"do":"hold-back","on":"2027-10-20","hive":"H1","reason":"suspected disease"}
)");
    for (const char* code : {"LB27-1-1", "LB27-2-1"}) EXPECT_TRUE(isHeld(code, "2027-10-20"));
    EXPECT_FALSE(holdsOn(file(), bucket("B5"), test::day("2027-10-20")).empty());
    const Trace back = traced({.bottling = filling("LB27-1-1")}, "2027-10-20");
    ASSERT_FALSE(back.holds.empty());
    EXPECT_EQ(back.holds.front().on, TraceHold::On::Hive);
    EXPECT_EQ(back.holds.front().name, "H1");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-10-21","lot":"Hill late","mass_g":500})"),
              "held_back lot");
}

TEST_F(BucketToJar, ATagFoundInNovemberRevisesOpenlyAndWhatWasPrintedReadsAsItDid) {
    const TraceOf jar{.bottling = filling("LB27-1-1")};
    // 22,700 g in fifty jars: 44, 36 and 20 of 100.
    EXPECT_EQ(hives(traced(jar, "2027-11-10")),
              (std::map<std::string, std::int64_t>{{"H1", 9988}, {"H2", 8172}, {"", 4540}}));
    // 49,000 g by 44, 36 and 20.
    EXPECT_EQ(ranks(), "H1 21560; H2 17640; ");
    const std::string asPrinted = sheet(traced(jar, "2027-11-10"));
    EXPECT_THAT(asPrinted, Not(HasSubstr("revised")));
    QJsonObject keep{{"do", "keep-sheet"},
                     {"on", "2027-11-10"},
                     {"what_sheet", "trace"},
                     {"subject", "LB27-1-1"},
                     {"as_it_read", QString::fromStdString(asPrinted)}};
    lines(QJsonDocument(keep).toJson(QJsonDocument::Compact).toStdString() + "\n");

    lines(
        R"({"do":"name-lost-box","on":"2027-11-20","lost":{"extraction_box":"tag lost","run":"27-1"},"hive":"H2","why":"tag found in the truck"}
)");
    const Trace now = traced(jar, "2027-11-20");
    EXPECT_EQ(hives(now), (std::map<std::string, std::int64_t>{{"H1", 9988}, {"H2", 12712}}));
    ASSERT_EQ(now.back->runs.size(), 1U);
    EXPECT_TRUE(now.back->runs.front().revised);
    ASSERT_EQ(now.back->runs.front().revisions.size(), 1U);
    EXPECT_EQ(now.back->runs.front().revisions.front().why, "tag found in the truck");
    for (const TraceHive& each : now.back->runs.front().hives)
        if (each.mark == "H2") {
            EXPECT_EQ(each.atClosing, Mass::grams(8172)) << "then and now are both told";
        }
    EXPECT_EQ(ranks(), "H2 27440; H1 21560; ") << "the order of the hives turns over";
    EXPECT_THAT(sheet(now), HasSubstr("revised"));

    // Asked for the day it was printed, it reads to the letter as it did then; and it was kept.
    EXPECT_EQ(sheet(traced(jar, "2027-11-10")), asPrinted);
    EXPECT_EQ(hives(traced(jar, "2027-11-19")), hives(traced(jar, "2027-11-10")));
    ASSERT_EQ(now.kept.size(), 1U);
    EXPECT_EQ(now.kept.front().text, asPrinted);
    EXPECT_THAT(pageText(keptSheetPage(file(), now.kept.front())).toStdString(),
                HasSubstr("hive not known"));
    // The hive whose box it was finds its jars now, and did not then.
    const auto part = [&](const char* on) {
        return traced({.hive = hive("H2")}, on).forward.fillings.front().part.value_or(-1);
    };
    EXPECT_NEAR(part("2027-11-10"), 0.36, 1e-4);
    EXPECT_NEAR(part("2027-11-20"), 0.56, 1e-4);
}

TEST_F(BucketToJar, ATraceOfAPastDayTellsOnlyWhatHadHappenedByThen) {
    lines(R"({"do":"note-complaint","on":"2027-10-30","bottling":"LB27-1-1","what":"bubbles"}
{"do":"close-complaint","on":"2027-11-03","complaint":"#1","became":"air"}
)");
    const TraceOf summer{.lot = lot("Hill summer").lot};
    EXPECT_FALSE(trace(file(), summer, test::day("2027-08-20"))) << "there was no such lot yet";
    EXPECT_EQ(tracedSince(file(), summer), test::day("2027-08-21"));
    const Trace poured = traced(summer, "2027-08-21");
    EXPECT_TRUE(poured.forward.fillings.empty());
    EXPECT_EQ(poured.forward.starts.front().left, Mass::grams(23900));
    const Trace filled = traced(summer, "2027-09-01");
    ASSERT_EQ(filled.forward.fillings.size(), 1U);
    EXPECT_TRUE(filled.forward.fillings.front().out.empty());
    EXPECT_EQ(filled.forward.fillings.front().jars.front().left, 50);
    // On which day a box is packed nobody writes down: of a fair that is over its own day counts.
    const Trace before = traced(summer, "2027-10-02");
    EXPECT_EQ(before.forward.fillings.front().jars.front().left, 50 - 6 - 2);
    const Trace after = traced(summer, "2027-10-03");
    EXPECT_EQ(after.forward.fillings.front().jars.front().left, 50 - 6 - 2 - 31);
    EXPECT_TRUE(after.forward.fillings.front().complaints.empty());
    const Trace asked = traced(summer, "2027-11-01");
    ASSERT_EQ(asked.forward.fillings.front().complaints.size(), 1U);
    EXPECT_FALSE(asked.forward.fillings.front().complaints.front().closed) << "not answered yet";
    EXPECT_TRUE(traced(summer, "2027-11-03").forward.fillings.front().complaints.front().closed);
    // The run knows nothing yet of lots that were poured later.
    const TraceOf run{
        .run = Id<Extraction>{
            *findNamed(file(), Extraction::table, NameQuery{.name = "27-1", .on = clock.today()})}};
    EXPECT_TRUE(traced(run, "2027-08-10").forward.lots.empty());
    EXPECT_EQ(traced(run, "2027-08-21").forward.lots.size(), 2U);
}

}  // namespace
}  // namespace combwright
