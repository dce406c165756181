// Numbers in and out, in the units the person chose: as a person types them, with point or comma,
// and never with a separator between thousands, because "1.240" means two things.
#pragma once

#include <QString>
#include <optional>

#include "core/units/known.h"
#include "core/units/length.h"
#include "core/units/mass.h"
#include "core/units/temperature.h"

namespace combwright {

/// The number typed: digits with at most one point or comma. Nothing for anything else, nor for a
/// number that could be read in two ways: exactly three digits behind a single point or comma after
/// one to three.
std::optional<double> typedNumber(const QString& text);

/// The mass typed, to the nearest gram: a number in kilograms or pounds as shown, or with its unit
/// behind it ("21.4 kg", "850 g", "47 lb", "47 lb 3 oz", "16 oz"). Nothing where that is no mass.
std::optional<Mass> typedMass(const QString& text);

/// The temperature typed, below zero too: degrees as shown, or with their letter behind them
/// ("-18", "−18 °C", "0 F"). Nothing where that is none.
std::optional<Temperature> typedTemperature(const QString& text);
/// The length typed, more than nothing: millimetres or inches as shown, or with their unit behind
/// them ("159", "22.5 cm", "5 m", "6.26 in", "2 3/4 in"). Nothing where that is none.
std::optional<Length> typedLength(const QString& text);

/// A figure and the unit it is in.
struct ShownFigure {
    QString figure;
    QString unit;
    QString text() const { return unit.isEmpty() ? figure : figure + QLatin1Char(' ') + unit; }
};

/// "kg" or "lb".
QString massUnit();
/// Grams in kilograms or pounds. 1 lb is 453.59237 g exactly (international pound, 1959; NIST
/// Handbook 44, Appendix C).
double inMassUnits(double grams);
double gramsOfMassUnits(double shown);

/// A mass as a figure without its unit: with one decimal where it was weighed or is what others
/// leave of a weighed sum, whole otherwise. A tie goes to the even digit, so that a share that was
/// rounded to whole grams is not rounded up a second time.
QString massFigure(double grams, How how);
/// The same with its unit: "27.5 kg", "61 lb".
QString massText(double grams, How how);
/// In a sentence: "27.5 kg, weighed"; a letter that is not raised says nothing there.
QString massInWords(double grams, How how);
/// With the letter of how it is known: "27.5 kg w".
QString massKnown(double grams, How how);
/// With two decimals, for rates: 1.64 kg a frame, 3.62 lb a frame.
QString massRateFigure(double grams);
/// A mass to the gram, for honey that is kept like money: "13.847 kg", under a kilogram "253 g"; in
/// pounds to a hundredth, under one in ounces.
QString massToTheGram(Mass mass);
/// A recorded mass as it would be typed again, with all the digits it has: "21.4", "47.18".
QString massTyped(Mass mass);
/// The same as it is told: no finer than the gram it was kept to, three decimals of a kilogram and
/// two of a pound.
QString massTold(Mass mass);

/// What goes into a jar: "454 g" or "16.0 oz" (avoirdupois).
ShownFigure shownPortion(double grams);
/// Degrees: "21.5 °C" or "70.7 °F".
ShownFigure shownTemperature(double celsius);
/// Millimetres or inches: "159 mm", "6.26 in".
ShownFigure shownLength(double millimetres);

/// Grams one person should lift at most; source below.
inline constexpr double liftLimitG = 23000.0;
/// The mass over which one lifts with two, about 23 kg or 50 lb; and what full boxes weigh. A
/// common limit for one good lift: the recommended weight limit of the NIOSH lifting equation is 23
/// kg (51 lb) at best.
QString liftLimitText();
/// "A full super weighs up to 25 kg, a full deep 40 kg: over 23 kg lift with two, or carry frames."
QString liftCaution();

}  // namespace combwright
