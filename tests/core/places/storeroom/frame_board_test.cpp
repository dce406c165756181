// The frame-status board on a small storeroom: what it says of each box, that its counts add up
// whatever is left out, and that it asks the file no more for many boxes than for few.
#include "core/places/storeroom/frame_board.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include "core/places/pages/page_text.h"
#include "core/places/pages/storeroom/board_words.h"
#include "core/places/pages/storeroom/frame_board_page.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

constexpr const char* winterDay = "2028-01-17";

class FrameBoardOf : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set(winterDay);
        done(R"({"do":"add-yard","on":"2027-04-02","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-12","yard":"Hill","mark":"H1","boxes":"deep, x, medium M9 9","origin":"overwintered"}
{"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M1","count":3,"contents":"9 drawn","stack":"Shelf 2"}
{"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M10","contents":"9 drawn","stack":"Shelf 10"}
{"do":"add-boxes","on":"2027-05-01","kind":"deep","first_mark":"D1","contents":"10 drawn","stack":"Floor"}
)");
    }
    FrameBoard board(const BoardFilter& filter = {}) const {
        return frameBoard(file(), test::day(winterDay), filter);
    }
    static const BoardRow& row(const FrameBoard& board, const std::string& name) {
        for (const BoardShelf& shelf : board.shelves)
            for (const BoardRow& each : shelf.rows)
                if (each.name == name) return each;
        throw std::out_of_range(name);
    }
    /// "Shelf 2: M1 M2 | Floor: D1".
    static std::string shelves(const FrameBoard& board) {
        std::string text;
        for (const BoardShelf& shelf : board.shelves) {
            text += (text.empty() ? "" : " | ") + shelfTitle(board, shelf).toStdString() + ":";
            for (const BoardRow& each : shelf.rows) text += " " + each.name;
        }
        return text;
    }
    std::string state(const char* mark) const {
        return boardStateSentence(row(board(), mark).states.front()).toStdString();
    }
    /// "keep 7, W 1, V 1 together 9 missing 0".
    static std::string counts(const FrameBoard& board, const std::string& kind) {
        for (const KindCounts& each : board.counts) {
            if (each.name.find(kind) == std::string::npos) continue;
            std::string text;
            for (const StateCount& state : each.states)
                text += (text.empty() ? "" : ", ") +
                        (state.state.letter != 0 ? std::string(1, state.state.letter)
                                                 : frameStateText(state.state).toStdString()) +
                        " " + std::to_string(state.frames) +
                        (state.also > 0 ? "+" + std::to_string(state.also) : "");
            return text + " together " + std::to_string(each.together) + " missing " +
                   std::to_string(each.missing);
        }
        return "no such kind";
    }
    static void expectAddsUp(const FrameBoard& board) {
        std::int64_t all = 0;
        for (const KindCounts& each : board.counts) {
            std::int64_t sum = 0;
            for (const StateCount& state : each.states) sum += state.frames;
            EXPECT_EQ(sum, each.together) << each.name;
            all += each.together;
        }
        EXPECT_EQ(all, board.all);
        std::int64_t shown = 0;
        for (const BoardShelf& shelf : board.shelves) {
            std::int64_t onShelf = 0;
            for (const BoardRow& each : shelf.rows)
                for (const BoardFrame& frame : each.frames) onShelf += frame.found ? 1 : 0;
            EXPECT_EQ(onShelf, shelf.frames);
            shown += onShelf;
        }
        EXPECT_EQ(shown, board.shown);
    }
    static FrameState letterState(char letter) {
        return {FrameState::Kind::Letter, letter, Verdict::Keep};
    }
};

TEST_F(FrameBoardOf, ShelvesStandInTheirOrderAndBoxesByTheirMarks) {
    done(R"({"do":"move-box","on":"2027-09-01","box":"M3","to":"wet"})");
    EXPECT_EQ(shelves(board()), "Floor: D1 | Shelf 2: M1 M2 | Shelf 10: M10 | Wet: M3");
    BoardFilter filter;
    filter.onHives = true;
    EXPECT_EQ(shelves(board(filter)),
              "Floor: D1 | Shelf 2: M1 M2 | Shelf 10: M10 | Wet: M3 | On hives, Hill: H1, first "
              "from the floor M9");
}

TEST_F(FrameBoardOf, ABoxSaysWhatIsToBeKnownOfIt) {
    EXPECT_EQ(state("M1"), "not looked through");
    done(review("M1", "7 keep, 1 W, 1 V; scraped"));
    EXPECT_EQ(state("M1"), "scraped 18 Nov");
    const BoardRow reviewed = row(board(), "M1");
    EXPECT_EQ(reviewed.reviewed, test::day("2027-11-18"));
    EXPECT_EQ(frameLetters(reviewed).toStdString(), "· · · · · · · W V");
    EXPECT_EQ(reviewed.found, 9);
    EXPECT_EQ(reviewed.expected, 9);
    done(review("M2", "8 keep, 1 L"));
    EXPECT_EQ(state("M2"), "1 frame to freeze");
    done(review("M3", "8 keep, 1 P"));
    EXPECT_EQ(state("M3"), "1 frame to scrape");
    done(review("M10", "9 keep"));
    EXPECT_EQ(state("M10"), "looked through 18 Nov");
    done(R"({"do":"hold-back","on":"2027-12-01","box":"M10","reason":"suspected disease"})");
    EXPECT_EQ(state("M10"), "held since 1 Dec: suspected disease");
    EXPECT_TRUE(row(board(), "M10").frames.front().held);
}

TEST_F(FrameBoardOf, WhatIsMissingStandsAtTheEndUntilItIsFound) {
    done(review("M1", "7 keep, 1 W"));
    const BoardRow shown = row(board(), "M1");
    EXPECT_EQ(frameLetters(shown).toStdString(), "· · · · · · · W ?");
    EXPECT_EQ(shown.found, 8);
    EXPECT_EQ(shown.expected, 9);
    EXPECT_EQ(shown.missing, 1);
    const FrameBoard now = board();
    expectAddsUp(now);
    EXPECT_EQ(now.all, 45);
    EXPECT_EQ(counts(now, "edium"), "keep 7, W 1, not looked at 27 together 35 missing 1");
    EXPECT_EQ(notFoundText(now.counts.front()).toStdString(), "1 not found of 36");
    done(review("M1", "8 keep, 1 W", "2027-11-20"));
    EXPECT_EQ(row(board(), "M1").missing, 0);
    EXPECT_EQ(frameLetters(row(board(), "M1")).toStdString(), "· · · · · · · · W");
}

TEST_F(FrameBoardOf, ABoxWhoseContentsChangedSinceSaysSo) {
    done(review("M1", "9 keep") + "\n" + review("M2", "9 keep") + "\n" + review("M3", "9 keep") +
         "\n" + review("M10", "9 keep"));
    done(R"({"do":"move-box","on":"2027-12-01","box":"M1","to":"storeroom","stack":"Shelf 10"})");
    EXPECT_EQ(row(board(), "M1").changed, std::nullopt) << "carried from shelf to shelf";
    done(R"({"do":"move-box","on":"2027-12-05","box":"M2","to":"on hive","hive":"H1"}
{"do":"move-box","on":"2027-12-06","box":"M2","to":"storeroom","stack":"Shelf 2"})");
    EXPECT_EQ(row(board(), "M2").changed, BoardChange::Move);
    EXPECT_EQ(state("M2"), "changed since, on 6 Dec");
    done(R"({"do":"count-box","on":"2027-12-07","box":"M3","contents":"8 drawn, 1 V"})");
    EXPECT_EQ(row(board(), "M3").changed, BoardChange::Count);
    done(
        R"({"do":"check-frames","on":"2027-12-08","box":"M10","how_many":1,"occasion":"visit","faults":"W"})");
    EXPECT_EQ(row(board(), "M10").changed, BoardChange::Check);
    done(review("M2", "9 keep", "2027-12-10"));
    EXPECT_EQ(row(board(), "M2").changed, std::nullopt) << "looked through again";
    EXPECT_EQ(state("M2"), "looked through 10 Dec");
}

TEST_F(FrameBoardOf, ItKnowsTheHiveABoxLastCameOff) {
    EXPECT_EQ(row(board(), "M1").cameOff, std::nullopt);
    done(R"({"do":"move-box","on":"2027-08-20","box":"M9","to":"storeroom","stack":"Shelf 2"})");
    const auto off = row(board(), "M9").cameOff;
    ASSERT_TRUE(off);
    EXPECT_EQ(cameOffText(*off).toStdString(), "Hill H1");
    EXPECT_EQ(off->on, test::day("2027-08-20"));
    BoardFilter filter;
    filter.cameOff = off->hive;
    EXPECT_EQ(shelves(board(filter)), "Shelf 2: M9");
    filter = {};
    filter.group = BoardGroup::Hive;
    EXPECT_EQ(shelves(board(filter)), "Hill H1: M9 | Off no hive yet: D1 M1 M2 M3 M10");
}

TEST_F(FrameBoardOf, AFrameWithSeveralLettersIsCountedOnceAtTheGravest) {
    done(review("D1", "6 keep, 2 D, 1 WD, 1 WV"));
    const FrameBoard now = board();
    EXPECT_EQ(counts(now, "deep"), "keep 6, W 1+1, D 3, V 0+1 together 10 missing 0");
    expectAddsUp(now);
    BoardFilter filter;
    filter.state = letterState('W');
    EXPECT_EQ(board(filter).shown, 2) << "every frame that bears it";
    ASSERT_EQ(now.held.size(), 1U);
    EXPECT_EQ(now.held.front().letter, 'D');
    EXPECT_EQ(now.held.front().frames, 3);
}

TEST_F(FrameBoardOf, FiltersLeaveOutAndCountsStay) {
    done(review("M1", "7 keep, 1 W, 1 V; years 24x3 25x6") + "\n" +
         review("M2", "6 keep, 3 T; years 21x3 25x6") + "\n" + review("D1", "9 keep, 1 W burn"));
    const FrameBoard all = board();
    const auto shown = [&](const BoardFilter& filter) {
        const FrameBoard some = board(filter);
        expectAddsUp(some);
        EXPECT_EQ(some.all, all.all);
        EXPECT_EQ(some.counts.size(), all.counts.size());
        return std::to_string(some.shown) + " in " + shelves(some);
    };
    BoardFilter filter;
    filter.state = letterState('W');
    EXPECT_EQ(shown(filter), "2 in Floor: D1 | Shelf 2: M1");
    EXPECT_EQ(row(board(filter), "M1").leftOut, 8);
    filter.kind = row(all, "D1").frameKind;
    EXPECT_EQ(shown(filter), "1 in Floor: D1");
    filter = {};
    filter.verdict = Verdict::Refit;
    EXPECT_EQ(shown(filter), "4 in Shelf 2: M1 M2");
    filter = {};
    filter.place = BoardPlace{BoardPlace::Kind::Stack, "Shelf 10"};
    EXPECT_EQ(shown(filter), "9 in Shelf 10: M10");
    filter = {};
    filter.notReviewed = true;
    EXPECT_EQ(shown(filter), "18 in Shelf 2: M3 | Shelf 10: M10");
    filter = {};
    filter.toMelt = true;
    EXPECT_EQ(shown(filter), "4 in Shelf 2: M1 M2");
    filter = {};
    filter.notFrozen = true;
    EXPECT_EQ(board(filter).shown, all.all) << "nothing was frozen";
    ASSERT_FALSE(all.years.empty());
    filter = {};
    filter.year = 2025;
    EXPECT_EQ(board(filter).shown, 12);
    EXPECT_EQ(shownText(board(filter)).toStdString(), "showing 12 of 46 frames");
    filter = {};
    filter.state = letterState('Q');
    EXPECT_EQ(shown(filter), "0 in ");
}

TEST_F(FrameBoardOf, GroupedByVerdictABoxStandsWithEachOfItsFrames) {
    done(review("M1", "7 keep, 1 W, 1 V"));
    BoardFilter filter;
    filter.place = BoardPlace{BoardPlace::Kind::Stack, "Shelf 2"};
    filter.group = BoardGroup::Verdict;
    const FrameBoard grouped = board(filter);
    EXPECT_EQ(shelves(grouped), "To keep: M1 | To repair: M1 | To refit: M1 | No verdict: M2 M3");
    expectAddsUp(grouped);
    EXPECT_EQ(grouped.boxesShown, 3) << "a box is one box";
    EXPECT_EQ(row(grouped, "M1").leftOut, 2);
    filter.group = BoardGroup::Kind;
    EXPECT_EQ(board(filter).shelves.size(), 1U);
}

TEST_F(FrameBoardOf, WaxToMeltIsToldByTheComb) {
    done(review("M2", "6 keep, 3 T") + "\n" + review("D1", "8 keep, 2 T"));
    const FrameBoard now = board();
    ASSERT_EQ(now.melt.size(), 2U);
    EXPECT_EQ(meltText(now.melt).toStdString(), "5 combs, 0.36 kg a");  // 3 × 60 g + 2 × 90 g
}

TEST_F(FrameBoardOf, LooseFramesLieInRowsOnTheirShelf) {
    done(
        R"({"do":"add-frames","on":"2027-10-01","frame_kind":"LANG-F-MED","count":12,"comb":"foundation","stack":"Rack"})");
    const FrameBoard now = board();
    const BoardShelf& rack = now.shelves.back();
    EXPECT_EQ(shelfTitle(now, rack).toStdString(), "Loose, Rack");
    ASSERT_EQ(rack.rows.size(), 2U);
    EXPECT_EQ(rack.rows[0].frames.size(), 10U);
    EXPECT_EQ(rack.rows[1].frames.size(), 2U);
    EXPECT_EQ(now.boxesAll, 5);
    expectAddsUp(now);
}

TEST_F(FrameBoardOf, ManyBoxesAskNoMoreOfTheFileThanFew) {
    const auto queries = [&] {
        int count = 0;
        sqlite3* handle = file().database().handle();
        sqlite3_trace_v2(
            handle, SQLITE_TRACE_STMT,
            [](unsigned, void* counted, void*, void*) {
                ++*static_cast<int*>(counted);
                return 0;
            },
            &count);
        BoardFilter filter;
        filter.onHives = true;
        board(filter);
        sqlite3_trace_v2(handle, 0, nullptr, nullptr);
        return count;
    };
    const int few = queries();
    EXPECT_GT(few, 5);
    done(
        R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"A100","count":200,"contents":"9 drawn","stack":"Loft"})");
    done(review("A100", "9 keep") + "\n" + review("A101", "8 keep") + "\n" +
         review("A102", "9 keep", "2027-12-01"));
    EXPECT_EQ(board().boxesAll, 205);
    EXPECT_EQ(queries(), few);
}

TEST_F(FrameBoardOf, OnPaperTheFramesAreLetters) {
    done(review("M1", "6 keep, 1 W, 1 V") + "\n" + review("D1", "8 keep, 2 D"));
    const QString text = pageText(frameBoardPage(file(), board()));
    for (const char* part : {"Frame board", "· · · · · · W V ?", "8 of 9", "W web of moth",
                             "1 not found of 36", "On hold", "dead brood"})
        EXPECT_TRUE(text.contains(QString::fromUtf8(part))) << part << "\n" << text.toStdString();
    EXPECT_LT(text.indexOf(QStringLiteral("W V ?")),
              text.indexOf(QStringLiteral("Frames by state")))
        << "the boxes first, what they add up to behind them";
}

TEST_F(FrameBoardOf, ARowIsSaidInASentence) {
    done(review("M1", "6 keep, 1 W, 1 V; scraped"));
    const FrameBoard now = board();
    const std::string said = spoken(now, row(now, "M1")).toStdString();
    for (const char* part : {"M1", "Shelf 2", "scraped 18 Nov", "8 found of 9", "6 keep",
                             "1 W web of moth", "1 V broken wood"})
        EXPECT_NE(said.find(part), std::string::npos) << part << " in: " << said;
}

TEST(BoardMarks, CountUpAsOneReadsThem) {
    EXPECT_TRUE(inNaturalOrder("M9", "M10"));
    EXPECT_TRUE(inNaturalOrder("M09", "M10"));
    EXPECT_TRUE(inNaturalOrder("shelf 2", "Shelf 10"));
    EXPECT_FALSE(inNaturalOrder("M10", "M9"));
    EXPECT_FALSE(inNaturalOrder("M1", "M1"));
    EXPECT_TRUE(inNaturalOrder("", "A"));
    EXPECT_EQ(gravestLetter("WD"), 'D');
    EXPECT_EQ(gravestLetter("VP"), 'V');
    EXPECT_EQ(gravestLetter(""), 0);
}

TEST_F(FrameBoardOf, WhatAHoldKeepsBackIsNotKept) {
    done(review("M1", "8 keep, 1 W"));
    done(R"({"do":"move-box","on":"2027-12-01","box":"M1","to":"freezer"}
{"do":"hold-back","on":"2027-12-02","box":"M1","reason":"suspected disease"})");
    const FrameBoard now = board();
    EXPECT_EQ(counts(now, "edium"), "W 0+1, not looked at 27, held 9 together 36 missing 0");
    expectAddsUp(now);
    EXPECT_EQ(boardStateText(row(now, "M1")).toStdString(), "held, in freezer");
    EXPECT_EQ(boardStateText(row(now, "M2")).toStdString(), "not looked at");
    BoardFilter filter;
    filter.state = FrameState{FrameState::Kind::Held, 0, Verdict::Keep};
    EXPECT_EQ(board(filter).shown, 9);
}

}  // namespace
}  // namespace combwright
