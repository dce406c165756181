#include "core/words/words.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QRegularExpression>
#include <QStringList>
#include <array>
#include <map>

#include "core/words/labels.h"

namespace combwright {
namespace {

const char* labelOf(std::string_view key) {
    static const std::map<std::string_view, const char*> byKey = [] {
        std::map<std::string_view, const char*> map;
        for (const Label& label : actionLabels()) map.emplace(label.key, label.label);
        for (const Label& label : fieldLabels()) map.emplace(label.key, label.label);
        for (const Label& label : fieldLabelsFromN()) map.emplace(label.key, label.label);
        return map;
    }();
    const auto found = byKey.find(key);
    return found == byKey.end() ? nullptr : found->second;
}

QDate asDate(Day day) {
    return QDate(yearOf(day), static_cast<int>(monthOf(day)), static_cast<int>(dayOfMonth(day)));
}

}  // namespace

QString dayShown(const QDate& day, const char* pattern) {
    static const QRegularExpression stop(QStringLiteral("(?<=\\p{L})\\."),
                                         QRegularExpression::UseUnicodePropertiesOption);
    return QLocale().toString(day, QCoreApplication::translate("days", pattern)).remove(stop);
}

QString fromUtf8(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

// The phases of the year are named with the units, which know no translator.
[[maybe_unused]] constexpr const char* phaseWords[] = {
    QT_TRANSLATE_NOOP("choices", "dormant"), QT_TRANSLATE_NOOP("choices", "increase"),
    QT_TRANSLATE_NOOP("choices", "peak"), QT_TRANSLATE_NOOP("choices", "decrease")};

QString choiceText(std::string_view word) {
    return word.empty() ? QString()
                        : QCoreApplication::translate("choices", std::string(word).c_str());
}

QString tableText(const std::string& text) {
    return QCoreApplication::translate("tables", text.c_str());
}

bool hasWord(std::string_view key) { return labelOf(key) != nullptr; }

QString word(std::string_view key) {
    if (const char* label = labelOf(key)) return QCoreApplication::translate("words", label);
    return fromUtf8(key).replace(QLatin1Char('_'), QLatin1Char(' '));
}

QString dayText(Day day) { return dayShown(asDate(day), "ddd d MMM yyyy"); }
QString shortDayText(Day day) { return dayShown(asDate(day), "ddd d MMM"); }
QString shortDayText(Day day, Day asked) {
    return yearOf(day) == yearOf(asked) ? shortDayText(day) : dayText(day);
}
QString dayAndMonth(Day day) { return dayShown(asDate(day), "d MMM"); }

QString howWord(How how) {
    static constexpr std::array words{
        QT_TRANSLATE_NOOP("words", "weighed"), QT_TRANSLATE_NOOP("words", "counted"),
        QT_TRANSLATE_NOOP("words", "by eye"),  QT_TRANSLATE_NOOP("words", "by difference"),
        QT_TRANSLATE_NOOP("words", "assumed"), QT_TRANSLATE_NOOP("words", "unknown")};
    return QCoreApplication::translate("words", words[static_cast<std::size_t>(how)]);
}

QString infantCaution() {
    return QCoreApplication::translate("words", "Not for babies under 12 months.");
}

QString listed(const std::vector<std::string>& names) {
    QStringList list;
    for (const std::string& name : names) list << fromUtf8(name);
    return list.join(QStringLiteral(", "));
}

}  // namespace combwright
