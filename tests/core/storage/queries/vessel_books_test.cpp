// The books of many vessels read at once say what each says alone.
#include "core/storage/queries/vessel_books.h"

#include <gtest/gtest.h>

#include "tests/support/honey_lots.h"

namespace combwright {
namespace {

class BooksOfVessels : public test::HoneyLotsTest {};

std::string lineOf(const VesselLedger& ledger) {
    std::string text = std::to_string(ledger.in ? ledger.in->grams() : -1);
    for (const Mass& each : {ledger.intoLots, ledger.intoJars, ledger.lostInFilling, ledger.inBulk,
                             ledger.offByWork, ledger.missing})
        text += " " + std::to_string(each.grams());
    text += " " + std::to_string(ledger.left ? ledger.left->grams() : -1);
    for (const VesselEntry& each : ledger.entries)
        text += " " + isoText(each.on) + "/" + std::to_string(static_cast<int>(each.event));
    return text;
}

TEST_F(BooksOfVessels, SayTogetherWhatEachSaysAlone) {
    done(
        R"({"do":"work-honey","on":"2027-08-20","bucket":{"bucket":"B2","run":"27-2"},"work":"skimmed","after_g":7900}
{"do":"go-out","on":"2027-08-25","bucket":{"bucket":"B2","run":"27-2"},"mass_g":1000,"reason":"for the bees"}
{"do":"weigh-left","on":"2027-09-30","bucket":{"bucket":"B2","run":"27-2"},"left_over_g":6880})");
    const auto all = allVessels(file());
    ASSERT_EQ(all.size(), 6U) << "three buckets, three lots";
    const VesselBooks books(file(), all);
    for (const char* until : {"2027-08-07", "2027-09-01", "2027-09-15", "2027-11-20"})
        for (const Vessel& each : all) {
            EXPECT_EQ(books.heads().name(each), nameOf(file(), each));
            EXPECT_EQ(lineOf(books.ledger(each, test::day(until))),
                      lineOf(vesselLedger(file(), each, test::day(until))))
                << nameOf(file(), each) << " " << until;
        }
    ASSERT_EQ(books.fillings().size(), 1U);
    EXPECT_EQ(books.inJars(jars), Mass::grams(30 * 454));
    EXPECT_EQ(books.bulk().size(), 1U);
    EXPECT_EQ(books.heads().name({Id<Bucket>{99}, std::nullopt}),
              nameOf(file(), Vessel{Id<Bucket>{99}, std::nullopt}));
}

TEST_F(BooksOfVessels, RowsOfManyIdsComeInOneQuestionInTheirOrder) {
    const auto parts = file().whereAny<LotPart>("lot", std::vector{winter, summer});
    ASSERT_EQ(parts.size(), 4U);
    for (std::size_t i = 1; i < parts.size(); ++i) EXPECT_LT(parts[i - 1].id, parts[i].id);
    EXPECT_EQ(file().whereAny<LotPart>("lot", std::vector{winter}).size(), 2U);
    EXPECT_TRUE(file().whereAny<LotPart>("lot", std::vector<Id<Lot>>{}).empty());
    const auto lots = file().findAny(std::vector{bought, Id<Lot>{99}, summer});
    ASSERT_EQ(lots.size(), 2U) << "what is gone is not among them";
    EXPECT_EQ(lots.at(summer.number).name.text(), "Summer blend");
}

TEST_F(BooksOfVessels, WhatWasPouredOnTopLaterWasNotInItBefore) {
    done(
        R"({"do":"amend","on":"2027-11-20","lot_part":{"lot_part":"B3","lot":"Summer blend"},"set":{"on_day":"2027-09-05"},"why":"poured later"})");
    const Vessel vessel{std::nullopt, summer};
    EXPECT_EQ(vesselLedger(file(), vessel, test::day("2027-09-02")).in, Mass::grams(12000));
    EXPECT_EQ(vesselLedger(file(), vessel, test::day("2027-09-05")).in, Mass::grams(19001));
}

}  // namespace
}  // namespace combwright
