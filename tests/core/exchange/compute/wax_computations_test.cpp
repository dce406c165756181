#include <gtest/gtest.h>

#include <QJsonArray>
#include <QJsonDocument>

#include "core/exchange/compute/computations.h"

namespace combwright {
namespace {

Result<QJsonObject> runWax(std::string_view name, const QByteArray& json) {
    const auto document = QJsonDocument::fromJson(json);
    EXPECT_TRUE(document.isObject()) << json.toStdString();
    if (const Computation* found = findComputation(name)) return found->run(document.object());
    return Refusal{Code::NoSuchCommand, std::string(name), {}};
}

QJsonObject waxAnswer(std::string_view name, const QByteArray& json) {
    const auto out = runWax(name, json);
    EXPECT_TRUE(out) << json.toStdString() << " " << (out ? "" : out.error().field);
    return out ? *out : QJsonObject();
}

struct WaxSlip {
    const char* name;
    QByteArray json;
    Code code;
    const char* field;
};

void expectWaxRefusals(std::initializer_list<WaxSlip> slips) {
    for (const WaxSlip& slip : slips) {
        const auto out = runWax(slip.name, slip.json);
        ASSERT_FALSE(out) << slip.json.toStdString();
        EXPECT_EQ(out.error().code, slip.code) << slip.json.toStdString();
        EXPECT_EQ(out.error().field, slip.field) << slip.json.toStdString();
    }
}

const QByteArray fairWants = R"([
  {"what":"skep","count":60,"mass_g":45,"wick":"#1","wick_m":0.12,"cavities":4,"cycles_per_evening":1},
  {"what":"taper","count":40,"mass_g":68,"wick":"2/0","wick_m":0.30,"cavities":6,"cycles_per_evening":1},
  {"what":"pillar","count":12,"mass_g":310,"wick":"#5","wick_m":0.20,"cavities":2,"cycles_per_evening":1}])";
const QByteArray shadedWants = R"([
  {"what":"skep","count":60,"mass_g":45,"wick":"#1","wick_m":0.12,"cavities":4,"cycles_per_evening":1,"shades":["light"]},
  {"what":"taper","count":40,"mass_g":68,"wick":"2/0","wick_m":0.30,"cavities":6,"cycles_per_evening":1,"shades":["mid","light"]},
  {"what":"pillar","count":12,"mass_g":310,"wick":"#5","wick_m":0.20,"cavities":2,"cycles_per_evening":1,"shades":["dark"]}])";
const QByteArray fairHead =
    R"("loss_share":0.05,"evenings":12,"wick_m":{"#1":5,"2/0":15,"#5":3},"want":)";
const QByteArray threeBlocks =
    R"("blocks":[{"shade":"light","mass_g":3400},{"shade":"mid","mass_g":2150},{"shade":"dark","mass_g":1200}],)";

void expectFairNeeds(const QJsonObject& out) {
    EXPECT_NEAR(out["wax_net_g"].toDouble(), 9140, 1e-6);
    EXPECT_NEAR(out["wax_needed_g"].toDouble(), 9140 / 0.95, 1e-6);
    EXPECT_NEAR(out["wax_short_g"].toDouble(), 9140 / 0.95 - 6750, 1e-6);
    const QJsonArray kinds = out["kinds"].toArray();
    EXPECT_EQ(kinds[0].toObject(), (QJsonObject{{"what", "skep"},
                                                {"evenings_needed", 15},
                                                {"possible", 48},
                                                {"short", 12},
                                                {"cavities_to_add", 1}}));
    EXPECT_EQ(kinds[1].toObject(), (QJsonObject{{"what", "taper"},
                                                {"evenings_needed", 7},
                                                {"possible", 40},
                                                {"short", 0},
                                                {"cavities_to_add", 0}}));
    EXPECT_EQ(kinds[2].toObject()["evenings_needed"].toInt(), 6);
    EXPECT_EQ(kinds.size(), 3);
    const QJsonObject wick = out["wick_left_m"].toObject();
    EXPECT_NEAR(wick["#1"].toDouble(), -2.2, 1e-9);
    EXPECT_NEAR(wick["2/0"].toDouble(), 3.0, 1e-9);
    EXPECT_NEAR(wick["#5"].toDouble(), 0.6, 1e-9);
}

TEST(CandlesComputation, TheFairWithShadesMixed) {
    for (const QByteArray& wants : {fairWants, shadedWants}) {
        const auto out = waxAnswer("candles", "{\"blocks_g\":6750," + fairHead + wants + "}");
        expectFairNeeds(out);
        EXPECT_EQ(out["from_stock"].toArray(),
                  (QJsonArray{QJsonObject{{"what", "skep"}, {"count", 60}},
                              QJsonObject{{"what", "taper"}, {"count", 40}},
                              QJsonObject{{"what", "pillar"}, {"count", 3}}}));
        EXPECT_NEAR(out["wax_left_g"].toDouble(), 6750 - 6350 / 0.95, 1e-6);
    }
}

TEST(CandlesComputation, TheFairKeptApartByShade) {
    const auto out = waxAnswer("candles", "{" + threeBlocks + fairHead + shadedWants + "}");
    expectFairNeeds(out);
    EXPECT_EQ(out["from_stock"].toArray(),
              (QJsonArray{QJsonObject{{"what", "skep"}, {"shade", "light"}, {"count", 60}},
                          QJsonObject{{"what", "taper"}, {"shade", "mid"}, {"count", 30}},
                          QJsonObject{{"what", "taper"}, {"shade", "light"}, {"count", 7}},
                          QJsonObject{{"what", "pillar"}, {"shade", "dark"}, {"count", 3}}}));
    const QJsonObject left = out["wax_left_g"].toObject();
    EXPECT_EQ(left.size(), 3);
    EXPECT_NEAR(left["dark"].toDouble(), 1200 - 930 / 0.95, 1e-6);
}

TEST(CandlesComputation, NothingIsAnAnswer) {
    const auto out =
        waxAnswer("candles", R"({"blocks":[],"loss_share":0,"evenings":0,"wick_m":{},"want":[]})");
    EXPECT_EQ(out["kinds"].toArray().size(), 0);
    EXPECT_EQ(out["wax_left_g"].toObject().size(), 0);
    EXPECT_EQ(out["wax_net_g"].toDouble(), 0);
    // No cavity and no evening: nobody can say how many.
    const auto none = waxAnswer("candles", R"({"blocks_g":100,"loss_share":0,"evenings":0,
        "wick_m":{},"want":[{"what":"a","count":1,"mass_g":10,"wick":"#1","wick_m":0.1,
        "cavities":0,"cycles_per_evening":1}]})");
    const QJsonObject kind = none["kinds"].toArray()[0].toObject();
    EXPECT_TRUE(kind["evenings_needed"].isNull());
    EXPECT_TRUE(kind["cavities_to_add"].isNull());
    EXPECT_NEAR(none["wick_left_m"].toObject()["#1"].toDouble(), -0.1, 1e-12);
    EXPECT_EQ(none["wax_left_g"].toDouble(), 90);
}

TEST(CandlesComputation, SlipsAreNamed) {
    const auto plan = [](const char* head, const char* want) {
        return QByteArray("{") + head + ",\"want\":[" + want + "]}";
    };
    const char* good = R"("blocks_g":100,"loss_share":0.05,"evenings":3,"wick_m":{"#1":1})";
    const char* one =
        R"({"what":"a","count":1,"mass_g":10,"wick":"#1","wick_m":0.1,"cavities":1,"cycles_per_evening":1})";
    expectWaxRefusals({
        {"candles", plan(R"("loss_share":0,"evenings":3,"wick_m":{})", one), Code::Missing,
         "blocks_g"},
        {"candles",
         plan(R"("blocks_g":1,"blocks":[],"loss_share":0,"evenings":3,"wick_m":{})", one),
         Code::Contradiction, "blocks"},
        {"candles", plan(R"("blocks_g":-1,"loss_share":0,"evenings":3,"wick_m":{})", one),
         Code::Negative, "blocks_g"},
        {"candles", plan(R"("blocks_g":1,"loss_share":1,"evenings":3,"wick_m":{})", one),
         Code::OutOfRange, "loss_share"},
        {"candles", plan(R"("blocks_g":1,"loss_share":1.2,"evenings":3,"wick_m":{})", one),
         Code::OutOfRange, "loss_share"},
        {"candles", plan(R"("blocks_g":1,"loss_share":0,"evenings":2.5,"wick_m":{})", one),
         Code::WrongType, "evenings"},
        {"candles", plan(R"("blocks_g":1,"loss_share":0,"evenings":3,"wick_m":{"#1":-1})", one),
         Code::Negative, "wick_m.#1"},
        {"candles",
         plan(R"("blocks":[{"shade":"light"}],"loss_share":0,"evenings":3,"wick_m":{})", one),
         Code::Missing, "blocks[0].mass_g"},
        {"candles", plan(good, (std::string(one) + "," + one).c_str()), Code::Duplicate,
         "want[1].what"},
        {"candles",
         plan(
             good,
             R"({"what":"a","count":1,"mass_g":0,"wick":"#1","wick_m":0.1,"cavities":1,"cycles_per_evening":1})"),
         Code::OutOfRange, "want[0].mass_g"},
        {"candles",
         plan(
             good,
             R"({"what":"a","count":1,"mass_g":9,"wick":"#1","wick_m":0.1,"cavities":1,"cycles_per_evening":0})"),
         Code::OutOfRange, "want[0].cycles_per_evening"},
        {"candles",
         plan(
             good,
             R"({"what":"a","count":1,"mass_g":9,"wick":"#1","wick_m":0.1,"cavities":1,"cycles_per_evening":1,"shades":[1]})"),
         Code::WrongType, "want[0].shades[0]"},
        {"candles",
         plan(
             good,
             R"({"what":"a","count":1,"mass_g":9,"wick":"#1","cavities":1,"cycles_per_evening":1})"),
         Code::Missing, "want[0].wick_m"},
        {"candles",
         plan(
             good,
             R"({"what":"a","count":1,"mass_g":9,"wick":"#1","wick_m":0.1,"cavities":1,"cycles_per_evening":1,"colour":"red"})"),
         Code::UnknownKey, "want[0].colour"},
    });
}

TEST(CandlePlanComputation, LaysOutTheEvenings) {
    QByteArray wants = shadedWants;
    wants.replace("\"shades\"", "\"set_hours\":2,\"worth\":3,\"shades\"");
    const auto out =
        waxAnswer("candle-plan", "{" + threeBlocks +
                                     R"("loss_share":0.05,"wick_m":{"#1":9,"2/0":15,"#5":3},
        "evenings":["2027-11-15","2027-11-17","2027-11-19","2027-12-10"],"wanted_on":"2027-12-11",
        "want":)" + wants + "}");
    EXPECT_EQ(out["pouring_evenings"].toInt(), 3);
    EXPECT_EQ(out["finishing"].toString(), "2027-12-10");
    EXPECT_EQ(out["last_pour"].toString(), "2027-11-19");
    const QJsonArray made = out["made"].toArray();
    EXPECT_EQ(made[0].toObject(), (QJsonObject{{"what", "skep"},
                                               {"made", 12},
                                               {"by_wax", 60},
                                               {"by_moulds", 12},
                                               {"by_wick", 60},
                                               {"bites", QJsonArray{"moulds"}}}));
    EXPECT_EQ(made[2].toObject()["made"].toInt(), 3);
    EXPECT_EQ(made[2].toObject()["bites"].toArray(), (QJsonArray{"wax"}));
    const QJsonArray evenings = out["evenings"].toArray();
    ASSERT_EQ(evenings.size(), 3);
    EXPECT_EQ(
        evenings[0].toObject()["pours"].toArray()[0].toObject(),
        (QJsonObject{{"what", "skep"}, {"count", 4}, {"cycles", 1}, {"out_from", "2027-11-16"}}));
    EXPECT_EQ(out["not_poured"].toArray().size(), 0);
    const QJsonArray more = out["one_more"].toArray();
    EXPECT_EQ(
        more[0].toObject(),
        (QJsonObject{
            {"of", "cavity"}, {"what", "skep"}, {"more", 3}, {"change", QJsonArray{3, 0, 0}}}));
    EXPECT_EQ(more[3].toObject()["of"].toString(), "evening");
    EXPECT_EQ(more[3].toObject()["change"].toArray(), (QJsonArray{4, 6, 0}));
    EXPECT_EQ(
        more[6].toObject(),
        (QJsonObject{
            {"of", "kilogram"}, {"shade", "dark"}, {"more", 3}, {"change", QJsonArray{0, 0, 3}}}));
    EXPECT_EQ(more.size(), 10);
    const QJsonObject mix = out["best_mix"].toObject();
    EXPECT_TRUE(mix["proven"].toBool());
    EXPECT_TRUE(mix["ties_by_order"].toBool());
    EXPECT_EQ(mix["worth"].toInt(), 3 * (12 + 18 + 3));
    EXPECT_EQ(mix["bound"].toInt(), mix["worth"].toInt());
}

TEST(CandlePlanComputation, SlipsAreNamed) {
    QByteArray wants = fairWants;
    wants.replace("\"cavities\"", "\"set_hours\":2,\"cavities\"");
    const QByteArray head = R"({"blocks_g":100,"loss_share":0,"wick_m":{},"evenings":)";
    expectWaxRefusals({
        {"candle-plan", head + R"(["2027-02-29"],"want":[]})", Code::NotADay, "evenings[0]"},
        {"candle-plan", head + R"(["2027-11-15","2027-11-15"],"want":[]})", Code::Duplicate,
         "evenings[1]"},
        {"candle-plan", head + R"(12,"want":[]})", Code::WrongType, "evenings"},
        {"candle-plan", R"({"blocks_g":100,"loss_share":0,"wick_m":{},"want":[]})", Code::Missing,
         "evenings"},
        {"candle-plan", head + "[],\"want\":" + fairWants + "}", Code::Missing,
         "want[0].set_hours"},
        {"candle-plan",
         head + "[],\"want\":" +
             QByteArray(wants).replace("\"what\"", "\"diameter_mm\":20,\"what\"") + "}",
         Code::Contradiction, "want[0].diameter_mm"},
        {"candle-plan", head + "[],\"want\":" + QByteArray(wants).replace(":2,", ":0,") + "}",
         Code::OutOfRange, "want[0].set_hours"},
        {"candle-plan",
         head + "[],\"want\":" + QByteArray(wants).replace("\"set_hours\":2", "\"diameter_mm\":0") +
             "}",
         Code::OutOfRange, "want[0].diameter_mm"},
    });
}

TEST(CandleMassComputation, ByShape) {
    const auto pillar =
        waxAnswer("candle-mass", R"({"shape":"cylinder","diameter_mm":76.2,"length_mm":152.4})");
    EXPECT_NEAR(pillar["volume_ml"].toDouble(), 695, 0.5);
    EXPECT_NEAR(pillar["mass_g"].toDouble(), 667, 0.5);
    EXPECT_NEAR(pillar["first_pour_g"].toDouble(), 591, 0.5);
    EXPECT_EQ(pillar.size(), 3);
    const auto taper = waxAnswer(
        "candle-mass", R"({"shape":"taper","diameter_mm":22.225,"tip_mm":12.7,"length_mm":254})");
    EXPECT_NEAR(taper["mass_g"].toDouble(), 59.8, 0.05);
    expectWaxRefusals({
        {"candle-mass", R"({"shape":"taper","diameter_mm":22,"length_mm":254})", Code::Missing,
         "tip_mm"},
        {"candle-mass", R"({"shape":"cylinder","diameter_mm":22,"tip_mm":12,"length_mm":254})",
         Code::Contradiction, "tip_mm"},
        {"candle-mass", R"({"shape":"skep","diameter_mm":22,"length_mm":254})", Code::NotAChoice,
         "shape"},
        {"candle-mass", R"({"shape":"cylinder","diameter_mm":0,"length_mm":254})", Code::OutOfRange,
         "diameter_mm"},
        {"candle-mass", R"({"shape":"cylinder","diameter_mm":22,"length_mm":-1})", Code::Negative,
         "length_mm"},
    });
}

TEST(CandleBatchComputation, ByVolumeOrWater) {
    const auto out = waxAnswer("candle-batch", R"({"water_g":250,"pieces":4,"spare_share":0.05})");
    EXPECT_NEAR(out["batch_g"].toDouble(), 1008, 1e-9);
    EXPECT_NEAR(out["mass_g"].toDouble(), 240, 1e-9);
    EXPECT_NEAR(out["first_pour_g"].toDouble() + out["top_up_g"].toDouble(), 240, 1e-9);
    expectWaxRefusals({
        {"candle-batch", R"({"water_g":0,"pieces":4,"spare_share":0.05})", Code::OutOfRange,
         "water_g"},
        {"candle-batch", R"({"pieces":4,"spare_share":0.05})", Code::Missing, "volume_ml"},
        {"candle-batch", R"({"volume_ml":250,"water_g":250,"pieces":4,"spare_share":0.05})",
         Code::Contradiction, "water_g"},
        {"candle-batch", R"({"volume_ml":250,"pieces":4,"spare_share":0.05,"solid_g_per_ml":0.86})",
         Code::OutOfRange, "solid_g_per_ml"},
    });
}

TEST(WaxComputations, YieldsAreRanges) {
    auto out = waxAnswer("wax-yield", R"({"material":"cappings drained","raw_g":6000})");
    EXPECT_NEAR(out["low_clean_g"].toDouble(), 2400, 1e-6);
    EXPECT_NEAR(out["clean_g"].toDouble(), 2700, 1e-6);
    EXPECT_NEAR(out["high_clean_g"].toDouble(), 3000, 1e-6);
    EXPECT_NEAR(out["low_honey_g"].toDouble(), 3000, 1e-6);
    EXPECT_FALSE(out.contains("own"));
    out = waxAnswer("wax-yield", R"({"material":"scrapings","raw_g":800})");
    EXPECT_TRUE(out["clean_g"].isNull());
    EXPECT_FALSE(out.contains("low_clean_g"));
    out = waxAnswer("wax-yield", R"({"material":"scrapings","raw_g":800,
        "batches":[{"raw_g":500,"clean_g":200}]})");
    EXPECT_NEAR(out["clean_g"].toDouble(), 320, 1e-9);
    EXPECT_EQ(out["own"].toObject()["batches"].toInt(), 1);
    EXPECT_TRUE(out["own"].toObject()["spread_share"].isNull());
    expectWaxRefusals({
        {"wax-yield", R"({"material":"honey","raw_g":1})", Code::NotAChoice, "material"},
        {"wax-yield", R"({"material":"white comb","raw_g":1,"batches":[{"raw_g":1,"clean_g":2}]})",
         Code::Contradiction, "batches[0].clean_g"},
        {"wax-yield", R"({"material":"white comb","raw_g":-1})", Code::Negative, "raw_g"},
    });
    out = waxAnswer("wax-of-crop", R"({"honey_g":240000})");
    EXPECT_NEAR(out["low_wax_g"].toDouble(), 2400, 1e-6);
    EXPECT_NEAR(out["wax_g"].toDouble(), 3600, 1e-6);
    EXPECT_NEAR(out["honey_eaten_g"].toDouble(), 30240, 1e-6);
    out = waxAnswer("wax-per-honey", R"({"wax_g":3000,"honey_g":240000})");
    EXPECT_NEAR(out["wax_per_100"].toDouble(), 1.25, 1e-9);
    EXPECT_EQ(out["verdict"].toString(), "as published");
    EXPECT_TRUE(waxAnswer("wax-per-honey", R"({"wax_g":3,"honey_g":0})")["verdict"].isNull());
    out = waxAnswer("comb-wax", R"({"frame":"LANG-F-MED","frames":10})");
    EXPECT_NEAR(out["wax_g"].toDouble(), 550, 6);
    expectWaxRefusals({{"comb-wax", R"({"frame":"none","frames":1})", Code::NotFound, "frame"}});
    EXPECT_NEAR(waxAnswer("propolis", R"({"colonies":24})")["high_propolis_g"].toDouble(), 2400,
                1e-9);
}

TEST(WaxComputations, WickTimeAndHeat) {
    auto out = waxAnswer("wick", R"({"diameter_mm":76.2,"wick":"#5"})");
    EXPECT_EQ(out["thinnest"].toString(), "#3");
    EXPECT_EQ(out["verdict"].toString(), "as guessed");
    EXPECT_TRUE(waxAnswer("wick", R"({"diameter_mm":76.2,"wick":"42 ply"})")["verdict"].isNull());
    EXPECT_FALSE(waxAnswer("wick", R"({"diameter_mm":76.2})").contains("verdict"));
    out = waxAnswer("candle-time", R"({"diameter_mm":76.2,"mass_g":667})");
    EXPECT_EQ(out["size"].toString(), "pillar");
    EXPECT_NEAR(out["burn_hours"].toDouble(), 90, 0.5);
    EXPECT_EQ(out["set_hours"].toDouble(), 12);
    EXPECT_FALSE(waxAnswer("candle-time", R"({"diameter_mm":20})").contains("burn_hours"));
    out = waxAnswer("wax-heat", R"({"temperature_c":88})");
    EXPECT_EQ(out["verdict"].toString(), "discolours");
    EXPECT_TRUE(out["alarm"].toBool());
    out = waxAnswer("melt-energy", R"({"mass_g":1000,"from_c":15,"to_c":75,"water_g":1000})");
    EXPECT_NEAR(out["low_kj"].toDouble(), 306, 1e-9);
    EXPECT_NEAR(out["high_kwh"].toDouble(), 354 / 3600.0, 1e-12);
    EXPECT_NEAR(out["bath_kj"].toDouble(), 251.16, 1e-9);
    expectWaxRefusals({
        {"wax-heat", R"({"temperature_c":120})", Code::OutOfRange, "temperature_c"},
        {"melt-energy", R"({"mass_g":1000,"from_c":15,"to_c":120})", Code::OutOfRange, "to_c"},
        {"wick", R"({"diameter_mm":0})", Code::OutOfRange, "diameter_mm"},
        {"candle-time", R"({"diameter_mm":20,"mass_g":0})", Code::OutOfRange, "mass_g"},
    });
}

TEST(WaxComputations, BalancesClose) {
    auto out = waxAnswer("wax-rendered", R"({"raw_g":6000,"clean_g":2700,"honey_g":1200})");
    EXPECT_NEAR(out["lost_g"].toDouble(), 2100, 1e-9);
    out = waxAnswer(
        "wax-balance",
        R"({"opening_g":500,"cast_g":7000,"poured_g":6700,"lost_g":100,"counted_g":650})");
    EXPECT_EQ(out["in_g"].toDouble(), 7500);
    EXPECT_EQ(out["out_g"].toDouble(), 6800);
    EXPECT_EQ(out["in_stock_g"].toDouble(), 700);
    EXPECT_EQ(out["missing_g"].toDouble(), 50);
    EXPECT_FALSE(waxAnswer("wax-balance", R"({"opening_g":0,"cast_g":0,"poured_g":0})")
                     .contains("missing_g"));
    expectWaxRefusals({
        {"wax-rendered", R"({"raw_g":1000,"clean_g":1001})", Code::Contradiction, "clean_g"},
        {"wax-balance", R"({"opening_g":0,"cast_g":100,"poured_g":101})", Code::Contradiction,
         "poured_g"},
        {"wax-balance", R"({"opening_g":0,"cast_g":-1,"poured_g":0})", Code::Negative, "cast_g"},
    });
}

}  // namespace
}  // namespace combwright
