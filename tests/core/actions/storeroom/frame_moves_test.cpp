// Frames that come, and frames that go from box to shelf and back; what is held goes with its hold.
#include "core/actions/storeroom/frame_moves.h"

#include <gtest/gtest.h>

#include "core/places/storeroom/frame_board.h"
#include "core/places/storeroom/stock.h"
#include "core/storage/queries/holds.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class FramesOnShelves : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-31");
        done(
            R"({"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M01","count":2,"contents":"9 drawn"})");
    }
    static std::string add(const std::string& more) {
        return line("add-frames", "2027-12-01", R"("frame_kind":"LANG-F-MED",)" + more);
    }
    static std::string move(const std::string& more) {
        return line("move-frames", "2027-12-02", more);
    }
};

TEST_F(FramesOnShelves, ComeLooseOrIntoABox) {
    done(add(R"("count":24,"comb":"bare","stack":"shelf 2")"));
    EXPECT_EQ(frames(nullptr), "24 bare");
    done(add(R"("count":2,"comb":"drawn","drawn_year":2025,"box":"M01")"));
    EXPECT_EQ(frames("M01"), "11 drawn");
    EXPECT_EQ(outcome(add(R"("count":2,"box":"M01")")), "too_many count");
    EXPECT_EQ(refusalValue(add(R"("count":2,"box":"M01")"), "most"), "1");
    EXPECT_EQ(outcome(add(R"("count":0)")), "out_of_range count");
    EXPECT_EQ(outcome(add(R"("count":2,"stack":"a","box":"M02")")), "contradiction stack");
    EXPECT_EQ(outcome(add(R"("count":2,"comb":"bare","drawn_year":2025)")),
              "contradiction drawn_year");
    EXPECT_EQ(outcome(add(R"("count":2,"drawn_year":2029)")), "out_of_range drawn_year");
    EXPECT_EQ(ledger(), "in 44 = 44 + 0 melted + 0 burnt + 0 sold + 0 missing");
    expectClean();
}

TEST_F(FramesOnShelves, GoFromBoxToShelfAndBack) {
    done(review("M01", "8 keep, 1 W"));
    done(move(R"("how_many":1,"seen":"W","from_box":"M01","to_stack":"moth corner")"));
    EXPECT_EQ(frames("M01"), "8 drawn keep");
    EXPECT_EQ(frames(nullptr), "1 drawn W refit");
    const auto bench = benchBox(file(), box("M01").id, test::day("2027-12-03"));
    EXPECT_EQ(bench->wentSince, 1);
    EXPECT_TRUE(bench->waits()) << "it is no longer what was looked through";
    done(move(R"("how_many":1,"from_stack":"moth corner","to_box":"M02")"));
    EXPECT_EQ(frames("M02"), "9 drawn, 1 drawn W refit");
    EXPECT_EQ(outcome(move(R"("how_many":3,"from_box":"M01","to_box":"M02")")),
              "too_many how_many");
    EXPECT_EQ(outcome(move(R"("how_many":9,"from_box":"M01","to_stack":"a")")),
              "too_many how_many");
    EXPECT_EQ(outcome(move(R"("how_many":1,"from_box":"M01")")), "missing to_box");
    EXPECT_EQ(outcome(move(R"("how_many":1,"from_box":"M01","to_box":"M01")")),
              "nothing_to_do to_box");
    EXPECT_EQ(outcome(move(R"("how_many":1,"from_box":"M01","to_box":"M02","to_stack":"a")")),
              "contradiction to_stack");
    EXPECT_EQ(ledger(), "in 18 = 18 + 0 melted + 0 burnt + 0 sold + 0 missing");
    expectClean();
}

TEST_F(FramesOnShelves, OutOfAHeldBoxTheHoldGoesAlong) {
    done(R"({"do":"hold-back","on":"2027-11-01","box":"M01","reason":"dead-out unexplained"})");
    const std::string out = R"("how_many":2,"from_box":"M01","to_box":"M02")";
    EXPECT_EQ(outcome(move(out)), "held_back note");
    done(move(out + R"(,"note":"box needed")"));
    const HeldThings held = heldThings(file(), test::day("2027-12-03"));
    int stillHeld = 0;
    for (const Frame& frame : file().where<Frame>({is("box", box("M02").id)}))
        if (held.holds(frame)) ++stillHeld;
    EXPECT_EQ(stillHeld, 2);
    // Counted anew, a held frame is still a frame: no count strikes it out.
    done(R"({"do":"count-box","on":"2027-12-05","box":"M02","contents":"8 drawn"})");
    EXPECT_EQ(ledger(), "in 18 = 15 + 0 melted + 0 burnt + 0 sold + 3 missing");
    expectClean();
}

TEST_F(FramesOnShelves, WhereDiseaseIsSuspectedNothingLeaves) {
    done(R"({"do":"hold-back","on":"2027-11-01","box":"M01","reason":"suspected disease"})");
    EXPECT_EQ(outcome(move(R"("how_many":2,"from_box":"M01","to_box":"M02","note":"box needed")")),
              "held_back from_box");
}

TEST_F(FramesOnShelves, GoWithABoxThatIsGoneAndComeBackWithIt) {
    const auto drawn = [this] {
        const auto classes = frameClasses(file(), clock.today());
        return classes.empty() ? 0 : classes.front().drawn;
    };
    const auto stock = [this] { return stockOn(file(), clock.today()).frameKinds.front(); };
    done(line("move-box", "2027-12-01", R"("box":"M01","to":"gone")"));
    EXPECT_EQ(ledger(), "in 18 = 9 + 0 melted + 0 burnt + 0 sold + 0 missing + 9 gone");
    EXPECT_EQ(drawn(), 9);
    EXPECT_EQ(stock().use[FrameUse::Drawn], 9);
    EXPECT_EQ(stock().gone, 9);
    EXPECT_EQ(stock().kept, 9);
    EXPECT_EQ(stock().ever(), 18);
    EXPECT_EQ(stock().loose, 0);
    EXPECT_EQ(frameBoard(file(), clock.today()).all, 9);
    const std::string take = R"("how_many":2,"from_box":"M01","to_stack":"shelf 2")";
    EXPECT_EQ(outcome(move(take)), "closed from_box");
    EXPECT_EQ(outcome(move(R"("how_many":1,"from_box":"M02","to_box":"M01")")), "closed to_box");
    EXPECT_EQ(outcome(work("sold", R"(,"box":"M01","how_many":1)")), "closed box");
    EXPECT_EQ(outcome(work("sold", R"(,"boxes":"M01, M02","how_many":1)")), "closed boxes");
    EXPECT_EQ(outcome(line("judge-frames", "2027-12-03", R"("boxes":"M01","verdict":"melt")")),
              "closed boxes");
    done(line("judge-frames", "2027-12-03", R"("boxes":"M01-M02","verdict":"melt")"));
    EXPECT_EQ(frames("M01"), "9 drawn") << "in a row of marks it is passed over";
    EXPECT_EQ(frames("M02"), "9 drawn melt");
    done(line("move-box", "2027-12-05", R"("box":"M01","to":"storeroom")"));
    EXPECT_EQ(ledger(), "in 18 = 18 + 0 melted + 0 burnt + 0 sold + 0 missing");
    EXPECT_EQ(stock().gone, 0);
    done(move(take));
    done(line("amend", "2027-12-06",
              R"("box":"M02","set":{"condition":"burnt"},"why":"past mending")"));
    EXPECT_EQ(ledger(), "in 18 = 9 + 0 melted + 0 burnt + 0 sold + 0 missing + 9 gone");
    expectClean();
}

}  // namespace
}  // namespace combwright
