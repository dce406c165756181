// Every rate with its source, the keeper's own before it, and given up again without touching the
// past; the use of the winter months is such a rate.
#include "core/places/season_book/constants_list.h"

#include <gtest/gtest.h>

#include <set>

#include "core/catalogue/constants.h"
#include "core/places/stores/stores.h"
#include "core/storage/queries/constants.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class ConstantsList : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, deep E1 10 drawn","origin":"overwintered"})");
    }
    ConstantRow row(const char* key, const char* on, std::optional<Id<Yard>> yard = {}) const {
        for (ConstantRow& each : constantsOn(file(), yard, day(on)))
            if (each.key == key) return each;
        ADD_FAILURE() << "no " << key;
        return {};
    }
    double inForce(const char* name, const char* on, std::optional<Id<Yard>> yard = {}) const {
        return constantInForce(file(), name, yard, day(on))->value;
    }
};

TEST_F(ConstantsList, NamesEachOnceWithItsSource) {
    std::set<std::string> keys;
    for (const ConstantRow& each : constantsOn(file(), {}, day("2027-06-01"))) {
        EXPECT_TRUE(keys.insert(each.key + each.region).second) << each.key;
        EXPECT_FALSE(each.source.empty()) << each.key;
        EXPECT_FALSE(each.own) << each.key;
    }
    for (const PublishedConstant& each : publishedConstants())
        EXPECT_TRUE(keys.contains(each.name)) << each.name;
    EXPECT_EQ(row("bucket_g", "2027-06-01").unit, "g");
    EXPECT_EQ(row("mite_line peak", "2027-06-01").value, "3");
    EXPECT_EQ(row("mite_line peak", "2027-06-01").edition, "usual");
    EXPECT_EQ(row("phase_from peak", "2027-06-01").value, "05-15");
    EXPECT_EQ(row("winter_use_february_g", "2027-06-01").value, "2000");
}

TEST_F(ConstantsList, TheKeepersOwnStandsBesideThePublished) {
    done(
        R"({"do":"set-constant","on":"2027-05-01","constant":"bucket_g","value":13000,"source":"my pails"}
{"do":"set-mite-line","on":"2027-05-01","phase":"peak","per_100":2,"yard":"Hill","source":"bad autumn"}
{"do":"set-phase-day","on":"2027-05-01","phase":"peak","month":6,"day_of_month":1})");
    const ConstantRow bucket = row("bucket_g", "2027-06-01");
    ASSERT_TRUE(bucket.own);
    EXPECT_EQ(bucket.own->value, "13000");
    EXPECT_EQ(bucket.own->source, "my pails");
    EXPECT_NE(bucket.value, bucket.own->value) << "the published stays beside it";
    EXPECT_FALSE(row("bucket_g", "2027-04-30").own);
    EXPECT_FALSE(row("mite_line peak", "2027-06-01").own) << "only for one yard";
    ASSERT_TRUE(row("mite_line peak", "2027-06-01", Id<Yard>{1}).own);
    EXPECT_EQ(row("phase_from peak", "2027-06-01").own->value, "06-01");
}

TEST_F(ConstantsList, AnOwnOneGivenUpLeavesThePastAlone) {
    const double published = inForce("bucket_g", "2027-06-01");
    done(R"({"do":"set-constant","on":"2027-05-01","constant":"bucket_g","value":13000}
{"do":"set-constant","on":"2027-06-01","constant":"bucket_g","value":12000}
{"do":"set-constant","on":"2027-05-01","constant":"bucket_g","value":11000,"yard":"Hill"})");
    EXPECT_EQ(code(R"({"do":"unset-constant","on":"2027-07-01","constant":"bucket_g"})"), "missing")
        << "without a why";
    done(R"({"do":"unset-constant","on":"2027-07-01","constant":"bucket_g","why":"new pails"})");
    EXPECT_EQ(inForce("bucket_g", "2027-05-10"), 13000);
    EXPECT_EQ(inForce("bucket_g", "2027-06-30"), 12000);
    EXPECT_EQ(inForce("bucket_g", "2027-07-01"), published) << "and not the one before";
    EXPECT_EQ(inForce("bucket_g", "2027-07-01", Id<Yard>{1}), 11000);
    EXPECT_EQ(code(R"({"do":"unset-constant","on":"2027-07-02","constant":"bucket_g","why":"x"})"),
              "nothing_to_do");
    EXPECT_EQ(code(R"({"do":"unset-constant","on":"2027-07-02","constant":"bukket","why":"x"})"),
              "not_found");
    done(R"({"do":"unset-constant","on":"2027-07-02","constant":"bucket_g","yard":"Hill","why":"x"}
{"do":"set-constant","on":"2027-08-01","constant":"bucket_g","value":14000})");
    EXPECT_EQ(inForce("bucket_g", "2027-07-03", Id<Yard>{1}), published);
    EXPECT_EQ(inForce("bucket_g", "2027-08-01"), 14000);
    expectClean();
}

TEST_F(ConstantsList, AWinterMonthsUseIsTheKeepersToSay) {
    clock.set("2028-03-01");
    done(R"({"do":"weigh-hive","on":"2027-11-01","hive":"H1","whole_g":35000,"without_g":20000})");
    const auto at = [&] {
        return storesInYard(file(), *file().find(Id<Yard>{1}), day("2027-12-01")).front();
    };
    EXPECT_NEAR(at().usedSinceG.value(), 1000, 1e-6) << "November by the table";
    done(
        R"({"do":"set-constant","on":"2027-10-01","constant":"winter_use_november_g","value":1500,"source":"my scale"})");
    EXPECT_NEAR(at().usedSinceG.value(), 1500, 1e-6);
    EXPECT_EQ(winterUseSource(file(), Id<Yard>{1}, day("2027-12-01")),
              "own figure since 2027-10-01: my scale");
    done(
        R"({"do":"unset-constant","on":"2027-11-15","constant":"winter_use_november_g","why":"odd year"})");
    EXPECT_NEAR(at().usedSinceG.value(), 1000, 1e-6);
}

}  // namespace
}  // namespace combwright
