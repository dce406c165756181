#include "core/exchange/compute/object_reader.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace combwright {
namespace {

QString keyText(std::string_view key) {
    return QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()));
}

/// A limit as a person would write it: no trailing zeros.
std::string limitText(double limit) { return QString::number(limit, 'g', 12).toStdString(); }

}  // namespace

struct ObjectReader::Node {
    QJsonObject object;
    std::string path;
    std::set<std::string, std::less<>> asked;
};

struct ObjectReader::Shared {
    std::optional<Refusal> first;
    std::vector<std::shared_ptr<Node>> nodes;
};

ObjectReader::ObjectReader(const QJsonObject& object)
    : ObjectReader(std::make_shared<Shared>(), object, {}) {}

ObjectReader::ObjectReader(std::shared_ptr<Shared> shared, const QJsonObject& object,
                           std::string path)
    : m_shared(std::move(shared)),
      m_node(std::make_shared<Node>(Node{object, std::move(path), {}})) {
    m_shared->nodes.push_back(m_node);
}

std::string ObjectReader::path(std::string_view key) const {
    return m_node->path.empty() ? std::string(key) : m_node->path + "." + std::string(key);
}

void ObjectReader::refuse(Code code, std::string_view key,
                          std::vector<std::pair<std::string, std::string>> values) {
    if (!m_shared->first) m_shared->first = Refusal{code, path(key), std::move(values)};
}

bool ObjectReader::has(std::string_view key) const {
    const QJsonValue value = m_node->object.value(keyText(key));
    return !value.isUndefined() && !value.isNull();
}

std::optional<QJsonValue> ObjectReader::take(std::string_view key, bool required) {
    m_node->asked.emplace(key);
    if (has(key)) return m_node->object.value(keyText(key));
    if (required) refuse(Code::Missing, key);
    return std::nullopt;
}

QJsonValue ObjectReader::raw(std::string_view key) {
    return take(key, false).value_or(QJsonValue(QJsonValue::Undefined));
}

std::optional<double> ObjectReader::optionalNumber(std::string_view key, Range range) {
    const auto value = take(key, false);
    if (!value) return std::nullopt;
    if (!value->isDouble()) {
        refuse(Code::WrongType, key, {{"wanted", "number"}});
        return std::nullopt;
    }
    const double number = value->toDouble();
    if (number < range.low || number > range.high || !std::isfinite(number)) {
        const bool negative = number < 0 && range.low == 0;
        refuse(negative ? Code::Negative : Code::OutOfRange, key,
               {{"value", limitText(number)},
                {"low", limitText(range.low)},
                {"high", limitText(range.high)}});
        return std::nullopt;
    }
    return number;
}

double ObjectReader::number(std::string_view key, Range range) {
    take(key, true);
    // A stand-in inside the range keeps the computation that follows from tripping.
    return optionalNumber(key, range).value_or(std::isfinite(range.low) ? range.low : 0.0);
}

std::optional<std::int64_t> ObjectReader::optionalCount(std::string_view key, Range range) {
    const auto number = optionalNumber(key, range);
    if (!number) return std::nullopt;
    if (*number != std::floor(*number) || std::abs(*number) > 9e15) {
        refuse(Code::WrongType, key, {{"wanted", "whole number"}});
        return std::nullopt;
    }
    return static_cast<std::int64_t>(*number);
}

std::int64_t ObjectReader::count(std::string_view key, Range range) {
    take(key, true);
    return optionalCount(key, range)
        .value_or(std::isfinite(range.low) ? static_cast<std::int64_t>(range.low) : 0);
}

std::optional<std::string> ObjectReader::optionalText(std::string_view key) {
    const auto value = take(key, false);
    if (!value) return std::nullopt;
    if (!value->isString()) {
        refuse(Code::WrongType, key, {{"wanted", "text"}});
        return std::nullopt;
    }
    return value->toString().toStdString();
}

std::string ObjectReader::text(std::string_view key) {
    take(key, true);
    return optionalText(key).value_or(std::string());
}

std::string ObjectReader::choice(std::string_view key, const std::vector<std::string>& choices) {
    const std::string given = text(key);
    if (std::find(choices.begin(), choices.end(), given) != choices.end()) return given;
    std::string all;
    for (const std::string& each : choices) all += (all.empty() ? "" : ", ") + each;
    refuse(Code::NotAChoice, key, {{"value", given}, {"choices", all}});
    return choices.front();
}

std::optional<bool> ObjectReader::optionalFlag(std::string_view key) {
    const auto value = take(key, false);
    if (!value) return std::nullopt;
    if (!value->isBool()) {
        refuse(Code::WrongType, key, {{"wanted", "true or false"}});
        return std::nullopt;
    }
    return value->toBool();
}

bool ObjectReader::flag(std::string_view key) {
    take(key, true);
    return optionalFlag(key).value_or(false);
}

std::optional<Day> ObjectReader::optionalDay(std::string_view key) {
    const auto given = optionalText(key);
    if (!given) return std::nullopt;
    const auto day = parseDay(*given);
    if (!day) refuse(Code::NotADay, key, {{"value", *given}});
    return day;
}

Day ObjectReader::day(std::string_view key) {
    take(key, true);
    return optionalDay(key).value_or(Day{});
}

std::vector<ObjectReader> ObjectReader::objects(std::string_view key) {
    std::vector<ObjectReader> readers;
    const auto value = take(key, true);
    if (!value) return readers;
    if (!value->isArray()) {
        refuse(Code::WrongType, key, {{"wanted", "list"}});
        return readers;
    }
    const auto list = value->toArray();
    for (qsizetype i = 0; i < list.size(); ++i) {
        const std::string place = std::string(key) + "[" + std::to_string(i) + "]";
        if (!list[i].isObject()) {
            refuse(Code::WrongType, place, {{"wanted", "object"}});
            continue;
        }
        readers.push_back(ObjectReader(m_shared, list[i].toObject(), path(place)));
    }
    return readers;
}

std::vector<double> ObjectReader::numbers(std::string_view key) {
    std::vector<double> numbers;
    const auto value = take(key, true);
    if (!value) return numbers;
    if (!value->isArray()) {
        refuse(Code::WrongType, key, {{"wanted", "list"}});
        return numbers;
    }
    const auto list = value->toArray();
    for (qsizetype i = 0; i < list.size(); ++i) {
        if (!list[i].isDouble() || !std::isfinite(list[i].toDouble()))
            refuse(Code::WrongType, std::string(key) + "[" + std::to_string(i) + "]",
                   {{"wanted", "number"}});
        else
            numbers.push_back(list[i].toDouble());
    }
    return numbers;
}

std::optional<ObjectReader> ObjectReader::optionalObject(std::string_view key) {
    const auto value = take(key, false);
    if (!value) return std::nullopt;
    if (!value->isObject()) {
        refuse(Code::WrongType, key, {{"wanted", "object"}});
        return std::nullopt;
    }
    return ObjectReader(m_shared, value->toObject(), path(key));
}

ObjectReader ObjectReader::object(std::string_view key) {
    take(key, true);
    if (auto reader = optionalObject(key)) return *reader;
    return ObjectReader(m_shared, QJsonObject(), path(key));
}

std::vector<std::pair<std::string, double>> ObjectReader::numbersByName(std::string_view key,
                                                                        Range range) {
    std::vector<std::pair<std::string, double>> numbers;
    ObjectReader inner = object(key);
    const QStringList names = inner.m_node->object.keys();
    for (const QString& name : names) {
        const std::string text = name.toStdString();
        numbers.emplace_back(text, inner.number(text, range));
    }
    return numbers;
}

Result<void> ObjectReader::finish() {
    if (m_shared->first) return *m_shared->first;
    for (const auto& node : m_shared->nodes) {
        const QStringList keys = node->object.keys();
        for (const QString& name : keys) {
            const std::string key = name.toStdString();
            if (node->asked.contains(key)) continue;
            return Refusal{Code::UnknownKey, node->path.empty() ? key : node->path + "." + key, {}};
        }
    }
    return {};
}

}  // namespace combwright
