// compute: one JSON object in, one out, and no file; the numbers themselves are checked where the
// computations are.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>

#include "core/exchange/compute/computations.h"
#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

class ComputeCommand : public test::CliTest {
  protected:
    CliAnswer compute(const char* name, std::string_view input) const {
        return cli({QStringLiteral("compute"), QLatin1String(name)}, input);
    }
};

TEST_F(ComputeCommand, AnswersOneObject) {
    const CliAnswer answer =
        compute("honey-density", " {\"water_percent\": 18,\n \"temperature_c\": 20}\n");
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_TRUE(answer.err.isEmpty());
    EXPECT_EQ(answer.out.count(QLatin1Char('\n')), 1);
    // 1.4146 kg/L at 18 % and 20 °C: the published table of densities, in resources/trade.
    EXPECT_NEAR(answer.object()[QLatin1String("kg_per_l")].toDouble(), 1.4146, 1e-9);
    // --json may be written and changes nothing.
    EXPECT_EQ(
        cli({QStringLiteral("compute"), QStringLiteral("--json"), QStringLiteral("honey-density")},
            R"({"water_percent":18,"temperature_c":20})")
            .out,
        answer.out);
}

TEST_F(ComputeCommand, EveryComputationIsReachedByItsName) {
    ASSERT_GE(computations().size(), 4U);
    for (const Computation& each : computations()) {
        const std::string name(each.name);
        const CliAnswer answer = compute(name.c_str(), R"({"nobody_asks_for_this":1})");
        EXPECT_EQ(answer.exit, cli::Refused) << name << '\n' << answer;
        EXPECT_TRUE(answer.out.isEmpty()) << name;
        EXPECT_FALSE(answer.code().empty()) << name;
    }
}

TEST_F(ComputeCommand, ARefusalNamesItsKeyAndPrintsNothing) {
    struct Slip {
        const char* input;
        const char* code;
        const char* field;
    };
    for (const Slip& slip : {
             Slip{R"({"water_percent":18})", "missing", "temperature_c"},
             Slip{R"({"water_percent":18,"temperature_c":20,"jar":1})", "unknown_key", "jar"},
             Slip{R"({"water_percent":"18","temperature_c":20})", "wrong_type", "water_percent"},
             Slip{R"({"water_percent":40,"temperature_c":20})", "out_of_range", "water_percent"},
             Slip{R"({"water_percent":null,"temperature_c":20})", "missing", "water_percent"},
         }) {
        const CliAnswer answer = compute("honey-density", slip.input);
        EXPECT_EQ(answer.exit, cli::Refused) << slip.input;
        EXPECT_TRUE(answer.out.isEmpty()) << slip.input;
        EXPECT_EQ(answer.code(), slip.code) << slip.input << '\n' << answer;
        EXPECT_EQ(answer.field(), slip.field) << slip.input;
        EXPECT_FALSE(answer.refused()[QLatin1String("says")].toString().isEmpty());
    }
}

// What a keeper types for the water of a bucket when a finger slips, and what a script gets wrong.
TEST_F(ComputeCommand, TheBucketRoomRefusesWithExitOneAndNothingOnStdout) {
    struct Slip {
        const char* name;
        const char* input;
        const char* code;
        const char* field;
    };
    for (const Slip& slip : {
             Slip{"ferment-risk", R"({"water_percent":174})", "out_of_range", "water_percent"},
             Slip{"ferment-risk", R"({"water_percent":"17,4"})", "wrong_type", "water_percent"},
             Slip{"settling",
                  R"({"water_percent":12,"temperature_c":30,"depth_mm":500,"bubble_um":200})",
                  "out_of_range", "water_percent"},
             Slip{"settling",
                  R"({"water_percent":17,"temperature_c":30,"depth_mm":500,"bubble_um":0})",
                  "out_of_range", "bubble_um"},
             Slip{"heat-damage", R"({"temperature_c":95,"hours":1})", "out_of_range",
                  "temperature_c"},
             Slip{"blend",
                  R"({"target_percent":18,"buckets":[{"id":"B1","mass_g":1,"water_percent":17},)"
                  R"({"id":"B1","mass_g":1,"water_percent":17}]})",
                  "duplicate", "buckets[1].id"},
             Slip{"blend",
                  R"({"target_percent":18,"buckets":[{"id":"B1","mass_g":-5,"water_percent":17}]})",
                  "negative", "buckets[0].mass_g"},
             Slip{"drying", R"({"mass_g":1000,"water_percent":20})", "missing", "target_percent"},
             Slip{"jars", R"({"honey_g":1000,"net_g":0,"loss_share":0})", "out_of_range", "net_g"},
             Slip{"colour-class", R"({"pfund_mm":-1})", "negative", "pfund_mm"},
         }) {
        const CliAnswer answer = compute(slip.name, slip.input);
        EXPECT_EQ(answer.exit, cli::Refused) << slip.input;
        EXPECT_TRUE(answer.out.isEmpty()) << slip.input;
        EXPECT_EQ(answer.code(), slip.code) << slip.input << '\n' << answer;
        EXPECT_EQ(answer.field(), slip.field) << slip.input;
        const QString says = answer.refused()[QLatin1String("says")].toString();
        EXPECT_FALSE(says.isEmpty() || says.contains(QLatin1Char('{'))) << answer;
    }
}

TEST_F(ComputeCommand, ABlendComesBackInWholeGrams) {
    const CliAnswer answer =
        compute("blend", R"({"target_percent":17.8,"buckets":[)"
                         R"({"id":"B4","mass_g":13600,"water_percent":18.9},)"
                         R"({"id":"B1","mass_g":13600,"water_percent":17.1}]})");
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    // 13600 · 0.7 ÷ 1.1 = 8654.5: 8654 g, and at 17.8 % the next gram would be over.
    EXPECT_THAT(answer.out.toStdString(), HasSubstr(R"("mass_g":8654)"));
    EXPECT_EQ(answer.object()[QLatin1String("mass_g")].toInteger(), 22254);
    EXPECT_LE(answer.object()[QLatin1String("water_percent")].toDouble(), 17.8);
}

// What a keeper slips in at the wax bench: the mould left empty, °F for °C, paraffin's figure.
TEST_F(ComputeCommand, TheWaxBenchRefusesWithExitOneAndNothingOnStdout) {
    struct Slip {
        const char* name;
        const char* input;
        const char* code;
        const char* field;
    };
    for (const Slip& slip : {
             Slip{"wax-heat", R"({"temperature_c":120})", "out_of_range", "temperature_c"},
             Slip{"candle-mass", R"({"shape":"cylinder","diameter_mm":0,"length_mm":150})",
                  "out_of_range", "diameter_mm"},
             Slip{"candle-batch", R"({"water_g":0,"pieces":4,"spare_share":0.05})", "out_of_range",
                  "water_g"},
             Slip{"candle-batch",
                  R"({"volume_ml":250,"pieces":4,"spare_share":0.05,"solid_g_per_ml":0.86})",
                  "out_of_range", "solid_g_per_ml"},
             Slip{"wax-rendered", R"({"raw_g":900,"clean_g":1000})", "contradiction", "clean_g"},
             Slip{"wax-balance", R"({"opening_g":0,"cast_g":500,"poured_g":600})", "contradiction",
                  "poured_g"},
             Slip{"wax-yield", R"({"material":"honey","raw_g":900})", "not_a_choice", "material"},
             Slip{"candles", R"({"loss_share":0.05,"evenings":3,"wick_m":{},"want":[]})", "missing",
                  "blocks_g"},
         }) {
        const CliAnswer answer = compute(slip.name, slip.input);
        EXPECT_EQ(answer.exit, cli::Refused) << slip.input;
        EXPECT_TRUE(answer.out.isEmpty()) << slip.input;
        EXPECT_EQ(answer.code(), slip.code) << slip.input << '\n' << answer;
        EXPECT_EQ(answer.field(), slip.field) << slip.input;
        const QString says = answer.refused()[QLatin1String("says")].toString();
        EXPECT_FALSE(says.isEmpty() || says.contains(QLatin1Char('{'))) << answer;
    }
}

// The fair of 11 December 2027: what the blocks give in the order wanted, each shade by itself.
TEST_F(ComputeCommand, CandlesForTheFairByShade) {
    const CliAnswer answer = compute("candles", R"({"blocks":[{"shade":"light","mass_g":3400},
        {"shade":"mid","mass_g":2150},{"shade":"dark","mass_g":1200}],"loss_share":0.05,
        "evenings":12,"wick_m":{"#1":5,"2/0":15,"#5":3},"want":[
        {"what":"skep","count":60,"mass_g":45,"wick":"#1","wick_m":0.12,"cavities":4,
         "cycles_per_evening":1,"shades":["light"]},
        {"what":"taper","count":40,"mass_g":68,"wick":"2/0","wick_m":0.30,"cavities":6,
         "cycles_per_evening":1,"shades":["mid","light"]},
        {"what":"pillar","count":12,"mass_g":310,"wick":"#5","wick_m":0.20,"cavities":2,
         "cycles_per_evening":1,"shades":["dark"]}]})");
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_THAT(answer.out.toStdString(),
                HasSubstr(R"("from_stock":[{"count":60,"shade":"light","what":"skep"},)"
                          R"({"count":30,"shade":"mid","what":"taper"},)"
                          R"({"count":7,"shade":"light","what":"taper"},)"
                          R"({"count":3,"shade":"dark","what":"pillar"}])"));
    EXPECT_NEAR(answer.object()[QLatin1String("wax_short_g")].toDouble(), 2871.05, 0.01);
}

TEST_F(ComputeCommand, AnUnknownNameIsWrongUsage) {
    const CliAnswer answer = compute("honey-taste", "{}");
    EXPECT_EQ(answer.exit, cli::WrongUsage);
    EXPECT_EQ(answer.code(), "no_such_command") << answer;
    EXPECT_THAT(answer.err.toStdString(), HasSubstr("honey-taste"));
    EXPECT_TRUE(answer.out.isEmpty());
}

TEST_F(ComputeCommand, InputThatIsNotOneObjectIsWrongUsage) {
    for (const char* input :
         {"", "   ", "18", "[]", "\"honey\"", "null", "{", "{}{}", R"({"water_percent":NaN})",
          R"({"water_percent":Infinity})", "{\"water_percent\":18,}", "{} trailing",
          R"({"water_percent":18.,"temperature_c":20})", R"({"water_percent":.5})",
          R"({"water_percent":018})", R"({"water_percent":+1})", "{'water_percent':18}"}) {
        const CliAnswer answer = compute("honey-density", input);
        EXPECT_EQ(answer.exit, cli::WrongUsage) << input << '\n' << answer;
        EXPECT_EQ(answer.code(), "wrong_usage") << input;
        EXPECT_TRUE(answer.out.isEmpty()) << input;
    }
}

TEST_F(ComputeCommand, AKeyGivenTwiceIsRefusedByItsPath) {
    const CliAnswer answer =
        compute("honey-density", R"({"water_percent":18,"temperature_c":20,"water_percent":19})");
    EXPECT_EQ(answer.exit, cli::Refused) << answer;
    EXPECT_EQ(answer.code(), "duplicate");
    EXPECT_EQ(answer.field(), "water_percent");
    EXPECT_TRUE(answer.out.isEmpty());
}

TEST_F(ComputeCommand, BytesThatAreNoTextAreWrongUsage) {
    QByteArray given = "{\"do\":\"\xff\"}";
    QBuffer bytes(&given);
    ASSERT_TRUE(bytes.open(QIODevice::ReadOnly));
    QTextStream in(&bytes);
    CliAnswer answer;
    QTextStream out(&answer.out, QIODevice::WriteOnly);
    QTextStream err(&answer.err, QIODevice::WriteOnly);
    answer.exit = cli::run({QStringLiteral("compute"), QStringLiteral("honey-density")},
                           {in, out, err}, clock);
    err.flush();
    EXPECT_EQ(answer.exit, cli::WrongUsage) << answer;
    EXPECT_TRUE(answer.err.contains(QStringLiteral("UTF-8"))) << answer;
}

}  // namespace
}  // namespace combwright
