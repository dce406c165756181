#include "core/words/figures.h"

#include <QLocale>
#include <QRegularExpression>
#include <cmath>

namespace combwright {

std::optional<double> typedNumber(const QString& text) {
    static const QRegularExpression shape(QStringLiteral("^\\d{1,9}(?:[.,]\\d{1,6})?$"));
    static const QRegularExpression ambiguous(QStringLiteral("^[1-9]\\d{0,2}[.,]\\d{3}$"));
    const QString trimmed = text.trimmed();
    if (!shape.match(trimmed).hasMatch() || ambiguous.match(trimmed).hasMatch())
        return std::nullopt;
    return QLocale::c().toDouble(QString(trimmed).replace(QLatin1Char(','), QLatin1Char('.')));
}

QString kilogramsText(double grams, How how) {
    const bool fine = how == How::Weighed || how == How::ByDifference;
    const double steps = std::nearbyint(grams / (fine ? 100.0 : 1000.0));
    return QLocale().toString(fine ? steps / 10.0 : steps, 'f', fine ? 1 : 0);
}

}  // namespace combwright
