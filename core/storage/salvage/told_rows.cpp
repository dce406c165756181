#include "core/storage/salvage/told_rows.h"

#include <algorithm>
#include <cstring>

#include "core/storage/sqlite/changes.h"

namespace combwright {
namespace {

// Each value behind a letter: '?' nobody told, '0' unknown, 'n' a number, 't' a text.
using ToldValue = std::optional<Value>;

void packNumber(std::string& into, std::int64_t number) {
    char bytes[sizeof number];
    std::memcpy(bytes, &number, sizeof number);
    into.append(bytes, sizeof number);
}

std::int64_t unpackNumber(std::string_view from, std::size_t& at) {
    std::int64_t number = 0;
    std::memcpy(&number, from.data() + at, sizeof number);
    at += sizeof number;
    return number;
}

std::string packValues(const std::vector<ToldValue>& values) {
    std::string packed;
    for (const ToldValue& value : values) {
        if (!value) {
            packed += '?';
        } else if (const auto* number = std::get_if<std::int64_t>(&*value)) {
            packed += 'n';
            packNumber(packed, *number);
        } else if (const auto* text = std::get_if<std::string>(&*value)) {
            packed += 't';
            packNumber(packed, static_cast<std::int64_t>(text->size()));
            packed += *text;
        } else {
            packed += '0';
        }
    }
    return packed;
}

std::vector<ToldValue> unpackValues(std::string_view packed) {
    std::vector<ToldValue> values;
    for (std::size_t at = 0; at < packed.size();) {
        const char letter = packed[at++];
        if (letter == '?') {
            values.emplace_back();
        } else if (letter == 'n') {
            values.emplace_back(Value{unpackNumber(packed, at)});
        } else if (letter == 't') {
            const auto size = static_cast<std::size_t>(unpackNumber(packed, at));
            values.emplace_back(Value{std::string(packed.substr(at, size))});
            at += size;
        } else {
            values.emplace_back(Value{});
        }
    }
    return values;
}

std::optional<Row> wholeRow(std::string_view packed) {
    Row row;
    for (ToldValue& value : unpackValues(packed)) {
        if (!value) return std::nullopt;
        row.push_back(*std::move(value));
    }
    return row;
}

}  // namespace

ToldRows::Table& ToldRows::tableOf(std::string_view name) {
    auto at = m_tables.find(name);
    if (at == m_tables.end()) at = m_tables.emplace(name, Table{}).first;
    return at->second;
}

void ToldRows::begin(std::string_view table, const Row& row) {
    const std::int64_t id = std::get<std::int64_t>(row.front());
    Table& into = tableOf(table);
    into.rows[id] = packValues({row.begin(), row.end()});
    into.asBegun.insert(id);
}

bool ToldRows::isAsBegun(std::string_view table, std::int64_t id) const {
    const auto at = m_tables.find(table);
    return at != m_tables.end() && at->second.asBegun.contains(id);
}

void ToldRows::take(const Database& any, const Bytes& changes) {
    eachRowMade(any, changes, [this](const RowMade& made) {
        Table& table = tableOf(made.table);
        table.asBegun.erase(made.id);
        if (made.kind == ChangeKind::Removed) {
            table.rows.erase(made.id);
            table.gone.insert(made.id);
            return;
        }
        table.gone.erase(made.id);
        std::vector<ToldValue> values = made.values;
        if (made.kind == ChangeKind::Changed) {
            values.front() = Value{made.id};
            std::vector<ToldValue> before;
            if (const auto known = table.rows.find(made.id); known != table.rows.end())
                before = unpackValues(known->second);
            // Columns the table did not have yet when the row was made are unknown in it.
            const bool wasWhole = !before.empty() && std::all_of(before.begin(), before.end(),
                                                                 [](const ToldValue& each) {
                                                                     return each.has_value();
                                                                 });
            for (std::size_t i = 1; i < values.size(); ++i)
                if (!values[i])
                    values[i] = i < before.size() ? before[i]
                                : wasWhole        ? ToldValue(Value{})
                                                  : ToldValue();
        }
        table.rows[made.id] = packValues(values);
    });
}

const std::string* ToldRows::packed(std::string_view table, std::int64_t id) const {
    const auto at = m_tables.find(table);
    if (at == m_tables.end()) return nullptr;
    const auto row = at->second.rows.find(id);
    return row == at->second.rows.end() ? nullptr : &row->second;
}

ToldRows::Told ToldRows::of(std::string_view table, std::int64_t id) const {
    if (const std::string* told = packed(table, id))
        return wholeRow(*told) ? Told::Whole : Told::Partly;
    const auto at = m_tables.find(table);
    return at != m_tables.end() && at->second.gone.contains(id) ? Told::Gone : Told::Nothing;
}

Row ToldRows::row(std::string_view table, std::int64_t id) const {
    const std::string* told = packed(table, id);
    return told ? wholeRow(*told).value_or(Row()) : Row();
}

void ToldRows::each(std::string_view table,
                    const std::function<void(std::int64_t, const Row&)>& see) const {
    const auto at = m_tables.find(table);
    if (at == m_tables.end()) return;
    for (const auto& [id, packed] : at->second.rows)
        if (const auto row = wholeRow(packed)) see(id, *row);
}

std::int64_t ToldRows::highest(std::string_view table) const {
    const auto at = m_tables.find(table);
    if (at == m_tables.end()) return 0;
    std::int64_t highest = 0;
    if (!at->second.rows.empty()) highest = at->second.rows.rbegin()->first;
    if (!at->second.gone.empty()) highest = std::max(highest, *at->second.gone.rbegin());
    return highest;
}

bool saySame(const Row& one, const Row& other) {
    const Row& longer = one.size() >= other.size() ? one : other;
    const Row& shorter = one.size() >= other.size() ? other : one;
    return std::equal(shorter.begin(), shorter.end(), longer.begin()) &&
           std::all_of(
               longer.begin() + static_cast<std::ptrdiff_t>(shorter.size()), longer.end(),
               [](const Value& value) { return std::holds_alternative<std::monostate>(value); });
}

}  // namespace combwright
