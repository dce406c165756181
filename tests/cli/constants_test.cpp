// The rates as the command line lists them.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;

class ConstantsCommand : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-20");
        makeSeason();
        const CliAnswer answer = on("play", {}, R"(
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"set-constant","on":"2027-05-01","constant":"winter_use_february_g","value":2500,"source":"my scale"}
{"do":"set-phase-day","on":"2027-05-01","phase":"peak","month":6,"day_of_month":1,"yard":"Hill"}
)");
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
    static QJsonObject of(const CliAnswer& answer, const char* key) {
        for (const QJsonValue& each : answer.object()["constants"].toArray())
            if (each.toObject()["key"].toString() == QLatin1String(key)) return each.toObject();
        return {};
    }
};

TEST_F(ConstantsCommand, SayWhatIsPublishedAndWhatIsOnesOwn) {
    const CliAnswer all = on("constants", {"--json"});
    const QJsonObject use = of(all, "winter_use_february_g");
    EXPECT_EQ(use["value"].toDouble(), 2000);
    EXPECT_EQ(use["unit"].toString(), QStringLiteral("g"));
    EXPECT_EQ(use["own"].toObject()["value"].toDouble(), 2500);
    EXPECT_EQ(use["own"].toObject()["since"].toString(), QStringLiteral("2027-05-01"));
    EXPECT_EQ(use["own"].toObject()["source"].toString(), QStringLiteral("my scale"));
    EXPECT_TRUE(use["edition"].isNull());
    EXPECT_TRUE(of(all, "bucket_g")["own"].isNull());
    const QJsonObject peak = of(all, "phase_from peak");
    EXPECT_EQ(peak["value"].toString(), QStringLiteral("05-15"));
    EXPECT_EQ(peak["edition"].toString(), QStringLiteral("usual"));
    EXPECT_TRUE(peak["own"].isNull()) << "only for Hill";
    EXPECT_EQ(of(on("constants", {"--json", "--yard", "Hill"}), "phase_from peak")["own"]
                  .toObject()["yard"]
                  .toString(),
              QStringLiteral("Hill"));
    EXPECT_EQ(on("constants", {"--json", "--own"}).object()["constants"].toArray().size(), 1);
    EXPECT_EQ(on("constants", {"--json", "--yard", "Hull"}).code(), "not_found");
    const CliAnswer text = on("constants", {"--own"});
    EXPECT_TRUE(text.out.contains(QStringLiteral("2500 since Sat 1 May 2027: my scale"))) << text;
    EXPECT_FALSE(text.out.contains(QStringLiteral("bucket_g")));
}

}  // namespace
}  // namespace combwright
