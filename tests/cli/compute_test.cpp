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
