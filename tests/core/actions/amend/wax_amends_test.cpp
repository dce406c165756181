// Amending at the wax bench keeps the rules of the deeds: nothing comes out that did not go in.
#include <gtest/gtest.h>

#include "core/storage/queries/wax_ledger.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class AmendedWax : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"add-goods","on":"2027-08-01","name":"skep","what":"candle","net_g":45}
{"do":"gather-wax","on":"2027-08-09","name":"A","source":"cappings","state":"drained","shade":"light","runs":"27-1","raw_g":11000,"kept":"tight lid"}
{"do":"work-wax","on":"2027-11-02","batch":"A","work":"melted","put_in_g":11000,"came_out_g":4700}
{"do":"cast-block","on":"2027-11-02","name":"L1","batch":"A","shade":"light","mass_g":3400}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47}
{"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L1 180 g"}
{"do":"finish-candles","on":"2027-11-16","pour":"Skeps","candle_work":"labelled"}
{"do":"note-propolis","on":"2027-06-01","went":"scraped","mass_g":100}
{"do":"note-propolis","on":"2027-07-01","went":"sold","mass_g":60,"price":12}
{"do":"start-project","on":"2027-05-01","name":"Jars","pieces":8,"hive":"H1"}
{"do":"work-project","on":"2027-06-01","project":"Jars","project_work":"put on"}
{"do":"look-at-project","on":"2027-06-09","project":"Jars","built":5,"filled_pieces":2})");
    }
    std::string amended(const std::string& what) {
        return outcome(R"({"do":"amend","on":"2027-12-01",)" + what + R"(,"why":"misread"})");
    }
    std::optional<Mass> left() const {
        return blockLedgers(file(), day("2027-12-20")).front().left;
    }
};

TEST_F(AmendedWax, MassesStayWithinWhatWentIn) {
    EXPECT_EQ(amended(R"("wax_block":"L1","set":{"mass_g":3500})"), "kept");
    EXPECT_EQ(left(), Mass::grams(3320));
    EXPECT_EQ(amended(R"("wax_block":"L1","set":{"mass_g":12000})"), "too_many set.mass_g");
    EXPECT_EQ(amended(R"("wax_block":"L1","set":{"mass_g":100})"), "too_many set.mass_g");
    EXPECT_EQ(amended(R"("wax_batch":"A","set":{"raw_g":3000})"), "too_many set.raw_g");
    EXPECT_EQ(amended(R"("wax_batch":"A","set":{"raw_g":10500,"state":"undrained"})"), "kept");
    EXPECT_EQ(amended(R"("wax_step":"#1","set":{"came_out_g":12000})"), "too_many set.came_out_g");
    EXPECT_EQ(amended(R"("wax_step":"#1","set":{"temperature_c":120})"),
              "out_of_range set.temperature_c");
    EXPECT_EQ(amended(R"("wax_use":"#1","set":{"mass_g":200})"), "kept");
    EXPECT_EQ(left(), Mass::grams(3300));
    EXPECT_EQ(amended(R"("wax_use":"#1","set":{"mass_g":0})"), "out_of_range set.mass_g");
    EXPECT_EQ(amended(R"("wax_use":"#1","set":{"on_day":"2027-11-17"})"),
              "contradiction set.on_day");
    EXPECT_EQ(amended(R"("wax_use":"#1","set":{"went":"sold"})"), "contradiction set.went");
    expectClean();
}

TEST_F(AmendedWax, DaysStayInOrder) {
    EXPECT_EQ(amended(R"("wax_batch":"A","set":{"on_day":"2027-11-03"})"),
              "contradiction set.kept_since");
    EXPECT_EQ(amended(R"("wax_batch":"A","set":{"on_day":"2027-11-03","kept_since":null})"),
              "contradiction set.on_day");
    EXPECT_EQ(amended(R"("wax_block":"L1","set":{"on_day":"2027-11-20"})"),
              "before_it_began set.on_day");
    EXPECT_EQ(amended(R"("pour":"Skeps","set":{"on_day":"2027-11-17"})"),
              "contradiction set.released");
    EXPECT_EQ(amended(R"("pour":"Skeps","set":{"on_day":"2027-11-14"})"), "kept");
    EXPECT_EQ(file().first<WaxUse>({})->on, day("2027-11-14")) << "its wax goes along";
    EXPECT_EQ(amended(R"("mould":"Skeps","set":{"since":"2027-11-30"})"),
              "contradiction set.since");
    EXPECT_EQ(amended(R"("hive_project":"Jars","set":{"put_on":"2027-06-12"})"),
              "contradiction set.put_on");
    EXPECT_EQ(amended(R"("hive_project":"Jars","set":{"taken_off":"2027-06-12"})"),
              "other_action set.taken_off");
    EXPECT_EQ(amended(R"("hive_project":"Jars","set":{"pieces":4})"), "contradiction set.pieces");
    EXPECT_EQ(amended(R"("project_look":"#1","set":{"filled_pieces":6})"),
              "contradiction set.filled_pieces");
    expectClean();
}

TEST_F(AmendedWax, CandlesAndPropolisStayThere) {
    done(R"({"do":"go-out","on":"2027-12-01","goods":"3 skep"})");
    EXPECT_EQ(amended(R"("pour":"Skeps","set":{"good":2,"failed":2})"), "too_many set.good");
    EXPECT_EQ(amended(R"("pour":"Skeps","set":{"good":3,"failed":1})"), "kept");
    EXPECT_EQ(amended(R"("pour":"Skeps","set":{"good":0,"failed":0})"), "out_of_range set.good");
    EXPECT_EQ(amended(R"("pour":"Skeps","set":{"mould":"Skeps"})"), "fixed set.mould");
    EXPECT_EQ(amended(R"("propolis_move":"#1","set":{"mass_g":50})"), "too_many set.mass_g");
    EXPECT_EQ(amended(R"("propolis_move":"#2","set":{"went":"given"})"), "contradiction set.price");
    EXPECT_EQ(amended(R"("mould":"Skeps","set":{"volume_ml":0})"), "out_of_range set.volume_ml");
    EXPECT_EQ(amended(R"("mould":"Skeps","set":{"gone":"2027-12-01"})"), "other_action set.gone");
    expectClean();
}

TEST_F(AmendedWax, APotIsTickedOffNotAmendedOff) {
    done(
        R"({"do":"heat-on","on":"2027-11-02","begun":"2027-11-02T13:00:00Z","what_heated":"pot"})");
    EXPECT_EQ(amended(R"("heat_session":"pot","set":{"off_at":"2027-11-02T14:00:00Z"})"),
              "other_action set.off_at");
    done(R"({"do":"heat-off","on":"2027-11-02","off_at":"2027-11-02T15:00:00Z"})");
    EXPECT_EQ(amended(R"("heat_session":"pot","set":{"off_at":"2027-11-02T14:30:00Z"})"), "kept");
    EXPECT_EQ(amended(R"("heat_session":"pot","set":{"off_at":"2027-11-02T12:00:00Z"})"),
              "contradiction set.off_at");
}

TEST_F(AmendedWax, WishesEveningsAndWick) {
    done(
        R"({"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":8,"wanted_by":"2027-12-24","what_for":"gifts"}
{"do":"set-evening","on":"2027-11-10","evening_day":"2027-12-20"}
{"do":"buy-wick","on":"2027-11-01","wick":"#1","bought_length_mm":5000})");
    EXPECT_EQ(amended(R"("candle_wish":"skep","set":{"count":0})"), "out_of_range set.count");
    EXPECT_EQ(amended(R"("candle_wish":"skep","set":{"shades":"blue"})"),
              "not_a_choice set.shades");
    EXPECT_EQ(amended(R"("candle_wish":"skep","set":{"count":12})"), "kept");
    EXPECT_EQ(amended(R"("free_evening":"#1","set":{"free":false,"cycles":2})"),
              "contradiction set.free");
    EXPECT_EQ(amended(R"("wick_stock":"#1","set":{"bought_length_mm":0})"),
              "out_of_range set.bought_length_mm");
    EXPECT_EQ(amended(R"("wick_stock":"#1","set":{"bought_length_mm":6000})"), "kept");
    EXPECT_EQ(wickLeft(file(), "#1", day("2027-12-20")), Length::tenthsOfMm(60'000));
}

// Steps of a pour in the wrong order are refused where they are written down too.
TEST_F(AmendedWax, ACandleIsNotTrimmedBeforeItIsOut) {
    done(R"({"do":"pour-candles","on":"2027-11-17","mould":"Skeps","good":4,"blocks":"L1 180 g"}
{"do":"finish-candles","on":"2027-11-20","pour":"#2","candle_work":"released"})");
    EXPECT_EQ(
        outcome(R"({"do":"finish-candles","on":"2027-11-19","pour":"#2","candle_work":"trimmed"})"),
        "before_it_began on");
}

}  // namespace
}  // namespace combwright
