#include "core/exchange/import/import_plan.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

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

/// A stand is what one hive stands on; beside a column for the hive it is where all stand.
void readStandAsYard(const ImportMap& map, std::vector<PlannedColumn>& columns) {
    const auto many = [&columns](std::string_view field) {
        return std::count_if(columns.begin(), columns.end(), [field](const PlannedColumn& column) {
            return column.field == field;
        });
    };
    if (many("hive") != 2 || many("yard") > 0) return;
    for (PlannedColumn& column : columns)
        if (column.field == "hive" && headingOf(column.heading).words == "stand" &&
            !map.columns.contains(column.heading))
            column.field = "yard";
}

std::vector<PlannedColumn> mappedColumns(ImportKind kind, const ImportMap& map,
                                         const std::vector<std::string>& headings) {
    std::vector<PlannedColumn> columns;
    for (const std::string& heading : headings) {
        PlannedColumn column{heading, {}, {}};
        const auto said = map.columns.find(heading);
        if (said != map.columns.end())
            column.field = said->second;
        else if (const ImportField* field = fieldHeaded(kind, heading))
            column.field = std::string(field->key);
        columns.push_back(std::move(column));
    }
    readStandAsYard(map, columns);
    return columns;
}

/// Words that come again and again, by number.
class WordNumbers {
  public:
    std::uint32_t of(const std::string& word) {
        const auto [at, isNew] =
            m_numbers.emplace(word, static_cast<std::uint32_t>(m_words.size()));
        if (isNew) m_words.push_back(word);
        return at->second;
    }
    const std::string& word(std::uint32_t number) const { return m_words[number]; }
    std::size_t size() const { return m_words.size(); }

  private:
    std::map<std::string, std::uint32_t> m_numbers;
    std::vector<std::string> m_words;
};

class Planner {
  public:
    Planner(const Season& season, ImportKind kind, const ImportMap& map, Progress& progress)
        : m_season(season), m_map(map), m_progress(progress) {
        m_plan.kind = kind;
        m_plan.map = map;
        for (const Yard& yard : openYards(season.read())) m_yards.push_back(yard.name.text());
    }

    /// The rows are gone through again and again, for nothing of one is held but what becomes of
    /// it.
    Result<ImportPlan> plan(TableRead table) {
        m_plan.encoding = table.encoding;
        m_plan.parter = table.parter;
        m_plan.header = table.header;
        m_width = table.headings.size();
        mapColumns(table.headings);
        m_plan.rows = PlannedRows(std::move(table));
        m_progress.begin(m_plan.rows.size() * stepsOfRow);
        sayWays();
        askCells();
        if (m_plan.kind == ImportKind::Weights) chooseOfDay();
        makeLines();
        if (m_plan.kind == ImportKind::Hives) askForYards();
        if (!m_progress.isStopped()) rehearse();
        if (m_progress.isStopped()) return Refusal{Code::Stopped, {}, {}};
        return std::move(m_plan);
    }

  private:
    /// Of the work on a row each look at its cells is one, and trying it the rest.
    static constexpr std::size_t stepsOfRow = 20;
    static constexpr std::size_t stepsOfTrying = 17;

    /// Every row that is not refused, with its cells, while the plan is wanted.
    template <class Look>
    void eachRow(Look look) {
        for (std::size_t row = 0; row < m_plan.rows.size(); ++row) {
            if (!m_progress.advance()) return;
            if (m_plan.rows.verdict(row) != RowVerdict::Refused) look(row, m_plan.rows.record(row));
        }
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
    void askOf(std::size_t row, const std::string& ask, const std::string& field,
               const std::string& example) {
        if (m_plan.rows.verdict(row) == RowVerdict::Refused) return;
        m_plan.rows.ask(row, ask);
        ImportQuestion& asked = question(ask, field);
        const std::size_t line = m_plan.rows.line(row);
        if (asked.example.empty()) asked.example = example;
        if (asked.lines.empty() || asked.lines.back() != line) asked.lines.push_back(line);
    }

    void mapColumns(const std::vector<std::string>& headings) {
        m_plan.columns = mappedColumns(m_plan.kind, m_map, headings);
        std::map<std::string, int> met;
        for (const PlannedColumn& column : m_plan.columns)
            if (!column.field.empty()) ++met[column.field];
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

    /// What each column says of its own numbers and days.
    void sayWays() {
        m_ways.resize(m_plan.columns.size());
        std::vector<ColumnSays> says(m_plan.columns.size());
        eachRow([&](std::size_t row, const CsvRecord& record) {
            const std::vector<std::string>& cells = record.cells;
            if (record.brokenQuotes)
                m_plan.rows.refuse(row, {Code::WrongType, "file", {{"wanted", "closed quotes"}}});
            else if (cells.size() > m_width)
                m_plan.rows.refuse(row, {Code::WrongType,
                                         "file",
                                         {{"value", std::to_string(cells.size())},
                                          {"wanted", std::to_string(m_width)}}});
            if (m_plan.rows.verdict(row) == RowVerdict::Refused) return;
            for (std::size_t at = 0; at < cells.size(); ++at)
                if (const ImportField* field = fieldOf(at)) {
                    if (field->type == CellType::Day)
                        says[at].hear(dayInCell(cells[at]));
                    else
                        says[at].hear(numberInCell(cells[at]));
                }
        });
        for (std::size_t at = 0; at < m_plan.columns.size(); ++at) {
            if (!fieldOf(at)) continue;
            ColumnWays& ways = m_ways[at];
            ways.unit = headingOf(m_plan.columns[at].heading).unit;
            if (ways.unit.empty()) ways.unit = m_map.unit.value_or(std::string());
            ways.decimal = m_map.decimal ? m_map.decimal : says[at].decimal();
            ways.days = m_map.days ? m_map.days : says[at].days();
            if (fieldOf(at)->type == CellType::Day) m_plan.columns[at].days = ways.days;
        }
    }
    const ImportField* fieldOf(std::size_t column) const {
        const std::string& key = m_plan.columns[column].field;
        if (key.empty()) return nullptr;
        return importField(m_plan.kind, key);
    }

    /// What was not known when the columns were looked at, or cannot be read, is told of the row
    /// where `tells` is set.
    RowRead readCells(std::size_t row, const std::vector<std::string>& cells, bool tells) {
        RowRead read;
        for (std::size_t at = 0; at < cells.size(); ++at) {
            const ImportField* field = fieldOf(at);
            if (!field || m_columnsAsked.contains(field->key) || trimmedCell(cells[at]).empty())
                continue;
            CellResult cell = readCell(*field, cells[at], m_ways[at]);
            if (cell.refused) {
                m_plan.rows.refuse(row, *std::move(cell.refused));
                return {};
            }
            if (cell.asks.empty())
                read.emplace(field->key, *std::move(cell.read));
            else if (tells)
                askOf(row, cell.asks, std::string(field->key), cells[at]);
        }
        return read;
    }

    void askCells() {
        eachRow([this](std::size_t row, const CsvRecord& record) {
            for (const std::string& field : m_columnsAsked) askOf(row, "columns", field, {});
            const RowRead read = readCells(row, record.cells, true);
            if (m_plan.kind == ImportKind::Weights) noteWeighing(row, read);
        });
    }

    void noteWeighing(std::size_t row, const RowRead& read) {
        const auto hive = read.find("hive");
        const auto day = read.find("day");
        if (hive == read.end() || day == read.end()) return;
        const auto yard = read.find("yard");
        const std::string name =
            hive->second.text + '\n' + (yard == read.end() ? std::string() : yard->second.text);
        m_weighings.push_back({m_weighed.of(name), day->second.day, day->second.minute,
                               static_cast<std::uint32_t>(row)});
    }

    /// A scale tells every hour, the season keeps one weighing a day: which counts is asked.
    void chooseOfDay() {
        std::sort(m_weighings.begin(), m_weighings.end(), [](const Weighed& a, const Weighed& b) {
            return std::tie(a.name, a.day, a.minute, a.row) <
                   std::tie(b.name, b.day, b.minute, b.row);
        });
        std::vector<std::pair<std::size_t, std::size_t>> several;  // from, to
        for (std::size_t from = 0; from < m_weighings.size();) {
            std::size_t to = from + 1;
            while (to < m_weighings.size() && m_weighings[to].name == m_weighings[from].name &&
                   m_weighings[to].day == m_weighings[from].day)
                ++to;
            if (to - from > 1) several.emplace_back(from, to);
            from = to;
        }
        if (!m_map.ofDay) {
            std::vector<std::uint32_t> asked;
            for (const auto& [from, to] : several)
                for (std::size_t i = from; i < to; ++i) asked.push_back(m_weighings[i].row);
            std::sort(asked.begin(), asked.end());
            for (const std::uint32_t row : asked) askOf(row, "of_day", "day", exampleOfDay(row));
        } else {
            for (const auto& [from, to] : several) {
                const std::size_t counts = *m_map.ofDay == OfDay::First ? from : to - 1;
                for (std::size_t i = from; i < to; ++i)
                    if (i != counts)
                        m_plan.rows.setVerdict(m_weighings[i].row, RowVerdict::LeftOut);
            }
        }
        m_weighings = {};
    }
    /// The cell of the first such row alone is ever shown.
    std::string exampleOfDay(std::size_t row) {
        if (!question("of_day", "day").example.empty()) return {};
        return readCells(row, m_plan.rows.record(row).cells, false).at("day").text;
    }

    void makeLines() {
        eachRow([this](std::size_t row, const CsvRecord& record) {
            const RowRead read = readCells(row, record.cells, false);
            makeLine(row, read);
            if (m_plan.kind == ImportKind::Hives) noteYard(row, read);
        });
    }

    void makeLine(std::size_t row, const RowRead& read) {
        // A row with a cell that can be read in two ways lacks it here; it is made once that is
        // answered.
        if (m_plan.rows.verdict(row) == RowVerdict::LeftOut || m_plan.rows.isAsked(row)) return;
        // What the row lacks is told once its columns are known.
        if (!m_columnsAsked.empty()) return;
        LineResult line = lineOfRow(m_season.read(), m_plan.kind, read, m_map, m_yards);
        if (line.refused) return m_plan.rows.refuse(row, *std::move(line.refused));
        for (const std::string& ask : line.asks) askOf(row, ask, ask, {});
        if (!m_plan.rows.isAsked(row)) m_plan.rows.setPlay(row, line.play);
    }

    void noteYard(std::size_t row, const RowRead& read) {
        m_yardOfRow.resize(m_plan.rows.size(), noYard);
        if (m_plan.rows.verdict(row) == RowVerdict::Refused) return;
        const auto cell = read.find("yard");
        const std::string yard =
            cell == read.end() ? m_map.yard.value_or(std::string()) : cell->second.text;
        if (yard.empty() || std::find(m_yards.begin(), m_yards.end(), yard) != m_yards.end())
            return;
        m_yardOfRow[row] = m_unknownYards.of(yard);
        m_yardSince.resize(m_unknownYards.size());
        const auto day = read.find("day");
        const auto from = day == read.end() ? m_map.day : std::optional(day->second.day);
        std::optional<Day>& since = m_yardSince[m_yardOfRow[row]];
        if (from) since = std::min(since.value_or(*from), *from);
    }

    /// Yards nobody has heard of are asked about once, and added before their hives.
    void askForYards() {
        for (std::size_t row = 0; row < m_yardOfRow.size(); ++row)
            if (m_yardOfRow[row] != noYard && !m_map.addYards) {
                askOf(row, "add_yards", "yard", m_unknownYards.word(m_yardOfRow[row]));
                m_plan.rows.dropPlay(row);
            }
        if (!m_map.addYards.value_or(false)) return;
        for (std::uint32_t yard = 0; yard < m_unknownYards.size(); ++yard)
            if (m_yardSince[yard])
                m_newYards.emplace_back(
                    yard, jsonLine({{"do", QStringLiteral("add-yard")},
                                    {"on", fromUtf8(isoText(*m_yardSince[yard]))},
                                    {"yard_name", fromUtf8(m_unknownYards.word(yard))}}));
    }

    /// Does to a copy what would be done: a row that is refused there is refused.
    void rehearse() {
        m_season.rehearse([this](Write& file) {
            RowsThere there(file);
            std::erase_if(m_newYards, [&file](const auto& yard) {
                return !file.attempt([&]() -> Result<void> {
                    auto made = done(file, yard.second);
                    if (!made) return made.error();
                    return {};
                });
            });
            PlannedRows::Plays plays(m_plan.rows);
            for (std::size_t row = 0; row < m_plan.rows.size(); ++row) {
                if (!m_progress.advance(stepsOfTrying)) return;
                if (m_plan.rows.hasPlay(row)) tryRow(file, there, row, plays.of(row));
            }
        });
        keepUsedYards();
    }
    static Result<Made> done(Write& file, std::string_view play) {
        const auto line = readImportLine(file, play);
        if (!line) return line.error();
        return line->type->perform(line->row, file);
    }
    /// Of a table longer than that what is odd is only told after it was kept, by the records.
    static constexpr std::size_t mostAskedBack = 20'000;
    void tryRow(Write& file, RowsThere& there, std::size_t row, std::string_view play) {
        const auto line = readImportLine(file, play);
        if (!line) return m_plan.rows.refuse(row, line.error());
        switch (there.ask(file, *line)) {
            case RowThere::Same:
                return m_plan.rows.setVerdict(row, RowVerdict::AlreadyThere);
            case RowThere::ChangedSince:
                return m_plan.rows.setVerdict(row, RowVerdict::ChangedSince);
            case RowThere::Other:
                return m_plan.rows.refuse(row, {Code::Taken, "day", {{"written", "another"}}});
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
        if (!tried) return m_plan.rows.refuse(row, tried.error());
        m_plan.rows.setVerdict(row, RowVerdict::WillBeAdded);
        // Odd and yet kept is said before it is kept, too.
        if (m_plan.rows.size() > mostAskedBack) return;
        std::vector<std::string> odd;
        for (const Question& each : questionsAfter(file, change, m_season.clock().today()))
            odd.push_back(each.says.toStdString());
        m_plan.rows.setOdd(row, std::move(odd));
    }
    /// A yard none of whose hives come in is not added for its own sake.
    void keepUsedYards() {
        for (const auto& [yard, line] : m_newYards) {
            bool used = false;
            for (std::size_t i = 0; i < m_plan.rows.size(); ++i)
                used = used || (m_plan.rows.verdict(i) == RowVerdict::WillBeAdded &&
                                m_yardOfRow[i] == yard);
            if (used) m_plan.first.push_back(line);
        }
    }

    static constexpr std::uint32_t noYard = static_cast<std::uint32_t>(-1);
    /// A row that tells of a hive on a day.
    struct Weighed {
        std::uint32_t name = 0;
        Day day;
        int minute = -1;
        std::uint32_t row = 0;
    };

    const Season& m_season;
    const ImportMap& m_map;
    Progress& m_progress;
    ImportPlan m_plan;
    std::size_t m_width = 0;
    std::vector<std::string> m_yards;
    std::set<std::string, std::less<>> m_columnsAsked;
    std::vector<ColumnWays> m_ways;
    WordNumbers m_weighed;  ///< the hives, with their yards
    std::vector<Weighed> m_weighings;
    WordNumbers m_unknownYards;
    std::vector<std::optional<Day>> m_yardSince;                    ///< of each unknown yard
    std::vector<std::uint32_t> m_yardOfRow;                         ///< where it is unknown
    std::vector<std::pair<std::uint32_t, std::string>> m_newYards;  ///< and the line that adds it
};

}  // namespace

void ImportPlan::eachLine(const std::function<bool(std::string_view line)>& take) const {
    if (count(RowVerdict::WillBeAdded) == 0) return;
    for (const std::string& line : first)
        if (!take(line)) return;
    PlannedRows::Plays plays(rows);
    for (std::size_t row = 0; row < rows.size(); ++row)
        if (rows.verdict(row) == RowVerdict::WillBeAdded && !take(plays.of(row))) return;
}

std::optional<ImportKind> kindOfTable(const QByteArray& bytes) {
    const auto table = readHeadings(bytes, {}, &knownToAny, nullptr);
    if (!table || !table->header) return std::nullopt;
    return kindGuessed(table->headings);
}

std::vector<PlannedColumn> columnsOfTable(ImportKind kind, const QByteArray& bytes) {
    const auto table = readHeadings(bytes, {}, &knowsHeading, &kind);
    return table ? mappedColumns(kind, {}, table->headings) : std::vector<PlannedColumn>{};
}

Result<ImportPlan> planImport(const Season& season, ImportKind kind, const QByteArray& bytes,
                              const ImportMap& map, Progress* progress) {
    Progress nobodyLooks;
    Progress& told = progress ? *progress : nobodyLooks;
    auto table = readTable(bytes, map.table, &knowsHeading, &kind, &told);
    if (!table) return table.error();
    return Planner(season, kind, map, told).plan(*std::move(table));
}

Result<std::int64_t> keepImport(Season& season, const ImportPlan& plan, const std::string& fileName,
                                RefusedRows refused, Progress* progress) {
    if (!plan.questions.empty())
        return Refusal{Code::Missing, "map", {{"ask", plan.questions.front().ask}}};
    if (refused == RefusedRows::HoldUpAll && plan.count(RowVerdict::Refused) > 0)
        for (std::size_t row = 0; row < plan.rows.size(); ++row)
            if (plan.rows.verdict(row) == RowVerdict::Refused) {
                Refusal why = *plan.rows[row].why;
                why.values.emplace_back("import_line", std::to_string(plan.rows.line(row)));
                return why;
            }
    if (plan.count(RowVerdict::WillBeAdded) == 0) return std::int64_t{0};
    ImportRows rows;
    rows.on = season.clock().today();
    rows.rowsOf = *Name::of(word(plan.kind));
    rows.fileName = fileName;
    Progress nobodyLooks;
    Progress& told = progress ? *progress : nobodyLooks;
    told.begin(plan.first.size() + plan.count(RowVerdict::WillBeAdded));
    return performEach(
        season, rows, [&plan](const LineTaker& take) { plan.eachLine(take); }, told);
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
