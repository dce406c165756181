#include <gtest/gtest.h>

#include <QJsonArray>
#include <QJsonDocument>
#include <QStringList>
#include <cmath>
#include <vector>

#include "core/exchange/compute/computations.h"

namespace combwright {
namespace {

Result<QJsonObject> runPull(std::string_view name, const QJsonObject& input) {
    for (const Computation& each : pullComputations())
        if (each.name == name) return each.run(input);
    return Refusal{Code::NoSuchCommand, std::string(name), {}};
}

QJsonObject pullObject(const char* json) {
    QJsonParseError error;
    const auto document = QJsonDocument::fromJson(json, &error);
    EXPECT_EQ(error.error, QJsonParseError::NoError) << json;
    return document.object();
}

Result<QJsonObject> runPull(std::string_view name, const char* json) {
    return runPull(name, pullObject(json));
}

QStringList pullTextsOf(const QJsonValue& list) {
    QStringList texts;
    for (const auto& each : list.toArray()) texts.append(each.toString());
    return texts;
}

/// One change to an input that is good: the value at a path ("boxes.0.mark") replaced or, where it
/// is undefined, taken out.
QJsonValue jsonChanged(const QJsonValue& at, const QStringList& path, const QJsonValue& to) {
    if (path.isEmpty()) return to;
    if (at.isArray()) {
        QJsonArray list = at.toArray();
        const auto index = path.front().toInt();
        list[index] = jsonChanged(list[index], path.mid(1), to);
        return list;
    }
    QJsonObject object = at.toObject();
    const auto value = jsonChanged(object.value(path.front()), path.mid(1), to);
    if (value.isUndefined())
        object.remove(path.front());
    else
        object.insert(path.front(), value);
    return object;
}

struct PullRefusalRow {
    const char* path;
    QJsonValue value;
    Code code;
    const char* field;
};

const QJsonValue jsonGone(QJsonValue::Undefined);

void expectPullRefusals(std::string_view name, const char* good,
                        const std::vector<PullRefusalRow>& rows) {
    ASSERT_TRUE(runPull(name, good)) << name;
    for (const PullRefusalRow& row : rows) {
        const QJsonObject input =
            jsonChanged(pullObject(good), QString(row.path).split('.'), row.value).toObject();
        const auto out = runPull(name, input);
        ASSERT_FALSE(out) << row.path;
        EXPECT_EQ(key(out.error().code), key(row.code)) << row.path;
        EXPECT_EQ(out.error().field, row.field) << row.path;
    }
}

/// null for a key marked ? is as if it were left out.
void expectPullNullIsAbsent(std::string_view name, const char* good, const QStringList& paths) {
    for (const QString& path : paths) {
        const auto with = runPull(
            name, jsonChanged(pullObject(good), path.split('.'), QJsonValue(QJsonValue::Null))
                      .toObject());
        const auto without =
            runPull(name, jsonChanged(pullObject(good), path.split('.'), jsonGone).toObject());
        ASSERT_EQ(with.has_value(), without.has_value()) << path.toStdString();
        if (with)
            EXPECT_EQ(*with, *without) << path.toStdString();
        else
            EXPECT_EQ(with.error().field, without.error().field) << path.toStdString();
    }
}

// --- pull-choice ---------------------------------------------------------------------------------

constexpr const char* twoHives = R"({"hives":[
  {"mark":"H1","nest_stores_g":24000,"expected_change_g":-1000,"boxes":[
    {"mark":"M07","honey_g":12000,"frames":9,"kind":"medium","capped_share":0.8,
     "water_percent":17.5,"gross_g":17000,"brood":false,"held":false},
    {"mark":"M03","honey_g":14000,"frames":9,"kind":"medium","capped_share":0.9,
     "water_percent":17.1,"gross_g":19000}]},
  {"mark":"C3","boxes":[
    {"mark":"M08","honey_g":9000,"frames":9,"kind":"medium","capped_share":0.8,
     "water_percent":17.5,"gross_g":14000}]}],
  "limits":{"winter_need_g":20000,"feed_up_to_g":3000,"min_capped_share":0.75,
    "max_water_percent":18.5,"frames":12,"carry_g":50000,"boxes":9,"clearer_boards":5}})";

TEST(PullChoiceComputation, TakesLeavesAndLooks) {
    const auto out = runPull("pull-choice", twoHives);
    ASSERT_TRUE(out);
    EXPECT_EQ(out->keys(), (QStringList{"bound_g", "honey_g", "leave", "look_first", "proven",
                                        "remaining_g", "short_g", "take"}));
    EXPECT_EQ(pullTextsOf(out->value("take")), QStringList{"M03"});
    EXPECT_EQ(out->value("leave").toArray(),
              (QJsonArray{QJsonObject{{"box", "M07"}, {"why", "limit on frames"}},
                          QJsonObject{{"box", "M08"}, {"why", "look first"}}}));
    EXPECT_EQ(pullTextsOf(out->value("look_first")), QStringList{"C3"});
    EXPECT_EQ(out->value("honey_g").toDouble(), 14000);
    EXPECT_EQ(out->value("bound_g").toDouble(), 14000);
    EXPECT_TRUE(out->value("proven").toBool());
    EXPECT_EQ(out->value("remaining_g").toObject(), (QJsonObject{{"H1", 24000 - 1000 + 12000}}));
    EXPECT_EQ(out->value("short_g").toObject(), (QJsonObject{{"H1", 0}}));
}

TEST(PullChoiceComputation, EmptyLists) {
    const auto none = runPull("pull-choice", R"({"hives":[],"limits":{"winter_need_g":20000}})");
    ASSERT_TRUE(none);
    EXPECT_TRUE(none->value("take").toArray().isEmpty());
    EXPECT_TRUE(none->value("leave").toArray().isEmpty());
    EXPECT_TRUE(none->value("remaining_g").toObject().isEmpty());
    EXPECT_EQ(none->value("honey_g").toDouble(-1), 0);
    EXPECT_TRUE(none->value("proven").toBool());
    const auto bare = runPull(
        "pull-choice",
        R"({"hives":[{"mark":"H1","nest_stores_g":14000,"boxes":[]}],"limits":{"winter_need_g":20000}})");
    ASSERT_TRUE(bare);
    EXPECT_EQ(bare->value("short_g").toObject(), (QJsonObject{{"H1", 6000}}));
}

TEST(PullChoiceComputation, Refusals) {
    expectPullRefusals(
        "pull-choice", twoHives,
        {
            {"hives", jsonGone, Code::Missing, "hives"},
            {"hives", "H1", Code::WrongType, "hives"},
            {"hives.1", 7, Code::WrongType, "hives[1]"},
            {"hives.0.mark", jsonGone, Code::Missing, "hives[0].mark"},
            {"hives.1.mark", "H1", Code::Duplicate, "hives[1].mark"},
            {"hives.0.nest_stores_g", -1, Code::Negative, "hives[0].nest_stores_g"},
            {"hives.0.nest_stores_g", 1e12, Code::OutOfRange, "hives[0].nest_stores_g"},
            {"hives.0.expected_change_g", "much", Code::WrongType, "hives[0].expected_change_g"},
            {"hives.0.colour", "blue", Code::UnknownKey, "hives[0].colour"},
            {"hives.0.boxes", jsonGone, Code::Missing, "hives[0].boxes"},
            {"hives.1.boxes.0.mark", "M07", Code::Duplicate, "hives[1].boxes[0].mark"},
            {"hives.0.boxes.1.honey_g", -5, Code::Negative, "hives[0].boxes[1].honey_g"},
            {"hives.0.boxes.1.frames", jsonGone, Code::Missing, "hives[0].boxes[1].frames"},
            {"hives.0.boxes.1.frames", 8.5, Code::WrongType, "hives[0].boxes[1].frames"},
            {"hives.0.boxes.1.kind", jsonGone, Code::Missing, "hives[0].boxes[1].kind"},
            {"hives.0.boxes.1.capped_share", 1.1, Code::OutOfRange,
             "hives[0].boxes[1].capped_share"},
            {"hives.0.boxes.1.water_percent", 101, Code::OutOfRange,
             "hives[0].boxes[1].water_percent"},
            {"hives.0.boxes.1.gross_g", -1, Code::Negative, "hives[0].boxes[1].gross_g"},
            {"hives.0.boxes.1.brood", "yes", Code::WrongType, "hives[0].boxes[1].brood"},
            {"hives.0.boxes.1.held", 1, Code::WrongType, "hives[0].boxes[1].held"},
            {"limits", jsonGone, Code::Missing, "limits"},
            {"limits.winter_need_g", jsonGone, Code::Missing, "limits.winter_need_g"},
            {"limits.feed_up_to_g", -1, Code::Negative, "limits.feed_up_to_g"},
            {"limits.min_capped_share", 75, Code::OutOfRange, "limits.min_capped_share"},
            {"limits.max_water_percent", -1, Code::Negative, "limits.max_water_percent"},
            {"limits.frames", 1.5, Code::WrongType, "limits.frames"},
            {"limits.carry_g", -1, Code::Negative, "limits.carry_g"},
            {"limits.boxes", -1, Code::Negative, "limits.boxes"},
            {"limits.clearer_boards", true, Code::WrongType, "limits.clearer_boards"},
            {"limits.minutes", 5, Code::UnknownKey, "limits.minutes"},
            {"yard", "Hill", Code::UnknownKey, "yard"},
        });
}

TEST(PullChoiceComputation, NullIsAbsent) {
    expectPullNullIsAbsent(
        "pull-choice", twoHives,
        {"hives.0.nest_stores_g", "hives.0.expected_change_g", "hives.0.boxes.0.honey_g",
         "hives.0.boxes.0.capped_share", "hives.0.boxes.0.water_percent", "hives.0.boxes.0.gross_g",
         "hives.0.boxes.0.brood", "hives.0.boxes.0.held", "limits.feed_up_to_g",
         "limits.min_capped_share", "limits.max_water_percent", "limits.frames", "limits.carry_g",
         "limits.boxes", "limits.clearer_boards", "limits.winter_need_g"});
}

// --- day-plan ------------------------------------------------------------------------------------

constexpr const char* augustDay = R"({"lots":[
  {"lot":"Hill","kind":"medium","frames":63,"honey_g":85680,"fork_share":0},
  {"lot":"Creek","kind":"medium","frames":45,"honey_g":61200}],
  "slots":12,"uncap_min_per_frame":1.5,"fork_min_per_frame":1,"spin_min_per_load":15,"uncappers":1,
  "swap_min":0,"lot_change_min":0,"strain_kg_per_h":60,"drum_kg":40,
  "set_up_min":45,"wash_min":90,"bucket_g":13000,"spare_share":0.1})";

TEST(DayPlanComputation, TheAugustDay) {
    const auto out = runPull("day-plan", augustDay);
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 16);
    EXPECT_NEAR(out->value("honey_g").toDouble(), 146880, 1e-6);
    EXPECT_EQ(out->value("loads").toInt(), 10);
    EXPECT_EQ(out->value("loads_if_mixed").toInt(), 9);
    EXPECT_EQ(out->value("buckets").toInt(), 12);
    EXPECT_EQ(out->value("buckets_with_spare").toInt(), 14);
    EXPECT_NEAR(out->value("uncap_min").toDouble(), 162, 1e-9);
    EXPECT_NEAR(out->value("spin_min").toDouble(), 150, 1e-9);
    EXPECT_NEAR(out->value("last_load_ends_min").toDouble(), 180, 1e-9);
    EXPECT_NEAR(out->value("day_min").toDouble(), 315, 1e-9);
    EXPECT_NEAR(out->value("alone_min").toDouble(), 447, 1e-9);
    // A kilogram a minute: from the load that ends at 135 on each 15 minutes bring 16.32 kg, the
    // last 12.24: 135 + 3 · 16.32 + 12.24.
    EXPECT_NEAR(out->value("strain_ends_min").toDouble(), 196.2, 1e-9);
    // 16.32 kg a full load: 2, 2, then 16.32 + 4.08 + 16.32 fit as well.
    EXPECT_EQ(out->value("open_gate_after_load").toArray(), (QJsonArray{2, 4, 7, 9}));
}

TEST(DayPlanComputation, WhatWouldSaveTime) {
    QJsonObject input = pullObject(augustDay);
    input.insert("warmer_strain_factor", 2);
    const auto out = runPull("day-plan", input);
    ASSERT_TRUE(out);
    EXPECT_EQ(out->value("slowest").toString(), "uncapping");
    EXPECT_NEAR(out->value("done_min").toDouble(), 45 + 196.2 + 90, 1e-9);
    const QJsonObject knife = out->value("one_uncapper_more").toObject();
    EXPECT_EQ(knife.size(), 6);
    EXPECT_NEAR(knife.value("last_load_ends_min").toDouble(), 159, 1e-9);
    EXPECT_NEAR(knife.value("day_min").toDouble(), 294, 1e-9);
    EXPECT_NEAR(knife.value("day_saves_min").toDouble(), 21, 1e-9);
    // Two kilograms a minute: the load that ends at 180 is through at 186.12.
    const QJsonObject strainer = out->value("one_strainer_more").toObject();
    EXPECT_NEAR(strainer.value("strain_ends_min").toDouble(), 186.12, 1e-9);
    EXPECT_NEAR(strainer.value("done_saves_min").toDouble(), 10.08, 1e-9);
    EXPECT_NEAR(strainer.value("day_saves_min").toDouble(), 0, 1e-9);
    EXPECT_EQ(out->value("warmer").toObject(), strainer);
    input.insert("warmer_strain_factor", 0);
    EXPECT_EQ(runPull("day-plan", input).error().field, "warmer_strain_factor");
    input.insert("warmer_strain_factor", -1);
    EXPECT_EQ(runPull("day-plan", input).error().code, Code::Negative);
    input.remove("warmer_strain_factor");
    EXPECT_FALSE(runPull("day-plan", input)->contains("warmer"));
}

TEST(DayPlanComputation, WhatWasNotGivenIsNotAnswered) {
    QJsonObject input = pullObject(augustDay);
    input.remove("strain_kg_per_h");
    input.insert("drum_kg", QJsonValue(QJsonValue::Null));
    const auto out = runPull("day-plan", input);
    ASSERT_TRUE(out);
    EXPECT_FALSE(out->contains("strain_ends_min"));
    EXPECT_FALSE(out->contains("open_gate_after_load"));
    EXPECT_FALSE(out->contains("one_strainer_more"));
}

TEST(DayPlanComputation, SlotsPerKind) {
    QJsonObject input = pullObject(augustDay);
    input.insert("slots", QJsonObject{{"medium", 12}, {"deep", 6}});
    ASSERT_TRUE(runPull("day-plan", input));
    EXPECT_EQ(runPull("day-plan", input)->value("loads").toInt(), 10);
    input.insert("slots", QJsonObject{{"deep", 6}});
    EXPECT_EQ(runPull("day-plan", input).error(), (Refusal{Code::Missing, "slots.medium"}));
    input.insert("slots", QJsonObject{{"medium", 12.5}});
    EXPECT_EQ(runPull("day-plan", input).error().field, "slots.medium");
    EXPECT_EQ(runPull("day-plan", input).error().code, Code::WrongType);
    input.insert("slots", QJsonObject{{"medium", 73}});
    EXPECT_EQ(runPull("day-plan", input).error().code, Code::OutOfRange);
}

TEST(DayPlanComputation, NoLots) {
    QJsonObject input = pullObject(augustDay);
    input.insert("lots", QJsonArray());
    const auto out = runPull("day-plan", input);
    ASSERT_TRUE(out);
    for (const char* each : {"honey_g", "loads", "loads_if_mixed", "buckets", "buckets_with_spare",
                             "uncap_min", "spin_min", "last_load_ends_min", "strain_ends_min"})
        EXPECT_EQ(out->value(each).toDouble(-1), 0) << each;
    EXPECT_TRUE(out->value("open_gate_after_load").toArray().isEmpty());
}

TEST(DayPlanComputation, Refusals) {
    std::vector<PullRefusalRow> rows{
        {"lots", jsonGone, Code::Missing, "lots"},
        {"lots.1.lot", jsonGone, Code::Missing, "lots[1].lot"},
        {"lots.1.lot", "Hill", Code::Duplicate, "lots[1].lot"},
        {"lots.1.kind", 5, Code::WrongType, "lots[1].kind"},
        {"lots.1.frames", -1, Code::Negative, "lots[1].frames"},
        {"lots.1.frames", 0, Code::Contradiction, "lots[1].frames"},
        {"lots.1.honey_g", -1, Code::Negative, "lots[1].honey_g"},
        {"lots.1.fork_share", 2, Code::OutOfRange, "lots[1].fork_share"},
        {"lots.1.yard", "x", Code::UnknownKey, "lots[1].yard"},
        {"slots", jsonGone, Code::Missing, "slots"},
        {"slots", 1, Code::OutOfRange, "slots"},
        {"slots", "12", Code::WrongType, "slots"},
        {"uncappers", 0, Code::OutOfRange, "uncappers"},
        {"uncappers", 1.5, Code::WrongType, "uncappers"},
        {"bucket_g", 0, Code::OutOfRange, "bucket_g"},
        {"strain_kg_per_h", 0, Code::OutOfRange, "strain_kg_per_h"},
        {"drum_kg", -1, Code::Negative, "drum_kg"},
        {"drum_kg", 0, Code::OutOfRange, "drum_kg"},
        {"spare_share", 10, Code::OutOfRange, "spare_share"},
        {"helpers", 2, Code::UnknownKey, "helpers"},
    };
    for (const char* needed : {"uncap_min_per_frame", "spin_min_per_load", "uncappers",
                               "set_up_min", "wash_min", "bucket_g", "spare_share"})
        rows.push_back({needed, jsonGone, Code::Missing, needed});
    for (const char* minutes : {"uncap_min_per_frame", "fork_min_per_frame", "spin_min_per_load",
                                "swap_min", "lot_change_min", "set_up_min", "wash_min"})
        rows.push_back({minutes, -1, Code::Negative, minutes});
    expectPullRefusals("day-plan", augustDay, rows);

    QJsonObject forked =
        jsonChanged(pullObject(augustDay), {"lots", "0", "fork_share"}, 0.5).toObject();
    forked.remove("fork_min_per_frame");
    EXPECT_EQ(runPull("day-plan", forked).error(), (Refusal{Code::Missing, "fork_min_per_frame"}));
}

TEST(DayPlanComputation, NullIsAbsent) {
    expectPullNullIsAbsent(
        "day-plan", augustDay,
        {"lots.0.fork_share", "fork_min_per_frame", "swap_min", "lot_change_min", "strain_kg_per_h",
         "drum_kg", "slots", "uncappers", "warmer_strain_factor"});
}

// --- learn-rate ----------------------------------------------------------------------------------

constexpr const char* fullFrames =
    R"({"published":1.6,"published_sd":0.24,"seen":[1.93,1.75,1.84],"seen_sd":0.12})";

// Weights 1 : 4 : 4 : 4, worked by hand in learn_rate_test.cpp.
TEST(LearnRateComputation, FullFrames) {
    const auto out = runPull("learn-rate", fullFrames);
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 2);
    EXPECT_NEAR(out->value("value").toDouble(), 23.68 / 13, 1e-12);
    EXPECT_NEAR(out->value("sd").toDouble(), 0.24 / std::sqrt(13.0), 1e-12);
    QJsonObject none = pullObject(fullFrames);
    none.insert("seen", QJsonArray());
    EXPECT_EQ(runPull("learn-rate", none)->value("value").toDouble(), 1.6);
    EXPECT_EQ(runPull("learn-rate", none)->value("sd").toDouble(), 0.24);
}

TEST(LearnRateComputation, Refusals) {
    std::vector<PullRefusalRow> rows{
        {"published", "1.6", Code::WrongType, "published"},
        {"published_sd", 0, Code::OutOfRange, "published_sd"},
        {"published_sd", -1, Code::Negative, "published_sd"},
        {"seen_sd", 0, Code::OutOfRange, "seen_sd"},
        {"seen_sd", -0.1, Code::Negative, "seen_sd"},
        {"seen", 1.6, Code::WrongType, "seen"},
        {"seen", QJsonArray({1.6, "x"}), Code::WrongType, "seen[1]"},
        {"seen", QJsonArray({QJsonValue::Null}), Code::WrongType, "seen[0]"},
        {"unit", "kg", Code::UnknownKey, "unit"},
    };
    for (const char* needed : {"published", "published_sd", "seen", "seen_sd"})
        rows.push_back({needed, jsonGone, Code::Missing, needed});
    expectPullRefusals("learn-rate", fullFrames, rows);
}

// --- share-yield ---------------------------------------------------------------------------------

constexpr const char* hillRun = R"({"bucket_g":91500,"cappings_g":11000,"scrapings_g":0,"boxes":[
  {"mark":"H1a","hive":"H1","gross_g":21400,"wet_g":5200},
  {"mark":"H1b","hive":"H1","gross_g":19800,"wet_g":5000},
  {"mark":"H2a","hive":"H2","gross_g":22100,"wet_g":5300},
  {"mark":"H3a","hive":"H3","gross_g":18300,"wet_g":4900},
  {"mark":"H3b","hive":"H3","gross_g":20600,"wet_g":5100},
  {"mark":"H5a","hive":"H5","gross_g":17000,"wet_g":5000},
  {"mark":"lost","gross_g":19500,"wet_g":5100}]})";

TEST(ShareYieldComputation, Hill) {
    const auto out = runPull("share-yield", hillRun);
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 4);
    const QJsonObject hives = out->value("hives_g").toObject();
    EXPECT_EQ(hives.keys(), (QStringList{"H1", "H2", "H3", "H5"}));
    double sum = out->value("unknown_g").toDouble();
    for (const auto& each : hives) {
        EXPECT_EQ(each.toDouble(), std::floor(each.toDouble()));
        sum += each.toDouble();
    }
    EXPECT_EQ(sum, 91500);
    EXPECT_NEAR(hives.value("H5").toDouble(), 10649.9, 0.5);
    EXPECT_NEAR(out->value("unaccounted_g").toDouble(), 600, 1e-6);
    EXPECT_TRUE(out->value("by_difference").toArray().isEmpty());
}

TEST(ShareYieldComputation, ByDifferenceLeavesNothingToAccountFor) {
    const QJsonObject input =
        jsonChanged(pullObject(hillRun), {"boxes", "2", "gross_g"}, QJsonValue::Null).toObject();
    const auto out = runPull("share-yield", input);
    ASSERT_TRUE(out);
    EXPECT_EQ(pullTextsOf(out->value("by_difference")), QStringList{"H2a"});
    EXPECT_TRUE(out->value("unaccounted_g").isNull());
    EXPECT_TRUE(out->contains("unaccounted_g"));
}

TEST(ShareYieldComputation, CappingsUnknownIsNull) {
    QJsonObject input = pullObject(hillRun);
    input.remove("cappings_g");
    EXPECT_TRUE(runPull("share-yield", input)->value("unaccounted_g").isNull());
}

TEST(ShareYieldComputation, NoBoxes) {
    const auto out = runPull("share-yield", R"({"bucket_g":0,"boxes":[]})");
    ASSERT_TRUE(out);
    EXPECT_TRUE(out->value("hives_g").toObject().isEmpty());
    EXPECT_EQ(out->value("unknown_g").toDouble(-1), 0);
}

TEST(ShareYieldComputation, Refusals) {
    expectPullRefusals("share-yield", hillRun,
                       {
                           {"bucket_g", jsonGone, Code::Missing, "bucket_g"},
                           {"bucket_g", -1, Code::Negative, "bucket_g"},
                           {"cappings_g", -1, Code::Negative, "cappings_g"},
                           {"scrapings_g", "little", Code::WrongType, "scrapings_g"},
                           {"boxes", jsonGone, Code::Missing, "boxes"},
                           {"boxes.0.mark", jsonGone, Code::Missing, "boxes[0].mark"},
                           {"boxes.1.mark", "H1a", Code::Duplicate, "boxes[1].mark"},
                           {"boxes.1.hive", 1, Code::WrongType, "boxes[1].hive"},
                           {"boxes.1.gross_g", -1, Code::Negative, "boxes[1].gross_g"},
                           {"boxes.1.wet_g", 19801, Code::Contradiction, "boxes[1].wet_g"},
                           {"boxes.1.peg", 14, Code::UnknownKey, "boxes[1].peg"},
                           {"lot", "Hill", Code::UnknownKey, "lot"},
                       });
    const QJsonObject one =
        jsonChanged(pullObject(hillRun), {"boxes", "2", "gross_g"}, jsonGone).toObject();
    EXPECT_EQ(runPull("share-yield", jsonChanged(one, {"boxes", "4", "wet_g"}, jsonGone).toObject())
                  .error(),
              (Refusal{Code::SecondUnknown, "boxes[4].wet_g", {{"mark", "H3b"}}}));
}

TEST(ShareYieldComputation, NullIsAbsent) {
    expectPullNullIsAbsent("share-yield", hillRun,
                           {"cappings_g", "scrapings_g", "boxes.0.hive", "boxes.0.gross_g",
                            "boxes.0.wet_g", "bucket_g", "boxes.0.mark"});
}

// --- jars ----------------------------------------------------------------------------------------

constexpr const char* hillJars = R"({"honey_g":91500,"net_g":454,"loss_share":0.02})";

TEST(JarsComputation, Hill) {
    const auto out = runPull("jars", hillJars);
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 2);
    EXPECT_EQ(out->value("jars").toInt(), 197);
    EXPECT_NEAR(out->value("left_g").toDouble(), 232, 1e-6);
}

TEST(JarsComputation, Refusals) {
    expectPullRefusals("jars", hillJars,
                       {
                           {"honey_g", jsonGone, Code::Missing, "honey_g"},
                           {"honey_g", -1, Code::Negative, "honey_g"},
                           {"net_g", jsonGone, Code::Missing, "net_g"},
                           {"net_g", 0, Code::OutOfRange, "net_g"},
                           {"net_g", "454", Code::WrongType, "net_g"},
                           {"loss_share", jsonGone, Code::Missing, "loss_share"},
                           {"loss_share", 2, Code::OutOfRange, "loss_share"},
                           {"loss_share", -0.1, Code::Negative, "loss_share"},
                           {"lids", 5, Code::UnknownKey, "lids"},
                       });
}

}  // namespace
}  // namespace combwright
