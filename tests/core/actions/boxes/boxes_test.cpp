// Boxes bought and moved: marks count up and are never painted twice, levels have no gap, and every
// move is written down.
#include "core/actions/boxes/boxes.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

class BoxesAdded : public test::DeedsTest {
  protected:
    std::vector<std::string> marks() const {
        std::vector<std::string> all;
        for (const Box& each : file().all<Box>()) all.push_back(each.mark);
        return all;
    }
    static std::string adding(const char* first, int count) {
        return R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":")" +
               std::string(first) + R"(","count":)" + std::to_string(count) + "}";
    }
};

TEST_F(BoxesAdded, MarksCountUpAndKeepTheirZeros) {
    struct {
        const char* first;
        int count;
        std::vector<std::string> marks;
    } const rows[] = {
        {"M43", 3, {"M43", "M44", "M45"}},
        {"M07", 4, {"M07", "M08", "M09", "M10"}},
        {"M099", 2, {"M099", "M100"}},
        {"N99", 2, {"N99", "N100"}},
        {"007", 2, {"007", "008"}},
        {"Kiste Ä 9", 2, {"Kiste Ä 9", "Kiste Ä 10"}},
        {"999999999", 2, {"999999999", "1000000000"}},
        {"no number", 1, {"no number"}},
        {"", 2, {"", ""}},
    };
    for (const auto& row : rows) {
        done(adding(row.first, row.count));
        EXPECT_EQ(marks(), row.marks) << row.first;
        ASSERT_TRUE(season.undo());
    }
}

TEST_F(BoxesAdded, RefuseWhatCannotBeMeant) {
    EXPECT_EQ(outcome(adding("M", 2)), "wrong_type first_mark");
    EXPECT_EQ(outcome(adding("M1234567890", 2)), "wrong_type first_mark");
    EXPECT_EQ(outcome(adding("M1", 0)), "out_of_range count");
    EXPECT_EQ(outcome(adding("M1", 501)), "out_of_range count");
    EXPECT_EQ(outcome(adding("M1", -1)), "negative count");
    EXPECT_EQ(outcome(R"({"do":"add-boxes","on":"2027-05-01","kind":"cupboard"})"),
              "not_found kind");
    EXPECT_EQ(
        outcome(R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","contents":"9 gold"})"),
        "not_a_choice contents");
}

TEST_F(BoxesAdded, FiveHundredAreTheMostAtATime) {
    EXPECT_EQ(outcome(adding("M1", 500)), "kept");
    EXPECT_EQ(marks().size(), 500U);
    EXPECT_EQ(marks().back(), "M500");
}

TEST_F(BoxesAdded, ATakenMarkKeepsNoneOfThem) {
    done(adding("M3", 1));
    EXPECT_EQ(code(adding("M1", 5)), "taken");
    EXPECT_EQ(refusalValue(adding("M1", 5), "name"), "M3");
    EXPECT_EQ(marks().size(), 1U);
    EXPECT_EQ(outcome(adding("m3", 1)), "kept") << "marks are as they are painted";
}

TEST_F(BoxesAdded, ATakenMarkIsSaidOfTheFieldItStandsIn) {
    done(adding("M3", 1));
    EXPECT_EQ(outcome(adding("M1", 5)), "taken first_mark") << "there is no field mark";
}

TEST_F(BoxesAdded, FillEachWithWhatWasListed) {
    done(
        R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M1","count":2,"contents":"8 drawn, 1 V","stack":"A"})");
    for (const char* mark : {"M1", "M2"}) {
        const auto frames = file().where<Frame>({is("box", box(mark).id)});
        EXPECT_EQ(frames.size(), 9U);
        EXPECT_EQ(std::count_if(frames.begin(), frames.end(),
                                [](const Frame& frame) { return frame.faults == "V"; }),
                  1);
        EXPECT_EQ(file().where<BoxCount>({is("box", box(mark).id)}).size(), 2U);
        EXPECT_EQ(box(mark).stack, "A");
        EXPECT_EQ(box(mark).place, BoxPlace::Storeroom);
        EXPECT_EQ(movesOf(mark), 1U) << "its coming is written down";
    }
}

TEST_F(BoxesAdded, WhatIsSaidOfTheHoneyIsALookOfThatDay) {
    done(
        R"({"do":"add-boxes","on":"2027-07-20","kind":"medium","first_mark":"L1","count":2,"contents":"9 drawn; 7 capped, 85 % full"})");
    for (const char* mark : {"L1", "L2"}) {
        const auto looks = file().where<BoxLook>({is("box", box(mark).id)});
        ASSERT_EQ(looks.size(), 1U) << mark;
        EXPECT_EQ(looks[0].on, test::day("2027-07-20"));
        EXPECT_EQ(looks[0].frames, Count(9));
        EXPECT_EQ(looks[0].cappedFrames->value, Frames::whole(7));
        EXPECT_EQ(looks[0].filled->value, Share::percent(85));
    }
    done(R"({"do":"add-yard","on":"2027-07-20","yard_name":"Lake"})");
    done(
        R"({"do":"add-hive","on":"2027-07-20","yard":"Lake","mark":"HL","boxes":"deep DL, x, medium ML 9 drawn; 7 capped"})");
    EXPECT_EQ(file().first<BoxLook>({is("box", box("ML").id)})->cappedFrames->value,
              Frames::whole(7));
    EXPECT_FALSE(file().first<BoxLook>({is("box", box("DL").id)}))
        << "of this one nothing was said";
}

TEST_F(BoxesAdded, HoldNoMoreFramesThanFit) {
    const auto holding = [](const char* contents) {
        return R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","contents":")" +
               std::string(contents) + "\"}";
    };
    EXPECT_EQ(outcome(holding("12 drawn")), "kept") << "two wedged in";
    EXPECT_EQ(outcome(holding("13 drawn")), "too_many contents");
}

class BoxMoves : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1, medium M2, medium M3"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2"}
{"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M8","count":2,"stack":"A"})");
    }
    static std::string moving(const char* mark, const std::string& rest,
                              const char* on = "2027-06-01") {
        return R"({"do":"move-box","on":")" + std::string(on) + R"(","box":")" + mark + R"(",)" +
               rest + "}";
    }
    static std::string onto(const char* hive, int level = -1) {
        return R"("to":"on hive","hive":")" + std::string(hive) + '"' +
               (level < 0 ? "" : R"(,"level":)" + std::to_string(level));
    }
};

TEST_F(BoxMoves, LevelsHaveNoGap) {
    const std::string store = R"("to":"storeroom")";
    done(moving("M2", store));
    EXPECT_EQ(stack("H1"), "D1 M1 M3");
    done(moving("M8", onto("H1")));
    EXPECT_EQ(stack("H1"), "D1 M1 M3 M8") << "on top, where no level is given";
    done(moving("M9", onto("H1", 1)));
    EXPECT_EQ(stack("H1"), "D1 M9 M1 M3 M8");
    done(moving("M2", onto("H1", 99)));
    EXPECT_EQ(stack("H1"), "D1 M9 M1 M3 M8 M2") << "no higher than the top";
    done(moving("M1", onto("H2", 0)));
    EXPECT_EQ(stack("H1"), "D1 M9 M3 M8 M2");
    EXPECT_EQ(stack("H2"), "M1 D2");
    done(moving("D1", R"("to":"gone")"));
    EXPECT_EQ(stack("H1"), "M9 M3 M8 M2");
    expectClean();
}

TEST_F(BoxMoves, WithinOneHiveLevelsCountWithoutTheBoxItself) {
    const struct {
        const char* mark;
        int level;
        const char* stack;
    } rows[] = {
        {"M3", 1, "D1 M3 M1 M2"}, {"D1", 3, "M3 M1 M2 D1"}, {"D1", 0, "D1 M3 M1 M2"},
        {"M3", 2, "D1 M1 M3 M2"}, {"M1", 3, "D1 M3 M2 M1"}, {"M3", 99, "D1 M2 M1 M3"},
    };
    for (const auto& row : rows) {
        done(moving(row.mark, onto("H1", row.level)));
        EXPECT_EQ(stack("H1"), row.stack) << row.mark << " to " << row.level;
    }
    expectClean();
}

TEST_F(BoxMoves, EveryMoveIsWrittenDown) {
    done(moving("M3", onto("H2"), "2027-06-01"));
    done(moving("M3", R"("to":"waiting")", "2027-08-06"));
    const auto moves = file().where<BoxMove>({is("box", box("M3").id)});
    ASSERT_EQ(moves.size(), 3U);
    EXPECT_FALSE(moves[0].fromPlace) << "its coming";
    EXPECT_EQ(moves[1].on, test::day("2027-06-01"));
    EXPECT_EQ(moves[1].fromHive, hive("H1"));
    EXPECT_EQ(moves[1].fromLevel, Count(3));
    EXPECT_EQ(moves[1].toHive, hive("H2"));
    EXPECT_EQ(moves[1].toLevel, Count(1));
    EXPECT_EQ(moves[2].fromHive, hive("H2"));
    EXPECT_EQ(moves[2].toPlace, BoxPlace::Waiting);
    EXPECT_FALSE(moves[2].toHive);
    EXPECT_FALSE(moves[2].toLevel);
}

TEST_F(BoxMoves, GivenBackKnowsItsHiveAndTakesNoLevel) {
    done(moving("M8", R"("to":"given back","hive":"H1")"));
    EXPECT_EQ(box("M8").hive, hive("H1"));
    EXPECT_FALSE(box("M8").level);
    EXPECT_EQ(stack("H1"), "D1 M1 M2 M3");
    expectClean();
}

TEST_F(BoxMoves, RefuseWhatCannotBeMeant) {
    EXPECT_EQ(outcome(moving("M8", R"("to":"on hive")")), "missing hive");
    EXPECT_EQ(outcome(moving("M8", R"("to":"storeroom","hive":"H1","stack":"B")")),
              "contradiction hive");
    EXPECT_EQ(outcome(moving("M8", R"("to":"storeroom","stack":"A")")), "nothing_to_do box");
    EXPECT_EQ(outcome(moving("M3", onto("H1"))), "nothing_to_do box");
    EXPECT_EQ(outcome(moving("M3", onto("H1", 3))), "nothing_to_do box");
    EXPECT_EQ(outcome(moving("M8", onto("H1"), "2027-04-30")), "before_it_began on");
    EXPECT_EQ(outcome(moving("M77", onto("H1"))), "not_found box");
    EXPECT_EQ(outcome(moving("M8", R"("to":"cupboard")")), "not_a_choice to");
    EXPECT_EQ(outcome(moving("M8", R"("to":"storeroom","stack":"B")")), "kept")
        << "another shelf is another spot";
}

TEST_F(BoxMoves, ATopBoxPutHigherStaysWhereItIs) {
    EXPECT_EQ(outcome(moving("M3", onto("H1", 99))), "nothing_to_do box");
    EXPECT_EQ(movesOf("M3"), 1U);
}

TEST_F(BoxMoves, AClosedHiveTakesNone) {
    done(moving("D2", R"("to":"storeroom")"));
    done(R"({"do":"close-hive","on":"2027-06-02","hive":"H2"})");
    EXPECT_EQ(outcome(moving("M8", onto("H2"), "2027-06-03")), "closed hive");
}

TEST_F(BoxMoves, AHiveThatDidNotStandYetTakesNone) {
    done(R"({"do":"add-hive","on":"2027-07-01","yard":"Hill","mark":"H3","boxes":"deep D3"})");
    EXPECT_EQ(outcome(moving("M8", onto("H3"), "2027-06-30")), "before_it_began on");
    EXPECT_EQ(outcome(moving("M8", onto("H3"), "2027-07-01")), "kept");
}

TEST_F(BoxMoves, AMarkIsFreeOnceItsBoxIsGone) {
    const std::string add =
        R"({"do":"add-boxes","on":"2027-06-02","kind":"deep","first_mark":"M8"})";
    EXPECT_EQ(outcome(moving("M8", R"("to":"lent")")), "kept");
    EXPECT_EQ(code(add), "taken") << "lent is still ours";
    const auto old = box("M8").id;
    done(moving("M8", R"("to":"gone")"));
    EXPECT_EQ(outcome(add), "kept");
    EXPECT_NE(box("M8").id, old) << "the name means the one in use";
    expectClean();
}

TEST_F(BoxMoves, AGoneBoxDoesNotComeBackUnderATakenMark) {
    const std::string old = "#" + std::to_string(box("M8").id.number);
    done(moving("M8", R"("to":"gone")"));
    done(R"({"do":"add-boxes","on":"2027-06-02","kind":"deep","first_mark":"M8"})");
    EXPECT_EQ(outcome(moving(old.c_str(), R"("to":"storeroom")", "2027-06-03")), "taken box");
    expectClean();
}

class Excluders : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, deep D2, x, medium M1, medium M2"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D3"})");
    }
    /// How many boxes stand under it; 0 where there is none.
    std::int64_t under(const char* mark) const {
        return file().find(hive(mark))->excluderAbove.value_or(Count(0)).value();
    }
};

TEST_F(Excluders, StayOnTheNestWhenABoxOfItGoes) {
    done(R"({"do":"move-box","on":"2027-05-01","box":"D2","to":"storeroom"})");
    EXPECT_EQ(under("H1"), 1);
    done(R"({"do":"move-box","on":"2027-05-02","box":"M2","to":"storeroom"})");
    EXPECT_EQ(under("H1"), 1);
    done(R"({"do":"move-box","on":"2027-05-03","box":"D2","to":"on hive","hive":"H1","level":0})");
    EXPECT_EQ(under("H1"), 2);
    EXPECT_EQ(stack("H1"), "D2 D1 M1");
    // On the excluder itself a box is a super.
    done(R"({"do":"move-box","on":"2027-05-04","box":"M2","to":"on hive","hive":"H1","level":2})");
    EXPECT_EQ(under("H1"), 2);
    EXPECT_EQ(stack("H1"), "D2 D1 M2 M1");
}

TEST_F(Excluders, GoWithTheLastBoxOfTheNestAndAreNotInvented) {
    done(R"({"do":"move-box","on":"2027-05-01","box":"D2","to":"storeroom"}
{"do":"move-box","on":"2027-05-01","box":"D1","to":"storeroom"})");
    EXPECT_EQ(under("H1"), 0);
    done(R"({"do":"move-box","on":"2027-05-02","box":"D1","to":"on hive","hive":"H2","level":0})");
    EXPECT_EQ(under("H2"), 0);
}

TEST_F(Excluders, ComeBackWithTheLineThatTookTheBoxOff) {
    done(R"({"do":"write-line","on":"2027-05-01","hive":"H1","line":"b6 -1d -1"})");
    EXPECT_EQ(stack("H1"), "D1 M1");
    EXPECT_EQ(under("H1"), 1);
    done(R"({"do":"write-line","on":"2027-05-01","hive":"H1","line":"b6"})");
    EXPECT_EQ(stack("H1"), "D1 D2 M1 M2");
    EXPECT_EQ(under("H1"), 2);
}

}  // namespace
}  // namespace combwright
