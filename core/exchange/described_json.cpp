#include "core/exchange/described_json.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <algorithm>
#include <cmath>

namespace combwright {
namespace {

QString qText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QJsonObject objectOf(const std::string& text) {
    return QJsonDocument::fromJson(QByteArray::fromStdString(text)).object();
}

std::string compactText(const QJsonObject& object) {
    return QJsonDocument(object).toJson(QJsonDocument::Compact).toStdString();
}

Refusal wrongType(const FieldInfo& field, const char* wanted) {
    return {Code::WrongType, field.key(), {{"wanted", wanted}}};
}

/// A number in quotes is text; one with a comma may be meant with a point, and is asked about.
Refusal noNumber(const FieldInfo& field, const QJsonValue& json) {
    Refusal refusal = wrongType(field, "number");
    const QString text = json.toString().trimmed();
    if (text.isEmpty()) return refusal;
    refusal.values.emplace_back("value", text.toStdString());
    bool isNumber = false;
    const QString pointed = QString(text).replace(QLatin1Char(','), QLatin1Char('.'));
    pointed.toDouble(&isNumber);
    if (isNumber) refusal.values.emplace_back("meant", pointed.toStdString());
    return refusal;
}

/// Whether millimetres are sixty-fourths of an inch, as a rule in inches shows them: 69.85 is 2¾.
/// Those are kept to the tenth they come nearest, as where they are typed with their unit.
bool isOfInchRule(double millimetres) {
    constexpr double millimetresPerPart = 25.4 / 64.0;
    const double parts = millimetres / millimetresPerPart;
    return std::abs(parts - std::round(parts)) < 1e-6 * std::max(1.0, std::abs(parts));
}

Result<Value> numberFromJson(const FieldInfo& field, const QJsonValue& json) {
    if (!json.isDouble()) return noNumber(field, json);
    const int decimals = spelling(field.kind).decimals;
    const double scaled = json.toDouble() * std::pow(10.0, decimals);
    const double rounded = std::round(scaled);
    if (!std::isfinite(scaled) || std::abs(rounded) > 9e15)
        return Refusal{Code::OutOfRange, field.key(), {}};
    // A value finer than the file keeps is refused, but 17.2 · 100 need not be exact in binary.
    if (std::abs(scaled - rounded) > 1e-6 * std::max(1.0, std::abs(scaled)) &&
        !(field.kind == Kind::Length && isOfInchRule(json.toDouble())))
        return Refusal{Code::WrongType,
                       field.key(),
                       {{"wanted", decimals == 0 ? "whole number" : "fewer decimals"},
                        {"decimals", std::to_string(decimals)}}};
    return Value{static_cast<std::int64_t>(rounded)};
}

Result<Value> textFromJson(const FieldInfo& field, const QJsonValue& json) {
    if (!json.isString()) return wrongType(field, "text");
    return Value{json.toString().toStdString()};
}

std::string allChoices(const FieldInfo& field) {
    std::string all;
    for (const std::string_view choice : field.choices)
        all += (all.empty() ? "" : ", ") + std::string(choice);
    return all;
}

/// Says why a codec would not take a value of the right JSON type.
Refusal whyRefused(const FieldInfo& field, const Value& value) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
        if (*number < 0) return {Code::Negative, field.key(), {}};
        Refusal refusal{Code::OutOfRange, field.key(), {{"value", std::to_string(*number)}}};
        if (field.kind == Kind::Percent) {
            refusal.values.emplace_back("low", "0");
            refusal.values.emplace_back("high", "100");
        }
        return refusal;
    }
    const auto* text = std::get_if<std::string>(&value);
    if (!text) return {Code::Missing, field.key(), {}};
    switch (field.kind) {
        case Kind::Choice:
            return {
                Code::NotAChoice, field.key(), {{"value", *text}, {"choices", allChoices(field)}}};
        case Kind::Day:
        case Kind::Instant:
            return {Code::NotADay, field.key(), {{"value", *text}}};
        default:
            return text->empty() ? Refusal{Code::Missing, field.key(), {}}
                                 : Refusal{Code::WrongType, field.key(), {{"wanted", "text"}}};
    }
}

/// Whether a struct's member would take the value, tried on nothing but the codec.
bool fits(const FieldInfo& field, const Value& value) {
    switch (field.kind) {
        case Kind::Choice: {
            const auto* text = std::get_if<std::string>(&value);
            for (const std::string_view choice : field.choices)
                if (text && choice == *text) return true;
            return false;
        }
        case Kind::Day:
            return Codec<Day>::unpack(value).has_value();
        case Kind::Instant:
            return Codec<Instant>::unpack(value).has_value();
        case Kind::Text:
            return field.optional ? Codec<std::string>::unpack(value).has_value()
                                  : Codec<Name>::unpack(value).has_value();
        case Kind::Count:
            return Codec<Count>::unpack(value).has_value();
        case Kind::Number:
            return Codec<Number>::unpack(value).has_value();
        case Kind::Frames:
            return Codec<Frames>::unpack(value).has_value();
        case Kind::Mass:
            return Codec<Mass>::unpack(value).has_value();
        case Kind::Length:
            return Codec<Length>::unpack(value).has_value();
        case Kind::Share:
            return Codec<Share>::unpack(value).has_value();
        case Kind::Percent:
            return Codec<WaterContent>::unpack(value).has_value();
        case Kind::Temperature:
            return Codec<Temperature>::unpack(value).has_value();
        case Kind::Minutes:
            return Codec<Minutes>::unpack(value).has_value();
        case Kind::Money:
            return Codec<Money>::unpack(value).has_value();
        case Kind::Flag:
            return Codec<bool>::unpack(value).has_value();
        case Kind::Changes:
            return Codec<Changes>::unpack(value).has_value();
        case Kind::Id:
        case Kind::Reference: {
            const auto* number = std::get_if<std::int64_t>(&value);
            return number && *number > 0;
        }
    }
    return false;
}

Result<Value> parsed(const FieldInfo& field, const QJsonValue& json) {
    switch (field.kind) {
        case Kind::Flag:
            if (!json.isBool()) return wrongType(field, "true or false");
            return Value{std::int64_t{json.toBool()}};
        case Kind::Id:
        case Kind::Reference: {
            bool isNumber = false;
            const QString text = json.toString();
            const qlonglong id = text.mid(1).toLongLong(&isNumber);
            if (!text.startsWith(QLatin1Char('#')) || !isNumber)
                return wrongType(field, "name or #number");
            return Value{static_cast<std::int64_t>(id)};
        }
        case Kind::Changes:
            if (!json.isObject()) return wrongType(field, "object with the fields to change");
            if (json.toObject().isEmpty()) return Refusal{Code::Missing, field.key(), {}};
            return Value{compactText(json.toObject())};
        default:
            return spelling(field.kind).isText ? textFromJson(field, json)
                                               : numberFromJson(field, json);
    }
}

bool isNothing(const Value& value) { return std::holds_alternative<std::monostate>(value); }

/// Makes one reading of its three columns, the first of which is `at`: a new figure takes the old
/// range with it, no figure leaves nothing known unless "how" says so, and how it is known stays
/// as it was where there was a figure and nobody says otherwise.
Result<void> settleReading(const Fields& fields, const Row& present, Row& row, std::size_t at,
                           const QJsonObject& set) {
    const auto given = [&](std::size_t i) {
        return set.contains(QString::fromStdString(fields[i].key()));
    };
    const auto against = [&](std::size_t i) {
        return Refusal{Code::Contradiction, fields[i].key(), {{"other", fields[at].key()}}};
    };
    const std::size_t to = at + 1;
    const std::size_t how = at + 2;
    if (!given(at) && !given(to) && !given(how)) return {};
    if (given(at) && !given(to)) row[to] = {};
    if (isNothing(row[at])) {
        if (!isNothing(row[to])) return against(to);
        if (given(at) && !given(how)) row[how] = {};
        return {};
    }
    if (!isNothing(row[to]) && std::get<std::int64_t>(row[to]) < std::get<std::int64_t>(row[at]))
        return against(to);
    if (given(how)) {
        if (isNothing(row[how])) return Refusal{Code::Missing, fields[how].key(), {}};
        return {};
    }
    const bool newRange = !isNothing(row[to]) && isNothing(present[to]);
    if (newRange)
        row[how] = Codec<How>::pack(How::ByEye);
    else if (isNothing(present[at]))
        row[how] = Codec<How>::pack(isNothing(row[to]) ? usualHow(fields[at].kind) : How::ByEye);
    return {};
}

}  // namespace

QJsonValue toJson(const FieldInfo& field, const Value& value) {
    if (const auto* text = std::get_if<std::string>(&value))
        return field.kind == Kind::Changes ? QJsonValue(objectOf(*text)) : qText(*text);
    const auto* number = std::get_if<std::int64_t>(&value);
    if (!number) return QJsonValue::Null;
    switch (field.kind) {
        case Kind::Flag:
            return *number != 0;
        case Kind::Id:
        case Kind::Reference:
            return QStringLiteral("#%1").arg(*number);
        default:
            break;
    }
    const int decimals = spelling(field.kind).decimals;
    if (decimals == 0) return static_cast<qint64>(*number);
    return static_cast<double>(*number) / std::pow(10.0, decimals);
}

Result<Value> fromJson(const FieldInfo& field, const QJsonValue& json) {
    if (json.isNull() || json.isUndefined()) {
        if (field.optional) return Value{};
        return Refusal{Code::Missing, field.key(), {}};
    }
    auto value = parsed(field, json);
    if (value && !fits(field, *value)) return whyRefused(field, *value);
    return value;
}

How usualHow(Kind kind) {
    switch (kind) {
        case Kind::Mass:
            return How::Weighed;
        case Kind::Share:
            return How::ByEye;
        default:
            return How::Counted;
    }
}

Result<Row> readRow(const Fields& fields, const QJsonObject& object, const QStringList& others,
                    const Resolve& resolve) {
    for (const QString& key : object.keys())
        if (!others.contains(key) && !fields.findKey(key.toStdString()))
            return Refusal{Code::UnknownKey, key.toStdString(), {}};
    Row row;
    row.reserve(fields.size());
    for (const FieldInfo& field : fields) {
        QJsonValue json = object.value(QString::fromStdString(field.key()));
        if (field.kind == Kind::Reference && !json.isNull() && !json.isUndefined()) {
            const auto id = resolve(field, json);
            if (!id) return id.error();
            json = QStringLiteral("#%1").arg(*id);
        }
        auto value = fromJson(field, json);
        if (!value) return value.error();
        // A range the wrong way round, or without its lower end, is no reading.
        if (field.part == ReadingPart::To && !isNothing(*value) &&
            (isNothing(row.back()) ||
             std::get<std::int64_t>(*value) < std::get<std::int64_t>(row.back())))
            return Refusal{
                Code::Contradiction, field.key(), {{"other", fields[row.size() - 1].key()}}};
        // "brood_frames": 7 alone means counted; the reading's three values stand side by side.
        if (field.part == ReadingPart::How && std::holds_alternative<std::monostate>(*value) &&
            !std::holds_alternative<std::monostate>(row[row.size() - 2])) {
            const bool range = !std::holds_alternative<std::monostate>(row.back());
            const How how = range ? How::ByEye : usualHow(fields[row.size() - 1].kind);
            value = Codec<How>::pack(how);
        }
        row.push_back(*std::move(value));
    }
    return row;
}

Result<Row> changedRow(const Fields& fields, const Row& present, const Changes& changes) {
    const QJsonObject set = objectOf(changes.json);
    for (const QString& key : set.keys()) {
        const FieldInfo* field = fields.findKey(key.toStdString());
        if (!field || field->kind == Kind::Id)
            return Refusal{Code::UnknownKey, key.toStdString(), {}};
    }
    Row row = present;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const QString key = QString::fromStdString(fields[i].key());
        if (!set.contains(key)) continue;
        auto value = fromJson(fields[i], set.value(key));
        if (!value) return value.error();
        row[i] = *std::move(value);
    }
    for (std::size_t i = 0; i < fields.size(); ++i)
        if (fields[i].part == ReadingPart::Value)
            if (auto whole = settleReading(fields, present, row, i, set); !whole)
                return whole.error();
    return row;
}

Changes changesBetween(const Fields& fields, const Row& before, const Row& after) {
    QJsonObject set;
    const auto take = [&](std::size_t i) {
        set.insert(QString::fromStdString(fields[i].key()), toJson(fields[i], after[i]));
    };
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (before[i] == after[i] || fields[i].kind == Kind::Id) continue;
        if (fields[i].part == ReadingPart::Whole) {
            take(i);
            continue;
        }
        const std::size_t first = fields[i].part == ReadingPart::Value ? i
                                  : fields[i].part == ReadingPart::To  ? i - 1
                                                                       : i - 2;
        for (std::size_t part = first; part < first + 3; ++part) take(part);
    }
    return Changes{set.isEmpty() ? std::string() : compactText(set)};
}

std::string jsonLine(const std::vector<std::pair<std::string, QJsonValue>>& pairs) {
    const auto scalar = [](const QJsonValue& value) {
        QByteArray text = QJsonDocument(QJsonArray{value}).toJson(QJsonDocument::Compact);
        return text.mid(1, text.size() - 2).toStdString();
    };
    std::string line;
    for (const auto& [key, value] : pairs)
        line += (line.empty() ? "{" : ",") + scalar(qText(key)) + ":" + scalar(value);
    return line.empty() ? "{}" : line + "}";
}

}  // namespace combwright
