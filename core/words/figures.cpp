#include "core/words/figures.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <cmath>

#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr double gramsPerPound = 453.59237;
constexpr double gramsPerOunce = gramsPerPound / 16.0;
constexpr double millimetresPerInch = 25.4;

bool customary() { return shownUnits() == Units::UsCustomary; }

QString fixed(double number, int decimals) {
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale.toString(number, 'f', decimals);
}

/// "47 lb 3 oz": pounds as a whole number, ounces behind them.
std::optional<double> poundsAndOunces(const QString& text) {
    static const QRegularExpression shape(
        QStringLiteral("^(\\d{1,6})\\s*lb\\s+(\\d{1,2}(?:[.,]\\d{1,3})?)\\s*oz$"),
        QRegularExpression::CaseInsensitiveOption);
    const auto match = shape.match(text);
    if (!match.hasMatch()) return std::nullopt;
    const auto pounds = typedNumber(match.captured(1));
    const auto ounces = typedNumber(match.captured(2));
    if (!pounds || !ounces || *ounces >= 16.0) return std::nullopt;
    return *pounds * gramsPerPound + *ounces * gramsPerOunce;
}

/// Inches as a rule shows them: "2 3/4", "7/8", "2¾". Nothing for any other text.
std::optional<double> typedInches(QString text) {
    const struct {
        char16_t sign;
        const char* meant;
    } signs[] = {{0xBC, " 1/4"},   {0xBD, " 1/2"},   {0xBE, " 3/4"},  {0x215B, " 1/8"},
                 {0x215C, " 3/8"}, {0x215D, " 5/8"}, {0x215E, " 7/8"}};
    for (const auto& [sign, meant] : signs) text.replace(QChar(sign), QLatin1String(meant));
    static const QRegularExpression shape(
        QStringLiteral("^(?:(\\d{1,4})[ -]+)?(\\d{1,2})\\s*/\\s*(2|4|8|16|32|64)$"));
    const auto match = shape.match(text.trimmed());
    if (!match.hasMatch()) return std::nullopt;
    const double parts = match.captured(3).toDouble();
    const double over = match.captured(2).toDouble();
    if (over >= parts) return std::nullopt;
    return match.captured(1).toDouble() + over / parts;
}

std::optional<double> typedGrams(const QString& text) {
    if (const auto both = poundsAndOunces(text)) return both;
    const struct {
        QLatin1String ending;
        double grams;
    } endings[] = {{QLatin1String("kg"), 1000.0},
                   {QLatin1String("lbs"), gramsPerPound},
                   {QLatin1String("lb"), gramsPerPound},
                   {QLatin1String("oz"), gramsPerOunce},
                   {QLatin1String("g"), 1.0}};
    for (const auto& [ending, grams] : endings) {
        if (!text.endsWith(ending, Qt::CaseInsensitive)) continue;
        const auto number = typedNumber(text.chopped(ending.size()));
        return number ? std::optional(*number * grams) : std::nullopt;
    }
    const auto number = typedNumber(text);
    return number ? std::optional(gramsOfMassUnits(*number)) : std::nullopt;
}

}  // namespace

std::optional<double> typedNumber(const QString& text) {
    static const QRegularExpression shape(QStringLiteral("^\\d{1,9}(?:[.,]\\d{1,6})?$"));
    static const QRegularExpression ambiguous(QStringLiteral("^[1-9]\\d{0,2}[.,]\\d{3}$"));
    const QString trimmed = text.trimmed();
    if (!shape.match(trimmed).hasMatch() || ambiguous.match(trimmed).hasMatch())
        return std::nullopt;
    return QLocale::c().toDouble(QString(trimmed).replace(QLatin1Char(','), QLatin1Char('.')));
}

std::optional<Mass> typedMass(const QString& text) {
    const auto grams = typedGrams(text.trimmed());
    if (!grams || *grams > 1e9) return std::nullopt;
    return Mass::roundedGrams(*grams);
}

std::optional<Temperature> typedTemperature(const QString& text) {
    static const QRegularExpression shape(
        QStringLiteral("^([-\u2212]?)\\s*(\\d{1,3}(?:[.,]\\d{1,2})?)\\s*°?\\s*([CF]?)$"),
        QRegularExpression::CaseInsensitiveOption);
    const auto match = shape.match(text.trimmed());
    if (!match.hasMatch()) return std::nullopt;
    const auto number = typedNumber(match.captured(2));
    if (!number) return std::nullopt;
    const double degrees = match.captured(1).isEmpty() ? *number : -*number;
    const QString letter = match.captured(3).toUpper();
    const bool fahrenheit = letter.isEmpty() ? customary() : letter == QLatin1String("F");
    return Temperature::roundedCelsius(fahrenheit ? (degrees - 32.0) / 1.8 : degrees);
}

std::optional<Length> typedLength(const QString& text) {
    const QString typed = text.trimmed();
    const struct {
        QLatin1String ending;
        double millimetres;
        // The longer endings stand behind the one they end with.
    } endings[] = {{QLatin1String("m"), 1000.0},
                   {QLatin1String("mm"), 1.0},
                   {QLatin1String("cm"), 10.0},
                   {QLatin1String("in"), millimetresPerInch},
                   {QLatin1String("\""), millimetresPerInch}};
    double each = customary() ? millimetresPerInch : 1.0;
    QString figure = typed;
    for (const auto& [ending, millimetres] : endings)
        if (typed.endsWith(ending, Qt::CaseInsensitive)) {
            each = millimetres;
            figure = typed.chopped(ending.size()).trimmed();
        }
    auto number = typedNumber(figure);
    if (!number && each == millimetresPerInch) number = typedInches(figure);
    if (!number || *number <= 0.0 || *number > 1e6) return std::nullopt;
    return Length::roundedMm(*number * each);
}

QString massUnit() { return customary() ? QStringLiteral("lb") : QStringLiteral("kg"); }
double inMassUnits(double grams) { return grams / (customary() ? gramsPerPound : 1000.0); }
double gramsOfMassUnits(double shown) { return shown * (customary() ? gramsPerPound : 1000.0); }

QString massFigure(double grams, How how) {
    const bool fine = how == How::Weighed || how == How::ByDifference;
    // Grams are divided once: a tie in them must arrive here as a tie.
    const double steps = customary() ? std::nearbyint(inMassUnits(grams) * (fine ? 10.0 : 1.0))
                                     : std::nearbyint(grams / (fine ? 100.0 : 1000.0));
    return fixed(fine ? steps / 10.0 : steps, fine ? 1 : 0);
}

QString massText(double grams, How how) {
    return ShownFigure{massFigure(grams, how), massUnit()}.text();
}

QString massKnown(double grams, How how) {
    return massText(grams, how) + QLatin1Char(' ') + QLatin1Char(letter(how));
}

QString massInWords(double grams, How how) {
    return massText(grams, how) + QStringLiteral(", ") + howWord(how);
}

QString massRateFigure(double grams) { return fixed(inMassUnits(grams), 2); }

QString massToTheGram(Mass mass) {
    const auto grams = static_cast<double>(mass.grams());
    if (std::abs(grams) < gramsOfMassUnits(1.0)) return shownPortion(grams).text();
    return ShownFigure{fixed(inMassUnits(grams), customary() ? 2 : 3), massUnit()}.text();
}

QString massTyped(Mass mass) {
    const double shown = inMassUnits(static_cast<double>(mass.grams()));
    // The fewest decimals that are read as the same whole gram: never three, which might be
    // thousands.
    for (int decimals = 0; decimals < 4; ++decimals) {
        const QString text = fixed(shown, decimals);
        if (typedMass(text) == mass) return text;
    }
    return fixed(shown, 4);
}

QString massTold(Mass mass) {
    const QString typed = massTyped(mass);
    static const QRegularExpression pointOrComma(QStringLiteral("[.,]"));
    const auto point = typed.indexOf(pointOrComma);
    const int most = customary() ? 2 : 3;
    if (point < 0 || typed.size() - point - 1 <= most) return typed;
    return fixed(inMassUnits(static_cast<double>(mass.grams())), most);
}

ShownFigure shownPortion(double grams) {
    if (customary()) return {fixed(grams / gramsPerOunce, 1), QStringLiteral("oz")};
    return {fixed(grams, 0), QStringLiteral("g")};
}

ShownFigure shownTemperature(double celsius) {
    if (customary()) return {fixed(celsius * 9.0 / 5.0 + 32.0, 1), QStringLiteral("°F")};
    return {fixed(celsius, 1), QStringLiteral("°C")};
}

ShownFigure shownLength(double millimetres) {
    if (customary()) return {fixed(millimetres / millimetresPerInch, 2), QStringLiteral("in")};
    const bool whole = std::abs(millimetres - std::round(millimetres)) < 0.05;
    return {fixed(millimetres, whole ? 0 : 1), QStringLiteral("mm")};
}

QString liftLimitText() {
    return ShownFigure{QString::number(customary() ? 50 : 23), massUnit()}.text();
}

QString liftCaution() {
    const auto about = [](int kilograms, int pounds) {
        return ShownFigure{QString::number(customary() ? pounds : kilograms), massUnit()}.text();
    };
    return QCoreApplication::translate(
               "words",
               "A full super weighs up to %1, a full deep %2: over %3 lift with two, or carry "
               "frames.")
        .arg(about(25, 55), about(40, 90), liftLimitText());
}

}  // namespace combwright
