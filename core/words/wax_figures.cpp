#include "core/words/wax_figures.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {

QString waxText(double grams) { return waxFigure(grams) + QLatin1Char(' ') + massUnit(); }

QString waxFigure(double grams) {
    // A tie goes up in grams: 45 g are half of a hundredth over 0.04 kg, and no binary figure
    // knows.
    const bool pounds = shownUnits() == Units::UsCustomary;
    return massRateFigure(pounds ? grams : std::round(grams / 10.0) * 10.0);
}

std::int64_t waxFineSteps(double grams) { return std::llround(inMassUnits(grams) * 1000.0); }

QString waxFineFigure(std::int64_t steps) {
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale.toString(static_cast<double>(steps) / 1000.0, 'f', 3);
}

double portionShownG(double grams) {
    constexpr double tenthOfOunceG = 453.59237 / 160.0;
    const double step = shownUnits() == Units::UsCustomary ? tenthOfOunceG : 1.0;
    return std::round(grams / step) * step;
}

QString wickText(double metres) {
    constexpr double metresPerInch = 0.0254;
    return shownUnits() == Units::UsCustomary
               ? QLocale().toString(metres / metresPerInch, 'f', 0) + QStringLiteral(" in")
               : QLocale().toString(metres, 'f', 1) + QStringLiteral(" m");
}

QString waxText(Mass mass) { return waxText(static_cast<double>(mass.grams())); }

QString shadeText(WaxShade shade) {
    // Not the words of a weight: light wax is not light in weight.
    static constexpr std::array shades{QT_TRANSLATE_NOOP("wax_shades", "light"),
                                       QT_TRANSLATE_NOOP("wax_shades", "mid"),
                                       QT_TRANSLATE_NOOP("wax_shades", "dark")};
    return QCoreApplication::translate("wax_shades", shades[static_cast<std::size_t>(shade)]);
}

QString shadeText(const std::string& shade) {
    const auto& known = Choices<WaxShade>::words;
    const auto at = std::find(known.begin(), known.end(), shade);
    if (at != known.end()) return shadeText(static_cast<WaxShade>(at - known.begin()));
    return shade.empty() ? QCoreApplication::translate("words", "any shade") : word(shade);
}

}  // namespace combwright
