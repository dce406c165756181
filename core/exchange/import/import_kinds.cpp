#include "core/exchange/import/import_kinds.h"

#include <QString>
#include <algorithm>
#include <array>

#include "core/exchange/import/cell_readings.h"
#include "core/model/honey/going_out.h"
#include "core/model/yard/visit.h"
#include "core/model/yard/yard.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr auto kindWordsListed =
    std::to_array<std::string_view>({"hives", "boxes", "weights", "visits", "crop-notes", "sales"});

ImportField hiveField() {
    return {
        "hive",
        CellType::Text,
        true,
        {"hive", "hive mark", "hive no", "hive number", "hive name", "hive id", "colony", "mark",
         "stand", "beute", "beuten nr", "volk", "volk nr", "stock", "stock nr", "kasten"}};
}
ImportField yardField() {
    return {"yard",
            CellType::Text,
            false,
            {"yard", "apiary", "bee yard", "out yard", "site", "bienenstand", "standort",
             "standplatz"}};
}
ImportField dayField(bool needed) {
    return {"day",
            CellType::Day,
            needed,
            {"day", "date", "on", "date time", "datetime", "timestamp", "time", "when", "since",
             "datum", "tag", "am", "zeit", "zeitpunkt"}};
}
ImportField noteField() {
    return {"note",
            CellType::Text,
            false,
            {"note", "notes", "remark", "remarks", "comment", "comments", "bemerkung",
             "bemerkungen", "notiz", "notizen", "anmerkung"}};
}

std::vector<ImportField> hiveFields() {
    return {hiveField(),
            yardField(),
            dayField(false),
            {"boxes", CellType::Text, false, {"boxes", "build", "stack", "zargen", "aufbau"}},
            {"origin",
             CellType::Choice,
             false,
             {"origin", "bees", "came from", "herkunft"},
             Choices<Origin>::words},
            {"tare",
             CellType::Mass,
             false,
             {"tare", "empty weight", "weighs empty", "leergewicht", "tara"}},
            noteField()};
}

std::vector<ImportField> boxFields() {
    return {{"mark",
             CellType::Text,
             false,
             {"mark", "box", "box mark", "box no", "box number", "zarge", "zargen nr"}},
            {"kind",
             CellType::Text,
             true,
             {"kind", "size", "box kind", "box size", "type", "art", "sorte"}},
            {"contents",
             CellType::Text,
             false,
             {"contents", "frames", "combs", "in it", "inhalt", "waben", "rähmchen"}},
            {"stack", CellType::Text, false, {"stack", "shelf", "place", "stapel", "regal"}},
            dayField(false)};
}

std::vector<ImportField> weightFields() {
    return {
        hiveField(),
        yardField(),
        dayField(true),
        {"weight",
         CellType::Mass,
         false,
         {"weight", "whole", "total weight", "scale", "hive weight", "gross", "mass", "gewicht",
          "gesamtgewicht", "waage", "stockgewicht", "brutto"}},
        {"left", CellType::Mass, false, {"left", "left side", "links"}},
        {"right", CellType::Mass, false, {"right", "right side", "rechts"}},
        {"without", CellType::Mass, false, {"without", "tare", "no stores", "leergewicht", "tara"}},
        noteField()};
}

std::vector<ImportField> visitFields() {
    return {
        hiveField(),
        yardField(),
        dayField(true),
        {"line", CellType::Text, false, {"line", "shorthand"}},
        {"looked", CellType::Choice, false, {"looked", "opened"}, Choices<Looked>::words},
        {"queen_seen",
         CellType::Flag,
         false,
         {"queen", "queen seen", "königin", "königin gesehen"}},
        {"eggs", CellType::Flag, false, {"eggs", "eggs seen", "eier", "stifte"}},
        {"brood_frames",
         CellType::Number,
         false,
         {"brood", "brood frames", "frames of brood", "brut", "brutwaben"}},
        {"stores_frames",
         CellType::Number,
         false,
         {"stores", "stores frames", "frames of stores", "food frames", "futter", "futterwaben"}},
        {"seams_frames",
         CellType::Number,
         false,
         {"seams", "seams of bees", "wabengassen", "besetzte wabengassen"}},
        {"queen_cells", CellType::Count, false, {"queen cells", "cells", "weiselzellen"}},
        {"temper", CellType::Count, false, {"temper", "temperament", "sanftmut"}},
        {"mites", CellType::Count, false, {"mites", "varroa", "milben"}},
        {"bees", CellType::Count, false, {"bees", "bees washed", "sample", "bienen", "probe"}},
        {"fed", CellType::Mass, false, {"fed", "feed", "sugar", "gefüttert", "zucker"}},
        noteField()};
}

std::vector<ImportField> cropFields() {
    ImportField hive = hiveField();
    hive.needed = false;
    return {{"year", CellType::Count, true, {"year", "season", "jahr"}},
            hive,
            yardField(),
            {"crop",
             CellType::Mass,
             true,
             {"crop", "honey", "yield", "harvest", "weight", "mass", "ernte", "honig", "ertrag",
              "gewicht"}},
            {"how", CellType::Choice, false, {"how", "how known", "known"}, Choices<How>::words},
            dayField(false),
            noteField()};
}

std::vector<ImportField> saleFields() {
    return {
        dayField(true),
        {"goods",
         CellType::Text,
         true,
         {"goods", "what", "item", "product", "article", "kind", "jar", "ware", "artikel", "glas"}},
        {"count",
         CellType::Count,
         true,
         {"count", "pieces", "quantity", "qty", "number", "jars", "how many", "anzahl", "stück",
          "menge", "gläser"}},
        {"price",
         CellType::Money,
         false,
         {"price", "each", "price each", "unit price", "preis", "einzelpreis", "stückpreis"}},
        {"went", CellType::Choice, false, {"went", "how"}, Choices<OutHow>::words},
        {"buyer",
         CellType::Text,
         false,
         {"buyer", "customer", "sold to", "who", "käufer", "kunde", "kundin"}},
        {"place", CellType::Text, false, {"place", "where", "market", "ort", "markt"}},
        noteField()};
}

std::string smallLetters(std::string_view text) { return fromUtf8(text).toLower().toStdString(); }

std::optional<std::string> unitNamed(std::string_view word) {
    if (word == "kg" || word == "kilogram" || word == "kilograms") return "kg";
    if (word == "lb" || word == "lbs" || word == "pound" || word == "pounds") return "lb";
    if (word == "g" || word == "gram" || word == "grams") return "g";
    return std::nullopt;
}

}  // namespace

std::span<const std::string_view> importKindWords() { return kindWordsListed; }

std::optional<ImportKind> importKindNamed(std::string_view word) {
    const auto found = std::find(kindWordsListed.begin(), kindWordsListed.end(), word);
    if (found == kindWordsListed.end()) return std::nullopt;
    return static_cast<ImportKind>(found - kindWordsListed.begin());
}

std::string_view word(ImportKind kind) { return kindWordsListed[static_cast<std::size_t>(kind)]; }

const std::vector<ImportField>& importFields(ImportKind kind) {
    static const std::array<std::vector<ImportField>, 6> all{
        hiveFields(), boxFields(), weightFields(), visitFields(), cropFields(), saleFields()};
    return all[static_cast<std::size_t>(kind)];
}

const ImportField* importField(ImportKind kind, std::string_view key) {
    for (const ImportField& field : importFields(kind))
        if (field.key == key) return &field;
    return nullptr;
}

Heading headingOf(std::string_view text) {
    std::string plain;
    for (const char c : smallLetters(text)) {
        const bool parts = c == '(' || c == ')' || c == '[' || c == ']' || c == '_' || c == '/' ||
                           c == ':' || c == '.' || c == '-' || c == ',' || c == '#' || c == '\t' ||
                           c == '\n';
        plain += parts ? ' ' : c;
    }
    Heading heading;
    std::size_t at = 0;
    while (at < plain.size()) {
        const std::size_t end = std::min(plain.find(' ', at), plain.size());
        const std::string each = plain.substr(at, end - at);
        at = end + 1;
        if (each.empty() || each == "in") continue;
        if (auto unit = unitNamed(each)) {
            heading.unit = *std::move(unit);
            continue;
        }
        heading.words += (heading.words.empty() ? "" : " ") + each;
    }
    return heading;
}

const ImportField* fieldHeaded(ImportKind kind, std::string_view text) {
    const Heading heading = headingOf(text);
    for (const ImportField& field : importFields(kind)) {
        if (heading.words == headingOf(field.key).words) return &field;
        for (const std::string_view known : field.headings)
            if (heading.words == known) return &field;
    }
    // What we call it ourselves, in the person's language.
    for (const ImportField& field : importFields(kind))
        if (hasWord(field.key) && heading.words == headingOf(word(field.key).toStdString()).words)
            return &field;
    return nullptr;
}

std::optional<ImportKind> kindGuessed(const std::vector<std::string>& headings) {
    std::optional<ImportKind> best;
    double bestScore = 0;
    bool even = false;
    for (std::size_t i = 0; i < kindWordsListed.size(); ++i) {
        const auto kind = static_cast<ImportKind>(i);
        std::vector<const ImportField*> met;
        for (const std::string& heading : headings)
            if (const ImportField* field = fieldHeaded(kind, heading))
                if (std::find(met.begin(), met.end(), field) == met.end()) met.push_back(field);
        double needed = 0;
        double has = 0;
        for (const ImportField& field : importFields(kind)) {
            if (!field.needed) continue;
            ++needed;
            if (std::find(met.begin(), met.end(), &field) != met.end()) ++has;
        }
        // What must be there weighs most; a table that lacks it tells of something else.
        const double score = met.empty() ? 0 : static_cast<double>(met.size()) + 3 * (has - needed);
        if (score > 0 && score == bestScore) even = true;
        if (score > bestScore) {
            best = kind;
            bestScore = score;
            even = false;
        }
    }
    return even ? std::nullopt : best;
}

}  // namespace combwright
