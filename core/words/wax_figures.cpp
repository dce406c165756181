#include "core/words/wax_figures.h"

#include <QCoreApplication>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {

QString waxText(double grams) { return massRateFigure(grams) + QLatin1Char(' ') + massUnit(); }

QString waxText(Mass mass) { return waxText(static_cast<double>(mass.grams())); }

QString shadeText(WaxShade shade) { return word(word(shade)); }

QString shadeText(const std::string& shade) {
    return shade.empty() ? QCoreApplication::translate("words", "any shade") : word(shade);
}

}  // namespace combwright
