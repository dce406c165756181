#include <gtest/gtest.h>

#include <QJsonArray>
#include <QJsonDocument>

#include "core/exchange/compute/computations.h"

namespace combwright {
namespace {

Result<QJsonObject> runColony(std::string_view name, const char* json) {
    const auto document = QJsonDocument::fromJson(json);
    EXPECT_TRUE(document.isObject()) << json;
    for (const Computation& each : colonyComputations())
        if (each.name == name) return each.run(document.object());
    return Refusal{Code::NoSuchCommand, std::string(name), {}};
}

QJsonObject colonyAnswer(std::string_view name, const char* json) {
    const auto out = runColony(name, json);
    EXPECT_TRUE(out) << json << " " << (out ? "" : out.error().field);
    return out ? *out : QJsonObject();
}

struct ColonySlip {
    const char* json;
    Code code;
    const char* field;
};

void expectColonyRefusals(std::string_view name, std::initializer_list<ColonySlip> slips) {
    for (const ColonySlip& slip : slips) {
        const auto out = runColony(name, slip.json);
        ASSERT_FALSE(out) << slip.json;
        EXPECT_EQ(out.error().code, slip.code) << slip.json;
        EXPECT_EQ(out.error().field, slip.field) << slip.json;
    }
}

TEST(MiteRateComputation, RateAndInterval) {
    const auto six = colonyAnswer("mite-rate", R"({"mites":6,"bees":300})");
    EXPECT_EQ(six.keys(), (QStringList{"high", "low", "per_100"}));
    EXPECT_DOUBLE_EQ(six["per_100"].toDouble(), 2);
    EXPECT_NEAR(six["low"].toDouble(), 0.7374, 5e-5);
    EXPECT_NEAR(six["high"].toDouble(), 4.3021, 5e-5);
    // Left out, null and said are the same 95 %.
    EXPECT_EQ(colonyAnswer("mite-rate", R"({"mites":6,"bees":300,"confidence":null})"), six);
    EXPECT_EQ(colonyAnswer("mite-rate", R"({"mites":6,"bees":300,"confidence":0.95})"), six);
    const auto narrow = colonyAnswer("mite-rate", R"({"mites":6,"bees":300,"confidence":0.5})");
    EXPECT_GT(narrow["low"].toDouble(), six["low"].toDouble());
    EXPECT_LT(narrow["high"].toDouble(), six["high"].toDouble());
    const auto none = colonyAnswer("mite-rate", R"({"mites":0,"bees":300})");
    EXPECT_EQ(none["per_100"].toDouble(-1), 0);
    EXPECT_EQ(none["low"].toDouble(-1), 0);
    expectColonyRefusals(
        "mite-rate", {{R"({"bees":300})", Code::Missing, "mites"},
                      {R"({"mites":6})", Code::Missing, "bees"},
                      {R"({"mites":6,"bees":null})", Code::Missing, "bees"},
                      {R"({"mites":"6","bees":300})", Code::WrongType, "mites"},
                      {R"({"mites":6.5,"bees":300})", Code::WrongType, "mites"},
                      {R"({"mites":6,"bees":299.5})", Code::WrongType, "bees"},
                      {R"({"mites":-1,"bees":300})", Code::Negative, "mites"},
                      {R"({"mites":6,"bees":-300})", Code::Negative, "bees"},
                      {R"({"mites":0,"bees":0})", Code::OutOfRange, "bees"},
                      {R"({"mites":6,"bees":1e9})", Code::OutOfRange, "bees"},
                      {R"({"mites":301,"bees":300})", Code::TooMany, "mites"},
                      {R"({"mites":6,"bees":300,"confidence":95})", Code::OutOfRange, "confidence"},
                      {R"({"mites":6,"bees":300,"confidence":-0.1})", Code::Negative, "confidence"},
                      {R"({"mites":6,"bees":300,"method":"wash"})", Code::UnknownKey, "method"}});
}

TEST(MiteForecastComputation, TheDayOrNull) {
    EXPECT_EQ(colonyAnswer(
                  "mite-forecast",
                  R"({"per_100":1,"threshold_per_100":2,"doubling_days":30,"day":"2028-02-01"})"),
              (QJsonObject{{"reaches_on", "2028-03-02"}}));
    EXPECT_EQ(
        colonyAnswer(
            "mite-forecast",
            R"({"per_100":3.67,"threshold_per_100":2,"doubling_days":30,"day":"2027-06-09"})"),
        (QJsonObject{{"reaches_on", "2027-06-09"}}));
    const auto none = colonyAnswer(
        "mite-forecast",
        R"({"per_100":0,"threshold_per_100":2,"doubling_days":30,"day":"2027-06-09"})");
    EXPECT_TRUE(none.contains("reaches_on"));
    EXPECT_TRUE(none["reaches_on"].isNull());
    expectColonyRefusals(
        "mite-forecast",
        {{R"({"threshold_per_100":2,"doubling_days":30,"day":"2027-06-09"})", Code::Missing,
          "per_100"},
         {R"({"per_100":-1,"threshold_per_100":2,"doubling_days":30,"day":"2027-06-09"})",
          Code::Negative, "per_100"},
         {R"({"per_100":101,"threshold_per_100":2,"doubling_days":30,"day":"2027-06-09"})",
          Code::OutOfRange, "per_100"},
         {R"({"per_100":1,"threshold_per_100":0,"doubling_days":30,"day":"2027-06-09"})",
          Code::OutOfRange, "threshold_per_100"},
         {R"({"per_100":1,"threshold_per_100":2,"doubling_days":0,"day":"2027-06-09"})",
          Code::OutOfRange, "doubling_days"},
         {R"({"per_100":1,"threshold_per_100":2,"doubling_days":30,"day":"2027-02-29"})",
          Code::NotADay, "day"},
         {R"({"per_100":1,"threshold_per_100":2,"doubling_days":30,"day":20270609})",
          Code::WrongType, "day"},
         {R"({"per_100":1,"threshold_per_100":2,"doubling_days":30,"day":"9999-12-20"})",
          Code::OutOfRange, "day"}});
}

TEST(RunOutComputation, TheDayOrNull) {
    EXPECT_EQ(
        colonyAnswer("run-out",
                     R"({"stores_g":8000,"floor_g":5000,"use_g_per_day":100,"day":"2028-02-01"})"),
        (QJsonObject{{"runs_out_on", "2028-03-02"}}));
    EXPECT_EQ(
        colonyAnswer("run-out",
                     R"({"stores_g":8000,"floor_g":5000,"use_g_per_day":100,"day":"2027-02-01"})"),
        (QJsonObject{{"runs_out_on", "2027-03-03"}}));
    EXPECT_EQ(
        colonyAnswer("run-out",
                     R"({"stores_g":4000,"floor_g":5000,"use_g_per_day":100,"day":"2027-02-01"})"),
        (QJsonObject{{"runs_out_on", "2027-02-01"}}));
    const auto never = colonyAnswer(
        "run-out", R"({"stores_g":8000,"floor_g":5000,"use_g_per_day":0,"day":"2027-02-01"})");
    EXPECT_TRUE(never.contains("runs_out_on"));
    EXPECT_TRUE(never["runs_out_on"].isNull());
    expectColonyRefusals(
        "run-out",
        {{R"({"stores_g":8000,"use_g_per_day":100,"day":"2027-02-01"})", Code::Missing, "floor_g"},
         {R"({"stores_g":-1,"floor_g":0,"use_g_per_day":100,"day":"2027-02-01"})", Code::Negative,
          "stores_g"},
         {R"({"stores_g":1,"floor_g":0,"use_g_per_day":-100,"day":"2027-02-01"})", Code::Negative,
          "use_g_per_day"},
         {R"({"stores_g":8000,"floor_g":0,"use_g_per_day":0.000001,"day":"2027-02-01"})",
          Code::OutOfRange, "day"},
         {R"({"stores_g":8000,"floor_g":0,"use_g_per_day":1,"day":"2027-02-01","feed_g":1})",
          Code::UnknownKey, "feed_g"}});
}

TEST(SugarComputation, SugarAndWater) {
    EXPECT_EQ(colonyAnswer("sugar", R"({"gap_g":8000,"stores_per_sugar":1.6,"sugar_to_water":2})"),
              (QJsonObject{{"sugar_g", 5000}, {"water_ml", 2500}}));
    expectColonyRefusals(
        "sugar",
        {{R"({"gap_g":8000,"sugar_to_water":2})", Code::Missing, "stores_per_sugar"},
         {R"({"gap_g":-8,"stores_per_sugar":1,"sugar_to_water":2})", Code::Negative, "gap_g"},
         {R"({"gap_g":8,"stores_per_sugar":0,"sugar_to_water":2})", Code::OutOfRange,
          "stores_per_sugar"},
         {R"({"gap_g":8,"stores_per_sugar":-1,"sugar_to_water":2})", Code::Negative,
          "stores_per_sugar"},
         {R"({"gap_g":8,"stores_per_sugar":1,"sugar_to_water":0})", Code::OutOfRange,
          "sugar_to_water"},
         {R"({"gap_g":8,"stores_per_sugar":1,"sugar_to_water":2,"bag_g":1})", Code::UnknownKey,
          "bag_g"}});
}

TEST(QueenDatesComputation, AllSixDates) {
    EXPECT_EQ(colonyAnswer("queen-dates", R"({"event":"cell sealed","day":"2027-06-09"})"),
              (QJsonObject{{"emerges_from", "2027-06-09"},
                           {"emerges_to", "2027-06-17"},
                           {"do_not_open_until", "2027-06-30"},
                           {"look_from", "2027-07-01"},
                           {"test_frame_from", "2027-07-08"},
                           {"act_by", "2027-07-15"}}));
    EXPECT_EQ(
        colonyAnswer("queen-dates",
                     R"({"event":"cell sealed","day":"2027-06-09","not_seen_on":"2027-06-02"})")
            ["emerges_from"],
        "2027-06-10");
    const auto own = colonyAnswer(
        "queen-dates",
        R"({"event":"queen lost","day":"2027-06-09","look_after_days":7,"test_frame_after_days":null,"act_after_days":20})");
    EXPECT_EQ(own["emerges_from"], "2027-06-19");
    EXPECT_EQ(own["emerges_to"], "2027-06-22");
    EXPECT_EQ(own["do_not_open_until"], "2027-06-28");
    EXPECT_EQ(own["look_from"], "2027-06-29");
    EXPECT_EQ(own["test_frame_from"], "2027-07-13");
    EXPECT_EQ(own["act_by"], "2027-07-12");
    EXPECT_EQ(
        colonyAnswer("queen-dates", R"({"event":"cell open","day":"2027-06-09"})")["emerges_to"],
        "2027-06-22");
    EXPECT_EQ(colonyAnswer("queen-dates",
                           R"({"event":"larva moved","day":"2027-06-09"})")["emerges_from"],
              "2027-06-21");
    expectColonyRefusals(
        "queen-dates", {{R"({"day":"2027-06-09"})", Code::Missing, "event"},
                        {R"({"event":"cell sealed"})", Code::Missing, "day"},
                        {R"({"event":"swarm","day":"2027-06-09"})", Code::NotAChoice, "event"},
                        {R"({"event":"cell sealed","day":"2027-06-31"})", Code::NotADay, "day"},
                        {R"({"event":"cell sealed","day":"2027-06-09","not_seen_on":"2027-06-10"})",
                         Code::Contradiction, "not_seen_on"},
                        {R"({"event":"cell sealed","day":"2027-06-09","look_after_days":-1})",
                         Code::Negative, "look_after_days"},
                        {R"({"event":"cell sealed","day":"2027-06-09","look_after_days":1.5})",
                         Code::WrongType, "look_after_days"},
                        {R"({"event":"cell sealed","day":"2027-06-09","act_after_days":366})",
                         Code::OutOfRange, "act_after_days"},
                        {R"({"event":"cell sealed","day":"2027-06-09","queen":"Q1"})",
                         Code::UnknownKey, "queen"}});
}

TEST(LossComputation, TotalAndMean) {
    const auto loss =
        colonyAnswer("loss", R"({"yards":[{"dead":4,"at_risk":4},{"dead":0,"at_risk":96}]})");
    EXPECT_EQ(loss.size(), 4);
    EXPECT_EQ(loss.value(QLatin1String("total_share")), 0.04);
    EXPECT_EQ(loss.value(QLatin1String("mean_share")), 0.5);
    // 4 of 100: where the binomial's tails are 2.5 %, found by bisection outside the program.
    EXPECT_NEAR(loss.value(QLatin1String("total_low_share")).toDouble(), 0.0110045, 1e-6);
    EXPECT_NEAR(loss.value(QLatin1String("total_high_share")).toDouble(), 0.0992572, 1e-6);
    expectColonyRefusals(
        "loss", {{R"({})", Code::Missing, "yards"},
                 {R"({"yards":[]})", Code::Missing, "yards"},
                 {R"({"yards":{}})", Code::WrongType, "yards"},
                 {R"({"yards":[3]})", Code::WrongType, "yards[0]"},
                 {R"({"yards":[{"dead":1}]})", Code::Missing, "yards[0].at_risk"},
                 {R"({"yards":[{"dead":0,"at_risk":0}]})", Code::OutOfRange, "yards[0].at_risk"},
                 {R"({"yards":[{"dead":1,"at_risk":4},{"dead":5,"at_risk":4}]})", Code::TooMany,
                  "yards[1].dead"},
                 {R"({"yards":[{"dead":-1,"at_risk":4}]})", Code::Negative, "yards[0].dead"},
                 {R"({"yards":[{"dead":0.5,"at_risk":4}]})", Code::WrongType, "yards[0].dead"},
                 {R"({"yards":[{"dead":1,"at_risk":4,"yard":"Hill"}]})", Code::UnknownKey,
                  "yards[0].yard"}});
}

}  // namespace
}  // namespace combwright
