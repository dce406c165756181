// Honey kept like money: in is what went on, off, out and is left, to the gram, at each step.
#include "core/storage/queries/vessels.h"

#include "tests/support/five_buckets.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class Vessels : public test::SeasonTest {
  protected:
    Season season = [this] {
        Season made = newSeason();
        playAll(made, test::fiveBuckets());
        return made;
    }();
    static Vessel bucket(std::int64_t id) { return {Id<Bucket>{id}, std::nullopt}; }
    static Vessel lot(std::int64_t id) { return {std::nullopt, Id<Lot>{id}}; }
    VesselLedger ledger(const Vessel& vessel, const char* on = "2027-12-31") const {
        return vesselLedger(season.read(), vessel, test::day(on));
    }
    static void expectClosed(const VesselLedger& ledger) {
        ASSERT_TRUE(ledger.in);
        ASSERT_TRUE(ledger.left);
        EXPECT_EQ(*ledger.in, ledger.intoLots + ledger.intoJars + ledger.lostInFilling +
                                  ledger.inBulk + ledger.offByWork + ledger.missing + *ledger.left)
            << (ledger.vessel.bucket ? ledger.vessel.bucket->number : -ledger.vessel.lot->number);
    }
    template <class Record>
    Id<Record> put(Record record) {
        const StepInfo info{"test", "{}", {}, {}};
        EXPECT_TRUE(season.perform(info, [&](Write& file) -> Result<void> {
            file.add(record);
            return {};
        }));
        return record.id;
    }
};

TEST_F(Vessels, AreCalledByMarkAndRunOrByTheLotsName) {
    playAll(season, R"({"do":"buy-honey","on":"2027-08-08","name":"Heath","net_g":5000})");
    EXPECT_EQ(nameOf(season.read(), bucket(1)), "B1 of 27-2");
    EXPECT_EQ(nameOf(season.read(), lot(1)), "Heath");
    EXPECT_EQ(allVessels(season.read()).size(), 6u);
}

TEST_F(Vessels, KeepEveryGramThroughBlendsWorkAndWeighing) {
    // Skimmed: 150 g off B1. Blend 1: 13,450 + 6,200 = 19,650 in, weighed 19,600.
    playAll(season, R"({"do":"work-honey","on":"2027-08-09","bucket":{"bucket":"B1","run":"27-2"},)"
                    R"("work":"skimmed","after_g":13450,"after_how":"weighed"})"
                    "\n"
                    R"({"do":"blend-honey","on":"2027-08-10","name":"Summer",)"
                    R"("parts":"B1 all, B3 6.2 kg","net_g":19600,"net_how":"weighed"})"
                    "\n"
                    R"({"do":"weigh-left","on":"2027-08-11","bucket":{"bucket":"B3","run":"27-2"},)"
                    R"("left_over_g":6750,"left_over_how":"weighed"})"
                    "\n"
                    R"({"do":"blend-honey","on":"2027-08-12","name":"Late",)"
                    R"("parts":"Summer 5000 g, B3 all"})");
    const VesselLedger b1 = ledger(bucket(1));
    EXPECT_EQ(b1.offByWork, Mass::grams(150));
    EXPECT_EQ(b1.intoLots, Mass::grams(13450));
    EXPECT_EQ(b1.left, Mass());
    EXPECT_EQ(b1.empty, test::day("2027-08-10"));
    expectClosed(b1);

    const VesselLedger b3 = ledger(bucket(3));
    EXPECT_EQ(b3.missing, Mass::grams(50));  // 13,000 − 6,200 − 6,750
    EXPECT_EQ(b3.intoLots, Mass::grams(12950));
    expectClosed(b3);
    EXPECT_EQ(ledger(bucket(3), "2027-08-10").left, Mass::grams(6800));
    EXPECT_EQ(ledger(bucket(3), "2027-08-11").left, Mass::grams(6750));

    const VesselLedger summer = ledger(lot(1));
    EXPECT_EQ(summer.in, Mass::grams(19600));
    EXPECT_EQ(summer.left, Mass::grams(14600));
    expectClosed(summer);
    // Nobody weighed it after: what went in, added up.
    const VesselLedger late = ledger(lot(2));
    EXPECT_EQ(late.in, Mass::grams(11750));
    EXPECT_EQ(late.inHow, How::Weighed);
    expectClosed(late);

    const auto parts = partsOf(season.read(), Id<Lot>{2});
    ASSERT_EQ(parts.size(), 2u);
    EXPECT_EQ(parts[0].from, lot(1));
    EXPECT_EQ(parts[1].from, bucket(3));
    EXPECT_EQ(parts[1].mass, Mass::grams(6750));
    EXPECT_EQ(lotsFrom(season.read(), bucket(3)), (std::vector<Id<Lot>>{{1}, {2}}));
}

TEST_F(Vessels, TakeOffWhatJarsHoldAndWhatWasLostBesideThem) {
    GoodsKind jar;
    jar.name = test::name("454 g");
    jar.net = Mass::grams(454);
    const Id<GoodsKind> kind = put(jar);
    Bottling filling;
    filling.bucket = Id<Bucket>{4};
    filling.on = test::day("2027-08-20");
    filling.code = test::name("L1");
    filling.drawn = Known<Mass>{Mass::grams(9200), {}, How::Weighed};
    const Id<Bottling> id = put(filling);
    put(BottledJars{{}, id, kind, Count(20)});
    GoingOut bulk;
    bulk.bucket = Id<Bucket>{4};
    bulk.on = test::day("2027-08-21");
    bulk.mass = Known<Mass>{Mass::grams(1000), {}, How::Weighed};
    put(bulk);
    const VesselLedger b4 = ledger(bucket(4));
    EXPECT_EQ(b4.intoJars, Mass::grams(9080));
    EXPECT_EQ(b4.lostInFilling, Mass::grams(120));
    EXPECT_EQ(b4.inBulk, Mass::grams(1000));
    EXPECT_EQ(b4.left, Mass::grams(2600));  // 12,800 − 9,200 − 1,000
    EXPECT_FALSE(b4.empty);
    expectClosed(b4);
}

TEST_F(Vessels, DoNotKnowWhatNobodyWeighed) {
    playAll(season, R"({"do":"fill-bucket","on":"2027-08-07","run":"27-2","mark":"B6"})"
                    "\n"
                    R"({"do":"blend-honey","on":"2027-08-10","name":"Odd","parts":"B6 2 kg"})");
    const VesselLedger b6 = ledger(bucket(6));
    EXPECT_FALSE(b6.in);
    EXPECT_FALSE(b6.left);
    EXPECT_EQ(b6.intoLots, Mass::grams(2000));
    EXPECT_EQ(ledger(lot(1)).in, Mass::grams(2000));
}

TEST_F(Vessels, AreAsWellKnownAsTheirWeakestPart) {
    playAll(season, R"({"do":"blend-honey","on":"2027-08-10","name":"Mixed",)"
                    R"("parts":"B4 all, B5 all"})");
    EXPECT_EQ(ledger(lot(1)).in, Mass::grams(21800));
    EXPECT_EQ(ledger(lot(1)).inHow, How::ByEye);
}

}  // namespace
}  // namespace combwright
