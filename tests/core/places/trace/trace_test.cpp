// The way of honey back to hives and forward to people, every figure reckoned by hand (the honey
// is in tests/support/honey_lots.h), and what is said of what cannot be known.
#include "core/places/trace/trace.h"

#include <gtest/gtest.h>

#include "core/actions/honey/telling.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/trace/trace_page.h"
#include "tests/support/honey_lots.h"

namespace combwright {
namespace {

class TracedHoney : public test::HoneyLotsTest {
  protected:
    Trace traced(const TraceOf& of) const {
        const auto found = trace(file(), of, clock.today());
        EXPECT_TRUE(found);
        return found.value_or(Trace{});
    }
    TraceOf hiveCalled(const char* mark) const { return {.hive = hive(mark)}; }
    /// "H1 9000, H2 3000 | C1 3501, ? 3500": the grams of each hive, run by run.
    static std::string hives(const TraceBack& back) {
        std::string text;
        for (const TraceRun& run : back.runs) {
            text += text.empty() ? "" : " | ";
            for (std::size_t i = 0; i < run.hives.size(); ++i) {
                const TraceHive& each = run.hives[i];
                text += (i == 0 ? "" : ", ") + (each.hive ? each.mark : "?") + " " +
                        (each.mass ? std::to_string(each.mass->grams()) : "unknown");
                if (each.atClosing) text += " then " + std::to_string(each.atClosing->grams());
            }
        }
        return text;
    }
    static Mass sumOfHives(const TraceBack& back) {
        Mass sum;
        for (const TraceRun& run : back.runs)
            for (const TraceHive& each : run.hives) sum += each.mass.value_or(Mass{});
        return sum;
    }
    static std::string sources(const TraceBack& back) {
        std::string text;
        for (const TraceSource& each : back.sources)
            text += (text.empty() ? "" : ", ") + each.name + " " +
                    (each.mass ? std::to_string(each.mass->grams()) : "unknown");
        return text;
    }
    static bool says(const Trace& traced, const TraceUnknown& gap) {
        for (const TraceUnknown& each : traced.unknown)
            if (each == gap) return true;
        return false;
    }
    static std::int64_t gramsOf(const std::vector<TracedVessel>& vessels, const char* name) {
        for (const TracedVessel& each : vessels)
            if (each.name == name) return each.ofIt ? each.ofIt->grams() : -1;
        return -2;
    }
};

TEST_F(TracedHoney, ABlendIsSharedOutToHivesToTheGram) {
    const Trace lot = traced({.lot = summer});
    ASSERT_TRUE(lot.back);
    EXPECT_EQ(lot.back->mass, Mass::grams(19001));
    EXPECT_EQ(sources(*lot.back), "B1 of 27-2 12000, B3 of 27-3 7001");
    // B1: 12000 × 3/4 and 1/4. B3: 7001 in two halves, the odd gram to the earlier line.
    EXPECT_EQ(hives(*lot.back), "H1 9000, H2 3000 | C1 3501, ? 3500");
    EXPECT_EQ(sumOfHives(*lot.back), Mass::grams(19001));
}

TEST_F(TracedHoney, JarsAreTracedByWhatTheyHold) {
    const Trace jar = traced({.bottling = jars});
    ASSERT_TRUE(jar.back);
    EXPECT_EQ(jar.name, "L27-1");
    EXPECT_EQ(jar.back->mass, Mass::grams(13620)) << "30 × 454 g";
    // 13620 × 12000/19001 = 8601.65, × 7001/19001 = 5018.35
    EXPECT_EQ(sources(*jar.back), "B1 of 27-2 8602, B3 of 27-3 5018");
    EXPECT_EQ(hives(*jar.back), "H1 6452, H2 2150 | C1 2509, ? 2509");
    EXPECT_EQ(sumOfHives(*jar.back), Mass::grams(13620));
}

TEST_F(TracedHoney, ALotOfALotGoesBackThroughBothAndHoneyBoughtInGoesNoFurther) {
    const Trace lot = traced({.lot = winter});
    ASSERT_TRUE(lot.back);
    // 4000 × 12000/19001 = 2526.18, 4000 × 7001/19001 = 1473.82
    EXPECT_EQ(sources(*lot.back), "B1 of 27-2 2526, B3 of 27-3 1474, Neighbour's 1000");
    EXPECT_EQ(hives(*lot.back), "H1 1895, H2 631 | C1 737, ? 737");
    EXPECT_EQ(sumOfHives(*lot.back), Mass::grams(4000));
    ASSERT_EQ(lot.back->blends.size(), 2U);
    EXPECT_EQ(lot.back->blends[0].lot.id, winter);
    EXPECT_EQ(lot.back->blends[1].lot.id, summer);
    EXPECT_TRUE(says(lot, {TraceGap::BoughtIn, "Neighbour's", 0, "Dora"}));
}

TEST_F(TracedHoney, AHiveIsFoundInEverythingItsHoneyReached) {
    const Trace h1 = traced(hiveCalled("H1"));
    EXPECT_FALSE(h1.back);
    EXPECT_EQ(gramsOf(h1.forward.starts, "B1 of 27-2"), 9000);
    EXPECT_EQ(gramsOf(h1.forward.starts, "B2 of 27-2"), 6000);
    EXPECT_EQ(gramsOf(h1.forward.lots, "Summer blend"), 9000);
    EXPECT_EQ(gramsOf(h1.forward.lots, "Winter mix"), 1895) << "4000 × 9000/19001 = 1894.64";
    ASSERT_EQ(h1.forward.fillings.size(), 1U);
    EXPECT_EQ(h1.forward.fillings[0].ofIt, Mass::grams(6451)) << "13620 × 9000/19001 = 6451.24";
    EXPECT_TRUE(says(h1, {TraceGap::MixedInRun, "27-2", 2}));
    EXPECT_TRUE(
        pageText(tracePage(file(), h1), 300).contains(QStringLiteral("given away 3 × 454 g jar")));
}

TEST_F(TracedHoney, OfALotEveryJarAndWhoHasItIsTold) {
    const Trace lot = traced({.bucket = bucketNamed("B3")});
    ASSERT_EQ(lot.forward.fillings.size(), 1U);
    const TracedFilling& filling = lot.forward.fillings[0];
    std::string out;
    for (const TracedOut& each : filling.out)
        out += isoText(each.on) + " " + std::string(word(each.how)) + " " +
               std::to_string(*each.count) + " " + each.buyer + each.fair + "; ";
    EXPECT_EQ(out,
              "2027-09-20 sold 12 Ann; 2027-09-25 given 3 ; 2027-10-03 sold 4 Harvest fair; "
              "2027-10-03 broken 1 Harvest fair; 2027-10-03 given 1 Harvest fair; ");
    ASSERT_EQ(filling.jars.size(), 1U);
    EXPECT_EQ(filling.jars[0].gone, 21) << "12 + 3 + 4 + 1 + 1";
    EXPECT_EQ(filling.jars[0].left, 9);
    EXPECT_TRUE(says(lot, {TraceGap::NoBuyer, "L27-1", 8})) << "3 given, at the fair 4 and 1";
}

TEST_F(TracedHoney, ACountOnTheShelfCountsInPlaceOfTheBooks) {
    write([this](Write& file) {
        file.add(
            GoodsCount{{}, pound, jars, test::day("2027-09-30"), Count(14), "one was missing"});
    });
    const Trace jar = traced({.bottling = jars});
    EXPECT_EQ(jar.forward.fillings[0].jars[0].left, 8) << "14 less 6 at the fair";
    EXPECT_EQ(jar.forward.fillings[0].jars[0].gone, 21);
}

TEST_F(TracedHoney, WhatCannotBeKnownIsSaid) {
    write([this](Write& file) {
        GoingOut out;
        out.kind = pound;
        out.on = test::day("2027-10-20");
        out.count = Count(2);
        file.add(out);
        Complaint complaint;
        complaint.on = test::day("2027-11-10");
        complaint.what = test::name("it bubbles");
        file.add(complaint);
        GoingOut bulk;
        bulk.on = test::day("2027-10-21");
        bulk.lot = winter;
        bulk.mass = weighed(500);
        file.add(bulk);
    });
    const Trace lot = traced({.lot = summer});
    EXPECT_TRUE(says(lot, {TraceGap::MixedInRun, "27-2", 2}));
    EXPECT_TRUE(says(lot, {TraceGap::HiveUnknown, "27-3", 1}));
    EXPECT_TRUE(says(lot, {TraceGap::BoxUnknown, "27-3", 1}));
    EXPECT_TRUE(says(lot, {TraceGap::NoFilling, "454 g jar", 2}));
    EXPECT_TRUE(says(lot, {TraceGap::NoCode, "", 1}));
    EXPECT_TRUE(says(lot, {TraceGap::BulkNoBuyer, "Winter mix"}));
    ASSERT_EQ(lot.forward.bulk.size(), 1U);
    EXPECT_NEAR(*lot.forward.bulk[0].part, 0.8, 1e-12) << "4 of 5 kg are of it";
    const QString text = pageText(tracePage(file(), lot), 300);
    EXPECT_TRUE(text.contains(QStringLiteral("of 1 box nobody knows the hive")));
    EXPECT_TRUE(text.contains(QStringLiteral("8 jars of L27-1 went to people nobody wrote down")));
}

TEST_F(TracedHoney, BoxesAndTreatmentsBehindItAreNamed) {
    const Trace lot = traced({.lot = summer});
    const TraceRun& hill = lot.back->runs[0];
    ASSERT_EQ(hill.boxes.size(), 2U);
    EXPECT_EQ(hill.boxes[0].mark, "H1a");
    EXPECT_EQ(hill.boxes[0].hive, "H1");
    EXPECT_EQ(hill.boxes[0].on, test::day("2027-04-01"));
    ASSERT_EQ(hill.medicines.size(), 1U);
    EXPECT_EQ(hill.medicines[0].hive, "H1");
    EXPECT_EQ(hill.medicines[0].boxesOn, 1);
    EXPECT_EQ(hill.medicines[0].boxes, 2);
    // Forward of the treatment: H1a gave 15 of 20 kg.
    const auto given = file().all<Treatment>();
    ASSERT_EQ(given.size(), 1U);
    const Trace treatment = traced({.treatment = given[0].id});
    EXPECT_EQ(gramsOf(treatment.forward.starts, "B2 of 27-2"), 6000);
    EXPECT_EQ(gramsOf(treatment.forward.lots, "Summer blend"), 9000);
    const Trace box = traced({.box = this->box("H2a").id});
    EXPECT_EQ(gramsOf(box.forward.lots, "Summer blend"), 3000);
}

TEST_F(TracedHoney, ATagPutRightInNovemberRevisesSharesOpenly) {
    const QString before = pageText(tracePage(file(), traced({.lot = summer})), 120);
    KeepSheet keep{clock.today(), test::name("trace"), test::name("Summer blend"),
                   before.toStdString()};
    ASSERT_TRUE(perform(season, keep));
    EXPECT_FALSE(traced({.lot = summer}).back->runs[1].revised);
    done(
        R"({"do":"name-lost-box","on":"2027-11-20","lost":{"extraction_box":"tag lost","run":"27-3"},"hive":"C1","why":"tag found"})");
    const Trace lot = traced({.lot = summer});
    EXPECT_TRUE(lot.back->runs[1].revised);
    EXPECT_EQ(hives(*lot.back), "H1 9000, H2 3000 | C1 7001 then 3501, ? 0 then 3500");
    EXPECT_EQ(sumOfHives(*lot.back), Mass::grams(19001));
    ASSERT_EQ(lot.back->runs[1].revisions.size(), 1U);
    EXPECT_EQ(lot.back->runs[1].revisions[0].why, "tag found");
    const QString after = pageText(tracePage(file(), lot), 120);
    EXPECT_TRUE(after.contains(QStringLiteral("27-3 was revised")));
    EXPECT_TRUE(after.contains(QStringLiteral("tag found")));
    // The sheet of that morning reads as it did.
    ASSERT_EQ(lot.kept.size(), 1U);
    EXPECT_EQ(lot.kept[0].text, before.toStdString());
    EXPECT_FALSE(lot.kept[0].text.find("was revised") != std::string::npos);
}

TEST_F(TracedHoney, AHoldOnAHiveIsToldOfTheJarAndWhatItIsOn) {
    done(R"({"do":"hold-back","on":"2027-11-19","box":"H1a","reason":"suspected disease"})");
    const Trace jar = traced({.bottling = jars});
    ASSERT_EQ(jar.holds.size(), 2U);
    std::string why;
    for (const TraceHold& each : jar.holds) {
        EXPECT_EQ(each.on, TraceHold::On::Box);
        EXPECT_EQ(each.name, "H1a");
        why += std::string(word(each.hold.why)) + "; ";
    }
    EXPECT_EQ(why, "treated while on; suspected disease; ");
    EXPECT_EQ(jar.treated.boxes, 1);
    EXPECT_EQ(jar.treated.of, 4) << "boxes of both runs";
    EXPECT_TRUE(pageText(tracePage(file(), jar), 200)
                    .contains(QStringLiteral("Held back: none of it goes out")));
}

TEST_F(TracedHoney, HoneyNobodyWeighedHasSharesAndNoGrams) {
    write([this](Write& file) {
        Bucket bucket = *file.find(bucketNamed("B2"));
        bucket.net.reset();
        file.change(bucket);
    });
    const Trace bucket = traced({.bucket = bucketNamed("B2")});
    EXPECT_FALSE(bucket.back->mass);
    EXPECT_EQ(hives(*bucket.back), "H1 unknown, H2 unknown") << "never 0";
}

TEST_F(TracedHoney, ALotFilledTwiceSaysSo) {
    write([this](Write& file) {
        file.add(LotPart{{},
                         summer,
                         bucketNamed("B2"),
                         {},
                         test::day("2027-09-15"),
                         Mass::grams(100),
                         How::ByEye});
    });
    const Trace lot = traced({.lot = summer});
    EXPECT_TRUE(says(lot, {TraceGap::ToppedUp, "Summer blend", 2}));
    EXPECT_EQ(lot.back->mass, Mass::grams(19101));
    EXPECT_EQ(sumOfHives(*lot.back), Mass::grams(19101));
    for (const TraceSource& each : lot.back->sources)
        EXPECT_EQ(each.how, How::ByEye) << "a sum is known as its weakest part";
}

TEST_F(TracedHoney, LotsThatWentIntoEachOtherEndTheWaySomewhere) {
    write([this](Write& file) {
        file.add(LotPart{
            {}, summer, {}, winter, test::day("2027-10-02"), Mass::grams(10), How::Weighed});
    });
    const Trace lot = traced({.lot = winter});
    EXPECT_TRUE(lot.back);
    bool isSaid = false;
    for (const TraceUnknown& each : lot.unknown) isSaid = isSaid || each.gap == TraceGap::InARing;
    EXPECT_TRUE(isSaid);
}

TEST_F(TracedHoney, NothingIsTracedOfWhatIsNotThere) {
    EXPECT_FALSE(trace(file(), {.lot = Id<Lot>{99}}, clock.today()));
    EXPECT_FALSE(trace(file(), {}, clock.today()));
}

TEST_F(TracedHoney, ARunNobodyWroteBoxesOfSaysSo) {
    done(R"({"do":"open-run","on":"2027-09-01","name":"gift"}
{"do":"fill-bucket","on":"2027-09-01","run":"gift","mark":"G1","net_g":5000})");
    const Trace all = traced({.bucket = bucketNamed("G1")});
    EXPECT_TRUE(says(all, {TraceGap::NoBoxes, "gift"}));
    EXPECT_TRUE(pageText(tracePage(file(), all))
                    .contains(QStringLiteral("which boxes and hives its honey came from")));
    EXPECT_FALSE(says(traced({.lot = summer}), {TraceGap::NoBoxes, "27-2"}));
}

TEST_F(TracedHoney, AFairToComeIsInTheBoxAndOneThatIsOverWasNot) {
    done(
        R"({"do":"pack-fair","on":"2027-11-20","fair_name":"Advent","fair_day":"2027-11-27","goods":"2 454 g of L27-1","reason":"cleared by the label"})");
    const auto gone = [&](const char* on) {
        std::int64_t jars = 0;
        const auto traced = trace(file(), {.bottling = this->jars}, test::day(on));
        for (const TracedFilling& each : traced->forward.fillings)
            for (const TracedJars& kind : each.jars) jars += kind.gone;
        return jars;
    };
    // 12 sold, 3 given; at the fair of 3 October 4 sold, 1 broke, 1 given; 2 packed for Advent.
    EXPECT_EQ(gone("2027-11-20"), 12 + 3 + 6 + 2);
    EXPECT_EQ(gone("2027-10-03"), 12 + 3 + 6 + 2) << "when that box was packed nobody wrote down";
    done(R"({"do":"fair-home","on":"2027-11-27","fair":"Advent","home":"1"})");
    EXPECT_EQ(gone("2027-11-20"), 12 + 3 + 6) << "a fair of a week later";
    EXPECT_EQ(gone("2027-11-27"), 12 + 3 + 6 + 1);
}

}  // namespace
}  // namespace combwright
