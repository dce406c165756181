// The leaf of a jar tells what is in the records and nothing else, and only what the keeper wants
// told.
#include "core/places/goods/jar_leaf.h"

#include <gtest/gtest.h>

#include "core/places/pages/goods/jar_leaf_page.h"
#include "core/places/pages/page_text.h"
#include "tests/support/honey_lots.h"

namespace combwright {
namespace {

class LeafOfAJar : public test::HoneyLotsTest {
  protected:
    JarLeaf leaf() const {
        const auto made = jarLeaf(file(), jars);
        EXPECT_TRUE(made);
        return made.value_or(JarLeaf{});
    }
    QString text(const LeafTold& told = {}) const {
        return pageText(jarLeafPage(file(), leaf(), told), 400);
    }
    void readWater(std::optional<bool> compensates, std::optional<int> corrected) {
        write([&](Write& file) {
            WaterReading reading;
            reading.lot = summer;
            reading.on = test::day("2027-09-05");
            reading.water = WaterContent::hundredths(1740);
            reading.compensates = compensates;
            if (corrected) reading.corrected = WaterContent::hundredths(*corrected);
            file.add(reading);
        });
    }
};

TEST_F(LeafOfAJar, TellsYardsDaysHivesAndTheCaution) {
    const JarLeaf told = leaf();
    EXPECT_EQ(told.yards, (std::vector<std::string>{"Hill", "Creek"}));
    EXPECT_EQ(told.boxesOn, test::day("2027-04-01"));
    EXPECT_EQ(told.extractedFrom, test::day("2027-08-07"));
    EXPECT_EQ(told.extractedTo, test::day("2027-08-08"));
    EXPECT_EQ(told.hives, 3);
    EXPECT_EQ(told.boxes, 4);
    EXPECT_EQ(told.boxesUnknown, 1);
    EXPECT_EQ(told.blends, 1);
    EXPECT_EQ(told.stacks.size(), 3U);
    EXPECT_TRUE(text().contains(QStringLiteral("Hill and Creek")));
    EXPECT_TRUE(text().contains(QStringLiteral("the bees of 3 hives, out of 3 boxes of combs")));
    EXPECT_TRUE(text().contains(QStringLiteral("Of one more box nobody knows whose it was")));
    EXPECT_TRUE(text().contains(QStringLiteral("Not for babies under 12 months.")));
}

TEST_F(LeafOfAJar, WhatNobodyWroteDownIsNotTold) {
    for (const char* word : {"Water", "Colour", "taste", "ran through", "warmest", "spun"})
        EXPECT_FALSE(text().contains(QLatin1String(word))) << word;
}

TEST_F(LeafOfAJar, AReadingNobodyCorrectedIsNotTold) {
    readWater(std::nullopt, std::nullopt);
    EXPECT_FALSE(leaf().water);
    readWater(std::nullopt, 1790);
    EXPECT_EQ(leaf().water, WaterContent::hundredths(1790));
    readWater(true, std::nullopt);
    EXPECT_EQ(leaf().water, WaterContent::hundredths(1740));
}

TEST_F(LeafOfAJar, WorkAndWordsOfEveryParentAreTold) {
    write([this](Write& file) {
        Bucket bucket = *file.find(bucketNamed("B1"));
        bucket.traits.strainer = "a double sieve";
        bucket.traits.taste = "like lime";
        file.change(bucket);
        HoneyStep step;
        step.bucket = bucketNamed("B3");
        step.on = test::day("2027-08-20");
        step.temperature = Temperature::tenths(400);
        file.add(step);
    });
    EXPECT_TRUE(text().contains(QStringLiteral("ran through a double sieve")));
    EXPECT_TRUE(text().contains(QStringLiteral("The keeper's word for its taste: like lime")));
    EXPECT_TRUE(text().contains(QStringLiteral("held at 40.0 °C at the warmest")));
}

TEST_F(LeafOfAJar, TheKeeperChooses) {
    const auto without = leafWithout("place, hives");
    ASSERT_TRUE(without);
    EXPECT_FALSE(text(*without).contains(QStringLiteral("Hill")));
    EXPECT_FALSE(text(*without).contains(QStringLiteral("3 hives")));
    EXPECT_TRUE(text(*without).contains(QStringLiteral("Not for babies under 12 months.")));
    EXPECT_FALSE(text().contains(QStringLiteral("Strips")));
    const auto with = leafWith("medicines");
    ASSERT_TRUE(with);
    EXPECT_TRUE(text(*with).contains(QStringLiteral("Strips")));
    const auto wrong = leafWithout("caution");
    ASSERT_FALSE(wrong);
    EXPECT_EQ(wrong.error().code, Code::NotAChoice) << "the caution is never left out";
}

TEST_F(LeafOfAJar, NoLeafOfNoJar) {
    EXPECT_FALSE(jarLeaf(file(), Id<Bottling>{99}));
    Season empty = *Season::create(path("empty.combwright"), clock);
    EXPECT_TRUE(pageText(newestJarLeafPage(empty.read(), clock.today()))
                    .contains(QStringLiteral("No jar was filled yet.")));
}

}  // namespace
}  // namespace combwright
