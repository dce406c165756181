// What is odd at the wax bench and may be so: it is kept and asked back about, and ordinary figures
// raise no question.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/questions/questions.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class WaxSlipsAsked : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        season.onChange([this](const Change& change) {
            for (const Question& question : questionsAfter(season.read(), change, clock.today())) {
                asked.emplace_back(key(question.asked));
                said += question.says + QLatin1Char('\n');
            }
        });
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x","origin":"overwintered"}
{"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"M4","count":1}
{"do":"open-run","on":"2027-08-08","name":"27-1"}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B1","net_g":28000}
{"do":"add-goods","on":"2027-05-01","name":"skep","what":"candle","net_g":45}
{"do":"add-goods","on":"2027-05-01","name":"taper","what":"candle","net_g":60}
{"do":"add-goods","on":"2027-05-01","name":"comb jar","what":"comb honey","price":14}
{"do":"cast-block","on":"2027-11-02","name":"L","shade":"light","mass_g":3000}
{"do":"buy-wick","on":"2027-10-01","wick":"#1","bought_length_mm":1000}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","quantity":10,"unit":"strips","supers":"off","wait_days":14}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"wick":"#1","wick_length_mm":120})");
    }
    std::vector<std::string> after(std::string_view line) {
        asked.clear();
        said.clear();
        EXPECT_EQ(outcome(line), "kept") << line << told(line).toStdString();
        return asked;
    }
    std::vector<std::string> asked;
    QString said;
};

TEST_F(WaxSlipsAsked, MoreCappingsThanTheRunGave) {
    EXPECT_THAT(
        after(
            R"({"do":"gather-wax","on":"2027-08-09","name":"A","source":"cappings","runs":"27-1","raw_g":1000000})"),
        ElementsAre("much_cappings"));
    EXPECT_THAT(
        after(
            R"({"do":"gather-wax","on":"2027-08-09","name":"B","source":"cappings","runs":"27-1","raw_g":3400})"),
        IsEmpty());
}

TEST_F(WaxSlipsAsked, MoreCombsThanTheBoxHolds) {
    EXPECT_THAT(
        after(
            R"({"do":"gather-wax","on":"2027-11-01","name":"O","source":"old comb","boxes":"M4","combs":99})"),
        ElementsAre("many_combs"));
    EXPECT_THAT(
        after(
            R"({"do":"gather-wax","on":"2027-11-01","name":"P","source":"old comb","boxes":"M4","combs":9})"),
        IsEmpty());
}

TEST_F(WaxSlipsAsked, KeptSinceADayThatHasNotCome) {
    EXPECT_THAT(
        after(
            R"({"do":"gather-wax","on":"2027-11-01","name":"A","source":"cappings","kept":"frozen","kept_since":"2028-02-01"})"),
        ElementsAre("not_come_yet"));
    EXPECT_THAT(
        after(
            R"({"do":"gather-wax","on":"2027-11-01","name":"B","source":"cappings","kept":"frozen","kept_since":"2027-11-22"})"),
        IsEmpty())
        << "written down later";
}

TEST_F(WaxSlipsAsked, AMouldNobodyCanReckonWith) {
    EXPECT_THAT(after(R"({"do":"add-mould","on":"2027-10-01","name":"M","cavities":2})"),
                ElementsAre("mould_unknown"));
    // 20 × 60 mm hold 18.8 ml.
    EXPECT_THAT(
        after(
            R"({"do":"add-mould","on":"2027-10-01","name":"N","cavities":2,"volume_ml":28,"shape":"cylinder","diameter_mm":20,"height_mm":60})"),
        ElementsAre("mould_sizes_differ"));
    EXPECT_THAT(
        after(
            R"({"do":"add-mould","on":"2027-10-01","name":"O","cavities":2,"volume_ml":18,"shape":"cylinder","diameter_mm":20,"height_mm":60})"),
        IsEmpty());
}

TEST_F(WaxSlipsAsked, AnotherCandleThanTheMouldMakes) {
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","goods_kind":"taper","good":4,"blocks":"L"})"),
        ElementsAre("other_candle"));
    EXPECT_THAT(
        after(R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L"})"),
        IsEmpty());
}

TEST_F(WaxSlipsAsked, WickThatCannotHaveGone) {
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L","wick":"#7"})"),
        ElementsAre("wick_not_bought"));
    EXPECT_THAT(
        after(
            R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L","wick_used_mm":99000})"),
        ElementsAre("much_wick"));
    ASSERT_TRUE(season.undo());
    // 1,000 mm on the spool, 480 a pour.
    const char* const pour =
        R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L"})";
    EXPECT_THAT(after(pour), IsEmpty());
    EXPECT_THAT(after(pour), IsEmpty());
    EXPECT_THAT(after(pour), ElementsAre("much_wick")) << "more than there was";
}

TEST_F(WaxSlipsAsked, KilogramsOfPropolis) {
    EXPECT_THAT(
        after(R"({"do":"note-propolis","on":"2027-10-01","went":"scraped","mass_g":500000})"),
        ElementsAre("much_scraped"));
    EXPECT_THAT(after(R"({"do":"note-propolis","on":"2027-10-01","went":"scraped","mass_g":340})"),
                IsEmpty());
}

TEST_F(WaxSlipsAsked, CombPutOnWithoutAStarter) {
    done(R"({"do":"start-project","on":"2027-05-01","name":"Jars","pieces":8,"hive":"H1"})");
    EXPECT_THAT(
        after(
            R"({"do":"work-project","on":"2027-06-01","project":"Jars","project_work":"put on"})"),
        ElementsAre("no_starter"));
    EXPECT_THAT(
        after(
            R"({"do":"work-project","on":"2027-06-20","project":"Jars","project_work":"taken off"})"),
        IsEmpty())
        << "asked once";
    done(R"({"do":"start-project","on":"2027-05-01","name":"More","pieces":8,"hive":"H1"}
{"do":"work-project","on":"2027-05-20","project":"More","project_work":"starter in"})");
    EXPECT_THAT(
        after(
            R"({"do":"work-project","on":"2027-06-01","project":"More","project_work":"put on"})"),
        IsEmpty());
}

// Nine of a clean set and four that hung beside strips: of eleven sold two at least were those.
TEST_F(WaxSlipsAsked, CombThatWasTreatedWhileOn) {
    const auto set = [this](const char* name, const char* on, const char* off, const char* good) {
        const std::string head = R"(","project":")" + std::string(name) + R"(","project_work":)";
        done(R"({"do":"start-project","on":"2027-05-01","name":")" + std::string(name) +
             R"(","pieces":10,"hive":"H1","goods_kind":"comb jar"}
{"do":"work-project","on":"2027-05-02)" +
             head + R"("starter in"}
{"do":"work-project","on":")" +
             on + head + R"("put on"}
{"do":"work-project","on":")" +
             off + head + R"("taken off"}
{"do":"work-project","on":")" +
             off + head + R"("lidded","good":)" + good + "}");
    };
    set("Clean", "2027-05-10", "2027-06-10", "9");
    done(R"({"do":"treat","on":"2027-07-01","hives":"H1","medicine":"Strips"})");
    set("Treated", "2027-06-20", "2027-07-20", "4");
    EXPECT_THAT(after(R"({"do":"go-out","on":"2027-08-01","goods":"9 comb jar"})"), IsEmpty());
    EXPECT_THAT(after(R"({"do":"go-out","on":"2027-08-02","goods":"2 comb jar"})"),
                ElementsAre("treated_comb"));
    EXPECT_TRUE(said.contains("at least 2")) << said.toStdString();
    EXPECT_TRUE(said.contains("Treated"));
    ASSERT_TRUE(season.undo());
    done(R"({"do":"hold-back","on":"2027-08-01","reason":"suspected disease","hive":"H1"})");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-08-02","goods":"1 comb jar"})"),
              "held_back goods");
}

}  // namespace
}  // namespace combwright
