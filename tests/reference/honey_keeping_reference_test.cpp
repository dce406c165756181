// Honey that stands, keeps, is warmed and sets, against figures from outside the project: settling,
// fermentation, heat and crystals. The source stands beside each; what is printed wrong is shown
// not to come out.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>

#include "core/trade/honey/ferment_risk.h"
#include "core/trade/honey/granulation.h"
#include "core/trade/honey/heat_damage.h"
#include "core/trade/honey/settling.h"
#include "core/trade/honey/viscosity.h"
#include "core/trade/honey/warming.h"

namespace combwright {
namespace {

TEST(SettlingReference, SpeedsByStokesLaw) {
    // Worked from the law: 1 mm of air, 1415 kg/m³ lighter, in 4 Pa·s; 0.2 mm of wax. No source.
    const double air = *riseSpeed(4.0, 1415, 1000);
    EXPECT_NEAR(air * 1000, 0.193, 0.0005);                       // mm/s
    EXPECT_NEAR(air * 3600, 0.694, 0.0005);                       // m/h
    EXPECT_NEAR(*riseSpeed(4.0, 450, 200) * 3.6e6, 8.83, 0.005);  // mm/h
}

struct RiseRow {
    double temperatureC, water;
    std::array<double, 4> bubbles;  // 0.1, 0.2, 0.5, 1 mm
    std::array<double, 4> wax;      // 0.1, 0.2, 0.4, 0.6 mm
};

// Hours to rise 0.5 m, computed from the law and the model of viscosity; two or three figures.
TEST(SettlingReference, HoursToRiseHalfAMetre) {
    const RiseRow rows[] = {{25, 17, {131, 33, 5.2, 1.3}, {410, 103, 26, 11}},
                            {30, 17, {74, 18, 3.0, 0.7}, {232, 58, 14, 6.4}},
                            {35, 17, {45, 11, 1.8, 0.4}, {140, 35, 8.8, 3.9}},
                            {30, 18, {52, 13, 2.1, 0.5}, {162, 40, 10, 4.5}}};
    const double bubbleUm[] = {100, 200, 500, 1000};
    const double waxUm[] = {100, 200, 400, 600};
    // Half of the last figure printed, and half a per cent.
    const auto near = [](double ours, double printed) {
        const double step = printed < 10 ? 0.1 : 1.0;
        EXPECT_NEAR(ours, printed, 0.5 * step + 0.005 * printed);
    };
    for (const RiseRow& row : rows)
        for (std::size_t i = 0; i < 4; ++i) {
            SCOPED_TRACE(testing::Message() << row.temperatureC << " C " << row.water << " " << i);
            near(*settlingHours(row.water, row.temperatureC, 500, bubbleUm[i]), row.bubbles[i]);
            near(*settlingHours(row.water, row.temperatureC, 500, waxUm[i], waxLighterKgPerM3),
                 row.wax[i]);
        }
}

TEST(SettlingReference, WhyItIsOneToTwoDays) {
    // 24 to 48 h at 30 to 35 °C is customary (printed in 2 sources): bubbles above 0.15 mm and wax
    // above 0.25 mm are up from half a metre, what passed a cloth of 200 µm is not.
    EXPECT_LT(*clearedFromUm(17, 30, 500, 48), 150);
    EXPECT_LT(*clearedFromUm(17, 35, 500, 24), 150);
    EXPECT_LT(*clearedFromUm(17, 35, 500, 24, waxLighterKgPerM3), 250);
    EXPECT_LT(*clearedFromUm(17, 30, 500, 48, waxLighterKgPerM3), 250);
    EXPECT_GT(*settlingHours(17, 30, 500, fineClothUm, waxLighterKgPerM3), 48);
    // Creeping flow: Reynolds' number of a millimetre of air stays under 0.001 at 25 °C.
    const double eta = *honeyViscosity(17, 25);
    EXPECT_LT(1421 * *riseSpeed(eta, 1410, 1000) * 1e-3 / eta, 0.001);
}

TEST(FermentReference, Lochhead) {
    // Lochhead 1933, printed in 2 sources; the cases are the table's own rows.
    EXPECT_EQ(fermentRisk(16.9, {})->risk, FermentRisk::Safe);
    EXPECT_EQ(fermentRisk(17.1, 900.0)->risk, FermentRisk::Safe);
    EXPECT_EQ(fermentRisk(17.5, 5000.0)->risk, FermentRisk::AtRisk);
    EXPECT_EQ(fermentRisk(18.6, 9.0)->risk, FermentRisk::Safe);
    EXPECT_EQ(fermentRisk(18.6, 10.0)->risk, FermentRisk::AtRisk);
    EXPECT_EQ(fermentRisk(19.5, {})->risk, FermentRisk::AtRisk);
    EXPECT_EQ(fermentRisk(19.5, {})->keeping, KeepingClass::Danger);
    EXPECT_EQ(fermentRisk(20.1, {})->risk, FermentRisk::InDanger);
    // 18.6 % is a line of a grade and not of safety.
    EXPECT_NE(fermentRisk(18.6, {})->risk, FermentRisk::Safe);
}

TEST(FermentReference, YeastKills) {
    // 62.8 °C (145 °F) for 30 min, 65.6 °C (150 °F) for 15: printed in 2 sources.
    ASSERT_EQ(yeastKills().size(), 2U);
    EXPECT_NEAR(yeastKills()[0].temperatureC, (145 - 32) / 1.8, 0.05);
    EXPECT_NEAR(yeastKills()[1].temperatureC, (150 - 32) / 1.8, 0.05);
    EXPECT_EQ(yeastKills()[0].minutes, 30);
    EXPECT_NEAR(storeBelowC, (52 - 32) / 1.8, 0.15);  // 52 °F
}

struct HeatCheck {
    double temperatureC, hours, hmf, diastase, invertase;
};

// Worked with the closed forms over White, Kushnir and Subers 1964.
TEST(HeatReference, WorkedSteps) {
    for (const HeatCheck& each :
         {HeatCheck{40, 48, 2.0, 95.6, 86.6}, HeatCheck{50, 24, 4.7, 87.9, 58.4},
          HeatCheck{35, 96, 1.8, 96.5, 90.5}, HeatCheck{62.8, 0.5, 0.6, 97.9, 88.4}}) {
        const auto damage = heatDamage({each.temperatureC, each.hours});
        ASSERT_TRUE(damage);
        EXPECT_NEAR(*damage->hmfGain, each.hmf, 0.05) << each.temperatureC;
        EXPECT_NEAR(100 * damage->diastaseLeftShare, each.diastase, 0.1) << each.temperatureC;
        EXPECT_NEAR(100 * damage->invertaseLeftShare, each.invertase, 0.2) << each.temperatureC;
    }
    EXPECT_NEAR(*heatDamage({20, 24 * 365})->hmfGain, 12.5, 0.1);  // a year on the shelf
    EXPECT_NEAR(*heatDamage({25, 24 * 365})->hmfGain, 30, 3);
}

TEST(HeatReference, ClosedFormTimes) {
    EXPECT_NEAR(*hmfHoursTo30(45), 328, 2);
    EXPECT_NEAR(*hmfHoursTo30(60), 36.5, 0.3);
    EXPECT_NEAR(*hmfHoursTo30(30), 3663, 20);
}

TEST(HeatReference, BracketsExactlyAsPrinted) {
    // Printed in 2 sources: days at 20 to 60 °C, hours at 70 and 80.
    struct Bracket {
        double temperatureC, low, high;
    };
    for (const Bracket& each : {Bracket{20, 600 * 24, 800 * 24}, Bracket{30, 150 * 24, 250 * 24},
                                Bracket{40, 20 * 24, 50 * 24}, Bracket{50, 4.5 * 24, 9 * 24},
                                Bracket{60, 24, 60}, Bracket{70, 5, 14}, Bracket{80, 0.5, 2}}) {
        const auto bracket = hmfBracketHours(each.temperatureC);
        ASSERT_TRUE(bracket);
        EXPECT_EQ(bracket->low, each.low) << each.temperatureC;
        EXPECT_EQ(bracket->high, each.high) << each.temperatureC;
        // The closed form lies within from 30 to 70 °C, 9 % above at 20 and, not printed anywhere,
        // a third above at 80, where the pages contradict each other: the range shown is then wide
        // enough for both.
        const double closed = *hmfHoursTo30(each.temperatureC);
        if (each.temperatureC >= 30 && each.temperatureC <= 70) {
            EXPECT_GT(closed, each.low);
            EXPECT_LT(closed, each.high);
        } else {
            EXPECT_NEAR(closed / each.high, each.temperatureC == 20 ? 1.09 : 1.31, 0.01);
        }
        // Half the time, half the HMF.
        const auto half = heatDamage({each.temperatureC, each.low / 2});
        EXPECT_NEAR(half->hmfHigh, 15, 1e-9);
        EXPECT_NEAR(*heatDamage({each.temperatureC, closed / 2})->hmfGain, 15, 1e-9);
    }
    // A year at 20 °C by the table: 14 to 18 mg/kg.
    const auto year = heatDamage({20, 24 * 365});
    EXPECT_NEAR(30 * 24 * 365 / hmfBracketHours(20)->high, 14, 0.5);
    EXPECT_NEAR(year->hmfHigh, 18, 0.5);
    // Between two rows the bracket is between theirs.
    for (double t = 20; t <= 80; t += 0.5) {
        EXPECT_LT(hmfBracketHours(t)->low, hmfBracketHours(t)->high);
        if (t > 20) {
            EXPECT_LT(hmfBracketHours(t)->low, hmfBracketHours(t - 0.5)->low);
        }
        if (t > 20) {
            EXPECT_LT(hmfBracketHours(t)->high, hmfBracketHours(t - 0.5)->high);
        }
    }
}

TEST(HeatReference, HalfLivesOfEnzymes) {
    // Diastase 20 to 80 °C printed in 1 source, invertase from memory: both on one line.
    double worstDiastase = 0;
    double worstInvertase = 0;
    for (const HeatRow& row : heatRows()) {
        const double diastase = *diastaseHalfLifeHours(row.temperatureC) / row.diastaseHalfLifeH;
        const double invertase = *invertaseHalfLifeHours(row.temperatureC) / row.invertaseHalfLifeH;
        worstDiastase = std::max(worstDiastase, std::abs(diastase - 1));
        worstInvertase = std::max(worstInvertase, std::abs(invertase - 1));
    }
    std::printf("closed forms against the table: diastase %.1f %%, invertase %.1f %% at most\n",
                100 * worstDiastase, 100 * worstInvertase);
    EXPECT_LT(worstDiastase, 0.055);
    EXPECT_LT(worstInvertase, 0.065);
    // Half of the diastase after 31 days at 40 °C.
    EXPECT_NEAR(heatDamage({40, 31 * 24})->diastaseLeftShare, 0.5, 0.02);
}

TEST(HeatReference, OutsideChecks) {
    // A Danish adviser: 3 to 6 mg/kg a year at 12 to 14 °C. Under 20 °C nothing is answered, and
    // the bound holds: it is less than at 20 °C.
    const auto cellar = heatDamage({13, 24 * 365});
    EXPECT_FALSE(cellar->hmfGain);
    EXPECT_GT(cellar->hmfHigh, 6);
    // Calderone: 40 days at 25 °C are like 60 min at 62.8 °C. Here 2.8 h (HMF), 1.2 (diastase),
    // 0.44 (invertase): the same size.
    const double hours = 40 * 24;
    EXPECT_NEAR(hours * *hmfHoursTo30(62.8) / *hmfHoursTo30(25), 2.8, 0.1);
    EXPECT_NEAR(hours * *diastaseHalfLifeHours(62.8) / *diastaseHalfLifeHours(25), 1.2, 0.05);
    EXPECT_NEAR(hours * *invertaseHalfLifeHours(62.8) / *invertaseHalfLifeHours(25), 0.44, 0.02);
    // A heating study found 40 mg/kg only after 80 h at 60 °C (abstract): far slower than ours.
    EXPECT_GT(*heatDamage({60, 80})->hmfGain, 40);
}

TEST(GranulationReference, SettingHoneyGetsWetter) {
    // Computed; glucose monohydrate holds 9.09 % of water, printed in 1 source.
    EXPECT_NEAR(*liquidWaterWhenSet(18, 10), 19.10, 0.005);
    EXPECT_NEAR(*liquidWaterWhenSet(18, 15), 19.76, 0.005);
    EXPECT_NEAR(*liquidWaterWhenSet(17, 12), 18.20, 0.005);
    // So sound honey of 18 % is in danger once set.
    EXPECT_EQ(fermentRisk(18, 100.0)->risk, FermentRisk::Safe);
    EXPECT_EQ(fermentRisk(*liquidWaterWhenSet(18, 15), 100.0)->risk, FermentRisk::AtRisk);
    EXPECT_EQ(*granulation(30, 18), Granulation::StaysLiquid);  // 1.67, printed in 2 sources
    EXPECT_EQ(*granulation(38, 18), Granulation::Fast);         // 2.11
}

TEST(WarmingReference, APailOfSixtyPounds) {
    // 27.2 kg from 15 to 35 °C: 1.23 MJ, 3.4 h at 100 W; specific heat printed in 1 source.
    EXPECT_NEAR(*warmingKj(27200, 15, 35) / 1000, 1.23, 0.005);
    EXPECT_NEAR(*warmingHours(27200, 15, 35, 100), 3.4, 0.05);
}

}  // namespace
}  // namespace combwright
