// Yards and stands: the walking order has no gap, a mark is free once its hive is closed, and the
// past stays with the stand it happened on.
#include "core/actions/yard/yards.h"

#include <gtest/gtest.h>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

class Stands : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
        for (const char* mark : {"H1", "H2", "H3"}) done(adding(mark));
    }
    static std::string adding(const char* mark, const std::string& more = {},
                              const char* yard = "Hill", const char* on = "2027-04-10") {
        return R"({"do":"add-hive","on":")" + std::string(on) + R"(","yard":")" + yard +
               R"(","mark":")" + mark + '"' + more + "}";
    }
    static std::string closing(const char* mark, const char* on = "2027-06-01",
                               const std::string& more = {}) {
        return R"({"do":"close-hive","on":")" + std::string(on) + R"(","hive":")" + mark + '"' +
               more + "}";
    }
    static std::string moving(const char* mark, const std::string& more,
                              const char* on = "2027-06-01") {
        return R"({"do":"move-hive","on":")" + std::string(on) + R"(","hive":")" + mark + '"' +
               more + "}";
    }
};

TEST_F(Stands, YardsKeepTheirNamesApart) {
    const std::string hill = R"({"do":"add-yard","on":"2027-05-01","yard_name":"Hill"})";
    EXPECT_EQ(outcome(hill), "taken yard_name");
    EXPECT_EQ(outcome(R"({"do":"add-yard","on":"2027-05-01","yard_name":""})"),
              "missing yard_name");
    EXPECT_EQ(outcome(R"({"do":"add-yard","on":"2027-05-01","yard_name":"hill"})"), "kept");
    EXPECT_EQ(
        outcome(
            R"({"do":"add-yard","on":"2027-05-01","yard_name":"Mill","usual_super":"cupboard"})"),
        "not_found usual_super");
}

TEST_F(Stands, YardsAreWalkedInTheirOrder) {
    done(R"({"do":"add-yard","on":"2027-05-01","yard_name":"Mill","walk_order":1})");
    done(R"({"do":"add-yard","on":"2027-05-01","yard_name":"Lake"})");
    std::string names;
    for (const Yard& yard : openYards(file())) names += yard.name.text() + " ";
    EXPECT_EQ(names, "Hill Mill Creek Lake ") << "of two with one number the older goes first";
}

TEST_F(Stands, SeveralAlikeAreSetUpInOneStep) {
    const std::string before = season.dump();
    const auto several = [](const std::string& marks, const std::string& boxes) {
        return R"({"do":"add-hives","on":"2027-04-20","yard":"Hill","marks":")" + marks +
               R"(","boxes":")" + boxes + R"(","origin":"overwintered"})";
    };
    done(several("H4-H6, H9", "deep D08, deep D09, x, medium"));
    EXPECT_EQ(walk("Hill"), "H1 H2 H3 H4 H5 H6 H9");
    EXPECT_EQ(stack("H4"), "D08 D09 -");
    EXPECT_EQ(stack("H5"), "D10 D11 -") << "a row counts up over both boxes of a hive";
    EXPECT_EQ(stack("H9"), "D14 D15 -");
    EXPECT_EQ(file().find(hive("H9"))->excluderAbove, Count(2));
    for (const char* mark : {"H4", "H5", "H6", "H9"}) EXPECT_TRUE(colonyIn(file(), hive(mark)));
    expectClean();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before) << "one step back";
    EXPECT_EQ(outcome(several("", "deep")), "missing marks");
    EXPECT_EQ(outcome(several("H6-H4", "deep")), "wrong_type marks");
    EXPECT_EQ(outcome(several("H7, H7", "deep")), "duplicate marks");
    EXPECT_EQ(outcome(several("H2-H5", "deep")), "taken marks");
    EXPECT_EQ(outcome(several("H10-H120", "deep")), "out_of_range marks");
    EXPECT_EQ(outcome(several("H4-H5", "deep East")), "wrong_type boxes");
    EXPECT_EQ(outcome(several("H4-H5", "cupboard")), "not_found boxes");
    done(several("1-3, East-wall", "deep"));
    EXPECT_EQ(walk("Hill"), "H1 H2 H3 1 2 3 East-wall");
}

TEST_F(Stands, HivesAreSetIntoTheWalk) {
    EXPECT_EQ(walk("Hill"), "H1 H2 H3");
    done(adding("H9", R"(,"stand_order":2)"));
    EXPECT_EQ(walk("Hill"), "H1 H9 H2 H3");
    done(adding("H8", R"(,"stand_order":99)"));
    EXPECT_EQ(walk("Hill"), "H1 H9 H2 H3 H8") << "no further than the end";
    done(adding("H7", R"(,"stand_order":0)"));
    EXPECT_EQ(walk("Hill"), "H7 H1 H9 H2 H3 H8") << "nor before the beginning";
    EXPECT_EQ(walk("Creek"), "");
}

TEST_F(Stands, AHiveComesWithItsBoxesAndItsColony) {
    done(
        adding("H4", R"(,"boxes":"deep D1, x, medium M1 9 drawn","origin":"split","mother":"H1")"));
    EXPECT_EQ(stack("H4"), "D1 M1");
    EXPECT_EQ(file().find(hive("H4"))->excluderAbove, Count(1));
    const auto colony = colonyIn(file(), hive("H4"));
    ASSERT_TRUE(colony);
    EXPECT_EQ(colony->origin, Origin::Split);
    EXPECT_FALSE(colony->mother) << "nobody lives in H1";
    EXPECT_FALSE(colonyIn(file(), hive("H1"))) << "without an origin the stand is empty";
    expectClean();
}

TEST_F(Stands, RefuseWhatCannotBeMeant) {
    EXPECT_EQ(outcome(adding("H1")), "taken mark");
    EXPECT_EQ(outcome(adding("H1", {}, "Creek")), "kept") << "each yard has its own marks";
    EXPECT_EQ(outcome(closing("H1")), "ambiguous hive") << "so the mark alone is not enough";
    EXPECT_EQ(
        outcome(R"({"do":"close-hive","on":"2027-06-01","hive":{"hive":"H1","yard":"Creek"}})"),
        "kept");
    EXPECT_EQ(outcome(adding("")), "missing mark");
    EXPECT_EQ(outcome(adding("H5", {}, "Nowhere")), "not_found yard");
    EXPECT_EQ(outcome(adding("H5", R"(,"boxes":"cupboard C1")")), "not_found boxes");
    EXPECT_EQ(outcome(adding("H5", R"(,"origin":"a dream")")), "not_a_choice origin");
    EXPECT_EQ(outcome(adding("H5", {}, "Hill", "2027-02-29")), "not_a_day on");
}

TEST_F(Stands, ClosingMayBringTheBoxesAway) {
    done(adding("H4", R"(,"boxes":"deep D1, medium M1","origin":"swarm")"));
    EXPECT_EQ(outcome(closing("H4")), "not_closed hive");
    EXPECT_EQ(outcome(closing("H4", "2027-06-01", R"(,"boxes_to":"on hive")")), "missing onto");
    EXPECT_EQ(outcome(closing("H4", "2027-06-01", R"(,"boxes_to":"on hive","onto":"H4")")),
              "contradiction onto");
    EXPECT_EQ(outcome(closing("H4", "2027-06-01", R"(,"boxes_to":"storeroom","onto":"H1")")),
              "contradiction onto");
    done(adding("H5", R"(,"boxes":"deep D5")"));
    const std::string before = season.dump();
    done(closing("H4", "2027-06-01", R"(,"ending":"united","boxes_to":"on hive","onto":"H5")"));
    EXPECT_EQ(stack("H5"), "D5 D1 M1") << "in the order they stood";
    expectClean();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before) << "one step back brings all of it back";
    done(closing("H4", "2027-06-01", R"(,"boxes_to":"storeroom","stack":"north wall")"));
    EXPECT_EQ(box("M1").place, BoxPlace::Storeroom);
    EXPECT_EQ(box("M1").stack, "north wall");
    expectClean();
}

TEST_F(Stands, ASlipInTheBoxesIsSaidOfTheBoxes) {
    done(adding("H4", R"(,"boxes":"deep D1")"));
    EXPECT_EQ(outcome(adding("H5", R"(,"boxes":"deep D9, medium D1")")), "taken boxes");
    EXPECT_EQ(outcome(adding("H5", R"(,"boxes":"medium M1, medium M1")")), "taken boxes")
        << "the same number painted twice";
    EXPECT_EQ(outcome(adding("H5", R"(,"boxes":"medium M1 9 gold")")), "not_a_choice boxes");
    EXPECT_EQ(outcome(adding("H5", R"(,"boxes":"medium M1 13")")), "too_many boxes");
}

TEST_F(Stands, NamesAreAsPeopleGiveThem) {
    for (const char* mark : {"007", "Улей 3", "蜂箱", "Bee \\\"Queen\\\" Anne's", "#1", "@home"})
        EXPECT_EQ(outcome(adding(mark)), "kept") << mark;
    EXPECT_EQ(outcome(R"({"do":"write-line","on":"2027-06-01","hive":"007","line":"e"})"), "kept");
    EXPECT_EQ(outcome(R"({"do":"write-line","on":"2027-06-01","hive":"蜂箱","line":"e"})"), "kept");
    EXPECT_EQ(outcome(R"({"do":"write-line","on":"2027-06-01","hive":"7","line":"e"})"),
              "not_found hive")
        << "007 is a name, no number";
    Season copy = *Season::create(path("copy.combwright"), clock);
    playAll(copy, scriptOf(season));
    EXPECT_EQ(copy.dump(), season.dump());
}

TEST_F(Stands, AreClosedOnlyWhenEmpty) {
    done(adding("H4", R"(,"boxes":"deep D1, medium M1","origin":"swarm","stand_order":2)"));
    const auto old = hive("H4");
    EXPECT_EQ(outcome(closing("H4")), "not_closed hive");
    EXPECT_EQ(refusalValue(closing("H4"), "boxes"), "2");
    for (const char* mark : {"D1", "M1"})
        done(R"({"do":"move-box","on":"2027-06-01","box":")" + std::string(mark) +
             R"(","to":"storeroom"})");
    EXPECT_EQ(outcome(closing("H4", "2027-04-09")), "before_it_began on");
    EXPECT_EQ(outcome(closing("H4", "2027-06-01", R"(,"ending":"a dream")")),
              "not_a_choice ending");
    EXPECT_EQ(outcome(closing("H4", "2027-06-01", R"(,"ending":"queenless")")), "kept");
    EXPECT_EQ(walk("Hill"), "H1 H2 H3") << "the walk closes up";
    const auto colony = file().first<Colony>({is("hive", old)});
    EXPECT_EQ(colony->ended, test::day("2027-06-01"));
    EXPECT_EQ(colony->ending, Ending::Queenless);
    EXPECT_EQ(outcome(closing("H4")), "closed hive");
    expectClean();
}

TEST_F(Stands, AMarkIsFreeOnceItsHiveIsClosed) {
    const auto line = [](const char* on) {
        return R"({"do":"write-line","on":")" + std::string(on) + R"(","hive":"H2","line":"e"})";
    };
    const auto old = hive("H2");
    done(line("2027-05-30"));
    done(closing("H2"));
    EXPECT_EQ(outcome(line("2027-06-01")), "closed hive");
    done(adding("H2", R"(,"stand_order":2)", "Hill", "2027-06-20"));
    const auto young = hive("H2", "2027-06-20");
    EXPECT_NE(young, old);
    EXPECT_EQ(hive("H2", "2027-05-31"), old) << "the day goes with the name";
    done(line("2027-05-31"));
    done(line("2027-06-21"));
    EXPECT_EQ(file().where<Inspection>({is("hive", old)}).size(), 2U);
    EXPECT_EQ(file().where<Inspection>({is("hive", young)}).size(), 1U);
    expectClean();
}

TEST_F(Stands, MoveWithinTheirYard) {
    done(moving("H3", R"(,"stand_order":1)"));
    EXPECT_EQ(walk("Hill"), "H3 H1 H2");
    done(moving("H3", R"(,"stand_order":2)"));
    EXPECT_EQ(walk("Hill"), "H1 H3 H2");
    done(moving("H1", {}));
    EXPECT_EQ(walk("Hill"), "H3 H2 H1") << "to the end, where no place is given";
    done(moving("H3", R"(,"stand_order":99)"));
    EXPECT_EQ(walk("Hill"), "H2 H1 H3");
    const auto steps = season.history().size();
    done(moving("H1", R"(,"stand_order":2)"));
    EXPECT_EQ(season.history().size(), steps) << "it stands there: nothing to write down";
}

TEST_F(Stands, MoveBetweenYards) {
    done(adding("C1", {}, "Creek"));
    done(moving("H2", R"(,"yard":"Creek","stand_order":1)"));
    EXPECT_EQ(walk("Hill"), "H1 H3");
    EXPECT_EQ(walk("Creek"), "H2 C1");
    done(adding("H2"));
    EXPECT_EQ(
        outcome(
            R"({"do":"move-hive","on":"2027-06-02","hive":{"hive":"H2","yard":"Creek"},"yard":"Hill"})"),
        "taken hive")
        << "another bears its mark there now";
    expectClean();
}

TEST_F(Stands, AreListedWhereTheyStoodEvenWhenClosed) {
    // H5 comes into the row late, so that order of walking and of coming differ.
    done(adding("H4"));
    done(adding("H5", R"(,"stand_order":2)"));
    done(closing("H2", "2027-06-01"));
    done(closing("H5", "2027-06-08"));
    done(adding("H6", {}, "Hill", "2027-06-09"));
    std::string ever;
    for (const Hive& each : hivesEver(file(), file().find(hive("H1"))->yard))
        ever += each.mark.text() + " ";
    EXPECT_EQ(ever, "H1 H5 H2 H3 H4 H6 ");
}

TEST_F(Stands, DoNotMoveBeforeTheyStoodOrAfterTheyClosed) {
    done(closing("H3"));
    EXPECT_EQ(outcome(moving("H3", R"(,"stand_order":1)", "2027-06-02")), "closed hive");
    EXPECT_EQ(outcome(moving("H2", R"(,"stand_order":1)", "2027-04-09")), "before_it_began on");
    EXPECT_EQ(outcome(moving("H2", R"(,"yard":"Nowhere")")), "not_found yard");
}

}  // namespace
}  // namespace combwright
