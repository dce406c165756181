#include <gtest/gtest.h>

#include <QJsonArray>
#include <QJsonDocument>

#include "core/exchange/compute/computations.h"

namespace combwright {
namespace {

Result<QJsonObject> runHoney(std::string_view name, const char* json) {
    const QJsonObject input = QJsonDocument::fromJson(json).object();
    for (const Computation& each : honeyComputations())
        if (each.name == name) return each.run(input);
    return Refusal{Code::NoSuchCommand, std::string(name), {}};
}

struct RefusedHoney {
    const char* name;
    const char* json;
    Code code;
    const char* field;
};

TEST(HoneyComputations, MoistureOfAnIndexReading) {
    const auto out =
        runHoney("honey-moisture", R"({"refractive_index":1.4892,"temperature_c":30})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 2);
    EXPECT_NEAR(out->value("water_percent").toDouble(), 18.0, 1e-9);
    EXPECT_NEAR(out->value("refractive_index_20c").toDouble(), 1.4915, 1e-12);
}

TEST(HoneyComputations, MoistureOfABrixReading) {
    const auto out = runHoney("honey-moisture", R"({"brix":80,"temperature_c":20})");
    ASSERT_TRUE(out);
    EXPECT_NEAR(out->value("water_percent").toDouble(), 18.31, 0.03);
    EXPECT_NEAR(out->value("refractive_index_20c").toDouble(), 1.49071, 1e-9);
    const auto warm = runHoney("honey-moisture", R"({"brix":80,"temperature_c":30})");
    ASSERT_TRUE(warm);
    EXPECT_NEAR(warm->value("refractive_index_20c").toDouble(), 1.49301, 1e-9);
}

TEST(HoneyComputations, NullIsAsIfLeftOut) {
    EXPECT_TRUE(
        runHoney("honey-moisture", R"({"refractive_index":1.49,"brix":null,"temperature_c":20})"));
    EXPECT_TRUE(
        runHoney("honey-moisture", R"({"refractive_index":null,"brix":80,"temperature_c":20})"));
}

TEST(HoneyComputations, Density) {
    const auto out = runHoney("honey-density", R"({"water_percent":18,"temperature_c":30})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 1);
    EXPECT_NEAR(out->value("kg_per_l").toDouble(), 1.4096, 1e-9);
}

TEST(HoneyComputations, Viscosity) {
    const auto out = runHoney("honey-viscosity", R"({"water_percent":17,"temperature_c":30})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 1);
    EXPECT_NEAR(out->value("pa_s").toDouble(), 4.10, 0.005);  // computed from the formula
}

TEST(HoneyComputations, Settling) {
    const auto out = runHoney(
        "settling", R"({"water_percent":17,"temperature_c":25,"depth_mm":500,"bubble_um":100})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 1);
    EXPECT_NEAR(out->value("hours").toDouble(), 131, 0.6);  // computed from Stokes' law
}

TEST(HoneyComputations, FermentRisk) {
    const auto keeps = runHoney("ferment-risk", R"({"water_percent":17.04})");
    ASSERT_TRUE(keeps);
    EXPECT_EQ(*keeps, (QJsonObject{{"risk", "safe"}}));
    EXPECT_EQ(*runHoney("ferment-risk", R"({"water_percent":18.6})"),
              (QJsonObject{{"risk", "safe if few yeasts"}, {"limit_yeast_per_g", 10}}));
    EXPECT_EQ(*runHoney("ferment-risk", R"({"water_percent":18.6,"yeast_per_g":10})"),
              (QJsonObject{{"risk", "at risk"}, {"limit_yeast_per_g", 10}}));
    EXPECT_EQ(*runHoney("ferment-risk", R"({"water_percent":17.1,"yeast_per_g":900})"),
              (QJsonObject{{"risk", "safe"}, {"limit_yeast_per_g", 1000}}));
    EXPECT_EQ(*runHoney("ferment-risk", R"({"water_percent":19.5,"yeast_per_g":null})"),
              (QJsonObject{{"risk", "at risk"}, {"limit_yeast_per_g", 1}}));
    EXPECT_EQ(*runHoney("ferment-risk", R"({"water_percent":20.1,"yeast_per_g":0})"),
              (QJsonObject{{"risk", "in danger whatever the count"}}));
}

TEST(HoneyComputations, HeatDamage) {
    const auto out = runHoney("heat-damage", R"({"temperature_c":40,"hours":48})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 3);
    EXPECT_NEAR(out->value("hmf_gain_mg_per_kg").toDouble(), 2.0, 0.05);
    EXPECT_NEAR(out->value("diastase_left_share").toDouble(), 0.956, 0.001);
    EXPECT_NEAR(out->value("invertase_left_share").toDouble(), 0.866, 0.002);
    // HMF is published from 20 °C on: below, it is not known, and not nothing.
    const auto cool = runHoney("heat-damage", R"({"temperature_c":12,"hours":48})");
    ASSERT_TRUE(cool);
    EXPECT_TRUE(cool->value("hmf_gain_mg_per_kg").isNull());
    EXPECT_GT(cool->value("diastase_left_share").toDouble(), 0.99);
}

TEST(HoneyComputations, Blend) {
    const auto out = runHoney("blend", R"({"target_percent":17.8,"buckets":[)"
                                       R"({"id":"wet","mass_g":100000,"water_percent":19.4},)"
                                       R"({"id":"wetter","mass_g":5000,"water_percent":21},)"
                                       R"({"id":"dry","mass_g":60000.4,"water_percent":16.8}]})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->value("use").toArray(),
              (QJsonArray{QJsonObject{{"id", "wet"}, {"mass_g", 37500}},
                          QJsonObject{{"id", "dry"}, {"mass_g", 60000}}}));
    EXPECT_EQ(out->value("mass_g").toInteger(), 97500);
    EXPECT_EQ(out->value("water_percent").toDouble(), 17.8);
    // An empty list and nothing that fits are the same empty answer.
    for (const char* nothing :
         {R"({"target_percent":17.8,"buckets":[]})",
          R"({"target_percent":17.8,"buckets":[{"id":"a","mass_g":1000,"water_percent":18}]})"}) {
        const auto empty = runHoney("blend", nothing);
        ASSERT_TRUE(empty);
        EXPECT_TRUE(empty->value("use").toArray().isEmpty());
        EXPECT_EQ(empty->value("mass_g").toDouble(), 0);
        EXPECT_TRUE(empty->value("water_percent").isNull());
    }
}

TEST(HoneyComputations, DryingAndColour) {
    const auto off =
        runHoney("drying", R"({"mass_g":100000,"water_percent":20,"target_percent":18})");
    ASSERT_TRUE(off);
    EXPECT_NEAR(off->value("water_off_g").toDouble(), 2439.02, 0.01);
    EXPECT_EQ(*runHoney("drying", R"({"mass_g":100000,"water_percent":17,"target_percent":18})"),
              (QJsonObject{{"water_off_g", 0}}));
    EXPECT_EQ(*runHoney("colour-class", R"({"pfund_mm":8})"),
              (QJsonObject{{"class", "Water White"}}));
    EXPECT_EQ(*runHoney("colour-class", R"({"pfund_mm":8.1})"),
              (QJsonObject{{"class", "Extra White"}}));
}

TEST(HoneyComputations, RefusalsNameTheKeyOfTheBucketRoom) {
    const RefusedHoney cases[] = {
        {"settling", R"({"water_percent":13.4,"temperature_c":30,"depth_mm":1,"bubble_um":1})",
         Code::OutOfRange, "water_percent"},
        {"settling", R"({"water_percent":17,"temperature_c":71,"depth_mm":1,"bubble_um":1})",
         Code::OutOfRange, "temperature_c"},
        {"settling", R"({"water_percent":17,"temperature_c":30,"depth_mm":-1,"bubble_um":1})",
         Code::Negative, "depth_mm"},
        {"settling", R"({"water_percent":17,"temperature_c":30,"depth_mm":1,"bubble_um":0})",
         Code::OutOfRange, "bubble_um"},
        {"settling", R"({"water_percent":17,"temperature_c":30,"depth_mm":1})", Code::Missing,
         "bubble_um"},
        {"ferment-risk", R"({})", Code::Missing, "water_percent"},
        {"ferment-risk", R"({"water_percent":100.1})", Code::OutOfRange, "water_percent"},
        {"ferment-risk", R"({"water_percent":-1})", Code::Negative, "water_percent"},
        {"ferment-risk", R"({"water_percent":"17,4"})", Code::WrongType, "water_percent"},
        {"ferment-risk", R"({"water_percent":174})", Code::OutOfRange, "water_percent"},
        {"ferment-risk", R"({"water_percent":18,"yeast_per_g":-1})", Code::Negative, "yeast_per_g"},
        {"heat-damage", R"({"temperature_c":9.9,"hours":1})", Code::OutOfRange, "temperature_c"},
        {"heat-damage", R"({"temperature_c":80.1,"hours":1})", Code::OutOfRange, "temperature_c"},
        {"heat-damage", R"({"temperature_c":40,"hours":-1})", Code::Negative, "hours"},
        {"heat-damage", R"({"temperature_c":40,"hours":1,"minutes":1})", Code::UnknownKey,
         "minutes"},
        {"blend", R"({"target_percent":18})", Code::Missing, "buckets"},
        {"blend", R"({"buckets":[]})", Code::Missing, "target_percent"},
        {"blend", R"({"target_percent":101,"buckets":[]})", Code::OutOfRange, "target_percent"},
        {"blend", R"({"target_percent":18,"buckets":[{"id":"a","mass_g":-1,"water_percent":18}]})",
         Code::Negative, "buckets[0].mass_g"},
        {"blend", R"({"target_percent":18,"buckets":[{"id":"a","mass_g":1,"water_percent":174}]})",
         Code::OutOfRange, "buckets[0].water_percent"},
        {"blend", R"({"target_percent":18,"buckets":[{"mass_g":1,"water_percent":18}]})",
         Code::Missing, "buckets[0].id"},
        {"blend",
         R"({"target_percent":18,"buckets":[{"id":"a","mass_g":1,"water_percent":18},)"
         R"({"id":"a","mass_g":1,"water_percent":18}]})",
         Code::Duplicate, "buckets[1].id"},
        {"blend",
         R"({"target_percent":18,"buckets":[{"id":"a","mass_g":1,"water_percent":18,"lid":1}]})",
         Code::UnknownKey, "buckets[0].lid"},
        {"drying", R"({"mass_g":-1,"water_percent":20,"target_percent":18})", Code::Negative,
         "mass_g"},
        {"drying", R"({"mass_g":1,"water_percent":101,"target_percent":18})", Code::OutOfRange,
         "water_percent"},
        {"drying", R"({"mass_g":1,"water_percent":20,"target_percent":-1})", Code::Negative,
         "target_percent"},
        {"colour-class", R"({"pfund_mm":-0.1})", Code::Negative, "pfund_mm"},
        {"colour-class", R"({"pfund_mm":"amber"})", Code::WrongType, "pfund_mm"},
        {"colour-class", R"({})", Code::Missing, "pfund_mm"}};
    for (const RefusedHoney& each : cases) {
        SCOPED_TRACE(std::string(each.name) + " " + each.json);
        const auto out = runHoney(each.name, each.json);
        ASSERT_FALSE(out);
        EXPECT_EQ(out.error().code, each.code);
        EXPECT_EQ(out.error().field, each.field);
    }
}

TEST(HoneyComputations, RefusalsNameTheKey) {
    const RefusedHoney cases[] = {
        {"honey-viscosity", R"({"water_percent":17})", Code::Missing, "temperature_c"},
        {"honey-viscosity", R"({"temperature_c":30})", Code::Missing, "water_percent"},
        {"honey-viscosity", R"({"water_percent":13.4,"temperature_c":30})", Code::OutOfRange,
         "water_percent"},
        {"honey-viscosity", R"({"water_percent":17,"temperature_c":71})", Code::OutOfRange,
         "temperature_c"},
        {"honey-viscosity", R"({"water_percent":17,"temperature_c":30,"x":1})", Code::UnknownKey,
         "x"},
        {"honey-moisture", R"({})", Code::Missing, "temperature_c"},
        {"honey-moisture", R"({"temperature_c":20})", Code::Missing, "refractive_index"},
        {"honey-moisture", R"({"brix":null,"temperature_c":20})", Code::Missing,
         "refractive_index"},
        {"honey-moisture", R"({"brix":80})", Code::Missing, "temperature_c"},
        {"honey-moisture", R"({"brix":80,"temperature_c":null})", Code::Missing, "temperature_c"},
        {"honey-moisture", R"({"brix":80,"refractive_index":1.49,"temperature_c":20})",
         Code::Contradiction, "brix"},
        {"honey-moisture", R"({"brix":"80","temperature_c":20})", Code::WrongType, "brix"},
        {"honey-moisture", R"({"brix":80,"temperature_c":true})", Code::WrongType, "temperature_c"},
        {"honey-moisture", R"({"brix":80,"temperature_c":20,"atc":true})", Code::UnknownKey, "atc"},
        {"honey-moisture", R"({"refractive_index":1.4739,"temperature_c":20})", Code::OutOfRange,
         "refractive_index"},
        {"honey-moisture", R"({"refractive_index":1.5045,"temperature_c":20})", Code::OutOfRange,
         "refractive_index"},
        {"honey-moisture", R"({"refractive_index":1.5040,"temperature_c":30})", Code::OutOfRange,
         "refractive_index"},
        {"honey-moisture", R"({"refractive_index":-1.49,"temperature_c":20})", Code::OutOfRange,
         "refractive_index"},
        {"honey-moisture", R"({"brix":64.9,"temperature_c":20})", Code::OutOfRange, "brix"},
        {"honey-moisture", R"({"brix":85.1,"temperature_c":20})", Code::OutOfRange, "brix"},
        {"honey-moisture", R"({"brix":85,"temperature_c":40})", Code::OutOfRange, "brix"},
        {"honey-density", R"({"temperature_c":20})", Code::Missing, "water_percent"},
        {"honey-density", R"({"water_percent":17})", Code::Missing, "temperature_c"},
        {"honey-density", R"({"water_percent":[17],"temperature_c":20})", Code::WrongType,
         "water_percent"},
        {"honey-density", R"({"water_percent":17,"temperature_c":20,"litres":1})", Code::UnknownKey,
         "litres"},
        {"honey-density", R"({"water_percent":12.9,"temperature_c":20})", Code::OutOfRange,
         "water_percent"},
        {"honey-density", R"({"water_percent":21.1,"temperature_c":20})", Code::OutOfRange,
         "water_percent"},
        {"honey-density", R"({"water_percent":17,"temperature_c":9.9})", Code::OutOfRange,
         "temperature_c"},
        {"honey-density", R"({"water_percent":17,"temperature_c":50.1})", Code::OutOfRange,
         "temperature_c"}};
    for (const RefusedHoney& each : cases) {
        SCOPED_TRACE(std::string(each.name) + " " + each.json);
        const auto out = runHoney(each.name, each.json);
        ASSERT_FALSE(out);
        EXPECT_EQ(out.error().code, each.code);
        EXPECT_EQ(out.error().field, each.field);
    }
}

}  // namespace
}  // namespace combwright
