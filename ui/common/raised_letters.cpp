#include "ui/common/raised_letters.h"

#include <QRegularExpression>

namespace combwright {

QString withRaisedLetters(const QString& plain) {
    static const QRegularExpression how(QStringLiteral("(kg|lb)\\s([wcedab?])(?![a-z])"));
    return plain.toHtmlEscaped()
        .replace(how, QStringLiteral("\\1<sup>\\2</sup>"))
        .replace(QLatin1Char('\n'), QLatin1String("<br>"));
}

}  // namespace combwright
