// What is seen of boxes and frames, what is held back, and the keeper's own figures.
#include "core/actions/boxes/looks.h"

#include <gtest/gtest.h>

#include <map>

#include "core/storage/queries/constants.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class BoxSeen : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1 9 drawn, LANG8-MED E1","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2"})");
    }
    static std::string seen(const char* verb, const char* mark, const char* contents,
                            const std::string& more = {}, const char* on = "2027-07-25") {
        return R"({"do":")" + std::string(verb) + R"(","on":")" + on + R"(","box":")" + mark +
               R"(","contents":")" + contents + '"' + more + "}";
    }
    static std::string look(const char* contents, const std::string& more = {},
                            const char* mark = "M1", const char* on = "2027-07-25") {
        return seen("look-box", mark, contents, more, on);
    }
    std::vector<BoxLook> looks(const char* mark = "M1") const {
        return file().where<BoxLook>({is("box", box(mark).id)});
    }
};

TEST_F(BoxSeen, ALookKeepsWhatWasSaid) {
    done(look("9 drawn; 6.5 capped, 85 % full",
              R"(,"water_percent":17.4,"brood_in":true,"note":"heavy")"));
    ASSERT_EQ(looks().size(), 1U);
    const BoxLook seen = looks()[0];
    EXPECT_EQ(seen.frames, Count(9));
    EXPECT_EQ(seen.cappedFrames->value, Frames::tenths(65));
    EXPECT_EQ(seen.cappedFrames->how, How::Counted);
    EXPECT_EQ(seen.filled->value, Share::percent(85));
    EXPECT_EQ(seen.filled->how, How::ByEye);
    EXPECT_EQ(seen.water, WaterContent::hundredths(1740));
    EXPECT_EQ(seen.broodIn, true);
    EXPECT_EQ(seen.note, "heavy");
}

TEST_F(BoxSeen, ASecondLookOnTheDayReplacesTheFirst) {
    done(look("9 drawn; 6 capped, 85 % full", R"(,"water_percent":17.4)"));
    done(look("7 capped"));
    ASSERT_EQ(looks().size(), 1U);
    EXPECT_EQ(looks()[0].cappedFrames->value, Frames::whole(7));
    EXPECT_FALSE(looks()[0].frames) << "blank is not the last value";
    EXPECT_FALSE(looks()[0].filled);
    EXPECT_FALSE(looks()[0].water);
    done(look("8 capped", {}, "M1", "2027-07-26"));
    EXPECT_EQ(looks().size(), 2U);
    done(look("5 capped", {}, "M1", "2027-07-01"));
    EXPECT_EQ(looks().size(), 3U) << "an older look comes later";
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(looks().size(), 2U);
}

TEST_F(BoxSeen, ALookThatCannotBeIsRefused) {
    EXPECT_EQ(code(look("85 % full", R"(,"filled_share":0.85,"filled_how":"by eye")")),
              "contradiction");
    EXPECT_EQ(outcome(look("9 drawn", R"(,"filled_share":0.85,"filled_how":"by eye")")), "kept");
    EXPECT_EQ(outcome(look("13 drawn")), "too_many contents");
    EXPECT_EQ(refusalValue(look("13 drawn"), "most"), "12");
    EXPECT_EQ(outcome(look("12 drawn")), "kept") << "two wedged into ten";
    EXPECT_EQ(outcome(look("8 drawn, 5 part")), "too_many contents") << "all classes together";
    EXPECT_EQ(outcome(look("11 drawn", {}, "E1")), "too_many contents") << "an 8-frame box";
    EXPECT_EQ(outcome(look("10 drawn", {}, "E1")), "kept");
    EXPECT_EQ(outcome(look("9 gold")), "not_a_choice contents");
    EXPECT_EQ(outcome(look("6 drawn; 7 capped")), "contradiction contents");
    EXPECT_EQ(outcome(look("", R"(,"water_percent":174)")), "out_of_range water_percent");
    EXPECT_EQ(outcome(look("", R"(,"water_percent":17.4)")), "kept");
    EXPECT_EQ(outcome(look("9 drawn", {}, "M1", "2027-04-09")), "before_it_began on");
    EXPECT_EQ(outcome(look("9 drawn", {}, "M1", "2027-02-29")), "not_a_day on");
    EXPECT_EQ(outcome(look("9 drawn", {}, "M77")), "not_found box");
}

TEST_F(BoxSeen, ARefusalNamesTheFieldAsItIsWritten) {
    EXPECT_EQ(outcome(look("85 % full", R"(,"filled_share":0.85,"filled_how":"by eye")")),
              "contradiction filled_share");
}

TEST_F(BoxSeen, NoMoreIsCappedThanFits) {
    EXPECT_EQ(outcome(look("13 capped")), "too_many contents");
    EXPECT_EQ(outcome(look("12 capped")), "kept");
}

class FramesCounted : public BoxSeen {
  protected:
    /// "7 drawn, 1 W": the frames in the box, those with a place marked by it.
    std::string frames(const char* mark = "M1") const {
        std::map<std::string, int> classes;
        for (const Frame& each :
             file().where<Frame>({is("box", box(mark).id), isUnknown("retired")})) {
            std::string said =
                each.comb ? std::string(Choices<Comb>::words[static_cast<std::size_t>(*each.comb)])
                          : each.faults;
            if (each.position) said += " at " + std::to_string(each.position->value());
            ++classes[said];
        }
        std::string text;
        for (const auto& [said, n] : classes)
            text += (text.empty() ? "" : ", ") + std::to_string(n) + " " + said;
        return text;
    }
    void placeOne() {
        const StepInfo step{"place", "place", {}, {}};
        ASSERT_TRUE(season.perform(step, [&](Write& write) -> Result<void> {
            auto frame = write.where<Frame>({is("box", box("M1").id)}).front();
            frame.position = Count(4);
            write.change(frame);
            return {};
        }));
    }
};

TEST_F(FramesCounted, ReplaceTheExchangeable) {
    EXPECT_EQ(frames(), "9 drawn");
    done(seen("count-box", "M1", "7 drawn, 1 W, 1 broken"));
    EXPECT_EQ(frames(), "1 V, 1 W, 7 drawn");
    done(seen("count-box", "M1", "4 foundation"));
    EXPECT_EQ(frames(), "4 foundation");
    const auto counts = file().where<BoxCount>({is("box", box("M1").id)});
    EXPECT_EQ(counts.size(), 5U) << "what was typed stays: 1 at its coming, 3, 1";
    EXPECT_EQ(counts.back().occasion, Occasion::Visit);
    EXPECT_EQ(file().where<Frame>({is("retired", Retired::Missing)}).size(), 5U)
        << "frames that were not found are missing, not struck out";
}

TEST_F(FramesCounted, APlacedFrameStaysAndIsPartOfTheCount) {
    placeOne();
    done(seen("count-box", "M1", "9 drawn"));
    EXPECT_EQ(frames(), "8 drawn, 1 drawn at 4");
}

TEST_F(FramesCounted, APlacedFrameIsCountedInItsOwnClass) {
    placeOne();
    done(seen("count-box", "M1", "7 drawn, 1 W, 1 broken"));
    EXPECT_EQ(frames(), "1 V, 1 W, 6 drawn, 1 drawn at 4");
}

TEST_F(FramesCounted, RefuseWhatCannotBeMeant) {
    EXPECT_EQ(outcome(seen("count-box", "M1", "")), "missing contents");
    EXPECT_EQ(outcome(seen("count-box", "M1", "7 capped")), "missing contents");
    EXPECT_EQ(outcome(seen("count-box", "M1", "9 gold")), "not_a_choice contents");
    EXPECT_EQ(outcome(seen("count-box", "M1", "9.5 drawn")), "wrong_type contents");
    EXPECT_EQ(outcome(seen("count-box", "M1", "13 drawn")), "too_many contents");
    EXPECT_EQ(outcome(seen("count-box", "M1", "9 drawn", {}, "2027-04-09")), "before_it_began on");
    EXPECT_EQ(outcome(seen("count-box", "M1", "9 drawn", R"(,"occasion":"party")")),
              "not_a_choice occasion");
}

class Held : public BoxSeen {
  protected:
    static std::string hold(const std::string& what, const char* on = "2027-05-20") {
        return R"({"do":"hold-back","on":")" + std::string(on) + '"' + what + "}";
    }
    static std::string release(const char* hold, const char* on) {
        return R"({"do":"release-hold","on":")" + std::string(on) + R"(","hold":")" + hold +
               R"(","lifted_by":"the keeper","grounds":"looked at again"})";
    }
};

TEST_F(Held, OneThingAtATime) {
    EXPECT_EQ(outcome(hold(R"(,"reason":"other")")), "missing box");
    EXPECT_EQ(outcome(hold(R"(,"reason":"other","box":"M1","hive":"H1")")), "contradiction box");
    EXPECT_EQ(outcome(hold(R"(,"reason":"other","hive":"H2")")), "not_found hive")
        << "nobody lives there";
    EXPECT_EQ(outcome(hold(R"(,"reason":"a whim","box":"M1")")), "not_a_choice reason");
    EXPECT_EQ(outcome(hold(R"(,"reason":"suspected disease","hive":"H1")")), "kept");
    EXPECT_EQ(file().all<Hold>().back().colony, colonyIn(file(), hive("H1"))->id)
        << "the hold sticks to the colony, not to the stand";
}

TEST_F(Held, UntilItIsReleased) {
    done(hold(R"(,"reason":"treated while on","box":"M1")"));
    EXPECT_EQ(outcome(release("#1", "2027-05-19")), "before_it_began on");
    EXPECT_EQ(outcome(release("#2", "2027-06-01")), "not_found hold");
    EXPECT_EQ(outcome(release("#1", "2027-06-01")), "kept");
    const Hold lifted = file().all<Hold>().front();
    EXPECT_EQ(lifted.lifted, test::day("2027-06-01"));
    EXPECT_EQ(lifted.liftedBy, "the keeper");
    EXPECT_EQ(lifted.grounds, "looked at again");
    EXPECT_EQ(outcome(release("#1", "2027-06-02")), "nothing_to_do hold");
}

class OwnFigures : public BoxSeen {
  protected:
    static std::string set(const char* constant, const std::string& value,
                           const char* on = "2027-04-01", const std::string& more = {}) {
        return R"({"do":"set-constant","on":")" + std::string(on) + R"(","constant":")" + constant +
               R"(","value":)" + value + more + "}";
    }
    double need(const char* on, bool hill = false) const {
        const auto yard = hill ? std::optional(file().all<Yard>().front().id) : std::nullopt;
        return constantOr(file(), "winter_need_g", yard, test::day(on), -1);
    }
};

TEST_F(OwnFigures, HoldFromTheirDayOn) {
    const double published = need("2027-06-01");
    EXPECT_GT(published, 0);
    done(set("winter_need_g", "20000", "2027-04-01"));
    done(set("winter_need_g", "22000", "2027-06-01"));
    EXPECT_EQ(need("2027-03-31"), published) << "an earlier day is unaffected";
    EXPECT_EQ(need("2027-04-01"), 20000);
    EXPECT_EQ(need("2027-05-31"), 20000);
    EXPECT_EQ(need("2027-06-01"), 22000);
    done(set("winter_need_g", "18000", "2027-05-01"));
    EXPECT_EQ(need("2027-05-15"), 18000) << "written later, of an earlier day";
    EXPECT_EQ(need("2027-06-01"), 22000) << "the later day still wins";
    done(set("winter_need_g", "23000", "2027-06-01"));
    EXPECT_EQ(need("2027-06-01"), 23000) << "of one day the last word";
}

TEST_F(OwnFigures, TheYardsOwnBeatsTheFiles) {
    done(set("winter_need_g", "30000", "2027-04-01", R"(,"yard":"Hill")"));
    done(set("winter_need_g", "20000", "2027-05-01"));
    EXPECT_EQ(need("2027-06-01", true), 30000) << "though the file's is newer";
    EXPECT_EQ(need("2027-06-01"), 20000);
}

TEST_F(OwnFigures, RefuseWhatNobodyKnows) {
    EXPECT_EQ(outcome(set("winter_need", "20000")), "not_found constant");
    EXPECT_EQ(outcome(set("winter_need_g", "-1")), "negative value");
    EXPECT_EQ(outcome(set("winter_need_g", R"("20000")")), "wrong_type value");
    EXPECT_EQ(outcome(set("winter_need_g", "0")), "kept") << "none is an answer";
    EXPECT_EQ(outcome(set("full_frame_g LANG-F-MED", "1600")), "kept");
    EXPECT_EQ(outcome(set("winter_need_g", "1", "2027-04-01", R"(,"yard":"Nowhere")")),
              "not_found yard");
}

TEST_F(OwnFigures, AFullFrameIsOfAKindThereIs) {
    EXPECT_EQ(outcome(set("full_frame_g LANG-F-MUD", "1600")), "not_found constant");
    EXPECT_EQ(outcome(set("full_frame_g", "1600")), "not_found constant") << "of which kind?";
    EXPECT_EQ(outcome(set("winter_need_g medium", "1600")), "not_found constant");
}

}  // namespace
}  // namespace combwright
