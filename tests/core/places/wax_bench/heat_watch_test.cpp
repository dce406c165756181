// A pot on heat: the clock calls after a quarter of an hour and every temperature has its words.
#include "core/places/wax_bench/heat_watch.h"

#include <gtest/gtest.h>

#include "core/places/wax_bench/wax_outlook.h"
#include "tests/support/candle_lines.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class PotOnHeat : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        done(
            R"({"do":"heat-on","on":"2027-11-13","begun":"2027-11-13T14:00:00Z","what_heated":"wax pot in the water bath"})");
    }
    Instant after(int minutes) {
        return *parseInstant("2027-11-13T14:00:00Z") + std::chrono::minutes(minutes);
    }
};

TEST_F(PotOnHeat, CallsUntilSomebodyIsThere) {
    EXPECT_FALSE(heatNow(file(), after(14), {}).front().calls);
    const auto late = heatNow(file(), after(38), {});
    ASSERT_EQ(late.size(), 1U);
    EXPECT_EQ(late.front().minutes, 38);
    EXPECT_TRUE(late.front().calls);
    EXPECT_FALSE(heatNow(file(), after(38), after(30)).front().calls);
    EXPECT_TRUE(heatNow(file(), after(46), after(30)).front().calls);
    // What was said before it came on does not count.
    EXPECT_TRUE(heatNow(file(), after(15), after(-60)).front().calls);
    // The clock was put back: nothing below nothing.
    EXPECT_EQ(heatNow(file(), after(-5), {}).front().minutes, 0);
    done(R"({"do":"heat-off","on":"2027-11-13","off_at":"2027-11-13T15:00:00Z"})");
    EXPECT_TRUE(heatNow(file(), after(90), {}).empty());
}

TEST_F(PotOnHeat, EveryTemperatureHasItsWord) {
    const auto mind = [](double celsius) {
        return heatSaid(Temperature::roundedCelsius(celsius))->mind;
    };
    EXPECT_FALSE(heatSaid({}));
    EXPECT_EQ(mind(72), HeatMind::Plain);
    EXPECT_EQ(mind(66), HeatMind::Mind);
    EXPECT_EQ(mind(90), HeatMind::Stop);
    EXPECT_EQ(mind(120), HeatMind::Stop);
    EXPECT_TRUE(heatSaid(Temperature::roundedCelsius(120))->words.contains(QStringLiteral("100")));
}

TEST_F(PotOnHeat, FormsSayWhatComes) {
    done(test::candleStockLines);
    const Day today = day("2027-11-13");
    // Drained cappings 40 to 50 %, likely 45.
    const QString drained =
        expectedCleanText(file(), RawWaxSource::Cappings, WaxState::Drained,
                          Known<Mass>{Mass::grams(10'000), {}, How::Weighed}, today);
    EXPECT_TRUE(drained.contains(QStringLiteral("4.00 kg to 5.00 kg"))) << drained.toStdString();
    EXPECT_TRUE(expectedCleanText(file(), RawWaxSource::Cappings, {}, {}, today).isEmpty());
    const auto skeps = file().first<Mould>({is("name", test::name("Skeps"))});
    ASSERT_TRUE(skeps);
    const MouldShown mould = mouldShown(file(), *skeps, today);
    // 47 ml · 0.96 = 45.12 g.
    EXPECT_TRUE(mouldOutlookText(mould).contains(QStringLiteral("One weighs 45 g (47 ml)")))
        << mouldOutlookText(mould).toStdString();
    const QString pour = pourOutlookText(file(), mould, 4, {}, today);
    EXPECT_TRUE(pour.contains(QStringLiteral("4 pieces take 180 g"))) << pour.toStdString();
    EXPECT_TRUE(pour.contains(QStringLiteral("more than there is"))) << pour.toStdString();
}

TEST(MeltHeat, IsARangeOfTheWaxAlone) {
    // 5 kg · (2.1 · 55 K + 180) = 1477.5 kJ = 0.41 kWh; 5 kg · (2.9 · 55 K + 180) = 0.47 kWh.
    const QString said = meltHeatText(Mass::grams(5000), Temperature::tenths(750));
    EXPECT_TRUE(said.contains(QStringLiteral("0.41 to 0.47 kWh into 5.00 kg")))
        << said.toStdString();
    EXPECT_TRUE(meltHeatText({}, Temperature::tenths(750)).isEmpty());
    EXPECT_TRUE(meltHeatText(Mass::grams(5000), {}).isEmpty());
    // Below 64 °C nothing is surely melted.
    EXPECT_TRUE(meltHeatText(Mass::grams(5000), Temperature::tenths(600)).isEmpty());
}

}  // namespace
}  // namespace combwright
