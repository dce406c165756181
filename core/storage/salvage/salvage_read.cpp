#include "core/storage/salvage/salvage_read.h"

#include <algorithm>
#include <utility>

#include "core/storage/pictures.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

constexpr std::string_view journalTable = "journal";
constexpr std::string_view pictureTable = "picture";
constexpr std::string_view markTable = "copy_mark";
constexpr std::string_view sequenceTable = "sqlite_sequence";
constexpr std::size_t digestDigits = 64;

bool isDigest(const std::string& text) {
    return text.size() == digestDigits &&
           text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

std::string textAt(const StoredRow& row, std::size_t column) {
    const auto* text =
        column < row.values.size() ? std::get_if<std::string>(&row.values[column]) : nullptr;
    return text ? *text : std::string();
}

bool isMissing(const StoredValue& value) { return std::holds_alternative<std::monostate>(value); }

/// Whether a stored value may stand in a column of a STRICT table.
bool mayStand(const StoredValue& value, const TableShape::Column& column) {
    if (isMissing(value)) return !column.notNull;
    if (column.type == "INTEGER") return std::holds_alternative<std::int64_t>(value);
    if (column.type == "TEXT") return std::holds_alternative<std::string>(value);
    return std::holds_alternative<Bytes>(value);
}

/// The row in the table's columns; the last ones are unknown where the table got them later.
std::optional<Row> rowOf(const TableShape& shape, const StoredRow& stored) {
    if (stored.values.empty() || stored.values.size() > shape.columns.size()) return std::nullopt;
    Row row{stored.id};
    for (std::size_t i = 1; i < shape.columns.size(); ++i) {
        if (i >= stored.values.size()) {
            if (shape.columns[i].notNull) return std::nullopt;
            row.emplace_back();
            continue;
        }
        if (!mayStand(stored.values[i], shape.columns[i])) return std::nullopt;
        if (const auto* number = std::get_if<std::int64_t>(&stored.values[i]))
            row.emplace_back(*number);
        else if (const auto* text = std::get_if<std::string>(&stored.values[i]))
            row.emplace_back(*text);
        else
            row.emplace_back();
    }
    return row;
}

std::optional<WholeStep> stepOf(const TableShape& shape, const StoredRow& stored) {
    if (stored.values.size() != shape.columns.size()) return std::nullopt;
    for (std::size_t i = 1; i < shape.columns.size(); ++i)
        if (!mayStand(stored.values[i], shape.columns[i])) return std::nullopt;
    WholeStep step;
    step.entry.seq = stored.id;
    step.entry.at = textAt(stored, 1);
    const auto kind = stepKindOf(textAt(stored, 2));
    if (!kind) return std::nullopt;
    step.entry.kind = *kind;
    step.entry.info = {textAt(stored, 3), textAt(stored, 4), textAt(stored, 5), textAt(stored, 6)};
    if (const auto* of = std::get_if<std::int64_t>(&stored.values[7])) step.entry.of = *of;
    step.stands = std::get<std::int64_t>(stored.values[8]);
    step.changes = std::get<Bytes>(stored.values[9]);
    step.digest = textAt(stored, 10);
    if (!isDigest(step.digest)) return std::nullopt;
    return step;
}

class SalvageReader {
  public:
    SalvageReader(Bytes bytes, const Database& fresh)
        : m_fresh(fresh), m_shapes(tableShapes(fresh)), m_reader(std::move(bytes)) {}

    SalvageRead read() {
        for (const StoredTable& table : m_reader.tables()) {
            bool whole = true;
            const auto rows = m_reader.rowsOf(table.root, whole);
            if (whole) m_read.wholeTables.insert(table.name);
            for (const StoredRow& row : rows) take(table.name, row, false);
        }
        std::vector<LooseLeaf> loose = m_reader.looseLeaves();
        std::erase_if(loose, [this](const LooseLeaf& leaf) { return takeOwn(leaf); });
        beginHistory();
        followHistory();
        for (const LooseLeaf& leaf : loose) takeRecords(leaf);
        m_read.pages = m_reader.pages();
        m_read.brokenPages = static_cast<std::int64_t>(m_reader.broken().size());
        m_read.isSeason = m_read.isSeason || !m_read.steps.empty() ||
                          std::any_of(m_read.rows.begin(), m_read.rows.end(),
                                      [](const auto& each) { return !each.second.empty(); });
        return std::move(m_read);
    }

  private:
    const TableShape* shapeOf(std::string_view name) const {
        for (const TableShape& shape : m_shapes)
            if (shape.name == name) return &shape;
        return nullptr;
    }

    void take(const std::string& table, const StoredRow& stored, bool loose) {
        if (table == sequenceTable) return takeSequence(stored);
        const TableShape* shape = shapeOf(table);
        if (!shape) return;
        if (table == journalTable) {
            if (auto step = stepOf(*shape, stored))
                m_read.steps.emplace(stored.id, *std::move(step));
        } else if (table == pictureTable) {
            takePicture(stored);
        } else if (auto row = rowOf(*shape, stored)) {
            if (table == markTable)
                m_read.copyMark = *std::move(row);
            else if (shape->record && shape->asRecord(*row))
                m_read.rows[table].emplace(stored.id, ReadRow{*std::move(row), loose});
        }
    }

    void takeSequence(const StoredRow& stored) {
        const auto* last =
            stored.values.size() == 2 ? std::get_if<std::int64_t>(&stored.values[1]) : nullptr;
        const std::string table = textAt(stored, 0);
        if (last && shapeOf(table)) m_read.highest[table] = *last;
    }

    void takePicture(const StoredRow& stored) {
        const auto* bytes =
            stored.values.size() == 2 ? std::get_if<Bytes>(&stored.values[1]) : nullptr;
        if (bytes && digestOf(*bytes) == textAt(stored, 0))
            m_read.pictures.emplace(textAt(stored, 0), *bytes);
    }

    /// A loose leaf of what the file keeps of itself: nothing else looks like it.
    bool takeOwn(const LooseLeaf& leaf) {
        const auto all = [&leaf](const std::function<bool(const StoredRow&)>& fits) {
            return std::all_of(leaf.rows.begin(), leaf.rows.end(), fits);
        };
        const TableShape* journal = shapeOf(journalTable);
        std::string table;
        if (all([&](const StoredRow& row) { return stepOf(*journal, row).has_value(); }))
            table = journalTable;
        else if (all([&](const StoredRow& row) {
                     return row.values.size() == 2 && isDigest(textAt(row, 0)) &&
                            std::holds_alternative<Bytes>(row.values[1]);
                 }))
            table = pictureTable;
        else if (all([&](const StoredRow& row) {
                     return row.values.size() == 2 && shapeOf(textAt(row, 0)) &&
                            std::holds_alternative<std::int64_t>(row.values[1]);
                 }))
            table = sequenceTable;
        if (table.empty()) return false;
        for (const StoredRow& row : leaf.rows) take(table, row, true);
        return true;
    }

    /// What every season is given when it is made, which no step tells of: as this file has it.
    void beginHistory() {
        for (const TableShape& shape : m_shapes) {
            if (!shape.record) continue;
            const auto& inTable = m_read.rows[shape.name];
            Statement given = m_fresh.prepare("SELECT * FROM \"" + shape.name + "\" ORDER BY id");
            for (given.run(); given.next();) {
                Row row;
                for (int column = 0; column < given.columns(); ++column)
                    row.push_back(given.value(column));
                const auto own = inTable.find(given.number(0));
                m_read.told.begin(shape.name, own == inTable.end() ? row : own->second.row);
            }
        }
    }

    /// Which steps follow from each other, and what they tell of the records.
    void followHistory() {
        std::int64_t expected = 1;
        std::string previous;
        bool whole = true;
        for (auto& [seq, step] : m_read.steps) {
            const bool follows = seq == expected;
            const bool agrees =
                follows && step.digest == chainedDigest(previous, step.entry, step.changes);
            // Behind a gap nothing proves a step; it is taken as it stands.
            whole = whole && agrees;
            if (agrees) ++m_read.stepsAgreeing;
            previous = step.digest;
            expected = seq + 1;
            if (follows && !agrees) continue;
            try {
                m_read.told.take(m_fresh, step.changes);
            } catch (const StorageError&) {
                whole = false;
            }
        }
        const auto counted = m_read.highest.find(journalTable);
        const std::int64_t last = m_read.steps.empty() ? 0 : m_read.steps.rbegin()->first;
        const bool endKnown = counted != m_read.highest.end()
                                  ? counted->second == last
                                  : m_read.wholeTables.contains(journalTable);
        m_read.historyWhole = whole && endKnown;
        if (!m_read.highest.contains(journalTable))
            m_read.highest[std::string(journalTable)] = last;
    }

    bool allAreRecords(const TableShape& shape, const LooseLeaf& leaf) const {
        return std::all_of(leaf.rows.begin(), leaf.rows.end(), [&](const StoredRow& stored) {
            const auto row = rowOf(shape, stored);
            return row && shape.asRecord(*row);
        });
    }
    bool someAreTold(const TableShape& shape, const LooseLeaf& leaf) const {
        return std::any_of(leaf.rows.begin(), leaf.rows.end(), [&](const StoredRow& stored) {
            const auto row = rowOf(shape, stored);
            return row && m_read.told.of(shape.name, stored.id) == ToldRows::Told::Whole &&
                   saySame(*row, m_read.told.row(shape.name, stored.id));
        });
    }

    /// Tables look alike; where more than one would do, the history says which. Else the leaf is
    /// passed over: a row in the wrong table would be worse than one that is missing.
    void takeRecords(const LooseLeaf& leaf) {
        std::vector<const TableShape*> fitting;
        for (const TableShape& shape : m_shapes)
            if (shape.record && allAreRecords(shape, leaf)) fitting.push_back(&shape);
        if (fitting.size() > 1)
            std::erase_if(fitting,
                          [&](const TableShape* shape) { return !someAreTold(*shape, leaf); });
        if (fitting.size() != 1) return;
        for (const StoredRow& row : leaf.rows) take(fitting.front()->name, row, true);
    }

    const Database& m_fresh;
    std::vector<TableShape> m_shapes;
    PageReader m_reader;
    SalvageRead m_read;
};

}  // namespace

std::optional<Row> TableShape::asRecord(const Row& inColumns) const {
    if (!record || inColumns.size() > columns.size()) return std::nullopt;
    Row row;
    for (const std::size_t column : fieldColumns)
        row.push_back(column < inColumns.size() ? inColumns[column] : Value{});
    if (record->fits && !record->fits(row)) return std::nullopt;
    return row;
}

std::vector<TableShape> tableShapes(const Database& shape) {
    std::vector<TableShape> shapes;
    Statement tables = shape.prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'");
    for (tables.run(); tables.next();) {
        TableShape table;
        table.name = tables.text(0);
        Statement columns =
            shape.prepare("SELECT name, type, \"notnull\" FROM pragma_table_info(?)");
        columns.bind(std::string_view(table.name)).run();
        while (columns.next())
            table.columns.push_back({columns.text(0), columns.text(1), columns.number(2) != 0});
        table.record = findRecordType(table.name);
        if (table.record)
            for (const FieldInfo& field : table.record->fields())
                for (std::size_t i = 0; i < table.columns.size(); ++i)
                    if (table.columns[i].name == field.column()) table.fieldColumns.push_back(i);
        shapes.push_back(std::move(table));
    }
    return shapes;
}

SalvageRead readForSalvage(Bytes bytes, const Database& fresh) {
    return SalvageReader(std::move(bytes), fresh).read();
}

}  // namespace combwright
