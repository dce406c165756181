#include "core/words/day_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <QString>

#include "core/words/words.h"

namespace combwright {
namespace {

/// 1 to 12 for a month's name or its beginning, in the person's language or in English.
std::optional<unsigned> monthNamed(const QString& text) {
    if (text.size() < 3) return std::nullopt;
    for (const QLocale& locale : {QLocale(), QLocale::c()})
        for (int month = 1; month <= 12; ++month)
            if (locale.monthName(month, QLocale::LongFormat).toLower().startsWith(text) ||
                locale.monthName(month, QLocale::ShortFormat).toLower() == text)
                return static_cast<unsigned>(month);
    return std::nullopt;
}

std::optional<Day> weekdayBefore(const QString& text, Day today) {
    if (text.size() < 2) return std::nullopt;
    const unsigned now = std::chrono::weekday(today).iso_encoding();
    for (const QLocale& locale : {QLocale(), QLocale::c()})
        for (int each = 1; each <= 7; ++each)
            if (locale.dayName(each, QLocale::LongFormat).toLower().startsWith(text))
                return today - days((now + 7 - static_cast<unsigned>(each)) % 7);
    return std::nullopt;
}

/// How many days back "3 days ago" is, in the person's language or in English.
std::optional<int> daysAgo(const QString& text) {
    struct Ago {
        const char* said;
        int days;
    };
    static constexpr Ago counted[] = {{QT_TRANSLATE_NOOP("days", "%1 days ago"), 1},
                                      {QT_TRANSLATE_NOOP("days", "%1 weeks ago"), 7}};
    static constexpr Ago single[] = {{QT_TRANSLATE_NOOP("days", "day before yesterday"), 2},
                                     {QT_TRANSLATE_NOOP("days", "a day ago"), 1},
                                     {QT_TRANSLATE_NOOP("days", "1 day ago"), 1},
                                     {QT_TRANSLATE_NOOP("days", "a week ago"), 7},
                                     {QT_TRANSLATE_NOOP("days", "1 week ago"), 7}};
    const auto spoken = [](const char* said) {
        return QStringList{QCoreApplication::translate("days", said).toLower(),
                           QString::fromLatin1(said)};
    };
    for (const Ago& each : single)
        if (spoken(each.said).contains(text)) return each.days;
    for (const Ago& each : counted)
        for (const QString& said : spoken(each.said)) {
            const QStringList around = said.split(QStringLiteral("%1"));
            if (around.size() != 2 || !text.startsWith(around[0]) || !text.endsWith(around[1]))
                continue;
            bool isNumber = false;
            const int many =
                QStringView(text)
                    .mid(around[0].size(), text.size() - around[0].size() - around[1].size())
                    .toInt(&isNumber);
            if (isNumber && many >= 0 && many < 1000) return many * each.days;
        }
    return std::nullopt;
}

/// The year in which a day and month most likely lie: the last that was, or just ahead.
std::optional<Day> nearYear(unsigned month, unsigned dayOfMonthGiven, Day today) {
    for (int year = yearOf(today) + 1; year >= yearOf(today) - 8; --year)
        if (const auto day = makeDay(year, month, dayOfMonthGiven); day && *day <= today + days(31))
            return day;
    return std::nullopt;
}

/// In the year given, or else the likeliest.
std::optional<Day> dayOf(unsigned month, unsigned dayOfMonthGiven, const QString& year, Day today) {
    if (!year.isEmpty()) return makeDay(year.toInt(), month, dayOfMonthGiven);
    return nearYear(month, dayOfMonthGiven, today);
}

/// "9.6.", "9 6 2027", "6/15".
struct NumberedDay {
    unsigned first = 0;
    unsigned second = 0;
    QString year;
    bool slashed = false;
};
std::optional<NumberedDay> numberedDay(const QString& text) {
    static const QRegularExpression numbers(
        QStringLiteral("^(\\d{1,2})([./ ])(\\d{1,2})\\.?(?:[./ ]?(\\d{4}))?$"));
    const auto match = numbers.match(text);
    if (!match.hasMatch()) return std::nullopt;
    return NumberedDay{match.captured(1).toUInt(), match.captured(3).toUInt(), match.captured(4),
                       match.captured(2) == QLatin1String("/")};
}

/// With a slash some write the day first and some the month.
bool isEitherWay(const NumberedDay& day) {
    return day.slashed && day.first != day.second && day.first >= 1 && day.second >= 1 &&
           day.first <= 12 && day.second <= 12;
}

}  // namespace

std::optional<Day> dayInWords(std::string_view given, Day today) {
    if (const auto iso = parseDay(given)) return iso;
    QString text = fromUtf8(given).trimmed().toLower();
    // In English too, whatever is spoken: lists that are played and old habits are.
    const auto is = [&text](const char* word) {
        return text == QLatin1String(word) ||
               text == QCoreApplication::translate("days", word).toLower();
    };
    if (text.isEmpty() || is("today")) return today;
    if (is("yesterday")) return today - days(1);
    if (const auto back = daysAgo(text)) return today - days(*back);
    static const QRegularExpression ago(QStringLiteral("^-(\\d{1,3})$"));
    if (const auto match = ago.match(text); match.hasMatch())
        return today - days(match.captured(1).toInt());
    if (const auto numbers = numberedDay(text)) {
        if (isEitherWay(*numbers)) return std::nullopt;
        const bool monthFirst = numbers->slashed && numbers->second > 12;
        return dayOf(monthFirst ? numbers->first : numbers->second,
                     monthFirst ? numbers->second : numbers->first, numbers->year, today);
    }
    static const QRegularExpression named(
        QStringLiteral("^(?:\\w{2,3}\\.?,? )?(?:(\\d{1,2})\\.? (\\w{3,})\\.?|(\\w{3,})\\.? "
                       "(\\d{1,2})(?:st|nd|rd|th)?)(?:,? (\\d{4}))?$"),
        QRegularExpression::UseUnicodePropertiesOption);
    if (const auto match = named.match(text); match.hasMatch()) {
        const bool monthFirst = match.captured(1).isEmpty();
        const auto month = monthNamed(match.captured(monthFirst ? 3 : 2));
        if (!month) return std::nullopt;
        return dayOf(*month, match.captured(monthFirst ? 4 : 1).toUInt(), match.captured(5), today);
    }
    return weekdayBefore(text.endsWith(QLatin1Char('.')) ? text.chopped(1) : text, today);
}

bool mayBeTwoDays(const QString& typed) {
    const auto numbers = numberedDay(typed.trimmed());
    return numbers && isEitherWay(*numbers);
}

QString noDayText(const QString& typed) {
    const QString text = typed.trimmed();
    if (text.startsWith(QLatin1Char('~')))
        return QCoreApplication::translate(
                   "days",
                   "%1: it is kept under one day, which cannot be about. Write %2, and in the note "
                   "that it was about then.")
            .arg(text, text.mid(1).trimmed());
    if (mayBeTwoDays(text)) {
        const auto numbers = numberedDay(text);
        const auto said = [](unsigned month, unsigned dayOfMonthGiven) {
            return dayAndMonth(*makeDay(2000, month, dayOfMonthGiven));
        };
        return QCoreApplication::translate("days", "%1 may be %2 or %3. Write the month by name.")
            .arg(text, said(numbers->second, numbers->first),
                 said(numbers->first, numbers->second));
    }
    return QCoreApplication::translate(
               "days", "%1 is no day. Write today, yesterday, sat, 9 jun or 2027-06-09.")
        .arg(text);
}

}  // namespace combwright
