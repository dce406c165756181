// What a keeper mistypes of honey between bucket and jar, through the program: each slip is refused
// with its code, its field and a sentence, and nothing is changed; what may be right after all is
// kept and asked about.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"
#include "tests/support/five_buckets.h"

namespace combwright {
namespace {

using test::CliAnswer;

class HoneySlips : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        Season season = newSeason();
        playAll(season, test::fiveBuckets());
        playAll(season, R"({"do":"close-run","on":"2027-08-08","run":"27-2"}
{"do":"add-goods","on":"2027-08-08","name":"454 g jar","net_g":454,"price":8.5}
{"do":"add-goods","on":"2027-08-08","name":"skep candle","what":"candle"}
{"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B4","run":"27-2"},"jars":"20 454 g"}
{"do":"hold-back","on":"2027-09-01","bucket":{"bucket":"B3","run":"27-2"},"reason":"wet honey"})");
    }
    CliAnswer played(const std::string& line) const {
        return on("play", {QStringLiteral("--json")}, line);
    }
    static std::string water(const std::string& more, const char* bucket = "B5") {
        return R"({"do":"read-water","on":"2027-08-09","bucket":{"bucket":")" +
               std::string(bucket) +
               R"(","run":"27-2"},"instrument":"hand","calibrated":"2027-07-01",)" + more + "}";
    }
    static std::string blend(const char* parts, const char* more = "") {
        return R"({"do":"blend-honey","on":"2027-09-02","name":"Mix","parts":")" +
               std::string(parts) + "\"" + more + "}";
    }
};

TEST_F(HoneySlips, EachIsRefusedWithItsSentenceAndChangesNothing) {
    struct Slip {
        std::string line;
        const char* code;
        const char* field;
    };
    const Slip slips[] = {
        {water(R"("water_percent":174)"), "out_of_range", "water_percent"},
        {water(R"("water_percent":"17,4")"), "wrong_type", "water_percent"},
        {water(R"("water_percent":9.9)"), "out_of_range", "water_percent"},
        {water(R"("water_percent":17.4,"brix":81)"), "contradiction", "water_percent"},
        {water(R"("refractive_index":1.6)"), "out_of_range", "refractive_index"},
        {water(R"("water_percent":17.4,"temperature_c":260)"), "out_of_range", "temperature_c"},
        {water(R"("water_percent":17.4)", "B9"), "not_found", "bucket"},
        // 20,000,000 g is no bucket.
        {R"({"do":"weigh-left","on":"2027-09-02","bucket":{"bucket":"B1","run":"27-2"},"left_over_g":20000000})",
         "out_of_range", "left_over_g"},
        {R"({"do":"work-honey","on":"2027-08-12","bucket":{"bucket":"B1","run":"27-2"},"work":"dried","after_g":13700})",
         "too_many", "after_g"},
        // 13,600 + 13,600 g into a tank that holds 20 kg to the brim.
        {blend("B1 all, B2 all", R"(,"tank_holds_g":20000)"), "too_many", "tank_holds_g"},
        {blend("B1 14 kg"), "too_many", "parts"},
        {blend("B1 six kilos"), "wrong_type", "parts"},
        {blend("B1 2"), "wrong_type", "parts"},
        {blend("B1 all, B3 all"), "held_back", "parts"},
        {blend("B1 all, B1 2 kg"), "duplicate", "parts"},
        {R"({"do":"fill-jars","on":"2027-09-02","bucket":{"bucket":"B4","run":"27-2"},"jars":"9 454 g"})",
         "too_many", "jars"},
        {R"({"do":"fill-jars","on":"2027-09-02","bucket":{"bucket":"B1","run":"27-2"},"jars":"3 skep"})",
         "not_a_choice", "jars"},
        {R"({"do":"go-out","on":"2027-09-02","goods":"21 454 g"})", "too_many", "goods"},
        {R"({"do":"go-out","on":"2027-09-02","goods":"0 454 g"})", "out_of_range", "goods"},
        {R"({"do":"go-out","on":"2027-08-30","goods":"1 454 g of L27-2-1"})", "before_it_began",
         "bottling"},
        {R"({"do":"set-labels","on":"2027-09-02","flower":"Lime"})", "missing", "flower_grounds"},
    };
    const std::string before = dump();
    for (const Slip& slip : slips) {
        const CliAnswer answer = played(slip.line);
        EXPECT_EQ(answer.exit, cli::Refused) << slip.line << '\n' << answer;
        EXPECT_EQ(answer.code(), slip.code) << slip.line;
        EXPECT_EQ(answer.field(), slip.field) << slip.line;
        EXPECT_GT(answer.refused()[QLatin1String("says")].toString().size(), 20) << slip.line;
    }
    EXPECT_EQ(dump(), before);
    // A comma in quotes is asked about, never taken for a point in silence.
    const CliAnswer comma = on("play", {}, water(R"("water_percent":"17,4")"));
    EXPECT_TRUE(comma.err.contains(QStringLiteral("does 17,4 mean 17.4?"))) << comma;
}

TEST_F(HoneySlips, WhatMayBeRightIsKeptAndAskedAbout) {
    const auto asked = [&](const std::string& line) {
        const CliAnswer answer = played(line);
        EXPECT_EQ(answer.exit, cli::Done) << line << '\n' << answer;
        std::string codes;
        for (const QJsonValue step : answer.object()[QLatin1String("steps")].toArray())
            for (const QJsonValue question : step.toObject()[QLatin1String("questions")].toArray())
                codes += question.toObject()[QLatin1String("code")].toString().toStdString() + " ";
        return codes;
    };
    EXPECT_EQ(asked(water(R"("water_percent":12,"temperature_c":20)")), "water_unusual ");
    EXPECT_EQ(asked(water(R"("water_percent":18.9,"temperature_c":26)")), "not_corrected ");
    EXPECT_EQ(asked(water(R"("water_percent":17.4,"temperature_c":12)")), "reads_too_dry ");
    EXPECT_EQ(asked(R"({"do":"open-run","on":"2027-08-20","name":"27-3"}
{"do":"fill-bucket","on":"2027-08-20","run":"27-3","mark":"B20","net_g":27000})"),
              "bucket_too_heavy ");
    // In words too: what it would be at 20 °C, and that it stays as it was read.
    const CliAnswer told =
        on("play", {}, water(R"("water_percent":18.9,"temperature_c":26)", "B2"));
    EXPECT_TRUE(told.out.contains(QStringLiteral("18.3 %"))) << told;
    EXPECT_TRUE(told.out.contains(QStringLiteral("stays as read"))) << told;
    const CliAnswer shown = on("honey", {QStringLiteral("--json")});
    for (const QJsonValue honey : shown.object()[QLatin1String("standing")].toArray())
        if (honey[QLatin1String("name")] == QStringLiteral("B2 of 27-2")) {
            const QJsonValue shownWater = honey[QLatin1String("water")];
            EXPECT_DOUBLE_EQ(shownWater[QLatin1String("percent")].toDouble(), 18.9);
            EXPECT_NEAR(shownWater[QLatin1String("corrected_percent")].toDouble(), 18.36, 0.05);
        }
}

TEST_F(HoneySlips, ATraceOfADayBeforeTheHoneyWasThereIsRefused) {
    const CliAnswer early = on("trace", {"--bucket", "B1", "--run", "27-2", "--day", "2027-08-01",
                                         QStringLiteral("--json")});
    EXPECT_EQ(early.exit, cli::Refused) << early;
    EXPECT_EQ(early.code(), "before_it_began");
}

}  // namespace
}  // namespace combwright
