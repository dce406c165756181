// What nobody knows is null in JSON, never 0 and never an empty text: one way to say it, whatever
// kind of value it is.
#pragma once

#include <QJsonValue>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

#include "core/model/codec.h"
#include "core/units/count.h"
#include "core/units/day.h"
#include "core/units/mass.h"

namespace combwright {

/// An empty text says nothing.
inline QJsonValue orNull(const std::string& text) {
    return text.empty() ? QJsonValue() : QJsonValue(QString::fromStdString(text));
}
inline QJsonValue orNull(const std::optional<bool>& flag) {
    return flag ? QJsonValue(*flag) : QJsonValue();
}
inline QJsonValue orNull(const std::optional<double>& number) {
    return number ? QJsonValue(*number) : QJsonValue();
}
template <class Whole>
requires std::is_integral_v<Whole> QJsonValue orNull(const std::optional<Whole>& number) {
    return number ? QJsonValue(static_cast<qint64>(*number)) : QJsonValue();
}
inline QJsonValue orNull(const std::optional<Count>& count) {
    return count ? QJsonValue(static_cast<qint64>(count->value())) : QJsonValue();
}
/// In grams.
inline QJsonValue orNull(const std::optional<Mass>& mass) {
    return mass ? QJsonValue(static_cast<qint64>(mass->grams())) : QJsonValue();
}
/// "2027-06-09".
inline QJsonValue orNull(const std::optional<Day>& day) {
    return day ? QJsonValue(QString::fromStdString(isoText(*day))) : QJsonValue();
}
/// By its word, as the file has it.
template <class Choice>
requires std::is_enum_v<Choice> QJsonValue orNull(const std::optional<Choice>& choice) {
    if (!choice) return {};
    const std::string_view said = word(*choice);
    return QString::fromUtf8(said.data(), static_cast<qsizetype>(said.size()));
}

}  // namespace combwright
