#include "core/trade/storeroom/left_over_stores.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

const Day pulledOn = *makeDay(2027, 8, 1);

LeftOverStores cleanStores() { return {"H2", "Hill", pulledOn, pulledOn + days(20), false, false}; }

const std::vector<HungryHive> hungryHives = {{"C1", "Creek", false, true},
                                             {"H1", "Hill", false, true},
                                             {"H2", "Hill", false, true},
                                             {"H3", "Hill", true, true},
                                             {"H4", "Hill", false, false}};

TEST(LeftOverStores, TheOwnHiveThenItsYardThenOthers) {
    const auto answer = hivesFor(cleanStores(), hungryHives);
    EXPECT_EQ(answer.hives, (std::vector<std::size_t>{2, 1, 0}));
    EXPECT_FALSE(answer.keptBack);
}

TEST(LeftOverStores, OnlyWithACleanLookSince) {
    LeftOverStores stores = cleanStores();
    stores.cleanLook = pulledOn - days(1);
    EXPECT_EQ(hivesFor(stores, hungryHives).keptBack, WhyKeptBack::NoCleanLookSince);
    stores.cleanLook = {};
    EXPECT_EQ(hivesFor(stores, hungryHives).keptBack, WhyKeptBack::NoCleanLookSince);
    EXPECT_TRUE(hivesFor(stores, hungryHives).hives.empty());
    stores.cleanLook = pulledOn;  // looked through as it came off
    EXPECT_FALSE(hivesFor(stores, hungryHives).keptBack);
}

TEST(LeftOverStores, NeverOnceHeldNorOfUnknownOrigin) {
    LeftOverStores stores = cleanStores();
    stores.everHeld = true;
    EXPECT_EQ(hivesFor(stores, hungryHives).keptBack, WhyKeptBack::EverHeld);
    for (const int missing : {0, 1, 2}) {
        stores = cleanStores();
        if (missing == 0) stores.hive.reset();
        if (missing == 1) stores.yard.reset();
        if (missing == 2) stores.cameOff.reset();
        EXPECT_EQ(hivesFor(stores, hungryHives).keptBack, WhyKeptBack::OriginNotKnown);
    }
}

TEST(LeftOverStores, GranulatedStayInTheirYardOrAreMelted) {
    LeftOverStores stores = cleanStores();
    stores.granulated = true;
    EXPECT_EQ(hivesFor(stores, hungryHives).hives, (std::vector<std::size_t>{2, 1}));
    const std::vector<HungryHive> elsewhere = {hungryHives[0]};
    const auto answer = hivesFor(stores, elsewhere);
    EXPECT_TRUE(answer.melt);
    EXPECT_EQ(answer.keptBack, WhyKeptBack::NoHiveForIt);
    // What was held is not melted along with other comb either.
    stores.everHeld = true;
    EXPECT_FALSE(hivesFor(stores, elsewhere).melt);
    stores = cleanStores();
    EXPECT_FALSE(hivesFor(stores, {}).melt);
}

}  // namespace
}  // namespace combwright
