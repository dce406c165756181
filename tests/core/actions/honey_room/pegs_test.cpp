// Pegs: a number is one box on one day, the pull clips it, the wet weight frees it, and a box
// nobody knows keeps a line of its own until somebody does.
#include "core/actions/honey_room/pegs.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/honey_room/run_balance.h"
#include "core/storage/audit.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/pegs.h"
#include "core/words/words.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class PegsOnBoxes : public test::SeasonTest {
  protected:
    Season season = [this] {
        clock.set("2027-08-06");
        Season made = newSeason();
        playAll(made, test::hillAndCreekBefore());
        return made;
    }();
    const Read& file() const { return season.read(); }
    void does(const std::string& script) { playAll(season, script); }
    std::optional<Refusal> refused(const std::string& line) {
        const std::string before = season.dump();
        const PlayResult result = play(season, line);
        if (!result.stopped) return std::nullopt;
        EXPECT_EQ(season.dump(), before);
        return result.stopped->refusal;
    }
    Box box(const char* mark) const { return *file().first<Box>({is("mark", std::string(mark))}); }
    std::optional<Peg> peg(int number, const char* on) const {
        return pegOn(file(), Count(number), test::day(on));
    }
    ExtractionBox entry(int number) const {
        return *file().find(Id<ExtractionBox>{static_cast<std::int64_t>(number)});
    }
};

TEST_F(PegsOnBoxes, ABoxThatGetsItsPegLeavesItsHiveAndWaits) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b"})");
    EXPECT_EQ(box("H1b").place, BoxPlace::Waiting);
    EXPECT_EQ(peg(14, "2027-08-06")->box, box("H1b").id);
    EXPECT_EQ(peg(14, "2027-08-06")->hive, Id<Hive>{1}) << "the hive it came off";
    EXPECT_FALSE(peg(14, "2027-08-05"));
    does(R"({"do":"move-box","on":"2027-08-06","box":"H2a","to":"cleared"}
{"do":"clip-peg","on":"2027-08-07","peg":15,"box":"H2a"})");
    EXPECT_EQ(box("H2a").place, BoxPlace::Waiting);
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(box("H2a").place, BoxPlace::Cleared);
    EXPECT_FALSE(peg(15, "2027-08-07"));
}

TEST_F(PegsOnBoxes, AnUnmarkedBoxIsNamedByHiveAndPlace) {
    does(
        R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H9","boxes":"deep, x, medium 9 drawn, medium 9 drawn"}
{"do":"clip-peg","on":"2027-08-06","peg":3,"box":{"hive":"H9","place":3}}
{"do":"clip-peg","on":"2027-08-06","peg":4,"box":{"hive":"H9","place":2}}
{"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":3,"gross_g":21400})");
    EXPECT_EQ(entry(1).box, peg(3, "2027-08-06")->box);
    EXPECT_EQ(nameOf(file(), Hive::table, entry(1).hive->number), "H9");
    EXPECT_EQ(entry(1).frames, Count(9));
    EXPECT_EQ(entry(1).knownAs, "peg 3") << "it has no mark to be called by";
    // By that name its frames are spun.
    does(R"({"do":"spin-load","on":"2027-08-06","run":"27-1","boxes":"peg 3 9","ran":"smooth"})");
    EXPECT_EQ(
        refused(R"({"do":"clip-peg","on":"2027-08-06","peg":5,"box":{"hive":"H9","place":2}})")
            ->code,
        Code::NotFound)
        << "nothing stands there any more";
}

TEST_F(PegsOnBoxes, ANumberIsOneBoxOnOneDay) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b"})");
    const auto twice = refused(R"({"do":"clip-peg","on":"2027-08-07","peg":14,"box":"H2a"})");
    ASSERT_TRUE(twice);
    EXPECT_EQ(twice->code, Code::Taken);
    EXPECT_TRUE(sentence(*twice).startsWith(QStringLiteral("Peg 14 is on H1b since 2027-08-06.")))
        << sentence(*twice).toStdString();
    const auto before = refused(R"({"do":"clip-peg","on":"2027-08-05","peg":14,"box":"H2a"})");
    EXPECT_EQ(before->code, Code::Taken) << "it would still be on when it goes on the other";
    const auto second = refused(R"({"do":"clip-peg","on":"2027-08-06","peg":15,"box":"H1b"})");
    EXPECT_EQ(second->code, Code::Taken);
    EXPECT_TRUE(sentence(*second).startsWith(QStringLiteral("H1b carries peg 14")))
        << sentence(*second).toStdString();
    EXPECT_EQ(refused(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b"})")->code,
              Code::NothingToDo);
    EXPECT_EQ(refused(R"({"do":"clip-peg","on":"2027-08-06","peg":0})")->code, Code::OutOfRange);
    EXPECT_EQ(refused(R"({"do":"clip-peg","on":"2027-08-06","peg":1000})")->code, Code::OutOfRange);
    // Free again the day after it came off, not before.
    does(R"({"do":"take-peg-off","on":"2027-08-07","peg":14})");
    EXPECT_EQ(refused(R"({"do":"take-peg-off","on":"2027-08-07","peg":14})")->code,
              Code::NothingToDo);
    EXPECT_EQ(refused(R"({"do":"clip-peg","on":"2027-08-07","peg":14,"box":"H2a"})")->code,
              Code::Taken);
    does(R"({"do":"clip-peg","on":"2027-08-08","peg":14,"box":"H2a"})");
    EXPECT_EQ(peg(14, "2027-08-07")->box, box("H1b").id);
    EXPECT_EQ(peg(14, "2027-08-08")->box, box("H2a").id);
    EXPECT_EQ(refused(R"({"do":"take-peg-off","on":"2027-08-08","peg":9})")->code, Code::NotFound);
}

TEST_F(PegsOnBoxes, APegOnTheWrongBoxSaysWhereWhoeverKnowsNothing) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":7,"hive":"H3"}
{"do":"clip-peg","on":"2027-08-06","peg":8})");
    EXPECT_TRUE(sentence(*refused(R"({"do":"clip-peg","on":"2027-08-06","peg":7,"box":"H2a"})"))
                    .startsWith(QStringLiteral("Peg 7 is on a box of H3 since")));
    EXPECT_TRUE(sentence(*refused(R"({"do":"clip-peg","on":"2027-08-06","peg":8,"box":"H2a"})"))
                    .startsWith(QStringLiteral("Peg 8 is on a box nobody knows since")));
}

TEST_F(PegsOnBoxes, WeighedWetItComesOff) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b"}
{"do":"clip-peg","on":"2027-08-06","peg":15,"box":"H2a"}
{"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":14,"gross_g":19800}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","peg":14,"wet_g":5000})");
    EXPECT_EQ(entry(1).box, box("H1b").id);
    EXPECT_EQ(entry(1).wet->value, Mass::grams(5000));
    EXPECT_EQ(entry(1).knownAs, "") << "it has a mark";
    EXPECT_EQ(box("H1b").place, BoxPlace::Wet);
    EXPECT_EQ(peg(14, "2027-08-07")->off, test::day("2027-08-07"));
    EXPECT_FALSE(peg(14, "2027-08-08")) << "free again tomorrow";
    // Until the evening it still means that box: a weight misread is typed again.
    does(R"({"do":"weigh-box","on":"2027-08-07","run":"27-1","peg":14,"wet_g":5100})");
    EXPECT_EQ(entry(1).wet->value, Mass::grams(5100));
    // By its mark it comes off too.
    does(R"({"do":"weigh-box","on":"2027-08-07","run":"27-1","box":"H2a","wet_g":5300})");
    EXPECT_FALSE(peg(15, "2027-08-08"));
    EXPECT_EQ(refused(R"({"do":"weigh-box","on":"2027-08-08","run":"27-1","peg":14,"wet_g":1})")
                  ->value("lacks"),
              "peg");
    EXPECT_THAT(audit(file()), testing::IsEmpty());
}

TEST_F(PegsOnBoxes, WetHeavierThanFullIsRefusedAndThePegStays) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b"}
{"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":14,"gross_g":19800})");
    EXPECT_EQ(refused(R"({"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":14,"wet_g":19900})")
                  ->code,
              Code::Contradiction);
    EXPECT_FALSE(peg(14, "2027-08-06")->off);
}

TEST_F(PegsOnBoxes, APegWhoseBoxNobodyKnowsIsALineOfItsOwn) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":7,"hive":"H3"}
{"do":"clip-peg","on":"2027-08-06","peg":8}
{"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":7,"gross_g":20000}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":8,"gross_g":21000}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":7,"wet_g":5000}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":8,"wet_g":5000}
{"do":"fill-bucket","on":"2027-08-06","run":"27-1","mark":"1","net_g":31000})");
    ASSERT_EQ(file().all<ExtractionBox>().size(), 2U);
    EXPECT_EQ(nameOf(file(), Hive::table, entry(1).hive->number), "H3");
    EXPECT_EQ(entry(2).hive, std::nullopt);
    EXPECT_EQ(entry(2).knownAs, "peg 8");
    auto balance = runBalance(file(), Id<Extraction>{1});
    ASSERT_TRUE(balance);
    ASSERT_EQ(balance->shares.size(), 2U);
    EXPECT_EQ(balance->shares[0].mass, Mass::grams(15000));
    EXPECT_FALSE(balance->shares[1].hive);
    EXPECT_EQ(balance->shares[1].mass, Mass::grams(16000));
    EXPECT_FALSE(peg(8, "2027-08-07")) << "weighed wet it is off, known or not";

    // The same number next day, on another box nobody knows, is another line.
    does(R"({"do":"clip-peg","on":"2027-08-07","peg":8}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","peg":8,"gross_g":18000})");
    ASSERT_EQ(file().all<ExtractionBox>().size(), 3U);
    EXPECT_EQ(entry(3).knownAs, "peg 8 of 2027-08-07");
    EXPECT_EQ(entry(2).gross->value, Mass::grams(21000));
}

TEST_F(PegsOnBoxes, ItIsSaidLaterWhichBoxItWas) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":8}
{"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":8,"gross_g":21000}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":8,"box":"H2a","wet_g":5300})");
    ASSERT_EQ(file().all<ExtractionBox>().size(), 1U)
        << "the line that was its own becomes the box's";
    EXPECT_EQ(entry(1).box, box("H2a").id);
    EXPECT_EQ(entry(1).hive, Id<Hive>{2});
    EXPECT_EQ(entry(1).gross->value, Mass::grams(21000));
    // A number nobody clipped is a slip of the pen, unless the box is said with it.
    EXPECT_EQ(
        refused(R"({"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":41,"gross_g":20000})")
            ->code,
        Code::NotFound);
    does(
        R"({"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":9,"box":"H1b","gross_g":20000})");
    EXPECT_EQ(peg(9, "2027-08-06")->box, box("H1b").id);
    EXPECT_EQ(
        refused(
            R"({"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":9,"box":"H3a","gross_g":20000})")
            ->code,
        Code::Taken);
}

TEST_F(PegsOnBoxes, ClosingTheRunTakesTheRestOff) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":7,"box":"H3b"}
{"do":"clip-peg","on":"2027-08-06","peg":8}
{"do":"clip-peg","on":"2027-08-06","peg":9,"box":"C1a"}
{"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":7}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":8,"frames":9}
{"do":"fill-bucket","on":"2027-08-06","run":"27-1","mark":"1","net_g":25000}
{"do":"close-run","on":"2027-08-07","run":"27-1"})");
    EXPECT_EQ(peg(7, "2027-08-07")->off, test::day("2027-08-07"));
    EXPECT_EQ(peg(8, "2027-08-07")->off, test::day("2027-08-07"));
    EXPECT_FALSE(peg(9, "2027-08-09")->off) << "in no run yet";
}

TEST_F(PegsOnBoxes, QuarantinedBoxesGetNone) {
    does(R"({"do":"hold-back","on":"2027-08-01","hive":"H3","reason":"suspected disease"})");
    EXPECT_EQ(refused(R"({"do":"clip-peg","on":"2027-08-06","peg":7,"box":"H3b"})")->code,
              Code::HeldBack);
    EXPECT_EQ(refused(R"({"do":"clip-peg","on":"2027-08-06","peg":7,"hive":"H3"})")->code,
              Code::HeldBack);
}

TEST_F(PegsOnBoxes, AMisreadNumberIsAmended) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b"}
{"do":"clip-peg","on":"2027-08-06","peg":15,"box":"H1a"}
{"do":"amend","on":"2027-08-06","peg":"14","set":{"number":16},"why":"misread"})");
    EXPECT_EQ(peg(16, "2027-08-06")->box, box("H1b").id);
    EXPECT_FALSE(peg(14, "2027-08-06"));
    const auto on = [&](const std::string& set) {
        return refused(R"({"do":"amend","on":"2027-08-06","peg":"16","set":)" + set +
                       R"(,"why":"misread"})");
    };
    EXPECT_EQ(on(R"({"number":15})")->code, Code::Taken);
    EXPECT_EQ(on(R"({"number":0})")->code, Code::OutOfRange);
    EXPECT_EQ(on(R"({"off_day":"2027-08-05"})")->code, Code::Contradiction);
    EXPECT_EQ(on(R"({"box":"H2a"})")->code, Code::OtherAction);
}

TEST_F(PegsOnBoxes, TheLineOfABoxNobodyKnowsFollowsItsPeg) {
    does(R"({"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"clip-peg","on":"2027-08-06","peg":5}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":5,"gross_g":21000}
{"do":"amend","on":"2027-08-06","peg":"5","set":{"number":6},"why":"misread"})");
    EXPECT_EQ(entry(1).knownAs, "peg 6");
    does(R"({"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":6,"wet_g":5100})");
    ASSERT_EQ(file().all<ExtractionBox>().size(), 1U) << "one box, one line";
    EXPECT_EQ(entry(1).wet->value, Mass::grams(5100));
    // Another text would leave the peg without its line.
    const auto renamed = refused(
        R"({"do":"amend","on":"2027-08-06","extraction_box":{"extraction_box":"peg 6","run":"27-1"},"set":{"known_as":"red lid"},"why":"nicer"})");
    ASSERT_TRUE(renamed);
    EXPECT_EQ(renamed->code, Code::OtherAction);
    EXPECT_EQ(renamed->value("action"), "amend peg");
}

TEST_F(PegsOnBoxes, ABoxNamedSinceIsStillWeighedByItsPeg) {
    does(R"({"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"clip-peg","on":"2027-08-06","peg":5}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":5,"gross_g":21000}
{"do":"name-lost-box","on":"2027-08-06","lost":{"extraction_box":"peg 5","run":"27-1"},"box":"H1b"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","peg":5,"wet_g":5100})");
    ASSERT_EQ(file().all<ExtractionBox>().size(), 1U);
    EXPECT_EQ(entry(1).box, box("H1b").id);
    EXPECT_EQ(entry(1).wet->value, Mass::grams(5100));
}

TEST_F(PegsOnBoxes, ABoxIsNotOfAnotherHiveThanItCameOff) {
    const auto clip =
        refused(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b","hive":"H2"})");
    ASSERT_TRUE(clip);
    EXPECT_EQ(clip->code, Code::Contradiction);
    EXPECT_TRUE(sentence(*clip).startsWith(QStringLiteral("H1b came off H1.")))
        << sentence(*clip).toStdString();
    EXPECT_EQ(refused(R"({"do":"clip-peg","on":"2027-03-01","peg":14,"box":"H1b"})")->code,
              Code::BeforeItBegan);
    does(R"({"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"clip-peg","on":"2027-08-06","peg":7,"hive":"H3"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","known_as":"no tag","frames":9})");
    const auto weigh = [&](const std::string& what) {
        const auto refusal = refused(R"({"do":"weigh-box","on":"2027-08-06","run":"27-1",)" + what);
        return refusal ? std::string(key(refusal->code)) + " " + refusal->field : "kept";
    };
    EXPECT_EQ(weigh(R"("box":"H1b","hive":"H2"})"), "contradiction hive");
    EXPECT_EQ(weigh(R"("peg":7,"hive":"H2"})"), "contradiction hive");
    const std::string name =
        R"({"do":"name-lost-box","on":"2027-08-06","lost":{"extraction_box":"no tag","run":"27-1"},"hive":)";
    does(name + R"("H2"})");
    const auto again = refused(name + R"("H3"})");
    ASSERT_TRUE(again);
    EXPECT_EQ(again->code, Code::OtherAction);
    EXPECT_EQ(again->value("action"), "amend");
    does(
        R"({"do":"amend","on":"2027-08-06","extraction_box":{"extraction_box":"no tag","run":"27-1"},"set":{"hive":"H3"},"why":"misread"})");
    EXPECT_EQ(nameOf(file(), Hive::table, entry(1).hive->number), "H3");
}

TEST_F(PegsOnBoxes, OutOfTheRoomAPegComesOff) {
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":14,"box":"H1b"}
{"do":"clip-peg","on":"2027-08-06","peg":15,"box":"H2a"}
{"do":"move-box","on":"2027-08-08","box":"H1b","to":"on hive","hive":"H1"}
{"do":"move-box","on":"2027-08-09","box":"H2a","to":"storeroom","stack":"wall"})");
    EXPECT_EQ(peg(14, "2027-08-08")->off, test::day("2027-08-08"));
    EXPECT_EQ(peg(15, "2027-08-09")->off, test::day("2027-08-09"));
    ASSERT_TRUE(season.undo());
    EXPECT_FALSE(peg(15, "2027-08-09")->off);
}

TEST_F(PegsOnBoxes, ABoxIsFullInOneOpenRunOnly) {
    does(R"({"do":"open-run","on":"2027-08-06","name":"27-1","yard":"Hill"}
{"do":"open-run","on":"2027-08-06","name":"27-2","yard":"Creek"}
{"do":"weigh-box","on":"2027-08-06","run":"27-1","box":"H1b","gross_g":20000})");
    const std::string other = R"({"do":"weigh-box","on":"2027-08-06","run":"27-2","box":"H1b"})";
    const auto twice = refused(other);
    ASSERT_TRUE(twice);
    EXPECT_EQ(twice->code, Code::Taken);
    EXPECT_EQ(sentence(*twice).toStdString(),
              "H1b is in run 27-1 and not spun out there. Take it out of that one first.");
    does(R"({"do":"spin-load","on":"2027-08-06","run":"27-1","boxes":"H1b 9","ran":"smooth"})");
    EXPECT_FALSE(refused(other)) << "spun out, it may be brought in again";
}

}  // namespace
}  // namespace combwright
