#include "core/exchange/import/import_map.h"

#include <algorithm>
#include <array>

#include "core/model/yard/yard.h"
#include "core/words/words.h"

namespace combwright {
namespace {

using Words = std::vector<std::string_view>;

const Words& wordsFor(std::string_view key) {
    static const Words encodings{"utf-8", "utf-16", "windows-1252"};
    static const Words parters{",", ";", "\t", "|"};
    static const Words decimals{"point", "comma"};
    static const Words orders{"day first", "month first"};
    static const Words units{"kg", "g", "lb"};
    static const Words ofDays{"first", "last"};
    static const Words origins = [] {
        Words all(Choices<Origin>::words.begin(), Choices<Origin>::words.end());
        all.push_back("empty");
        return all;
    }();
    static const Words none;
    return key == "encoding"    ? encodings
           : key == "delimiter" ? parters
           : key == "decimal"   ? decimals
           : key == "dates"     ? orders
           : key == "unit"      ? units
           : key == "of_day"    ? ofDays
           : key == "origin"    ? origins
                                : none;
}

class MapReader {
  public:
    MapReader(const QJsonObject& json, ImportKind kind) : m_json(json), m_kind(kind) {}

    Result<ImportMap> read() {
        ImportMap map;
        for (const QString& key : m_json.keys())
            if (auto taken = take(map, key.toStdString(), m_json.value(key)); !taken)
                return taken.error();
        return map;
    }

  private:
    Result<void> take(ImportMap& map, const std::string& key, const QJsonValue& value) {
        if (value.isNull()) return {};
        if (key == "columns") return takeColumns(map, value);
        if (key == "kind") return takeKind(value);
        if (key == "header" || key == "add_yards") {
            if (!value.isBool())
                return Refusal{Code::WrongType, key, {{"wanted", "true or false"}}};
            (key == "header" ? map.table.header : map.addYards) = value.toBool();
            return {};
        }
        if (!value.isString()) return Refusal{Code::WrongType, key, {{"wanted", "text"}}};
        const std::string text = value.toString().toStdString();
        if (key == "yard") {
            map.yard = text;
            return {};
        }
        if (key == "day") {
            map.day = parseDay(text);
            if (!map.day) return Refusal{Code::NotADay, key, {{"value", text}}};
            return {};
        }
        const Words& words = wordsFor(key);
        if (words.empty()) return Refusal{Code::UnknownKey, key, {}};
        const auto found = std::find(words.begin(), words.end(), text);
        if (found == words.end()) return notOne(key, text, words);
        choose(map, key, text, static_cast<std::size_t>(found - words.begin()));
        return {};
    }

    static Refusal notOne(const std::string& key, const std::string& text, const Words& words) {
        std::string all;
        for (const std::string_view each : words)
            all += (all.empty() ? "" : ", ") + std::string(each);
        return {Code::NotAChoice, key, {{"value", text}, {"choices", all}}};
    }

    static void choose(ImportMap& map, const std::string& key, const std::string& text,
                       std::size_t which) {
        if (key == "encoding") map.table.encoding = text;
        if (key == "delimiter") map.table.parter = text.front();
        if (key == "decimal") map.decimal = static_cast<DecimalSign>(which);
        if (key == "dates") map.days = static_cast<DayOrder>(which);
        if (key == "unit") map.unit = text;
        if (key == "of_day") map.ofDay = static_cast<OfDay>(which);
        if (key == "origin") map.origin = text;
    }

    Result<void> takeColumns(ImportMap& map, const QJsonValue& value) const {
        if (!value.isObject()) return Refusal{Code::WrongType, "columns", {{"wanted", "object"}}};
        const QJsonObject columns = value.toObject();
        for (const QString& heading : columns.keys()) {
            const QJsonValue field = columns.value(heading);
            const std::string key = "columns." + heading.toStdString();
            if (!field.isNull() && !field.isString())
                return Refusal{Code::WrongType, key, {{"wanted", "text"}}};
            const std::string named = field.toString().toStdString();
            if (!named.empty() && !importField(m_kind, named)) {
                Words words;
                for (const ImportField& each : importFields(m_kind)) words.push_back(each.key);
                return notOne(key, named, words);
            }
            map.columns[heading.toStdString()] = named;
        }
        return {};
    }

    Result<void> takeKind(const QJsonValue& value) const {
        const std::string text = value.toString().toStdString();
        if (text == word(m_kind)) return {};
        return Refusal{Code::Contradiction, "kind", {{"other", std::string(word(m_kind))}}};
    }

    const QJsonObject& m_json;
    ImportKind m_kind;
};

}  // namespace

Result<ImportMap> importMapOf(const QJsonObject& json, ImportKind kind) {
    return MapReader(json, kind).read();
}

QJsonObject toJson(const ImportMap& map) {
    QJsonObject json;
    const auto say = [&json](const char* key, const QJsonValue& value) {
        json.insert(QLatin1String(key), value);
    };
    const auto sayWord = [&](const char* key, std::size_t which) {
        say(key, fromUtf8(wordsFor(key)[which]));
    };
    QJsonObject columns;
    for (const auto& [heading, field] : map.columns)
        columns.insert(fromUtf8(heading),
                       field.empty() ? QJsonValue(QJsonValue::Null) : QJsonValue(fromUtf8(field)));
    if (!columns.isEmpty()) say("columns", columns);
    if (map.table.encoding) say("encoding", fromUtf8(*map.table.encoding));
    if (map.table.parter) say("delimiter", QString(QLatin1Char(*map.table.parter)));
    if (map.table.header) say("header", *map.table.header);
    if (map.decimal) sayWord("decimal", static_cast<std::size_t>(*map.decimal));
    if (map.days) sayWord("dates", static_cast<std::size_t>(*map.days));
    if (map.unit) say("unit", fromUtf8(*map.unit));
    if (map.ofDay) sayWord("of_day", static_cast<std::size_t>(*map.ofDay));
    if (map.origin) say("origin", fromUtf8(*map.origin));
    if (map.yard) say("yard", fromUtf8(*map.yard));
    if (map.day) say("day", fromUtf8(isoText(*map.day)));
    if (map.addYards) say("add_yards", *map.addYards);
    return json;
}

}  // namespace combwright
