#include <gtest/gtest.h>

#include <QJsonArray>
#include <QJsonDocument>
#include <cstdlib>
#include <string>

#include "core/exchange/compute/computations.h"

namespace combwright {
namespace {

Result<QJsonObject> runExtractor(std::string_view name, const char* json) {
    QJsonParseError error;
    const QJsonObject input = QJsonDocument::fromJson(json, &error).object();
    EXPECT_EQ(error.error, QJsonParseError::NoError) << json;
    for (const Computation& each : extractorComputations())
        if (each.name == name) return each.run(input);
    return Refusal{Code::NoSuchCommand, std::string(name), {}};
}

struct RefusedExtractor {
    const char* name;
    const char* json;
    Code code;
    const char* field;
};

TEST(ExtractorComputations, BalanceNamesTheFrameOfEachSlot) {
    const auto out = runExtractor("extractor-balance",
                                  R"({"slots":4,"frames":[
        {"id":"a","start_g":1900,"end_g":400},{"id":"b","start_g":2300.5,"end_g":420},
        {"id":"c","start_g":2300.5,"end_g":420}]})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->keys(),
              (QStringList{"end_offset_g", "lower_bound_g", "proven", "slots", "start_offset_g"}));
    EXPECT_EQ(out->value("slots").toArray(),
              (QJsonArray{"b", "a", "c", QJsonValue(QJsonValue::Null)}));
    EXPECT_NEAR(out->value("start_offset_g").toDouble(), 1900, 1e-9);
    EXPECT_NEAR(out->value("end_offset_g").toDouble(), 400, 1e-9);
    EXPECT_TRUE(out->value("proven").toBool());
    EXPECT_NEAR(out->value("lower_bound_g").toDouble(), 1900, 1e-9);
}

TEST(ExtractorComputations, BalanceTellsTheDoubtWhereItCan) {
    const auto out = runExtractor("extractor-balance",
                                  R"({"slots":2,"frames":[
        {"id":"a","start_g":2000,"end_g":400,"sd_g":30,"radius_mm":300},
        {"id":"b","start_g":4000,"end_g":800,"sd_g":80,"radius_mm":150}]})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->value("slots").toArray(), (QJsonArray{"b", "a"}));
    EXPECT_EQ(out->value("start_offset_g").toDouble(), 0.0);
    EXPECT_NEAR(out->value("doubt_g").toDouble(), 1.52 * 50.0, 1e-9);
}

TEST(ExtractorComputations, BalanceOfNothingAndNullAsAbsent) {
    const auto empty = runExtractor("extractor-balance", R"({"slots":3,"frames":[]})");
    ASSERT_TRUE(empty);
    const QJsonValue none(QJsonValue::Null);
    EXPECT_EQ(empty->value("slots").toArray(), (QJsonArray{none, none, none}));
    EXPECT_EQ(empty->value("start_offset_g").toDouble(-1), 0.0);
    EXPECT_FALSE(empty->contains("doubt_g"));
    const auto absent = runExtractor("extractor-balance",
                                     R"({"slots":3,"frames":[
        {"id":"a","start_g":2000,"end_g":400,"sd_g":null,"radius_mm":null}]})");
    ASSERT_TRUE(absent);
    EXPECT_FALSE(absent->contains("doubt_g"));
}

TEST(ExtractorComputations, Unbalance) {
    const auto out = runExtractor(
        "unbalance", R"({"offset_g":500,"radius_mm":250,"rpm":300,"rotor_kg":60,"grade":null})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 4);
    EXPECT_EQ(out->value("g_mm").toDouble(), 125'000.0);
    EXPECT_NEAR(out->value("newton").toDouble(), 123.37, 0.005);
    EXPECT_NEAR(out->value("allowed_g_mm").toDouble(), 30'558, 1);
    EXPECT_NEAR(out->value("share_of_allowed").toDouble(), 4.09, 0.005);
    const auto finer = runExtractor(
        "unbalance", R"({"offset_g":0,"radius_mm":0,"rpm":300,"rotor_kg":60,"grade":6.3})");
    ASSERT_TRUE(finer);
    EXPECT_EQ(finer->value("g_mm").toDouble(-1), 0.0);
    EXPECT_NEAR(finer->value("allowed_g_mm").toDouble(), 12'032, 1);
}

TEST(ExtractorComputations, SpinLoadsKeepsLotsApart) {
    const char* frames = R"("frames":[
        {"id":"1","box":"A","kind":"medium","lot":"Hill","start_g":2300,"end_g":420},
        {"id":"2","box":"A","kind":"medium","lot":"Hill","start_g":2300,"end_g":420},
        {"id":"3","box":"B","kind":"medium","lot":"Creek","start_g":2000,"end_g":400},
        {"id":"4","box":"B","kind":"shallow","start_g":2000,"end_g":400}])";
    const auto apart =
        runExtractor("spin-loads", (std::string(R"({"slots":4,)") + frames + "}").c_str());
    ASSERT_TRUE(apart);
    EXPECT_EQ(apart->size(), 1);
    const QJsonArray loads = apart->value("loads").toArray();
    ASSERT_EQ(loads.size(), 3);
    const QJsonObject first = loads[0].toObject();
    EXPECT_EQ(first.keys(),
              (QStringList{"end_offset_g", "kinds", "lots", "slots", "start_offset_g"}));
    const QJsonValue none(QJsonValue::Null);
    EXPECT_EQ(first.value("slots").toArray(), (QJsonArray{"1", none, "2", none}));
    EXPECT_EQ(first.value("lots").toArray(), QJsonArray{"Hill"});
    EXPECT_EQ(first.value("start_offset_g").toDouble(-1), 0.0);
    EXPECT_EQ(loads[2].toObject().value("kinds").toArray(), QJsonArray{"shallow"});
    EXPECT_TRUE(loads[2].toObject().value("lots").toArray().isEmpty());

    const auto mixed = runExtractor(
        "spin-loads",
        (std::string(R"({"slots":4,"mix_lots":true,"mix_kinds":true,"open_boxes":2,)") + frames +
         "}")
            .c_str());
    ASSERT_TRUE(mixed);
    EXPECT_EQ(mixed->value("loads").toArray().size(), 1);

    const auto byKind = runExtractor(
        "spin-loads",
        (std::string(R"({"slots":{"medium":2,"shallow":3,"deep":6},"open_boxes":null,)") + frames +
         "}")
            .c_str());
    ASSERT_TRUE(byKind);
    EXPECT_EQ(byKind->value("loads").toArray()[2].toObject().value("slots").toArray().size(), 3);
}

// Rim 320 mm: ten mediums of 2300 g hang at 240.5 mm, two shallows of 1900 g at 251.5 mm. The
// shallows opposite each other leave 0 (reckoned by hand, see the reference tests).
TEST(ExtractorComputations, SpinLoadsMixesDepthsAtTheirRadius) {
    QJsonArray frames;
    for (int i = 0; i < 12; ++i) {
        const bool shallow = i == 3 || i == 7;
        frames.append(QJsonObject{{"id", QString::number(i)},
                                  {"box", shallow ? "B" : "A"},
                                  {"kind", shallow ? "shallow" : "medium"},
                                  {"start_g", shallow ? 1900 : 2300},
                                  {"end_g", 0},
                                  {"radius_mm", shallow ? 251.5 : 240.5}});
    }
    QJsonObject input{{"slots", QJsonObject{{"medium", 12}, {"shallow", 12}}},
                      {"mix_kinds", true},
                      {"frames", frames}};
    const auto spin = [](const QJsonObject& given) {
        const auto out =
            runExtractor("spin-loads", QJsonDocument(given).toJson().toStdString().c_str());
        EXPECT_TRUE(out);
        return out ? out->value("loads").toArray() : QJsonArray();
    };
    const QJsonArray loads = spin(input);
    ASSERT_EQ(loads.size(), 1);
    const QJsonObject load = loads[0].toObject();
    EXPECT_EQ(load.value("kinds").toArray(), (QJsonArray{"medium", "shallow"}));
    EXPECT_EQ(load.value("start_offset_g").toDouble(-1), 0.0);
    const QJsonArray places = load.value("slots").toArray();
    int at[2] = {-1, -1};
    for (int slot = 0; slot < 12; ++slot) {
        if (places[slot].toString() == "3") at[0] = slot;
        if (places[slot].toString() == "7") at[1] = slot;
    }
    EXPECT_EQ(std::abs(at[0] - at[1]), 6);
    // Not allowed, or another number of places: apart.
    input.insert("mix_kinds", false);
    EXPECT_EQ(spin(input).size(), 2);
    input.insert("mix_kinds", true);
    input.insert("slots", QJsonObject{{"medium", 12}, {"shallow", 14}});
    EXPECT_EQ(spin(input).size(), 2);
}

TEST(ExtractorComputations, SpinLoadsOfNothing) {
    const auto empty = runExtractor("spin-loads", R"({"slots":12,"frames":[]})");
    ASSERT_TRUE(empty);
    EXPECT_TRUE(empty->contains("loads"));
    EXPECT_TRUE(empty->value("loads").toArray().isEmpty());
}

TEST(ExtractorComputations, Refusals) {
    const RefusedExtractor table[] = {
        {"extractor-balance", R"({"frames":[]})", Code::Missing, "slots"},
        {"extractor-balance", R"({"slots":12})", Code::Missing, "frames"},
        {"extractor-balance", R"({"slots":1,"frames":[]})", Code::OutOfRange, "slots"},
        {"extractor-balance", R"({"slots":73,"frames":[]})", Code::OutOfRange, "slots"},
        {"extractor-balance", R"({"slots":2.5,"frames":[]})", Code::WrongType, "slots"},
        {"extractor-balance", R"({"slots":"12","frames":[]})", Code::WrongType, "slots"},
        {"extractor-balance", R"({"slots":12,"frames":{}})", Code::WrongType, "frames"},
        {"extractor-balance", R"({"slots":12,"frames":[3]})", Code::WrongType, "frames[0]"},
        {"extractor-balance", R"({"slots":12,"frames":[],"rpm":3})", Code::UnknownKey, "rpm"},
        {"extractor-balance", R"({"slots":12,"frames":[{"start_g":1,"end_g":1}]})", Code::Missing,
         "frames[0].id"},
        {"extractor-balance", R"({"slots":12,"frames":[{"id":7,"start_g":1,"end_g":1}]})",
         Code::WrongType, "frames[0].id"},
        {"extractor-balance", R"({"slots":12,"frames":[{"id":"a","end_g":1}]})", Code::Missing,
         "frames[0].start_g"},
        {"extractor-balance", R"({"slots":12,"frames":[{"id":"a","start_g":1,"end_g":-1}]})",
         Code::Negative, "frames[0].end_g"},
        {"extractor-balance",
         R"({"slots":12,"frames":[{"id":"a","start_g":1,"end_g":1,"box":"A"}]})", Code::UnknownKey,
         "frames[0].box"},
        {"extractor-balance",
         R"({"slots":12,"frames":[{"id":"a","start_g":1,"end_g":1,"sd_g":-2}]})", Code::Negative,
         "frames[0].sd_g"},
        {"extractor-balance",
         R"({"slots":12,"frames":[{"id":"a","start_g":1,"end_g":1,"radius_mm":0}]})",
         Code::OutOfRange, "frames[0].radius_mm"},
        {"extractor-balance",
         R"({"slots":12,"frames":[{"id":"a","start_g":1,"end_g":1},
            {"id":"a","start_g":1,"end_g":1}]})",
         Code::Duplicate, "frames[1].id"},
        {"extractor-balance",
         R"({"slots":12,"frames":[{"id":"a","start_g":1,"end_g":1,"sd_g":3},
            {"id":"b","start_g":1,"end_g":1}]})",
         Code::Missing, "frames[1].sd_g"},
        {"extractor-balance",
         R"({"slots":2,"frames":[{"id":"a","start_g":1,"end_g":1},{"id":"b","start_g":1,"end_g":1},
            {"id":"c","start_g":1,"end_g":1}]})",
         Code::TooMany, "frames"},
        {"unbalance", R"({"radius_mm":250,"rpm":300,"rotor_kg":60})", Code::Missing, "offset_g"},
        {"unbalance", R"({"offset_g":-5,"radius_mm":250,"rpm":300,"rotor_kg":60})", Code::Negative,
         "offset_g"},
        {"unbalance", R"({"offset_g":5,"radius_mm":-250,"rpm":300,"rotor_kg":60})", Code::Negative,
         "radius_mm"},
        {"unbalance", R"({"offset_g":5,"radius_mm":250,"rpm":0,"rotor_kg":60})", Code::OutOfRange,
         "rpm"},
        {"unbalance", R"({"offset_g":5,"radius_mm":250,"rpm":300,"rotor_kg":0})", Code::OutOfRange,
         "rotor_kg"},
        {"unbalance", R"({"offset_g":5,"radius_mm":250,"rpm":300,"rotor_kg":60,"grade":0})",
         Code::OutOfRange, "grade"},
        {"unbalance", R"({"offset_g":5,"radius_mm":250,"rpm":true,"rotor_kg":60})", Code::WrongType,
         "rpm"},
        {"unbalance", R"({"offset_g":5,"radius_mm":250,"rpm":300,"rotor_kg":60,"g":9})",
         Code::UnknownKey, "g"},
        {"spin-loads", R"({"frames":[]})", Code::Missing, "slots"},
        {"spin-loads", R"({"slots":12})", Code::Missing, "frames"},
        {"spin-loads", R"({"slots":73,"frames":[]})", Code::OutOfRange, "slots"},
        {"spin-loads", R"({"slots":"12","frames":[]})", Code::WrongType, "slots"},
        {"spin-loads", R"({"slots":{"medium":1},"frames":[]})", Code::OutOfRange, "slots.medium"},
        {"spin-loads", R"({"slots":{"medium":"12"},"frames":[]})", Code::WrongType, "slots.medium"},
        {"spin-loads", R"({"slots":12,"frames":[],"open_boxes":0})", Code::OutOfRange,
         "open_boxes"},
        {"spin-loads", R"({"slots":12,"frames":[],"mix_lots":1})", Code::WrongType, "mix_lots"},
        {"spin-loads", R"({"slots":12,"frames":[],"mix":true})", Code::UnknownKey, "mix"},
        {"spin-loads",
         R"({"slots":{"deep":6},"frames":[{"id":"a","box":"A","kind":"medium","start_g":1,
            "end_g":1}]})",
         Code::Missing, "slots.medium"},
        {"spin-loads",
         R"({"slots":12,"frames":[{"id":"a","kind":"medium","start_g":1,"end_g":1}]})",
         Code::Missing, "frames[0].box"},
        {"spin-loads",
         R"({"slots":12,"frames":[{"id":"a","box":"A","kind":"medium","start_g":1,"end_g":1,
            "sd_g":3}]})",
         Code::UnknownKey, "frames[0].sd_g"},
        {"spin-loads",
         R"({"slots":12,"frames":[{"id":"a","box":"A","kind":"medium","start_g":1,"end_g":1},
            {"id":"a","box":"A","kind":"medium","start_g":1,"end_g":1}]})",
         Code::Duplicate, "frames[1].id"},
        {"spin-loads",
         R"({"slots":2,"open_boxes":1,"frames":[
            {"id":"a","box":"A","kind":"m","lot":"x","start_g":1,"end_g":1},
            {"id":"b","box":"B","kind":"m","lot":"x","start_g":1,"end_g":1},
            {"id":"c","box":"A","kind":"m","lot":"y","start_g":1,"end_g":1},
            {"id":"d","box":"B","kind":"m","lot":"y","start_g":1,"end_g":1}]})",
         Code::OutOfRange, "open_boxes"},
    };
    for (const RefusedExtractor& each : table) {
        const auto refused = runExtractor(each.name, each.json);
        ASSERT_FALSE(refused) << each.name << " " << each.json;
        EXPECT_EQ(refused.error().code, each.code) << each.json;
        EXPECT_EQ(refused.error().field, each.field) << each.json;
    }
}

}  // namespace
}  // namespace combwright
