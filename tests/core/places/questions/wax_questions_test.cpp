// What is asked back at the wax bench, and that ordinary figures raise no question.
#include "core/places/questions/wax_questions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class WaxAsked : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        season.onChange([this](const Change& change) {
            for (const Question& question : questionsAfter(season.read(), change, clock.today()))
                asked.emplace_back(key(question.asked));
        });
        done(R"({"do":"open-run","on":"2027-08-08","name":"27-1"}
{"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle","net_g":45}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47}
{"do":"gather-wax","on":"2027-08-09","name":"A","source":"cappings","state":"drained","runs":"27-1","raw_g":8000})");
    }
    std::vector<std::string> after(std::string_view line) {
        asked.clear();
        EXPECT_EQ(outcome(line), "kept") << line;
        return asked;
    }
    std::vector<std::string> asked;
};

TEST_F(WaxAsked, AYieldFarFromThePublished) {
    EXPECT_THAT(
        after(
            R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"A","shade":"light","mass_g":6000})"),
        ElementsAre("yield_unusual"))
        << "75 % of drained cappings, 40 to 50 are published";
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(
        after(
            R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"A","shade":"light","mass_g":1000})"),
        ElementsAre("yield_unusual"));
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(
        after(
            R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"A","shade":"light","mass_g":3500})"),
        IsEmpty());
}

TEST_F(WaxAsked, ABlockHeavierThanWhatCameOutOfThePot) {
    done(R"({"do":"work-wax","on":"2027-11-01","batch":"A","work":"melted","came_out_g":3200})");
    EXPECT_THAT(
        after(
            R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"A","shade":"light","mass_g":3800})"),
        ElementsAre("yield_unusual"))
        << "48 % is an ordinary yield, but only 3.2 kg came out";
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(
        after(
            R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"A","shade":"light","mass_g":3150})"),
        IsEmpty());
}

// Four of 47 ml take 4 · 45.12 = 180 g.
TEST_F(WaxAsked, WaxThatDoesNotFitTheMould) {
    done(
        R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"A","shade":"light","mass_g":3500})");
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L 180 g"})"),
        IsEmpty());
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-16","mould":"Skeps","good":4,"blocks":"L 195 g"})"),
        IsEmpty())
        << "film and sprue";
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-17","mould":"Skeps","good":4,"blocks":"L 400 g"})"),
        ElementsAre("much_wax_in_candle"));
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-18","mould":"Skeps","good":4,"blocks":"L 90 g"})"),
        ElementsAre("little_wax_in_candle"));
}

TEST_F(WaxAsked, WaxSoHotThatItDiscolours) {
    done(
        R"({"do":"cast-block","on":"2027-11-02","name":"L","batch":"A","shade":"light","mass_g":3500})");
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L 180 g","temperature_c":85})"),
        IsEmpty());
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-16","mould":"Skeps","good":4,"blocks":"L 180 g","temperature_c":90})"),
        ElementsAre("wax_too_hot"));
}

}  // namespace
}  // namespace combwright
