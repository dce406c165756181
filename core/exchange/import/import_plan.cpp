#include "core/exchange/import/import_plan.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "core/actions/import_rows.h"
#include "core/exchange/described_json.h"
#include "core/exchange/export.h"
#include "core/exchange/import/row_line.h"
#include "core/exchange/import/rows_there.h"
#include "core/places/questions/questions.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"

namespace combwright {
namespace {

bool knowsHeading(std::string_view heading, const void* about) {
    return fieldHeaded(*static_cast<const ImportKind*>(about), heading) != nullptr;
}

bool knownToAny(std::string_view heading, const void*) {
    for (std::size_t i = 0; i < importKindWords().size(); ++i)
        if (fieldHeaded(static_cast<ImportKind>(i), heading)) return true;
    return false;
}

class Planner {
  public:
    Planner(const Season& season, ImportKind kind, const ImportMap& map)
        : m_season(season), m_map(map) {
        m_plan.kind = kind;
        m_plan.map = map;
        for (const Yard& yard : openYards(season.read())) m_yards.push_back(yard.name.text());
    }

    ImportPlan plan(TableRead table) {
        m_plan.encoding = table.encoding;
        m_plan.parter = table.parter;
        m_plan.header = table.header;
        m_width = table.headings.size();
        mapColumns(table.headings);
        for (CsvRecord& record : table.rows) {
            PlannedRow row;
            row.line = record.line;
            row.cells = std::move(record.cells);
            if (record.brokenQuotes)
                refuse(row, {Code::WrongType, "file", {{"wanted", "closed quotes"}}});
            else if (row.cells.size() > m_width)
                refuse(row, {Code::WrongType,
                             "file",
                             {{"value", std::to_string(row.cells.size())},
                              {"wanted", std::to_string(m_width)}}});
            m_plan.rows.push_back(std::move(row));
        }
        sayWays();
        std::vector<RowRead> read(m_plan.rows.size());
        for (std::size_t i = 0; i < read.size(); ++i)
            if (!m_plan.rows[i].why) read[i] = readRowCells(m_plan.rows[i]);
        if (m_plan.kind == ImportKind::Weights) chooseOfDay(read);
        for (std::size_t i = 0; i < read.size(); ++i) makeLine(m_plan.rows[i], read[i]);
        askForYards(read);
        rehearse();
        return std::move(m_plan);
    }

  private:
    static void refuse(PlannedRow& row, Refusal why) {
        row.verdict = RowVerdict::Refused;
        row.why = std::move(why);
        row.asks.clear();
        row.play.clear();
    }
    ImportQuestion& question(const std::string& ask, const std::string& field = {}) {
        for (ImportQuestion& each : m_plan.questions)
            if (each.ask == ask && (ask != "columns" || each.field == field)) return each;
        return m_plan.questions.emplace_back(ImportQuestion{ask, field, {}, choicesOf(ask), {}});
    }
    std::vector<std::string> choicesOf(const std::string& ask) const {
        if (ask == "decimal") return {"point", "comma"};
        if (ask == "dates") return {"day first", "month first"};
        if (ask == "unit") return {"kg", "g", "lb"};
        if (ask == "of_day") return {"first", "last"};
        if (ask == "add_yards") return {"true", "false"};
        if (ask == "yard") return m_yards;
        std::vector<std::string> words;
        if (ask == "origin") {
            words.assign(Choices<Origin>::words.begin(), Choices<Origin>::words.end());
            words.emplace_back("empty");
        }
        if (ask == "columns")
            for (const PlannedColumn& column : m_plan.columns) words.push_back(column.heading);
        return words;
    }
    void askOf(PlannedRow& row, const std::string& ask, const std::string& field,
               const std::string& example) {
        if (row.why) return;
        row.verdict = RowVerdict::Asked;
        if (std::find(row.asks.begin(), row.asks.end(), ask) == row.asks.end())
            row.asks.push_back(ask);
        ImportQuestion& asked = question(ask, field);
        if (asked.example.empty()) asked.example = example;
        if (asked.lines.empty() || asked.lines.back() != row.line) asked.lines.push_back(row.line);
    }

    void mapColumns(const std::vector<std::string>& headings) {
        std::map<std::string, int> met;
        for (const std::string& heading : headings) {
            PlannedColumn column{heading, {}};
            const auto said = m_map.columns.find(heading);
            if (said != m_map.columns.end())
                column.field = said->second;
            else if (const ImportField* field = fieldHeaded(m_plan.kind, heading))
                column.field = std::string(field->key);
            if (!column.field.empty()) ++met[column.field];
            m_plan.columns.push_back(std::move(column));
        }
        readStandAsYard(met);
        const auto lacks = [&met](std::string_view key) { return !met.contains(std::string(key)); };
        for (const auto& [field, many] : met)
            if (many > 1) m_columnsAsked.insert(field);
        for (const ImportField& field : importFields(m_plan.kind))
            if (field.needed && lacks(field.key) && !(field.key == "day" && m_map.day))
                m_columnsAsked.insert(std::string(field.key));
        if (m_plan.kind == ImportKind::Weights && lacks("weight") && lacks("left") &&
            lacks("right"))
            m_columnsAsked.insert("weight");
        for (const std::string& field : m_columnsAsked) question("columns", field);
    }

    /// A stand is what one hive stands on; beside a column for the hive it is where all stand.
    void readStandAsYard(std::map<std::string, int>& met) {
        const auto hives = met.find("hive");
        if (hives == met.end() || hives->second != 2 || met.contains("yard")) return;
        for (PlannedColumn& column : m_plan.columns)
            if (column.field == "hive" && headingOf(column.heading).words == "stand" &&
                !m_map.columns.contains(column.heading)) {
                column.field = "yard";
                --hives->second;
                ++met["yard"];
            }
    }

    /// What each column says of its own numbers and days.
    void sayWays() {
        m_ways.resize(m_plan.columns.size());
        for (std::size_t at = 0; at < m_plan.columns.size(); ++at) {
            const ImportField* field = fieldOf(at);
            if (!field) continue;
            ColumnWays& ways = m_ways[at];
            ways.unit = headingOf(m_plan.columns[at].heading).unit;
            if (ways.unit.empty()) ways.unit = m_map.unit.value_or(std::string());
            std::vector<NumberInCell> numbers;
            std::vector<DayInCell> days;
            for (const PlannedRow& row : m_plan.rows) {
                if (row.why || at >= row.cells.size()) continue;
                if (field->type == CellType::Day)
                    days.push_back(dayInCell(row.cells[at]));
                else
                    numbers.push_back(numberInCell(row.cells[at]));
            }
            ways.decimal = m_map.decimal ? m_map.decimal : decimalSaid(numbers);
            ways.days = m_map.days ? m_map.days : orderSaid(days);
        }
    }
    const ImportField* fieldOf(std::size_t column) const {
        const std::string& key = m_plan.columns[column].field;
        if (key.empty()) return nullptr;
        return importField(m_plan.kind, key);
    }

    RowRead readRowCells(PlannedRow& row) {
        RowRead read;
        for (const std::string& field : m_columnsAsked) askOf(row, "columns", field, {});
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            const ImportField* field = fieldOf(at);
            if (!field || m_columnsAsked.contains(std::string(field->key)) ||
                trimmedCell(row.cells[at]).empty())
                continue;
            const CellResult cell = readCell(*field, row.cells[at], m_ways[at]);
            if (cell.refused) {
                refuse(row, *cell.refused);
                return {};
            }
            if (!cell.asks.empty())
                askOf(row, cell.asks, std::string(field->key), row.cells[at]);
            else
                read.emplace(field->key, *cell.read);
        }
        return read;
    }

    /// A scale tells every hour, the season keeps one weighing a day: which counts is asked.
    void chooseOfDay(const std::vector<RowRead>& read) {
        std::map<std::string, std::vector<std::size_t>> ofDay;
        for (std::size_t i = 0; i < read.size(); ++i) {
            const auto hive = read[i].find("hive");
            const auto day = read[i].find("day");
            if (m_plan.rows[i].why || hive == read[i].end() || day == read[i].end()) continue;
            const auto yard = read[i].find("yard");
            ofDay[hive->second.text + '\n' +
                  (yard == read[i].end() ? std::string() : yard->second.text) + '\n' +
                  isoText(day->second.day)]
                .push_back(i);
        }
        for (auto& [what, rows] : ofDay) {
            if (rows.size() < 2) continue;
            if (!m_map.ofDay) {
                for (const std::size_t i : rows)
                    askOf(m_plan.rows[i], "of_day", "day", read[rows.front()].at("day").text);
                continue;
            }
            std::stable_sort(rows.begin(), rows.end(), [&read](std::size_t a, std::size_t b) {
                return read[a].at("day").minute < read[b].at("day").minute;
            });
            const std::size_t counts = *m_map.ofDay == OfDay::First ? rows.front() : rows.back();
            for (const std::size_t i : rows)
                if (i != counts) m_plan.rows[i].verdict = RowVerdict::LeftOut;
        }
    }

    void makeLine(PlannedRow& row, const RowRead& read) {
        // A row with a cell that can be read in two ways lacks it here; it is made once that is
        // answered.
        if (row.why || row.verdict == RowVerdict::LeftOut || !row.asks.empty()) return;
        // What the row lacks is told once its columns are known.
        if (!m_columnsAsked.empty()) return;
        LineResult line = lineOfRow(m_season.read(), m_plan.kind, read, m_map, m_yards);
        if (line.refused) {
            refuse(row, *line.refused);
            return;
        }
        for (const std::string& ask : line.asks) askOf(row, ask, ask, {});
        if (row.asks.empty()) row.play = std::move(line.play);
    }

    /// Yards nobody has heard of are asked about once, and added before their hives.
    void askForYards(const std::vector<RowRead>& read) {
        if (m_plan.kind != ImportKind::Hives) return;
        m_yardOfRow.resize(read.size());
        std::map<std::string, Day> unknown;
        std::vector<std::string> inOrder;
        for (std::size_t i = 0; i < read.size(); ++i) {
            PlannedRow& row = m_plan.rows[i];
            if (row.why) continue;
            const auto cell = read[i].find("yard");
            const std::string yard =
                cell == read[i].end() ? m_map.yard.value_or(std::string()) : cell->second.text;
            m_yardOfRow[i] = yard;
            if (yard.empty() || std::find(m_yards.begin(), m_yards.end(), yard) != m_yards.end())
                continue;
            if (!m_map.addYards) {
                askOf(row, "add_yards", "yard", yard);
                row.play.clear();
                continue;
            }
            const auto day = read[i].find("day");
            const auto from = day == read[i].end() ? m_map.day : std::optional(day->second.day);
            if (!*m_map.addYards || !from) continue;
            const auto [at, fresh] = unknown.emplace(yard, *from);
            if (fresh) inOrder.push_back(yard);
            at->second = std::min(at->second, *from);
        }
        for (const std::string& yard : inOrder)
            m_newYards.emplace_back(yard, jsonLine({{"do", QStringLiteral("add-yard")},
                                                    {"on", fromUtf8(isoText(unknown.at(yard)))},
                                                    {"yard_name", fromUtf8(yard)}}));
    }

    /// Does to a copy what would be done: a row that is refused there is refused.
    void rehearse() {
        Season copy = m_season.rehearsal();
        const StepInfo info{std::string(ImportRows::name), {}, {}, {}};
        const auto tried = copy.perform(info, [this](Write& file) -> Result<void> {
            RowsThere there(file);
            std::erase_if(m_newYards, [&file](const auto& yard) {
                return !file.attempt([&]() -> Result<void> {
                    auto made = done(file, yard.second);
                    if (!made) return made.error();
                    return {};
                });
            });
            for (PlannedRow& row : m_plan.rows)
                if (!row.play.empty()) tryRow(file, there, row);
            // Nothing of it need be kept, not even there.
            return Refusal{Code::NothingToDo, {}, {}};
        });
        (void)tried;
        keepUsedYards();
    }
    static Result<Made> done(Write& file, const std::string& play) {
        const auto line = readImportLine(file, play);
        if (!line) return line.error();
        return line->type->perform(line->row, file);
    }
    /// Of a table longer than that what is odd is only told after it was kept, by the records.
    static constexpr std::size_t mostAskedBack = 20'000;
    void tryRow(Write& file, RowsThere& there, PlannedRow& row) const {
        const auto line = readImportLine(file, row.play);
        if (!line) return refuse(row, line.error());
        switch (there.ask(file, *line)) {
            case RowThere::Same:
                row.verdict = RowVerdict::AlreadyThere;
                return;
            case RowThere::Other:
                return refuse(row, {Code::Taken, "day", {{"written", "another"}}});
            case RowThere::No:
                break;
        }
        Change change;
        const auto tried = file.attempt([&]() -> Result<void> {
            const auto made = line->type->perform(line->row, file);
            if (!made) return made.error();
            for (const auto& [table, id] : *made)
                change.rows.push_back({std::string(table), id, ChangeKind::Added});
            return {};
        });
        if (!tried) return refuse(row, tried.error());
        row.verdict = RowVerdict::WillBeAdded;
        // Odd and yet kept is said before it is kept, too.
        if (m_plan.rows.size() <= mostAskedBack)
            for (const Question& each : questionsAfter(file, change, m_season.clock().today()))
                row.odd.push_back(each.says.toStdString());
    }
    /// A yard none of whose hives come in is not added for its own sake.
    void keepUsedYards() {
        for (const auto& [yard, line] : m_newYards) {
            bool used = false;
            for (std::size_t i = 0; i < m_plan.rows.size(); ++i)
                used = used || (m_plan.rows[i].verdict == RowVerdict::WillBeAdded &&
                                m_yardOfRow[i] == yard);
            if (used) m_plan.first.push_back(line);
        }
    }

    const Season& m_season;
    const ImportMap& m_map;
    ImportPlan m_plan;
    std::size_t m_width = 0;
    std::vector<std::string> m_yards;
    std::set<std::string> m_columnsAsked;
    std::vector<ColumnWays> m_ways;
    std::vector<std::string> m_yardOfRow;
    std::vector<std::pair<std::string, std::string>> m_newYards;  ///< name and line
};

}  // namespace

std::string_view key(RowVerdict verdict) {
    static constexpr auto keys = std::to_array<std::string_view>(
        {"will_be_added", "already_there", "left_out", "refused", "asked"});
    return keys[static_cast<std::size_t>(verdict)];
}

std::size_t ImportPlan::count(RowVerdict verdict) const {
    return static_cast<std::size_t>(
        std::count_if(rows.begin(), rows.end(),
                      [verdict](const PlannedRow& row) { return row.verdict == verdict; }));
}

std::size_t ImportPlan::countOdd() const {
    return static_cast<std::size_t>(std::count_if(
        rows.begin(), rows.end(), [](const PlannedRow& row) { return !row.odd.empty(); }));
}

std::string ImportPlan::lines() const {
    if (count(RowVerdict::WillBeAdded) == 0) return {};
    std::string text;
    for (const std::string& line : first) text += line + '\n';
    for (const PlannedRow& row : rows)
        if (row.verdict == RowVerdict::WillBeAdded) text += row.play + '\n';
    return text;
}

std::optional<ImportKind> kindOfTable(std::string_view bytes) {
    const auto table = readTable(bytes, {}, &knownToAny, nullptr);
    if (!table || !table->header) return std::nullopt;
    return kindGuessed(table->headings);
}

Result<ImportPlan> planImport(const Season& season, ImportKind kind, std::string_view bytes,
                              const ImportMap& map) {
    auto table = readTable(bytes, map.table, &knowsHeading, &kind);
    if (!table) return table.error();
    return Planner(season, kind, map).plan(*std::move(table));
}

Result<std::int64_t> keepImport(Season& season, const ImportPlan& plan, const std::string& fileName,
                                RefusedRows refused) {
    if (!plan.questions.empty())
        return Refusal{Code::Missing, "map", {{"ask", plan.questions.front().ask}}};
    if (refused == RefusedRows::HoldUpAll)
        for (const PlannedRow& row : plan.rows)
            if (row.why) {
                Refusal why = *row.why;
                why.values.emplace_back("import_line", std::to_string(row.line));
                return why;
            }
    const std::string lines = plan.lines();
    if (lines.empty()) return std::int64_t{0};
    ImportRows rows;
    rows.on = season.clock().today();
    rows.rowsOf = *Name::of(word(plan.kind));
    rows.fileName = fileName;
    rows.lines = lines;
    const ActionType* type = findActionType(ImportRows::name);
    auto done = performRow(season, *type, toRow(rows));
    if (!done) return done.error();
    return done->step.step;
}

std::string rejectedRows(const ImportPlan& plan,
                         const std::function<std::string(const PlannedRow&)>& reason) {
    std::string text;
    for (const PlannedColumn& column : plan.columns) text += csvCell(column.heading) + ',';
    text += "line,field,reason\r\n";
    for (const PlannedRow& row : plan.rows) {
        if (!row.why) continue;
        for (std::size_t i = 0; i < std::max(plan.columns.size(), row.cells.size()); ++i)
            text += (i < row.cells.size() ? csvCell(row.cells[i]) : std::string()) + ',';
        text += std::to_string(row.line) + ',' + csvCell(row.why->field) + ',' +
                csvCell(reason(row)) + "\r\n";
    }
    return text;
}

}  // namespace combwright
