#include "core/words/money_words.h"

#include <QLocale>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {

QString moneyFigure(Money money) {
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale.toString(money.whole(), 'f', 2);
}

std::optional<Money> typedMoney(const QString& text) {
    constexpr double most = 1e6;
    const auto number = typedNumber(text);
    if (!number || *number < 0 || *number > most) return std::nullopt;
    const double hundredths = *number * 100.0;
    if (std::abs(hundredths - std::round(hundredths)) > 1e-6) return std::nullopt;
    return Money::hundredths(std::llround(hundredths));
}

QString moneyText(Money money, std::string_view currency) {
    const QString figure = moneyFigure(money);
    return currency.empty() ? figure : figure + QLatin1Char(' ') + fromUtf8(currency);
}

}  // namespace combwright
