// A winter on the bench, acted out: 22 mediums of nine frames on three evenings, and four deeps of
// two colonies that died, counted box by box and never frame by frame. Every figure is that of the
// worked example, to the last digit, and every step can be taken back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/storeroom/needs.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class WinterOnTheBench : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-31");
        done(
            R"({"do":"add-boxes","on":"2027-08-30","kind":"medium","first_mark":"M1","count":22,"contents":"9 drawn"}
{"do":"add-boxes","on":"2027-10-30","kind":"deep","first_mark":"D1","count":4,"contents":"10 drawn"})");
        for (const auto& [mark, seen] : november) done(review(mark, seen, "2027-11-18"));
        for (const auto& [mark, seen] : december) done(review(mark, seen, "2027-12-02"));
        for (const auto& [mark, seen] : january) done(review(mark, seen, "2028-01-06"));
    }
    using Typed = std::vector<std::pair<const char*, const char*>>;
    const Typed november{{"M1", "7 keep, 1 web, 1 broken"}, {"M2", "7 keep, 1 W, 1 T"},
                         {"M3", "8 keep, 1 W burn"},        {"M4", "7 keep, 1 W8, 1 V8"},
                         {"M5", "7 keep, 1 web, 1 broken"}, {"M6", "7 keep, 1 web, 1 old"},
                         {"M7", "7 keep, 1 T, 1 V8"},       {"M8", "8 keep, 1 T"}};
    const Typed december{{"M9", "8 keep, 1 W"},        {"M10", "8 keep, 1 W"},
                         {"M11", "8 keep, 1 V"},       {"M12", "7 keep, 1 T"},
                         {"M13", "7 keep, 1 V, 1 T"},  {"M14", "8 keep, 1 T"},
                         {"M15", "7 keep, 1 V8, 1 T"}, {"M16", "8 keep, 1 T"}};
    const Typed january{{"M17", "8 keep, 1 V8"},
                        {"M18", "8 keep, 1 V"},
                        {"M19", "8 keep, 1 T"},
                        {"M20", "7 keep, 1 T, 1 granulated"},
                        {"M21", "8 keep, 1 T"},
                        {"M22", "8 keep, 1 G"},
                        {"D1", "5 keep, 2 dead brood, 1 mould, 2 old"},
                        {"D2", "4 keep, 2 D, 2 O, 2 T"},
                        {"D3", "5 keep, 2 D, 1 O, 2 T"},
                        {"D4", "4 keep, 2 D, 2 O, 2 T"}};

    FrameClasses classes(const char* code) const {
        for (FrameClasses& each : frameClasses(file(), test::day("2028-01-31")))
            if (each.kind.code.text() == code) return each;
        ADD_FAILURE() << "no frames of kind " << code;
        return {};
    }
    /// Of the boxes of a kind, frames counted with these letters.
    int counted(const char* faults, const char* code) const {
        std::int64_t sum = 0;
        for (const BoxCount& count :
             file().where<BoxCount>({is("occasion", Occasion::WinterReview)})) {
            const auto box = file().find(count.box);
            if (file().find(box->kind)->code.text() == code && count.faults == faults)
                sum += count.frames.value();
        }
        return static_cast<int>(sum);
    }
};

TEST_F(WinterOnTheBench, CountsAreThoseOfTheWorkedExample) {
    EXPECT_EQ(counted("", "LANG10-MED"), 166);
    EXPECT_EQ(counted("W", "LANG10-MED"), 8);
    EXPECT_EQ(counted("V", "LANG10-MED"), 9);
    EXPECT_EQ(counted("T", "LANG10-MED"), 12);
    EXPECT_EQ(counted("G", "LANG10-MED"), 2);
    EXPECT_EQ(counted("", "LANG10-DEEP"), 18);
    EXPECT_EQ(counted("D", "LANG10-DEEP"), 8);
    EXPECT_EQ(counted("O", "LANG10-DEEP"), 6);
    EXPECT_EQ(counted("T", "LANG10-DEEP"), 8);
    std::int64_t expected = 0;
    std::int64_t found = 0;
    std::string differing;
    for (const BoxReview& review : file().all<BoxReview>()) {
        const Box box = *file().find(review.box);
        if (!box.mark.starts_with('M')) continue;
        expected += review.expected->value();
        found += review.found.value();
        if (review.found != *review.expected) differing += box.mark;
    }
    EXPECT_EQ(expected, 198);
    EXPECT_EQ(found, 197);
    EXPECT_EQ(differing, "M12") << "one is missing, and the box says so";
    EXPECT_EQ(benchBox(file(), box("M12").id, test::day("2028-01-31"))->difference, -1);
    EXPECT_EQ(ledger(), "in 238 = 237 + 0 melted + 0 burnt + 0 sold + 1 missing");
    for (const Frame& frame : file().all<Frame>()) {
        EXPECT_FALSE(frame.position) << "no frame ever needed a place";
        EXPECT_TRUE(frame.mark.empty()) << "or a number";
    }
    expectClean();
}

TEST_F(WinterOnTheBench, OneHundredAndNinetyOneAreUsable) {
    const FrameClasses mediums = classes("LANG-F-MED");
    EXPECT_EQ(mediums.drawn, 168) << "166 to keep and 2 granulated for the bees to clean";
    EXPECT_EQ(mediums.bare, 18);
    EXPECT_EQ(mediums.repairable, 5);
    EXPECT_EQ(mediums.usable(), 191);
    EXPECT_EQ(mediums.lost, 6) << "2 with moth and 4 broken, not worth the wood";
    const FrameClasses deeps = classes("LANG-F-DEEP");
    EXPECT_EQ(deeps.held, 8);
    EXPECT_EQ(deeps.drawn, 24);
    EXPECT_EQ(deeps.bare, 8);
    // Repairs ticked: what could be mended is.
    done(work("repaired", {}, "2028-01-20"));
    EXPECT_EQ(classes("LANG-F-MED").repairable, 0);
    EXPECT_EQ(classes("LANG-F-MED").bare, 23);
    EXPECT_EQ(classes("LANG-F-MED").usable(), 191);
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(classes("LANG-F-MED").repairable, 5);
}

TEST_F(WinterOnTheBench, OneAndEightTenthsKilogramsAreMelted) {
    done(work("melted", {}, "2028-01-20"));
    std::int64_t grams = 0;
    std::int64_t combs = 0;
    for (const RawWax& wax : file().all<RawWax>()) {
        EXPECT_EQ(wax.source, RawWaxSource::OldComb);
        EXPECT_EQ(wax.clean->how, How::Assumed);
        grams += wax.clean->value->grams();
        combs += wax.combs->value();
    }
    EXPECT_EQ(combs, 26) << "18 mediums and 8 deeps; the 8 with dead brood stay";
    EXPECT_EQ(grams, 1800);
    EXPECT_EQ(classes("LANG-F-MED").usable(), 191) << "bare wood is as usable as before";
    done(work("burnt", {}, "2028-01-21"));
    done(work("refitted", {}, "2028-01-22"));
    EXPECT_EQ(ledger(), "in 238 = 231 + 0 melted + 6 burnt + 0 sold + 1 missing");
    EXPECT_EQ(classes("LANG-F-MED").foundation, 18);
    EXPECT_EQ(classes("LANG-F-DEEP").foundation, 8);
    EXPECT_EQ(classes("LANG-F-DEEP").held, 8);
    expectClean();
}

TEST_F(WinterOnTheBench, AllOfItIsTakenBackAndDoneAgain) {
    done(work("melted", {}, "2028-01-20"));
    done(work("repaired", {}, "2028-01-20"));
    done(work("burnt", {}, "2028-01-21"));
    const std::string full = season.dump();
    std::size_t taken = 0;
    while (season.undo()) ++taken;
    EXPECT_EQ(taken, 2 + 26 + 3U) << "each box is one step, and each piece of work";
    EXPECT_TRUE(file().all<Frame>().empty());
    while (season.redo()) --taken;
    EXPECT_EQ(taken, 0U);
    EXPECT_TRUE(season.dump() == full);
}

TEST_F(WinterOnTheBench, NextSeasonBuysSevenFramesAndThirtySheets) {
    done(
        R"({"do":"plan-season","on":"2028-01-06","year":2028,"colonies":11,"splits":0,"super_kind":"medium","supers_per_colony":2,"frames_per_super":9})");
    const auto mediums = [&] {
        const NextSeason next = nextSeason(file(), clock.today(), 2028);
        EXPECT_EQ(next.frames.size(), 1U);
        return next.frames.at(0);
    };
    const FrameNeed before = mediums();
    EXPECT_EQ(before.frames.need, 198);
    EXPECT_EQ(before.frames.there + before.frames.inRepair, 191) << "166 + 18 + 5 + 2";
    EXPECT_EQ(before.frames.afterRepairs(), 7);
    EXPECT_EQ(before.sheets, 30);
    // Melting takes the combs and leaves the wood; mended frames are there at once.
    done(R"({"do":"work-frames","on":"2028-01-10","work":"repaired","frame_kind":"LANG-F-MED"})");
    EXPECT_EQ(mediums().frames.there, 191);
    EXPECT_EQ(mediums().frames.now(), 7);
    EXPECT_EQ(mediums().sheets, 30);
    EXPECT_EQ(stockOn(file(), clock.today()).of(mediums().kind.id)->expected(), 198);
    EXPECT_EQ(stockOn(file(), clock.today()).of(mediums().kind.id)->kept, 197);
}

}  // namespace
}  // namespace combwright
