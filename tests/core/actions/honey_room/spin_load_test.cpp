// A load as it is told: where each frame hung and how it felt, which machine, which minutes; and
// what is not believed of it: thirteen frames in twelve slots, kinds that do not hang together,
// frames a box has no more.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/questions/questions.h"
#include "core/storage/audit.h"
#include "core/words/words.h"
#include "tests/support/amendments.h"
#include "tests/support/hill_and_creek.h"

namespace combwright {
namespace {

class SpunLoad : public test::Amended {
  protected:
    void SetUp() override {
        clock.set("2027-08-08");
        season.onChange([this](const Change& change) {
            for (const Question& each : questionsAfter(season.read(), change, clock.today()))
                asked.emplace_back(key(each.asked));
        });
        done(test::hillAndCreekBefore());
        done(R"({"do":"open-run","on":"2027-08-08","name":"27-3","yard":"Creek"}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"C2a","gross_g":23000}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"C2b","gross_g":18900}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","known_as":"red h","frames":9,"gross_g":18900})");
    }
    static std::string spin(const std::string& rest) {
        return R"({"do":"spin-load","on":"2027-08-08","run":"27-3",)" + rest + "}";
    }
    std::vector<std::string> hung() const {
        std::vector<std::string> frames;
        for (const SlotFrame& each : file().all<SlotFrame>())
            frames.push_back(std::to_string(each.slot.value()) + " " +
                             (each.box ? "#" + std::to_string(each.box->number) : "empty") +
                             (each.heft ? " " + std::string(word(*each.heft)) : ""));
        return frames;
    }
    /// What is asked back after a line, by name.
    std::vector<std::string> askedBy(const std::string& line) {
        asked.clear();
        EXPECT_EQ(outcome(line), "kept") << line;
        return asked;
    }
    std::vector<std::string> asked;
    std::vector<std::string> boxes() const {
        std::vector<std::string> in;
        for (const LoadBox& each : file().all<LoadBox>())
            in.push_back("#" + std::to_string(each.box.number) + " " +
                         std::to_string(each.frames.value()));
        return in;
    }
};

TEST_F(SpunLoad, KeepsWhereEachFrameHungAndHowItFelt) {
    done(spin(R"("slots":"C2a h, C2b m, , empty, #1 L, red h, red h h, C2a","ran":"smooth",)"
              R"("begun":"2027-08-08T08:10:00Z","uncapping_min":18,"spun_min":13)"));
    EXPECT_THAT(hung(), testing::ElementsAre("1 #1 heavy", "2 #2 middling", "4 empty", "5 #1 light",
                                             "6 #3", "7 #3 heavy", "8 #1"));
    EXPECT_THAT(boxes(), testing::ElementsAre("#1 3", "#2 1", "#3 2"));
    const auto load = only<SpinLoad>();
    EXPECT_EQ(load.uncapping, Minutes(18));
    EXPECT_EQ(load.begun, parseInstant("2027-08-08T08:10:00Z"));
    EXPECT_FALSE(load.machine);
    expectReplays();
    expectClean();
    ASSERT_TRUE(season.undo());
    EXPECT_TRUE(file().all<SlotFrame>().empty());
}

TEST_F(SpunLoad, ANameWithACommaStandsInQuotesOrByItsNumber) {
    done(
        R"({"do":"weigh-box","on":"2027-08-08","run":"27-3","known_as":"off C4, no tag","frames":9,"gross_g":18900})");
    EXPECT_NE(outcome(spin(R"("boxes":"off C4, no tag 3","ran":"smooth")")), "kept");
    done(spin(R"("boxes":"\"off C4, no tag\" 3, C2a 1","ran":"smooth")"));
    EXPECT_THAT(boxes(), testing::ElementsAre("#4 3", "#1 1"));
    done(spin(R"("slots":"\"off C4, no tag\" h, , \"off C4, no tag\", #4 l","ran":"smooth")"));
    EXPECT_THAT(hung(), testing::ElementsAre("1 #4 heavy", "3 #4", "4 #4 light"));
    EXPECT_NE(outcome(spin(R"("boxes":"\"off C4 3","ran":"smooth")")), "kept") << "no end to it";
}

TEST_F(SpunLoad, BoxesAndSlotsSayTheSameOrNothingIsKept) {
    EXPECT_EQ(outcome(spin(R"("boxes":"C2b 1, C2a 2","slots":"C2a, C2b, C2a")")), "kept");
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 1","slots":"C2a, C2a")")), "contradiction boxes");
    EXPECT_EQ(outcome(spin(R"("slots":"C2a, C9")")), "not_found slots");
    EXPECT_EQ(outcome(spin(R"("slots":"C2a x")")), "not_found slots");
    EXPECT_EQ(outcome(spin(R"("slots":"h")")), "not_found slots") << "of which box?";
    EXPECT_EQ(file().all<SpinLoad>().size(), 1U);
}

TEST_F(SpunLoad, ThirteenFramesDoNotHangInTwelveSlots) {
    const std::string thirteen = spin(R"("boxes":"C2a 9, C2b 4")");
    EXPECT_EQ(outcome(thirteen), "too_many boxes");
    EXPECT_EQ(refusalValue(thirteen, "most"), "12");
    EXPECT_EQ(outcome(spin(R"("slots":",,,,,,,,,,,,C2a")")), "too_many slots");
    EXPECT_EQ(outcome(spin(R"("slots":",,,,,,,,,,,C2a,,,")")), "kept") << "nothing hangs in those";
    EXPECT_TRUE(told(thirteen).contains(QStringLiteral("12 slots")));
    // Whoever has a larger machine writes it down.
    done(
        R"({"do":"describe-equipment","on":"2027-08-01","item":"extractor","frame_kind":"LANG-F-MED","holds":20})");
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 8, C2b 5")")), "kept");
}

TEST_F(SpunLoad, KindsThatDoNotHangTogetherAreToldApart) {
    done(
        R"({"do":"add-boxes","on":"2027-04-01","kind":"deep","first_mark":"D1","count":1,"stack":"shelf"}
{"do":"add-boxes","on":"2027-04-01","kind":"shallow","first_mark":"S1","count":1,"stack":"shelf"}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"D1","gross_g":30000}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"S1","gross_g":15000}
{"do":"describe-equipment","on":"2027-08-01","item":"extractor","frame_kind":"LANG-F-MED","holds":12}
{"do":"describe-equipment","on":"2027-08-01","item":"extractor","frame_kind":"LANG-F-DEEP","holds":6})");
    const std::string mixed = spin(R"("slots":"C2a, D1")");
    EXPECT_EQ(outcome(mixed), "contradiction slots");
    EXPECT_EQ(refusalValue(mixed, "other_slots"), "6");
    EXPECT_EQ(outcome(spin(R"("boxes":"D1 7")")), "too_many boxes");
    EXPECT_EQ(outcome(spin(R"("boxes":"S1 3, C2a 9")")), "kept")
        << "a shallow frame hangs where a medium one does";
}

TEST_F(SpunLoad, TheMachineIsAnExtractorOfThatDay) {
    done(R"({"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"old","holds":4}
{"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"big","holds":20}
{"do":"describe-equipment","on":"2027-08-01","item":"freezer","litres":200})");
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 9","machine":"old")")), "too_many boxes");
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 9, C2b 9","machine":"big")")), "kept");
    EXPECT_EQ(outcome(spin(R"("boxes":"red h 9")")), "kept") << "one of the two takes it";
    EXPECT_EQ(outcome(spin(R"("machine":"freezer")")), "not_a_choice machine");
    EXPECT_EQ(outcome(amend(R"("spin_load":"#1")", R"("machine":"freezer")")),
              "not_a_choice set.machine");
    EXPECT_EQ(outcome(amend(R"("spin_load":"#1")", R"("machine":"old","uncapping_min":20)")),
              "kept");
}

TEST_F(SpunLoad, WhatWasStoppedIsSpunAgainAndWhatWasSpunIsNot) {
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 9","ran":"stopped")")), "kept");
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 9","ran":"smooth")")), "kept");
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 1")")), "too_many boxes");
    EXPECT_EQ(outcome(spin(R"("boxes":"C2b 5, C2b 5")")), "too_many boxes") << "counted together";
}

TEST_F(SpunLoad, WhatIsSuspectedSinceItWasBroughtInIsNotSpun) {
    const std::string suspect =
        R"({"do":"hold-back","on":"2027-08-08","hive":"C2","reason":"suspected disease"})";
    done(spin(R"("boxes":"C2b 2","ran":"smooth")"));
    EXPECT_THAT(askedBy(suspect), testing::Contains("suspected_honey"))
        << "two of its frames are in the drum";
    const std::string more = spin(R"("boxes":"C2a 9","ran":"smooth")");
    EXPECT_EQ(outcome(more), "held_back boxes");
    EXPECT_EQ(refusalValue(more, "name"), "C2a");
    EXPECT_EQ(outcome(spin(R"("slots":"C2b")")), "held_back slots");
    EXPECT_EQ(outcome(spin(R"("boxes":"red h 9","ran":"smooth")")), "kept") << "nobody suspects it";
    EXPECT_EQ(outcome(spin(R"("boxes":"C2a 3","ran":"stopped")")), "kept");
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-08-08","spin_load":"#3","set":{"ran":"smooth"},"why":"slip"})"),
        "held_back set.ran");
    EXPECT_THAT(askedBy(R"({"do":"fill-bucket","on":"2027-08-08","run":"27-3","mark":"1",)"
                        R"("net_g":12000})"),
                testing::Contains("suspected_honey"));
}

TEST_F(SpunLoad, ASpunBoxIsNamedAsOneOfASuspectedHiveWithAReason) {
    done(spin(R"("boxes":"red h 9","ran":"smooth")"));
    done(R"({"do":"hold-back","on":"2027-08-08","hive":"C1","reason":"suspected disease"})");
    const std::string name =
        R"({"do":"name-lost-box","on":"2027-08-08","lost":{"extraction_box":"red h","run":"27-3"},"box":"C1a")";
    EXPECT_EQ(outcome(name + "}"), "held_back hive");
    EXPECT_THAT(askedBy(name + R"(,"reason":"its tag was found in the sump"})"),
                testing::Contains("suspected_honey"));
    EXPECT_EQ(outcome(spin(R"("boxes":"C1a 1","ran":"stopped")")), "kept");
}

}  // namespace
}  // namespace combwright
