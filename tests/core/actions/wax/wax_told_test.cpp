// A refusal at the bench says how much there is and in which unit, which days do not fit, and never
// leaves a gap where a name belongs.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

class WaxTold : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-goods","on":"2027-08-01","name":"skep","what":"candle"}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"wick":"#1"}
{"do":"cast-block","on":"2027-11-02","name":"L1","shade":"light","mass_g":2000}
{"do":"use-wax","on":"2027-11-20","block":"L1","went":"sold","mass_g":600}
{"do":"note-propolis","on":"2027-10-01","went":"scraped","mass_g":45}
{"do":"start-project","on":"2027-05-01","name":"Jars","pieces":8})");
    }
    std::string says(const std::string& line) {
        const QString said = told(line);
        EXPECT_FALSE(said.contains(QChar(0x2026))) << said.toStdString();
        EXPECT_FALSE(said.contains(QLatin1String(", ."))) << said.toStdString();
        return said.toStdString();
    }
};

TEST_F(WaxTold, HowMuchThereIsWithItsUnit) {
    EXPECT_THAT(says(R"({"do":"note-propolis","on":"2027-10-02","went":"given","mass_g":60})"),
                AllOf(HasSubstr("at most 45 g"), HasSubstr("2027-10-02")));
    EXPECT_THAT(
        says(R"({"do":"use-wax","on":"2027-11-22","block":"L1","went":"given","mass_g":1500})"),
        HasSubstr("at most 1.400 kg"));
    EXPECT_THAT(
        says(
            R"({"do":"pour-candles","on":"2027-11-22","mould":"Skeps","good":4,"blocks":"L1 5 kg"})"),
        HasSubstr("at most 1.400 kg"));
    EXPECT_THAT(
        says(
            R"({"do":"amend","on":"2027-12-01","why":"misread","wax_block":"L1","set":{"mass_g":500}})"),
        AllOf(HasSubstr("L1"), HasSubstr("0.6 kg"), Not(HasSubstr("at most"))));
}

TEST_F(WaxTold, OneIsAllowedWhereItIsTheLeast) {
    EXPECT_THAT(
        says(R"({"do":"pour-candles","on":"2027-11-22","mould":"Skeps","good":0,"blocks":"L1"})"),
        HasSubstr("at least 1."));
    EXPECT_THAT(
        says(R"({"do":"cast-block","on":"2027-11-22","name":"X","shade":"light","mass_g":0})"),
        HasSubstr("at least 1 g."));
}

TEST_F(WaxTold, WhichDaysDoNotFit) {
    EXPECT_THAT(
        says(
            R"({"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":4,"wanted_by":"2027-11-01"})"),
        AllOf(HasSubstr("2027-11-01"), HasSubstr("2027-11-10"), Not(HasSubstr("cannot both"))));
    EXPECT_THAT(
        says(
            R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-11-14"})"),
        AllOf(HasSubstr("To ("), HasSubstr("2027-11-15")));
    EXPECT_THAT(
        says(
            R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2029-11-14"})"),
        HasSubstr("2028-11-15 at most"));
    EXPECT_THAT(
        says(
            R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"Mo, Wed Fri"})"),
        AllOf(HasSubstr("mo"), HasSubstr("mon, tue, wed")));
    EXPECT_THAT(says(R"({"do":"look-at-project","on":"2027-06-01","project":"Jars","built":1})"),
                HasSubstr("not begun"));
}

TEST_F(WaxTold, NothingIsLeftOutWhereANameBelongs) {
    EXPECT_THAT(says(R"({"do":"heat-off","on":"2027-11-22","off_at":"2027-11-22T12:00:00Z"})"),
                HasSubstr("there is none"));
    done(
        R"({"do":"heat-on","on":"2027-11-22","begun":"2027-11-22T10:00:00Z","what_heated":"pot"}
{"do":"heat-on","on":"2027-11-22","begun":"2027-11-22T10:10:00Z","what_heated":"pan"})");
    EXPECT_THAT(says(R"({"do":"heat-off","on":"2027-11-22","off_at":"2027-11-22T12:00:00Z"})"),
                HasSubstr("there are 2."));
    done(R"({"do":"retire-mould","on":"2027-12-01","mould":"Skeps"})");
    EXPECT_THAT(
        says(R"({"do":"pour-candles","on":"2027-12-02","mould":"Skeps","good":1,"blocks":"L1"})"),
        HasSubstr("ended on 2027-12-01"));
    done(R"({"do":"pour-candles","on":"2027-11-22","mould":"Skeps","good":1,"blocks":"L1 45 g"}
{"do":"finish-candles","on":"2027-11-23","pour":"#1","candle_work":"released"})");
    EXPECT_THAT(
        says(R"({"do":"finish-candles","on":"2027-11-24","pour":"#1","candle_work":"released"})"),
        HasSubstr("since 2027-11-23"));
    EXPECT_THAT(
        says(R"({"do":"buy-wick","on":"2027-11-24","wick":"#1","bought_length_mm":12.345})"),
        HasSubstr("one decimal"));
}

}  // namespace
}  // namespace combwright
