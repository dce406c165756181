#include "core/words/money_words.h"

#include <QLocale>

#include "core/words/words.h"

namespace combwright {

QString moneyFigure(Money money) {
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    return locale.toString(money.whole(), 'f', 2);
}

QString moneyText(Money money, std::string_view currency) {
    const QString figure = moneyFigure(money);
    return currency.empty() ? figure : figure + QLatin1Char(' ') + fromUtf8(currency);
}

}  // namespace combwright
