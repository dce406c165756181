#include <gtest/gtest.h>

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
