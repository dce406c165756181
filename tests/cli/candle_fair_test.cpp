// From raw wax to the December fair, by the figures of a keeper's own: cappings and old comb to
// three blocks, the plan to the digit, twelve evenings at the pot, the fair, and a year's balance
// that closes. Deeds as lines, answers from the command line.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>

#include "core/storage/audit.h"
#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

class CandleFair : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        Season season = newSeason();
        std::string buckets;
        for (int each = 1; each <= 10; ++each)
            buckets += R"({"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B)" +
                       std::to_string(each) + R"(","net_g":40000})" + "\n";
        playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"open-run","on":"2027-08-20","name":"27-2","yard":"Hill"}
)" + buckets + R"({"do":"gather-wax","on":"2027-08-09","name":"August cappings","source":"cappings","state":"drained","shade":"light","runs":"27-1","raw_g":8000,"kept":"tight lid"}
{"do":"gather-wax","on":"2027-08-21","name":"Late cappings","source":"cappings","state":"drained","shade":"mid","runs":"27-2","raw_g":5000}
{"do":"gather-wax","on":"2027-11-05","name":"Old comb","source":"old comb","shade":"dark","raw_g":4000,"combs":40}
{"do":"work-wax","on":"2027-11-06","batch":"Old comb","work":"pressed"}
{"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle","net_g":45,"price":6}
{"do":"add-goods","on":"2027-10-01","name":"taper","what":"candle","net_g":68,"price":7}
{"do":"add-goods","on":"2027-10-01","name":"pillar","what":"candle","net_g":310,"price":25}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"measured":true,"wick":"#1","wick_length_mm":120,"set_hours":2}
{"do":"add-mould","on":"2027-10-01","name":"Tapers","goods_kind":"taper","cavities":6,"volume_ml":71,"wick":"2/0","wick_length_mm":300,"set_hours":2}
{"do":"add-mould","on":"2027-10-01","name":"Pillars","goods_kind":"pillar","cavities":2,"shape":"cylinder","diameter_mm":76.2,"height_mm":69.9,"wick":"#5","wick_length_mm":200,"set_hours":12}
{"do":"buy-wick","on":"2027-11-01","wick":"#1","bought_length_mm":5000}
{"do":"buy-wick","on":"2027-11-01","wick":"2/0","bought_length_mm":15000}
{"do":"buy-wick","on":"2027-11-01","wick":"#5","bought_length_mm":3000}
{"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"mon wed fri"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":60,"wanted_by":"2027-12-11","what_for":"fair","wish_order":1,"shades":"light"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"taper","count":40,"wanted_by":"2027-12-11","what_for":"fair","wish_order":2,"shades":"mid, light"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"pillar","count":12,"wanted_by":"2027-12-11","what_for":"fair","wish_order":3,"shades":"dark"})");
    }
    void blocks() {
        Season season = opened();
        playAll(
            season,
            R"({"do":"heat-on","on":"2027-11-13","begun":"2027-11-13T13:00:00Z","what_heated":"wax pot in the water bath","batch":"August cappings"}
{"do":"cast-block","on":"2027-11-13","name":"L","batch":"August cappings","shade":"light","mass_g":3400}
{"do":"cast-block","on":"2027-11-13","name":"M","batch":"Late cappings","shade":"mid","mass_g":2150}
{"do":"cast-block","on":"2027-11-13","name":"D","batch":"Old comb","shade":"dark","mass_g":1200})");
    }
    void potOff() {
        Season season = opened();
        playAll(season, R"({"do":"heat-off","on":"2027-11-13","off_at":"2027-11-13T15:00:00Z"})");
    }
    Season opened() { return Season::open(path(), clock); }
    QJsonObject wax(const QStringList& more = {}) const {
        const auto answer = on("wax", QStringList{QStringLiteral("--json")} + more);
        EXPECT_EQ(answer.exit, 0) << answer;
        return answer.object();
    }
    static QJsonObject kind(const QJsonObject& plan, int at) {
        return plan["kinds"].toArray()[at].toObject();
    }
    static std::string counts(const QJsonArray& made) {
        QStringList parts;
        for (const QJsonValue& each : made)
            parts << QStringLiteral("%1 %2%3")
                         .arg(each.toObject()["count"].toInt())
                         .arg(each.toObject()["what"].toString(),
                              each.toObject()["shade"].isString()
                                  ? QLatin1Char(' ') + each.toObject()["shade"].toString()
                                  : QString());
        return parts.join(QStringLiteral(", ")).toStdString();
    }
    /// Twelve evenings: skeps on each, one of the third fails; tapers on five; pillars on two.
    void pourAll() {
        Season season = opened();
        playAll(season,
                R"({"do":"buy-wick","on":"2027-11-14","wick":"#1","bought_length_mm":1000})");
        const Day first = test::day("2027-11-15");
        int pours = 0;
        for (int evening = 0; evening < 12; ++evening) {
            const int offset = evening / 3 * 7 + evening % 3 * 2;
            const std::string head =
                R"({"do":"pour-candles","on":")" + isoText(first + days(offset)) + R"(","mould":")";
            const bool fails = evening == 2;
            playAll(season, head + R"(Skeps","temperature_c":75,"good":)" +
                                (fails ? R"(3,"failed":1,"returned_g":45)" : "4") +
                                R"(,"blocks":"L 180 g"})");
            ++pours;
            if (evening < 5) {
                playAll(season, head + R"(Tapers","good":6,"blocks":"M 408 g"})");
                ++pours;
            }
            if (evening < 2) {
                playAll(season, head + R"(Pillars","good":)" +
                                    (evening == 0 ? R"(2,"blocks":"D 620 g"})"
                                                  : R"(1,"blocks":"D 310 g"})"));
                ++pours;
            }
        }
        ASSERT_EQ(pours, 19);
        for (int pour = 1; pour <= pours; ++pour)
            playAll(season, R"({"do":"finish-candles","on":"2027-12-10","pour":"#)" +
                                std::to_string(pour) + R"(","candle_work":"labelled"})");
        playAll(season,
                R"({"do":"use-wax","on":"2027-12-10","block":"L","went":"lost","mass_g":110})");
    }
};

// 60 · 45 + 40 · 68 + 12 · 310 = 9,140 g; ÷ 0.95 = 9,621.05; less 6,750 g in blocks = 2,871.05.
// 15 evenings for skeps, 12 there are: 48. 60 · 0.12 m = 7.2 of 5 m.
TEST_F(CandleFair, ThePlanToTheDigit) {
    blocks();
    potOff();
    const QJsonObject plan = wax()["plan"].toObject();
    EXPECT_EQ(plan["wanted_by"].toString(), "2027-12-11");
    EXPECT_EQ(plan["evenings_free"].toInt(), 12);
    EXPECT_NEAR(plan["wax_net_g"].toDouble(), 9140, 1e-6);
    EXPECT_NEAR(plan["wax_needed_g"].toDouble(), 9621.05, 0.005);
    EXPECT_NEAR(plan["wax_short_g"].toDouble(), 2871.05, 0.005);
    EXPECT_EQ(kind(plan, 0)["evenings_needed"].toInt(), 15);
    EXPECT_EQ(kind(plan, 0)["possible"].toInt(), 48);
    EXPECT_EQ(kind(plan, 0)["short"].toInt(), 12);
    EXPECT_EQ(kind(plan, 0)["cavities_to_add"].toInt(), 1);
    EXPECT_EQ(kind(plan, 0)["by_wick"].toInt(), 41) << "5 m ÷ 0.12 m";
    EXPECT_EQ(kind(plan, 0)["come_out"].toInt(), 41);
    EXPECT_EQ(kind(plan, 0)["bites"].toArray(), QJsonArray{QStringLiteral("wick")});
    EXPECT_EQ(kind(plan, 1)["evenings_needed"].toInt(), 7);
    EXPECT_EQ(kind(plan, 2)["evenings_needed"].toInt(), 6);
    EXPECT_NEAR(plan["wick_left_m"].toObject()["#1"].toDouble(), -2.2, 1e-9);
    EXPECT_NEAR(plan["wick_left_m"].toObject()["2/0"].toDouble(), 3.0, 1e-9);
    EXPECT_NEAR(plan["wick_left_m"].toObject()["#5"].toDouble(), 0.6, 1e-9);
    EXPECT_EQ(counts(plan["from_stock"].toArray()),
              "60 skep light, 30 taper mid, 7 taper light, 3 pillar dark");
    EXPECT_EQ(counts(plan["mixed"].toObject()["from_stock"].toArray()),
              "60 skep, 40 taper, 3 pillar");
    EXPECT_NEAR(plan["mixed"].toObject()["wax_left_g"].toDouble(), 66, 0.5);
    EXPECT_EQ(plan["evenings"].toArray().size(), 12);
    EXPECT_EQ(plan["last_pour"].toString(), "2027-12-10");
}

TEST_F(CandleFair, AnOpenPotIsSaidFirst) {
    blocks();
    const auto loud = on("wax");
    ASSERT_EQ(loud.exit, 0) << loud;
    const std::string text = loud.out.toStdString();
    EXPECT_LT(text.find("POT ON HEAT"), text.find("Clean wax"));
    EXPECT_LT(text.find("POT ON HEAT"), 200U);
    EXPECT_EQ(wax()["heat_on"].toArray().size(), 1);
    EXPECT_THAT(on("wax", {QStringLiteral("--print"), QStringLiteral("plan")}).out.toStdString(),
                StartsWith("POT ON HEAT"));
    potOff();
    EXPECT_THAT(on("wax").out.toStdString(), Not(HasSubstr("POT ON HEAT")));
    EXPECT_TRUE(wax()["heat_on"].toArray().isEmpty());
}

TEST_F(CandleFair, TheSheetsAndTheCalendar) {
    blocks();
    potOff();
    const auto print = [this](const char* sheet) {
        const auto answer = on("wax", {QStringLiteral("--print"), QLatin1String(sheet)});
        EXPECT_EQ(answer.exit, 0) << answer;
        return answer.out.simplified().toStdString();
    };
    const std::string plan = print("plan");
    for (const char* part :
         {"9.14 kg", "9.62 kg", "Short of wax: 2.87 kg", "2.2 m short", "3.0 m left",
          "60 skep light", "41 of 60: wick for 41, moulds and evenings for 48"})
        EXPECT_THAT(plan, HasSubstr(part));
    EXPECT_THAT(print("batch"), HasSubstr("No water on burning wax"));
    EXPECT_THAT(print("care-cards"), HasSubstr("pillar"));
    EXPECT_THAT(print("propolis"), HasSubstr("allergy"));
    EXPECT_EQ(
        on("wax", {QStringLiteral("--print"), QStringLiteral("labels"), QStringLiteral("--json")})
            .code(),
        "no_such_command");
    EXPECT_EQ(on("wax",
                 {QStringLiteral("--plan"), QStringLiteral("2027-12-24"), QStringLiteral("--json")})
                  .code(),
              "not_found");
    const QString ics = file("candles.ics");
    ASSERT_EQ(on("wax", {QStringLiteral("--calendar"), ics}).exit, 0);
    QFile written(ics);
    ASSERT_TRUE(written.open(QIODevice::ReadOnly));
    const QByteArray text = written.readAll();
    EXPECT_EQ(text.count("BEGIN:VEVENT"), 12);
    EXPECT_TRUE(text.contains("UID:candles-2027-11-15@combwright"));
}

// Cast 3,400 + 2,150 + 1,200 = 6,750 g. Poured 12 · 180 + 5 · 408 + 620 + 310 = 5,130. Lost 110.
// In stock 3,400 − 2,160 − 110 = 1,130 light, 2,150 − 2,040 = 110 mid, 1,200 − 930 = 270 dark:
// 1,510. On 400 kg of honey 6.75 kg are 1.6875 on 100.
TEST_F(CandleFair, FromTheFirstEveningToTheFair) {
    blocks();
    potOff();
    pourAll();
    clock.set("2027-12-11");
    {
        Season season = opened();
        playAll(
            season,
            R"({"do":"pack-fair","on":"2027-12-11","fair_name":"Advent","goods":"47 skep, 30 taper, 3 pillar","change_money":30}
{"do":"fair-home","on":"2027-12-11","fair":"Advent","home":"7 skep, 2 taper, 1 pillar","cash":516})");
        for (const AuditFinding& finding : audit(season.read()))
            ADD_FAILURE() << finding.about << ": " << finding.says;
    }
    const QJsonObject bench = wax();
    const QJsonObject year = bench["year"].toObject();
    EXPECT_DOUBLE_EQ(year["cast_g"].toDouble(), 6750);
    EXPECT_DOUBLE_EQ(year["poured_g"].toDouble(), 5130);
    EXPECT_DOUBLE_EQ(year["lost_g"].toDouble(), 110);
    EXPECT_DOUBLE_EQ(year["in_stock_g"].toDouble(), 1510);
    EXPECT_DOUBLE_EQ(year["in_g"].toDouble(),
                     year["out_g"].toDouble() + year["in_stock_g"].toDouble())
        << "the year closes";
    double left = 0;
    for (const QJsonValue& shade : bench["shades"].toArray())
        left += shade.toObject()["left_g"].toDouble();
    EXPECT_DOUBLE_EQ(left, year["in_stock_g"].toDouble()) << "and so do the blocks";
    EXPECT_NEAR(year["wax_per_100_honey"].toDouble(), 1.6875, 1e-9);
    EXPECT_EQ(year["against_published"].toString(), "as published");
    EXPECT_NEAR(bench["wick_m"].toObject()["#1"].toDouble(), 6 - 48 * 0.12, 1e-9);
    EXPECT_TRUE(bench["unfinished"].toArray().isEmpty());
    const auto fair = cli({"fair", file(), "--json"});
    EXPECT_EQ(fair.object()["sold"].toInt(), 40 + 28 + 2);
    EXPECT_EQ(fair.object()["takings"].toDouble(), 40 * 6 + 28 * 7 + 2 * 25.0);
    const auto why = on("wax", {QStringLiteral("--why")});
    EXPECT_THAT(why.out.toStdString(), HasSubstr("poured"));
    EXPECT_EQ(on("check").exit, 0);
}

TEST_F(CandleFair, WhatIsAskedForAndIsNotThereIsSaidWithWhatThereIs) {
    blocks();
    const auto err = [this](const char* option, const char* value) {
        return on("wax", {QString::fromLatin1(option), QString::fromLatin1(value)})
            .err.toStdString();
    };
    EXPECT_THAT(err("--print", "nonsense"), AllOf(HasSubstr("nonsense"), HasSubstr("care-cards")));
    EXPECT_THAT(err("--plan", "2027-12-12"),
                AllOf(HasSubstr("No candles are wanted by 2027-12-12"), HasSubstr("2027-12-11")));
    EXPECT_THAT(err("--plan", "12/11"), HasSubstr("no day of the calendar"));
}

TEST_F(CandleFair, WhatCannotBeIsRefusedAndLeavesNoTrace) {
    blocks();
    Season season = opened();
    const std::string before = season.dump();
    for (
        const auto& [line, code] :
        {std::pair(
             R"({"do":"cast-block","on":"2027-11-14","name":"X","batch":"Old comb","shade":"dark","mass_g":2900})",
             "too_many"),
         std::pair(R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4})",
                   "missing"),
         std::pair(
             R"({"do":"add-mould","on":"2027-11-15","name":"Nothing","cavities":4,"volume_ml":0})",
             "out_of_range"),
         std::pair(
             R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L 180 g","temperature_c":120})",
             "out_of_range")}) {
        const PlayResult result = play(season, line);
        ASSERT_TRUE(result.stopped) << line;
        EXPECT_EQ(key(result.stopped->refusal.code), code) << line;
    }
    EXPECT_EQ(season.dump(), before);
}

}  // namespace
}  // namespace combwright
