// What a yard sheet asks one to keep in mind of a hive that was not opened: hefting and "come back"
// need no opening, all else is as it was last seen.
#include <gtest/gtest.h>

#include "core/places/health/health_board.h"
#include "core/places/pages/health/health_words.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/yard/kit_list_page.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/places/yard/kit_list.h"
#include "core/places/yard/yard_sheet.h"
#include "core/storage/queries/hive_days.h"
#include "core/words/read_back.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class YardMinds : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep, x","origin":"swarm"})");
    }
    void line(const char* on, const char* typed) {
        done(R"({"do":"write-line","on":")" + std::string(on) + R"(","hive":"H1","line":")" +
             typed + "\"}");
    }
    /// "light 2027-05-20, come back 2027-05-20"
    std::string minds(const char* on) const {
        std::string text;
        const YardSheet sheet = yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
        for (const Mind& mind : sheet.rows.front().minds)
            text += (text.empty() ? "" : ", ") + word(mind.kind) + " " + isoText(mind.since);
        return text;
    }
    bool takesFeed(const char* on) const {
        const YardSheet sheet = yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
        for (const TakeAlong& each : sheet.takeAlong)
            if (each.what == TakeAlong::What::Feed) return each.hives.front() == "H1";
        return false;
    }

  private:
    static std::string word(MindKind kind) {
        switch (kind) {
            case MindKind::NotOpened:
                return "not opened";
            case MindKind::Light:
                return "light";
            case MindKind::ComeBack:
                return "come back";
            case MindKind::NoEggs:
                return "no eggs";
            case MindKind::CellsSeen:
                return "cells seen";
            case MindKind::QueenWait:
                return "shut";
            case MindKind::Mites:
                return "mites";
            case MindKind::MitesOver:
                return "mites over";
            case MindKind::FoundDead:
                return "dead";
            case MindKind::NobodyLives:
                return "nobody";
            default:
                return "other";
        }
    }
};

TEST_F(YardMinds, FirstLineOfAllMayBeThatItWasNotOpened) {
    line("2027-05-20", "x light !");
    EXPECT_EQ(minds("2027-05-20"), "not opened 2027-05-20, light 2027-05-20, come back 2027-05-20");
    EXPECT_EQ(minds("2027-05-27"), "light 2027-05-20, come back 2027-05-20");
}

TEST_F(YardMinds, HeftedFromBehindIsKnownUntilOpenedOrHeftedAgain) {
    line("2027-05-20", "e0 b4");
    line("2027-11-28", "x light");
    EXPECT_EQ(minds("2027-11-28"), "not opened 2027-05-20, no eggs 2027-05-20, light 2027-11-28");
    EXPECT_EQ(minds("2028-01-10"), "no eggs 2027-05-20, light 2027-11-28");
    EXPECT_TRUE(takesFeed("2028-01-10"));
    line("2028-01-15", "x heavy");
    EXPECT_EQ(minds("2028-01-20"), "no eggs 2027-05-20");
    line("2028-02-12", "x light");
    line("2028-04-02", "e b3");
    EXPECT_EQ(minds("2028-04-02"), "");
    EXPECT_EQ(minds("2028-04-09"), "");
    EXPECT_FALSE(takesFeed("2028-04-09"));
}

TEST_F(YardMinds, NotOpenedTwiceKeepsWhatWasSeenLast) {
    line("2027-05-20", "e b4 light");
    line("2027-05-27", "x rain");
    line("2027-06-03", "x rain again !");
    EXPECT_EQ(minds("2027-06-04"), "light 2027-05-20, come back 2027-06-03");
}

TEST_F(YardMinds, CellsSeenAreNotCellsLeft) {
    line("2027-05-20", "e0 qc3o");
    EXPECT_EQ(minds("2027-05-20"), "cells seen 2027-05-20, no eggs 2027-05-20");
    const YardSheet sheet =
        yardSheet(file(), file().find(hive("H1"))->yard, test::day("2027-05-20"));
    EXPECT_EQ(mindText(sheet.rows.front().minds.front(), sheet.on),
              QStringLiteral("3 open queen cells: were any left?"));
    line("2027-05-20", "e0 qc3o left0");
    EXPECT_EQ(minds("2027-05-20"), "no eggs 2027-05-20");
    line("2027-05-20", "e0 qc3o left1");
    EXPECT_EQ(minds("2027-05-20"), "shut 2027-05-20");
}

TEST_F(YardMinds, MitesOverTheLineStandUntilTheyAreAnswered) {
    const auto said = [this](const char* on) {
        const YardSheet sheet = yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
        const auto& minds = sheet.rows.front().minds;
        return minds.empty() ? std::string() : mindText(minds.front(), sheet.on).toStdString();
    };
    line("2027-05-20", "e b7 w12/300");
    line("2027-06-01", "e b6");
    EXPECT_EQ(minds("2027-06-01"), "mites over 2027-05-20");
    EXPECT_EQ(said("2027-06-01"), "mites 4.00 %, 12 in 300 on 20 May");
    const YardSheet sheet =
        yardSheet(file(), file().find(hive("H1"))->yard, test::day("2027-06-01"));
    ASSERT_FALSE(sheet.takeAlong.empty());
    EXPECT_EQ(sheet.takeAlong.front().what, TakeAlong::What::WashJar);
    const KitList kit = kitList(file(), sheet.yard.id, sheet.on);
    ASSERT_EQ(kit.mites.size(), 1U);
    EXPECT_TRUE(
        pageText(kitListPage(file(), kit)).contains(QStringLiteral("H1: mites 4.00 % on 20 May")));
    EXPECT_TRUE(pageText(yardSheetPage(file(), sheet, test::day("2027-06-08")))
                    .contains(QStringLiteral("mites 4.00 % on 20 May")));
    line("2027-06-08", "e b6 w1/300");
    EXPECT_EQ(minds("2027-06-08"), "mites 2027-06-08") << "sampled again";
}

TEST_F(YardMinds, MitesOverTheLineAreAnsweredByQuietAndByMedicine) {
    line("2027-05-20", "e b7 w12/300");
    line("2027-06-01", "e b6");
    done(
        R"({"do":"quiet-rule","on":"2027-06-02","rule":"mites over the line","hive":"H1","reason":"split instead"})");
    EXPECT_EQ(minds("2027-06-01"), "mites over 2027-05-20");
    EXPECT_EQ(minds("2027-06-02"), "");
}

TEST_F(YardMinds, MitesWithoutBeesHaveNoRate) {
    line("2027-05-20", "e w5");
    const YardSheet sheet =
        yardSheet(file(), file().find(hive("H1"))->yard, test::day("2027-05-20"));
    ASSERT_EQ(sheet.rows.front().minds.size(), 1U);
    EXPECT_FALSE(sheet.rows.front().minds.front().mitesPer100);
    EXPECT_EQ(mindText(sheet.rows.front().minds.front(), sheet.on),
              QStringLiteral("mites 5, bees not counted"));
}

TEST_F(YardMinds, DroneBroodIsToldOfItsCells) {
    line("2027-05-20", "e dr6/100");
    const YardSheet sheet =
        yardSheet(file(), file().find(hive("H1"))->yard, test::day("2027-05-20"));
    EXPECT_EQ(mindText(sheet.rows.front().minds.front(), sheet.on),
              QStringLiteral("mites in 6 of 100 drone cells"));
    EXPECT_TRUE(pageText(yardSheetPage(file(), sheet, test::day("2027-05-27")))
                    .contains(QStringLiteral("mites in 6 of 100 drone cells")));
    const HealthBoard board = healthBoard(file(), sheet.yard, sheet.on);
    ASSERT_TRUE(board.rows.front().droneBrood);
    EXPECT_TRUE(
        miteSampleText(*board.rows.front().droneBrood).contains(QStringLiteral("6 of 100 cells")));
}

TEST_F(YardMinds, CellsAndNoEggsStandUntilALookAnswersThem) {
    line("2027-05-20", "e0 b0 qc3o");
    line("2027-05-24", "s4");
    EXPECT_EQ(minds("2027-05-24"), "cells seen 2027-05-20, no eggs 2027-05-20");
    line("2027-05-27", "e qc0");
    EXPECT_EQ(minds("2027-05-27"), "");
}

TEST_F(YardMinds, AColonyFoundDeadIsNeitherOpenedNorAlive) {
    line("2027-05-13", "e b7 w12/300");
    line("2027-05-20", "dead, robbed out");
    EXPECT_EQ(minds("2027-05-20"), "dead 2027-05-20");
    const YardSheet sheet =
        yardSheet(file(), file().find(hive("H1"))->yard, test::day("2027-05-20"));
    EXPECT_EQ(sheet.opened, 0);
    EXPECT_EQ(sheet.colonies, 0);
    EXPECT_EQ(coloniesAliveOn(file(), test::day("2027-05-19")), 1);
    EXPECT_EQ(coloniesAliveOn(file(), test::day("2027-05-20")), 0);
    EXPECT_EQ(yardSheet(file(), sheet.yard.id, test::day("2027-05-19")).colonies, 1);
    done(R"({"do":"end-colony","on":"2027-05-20","hive":"H1"})");
    EXPECT_EQ(minds("2027-05-21"), "nobody 2027-05-21") << "its end is written down";
}

TEST_F(YardMinds, ARangeOfMitesIsSaidAsItWasReadBack) {
    line("2027-05-20", "w4-300");
    const YardSheet sheet =
        yardSheet(file(), file().find(hive("H1"))->yard, test::day("2027-05-20"));
    EXPECT_EQ(mindText(sheet.rows.front().minds.front(), sheet.on),
              QStringLiteral("mites 4 to 300, bees not counted"));
    EXPECT_EQ(readBack(sheet.rows.front().line),
              QStringLiteral("Wash: 4 to 300 mites, bees not counted."));
}

TEST_F(YardMinds, WhatTheLastLookDidNotSayIsKnownFromBefore) {
    line("2027-05-13", "e b7 s3");
    line("2027-05-20", "b6");
    line("2027-05-24", "x b9");
    const YardSheet sheet =
        yardSheet(file(), file().find(hive("H1"))->yard, test::day("2027-05-27"));
    const YardSheetRow& row = sheet.rows.front();
    EXPECT_EQ(row.lastBrood->on, test::day("2027-05-20"));
    EXPECT_EQ(row.lastStores->on, test::day("2027-05-13"));
    EXPECT_EQ(row.lastStores->value.value, Frames::whole(3));
    EXPECT_EQ(row.lastEggs->on, test::day("2027-05-13"));
}

TEST_F(YardMinds, APastDayHasItsOwnBoxes) {
    done(R"({"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"M1","count":3}
{"do":"move-box","on":"2027-05-10","box":"M1","to":"on hive","hive":"H1"}
{"do":"move-box","on":"2027-05-20","box":"M2","to":"on hive","hive":"H1","level":1}
{"do":"move-box","on":"2027-06-01","box":"M1","to":"storeroom"}
{"do":"move-box","on":"2027-06-02","box":"M3","to":"on hive","hive":"H1","level":0})");
    const auto rowOn = [&](const char* on) {
        return yardSheet(file(), file().find(hive("H1"))->yard, test::day(on)).rows.front();
    };
    const auto stackOn = [&](const char* on) {
        std::string marks;
        for (const Box& box : rowOn(on).boxes) marks += box.mark.empty() ? "-" : box.mark;
        return marks;
    };
    EXPECT_EQ(stackOn("2027-05-09"), "-");
    EXPECT_EQ(stackOn("2027-05-10"), "-M1");
    EXPECT_EQ(stackOn("2027-05-20"), "-M2M1");
    EXPECT_EQ(stackOn("2027-06-01"), "-M2");
    EXPECT_EQ(stackOn("2027-06-02"), "M3-M2");
    EXPECT_EQ(rowOn("2027-05-20").supersNow, 2);
    EXPECT_EQ(rowOn("2027-05-20").supersPutOn, 1) << "by hand, no line of the sheet";
    EXPECT_EQ(rowOn("2027-05-21").supersPutOn, 0);
    EXPECT_EQ(rowOn("2027-06-02").supersNow, 1) << "M3 went under the excluder";
}

TEST_F(YardMinds, APastDayHasItsOwnHivesAndStoreroom) {
    done(R"({"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"M1","count":3}
{"do":"move-box","on":"2027-05-10","box":"M1","to":"on hive","hive":"H1"}
{"do":"add-boxes","on":"2027-05-15","kind":"medium","first_mark":"M4","count":2}
{"do":"move-box","on":"2027-06-01","box":"M1","to":"storeroom"}
{"do":"add-hive","on":"2027-05-20","yard":"Hill","mark":"Late","boxes":"deep"})");
    const auto sheetOn = [&](const char* on) {
        return yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
    };
    const auto hivesOn = [&](const char* on) {
        std::string marks;
        for (const YardSheetRow& row : sheetOn(on).rows) marks += row.hive.mark.text() + " ";
        return marks;
    };
    EXPECT_EQ(hivesOn("2027-05-19"), "H1 ") << "no empty stand for a hive set up later";
    EXPECT_EQ(sheetOn("2027-05-19").youngerHives, 1);
    EXPECT_EQ(hivesOn("2027-05-20"), "H1 Late ");
    EXPECT_EQ(sheetOn("2027-04-09").supersInStore, 0);
    EXPECT_EQ(sheetOn("2027-04-10").supersInStore, 3);
    EXPECT_EQ(sheetOn("2027-05-10").supersInStore, 2);
    EXPECT_EQ(sheetOn("2027-05-15").supersInStore, 4);
    EXPECT_EQ(sheetOn("2027-06-09").supersInStore, 5);
}

TEST_F(YardMinds, AHiveWhoseColonyEndedSaysThatNobodyLivesThere) {
    done(R"({"do":"end-colony","on":"2027-06-05","hive":"H1","ending":"queenless"})");
    EXPECT_THAT(minds("2027-06-04"), Not(HasSubstr("nobody")));
    EXPECT_THAT(minds("2027-08-14"), HasSubstr("nobody 2027-08-14"));
}

TEST_F(YardMinds, AWaitThatWasWrittenDownIsMindedLikeACellThatWasLeft) {
    const auto sheet = [this](const char* on) {
        return yardSheet(file(), file().find(hive("H1"))->yard, test::day(on));
    };
    done(R"({"do":"lose-queen","on":"2027-06-01","hive":"H1"})");
    EXPECT_EQ(minds("2027-06-01"), "");
    EXPECT_EQ(sheet("2027-05-31").queenless, 0) << "she was there yet";
    EXPECT_EQ(sheet("2027-06-01").queenless, 1);
    done(R"({"do":"wait-for-queen","on":"2027-06-02","hive":"H1","step":"queen lost"})");
    EXPECT_EQ(minds("2027-06-02"), "shut 2027-06-02");
    EXPECT_EQ(sheet("2027-06-02").queenless, 0) << "it waits, and counts there";
    EXPECT_EQ(sheet("2027-06-02").waiting, 1);
    EXPECT_EQ(sheet("2027-06-02").takeAlong.front().what, TakeAlong::What::LeaveShut);
    done(R"({"do":"end-queen-wait","on":"2027-06-20","hive":"H1"})");
    EXPECT_EQ(minds("2027-06-20"), "");
    EXPECT_EQ(minds("2027-06-19"), "shut 2027-06-02") << "as it was that day";
}

TEST_F(YardMinds, AStandThatWasClosedStandsThereOnTheDaysBefore) {
    done(R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2"}
{"do":"close-hive","on":"2027-06-01","hive":"H2"})");
    const auto hives = [this](const char* on) {
        return yardSheet(file(), file().find(hive("H1"))->yard, test::day(on)).rows.size();
    };
    EXPECT_EQ(hives("2027-05-31"), 2U);
    EXPECT_EQ(hives("2027-06-01"), 1U);
}

}  // namespace
}  // namespace combwright
