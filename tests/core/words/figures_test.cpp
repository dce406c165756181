// Numbers as they are typed on both sides of the decimal comma; what could mean two things is not
// guessed.
#include "core/words/figures.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/words/units.h"

namespace combwright {
namespace {

TEST(TypedNumbers, AreReadWithPointOrComma) {
    const struct {
        const char* typed;
        double meant;
    } rows[] = {
        {"0", 0},
        {"7", 7},
        {"174", 174},
        {"17.4", 17.4},
        {"17,4", 17.4},
        {"  17,4 ", 17.4},
        {"1240", 1240},
        {"1.24", 1.24},
        {"1.2400", 1.24},
        {"0.240", 0.24},
        {"0,240", 0.24},
        {"1240.5", 1240.5},
        {"1234.567", 1234.567},
        {"007", 7},
        {"999999999", 999999999},
    };
    for (const auto& row : rows) {
        const auto number = typedNumber(QString::fromUtf8(row.typed));
        ASSERT_TRUE(number) << row.typed;
        EXPECT_DOUBLE_EQ(*number, row.meant) << row.typed;
    }
}

TEST(TypedNumbers, ThatAreNoneOrCouldBeTwoAreRefused) {
    for (const char* typed :
         {"1.240", "1,240",   "12.400",     "999,999",   "1.000", "",        " ",
          "x",     "17,4 kg", "17 4",       "-3",        "−3",    "+3",      "1e3",
          ".5",    ",5",      "5.",         "5,",        "1.2.3", "1,234.5", "1'240",
          "nan",   "inf",     "9999999999", "1.2345678", "½",     "١٧",      "0x10"})
        EXPECT_FALSE(typedNumber(QString::fromUtf8(typed))) << typed;
}

TEST(Kilograms, AreAsFineAsTheyAreKnown) {
    const struct {
        double grams;
        How how;
        const char* shown;
    } rows[] = {
        {12345, How::Weighed, "12.3"}, {12345, How::ByDifference, "12.3"},
        {12345, How::ByEye, "12"},     {12345, How::Assumed, "12"},
        {12345, How::Unknown, "12"},   {0, How::Weighed, "0.0"},
        {0, How::ByEye, "0"},          {10650, How::Weighed, "10.6"},
        {10750, How::Weighed, "10.8"}, {10651, How::Weighed, "10.7"},
        {12500, How::ByEye, "12"},     {13500, How::ByEye, "14"},
        {499, How::ByEye, "0"},
    };
    for (const auto& row : rows)
        EXPECT_EQ(massFigure(row.grams, row.how).toStdString(), row.shown) << row.grams << " g";
}

// 1 lb = 0.45359237 kg exactly, 1 oz = 1/16 lb, 1 in = 25.4 mm exactly: NIST Handbook 44, Appendix
// C.
TEST(CustomaryUnits, AreThePublishedOnes) {
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(massText(45359.237, How::Weighed), QStringLiteral("100.0 lb"));
    EXPECT_EQ(shownPortion(453.59237).text(), QStringLiteral("16.0 oz"));
    EXPECT_EQ(shownLength(254).text(), QStringLiteral("10.00 in"));
    EXPECT_EQ(shownTemperature(100).text(), QStringLiteral("212.0 °F"));
    EXPECT_EQ(shownTemperature(-40).text(), QStringLiteral("-40.0 °F"));
    // USDA: a gallon of honey "about 12 pounds"; the pail called a 60 holds 60 lb, 27.2 kg.
    EXPECT_EQ(massFigure(27215.54, How::Weighed), QStringLiteral("60.0"));
}

TEST(CustomaryUnits, ShowNoMoreDigitsThanAreKnown) {
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(massText(27500, How::Weighed), QStringLiteral("60.6 lb"));
    EXPECT_EQ(massText(27500, How::ByEye), QStringLiteral("61 lb"));
    EXPECT_EQ(massRateFigure(1636.5), QStringLiteral("3.61"));
}

TEST(MetricUnits, AreShownUntilOthersAreChosen) {
    EXPECT_EQ(shownUnits(), Units::Metric);
    EXPECT_EQ(massText(27500, How::Weighed), QStringLiteral("27.5 kg"));
    EXPECT_EQ(shownPortion(454).text(), QStringLiteral("454 g"));
    EXPECT_EQ(shownLength(158.8).text(), QStringLiteral("158.8 mm"));
}

TEST(TypedMasses, AreInTheShownUnitOrTheirOwn) {
    EXPECT_EQ(typedMass(QStringLiteral("21.4")), Mass::grams(21400));
    EXPECT_EQ(typedMass(QStringLiteral("21,4 kg")), Mass::grams(21400));
    EXPECT_EQ(typedMass(QStringLiteral("850 g")), Mass::grams(850));
    EXPECT_EQ(typedMass(QStringLiteral("47lb")), Mass::grams(21319));
    EXPECT_EQ(typedMass(QStringLiteral("47 lb 3 oz")), Mass::grams(21404));
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(typedMass(QStringLiteral("47.2")), Mass::grams(21410));
    EXPECT_EQ(typedMass(QStringLiteral("21.4 kg")), Mass::grams(21400));
    EXPECT_EQ(typedMass(QStringLiteral("16 oz")), Mass::grams(454));
}

TEST(TypedMasses, ThatAreNoneAreRefused) {
    for (const char* text : {"", "kg", "-3", "1.240", "21.4.1", "47 lb 16 oz", "3 stone", "1e3"})
        EXPECT_FALSE(typedMass(QString::fromUtf8(text))) << text;
}

TEST(TypedMasses, ComeBackAsTheSameGramsWhateverIsShown) {
    for (const Units units : {Units::Metric, Units::UsCustomary}) {
        const UnitsWhile shown(units);
        for (std::int64_t grams = 0; grams < 60000; grams += 37)
            ASSERT_EQ(typedMass(massTyped(Mass::grams(grams)) + QLatin1Char(' ') + massUnit()),
                      Mass::grams(grams))
                << grams << " as " << massTyped(Mass::grams(grams)).toStdString();
    }
}

TEST(TypedMasses, AreToldNoFinerThanTheyWereKept) {
    EXPECT_EQ(massTold(Mass::grams(12712)), QStringLiteral("12.712"));
    EXPECT_EQ(massTold(Mass::grams(1234)), QStringLiteral("1.234"));
    EXPECT_EQ(massTold(Mass::grams(20400)), QStringLiteral("20.4"));
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(massTold(Mass::grams(20412)), QStringLiteral("45")) << "45 lb is 20,411.66 g";
    EXPECT_EQ(massTold(Mass::grams(12712)), QStringLiteral("28.03")) << "28.0252 lb";
    EXPECT_EQ(massTold(Mass::grams(25000)), QStringLiteral("55.12")) << "55.1156 lb";
}

TEST(Figures, ATemperatureIsTypedInTheDegreesShownOrWithTheirLetter) {
    const auto typed = [](const char* text) { return typedTemperature(QString::fromUtf8(text)); };
    EXPECT_EQ(typed("-18"), Temperature::tenths(-180));
    EXPECT_EQ(typed("−18,5 °C"), Temperature::tenths(-185));
    EXPECT_EQ(typed("0 F"), Temperature::tenths(-178));
    EXPECT_EQ(typed("4"), Temperature::tenths(40));
    for (const char* text : {"", "cold", "--18", "18 K", "-18 to -20", "1-8"})
        EXPECT_FALSE(typed(text)) << text;
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(typed("-4"), Temperature::tenths(-200));
    EXPECT_EQ(typed("-20 C"), Temperature::tenths(-200));
}

TEST(Figures, ALengthIsTypedInTheUnitShownOrWithItsOwn) {
    const auto typed = [](const char* text) { return typedLength(QString::fromUtf8(text)); };
    EXPECT_EQ(typed("225"), Length::mm(225));
    EXPECT_EQ(typed("22,5 cm"), Length::mm(225));
    EXPECT_EQ(typed("0.3 m"), Length::mm(300));
    EXPECT_EQ(typed("5m"), Length::mm(5000));
    EXPECT_EQ(typed("10in"), Length::mm(254));
    // 2¾ in are 69.85 mm, 7/8 in 22.225 mm.
    EXPECT_EQ(typed("2 3/4 in"), Length::roundedMm(69.85));
    EXPECT_EQ(typed("2¾ in"), Length::roundedMm(69.85));
    EXPECT_EQ(typed("7/8 in"), Length::roundedMm(22.225));
    EXPECT_FALSE(typed("2 3/4")) << "millimetres have no quarters";
    EXPECT_FALSE(typed("4/4 in"));
    EXPECT_FALSE(typed("2 1/3 in"));
    for (const char* text : {"", "0", "-4", "two", "1.240", "5 ft"})
        EXPECT_FALSE(typed(text)) << text;
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(typed("10"), Length::mm(254));
    EXPECT_EQ(typed("2 3/4"), Length::roundedMm(69.85));
    EXPECT_EQ(typed("225 mm"), Length::mm(225));
}

TEST(Kilograms, AreToTheGramWhereHoneyIsKeptLikeMoney) {
    EXPECT_EQ(massToTheGram(Mass::grams(13'847)), QStringLiteral("13.847 kg"));
    EXPECT_EQ(massToTheGram(Mass::grams(1'000)), QStringLiteral("1.000 kg"));
    EXPECT_EQ(massToTheGram(Mass::grams(999)), QStringLiteral("999 g"));
    EXPECT_EQ(massToTheGram(Mass::grams(-253)), QStringLiteral("-253 g"));
    const UnitsWhile us(Units::UsCustomary);
    // 13,847 / 453.59237 = 30.527 lb; 253 / 28.349523 = 8.924 oz.
    EXPECT_EQ(massToTheGram(Mass::grams(13'847)), QStringLiteral("30.53 lb"));
    EXPECT_EQ(massToTheGram(Mass::grams(253)), QStringLiteral("8.9 oz"));
}

}  // namespace
}  // namespace combwright
