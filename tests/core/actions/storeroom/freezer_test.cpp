#include "core/actions/storeroom/freezer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <memory>

#include "core/places/questions/questions.h"
#include "core/words/words.h"
#include "tests/core/places/storeroom/shelf_fixture.h"

namespace combwright {
namespace {

using test::day;

class FreezerDeeds : public test::ShelfTest {
  protected:
    Season shed() {
        Season season = newSeason();
        playAll(
            season,
            R"({"do":"add-boxes","on":"2027-11-01","kind":"deep","first_mark":"D1","count":3,"contents":"10 drawn"}
{"do":"add-boxes","on":"2027-11-01","kind":"medium","first_mark":"M01","count":3,"contents":"9 drawn"})");
        addFreezer(season, {}, 16, "M01");
        return season;
    }
    /// What is asked after a line that is kept.
    static std::vector<Asked> askedAfter(Season& season, const std::string& line) {
        std::vector<Asked> asked;
        const auto change = std::make_shared<Change>();
        season.onChange([change](const Change& told) { *change = told; });
        playAll(season, line);
        for (const Question& each : questionsAfter(season.read(), *change, day("2028-03-01"))) {
            EXPECT_FALSE(each.says.contains(QLatin1Char('%'))) << each.says.toStdString();
            asked.push_back(each.asked);
        }
        return asked;
    }
};

TEST_F(FreezerDeeds, ReadsWhichFramesGoIn) {
    Season season = shed();
    judge(season, "D1", 6, Verdict::Keep, "O");
    judge(season, "M03", 2, Verdict::Refit, "W");
    playAll(
        season,
        R"({"do":"freeze-frames","on":"2028-01-10","boxes":"M01 5, M03, D1 6 O","note":"first"})");
    const auto loads = season.read().all<FreezerLoad>();
    ASSERT_EQ(loads.size(), 3U);
    EXPECT_EQ(loads[0].frames, Count(5));
    EXPECT_EQ(loads[1].frames, Count(7)) << "what goes into the pot is not frozen";
    EXPECT_EQ(loads[2].frames, Count(6));
    EXPECT_EQ(loads[2].faults, "O");
    EXPECT_EQ(box(season, "M01").place, BoxPlace::Storeroom) << "the box stays on its shelf";
    // What is in cannot go in again.
    const auto twice =
        refused(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"M01 5"})");
    EXPECT_EQ(twice.code, Code::TooMany);
    EXPECT_EQ(twice.value("most"), "4");
    EXPECT_THAT(sentence(twice).toStdString(), testing::HasSubstr("at most 4"));
}

TEST_F(FreezerDeeds, WithoutAFreezerSaysWhatToDo) {
    Season season = newSeason();
    playAll(
        season,
        R"({"do":"add-boxes","on":"2027-11-01","kind":"deep","first_mark":"D1","contents":"10 drawn"})");
    const std::string before = season.dump();
    const auto none = refused(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1"})");
    EXPECT_EQ(none.code, Code::Missing);
    EXPECT_EQ(none.field, "freezer");
    EXPECT_THAT(sentence(none).toStdString(), testing::HasSubstr("Enter it with the equipment"));
    EXPECT_EQ(season.dump(), before);
}

TEST_F(FreezerDeeds, SeveralFreezersAreNamed) {
    Season season = shed();
    addFreezer(season, 200, {}, nullptr, "upright");
    EXPECT_EQ(refused(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1"})").code,
              Code::Ambiguous);
    playAll(season,
            R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1","freezer":"upright"}
{"do":"freeze-frames","on":"2028-01-11","boxes":"M01","freezer":"chest"})");
    EXPECT_EQ(refused(season, R"({"do":"take-out-frozen","on":"2028-01-12"})").code,
              Code::Ambiguous);
    playAll(season, R"({"do":"take-out-frozen","on":"2028-01-12","round":"2028-01-10"})");
    EXPECT_EQ(frozen(season, "D1"), 10U);
    EXPECT_EQ(frozen(season, "M01"), 0U);
}

TEST_F(FreezerDeeds, HeldCombSharesNoRound) {
    Season season = shed();
    judge(season, "D1", 4, Verdict::Hold, "D");
    playAll(season,
            R"({"do":"hold-back","on":"2027-11-02","reason":"dead-out unexplained","box":"D2"})");
    const auto mixed =
        refused(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"M01, D2"})");
    EXPECT_EQ(mixed.code, Code::Contradiction);
    EXPECT_THAT(sentence(mixed).toStdString(),
                testing::AllOf(testing::HasSubstr("D2"), testing::HasSubstr("foulbrood")));
    EXPECT_EQ(refused(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1 10"})").code,
              Code::Contradiction)
        << "four of D1 are held";
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D2, D1 4 D"})");
    EXPECT_EQ(refused(season, R"({"do":"freeze-frames","on":"2028-01-11","boxes":"M01"})").code,
              Code::Contradiction)
        << "held comb lies in it";
}

TEST_F(FreezerDeeds, AsksAboutTooManyAndAboutWetComb) {
    Season season = shed();
    EXPECT_TRUE(
        askedAfter(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"M01 8, M02 8"})")
            .empty());
    EXPECT_THAT(askedAfter(season, R"({"do":"freeze-frames","on":"2028-01-11","boxes":"M03 2"})"),
                testing::ElementsAre(Asked::FreezerOverfull));
    write(season, [&](Write& file) {
        for (Frame& frame : file.where<Frame>({is("box", box(season, "D1").id)})) {
            frame.wet = true;
            file.change(frame);
        }
    });
    playAll(season, R"({"do":"take-out-frozen","on":"2028-01-13","round":"2028-01-10"}
{"do":"take-out-frozen","on":"2028-01-13","round":"2028-01-11"})");
    EXPECT_THAT(askedAfter(season, R"({"do":"freeze-frames","on":"2028-01-13","boxes":"D1 3"})"),
                testing::ElementsAre(Asked::WetIntoFreezer));
}

TEST_F(FreezerDeeds, NotLongEnoughIsAskedAboutAndFreezesNothing) {
    Season season = shed();
    playAll(season,
            R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1","at":"2028-01-10T08:00:00Z"})");
    EXPECT_THAT(
        askedAfter(season,
                   R"({"do":"take-out-frozen","on":"2028-01-10","at":"2028-01-10T10:00:00Z"})"),
        testing::ElementsAre(Asked::NotColdEnough));
    EXPECT_EQ(frozen(season, "D1"), 0U);
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1","temperature_c":0})");
    EXPECT_THAT(askedAfter(season, R"({"do":"take-out-frozen","on":"2028-01-30"})"),
                testing::ElementsAre(Asked::NotColdEnough))
        << "zero is no kill";
    EXPECT_EQ(frozen(season, "D1"), 0U);
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-30","boxes":"D1"})");
    EXPECT_TRUE(askedAfter(season, R"({"do":"take-out-frozen","on":"2028-02-01"})").empty());
    EXPECT_EQ(frozen(season, "D1"), 10U);
}

TEST_F(FreezerDeeds, ABoxOpenedGoesStale) {
    Season season = shed();
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1 5, D2"}
{"do":"take-out-frozen","on":"2028-01-12"})");
    const std::string frozenDump = season.dump();
    playAll(season,
            R"({"do":"spoil-frozen","on":"2028-04-02","boxes":"D1","reason":"left in the sun"})");
    EXPECT_EQ(frozen(season, "D1"), 0U);
    EXPECT_EQ(frozen(season, "D2"), 10U);
    const auto loads = season.read().all<FreezerLoad>();
    EXPECT_EQ(loads[0].stale, day("2028-04-02"));
    EXPECT_EQ(loads[0].staleWhy, "left in the sun");
    EXPECT_FALSE(loads[1].stale);
    EXPECT_EQ(refused(season, R"({"do":"spoil-frozen","on":"2028-04-03","boxes":"D1"})").code,
              Code::NothingToDo);
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), frozenDump);
}

TEST_F(FreezerDeeds, WhatWasSpoiltInsideComesOutUnfrozen) {
    Season season = shed();
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1, M01 4"}
{"do":"spoil-frozen","on":"2028-01-11","boxes":"D1","reason":"lid left open"}
{"do":"take-out-frozen","on":"2028-01-12"})");
    EXPECT_EQ(frozen(season, "D1"), 0U);
    EXPECT_EQ(frozen(season, "M01"), 4U);
}

TEST_F(FreezerDeeds, SlipsOfThePenAreTold) {
    Season season = shed();
    const auto code = [&](const char* rest) {
        return refused(season,
                       std::string(R"({"do":"freeze-frames","on":"2028-01-10",)") + rest + "}")
            .code;
    };
    EXPECT_EQ(code(R"("boxes":"")"), Code::Missing);
    EXPECT_EQ(code(R"("boxes":"Q7 3")"), Code::NotFound);
    EXPECT_EQ(code(R"("boxes":"D1 0")"), Code::OutOfRange);
    EXPECT_EQ(code(R"("boxes":"D1 11")"), Code::TooMany);
    EXPECT_EQ(code(R"("boxes":"D1 3 O")"), Code::TooMany) << "none has mould";
    EXPECT_EQ(code(R"("boxes":"D1","hours":0)"), Code::OutOfRange);
    EXPECT_EQ(code(R"("boxes":"D1","temperature_c":60)"), Code::OutOfRange);
    EXPECT_EQ(code(R"("boxes":"loose medium 3")"), Code::TooMany);
    playAll(season, R"({"do":"add-boxes","on":"2027-11-01","kind":"deep","first_mark":"E1"})");
    EXPECT_EQ(code(R"("boxes":"E1")"), Code::OtherAction) << "nobody counted it";
    EXPECT_EQ(refused(season, R"({"do":"take-out-frozen","on":"2028-01-12"})").code,
              Code::NothingToDo);
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1"})");
    EXPECT_EQ(refused(season, R"({"do":"take-out-frozen","on":"2028-01-09"})").code,
              Code::BeforeItBegan);
    playAll(season, R"({"do":"take-out-frozen","on":"2028-01-12"})");
    EXPECT_EQ(
        refused(season, R"({"do":"take-out-frozen","on":"2028-01-12","round":"2028-01-10"})").code,
        Code::Closed);
}

TEST_F(FreezerDeeds, LooseFramesGoInToo) {
    Season season = shed();
    const auto kind = kindOf(season, "M01").id;
    write(season, [&](Write& file) {
        for (int n = 0; n < 4; ++n) {
            Frame frame;
            frame.kind = kind;
            frame.comb = Comb::Drawn;
            frame.stack = "shelf 2";
            file.add(frame);
        }
    });
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"loose medium 3"}
{"do":"take-out-frozen","on":"2028-01-12"})");
    std::size_t many = 0;
    for (const Frame& frame : season.read().where<Frame>({isUnknown("box")}))
        many += frame.frozen.has_value();
    EXPECT_EQ(many, 3U);
}

TEST_F(FreezerDeeds, ABoxWhoseMarkEndsInANumberIsABox) {
    Season season = shed();
    playAll(
        season,
        R"({"do":"add-boxes","on":"2027-11-01","kind":"medium","first_mark":"box 7","contents":"9 drawn"}
{"do":"freeze-frames","on":"2028-01-10","boxes":"box 7, M01 2"})");
    EXPECT_EQ(season.read().all<FreezerLoad>().front().frames, Count(9));
}

}  // namespace
}  // namespace combwright
