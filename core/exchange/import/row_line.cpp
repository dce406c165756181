#include "core/exchange/import/row_line.h"

#include <QJsonObject>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/actions/boxes/box_list.h"
#include "core/actions/honey/goods_line.h"
#include "core/exchange/described_json.h"
#include "core/model/yard/visit.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr double gramsOfPound = 453.59237;

std::string smallText(std::string_view text) { return fromUtf8(text).toLower().toStdString(); }

CellResult refusedCell(Code code, const ImportField& field, std::string_view cell,
                       const char* wanted) {
    return {
        std::nullopt,
        Refusal{code, std::string(field.key), {{"value", std::string(cell)}, {"wanted", wanted}}},
        {}};
}

CellResult flagCell(const ImportField& field, const std::string& text) {
    static constexpr auto yes =
        std::to_array<std::string_view>({"yes", "y", "true", "1", "x", "+", "seen", "✓", "✔"});
    static constexpr auto no =
        std::to_array<std::string_view>({"no", "n", "false", "0", "-", "none", "not seen"});
    const std::string small = smallText(text);
    CellRead read;
    read.text = text;
    if (std::find(yes.begin(), yes.end(), small) != yes.end())
        read.flag = true;
    else if (std::find(no.begin(), no.end(), small) == no.end())
        return {std::nullopt,
                Refusal{Code::NotAChoice,
                        std::string(field.key),
                        {{"value", text}, {"choices", "yes, no"}}},
                {}};
    return {read, std::nullopt, {}};
}

CellResult choiceCell(const ImportField& field, const std::string& text) {
    const std::string small = smallText(text);
    std::string all;
    for (const std::string_view choice : field.choices) {
        if (small == choice || small == smallText(word(choice).toStdString())) {
            CellRead read;
            read.text = std::string(choice);
            return {read, std::nullopt, {}};
        }
        all += (all.empty() ? "" : ", ") + std::string(choice);
    }
    return {std::nullopt,
            Refusal{Code::NotAChoice, std::string(field.key), {{"value", text}, {"choices", all}}},
            {}};
}

CellResult dayCell(const ImportField& field, const std::string& text, const ColumnWays& ways) {
    const DayInCell found = dayInCell(text);
    if (found.shortYear) return refusedCell(Code::WrongType, field, text, "year in four digits");
    if (found.isAmbiguous() && !ways.days) return {std::nullopt, std::nullopt, "dates"};
    auto day = ways.days        ? found.by(*ways.days)
               : found.dayFirst ? found.dayFirst
                                : found.monthFirst;
    if (!day) return refusedCell(Code::NotADay, field, text, "year-month-day");
    CellRead read;
    read.text = text;
    read.day = *day;
    read.minute = found.minute;
    return {read, std::nullopt, {}};
}

std::optional<double> gramsOf(const std::string& unit) {
    if (unit == "kg") return 1000.0;
    if (unit == "g") return 1.0;
    if (unit == "lb") return gramsOfPound;
    return std::nullopt;
}

CellResult numberCell(const ImportField& field, const std::string& text, const ColumnWays& ways) {
    const NumberInCell found = numberInCell(text);
    if (found.isNone()) return refusedCell(Code::WrongType, field, text, "number");
    if (found.isAmbiguous() && !ways.decimal) return {std::nullopt, std::nullopt, "decimal"};
    const auto number = ways.decimal    ? found.by(*ways.decimal)
                        : found.byPoint ? found.byPoint
                                        : found.byComma;
    if (!number) return refusedCell(Code::WrongType, field, text, "number");
    if (*number < 0) return {std::nullopt, Refusal{Code::Negative, std::string(field.key)}, {}};
    CellRead read;
    read.text = text;
    read.number = *number;
    if (field.type == CellType::Mass) {
        const std::string own = headingOf(found.unit).unit;
        if (!found.unit.empty() && own.empty())
            return refusedCell(Code::WrongType, field, text, "kg, g, lb");
        const auto grams = gramsOf(own.empty() ? ways.unit : own);
        if (!grams) return {std::nullopt, std::nullopt, "unit"};
        if (*number * *grams > static_cast<double>(billion))
            return {std::nullopt, Refusal{Code::OutOfRange, std::string(field.key)}, {}};
        read.mass = Mass::roundedGrams(*number * *grams);
        return {read, std::nullopt, {}};
    }
    if (!found.unit.empty()) return refusedCell(Code::WrongType, field, text, "number");
    if (field.type == CellType::Count && *number != std::floor(*number))
        return refusedCell(Code::WrongType, field, text, "whole number");
    return {read, std::nullopt, {}};
}

/// Puts a line together, key by key.
class LineMaker {
  public:
    LineMaker(const Read& file, ImportKind kind, const RowRead& row, const ImportMap& map,
              const std::vector<std::string>& yards)
        : m_file(file), m_row(row), m_map(map), m_yards(yards), m_kind(kind) {}

    LineResult make() {
        switch (m_kind) {
            case ImportKind::Hives:
                hive();
                break;
            case ImportKind::Boxes:
                boxes();
                break;
            case ImportKind::Weights:
                weight();
                break;
            case ImportKind::Visits:
                visit();
                break;
            case ImportKind::CropNotes:
                crop();
                break;
            case ImportKind::Sales:
                sale();
                break;
        }
        for (const ImportField& field : importFields(m_kind))
            if (field.needed && !m_row.contains(field.key))
                refuse({Code::Missing, std::string(field.key), {}});
        if (!m_result.refused && m_result.asks.empty()) m_result.play = jsonLine(m_pairs);
        return std::move(m_result);
    }

  private:
    const CellRead* cell(std::string_view key) const {
        const auto found = m_row.find(key);
        return found == m_row.end() ? nullptr : &found->second;
    }
    void refuse(Refusal refusal) {
        if (!m_result.refused) m_result.refused = std::move(refusal);
    }
    void say(const char* key, const QJsonValue& value) { m_pairs.emplace_back(key, value); }
    void begin(const char* action) {
        say("do", QLatin1String(action));
        const CellRead* day = cell("day");
        if (day)
            say("on", fromUtf8(isoText(day->day)));
        else if (m_map.day)
            say("on", fromUtf8(isoText(*m_map.day)));
        else
            m_result.asks.push_back("day");
    }
    void sayText(const char* key, std::string_view from) {
        if (const CellRead* read = cell(from)) say(key, fromUtf8(read->text));
    }
    void sayNumber(const char* key, std::string_view from) {
        if (const CellRead* read = cell(from)) say(key, read->number);
    }
    void sayFlag(const char* key, std::string_view from) {
        if (const CellRead* read = cell(from)) say(key, read->flag);
    }
    void sayMass(const std::string& key, std::string_view from, const char* how = "weighed") {
        const CellRead* read = cell(from);
        if (!read) return;
        m_pairs.emplace_back(key + "_g", static_cast<qint64>(read->mass.grams()));
        m_pairs.emplace_back(key + "_how", QLatin1String(how));
    }
    std::optional<std::string> yardSaid() const {
        if (const CellRead* yard = cell("yard")) return yard->text;
        return m_map.yard;
    }
    void sayHive(const char* key) {
        const CellRead* hive = cell("hive");
        if (!hive) return;
        const auto yard = yardSaid();
        if (yard)
            m_object = QJsonObject{{QStringLiteral("hive"), fromUtf8(hive->text)},
                                   {QStringLiteral("yard"), fromUtf8(*yard)}};
        say(key, yard ? QJsonValue(m_object) : QJsonValue(fromUtf8(hive->text)));
    }

    void hive() {
        begin("add-hive");
        const auto yard = yardSaid();
        if (yard || m_yards.size() == 1)
            say("yard", fromUtf8(yard.value_or(m_yards.size() == 1 ? m_yards[0] : "")));
        else
            m_result.asks.push_back("yard");
        sayText("mark", "hive");
        sayText("boxes", "boxes");
        if (cell("origin"))
            sayText("origin", "origin");
        else if (!m_map.origin)
            m_result.asks.push_back("origin");
        else if (*m_map.origin != "empty")
            say("origin", fromUtf8(*m_map.origin));
        sayMass("tare", "tare");
        sayText("note", "note");
    }
    void boxes() {
        begin("add-boxes");
        if (const CellRead* kind = cell("kind")) {
            const auto meant = boxKindNamed(m_file, kind->text);
            if (meant)
                say("kind", QStringLiteral("#%1").arg(meant->id.number));
            else
                refuse({Code::NotAChoice,
                        "kind",
                        {{"value", kind->text}, {"choices", kindWords(m_file)}}});
        }
        sayText("first_mark", "mark");
        sayText("contents", "contents");
        sayText("stack", "stack");
    }
    void weight() {
        begin("weigh-hive");
        sayHive("hive");
        sayMass("left", "left");
        sayMass("right", "right");
        sayMass("whole", "weight");
        sayMass("without", "without");
        sayText("note", "note");
        if (!cell("weight") && !cell("left") && !cell("right"))
            refuse({Code::Missing, "weight", {}});
    }
    void visit() {
        const bool typed = cell("line") != nullptr;
        begin(typed ? "write-line" : "look-into");
        sayHive("hive");
        if (typed) {
            for (const auto& [key, read] : m_row)
                if (key != "line" && key != "hive" && key != "yard" && key != "day")
                    refuse({Code::Contradiction, std::string(key), {{"other", "line"}}});
            sayText("line", "line");
            return;
        }
        sayText("looked", "looked");
        if (!cell("looked")) say("looked", fromUtf8(word(Looked::Opened)));
        sayFlag("queen_seen", "queen_seen");
        sayFlag("eggs", "eggs");
        for (const char* key :
             {"brood_frames", "stores_frames", "seams_frames", "queen_cells", "temper"})
            sayNumber(key, key);
        sayNumber("mites", "mites");
        sayNumber("bees", "bees");
        sayMass("fed", "fed");
        sayText("note", "note");
    }
    void crop() {
        begin("note-crop");
        sayNumber("year", "year");
        sayHive("hive");
        if (!cell("hive"))
            if (const auto yard = yardSaid()) say("yard", fromUtf8(*yard));
        const CellRead* how = cell("how");
        sayMass("mass", "crop", how ? how->text.c_str() : std::string(word(How::Unknown)).c_str());
        sayText("note", "note");
    }
    void sale() {
        begin("go-out");
        sayText("went", "went");
        const CellRead* goods = cell("goods");
        const CellRead* count = cell("count");
        if (goods && count) {
            const auto meant = goodsKindMeant(m_file, goods->text, "goods");
            if (meant)
                say("goods", QStringLiteral("%1 #%2")
                                 .arg(static_cast<qint64>(count->number))
                                 .arg(meant->id.number));
            else
                refuse(meant.error());
        }
        sayNumber("price", "price");
        sayText("buyer", "buyer");
        sayText("place", "place");
        sayText("note", "note");
    }

    const Read& m_file;
    const RowRead& m_row;
    const ImportMap& m_map;
    const std::vector<std::string>& m_yards;
    ImportKind m_kind;
    QJsonObject m_object;
    std::vector<std::pair<std::string, QJsonValue>> m_pairs;
    LineResult m_result;
};

}  // namespace

CellResult readCell(const ImportField& field, std::string_view cell, const ColumnWays& ways) {
    const std::string text(trimmedCell(cell));
    switch (field.type) {
        case CellType::Text: {
            CellRead read;
            read.text = text;
            return {read, std::nullopt, {}};
        }
        case CellType::Flag:
            return flagCell(field, text);
        case CellType::Choice:
            return choiceCell(field, text);
        case CellType::Day:
            return dayCell(field, text, ways);
        case CellType::Mass:
        case CellType::Number:
        case CellType::Count:
        case CellType::Money:
            break;
    }
    return numberCell(field, text, ways);
}

LineResult lineOfRow(const Read& file, ImportKind kind, const RowRead& row, const ImportMap& map,
                     const std::vector<std::string>& yards) {
    return LineMaker(file, kind, row, map, yards).make();
}

}  // namespace combwright
