// Lines of an earlier day than what is written down already: no box stands in two places, no stack
// changes its order, and who stood there that day has its line.
#include <gtest/gtest.h>

#include "core/actions/boxes/late_moves.h"
#include "core/actions/yard/sheet.h"
#include "core/places/questions/questions.h"
#include "core/places/yard/yard_sheet.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/stays.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class LateLines : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-10-01");
        season.onChange([this](const Change& change) {
            asked.clear();
            for (const Question& each : questionsAfter(season.read(), change, clock.today()))
                asked.emplace_back(key(each.asked));
        });
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2, x","origin":"swarm"}
{"do":"add-boxes","on":"2027-05-11","kind":"medium","first_mark":"M01","count":2})");
    }
    static std::string line(const char* hive, const std::string& text, const char* on) {
        return R"({"do":"write-line","on":")" + std::string(on) + R"(","hive":")" + hive +
               R"(","line":")" + text + "\"}";
    }
    std::string stackOn(const char* mark, const char* on) const {
        std::string marks;
        for (const Box& each : standingOn(file(), *file().find(hive(mark)), test::day(on)).boxes)
            marks += (marks.empty() ? "" : " ") + (each.mark.empty() ? "-" : each.mark);
        return marks;
    }
    YardSheet sheet(const char* on) const {
        return yardSheet(file(), file().all<Yard>().front().id, test::day(on));
    }
    std::vector<std::string> asked;
};

TEST_F(LateLines, TakeABoxThatIsFreeFromThenOn) {
    done(line("H1", "+1", "2027-05-20"));
    done(line("H1", "-1", "2027-06-01"));
    ASSERT_EQ(box("M01").place, BoxPlace::Storeroom);
    done(line("H2", "+1", "2027-05-25"));
    EXPECT_EQ(stack("H2"), "D2 M02") << "M01 stood on H1 that day";
    EXPECT_EQ(stackOn("H1", "2027-05-26"), "D1 M01");
    EXPECT_EQ(stackOn("H2", "2027-05-26"), "D2 M02");
    EXPECT_EQ(sheet("2027-05-25").supersInStore, 0);
    expectClean();
}

TEST_F(LateLines, OfTheWholeYardTakeFreeBoxesToo) {
    done(line("H1", "+1", "2027-05-20"));
    done(line("H1", "-1", "2027-06-01"));
    done(R"({"do":"record-visit","on":"2027-05-22","yard":"Hill","all":"all supered"})");
    EXPECT_EQ(stackOn("H1", "2027-05-23"), "D1 M01 M02");
    EXPECT_EQ(stackOn("H2", "2027-05-23"), "D2 -") << "none was left that is free until now";
    expectClean();
}

TEST_F(LateLines, ABoxIsNotMovedBeforeItsNewestMove) {
    done(line("H1", "+1", "2027-05-20"));
    done(line("H1", "-1", "2027-06-01"));
    const std::string late =
        R"({"do":"move-box","on":"2027-05-25","box":"M01","to":"on hive","hive":"H2"})";
    EXPECT_EQ(outcome(late), "moved_on on");
    EXPECT_EQ(refusalValue(late, "moved"), "2027-06-01");
    EXPECT_EQ(outcome(line("H1", "-1", "2027-05-25")), "moved_on line")
        << "it went off a week later by what is written down";
}

TEST_F(LateLines, AFileInWhichABoxStandsInTwoPlacesIsFound) {
    done(line("H1", "+1", "2027-05-20"));
    done(line("H1", "-1", "2027-06-01"));
    const auto database = season.read().database().path();
    {
        const Database other = Database::open(database, Database::Mode::ReadWrite);
        other.run("UPDATE box_move SET on_day = '2027-06-09' WHERE on_day = '2027-05-20'");
    }
    const auto found = audit(file());
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found.front().about, "box M01");
    EXPECT_NE(found.front().says.find("two places"), std::string::npos);
}

TEST_F(LateLines, TheStackKeepsItsOrder) {
    done(
        R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H8","boxes":"deep D38, deep D45, x","origin":"overwintered"}
{"do":"add-boxes","on":"2027-04-11","kind":"medium","first_mark":"M46","count":2}
{"do":"add-boxes","on":"2027-04-11","kind":"medium","first_mark":"M38"}
{"do":"add-boxes","on":"2027-04-11","kind":"medium","first_mark":"M07"}
{"do":"move-box","on":"2027-06-09","box":"M46","to":"on hive","hive":"H8"}
{"do":"move-box","on":"2027-06-09","box":"M47","to":"on hive","hive":"H8"}
{"do":"move-box","on":"2027-06-25","box":"M38","to":"on hive","hive":"H8"}
{"do":"move-box","on":"2027-08-20","box":"M47","to":"storeroom"}
{"do":"move-box","on":"2027-08-20","box":"M46","to":"storeroom"}
{"do":"move-box","on":"2027-08-23","box":"M38","to":"storeroom"})");
    const char* day = "2027-07-29";
    done(R"({"do":"move-box","on":"2027-07-29","box":"M07","to":"on hive","hive":"H8"})");
    EXPECT_EQ(stackOn("H8", day), "D38 D45 M46 M47 M38 M07");
    done(R"({"do":"split-colony","on":"2027-07-29","hive":"H8","mark":"H9","boxes":"D45"})");
    EXPECT_EQ(stackOn("H8", day), "D38 M46 M47 M38 M07");
    EXPECT_EQ(stackOn("H8", "2027-08-21"), "D38 M38 M07");
    EXPECT_EQ(stackOn("H8", "2027-06-10"), "D38 D45 M46 M47");
    EXPECT_EQ(stack("H8"), "D38 M07");
    expectClean();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(stackOn("H8", day), "D38 D45 M46 M47 M38 M07");
    // A line struck again leaves the days after it as they were.
    done(line("H8", "+1", "2027-07-01"));
    EXPECT_EQ(stackOn("H8", "2027-07-02"), "D38 D45 M46 M47 M38 M01");
    EXPECT_EQ(stackOn("H8", day), "D38 D45 M46 M47 M38 M01 M07");
    done(R"({"do":"strike-line","on":"2027-07-01","hive":"H8"})");
    EXPECT_EQ(stackOn("H8", day), "D38 D45 M46 M47 M38 M07");
    EXPECT_EQ(stack("H8"), "D38 D45 M07");
    expectClean();
}

TEST_F(LateLines, OfAHiveClosedSinceAreWritten) {
    done(R"({"do":"unite-colonies","on":"2027-09-04","hive":"H2","into":"H1","boxes_to":"on hive"}
{"do":"close-hive","on":"2027-09-04","hive":"H2"})");
    EXPECT_EQ(outcome(line("H2", "e b5 +1", "2027-09-04")), "closed hive");
    EXPECT_EQ(outcome(line("H2", "e b5 +1", "2027-07-29")), "kept");
    EXPECT_EQ(asked, std::vector<std::string>{"closed_since"});
    EXPECT_EQ(stackOn("H2", "2027-07-30"), "D2 M01");
    EXPECT_EQ(stackOn("H2", "2027-09-05"), "");
    EXPECT_EQ(box("M01").place, BoxPlace::Storeroom);
    expectClean();
    done(line("H2", "e b5", "2027-07-29"));
    EXPECT_EQ(movesOf("M01"), 1U) << "typed again, the super was never there";
    expectClean();
    done(R"({"do":"record-visit","on":"2027-08-01","yard":"Hill","all":"x windy"})");
    EXPECT_EQ(sheet("2027-08-01").notOpened, 2) << "H2 stood there that day";
    EXPECT_EQ(sheet("2027-08-01").rows.size(), 2U);
}

TEST_F(LateLines, WhatIsLeftInTheStoreroomIsAfterThisVisit) {
    EXPECT_EQ(sheet("2027-05-20").supersInStore, 2);
    done(line("H1", "+1", "2027-05-20"));
    EXPECT_EQ(sheet("2027-05-20").supersInStore, 1);
    // Both went on somewhere later: which ones were put on before nobody knows, but it was two.
    done(R"({"do":"strike-line","on":"2027-05-20","hive":"H1"})");
    done(line("H1", "+2", "2027-06-20"));
    done(line("H2", "+1", "2027-05-20"));
    EXPECT_EQ(asked, std::vector<std::string>{"box_unknown_before"});
    EXPECT_EQ(sheet("2027-05-20").supersInStore, 1);
    expectClean();
}

TEST_F(LateLines, AHeldBoxIsNotTakenUnasked) {
    done(R"({"do":"hold-back","on":"2027-05-20","box":"M01","reason":"treated while on"})");
    done(line("H1", "+1", "2027-05-21"));
    EXPECT_EQ(stack("H1"), "D1 M02");
    EXPECT_EQ(outcome(line("H2", "+1", "2027-05-21")), "held_back line");
    EXPECT_TRUE(told(line("H2", "+1", "2027-05-21")).contains(QStringLiteral("M01 is held since")))
        << told(line("H2", "+1", "2027-05-21")).toStdString();
    EXPECT_EQ(
        outcome(R"({"do":"move-box","on":"2027-05-21","box":"M01","to":"on hive","hive":"H2"})"),
        "kept")
        << "by its mark it is meant";
}

TEST_F(LateLines, OnlyWhatWasSeenInsideIsAnOpening) {
    done(line("H1", "e b7", "2027-05-20"));
    done(line("H1", "+2 f1.5", "2027-05-30"));
    done(line("H2", "heavy", "2027-05-30"));
    const YardSheet on = sheet("2027-05-30");
    EXPECT_EQ(on.opened, 0);
    EXPECT_EQ(on.notOpened, 2);
    EXPECT_EQ(on.rows[0].today->seen.looked, Looked::LidOnly);
    EXPECT_EQ(on.rows[1].today->seen.looked, Looked::NotOpened);
    EXPECT_EQ(sheet("2027-06-02").rows[0].last->on, test::day("2027-05-20"));
    done(line("H1", "o +2 f1.5", "2027-05-30"));
    EXPECT_EQ(sheet("2027-06-02").rows[0].last->on, test::day("2027-05-30"));
}

}  // namespace
}  // namespace combwright
