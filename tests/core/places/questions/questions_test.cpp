// What is asked back after a line was kept, from the inputs a slip of the pen makes; and that an
// ordinary season raises no question at all.
#include "core/places/questions/questions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/words/units.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

class QuestionsTest : public test::DeedsTest {
  protected:
    void SetUp() override {
        season.onChange([this](const Change& change) {
            for (const Question& question : questionsAfter(season.read(), change, clock.today()))
                asked.push_back(question);
        });
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1 9 drawn"}
{"do":"open-run","on":"2027-06-01","name":"27-1","yard":"Hill"})");
        EXPECT_THAT(asked, IsEmpty());
    }
    /// The questions a line raised, by their names; the line must be kept.
    std::vector<std::string> after(std::string_view line) {
        asked.clear();
        EXPECT_EQ(outcome(line), "kept") << line;
        std::vector<std::string> names;
        for (const Question& question : asked) names.emplace_back(key(question.asked));
        return names;
    }
    std::vector<Question> asked;
};

TEST_F(QuestionsTest, AVisitOfADayThatHasNotComeIsAskedAbout) {
    EXPECT_THAT(after(R"({"do":"write-line","on":"2028-02-29","hive":"H1","line":"e b7"})"),
                ElementsAre("not_come_yet"));
    EXPECT_TRUE(asked.front().says.contains(QStringLiteral("29 Feb 2028")));
}

TEST_F(QuestionsTest, FramesTheBoxesCannotHoldAreAskedAbout) {
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b7 s14"})"),
                IsEmpty());
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"e b7 s99"})"),
                ElementsAre("more_frames_than_fit"));
    clock.set("2027-07-31");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-07-03","hive":"H1","line":"e b15"})"),
                ElementsAre("more_frames_than_fit"))
        << "a super holds no brood";
    done(R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2"}
{"do":"add-hive","on":"2027-07-05","yard":"Hill","mark":"H3","boxes":"deep, deep, x"})");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-07-03","hive":"H2","line":"b25"})"),
                ElementsAre("more_frames_than_fit"))
        << "no box is written down, but no nest is so big";
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-07-06","hive":"H3","line":"b25"})"),
                testing::Contains("more_frames_than_fit"));
}

TEST_F(QuestionsTest, AColonyFoundDeadAsksForItsEnd) {
    done(R"({"do":"start-colony","on":"2027-04-01","hive":"H1","origin":"overwintered"})");
    EXPECT_THAT(
        after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"dead, robbed out"})"),
        ElementsAre("found_dead"));
    EXPECT_THAT(
        after(
            R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"dead bees on the floor"})"),
        IsEmpty())
        << "a note";
}

TEST_F(QuestionsTest, MitesWithoutBeesAskForThem) {
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e w5"})"),
                ElementsAre("bees_not_said"));
}

TEST_F(QuestionsTest, ALineThatLeavesOutWhatTheFirstSaidIsAskedAbout) {
    done(R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"S1","count":3}
{"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b7 +1"})");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b7 s3 +1"})"),
                IsEmpty())
        << "more of it";
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b6 s3 +1"})"),
                IsEmpty())
        << "put right";
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b6"})"),
                ElementsAre("line_replaced"));
    EXPECT_TRUE(asked.front().says.contains(QStringLiteral("H1 had a line that day: “e b6 s3 +1”")))
        << asked.front().says.toStdString();
}

TEST_F(QuestionsTest, BroodThatJumpsIsAskedAboutWithinAFortnightOnly) {
    done(R"({"do":"write-line","on":"2027-05-01","hive":"H1","line":"b2"})");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-05-09","hive":"H1","line":"b9"})"),
                ElementsAre("brood_jumped"));
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-05-30","hive":"H1","line":"b3"})"),
                IsEmpty());
}

TEST_F(QuestionsTest, ASuperFromNowhereIsAskedAbout) {
    done(R"({"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"M5","count":1})");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"+1"})"),
                IsEmpty());
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"+1"})"),
                ElementsAre("box_unknown_before"));
    EXPECT_EQ(asked.front().says,
              QStringLiteral("H1: no super was left in the storeroom; it is written down as one "
                             "without a mark."));
}

TEST_F(QuestionsTest, WashesWithNumbersThatCannotBeAreAskedAbout) {
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"w0/300"})"),
                IsEmpty());
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"w300/4"})"),
                ElementsAre("more_mites_than_bees"));
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-03","hive":"H1","line":"w1/30"})"),
                ElementsAre("sample_unusual"));
}

TEST_F(QuestionsTest, PoundsTypedAsKilogramsAreSuspected) {
    EXPECT_THAT(
        after(R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1","gross_g":21400})"),
        IsEmpty());
    EXPECT_THAT(
        after(R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1","gross_g":45000})"),
        ElementsAre("box_too_heavy"));
    EXPECT_TRUE(asked.front().says.contains(QStringLiteral("Pounds typed as kilograms?")));
    // Who types pounds has not typed them as kilograms.
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_THAT(
        after(R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1","gross_g":46000})"),
        ElementsAre("box_too_heavy"));
    EXPECT_FALSE(asked.front().says.contains(QStringLiteral("Pounds")));
    EXPECT_TRUE(asked.front().says.contains(QStringLiteral("101.4 lb")));
}

TEST_F(QuestionsTest, AWetBoxThatIsStillHeavyIsAskedAbout) {
    EXPECT_THAT(
        after(
            R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1","gross_g":20000,"wet_g":14000})"),
        ElementsAre("hardly_emptied"));
}

TEST_F(QuestionsTest, BucketsFullerThanTheyHoldAndHoneyThatIsNoneAreAskedAbout) {
    EXPECT_THAT(
        after(
            R"({"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B1","net_g":13000,"water_percent":17.4})"),
        IsEmpty());
    EXPECT_THAT(
        after(
            R"({"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B2","net_g":27000,"water_percent":17.4})"),
        ElementsAre("bucket_too_heavy"));
    EXPECT_THAT(
        after(
            R"({"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B3","net_g":13000,"water_percent":12})"),
        ElementsAre("water_unusual"));
    EXPECT_THAT(
        after(
            R"({"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B4","net_g":13000,"water_percent":26})"),
        ElementsAre("water_unusual"));
}

TEST_F(QuestionsTest, AWeighedBucketFilledAnewIsAskedAbout) {
    const auto fill = [](const char* what) {
        return R"({"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B4",)" +
               std::string(what) + "}";
    };
    EXPECT_THAT(after(fill(R"("net_g":6000,"net_how":"by eye")")), IsEmpty());
    EXPECT_THAT(after(fill(R"("net_g":12800)")), IsEmpty()) << "a guess is there to be replaced";
    EXPECT_THAT(after(fill(R"("net_g":12800,"water_percent":17.2)")), IsEmpty());
    EXPECT_THAT(after(fill(R"("lidded":true)")), IsEmpty());
    EXPECT_THAT(after(fill(R"("net_g":12600)")), ElementsAre("bucket_again"));
    EXPECT_TRUE(asked.front().says.contains(QStringLiteral("12.8 kg before; now 12.6 kg")))
        << asked.front().says.toStdString();
    asked.clear();
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.redo());
    EXPECT_THAT(asked, IsEmpty());
    EXPECT_THAT(
        after(
            R"({"do":"amend","on":"2027-06-02","bucket":"B4","set":{"net_g":12500},"why":"slip"})"),
        IsEmpty())
        << "who amends knows what stood there";
}

TEST_F(QuestionsTest, ARunThatGaveMoreThanItGotIsAskedAboutWhenItIsClosed) {
    done(
        R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1","gross_g":20000,"wet_g":5000}
{"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B1","net_g":13000}
{"do":"fill-bucket","on":"2027-06-01","run":"27-1","mark":"B2","net_g":13000})");
    EXPECT_THAT(after(R"({"do":"close-run","on":"2027-06-01","run":"27-1"})"),
                ElementsAre("more_out_than_in"));
}

TEST_F(QuestionsTest, ANameThatDiffersByItsCapitalsIsAskedAbout) {
    EXPECT_THAT(after(R"({"do":"add-yard","on":"2027-04-02","yard_name":"hill"})"),
                ElementsAre("name_alike"));
    EXPECT_THAT(
        after(R"({"do":"add-hive","on":"2027-04-02","yard":"Hill","mark":"h1","boxes":"deep D2"})"),
        ElementsAre("name_alike"));
}

TEST_F(QuestionsTest, MuchFedIsAskedAbout) {
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-03","hive":"H1","line":"f300"})"),
                ElementsAre("much_fed", "fed_nobody"));
}

TEST_F(QuestionsTest, MarksThatCannotBothBeAreAskedAbout) {
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-03","hive":"H1","line":"x e b5"})"),
                ElementsAre("marks_disagree"));
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-04","hive":"H1","line":"x light"})"),
                IsEmpty());
}

TEST_F(QuestionsTest, LifeWhereNoColonyLivesIsAskedAbout) {
    done(R"({"do":"start-colony","on":"2027-04-05","hive":"H1","origin":"swarm"}
{"do":"end-colony","on":"2027-05-01","hive":"H1","ending":"queenless"})");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-04-20","hive":"H1","line":"e"})"),
                IsEmpty());
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-05-20","hive":"H1","line":"e"})"),
                ElementsAre("nobody_lives"));
}

TEST_F(QuestionsTest, WaterOfASampleFromABoxIsAskedAboutToo) {
    EXPECT_THAT(after(R"({"do":"look-box","on":"2027-06-03","box":"M1","water_percent":26})"),
                ElementsAre("water_unusual"));
    EXPECT_THAT(after(R"({"do":"look-box","on":"2027-06-04","box":"M1","water_percent":17.4})"),
                IsEmpty());
}

TEST_F(QuestionsTest, WhatIsTakenBackRaisesNone) {
    done(R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"b7 s99"})");
    asked.clear();
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(asked, IsEmpty());
}

TEST_F(QuestionsTest, ABoxOfARunWithImpossibleFramesOrOfAnotherYardIsAskedAbout) {
    done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Creek","mark":"C1","boxes":"deep, x, medium K1 9 drawn"})");
    EXPECT_THAT(after(R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1","frames":0})"),
                ElementsAre("no_frames"));
    EXPECT_THAT(
        after(R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"M1","frames":14})"),
        ElementsAre("more_frames_than_fit"));
    EXPECT_THAT(after(R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"K1"})"),
                ElementsAre("other_yard"));
    EXPECT_THAT(
        after(R"({"do":"weigh-box","on":"2027-06-01","run":"27-1","box":"K1","wet_g":5000})"),
        IsEmpty())
        << "once is enough";
}

}  // namespace
}  // namespace combwright
