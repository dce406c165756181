// The command that makes the demo season; what the season must hold stands in tests/journeys.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

class DemoCommand : public test::CliTest {};

TEST_F(DemoCommand, MakesTheSeasonAndSaysUntilWhenItIsTold) {
    const test::CliAnswer made = on("demo", {QStringLiteral("--json")});
    ASSERT_EQ(made.exit, cli::Done) << made;
    EXPECT_TRUE(made.object()[QLatin1String("invented")].toBool());
    EXPECT_EQ(made.object()[QLatin1String("told_until")].toString(), QLatin1String("2028-01-29"));
    EXPECT_EQ(on("check").exit, cli::Done);
    const test::CliAnswer yields = on(
        "yields", {QStringLiteral("--season"), QStringLiteral("2027"), QStringLiteral("--json")});
    EXPECT_EQ(yields.object()[QLatin1String("honey_g")].toInt(), 403300) << yields;
    const test::CliAnswer again = on("demo", {QStringLiteral("--json")});
    EXPECT_EQ(again.exit, cli::Refused) << again;
    EXPECT_EQ(again.code(), "path_taken");
}

}  // namespace
}  // namespace combwright
