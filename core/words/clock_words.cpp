#include "core/words/clock_words.h"

#include <QDateTime>
#include <QRegularExpression>

namespace combwright {

QString clockText(Instant moment) {
    return QDateTime::fromSecsSinceEpoch(moment.time_since_epoch().count())
        .toString(QStringLiteral("HH:mm"));
}

Day dayAt(Instant moment) {
    const QDate day = QDateTime::fromSecsSinceEpoch(moment.time_since_epoch().count()).date();
    return makeDay(day.year(), static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()))
        .value_or(std::chrono::floor<days>(moment));
}

std::optional<Instant> typedClock(const QString& text, Day on) {
    static const QRegularExpression clock(QStringLiteral("^(\\d{1,2})(?:[:.]?(\\d{2}))?$"));
    const QRegularExpressionMatch found = clock.match(text.trimmed());
    if (!found.hasMatch()) return std::nullopt;
    const QTime time(found.captured(1).toInt(), found.captured(2).toInt());
    if (!time.isValid()) return std::nullopt;
    const QDate day(yearOf(on), static_cast<int>(monthOf(on)), static_cast<int>(dayOfMonth(on)));
    return Instant(std::chrono::seconds(QDateTime(day, time).toSecsSinceEpoch()));
}

}  // namespace combwright
